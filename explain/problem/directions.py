"""How a direction is written in words and what lies on one line with it. Knows no force and no body."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from fractions import Fraction

from . import quantity
from ..equation.terms import Quantity
from ..errors import Fault, nearest, shown
from .model import UNKNOWN, Direction, Unknown
from ..equation.unit_spellings import plainly

_OPPOSITE: Mapping[str, str] = {
    "up": "down",
    "down": "up",
    "left": "right",
    "right": "left",
    "out": "back",
    "back": "out",
}
_BEARING: Mapping[str, int] = {"right": 0, "up": 90, "left": 180, "down": 270}
_SIDE: Mapping[str, str] = {"above": "up", "below": "down"}
_LEVEL = ("horizontal", "level", "ground", "floor", "horizon", "x-axis")
_UPRIGHT = ("vertical", "upright", "plumb", "y-axis")
EXPECTED = (
    'a direction: up, down, left, right, out, back, or an angle with two directions such as "30 deg below right", '
    '"20 deg left of up", "70 deg from back toward up"'
)
LONGEST = 120


def read(text: str) -> Direction:
    """The direction that a text states; "?" may stand for its angle. Raises Fault, with no place."""
    words = plainly(text[: LONGEST + 1]).split()
    if len(text) > LONGEST or not words:
        raise _fault(text, "")
    match words:
        case [start] if start in _OPPOSITE:
            return Direction(start, written=text.strip())
        case [*turn, "above" | "below" as side, "left" | "right" as start]:
            return _between(text, turn, start, _SIDE[side])
        case [*turn, "left" | "right" as side, "of", "up" | "down" as start]:
            return _between(text, turn, start, side)
        case [*turn, "from", start, "toward" | "towards", end] if start in _OPPOSITE and end in _OPPOSITE:
            return _between(text, turn, start, end)
    raise _half_told(text, words) or _fault(text, words[0] if len(words) == 1 else "")


def _between(text: str, turn: Sequence[str], start: str, end: str) -> Direction:
    if end in (start, _OPPOSITE[start]):
        raise one_line(text, start, end)
    return Direction(start, _turn(text, turn), end, text.strip())


def _turn(text: str, words: Sequence[str]) -> Quantity | Unknown:
    match words:
        case []:
            raise _fault(text, "")
        case ["?"] | ["?", "deg" | "degrees" | "°"] | ["?°"]:
            return UNKNOWN
    try:
        turn = quantity.read(" ".join(words), "angle")
    except Fault as fault:
        behind = " ".join(plainly(text).split()[len(words) :])
        example = f'{fault.example[:-1]} {behind}"'
        raise fault.placed(fault.file, fault.line, fault.key, example) from None
    if not 0 <= turn.number <= 180:
        raise Fault(
            found=f"an angle of {turn.number} deg in {shown(text)}",
            expected="an angle from 0 to 180 deg",
            example='"30 deg below right"',
            advice="Turn the other way round, or start from another direction.",
        )
    return turn


def one_line(text: str, start: str, end: str) -> Fault:
    """The fault for an angle between two directions that lie on one line."""
    return Fault(
        found=f"{shown(text)}: {start} and {end} lie on one line, so the way to turn is not told",
        expected="two directions that are neither the same nor opposite",
        example='"70 deg from back toward up"',
    )


def bearing(direction: Direction, along: Fraction | None) -> Fraction | None:
    """Degrees counter-clockwise from right; `along` is the bearing of out. None where a "?" is in it.

    Raises Fault, with no place, where both of its directions lie on one line.
    """
    start = _ray(direction.start, along)
    if direction.turn is None or start is None:
        return start
    end = _ray(direction.toward, along)
    if end is None:
        return None
    between = (end - start) % 360
    if between in (0, 180):
        raise one_line(direction.written, direction.start, direction.toward)
    if isinstance(direction.turn, Unknown):
        return None
    turn = Fraction(direction.turn.number)
    return (start + (turn if between < 180 else -turn)) % 360


def needs_segment(direction: Direction) -> bool:
    """Whether out or back is part of it, which only a segment gives a meaning."""
    return bool({direction.start, direction.toward} & {"out", "back"})


def _ray(word: str, along: Fraction | None) -> Fraction | None:
    if word in _BEARING:
        return Fraction(_BEARING[word])
    return along if along is None or word == "out" else (along + 180) % 360


def _half_told(text: str, words: Sequence[str]) -> Fault | None:
    """The fault for an angle to a line that is named, but not to which of its two ends; None for any other text."""
    match [word for word in words if word not in ("the", "a")]:
        case [number, unit, "above" | "below" as side, line] if line in _LEVEL:
            expected, example = f'"{side}" with left or right', f"{number} {unit} {side} right"
            advice = f"The horizontal has two ends: {side} right begins at right, {side} left at left."
        case [number, unit, "to" | "from" | "with" | "off" | "of", line] if line in (*_LEVEL, *_UPRIGHT):
            level = line in _LEVEL
            expected = "above or below, left or right" if level else "left or right of up or of down"
            example = f"{number} {unit} above right" if level else f"{number} {unit} right of up"
            advice = "The line alone leaves two ends and two sides: say from which end, and to which side."
        case [number, unit, "to" | "from" | "with", *bone] if bone:
            expected = "the end of the bone where the angle begins, and the way it opens"
            example = f"{number} {unit} from back toward up"
            advice = "Along a segment, back is towards its near end and out is away from it."
        case [number, *_] if number[0].isdecimal() and len(words) <= 2:
            expected, example = "where the angle begins, and the way it opens", f"{number.rstrip('°')} deg above right"
            advice = "An angle alone has no direction yet."
        case _:
            return None
    return Fault(found=shown(text), expected=expected, example=f'"{example}"', advice=advice)


def _fault(text: str, word: str) -> Fault:
    return Fault(found=shown(text), expected=EXPECTED, example=f'"{nearest(word, _OPPOSITE) or "30 deg below right"}"')
