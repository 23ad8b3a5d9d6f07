"""How quantities, places and directions of a problem are put into words. Knows no sentence and works nothing out."""
from __future__ import annotations

from collections.abc import Mapping

from .english import its, the
from .equation import Quantity
from .problem import Direction, FromTable, Pair, Percent, Place, Problem, Unknown

_SIGNS: Mapping[str, str] = {"deg": "°", "lbf": "lb"}
_RAISED: Mapping[int, str] = {2: "²", -2: "⁻²", 3: "³"}
_LINES: Mapping[str, str] = {
    "up": "straight up", "down": "straight down", "left": "level to the left", "right": "level to the right"}


def told(quantity: Quantity) -> str:
    """The quantity as plain text, its figures as written and without its sign: "6.0 kg", "70°", "12 N·m"."""
    unit = "·".join(_SIGNS.get(name, name) + _RAISED.get(power, "") for name, power in quantity.unit)
    number = f"{abs(quantity.number):f}"
    return f"{number}{unit}" if unit == "°" else f"{number} {unit}".strip()


def share(of: Percent, whole: str, value: Quantity | None) -> str:
    """"83.9 % of the body mass of 74 kg"."""
    return f"{told(of.number)} of {whole}" + (f" of {told(value)}" if value else "")


def segment_of(problem: Problem, place: Place) -> str:
    """The name of the segment something acts on, "" where there is none."""
    return place.on or (problem.segments[-1].name if problem.segments else "")


def before(problem: Problem, segment: str) -> str:
    """The name of the segment whose far end this one starts at, "" at the pivot."""
    last = ""
    for each in problem.segments:
        if each.name == segment:
            return each.start or last
        last = each.name
    return ""


def along(problem: Problem, amount: object, segment: str, itself: bool = False) -> str:
    """Where something is on a segment: "33 cm from the elbow", "31 cm along the forearm from its near end".

    `itself` where the sentence speaks of the segment already.
    """
    pivot, its_end = the(problem.pivot.name), f"{its(segment)} near end"
    near = not before(problem, segment)
    origin = pivot if near else its_end
    start = "" if near or itself else f"along {the(segment)} "
    match amount:
        case Quantity(number) if number == 0:
            return f"at {pivot}" if near else f"at {its_end if itself else f'the near end of {the(segment)}'}"
        case Quantity(number):
            return f"{told(amount)} {start}from {origin}" + (", on the other side" if number < 0 else "")
        case Percent(number):
            length = f"{its(segment)} length" if itself else f"the length of {the(segment)}"
            return f"{told(number)} of {length} from {origin}"
        case FromTable():
            return "where a table of segments puts it"
    return f"at an unknown distance {start}from {origin}"


def point(problem: Problem, pair: Pair) -> str:
    """"10.0 cm to the right of and 3.0 cm above the hip"."""
    across, rise = pair
    parts = [f"{told(across)} to the {'right' if across.number > 0 else 'left'} of"] if across.number else []
    parts += [f"{told(rise)} {'above' if rise.number > 0 else 'below'}"] if rise.number else []
    return f"{' and '.join(parts) or 'at'} {the(problem.pivot.name)}"


def place(problem: Problem, where: Place) -> str:
    """Where a force acts, "" where only its moment arm is known."""
    if where.point is not None:
        return point(problem, where.point)
    return along(problem, where.at, segment_of(problem, where)) if where.at is not None else ""


def way(direction: Direction, segment: str) -> str:
    """Which way, with both lines of an angle named: "71° below the level, to the left"."""
    if direction.turn is None:
        return _line(direction.start, segment)
    unknown = isinstance(direction.turn, Unknown)
    angle = "at an unknown angle" if isinstance(direction.turn, Unknown) else told(direction.turn)
    match direction.start, direction.toward:
        case "left" | "right" as side, "up" | "down" as height:
            return f"{angle} {'above' if height == 'up' else 'below'} the level, to the {side}"
        case "up" | "down" as line, "left" | "right" as side:
            return f"{angle} to the {side} of {_LINES[line]}"
    first, second = (_noun(word, segment) for word in (direction.start, direction.toward))
    return f"{'' if unknown else 'at '}{angle} to {first}, turned toward {second}"


def _line(word: str, segment: str) -> str:
    return _LINES.get(word) or f"{word} along {the(segment)}"


def _noun(word: str, segment: str) -> str:
    match word:
        case "out" | "back":
            return f"the line {_line(word, segment)}"
        case "left" | "right":
            return f"the level line to the {word}"
    return _LINES[word]
