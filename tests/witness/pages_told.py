"""Knows what the answers, senses and summaries of a page claim, and holds them against the true ones."""
from __future__ import annotations

import re
from collections.abc import Iterator

from .page import Judge, Truth, degrees, way_agrees
from .quantities import si

SENTENCES: list[tuple[str, Judge]] = []
SENSE = {"counter-clockwise": 1.0, "clockwise": -1.0}


def says(pattern: str):  # type: ignore[no-untyped-def]
    def keep(judge: Judge) -> Judge:
        SENTENCES.append((pattern, judge))
        return judge
    return keep


def heading(truth: Truth, name: str) -> float | None:
    right, up = truth.parts(name)
    return degrees(right, up) if right or up else None


@says(r"^(?:│ )?The (?P<name>{name})(?: each)? (?:pulls?|acts?|pushes|push) with (?P<a>{q})(?:, (?P<way>{way}))?")
@says(r"^(?:│ )?Each of the (?:two )?(?P<name>{name}) (?:pulls?|acts?|pushes|push) with (?P<a>{q})(?:, (?P<way>{way}))?")
def pull(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    size = truth.root.sizes[found["name"]]
    if not truth.agrees(found["a"], abs(size)) and not truth.agrees(found["a"], size):
        yield f"it is {size:.6g} N"
    angle = heading(truth, found["name"])
    if found["way"] and angle is not None:
        if found["a"].startswith("−"):
            angle = (angle + 180) % 360                        # a negative size is told against its stated direction
        if not way_agrees(found["way"], angle, truth.shown) and size:
            yield f"it points to {angle:.3f}°"


@says(r"^(?:│ )?The (?P<name>{name})(?: each)? (?:pull|push|pushe)s? (?P<way>up|down|to the left|to the right) with (?P<a>{q})")
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
    if size > 1e-9 * truth.expected.largest and not way_agrees(found["way"], (angle + 180) % 360 if on_bone else angle, truth.shown):
        yield f"on the body it points to {angle:.3f}°"


@says(r"(?P<a>{q}) to the (?P<h>left|right) and (?P<b>{q}) (?P<v>up|down)\b")
def joint_parts(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    if "reaction.right" not in truth.root.values:
        return
    text = found.string
    on_bone = bool(re.match(r"(?:│ )?The [^.]*? push(?:es)? (?:on )?the", text)) and not truth.named(text.split(" with ")[0].split("push")[1])
    flip = -1 if on_bone and found.start() < (text.find(". ") if ". " in text else len(text)) else 1
    right, up = flip * truth.root.values["reaction.right"], flip * truth.root.values["reaction.up"]
    for quantity, value, word, plus in ((found["a"], right, found["h"], "right"), (found["b"], up, found["v"], "up")):
        if not truth.agrees(quantity, abs(value)):
            yield f"{quantity}: it is {abs(value):.6g} N"
        elif abs(value) > truth.quantity(quantity)[1] and (value > 0) != (word == plus):
            yield f"{quantity} {word}: it is {value:.6g} N"


@says(r"come(?:s)? to rest at (?P<t>[0-9.]+)° from .*?: (?P<way>{way})")
@says(r"come(?:s)? to rest (?P<way>{way})")
def rest(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    name = truth.case.solution.bent.partition(".")[0]
    angle = truth.expected.direction(f"{name}.direction")
    if angle is not None and not way_agrees(found["way"], angle, truth.shown):
        yield f"it points to {angle:.3f}°"


@says(r"turns? the body with (?P<a>{q}), (?P<sense>counter-clockwise|clockwise)")
def turns_with(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    names = truth.named(found.string[:found.start()])
    if names:
        moment = truth.turning(names[0]) / int(truth.expected.tables[names[0]][1].get("count", 1))
        moments = (moment, truth.turning(names[0]))
        if not any(truth.agrees(found["a"], abs(each)) for each in moments):
            yield f"it turns with {moment:.6g} N·m, counter-clockwise"
        if moment * SENSE[found["sense"]] < 0:
            yield "it turns the other way"


@says(r"add to (?P<a>{q}), (?P<sense>counter-clockwise|clockwise)\. The body begins to turn (?P<again>counter-clockwise|clockwise)")
def total(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    moment = sum(truth.turning(name) for name in truth.expected.pulls)
    if not truth.agrees(found["a"], abs(moment)) or moment * SENSE[found["sense"]] < 0 or found["sense"] != found["again"]:
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
@says(r"the (?P<name>{name}) can have a (?P<what>mass|weight|moment arm) of (?P<a>{q})")
def sought(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    name = f"{found['name']}.{found['what'].replace(' ', '_')}"
    right = truth.root.values.get(name, truth.root.unknown if truth.case.solution.bent == name else None)
    if right is not None and not truth.agrees(found["a"], right, mass=found["what"] == "mass"):
        yield f"it is {right:.6g}"


@says(r"counts as positive: (?P<list>.*)")
@says(r"which is allowed here: .*? one side of .*?\. (?P<list>.*)")
def senses(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    where = re.search(r"through the point where the (.*?) acts?, (?:has|have)", found["list"])
    about = truth.centre_of_moments(where[1] if where else "")
    turning = {name: truth.turning(name, about) for name in truth.expected.pulls}
    scale = max(abs(moment) for moment in turning.values()) + truth.expected.largest
    for part in re.split(r"(?<=\)),? |; ", found["list"].rstrip(".")):
        if "no lever arm" in part:
            for name in truth.named(part.partition("pass")[0]):
                if abs(turning[name]) > 1e-9 * scale:
                    yield f"the {name} turns with {turning[name]:.4g} N·m"
        elif sense := re.search(r"(counter-clockwise|clockwise) \([+−]\)", part):
            for name in truth.named(part[:sense.start()]):
                if turning[name] * SENSE[sense[1]] < -1e-9 * scale and truth.root.sizes[name] > 0:
                    yield f"the {name} turns the other way: {turning[name]:.4g} N·m"


@says(r"to hold (?P<what>.*?), (?P<a>{q})(?: together)?, the (?P<name>{name}) pulls? with (?P<b>{q})(?:, (?P<times>{n}) times that)?"
      r"(?:, and the (?P<pivot>[^.]*?) carries (?P<c>{q}))?")
def summary(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    names = truth.named(found["what"])
    held = sum(abs(truth.size(name)) for name in names)
    if names and not truth.agrees(found["a"], held):
        yield f"{found['what']}: {held:.6g} N"
    size = truth.root.sizes[found["name"]]
    if not truth.agrees(found["b"], size) and not truth.agrees(found["b"], truth.size(found["name"])):
        yield f"the pull is {size:.6g} N"
    count = int(truth.expected.tables[found["name"]][1].get("count", 1))
    if found["times"] and names and not any(truth.agrees(found["times"], each * size / held, ratio=True) for each in {1, count}):
        yield f"it is {size / held:.4g} times that"
    if found["c"] and not truth.agrees(found["c"], truth.expected.value("reaction")[0]):
        yield f"the joint force is {truth.expected.value('reaction')[0]:.6g} N"
    if found["times"] and any(truth.expected.tables[name][0] == "couple" for name in names):
        yield "a force is compared with a couple"


@says(r"(?:minus sign|sign) says that (?P<who>.*?) push(?:es)? (?P<on>.*?) (?P<way>down|up|to the left|to the right)\b")
def minus(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    if " along" in found[0] or " across" in found[0]:
        return
    right, up = truth.root.values.get("reaction.right", 0.0), truth.root.values.get("reaction.up", 0.0)
    if not {"down": up < 0, "up": up > 0, "to the left": right < 0, "to the right": right > 0}[found["way"]]:
        yield f"the parts on the body are {right:.4g} and {up:.4g} N"


@says(r"says that (?P<who>.*?) push(?:es)? (?P<on>.*?) (?P<part>along|across) (?:it|them)?,? ?(?P<way>{way})")
def minus_along(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    axes = truth.case.problem["course"]["axes"].removeprefix("along and across the ")
    part = truth.expected.value(f"reaction.{found['part']}")[0]
    angle = float(truth.root.body.angles[axes][0]) + (90 if found["part"] == "across" else 0) + (180 if part < 0 else 0)
    if not way_agrees(found["way"], angle, truth.shown):
        yield f"that part points to {angle % 360:.3f}°"


@says(r"^(?:The )?(?P<name>{name}) points? (?P<way>{way})")
def points(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    angle = truth.expected.direction(f"{found['name']}.direction")
    if angle is not None and not way_agrees(found["way"], angle):
        yield f"it points to {angle:.3f}°"


QUARTER = r" between (?P<a>straight \w+|level to the \w+) and (?P<b>straight \w+|level to the \w+), at an angle that is sought"


@says(r"^The (?P<name>{name}) (?:points?|pulls?|acts?)" + QUARTER)
def within(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    words = {"straight down": 270.0, "straight up": 90.0, "level to the right": 0.0, "level to the left": 180.0}
    name = found["name"]
    angle = truth.expected.direction(f"{name}.direction")
    a, b = words[found["a"]], words[found["b"]]
    middle = a + ((b - a + 180) % 360 - 180) / 2
    if angle is not None and abs((angle - middle + 180) % 360 - 180) > 45 + 1e-6:
        yield f"it points to {angle:.2f}°"


@says(r"turns the body (?P<sense>counter-clockwise|clockwise)")
def turns_body(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    names = truth.named(found.string[:found.start()])
    if names and " with " not in found.string[found.start() - 5:found.end() + 6]:
        entry = truth.expected.tables[names[0]][1]
        if entry.get("turns") and entry["turns"] != found["sense"]:
            yield "it turns the other way"


@says(r"^(?P<word>\w+) figures? (?:are|is) written")
def figures(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    words = {"one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9}
    told = words.get(found["word"].lower()) or int(found["word"])
    if told != truth.working:
        yield f"the course keeps {truth.working}"


@says(r"^[TW]\w* ?take (?:moments|torques) about the (?P<at>[^:.]*)")
def centre(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    names = truth.named(found["at"].partition("where")[2])
    truth.about = names[0] if names else ""
    return iter(())


@says(r"at (?P<all>0|90)°(?: from the perpendicular)? all of it, at (?P<none>0|90)° nothing, which is what the (?P<fn>sine|cosine) says")
def ends(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    if (found["all"] == "90") != (found["fn"] == "sine") or found["all"] == found["none"]:
        yield "the other function"


@says(r"^The (?P<name>{name}) (?:pulls?|acts?) (?P<way>{way}), (?:on a line )?(?:[−0-9]|at the|at a distance)")
def stated_way(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    angle = truth.expected.direction(found["name"])
    if angle is not None and not way_agrees(found["way"], angle):
        yield f"it points to {angle:.3f}°"


@says(r"^The weight of the (?P<name>{name}) pulls straight down, (?P<a>{q}) (?:from the|along the)")
@says(r"^The (?P<name>{name}) (?:pulls?|acts?) [^.]*?, (?P<a>{q}) (?:from the|along the)")
def distance(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    entry = truth.expected.tables[found["name"]][1]
    given = entry.get("at") or entry.get("com")
    if given and given[0].isdigit() and not given.endswith("%") and not truth.agrees(found["a"], si(given, "length")):
        yield f"it was given as {given}"


@says(r"^The (?P<name>{name}) would need a force of (?P<a>{q}): the minus sign")
def would_push(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    if truth.root.sizes[found["name"]] >= 0 or not truth.agrees(found["a"], truth.root.sizes[found["name"]]):
        yield f"it is {truth.root.sizes[found['name']]:.6g} N"
