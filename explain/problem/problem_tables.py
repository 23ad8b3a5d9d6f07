"""The tables of a problem file, one noun each: which keys each may have, which it must have, and which exclude each
other.

Knows nothing of what one table says about another.
"""

from __future__ import annotations

from collections.abc import Mapping

from . import amounts, directions
from .course_file import TURNS
from ..equation.terms import Quantity
from ..errors import shown
from .toml_table import Fields
from .model import UNKNOWN, Accept, AtLimit, Couple, Direction, Load, Mark, Person, Pivot, Place, Pull, Segment, Unknown
from .other_words import OTHER_WORDS
from .person_table import own_table

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
    "pivot": ("name", "bone", "reaction"),
    "person": ("mass", "height", "table", "sex"),
    "segment": ("name", "length", "direction", "mass", "weight", "com", "from", "range"),
    "load": ("name", "mass", "weight", *_PLACE),
    "muscle": (*_PULL, "limit", "area"),
    "force": _PULL,
    "couple": ("name", "moment", "turns"),
    "mark": ("kind", "for", "marks", "needs"),
    "accept": ("line", "because", "after"),
}
MARKS = ("method", "accuracy", "independent", "communication")
_SENSE: Mapping[str, int] = {word: 1 if meaning == "counter-clockwise" else -1 for word, meaning in TURNS.items()}
_PLACES = {"load": '"35 cm"', "muscle": '"4.0 cm"', "force": '"29 cm"'}
_RESERVED = ("reaction", "total")
LONGEST_NAME = 60
LONGEST_LINE = 2_000  # characters of a line of working
_LINE = "F*4*sin70 = 39.24*32"


def pivot(fields: Fields) -> Pivot:
    fields.only(KEYS["pivot"], OTHER_WORDS["pivot"])
    reaction = fields.flag("reaction")
    return Pivot(
        _legible(fields, "name", "elbow") or "pivot", _legible(fields, "bone", "humerus"), reaction is not False
    )


def _legible(fields: Fields, key: str, example: str) -> str:
    """A text that stands in sentences and figures like a name; "" where the key is absent."""
    text = " ".join((fields.text(key, example) or "").split())
    if not text.isprintable() or len(text) > LONGEST_NAME:
        raise fields.wrong(
            key, f"a name of at most {LONGEST_NAME} characters that can be printed", f'{key} = "{example}"'
        )
    return text


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
    name = _name(fields, "forearm and hand")
    _not_both(fields, "mass", "weight", 'mass = "2.4 kg"')
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
    direction = _direction(fields) or Direction("right")
    return Segment(
        name,
        fields.quantity("length", "length"),
        direction,
        mass,
        weight,
        com,
        _another(fields, "from"),
        _range(fields, direction),
    )


def load(fields: Fields) -> Load:
    fields.only(KEYS["load"], OTHER_WORDS["load"])
    name = _name(fields, "jug")
    _not_both(fields, "mass", "weight", 'mass = "2.4 kg"')
    mass, weight = amounts.heaviness(fields, amounts.amount)
    if not (mass or weight):
        raise fields.missing("mass", "the load's mass or weight", 'mass = "3.0 kg"')
    place = _place(fields)
    if place.at is None and place.point is None:
        raise fields.missing("at", "where the load acts: at, or point", 'at = "33 cm"')
    return Load(name, place, mass, weight)


def pull(kind: str, fields: Fields) -> Pull:
    """A muscle (kind "muscle") or any other force (kind "force")."""
    fields.only(KEYS[kind], OTHER_WORDS[kind])
    name = _name(fields, "biceps" if kind == "muscle" else "cable")
    place, turns = _place(fields), fields.choice("turns", _SENSE) or 0
    arm = amounts.known_or_sought(fields, "moment_arm", "length")
    _not_both(fields, "direction", "toward", 'direction = "up"')
    direction, toward = _direction(fields), fields.pair("toward", "length", "any")
    _where_it_acts(kind, fields, placed=place.at is not None or place.point is not None)
    force = amounts.pull(fields)
    if force is None and kind == "force":
        raise fields.missing("force", 'the size of the force, or "?"', 'force = "95 N"')
    limit = amounts.known_or_sought(fields, "limit", "force")
    if isinstance(force, AtLimit) and kind == "force":
        raise fields.wrong("force", "a force that is no muscle, which alone has a limit", 'force = "95 N"')
    _check_limit(fields, UNKNOWN if force is None else force, limit)
    return Pull(
        kind,
        name,
        place,
        direction,
        toward,
        arm,
        turns,
        force or UNKNOWN,
        limit,
        fields.quantity("area", "area"),
        fields.whole("count", 1, 1000) or 1,
        _range(fields, direction),
    )


def couple(fields: Fields) -> Couple:
    fields.only(KEYS["couple"])
    name, moment = _name(fields, "brake"), amounts.known_or_sought(fields, "moment", "moment")
    if moment is None:
        raise fields.missing("moment", 'the moment of the couple, or "?"', 'moment = "12 N m"')
    turns = fields.choice("turns", _SENSE)
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


def _name(fields: Fields, example: str) -> str:
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


def _another(fields: Fields, key: str) -> str:
    """The name of another segment, "" where the key is absent."""
    return " ".join((fields.text(key, "upper arm") or "").split())


def _place(fields: Fields) -> Place:
    _not_both(fields, "at", "point", 'at = "4.0 cm"')
    at = amounts.amount(fields, "at", "length", "any")
    return Place(at, _another(fields, "on"), fields.pair("point", "length", "any"))


def _where_it_acts(kind: str, fields: Fields, placed: bool) -> None:
    """Refuse a force whose turning about the pivot is not settled."""
    if fields.has("moment_arm"):
        if not fields.has("turns"):
            raise fields.missing(
                "turns", "which way the force turns, since only its moment arm is given", 'turns = "counter-clockwise"'
            )
        if fields.has("toward") and not placed:
            raise fields.missing("at", "where the force acts, since it pulls toward a point", f"at = {_PLACES[kind]}")
        return
    if fields.has("turns"):
        raise fields.missing("moment_arm", "the moment arm that goes with turns", 'moment_arm = "4.0 cm"')
    if not placed:
        raise fields.missing(
            "at", "where the force acts: at, or point, or moment_arm with turns", f"at = {_PLACES[kind]}"
        )
    if not (fields.has("direction") or fields.has("toward")):
        raise fields.missing(
            "direction", "which way the force acts: direction, or toward, or moment_arm with turns", 'direction = "up"'
        )


def _direction(fields: Fields) -> Direction | None:
    return fields.read("direction", directions.read, directions.EXPECTED, 'direction = "30 deg below right"')


def _check_limit(fields: Fields, force: object, limit: Quantity | Unknown | None) -> None:
    """Refuse a pull at a limit that is not given, and a limit that is asked for but not reached."""
    if isinstance(force, AtLimit) and limit is None:
        raise fields.missing("limit", 'the limit that force = "limit" speaks of', 'limit = "900 N"')
    if isinstance(limit, Unknown) and not isinstance(force, AtLimit | Unknown):
        raise fields.wrong(
            "limit", 'a force; "?" only beside force = "limit", where the muscle reaches it', 'limit = "900 N"'
        )


def _range(fields: Fields, direction: Direction | None) -> tuple[Quantity, Quantity] | None:
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


def _not_both(fields: Fields, one: str, other: str, example: str) -> None:
    if fields.has(one) and fields.has(other):
        raise fields.fault(other, f"both {one} and {other}", f"only one of {one} and {other}", example)
