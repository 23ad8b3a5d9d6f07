"""How quantities, places and directions of a problem are put into words. Knows no statement and works nothing out."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import replace

from ..document.english import (
    a,
    counted,
    each_of,
    force_of,
    head_word,
    is_of_the_body,
    is_proper,
    it,
    its,
    noun_of,
    the,
    weight_of,
)
from ..equation.terms import Quantity
from ..problem.model import Direction, FromTable, Hung, Load, Pair, Percent, Place, Problem, Pull, Unknown
from ..reference.segment_tables import PUBLISHED, plain_name

_SIGNS: Mapping[str, str] = {"deg": "°", "lbf": "lb"}
_RAISED: Mapping[int, str] = {2: "²", -2: "⁻²", 3: "³"}
_LINES: Mapping[str, str] = {
    "up": "straight up",
    "down": "straight down",
    "left": "horizontally to the left",
    "right": "horizontally to the right",
}
_SIDES: Mapping[str, str] = {
    "up": "up",
    "down": "down",
    "left": "to the left",
    "right": "to the right",
    "out": "outward",
    "back": "back",
}
_TABLES: Mapping[str, str] = {
    "dempster-winter": "Winter's table",
    "de-leva-1996": "de Leva's table",
    "plagenhoef-1983": "Plagenhoef's table",
    "clauser-1969": "Clauser's table",
}
_PEOPLE: Mapping[str, str] = {"female": "woman", "male": "man"}
_HALF, _SQUARE = 50, 90


def told(quantity: Quantity) -> str:
    """The quantity as plain text, its figures as written, without its sign: "6.0 kg", "70°", "12 N·m", "1.2 N/cm"."""
    if len(quantity.unit) == 2 and quantity.unit[1][1] == -1:
        force, length = (_SIGNS.get(name, name) for name, _ in quantity.unit)
        return f"{abs(quantity.number):f} {force}/{length}"
    unit = "·".join(_SIGNS.get(name, name) + _RAISED.get(power, "") for name, power in quantity.unit)
    number = f"{abs(quantity.number):f}"
    return f"{number}{unit}" if unit == "°" else f"{number} {unit}".strip()


def square_of(area: Quantity | None) -> str:
    """The unit of an area in words: "square centimetre"."""
    names = {"m": "metre", "mm": "millimetre", "in": "inch", "ft": "foot"}
    return f"square {names.get(area.unit[0][0], 'centimetre') if area is not None else 'centimetre'}"


def share_of_mass(problem: Problem, share: Percent) -> str:
    """ "83.9 % of the body mass of 74 kg"; of the whole "74 kg"."""
    mass = problem.person.mass if problem.person else None
    if mass and share.number.number == 100:
        return told(mass)
    return f"{told(share.number)} of the body mass" + (f" of {told(mass)}" if mass else "")


def share_of_weight(problem: Problem, share: Percent) -> str:
    """ "50 % of the body weight (body mass 62 kg)"."""
    mass = problem.person.mass if problem.person else None
    return f"{told(share.number)} of the body weight" + (f" (body mass {told(mass)})" if mass else "")


def from_table(problem: Problem) -> str:
    """ "from Plagenhoef's table for a woman of 61 kg"."""
    person = problem.person
    if person is None:
        return "from a table"
    table = _TABLES.get(PUBLISHED.get(plain_name(person.table), ""), "the class's own table")
    who = a(_PEOPLE.get(person.sex, "person"))
    return f"from {table} for {who}" + (f" of {told(person.mass)}" if person.mass else "")


def once(text: str, problem: Problem) -> str:
    """The text with the body's mass and the table in full where they come first, and in short after that."""
    mass = told(problem.person.mass) if problem.person and problem.person.mass else ""
    for full, short in (
        (f"the body mass of {mass}", "the body mass"),
        (f"the body weight (body mass {mass})", "the body weight"),
        (from_table(problem), "from the same table"),
    ):
        before, found, after = text.partition(full)
        text = before + found + after.replace(full, short)
    return text


def segment_of(problem: Problem, place: Place) -> str:
    """The name of the segment something acts on, "" where there is none."""
    return place.on or (problem.segments[-1].name if problem.segments else "")


