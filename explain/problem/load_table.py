"""The table [[load]]: what pulls straight down, at one place or spread."""

from __future__ import annotations

from . import amounts
from .magnitudes import in_metres
from .model import Load, Spread
from .other_words import OTHER_WORDS
from .table_parts import KEYS, name_of, not_both, place_of
from .toml_table import Fields


def load(fields: Fields) -> Load:
    fields.only(KEYS["load"], OTHER_WORDS["load"])
    name = name_of(fields, "jug")
    not_both(fields, "mass", "weight", 'mass = "2.4 kg"')
    spread = _spread(fields)
    mass, weight = amounts.heaviness(fields, amounts.amount, amounts.spread_weight if spread else amounts.amount)
    if not (mass or weight):
        raise fields.missing("mass", "the load's mass or weight", 'mass = "3.0 kg"')
    place = place_of(fields)
    if place.at is None and place.point is None and spread is None:
        raise fields.missing("at", "where the load acts: at, or point, or spread", 'at = "33 cm"')
    return Load(name, place, mass, weight, spread)


def _spread(fields: Fields) -> Spread | None:
    """The keys `spread` and `spread_to` of a load."""
    example = 'spread = ["10 cm", "40 cm"]'
    growing = fields.choice("spread_to", {"one end": True}) or False
    ends = fields.pair("spread", "length", "any")
    if ends is None:
        if growing:
            raise fields.missing("spread", "the two distances between which the load grows", example)
        return None
    not_both(fields, "at", "spread", example)
    not_both(fields, "point", "spread", example)
    if in_metres(ends[0]) == in_metres(ends[1]):
        told = " and ".join(f"{each.number} {each.unit[0][0]}" for each in ends)
        raise fields.fault(
            "spread", told, "two distances that differ; what stands at one place has the key at", example
        )
    return Spread(ends, growing)
