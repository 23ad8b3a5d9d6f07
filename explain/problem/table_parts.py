"""What the tables of a problem file have in common: which keys each may have, and how names, places, directions and
ranges are read.

Knows no table by itself.
"""

from __future__ import annotations

from collections.abc import Mapping

from . import amounts, directions
from .course_file import TURNS
from ..equation.terms import Quantity
from ..errors import shown
from .model import Direction, Place, Unknown
from .toml_table import Fields

_PLACE = ("at", "on", "point")
_PULL = ("name", *_PLACE, "direction", "toward", "moment_arm", "turns", "force", "count", "range")
KEYS: Mapping[str, tuple[str, ...]] = {
    "": (
        "title",
        "statement",
        "course",
        "neglect",
        "ask",
        "balanced",
        "figure",
        "pivot",
        "person",
        "segment",
        "load",
        "muscle",
        "force",
        "couple",
        "mark",
        "burden",
        "accept",
        "vary",
        "g",
    ),
    "pivot": ("name", "bone", "reaction", "support", "surface", "friction", "slips"),
    "person": ("mass", "height", "table", "sex"),
    "segment": ("name", "length", "direction", "mass", "weight", "com", "from", "range"),
    "load": ("name", "mass", "weight", *_PLACE, "spread", "spread_to"),
    "muscle": (*_PULL, "limit", "area", "share"),
    "force": (*_PULL, "hung"),
    "couple": ("name", "moment", "turns"),
    "mark": ("kind", "for", "marks", "needs"),
    "accept": ("line", "because", "after"),
}
SENSE: Mapping[str, int] = {word: 1 if meaning == "counter-clockwise" else -1 for word, meaning in TURNS.items()}
_RESERVED = ("reaction", "total")
LONGEST_NAME = 60


def legible_text(fields: Fields, key: str, example: str) -> str:
    """A text that stands in sentences and figures like a name; "" where the key is absent."""
    text = " ".join((fields.text(key, example) or "").split())
    if not text.isprintable() or len(text) > LONGEST_NAME:
        raise fields.wrong(
            key, f"a name of at most {LONGEST_NAME} characters that can be printed", f'{key} = "{example}"'
        )
    return text


def name_of(fields: Fields, example: str) -> str:
    name = fields.text("name", example)
    if name is None:
        raise fields.missing("name", "a name of its own", f'name = "{example}"')
    legible = name.isprintable() and any(each.isalpha() for each in name)
    if not legible or set(name) & set(".*×?") or len(name) > LONGEST_NAME:
        raise fields.wrong(
            "name", f"a name with letters, without . * × ?, of at most {LONGEST_NAME} characters", f'name = "{example}"'
        )
    if name.casefold() in _RESERVED:
        raise fields.fault(
            "name",
            f"{shown(name)}, which is kept for an answer of that name",
            "another name than " + " or ".join(_RESERVED),
            f'name = "{example}"',
        )
    return " ".join(name.split())


def another(fields: Fields, key: str) -> str:
    """The name of another segment, "" where the key is absent."""
    return " ".join((fields.text(key, "upper arm") or "").split())


def place_of(fields: Fields) -> Place:
    not_both(fields, "at", "point", 'at = "4.0 cm"')
    at = amounts.amount(fields, "at", "length", "any")
    return Place(at, another(fields, "on"), fields.pair("point", "length", "any"))


def direction_of(fields: Fields) -> Direction | None:
    return fields.read("direction", directions.read, directions.EXPECTED, 'direction = "30 deg below right"')


def turned_range(fields: Fields, direction: Direction | None) -> tuple[Quantity, Quantity] | None:
    ends = fields.pair("range", "angle", "zero")
    if ends is None:
        return None
    example = 'range = ["0 deg", "90 deg"]'
    if direction is None or not isinstance(direction.turn, Unknown):
        raise fields.fault(
            "range",
            "a range, but no angle that is sought",
            'a direction with "?" beside it',
            'direction = "? right of down"',
        )
    if not ends[0].number < ends[1].number <= 180:
        raise fields.fault(
            "range",
            f"a range from {ends[0].number} to {ends[1].number} deg",
            "two angles from 0 to 180 deg, the smaller first",
            example,
        )
    return ends


def not_both(fields: Fields, one: str, other: str, example: str) -> None:
    if fields.has(one) and fields.has(other):
        raise fields.fault(other, f"both {one} and {other}", f"only one of {one} and {other}", example)