def body_of(problem: Problem, item: object) -> str:
    """What something acts on, with its article: "the shank", "the body above the hip", "the body"."""
    segment = segment_of(problem, item.place) if isinstance(item, Pull | Load) else ""
    if segment:
        return the(segment)
    return the(problem.loads[0].name) if not problem.segments and len(problem.loads) == 1 else "the body"


def turned_body(problem: Problem, on: str = "") -> str:
    """What something turns about the pivot: the only segment, the one that is named, or all of them together."""
    if on or len(problem.segments) == 1:
        return the(on or problem.segments[0].name)
    if problem.segments:
        return "the whole limb" if all(_is_limb(segment.name) for segment in problem.segments) else "the whole"
    return "the body"


def what_out_is_along(problem: Problem, owner: str) -> str:
    """What the ways out and back are along in the direction of a pull, or of a segment: "the forearm"."""
    pull = next((each for each in problem.pulls if each.name == owner), None)
    segment = segment_of(problem, pull.place) if pull is not None else before(problem, owner)
    return the(segment) if segment else "the body"


def before(problem: Problem, segment: str) -> str:
    """The name of the segment whose far end this one starts at, "" at the pivot."""
    last = ""
    for each in problem.segments:
        if each.name == segment:
            return each.start or last
        last = each.name
    return ""


def along(problem: Problem, amount: object, segment: str, itself: bool = False) -> str:
    """Where something is on a segment: "33 cm from the elbow", "31 cm along the forearm", "at 42 % of its length".

    `itself` where the sentence speaks of the segment already.
    """
    pivot, near = the(problem.pivot.name), not before(problem, segment)
    whole = it(segment) if itself else the(segment)
    origin = f"from {pivot}" if near else f"along {whole}"
    match amount:
        case Quantity(number) if number == 0:
            return f"at {pivot}" if near else f"at the near end of {whole}"
        case Quantity(number) if number < 0:
            return f"{told(amount)} from {pivot if near else f'the near end of {whole}'}, on the other side"
        case Quantity():
            return f"{told(amount)} {origin}"
        case Percent(number) if number.number == _HALF and itself:
            return "in the middle"
        case Percent(number):
            length = f"{its(segment)} length" if itself else noun_of("length", segment)
            return f"at {told(number)} of {length}" + (f" from {pivot}" if near else "")
        case FromTable():
            return from_table(problem)
    return f"at an unknown distance {origin}"


def point(problem: Problem, pair: Pair) -> str:
    """ "10.0 cm to the right of and 3.0 cm above the hip"."""
    across, rise = pair
    parts = [f"{told(across)} to the {'right' if across.number > 0 else 'left'} of"] if across.number else []
    parts += [f"{told(rise)} {'above' if rise.number > 0 else 'below'}"] if rise.number else []
    return f"{' and '.join(parts) or 'at'} {the(problem.pivot.name)}"


def place(problem: Problem, where: Place) -> str:
    """Where a force acts, "" where only its moment arm is known."""
    if where.point is not None:
        return point(problem, where.point)
    return along(problem, where.at, segment_of(problem, where)) if where.at is not None else ""


def way(direction: Direction, segment: str, muscle: bool = False) -> str:
    """Which way, with the line of an angle named: "71° below the level, to the left", "at 70° to the mast, back and
    up".

    Of a `muscle` on a limb the line is "the bone".
    """
    if direction.turn is None:
        return _LINES.get(direction.start) or f"{direction.start} along {the(segment)}"
    angle = "at an unknown angle" if isinstance(direction.turn, Unknown) else told(direction.turn)
    match direction.start, direction.toward:
        case "left" | "right" as side, "up" | "down" as height:
            return f"{angle} {'above' if height == 'up' else 'below'} the horizontal, to the {side}"
        case "up" | "down" as line, "left" | "right" as side:
            return f"{angle} to the {side} of {_LINES[line]}"
    at = angle if angle.startswith("at ") else f"at {angle}"
    degrees = 0 if isinstance(direction.turn, Unknown) else direction.turn.number
    if direction.start in ("out", "back") and degrees <= _SQUARE:
        along_it = "" if degrees == _SQUARE else f"{_SIDES[direction.start]} and "
        bone = "the bone" if muscle and _is_limb(segment) else the(segment)
        return f"{at} to {bone}, {along_it}{_SIDES[direction.toward]}"
    first, second = (_noun(word, segment) for word in (direction.start, direction.toward))
    return f"{at} to {first}, turned toward {second}"


