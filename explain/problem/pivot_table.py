"""The table [pivot]: where the body is cut free, what pushes there, and the rough surface that it may stand on."""

from __future__ import annotations

from fractions import Fraction

from . import amounts, directions
from ..equation.terms import Quantity
from .model import Direction, Pivot, Unknown
from .other_words import OTHER_WORDS
from .table_parts import KEYS, legible_text, not_both
from .toml_table import Fields

_RIGHT = Direction("right")


def pivot(fields: Fields) -> Pivot:
    fields.only(KEYS["pivot"], OTHER_WORDS["pivot"])
    reaction = fields.flag("reaction")
    not_both(fields, "bone", "support", 'support = "trestle"')
    support = legible_text(fields, "support", "trestle")
    if support and reaction is False:
        raise fields.fault(
            "support",
            "a support, and reaction = false",
            "only one of the two: with reaction = false nothing pushes at the pivot",
            "reaction = true",
        )
    return Pivot(
        legible_text(fields, "name", "elbow") or "pivot",
        legible_text(fields, "bone", "humerus"),
        reaction is not False,
        support,
        *_roughness(fields, reaction is not False),
    )


def _roughness(fields: Fields, pushed: bool) -> tuple[Fraction, Quantity | Unknown | None, int]:
    """The keys `surface`, `friction` and `slips`."""
    friction = amounts.known_or_sought(fields, "friction", "number")
    surface = _line(fields, "surface", "30 deg above right") or Fraction(0)
    slips = _line(fields, "slips", "left")
    if friction is None:
        for key in ("surface", "slips"):
            if fields.has(key):
                raise fields.missing(
                    "friction", f'the coefficient of friction that goes with {key}, or "?"', 'friction = "0.40"'
                )
        return surface, None, 0
    if not pushed:
        raise fields.fault(
            "friction",
            "friction, and reaction = false",
            "only one of the two: where nothing pushes there is no friction",
            "reaction = true",
        )
    if slips is None:
        return surface, friction, 0
    if isinstance(friction, Unknown):
        raise fields.fault(
            "slips",
            'slips, and friction = "?"',
            "a coefficient that is given: where the body is about to slip, all of it is used",
            'friction = "0.40"',
        )
    return surface, friction, _along(fields, surface, slips)


def _line(fields: Fields, key: str, example: str) -> Fraction | None:
    """A direction in degrees, which no segment and no sought angle may be part of."""
    direction = fields.read(key, directions.read, directions.EXPECTED, f'{key} = "{example}"')
    if direction is None:
        return None
    if directions.needs_segment(direction) or isinstance(direction.turn, Unknown):
        raise fields.wrong(key, "a direction that is told by up, down, left and right alone", f'{key} = "{example}"')
    return directions.bearing(direction, None)


def _along(fields: Fields, surface: Fraction, slips: Fraction) -> int:
    """+1 where a way leads along a surface, -1 where back along it. Raises Fault where it leads neither way, and where
    the surface slopes.
    """
    if surface % 90:
        raise fields.fault(
            "slips",
            "slips on a surface that slopes",
            "a horizontal or a vertical surface beside slips",
            'surface = "right"',
            'On a slope, friction = "?" gives the least coefficient, and friction = "0.40" is checked.',
        )
    between = (slips - surface) % 360
    if between in (90, 270):
        raise fields.wrong(
            "slips", "a way along the surface", 'slips = "left"' if surface % 180 == 0 else 'slips = "up"'
        )
    return 1 if between < 90 or between > 270 else -1
