"""Directions and angles in words, as a teacher says them: "66.9° below the level, to the right". Knows no force."""

from __future__ import annotations

from collections.abc import Mapping

from ..problem.model import Direction

PLACES: Mapping[float, str] = {
    0.0: "straight to the right",
    90.0: "straight up",
    180.0: "straight to the left",
    270.0: "straight down",
}
_LINES: Mapping[str, str] = {
    "right": "the horizontal, to the right",
    "left": "the horizontal, to the left",
    "up": "straight up",
    "down": "straight down",
    "out": "the line of {}",
    "back": "the line back along {}",
}
_SIDES: Mapping[str, str] = {
    "right": "the right",
    "left": "the left",
    "up": "straight up",
    "down": "straight down",
    "out": "the way out along it",
    "back": "the way back along it",
}
_AGAINST: Mapping[str, str] = {
    "up": "down",
    "down": "up",
    "left": "right",
    "right": "left",
    "out": "back",
    "back": "out",
}
_STRAIGHT: Mapping[str, str] = {"right": PLACES[0.0], "up": PLACES[90.0], "left": PLACES[180.0], "down": PLACES[270.0]}


def direction_words(turn: float, acute: str = "") -> str:
    """A direction in words, `turn` degrees counter-clockwise from right; with its angle to the level as a page wrote
    it, where it did.
    """
    for exact, words in PLACES.items():
        if abs((turn - exact + 180) % 360 - 180) < 1e-6:
            return words
    side = "to the right" if turn < 90 or turn > 270 else "to the left"
    height = "above" if turn < 180 else "below"
    return (
        f"{acute or plain_degrees(turn % 180 if turn % 180 < 90 else 180 - turn % 180)} {height} the horizontal, {side}"
    )


def plain_degrees(angle: float) -> str:
    """An angle to a tenth of a degree; a whole one, as it was typed, without a decimal."""
    return f"{angle:.0f}°" if abs(angle - round(angle)) < 1e-7 else f"{angle:.1f}°"


def turned_words(direction: Direction, turn: float, shown: str = "", along: str = "the bone") -> str:
    """The direction that lies `turn` degrees on from where another starts; with the turn as a page wrote it, where
    it did. `along` is what the ways out and back are along.
    """
    start, toward, size = direction.start, direction.toward, turn % 360
    if size > 180:
        toward, size = _AGAINST[toward], 360 - size
    if size > 90 + 1e-9 and {start, toward} <= _STRAIGHT.keys():
        start, size = _AGAINST[start], 180 - size
    written = shown.lstrip("−-") if shown and abs(size - abs(turn)) < 1e-9 else plain_degrees(size)
    if not {start, toward} <= _STRAIGHT.keys():
        return f"{written} from {_LINES[start].format(along)}, toward {_SIDES[toward]}"
    if size < 1e-6 or abs(size - 90) < 1e-6:
        return _STRAIGHT[start if size < 1 else toward]
    if start in ("left", "right"):
        return f"{written} {'above' if toward == 'up' else 'below'} the horizontal, to the {start}"
    return f"{written} to the {toward} of straight {start}"


def sought_words(direction: Direction, along: str) -> str:
    """How an angle that is sought is counted; `along` is what the ways out and back are along."""
    return f"at an angle that is sought, {counted_words(direction, along)}"


def counted_words(direction: Direction, along: str) -> str:
    """From which line an angle is counted, and which way."""
    return f"counted from {_LINES[direction.start].format(along)}, toward {_SIDES[direction.toward]}"