def left_out(problem: Problem) -> tuple[str, ...]:
    """What the author leaves out, and the weight of any segment that is given none, each once: "the weight of the
    tiller".
    """
    light = [each.name for each in problem.segments if not each.mass and not each.weight]
    unsaid = [
        name
        for name in light
        if not any(re.search(rf"(?<!\w){re.escape(name)}(?!\w)", said) for said in problem.neglect)
    ]
    return (*problem.neglect, *(weight_of(name) for name in unsaid))


def force_meaning(pull: Pull) -> str:
    """What the letter of a force means: "pull of the brachialis", "force of each hand (two alike)"."""
    if pull.count > 1:
        return f"{_noun_for(pull)} of {each_of(pull.name)} ({counted(pull.count)} alike)"
    return bare(noun_of("pull", pull.name) if pull.kind == "muscle" else force_of(pull.name))


def bare(said: str) -> str:
    """Without the article in front."""
    return said.removeprefix("the ")


def factor_meaning(problem: Problem, pull: Pull, other: str) -> str:
    """What the factor between two forces means: "pull of the brachialis compared with that of the biceps"."""
    noun = next((_noun_for(each) for each in problem.pulls if each.name == other), "weight")
    if noun == "weight":
        of_other = weight_of(other)
    elif noun == _noun_for(pull) == "pull":
        of_other = f"that of {the(other)}"
    else:
        of_other = noun_of(noun, other) if noun == "pull" else force_of(other)
    return f"{force_meaning(replace(pull, count=1))} compared with {of_other}"


def stands(load: Load, level: bool) -> str:
    """The verb for where a load is: a person is there, a thing rests on what is level; of all else only its weight
    acts.
    """
    noun = head_word(load.name)
    if is_proper(load.name) or noun in ("child", "friend", "person", "boy", "girl", "man", "woman", "rider"):
        return "be"
    if noun in ("painter", "walker", "worker", "car", "truck", "van"):
        return "stand"
    if noun in ("lantern", "bucket", "pail", "basket") or load.name.startswith("hanging "):
        return "hang"
    return "rest" if level and noun not in ("load", "weight") and not is_of_the_body(load.name) else "act"


def acts(pull: Pull) -> str:
    """The verb for a force: a rope can only pull and a floor only push; of all else it is only known that it acts."""
    straight_up = pull.direction is not None and (pull.direction.start, pull.direction.turn) == ("up", None)
    match head_word(pull.name):
        case _ if pull.kind == "muscle" or isinstance(pull.force, Hung):
            return "pull"
        case "hand" | "hands" | "carrier" | "carriers":
            return "lift" if straight_up else "push"
        case (
            "band"
            | "cable"
            | "chain"
            | "cord"
            | "halyard"
            | "line"
            | "rope"
            | "ropes"
            | "sling"
            | "stay"
            | "strap"
            | "string"
            | "wire"
        ):
            return "pull"
        case (
            "armrest"
            | "bench"
            | "counter"
            | "deck"
            | "floor"
            | "ground"
            | "hull"
            | "pad"
            | "pier"
            | "scale"
            | "seat"
            | "shore"
            | "slope"
            | "step"
            | "stream"
            | "support"
            | "table"
            | "trestle"
            | "wall"
            | "water"
            | "wheel"
            | "wheels"
            | "wind"
        ):
            return "push"
    return "act"


def _noun_for(pull: Pull) -> str:
    return "pull" if pull.kind == "muscle" else "force"


def _is_limb(segment: str) -> bool:
    return is_of_the_body(segment) and not segment.endswith(("trunk", "torso", "body", "neck", "head"))


def _noun(word: str, segment: str) -> str:
    match word:
        case "out" | "back":
            return f"the line {word} along {the(segment)}"
        case "left" | "right":
            return f"the horizontal line to the {word}"
    return _LINES[word]
