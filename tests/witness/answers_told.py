"""Knows what the answers and the summary of a page claim, and holds them against the true ones."""

from __future__ import annotations

import re
from collections.abc import Iterator

from .claims import Sentences, binder
from .page import Truth, degrees, way_agrees

SENTENCES: Sentences = []
says = binder(SENTENCES)
SENSE = {"counter-clockwise": 1.0, "clockwise": -1.0}


def heading(truth: Truth, name: str) -> float | None:
    right, up = truth.parts(name)
    return degrees(right, up) if right or up else None


@says(r"^(?:│ )?The (?P<name>{name})(?: each)? (?:pulls?|acts?|pushes|push) with (?P<a>{q})(?:, (?P<way>{way}))?")
@says(r"^(?:│ )?The force of the (?P<name>{name}) is (?P<a>{q})(?:, (?P<way>{way}))?")
@says(r"^(?:│ )?The (?P<name>{name}) is (?P<a>{q}), (?P<way>{way})")
@says(
    r"^(?:│ )?Each of the (?:two )?(?P<name>{name}) (?:pulls?|acts?|pushes|push) with (?P<a>{q})(?:, (?P<way>{way}))?"
)
def pull(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    size = truth.root.sizes[found["name"]]
    if not truth.agrees(found["a"], abs(size)) and not truth.agrees(found["a"], size):
        yield f"it is {size:.6g} N"
    angle = heading(truth, found["name"])
    if found["way"] and angle is not None:
        if found["a"].startswith("−"):
            angle = (angle + 180) % 360  # a negative size is told against its stated direction
        if not way_agrees(found["way"], angle, truth.shown) and size:
            yield f"it points to {angle:.3f}°"


@says(
    r"^(?:│ )?The (?P<name>{name})(?: each)? (?:pull|push|pushe)s? (?P<way>up|down|to the left|to the "
    r"right) with (?P<a>{q})"
)
def push(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    size = truth.root.sizes[found["name"]]
    if not truth.agrees(found["a"], abs(size)):
        yield f"it is {size:.6g} N"
    right, up = truth.parts(found["name"])
    if not {"up": up > 0, "down": up < 0, "to the left": right < 0, "to the right": right > 0}[found["way"]]:
        yield f"its parts are {right:.4g} and {up:.4g} N"


@says(r"^(?:│ )?The (?P<who>.*?) push(?:es)?(?: back)? (?:on )?the (?P<on>.*?) with (?P<a>{q}), (?P<way>{way})")
def joint(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    if "reaction.right" not in truth.root.values:
        return
    size, angle = truth.expected.value("reaction")[0], truth.expected.direction("reaction") or 0.0
    on_bone = not truth.named(found["on"])
    if not truth.agrees(found["a"], size):
        yield f"it is {size:.6g} N"
    if size > 1e-9 * truth.expected.largest and not way_agrees(
        found["way"], (angle + 180) % 360 if on_bone else angle, truth.shown
    ):
        yield f"on the body it points to {angle:.3f}°"


@says(r"(?P<a>{q}) to the (?P<h>left|right) and (?P<b>{q}) (?P<v>up|down)\b")
def joint_parts(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    if "reaction.right" not in truth.root.values:
        return
    text = found.string
    on_bone = bool(re.match(r"(?:│ )?The [^.]*? push(?:es)? (?:on )?the", text)) and not truth.named(
        text.split(" with ")[0].split("push")[1]
    )
    flip = -1 if on_bone and found.start() < (text.find(". ") if ". " in text else len(text)) else 1
    right, up = flip * truth.root.values["reaction.right"], flip * truth.root.values["reaction.up"]
    for quantity, value, word, plus in ((found["a"], right, found["h"], "right"), (found["b"], up, found["v"], "up")):
        if not truth.agrees(quantity, abs(value)):
            yield f"{quantity}: it is {abs(value):.6g} N"
        elif abs(value) > truth.quantity(quantity)[1] and (value > 0) != (word == plus):
            yield f"{quantity} {word}: it is {value:.6g} N"


@says(r"(?:is|are) at rest at (?P<t>[0-9.]+)° from .*?: (?P<way>{way})")
@says(r"(?:is|are) at rest (?P<way>{way})")
def rest(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    name = truth.case.solution.bent.partition(".")[0]
    angle = truth.expected.direction(f"{name}.direction")
    if angle is not None and not way_agrees(found["way"], angle, truth.shown):
        yield f"it points to {angle:.3f}°"


@says(r"^(?:│ )?The (?P<name>{name}) do(?:es)? not turn the body: (?P<a>{q})")
def turns_nothing(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    moment = truth.turning(found["name"])
    if abs(moment) > 1e-9 * truth.expected.largest or truth.quantity(found["a"])[0]:
        yield f"it turns with {moment:.6g} N·m"


@says(r"turns? the body with (?P<a>{q}), (?P<sense>counter-clockwise|clockwise)")
def turns_with(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    names = truth.named(found.string[: found.start()])
    if names:
        moment = truth.turning(names[0]) / int(truth.expected.tables[names[0]][1].get("count", 1))
        moments = (moment, truth.turning(names[0]))
        if not any(truth.agrees(found["a"], abs(each)) for each in moments):
            yield f"it turns with {moment:.6g} N·m, counter-clockwise"
        if moment * SENSE[found["sense"]] < 0:
            yield "it turns the other way"


@says(
    r"add to (?P<a>{q}), (?P<sense>counter-clockwise|clockwise)\. The body begins to turn "
    r"(?P<again>counter-clockwise|clockwise)"
)
def total(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    moment = sum(truth.turning(name) for name in truth.expected.pulls)
    if (
        not truth.agrees(found["a"], abs(moment))
        or moment * SENSE[found["sense"]] < 0
        or found["sense"] != found["again"]
    ):
        yield f"they add to {moment:.6g} N·m, counter-clockwise"


@says(r"^(?:│ )?The (?P<name>{name}) (?:is|are) (?P<a>{q}) from the")
def lies(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    value = truth.root.unknown
    if truth.case.solution.bent != f"{found['name']}.at":
        return
    if not truth.agrees(found["a"], value) and not (truth.agrees(found["a"], -value) and "side" in found.string):
        yield f"it is at {value:.6g} m"
    elif found["a"].startswith("−"):
        yield "a distance from a place is told as negative"


@says(r"^(?:│ )?The (?P<name>{name}) (?:has|have) a (?P<what>mass|weight|moment arm) of (?P<a>{q})")
@says(r"[Tt]he (?P<name>{name}) can have a (?P<what>mass|weight|moment arm) of (?P<a>{q})")
def sought(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    name = f"{found['name']}.{found['what'].replace(' ', '_')}"
    right = truth.root.values.get(name, truth.root.unknown if truth.case.solution.bent == name else None)
    if right is not None and not truth.agrees(found["a"], right, mass=found["what"] == "mass"):
        yield f"it is {right:.6g}"


@says(
    r"[Tt]o hold (?P<what>.*?), (?P<a>{q})(?: together)?, the (?P<name>{name}) pulls? with (?P<b>{q})(?:, "
    r"(?P<times>{n}) times that)?"
    r"(?:, and the (?P<pivot>[^.]*?) carries (?P<c>{q}))?"
)
def summary(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    names = truth.named(found["what"])
    if "·" in found["a"]:
        names = []  # what is held turns the body: no weight to compare
    held = sum(abs(truth.size(name)) for name in names)
    if names and not truth.agrees(found["a"], held):
        yield f"{found['what']}: {held:.6g} N"
    size = truth.root.sizes[found["name"]]
    if not truth.agrees(found["b"], size) and not truth.agrees(found["b"], truth.size(found["name"])):
        yield f"the pull is {size:.6g} N"
    count = int(truth.expected.tables[found["name"]][1].get("count", 1))
    if (
        found["times"]
        and names
        and not any(truth.agrees(found["times"], each * size / held, ratio=True) for each in {1, count})
    ):
        yield f"it is {size / held:.4g} times that"
    if found["c"] and not truth.agrees(found["c"], truth.expected.value("reaction")[0]):
        yield f"the joint force is {truth.expected.value('reaction')[0]:.6g} N"
    if found["times"] and any(truth.expected.tables[name][0] == "couple" for name in names):
        yield "a force is compared with a couple"


@says(r"^The (?P<name>{name}) would need a force of (?P<a>{q}): the minus sign")
def would_push(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    if truth.root.sizes[found["name"]] >= 0 or not truth.agrees(found["a"], truth.root.sizes[found["name"]]):
        yield f"it is {truth.root.sizes[found['name']]:.6g} N"


@says(r"With a coefficient of friction of (?P<a>{n}) at the (?P<pivot>.*?) it just holds")
def least_friction(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    right = truth.root.values["reaction.friction"]
    if not truth.agrees(found["a"], right):
        yield f"it is {right:.6g}"


@says(r"What hangs at the other end of the (?P<name>{name}) has a mass of (?P<a>{q})")
@says(r"(?P<a>{q}) at the other end of the (?P<name>{name}) hold the balance")
def hung(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    right = truth.root.values[f"{found['name']}.hung"]
    if not truth.agrees(found["a"], right, mass=True):
        yield f"it is {right:.6g} kg"


@says(r"(?:is|are) at rest with (?:the )?(?P<name>{name}) (?P<a>{q}) from [^,.]*(?:, to the (?P<side>left|right))?")
@says(r"^(?:│ )?(?:The )?(?P<name>{name}) (?:is|are) (?P<a>{q}) from [^,.]*(?:, to the (?P<side>left|right))?\.")
@says(r"the (?P<name>{name}) balances? (?P<a>{q}) from(?P<side>)")
def place_found(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    if truth.case.solution.bent != f"{found['name']}.at":
        return
    if not truth.agrees(found["a"], abs(truth.root.unknown)):
        yield f"it is {truth.root.unknown:.6g} m"
    place = truth.place(found["name"])
    if found["side"] and place and (place[0] > 0) != (found["side"] == "right"):
        yield f"it is on the other side, at {place[0]:.6g} m"


@says(r"To hold out against (?P<held>[^;]*?), (?P<a>{q}) together,")
def held_out_against(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    right = sum(abs(truth.turning(name)) for name in truth.named(found["held"]))
    if not truth.agrees(found["a"], right):
        yield f"together they turn with {right:.6g} N·m"


@says(r"To hold (?!out against)(?P<held>[^.;]*?), (?P<a>{q})(?: together)?,")
def held(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    names = truth.named(found["held"])
    right = sum(truth.size(name) for name in names)
    if not truth.agrees(found["a"], right):
        yield f"together they weigh {right:.6g} N"


@says(r"^To hold .*?(?P<name>{name}) (?:pulls?|pushes|push|lifts?) with (?P<a>{q})(?:, (?P<times>[0-9.]+) times that)?")
@says(r"^To hold .* and the (?P<name>{name}) with (?P<a>{q})(?P<times>)")
def holder(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    size = abs(truth.root.sizes[found["name"]])
    times = int(truth.expected.tables[found["name"]][1].get("count", 1))
    if not truth.agrees(found["a"], size) and not truth.agrees(found["a"], size * times):
        yield f"it is {size:.6g} N"


@says(r"(?:^To hold|^With) .*, and the .*? carr(?:ies|y) (?P<a>{q})")
def carried(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    right = truth.expected.value("reaction")[0]
    if not truth.agrees(found["a"], right):
        yield f"it is {right:.6g} N"
