"""The tables of a problem file, one noun each: which keys each may have, which it must have, and which exclude each
other.

Knows nothing of what one table says about another.
"""

from __future__ import annotations


from . import amounts
from ..errors import shown
from .toml_table import Fields
from .load_table import load
from .model import Accept, Couple, Direction, Mark, Person, Segment
from .other_words import OTHER_WORDS
from .person_table import own_table
from .pivot_table import pivot
from .pull_table import pull
from .table_parts import KEYS, SENSE, another, direction_of, name_of, not_both, turned_range

__all__ = ("KEYS", "accept", "couple", "load", "mark", "person", "pivot", "pull", "segment")
MARKS = ("method", "accuracy", "independent", "communication")
LONGEST_LINE = 2_000  # characters of a line of working
_LINE = "F*4*sin70 = 39.24*32"


def person(fields: Fields) -> Person:
    fields.only(KEYS["person"])
    sex = fields.choice("sex", {"female": "female", "male": "male"}) or ""
    return Person(
        fields.quantity("mass", "mass"),
        fields.quantity("height", "length"),
        fields.text("table", "winter") or "",
        sex,
        own_table(fields),
    )


def segment(fields: Fields) -> Segment:
    fields.only(KEYS["segment"], OTHER_WORDS["segment"])
    name = name_of(fields, "forearm and hand")
    not_both(fields, "mass", "weight", 'mass = "2.4 kg"')
    mass, weight = amounts.heaviness(fields, amounts.tabled)
    com = amounts.tabled(fields, "com", "length", "any")
    heavy = "mass" if mass else "weight"
    if (mass or weight) and com is None:
        raise fields.missing(
            "com", f"the place of the centre of mass, since the segment has a {heavy}", 'com = "15 cm"'
        )
    if com and not (mass or weight):
        raise fields.missing(
            "mass",
            "the mass or the weight that acts at com (without both the segment is weightless)",
            'mass = "1.6 kg"',
        )
    direction = direction_of(fields) or Direction("right")
    return Segment(
        name,
        fields.quantity("length", "length"),
        direction,
        mass,
        weight,
        com,
        another(fields, "from"),
        turned_range(fields, direction),
    )


def couple(fields: Fields) -> Couple:
    fields.only(KEYS["couple"])
    name, moment = name_of(fields, "brake"), amounts.known_or_sought(fields, "moment", "moment")
    if moment is None:
        raise fields.missing("moment", 'the moment of the couple, or "?"', 'moment = "12 N m"')
    turns = fields.choice("turns", SENSE)
    if turns is None:
        raise fields.missing("turns", "which way it turns", 'turns = "counter-clockwise"')
    return Couple(name, moment, turns)


def mark(fields: Fields) -> Mark:
    """One row of a marking scheme; what it `needs` is looked at when the names are known."""
    fields.only(KEYS["mark"])
    kind = fields.choice("kind", {each: each for each in MARKS})
    what = " ".join((fields.text("for", "the weights in newtons") or "").split())
    needs = fields.texts("needs", "weights")
    if kind is None:
        raise fields.missing("kind", "one of " + ", ".join(MARKS), 'kind = "method"')
    if not fields.has("for"):
        raise fields.missing("for", "what the mark is for", 'for = "the weights in newtons"')
    if not what or len(what) > 300:
        raise fields.wrong("for", "what the mark is for, in at most 300 characters", 'for = "the weights in newtons"')
    told = needs or (("unit",) if kind == "communication" else ())
    return Mark(kind, what, fields.whole("marks", 1, 20) or 1, told)


def accept(fields: Fields) -> Accept:
    """One line that a person accepted."""
    fields.only(KEYS["accept"])
    line = fields.text("line", _LINE, LONGEST_LINE)
    if not line or not any(each.isdigit() or each in "=≈" for each in line) or "\n" in line:
        raise fields.fault(
            "line",
            shown(fields.values["line"]) if fields.has("line") else "nothing, the key is missing",
            "a line of working as a student typed it, with an equation or a value",
            f'line = "{_LINE}"',
        )
    because = " ".join((fields.text("because", "in this class the arm has no weight", 300) or "").split())
    return Accept(line, because, fields.texts("after", "W = 4*9.81 = 39.24 N") or ())
