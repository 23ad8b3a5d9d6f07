"""Knows what a page claims of senses, signs, directions and the drawing, and holds it against the true ones."""

from __future__ import annotations

import re
from collections.abc import Iterator

from .claims import Sentences, binder
from .page import Truth, way_agrees
from .quantities import si

SENTENCES: Sentences = []
says = binder(SENTENCES)
SENSE = {"counter-clockwise": 1.0, "clockwise": -1.0}


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
            for name in truth.named(part[: sense.start()]):
                told_as_drawn = truth.root.sizes[name] < 0 or lies_behind(
                    truth, name
                )  # each is called impossible elsewhere
                if turning[name] * SENSE[sense[1]] < -1e-9 * scale and not told_as_drawn:
                    yield f"the {name} turns the other way: {turning[name]:.4g} N·m"


def lies_behind(truth: Truth, name: str) -> bool:
    """Whether the moment arm or the centre of mass that was sought came out negative: the arm as drawn has the other
    sense.
    """
    return truth.case.solution.bent in (f"{name}.moment_arm", f"{name}.com") and truth.root.unknown < 0


@says(r"(?:minus sign|sign) says that (?P<who>.*?) push(?:es)? (?P<on>.*?) (?P<way>down|up|to the left|to the right)\b")
def minus(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    if " along" in found[0] or " across" in found[0]:
        return
    right, up = truth.root.values.get("reaction.right", 0.0), truth.root.values.get("reaction.up", 0.0)
    if not {"down": up < 0, "up": up > 0, "to the left": right < 0, "to the right": right > 0}[found["way"]]:
        yield f"the parts on the body are {right:.4g} and {up:.4g} N"


@says(r"(?P<sign>plus|minus) sign says that (?P<name>{name}) acts? (?P<way>upwards|downwards)")
def sign_of_a_letter(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    if (found["sign"] == "plus") != (found["way"] == "upwards"):
        yield "plus is up and minus is down"
    up = truth.expected.pulls[found["name"]].up
    size = truth.root.sizes[found["name"]]
    if up is not None and float(up[0]) * size * (1 if found["way"] == "upwards" else -1) < 0:
        yield "it acts the other way"


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


EDGE = r"straight \w+|horizontally to the \w+"
QUARTER = rf" between (?P<a>{EDGE}) and (?P<b>{EDGE}), at an angle that is sought"


@says(r"^The (?P<name>{name}) (?:points?|pulls?|acts?)" + QUARTER)
def within(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    words = {
        "straight down": 270.0,
        "straight up": 90.0,
        "horizontally to the right": 0.0,
        "horizontally to the left": 180.0,
    }
    name = found["name"]
    angle = truth.expected.direction(f"{name}.direction")
    a, b = words[found["a"]], words[found["b"]]
    middle = a + ((b - a + 180) % 360 - 180) / 2
    if angle is not None and abs((angle - middle + 180) % 360 - 180) > 45 + 1e-6:
        yield f"it points to {angle:.2f}°"


@says(r"turns the body (?P<sense>counter-clockwise|clockwise)")
def turns_body(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    names = truth.named(found.string[: found.start()])
    if names and " with " not in found.string[found.start() - 5 : found.end() + 6]:
        entry = truth.expected.tables[names[0]][1]
        if entry.get("turns") and entry["turns"] != found["sense"]:
            yield "it turns the other way"


@says(r"results are written to (?P<word>\w+) figures?")
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


@says(
    r"here with the (?P<fn>sine|cosine)(?: of the angle from the \w+)?: "
    r"(?:nothing at (?P<none>0|90)°, )?the whole distance at (?P<all>0|90)°(?:, nothing at (?P<last>0|90)°)?"
)
def ends(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    if (found["all"] == "90") != (found["fn"] == "sine") or found["all"] == (found["none"] or found["last"]):
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
