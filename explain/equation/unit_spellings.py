"""How people spell the units of the trade, and which unit is meant: a closed table. Knows no factor and no
dimension.
"""

from __future__ import annotations

import re
from collections.abc import Mapping

from .terms import Unit

OFFERED: Mapping[str, tuple[str, ...]] = {
    "length": ("m", "cm", "mm", "in", "ft"),
    "mass": ("kg", "g", "lb"),
    "force": ("N", "kN", "lb", "lbf"),
    "angle": ("deg",),
    "moment": ("N m", "N cm", "N mm", "kN m", "ft lb", "in lb"),
    "area": ("cm^2", "mm^2", "m^2", "in^2"),
    "acceleration": ("m/s^2", "ft/s^2"),
    "force per length": ("N/cm", "N/m", "N/mm", "kN/m", "lb/ft", "lb/in"),
    "percent": ("%",),
    "number": (),
}

_LENGTHS = {
    "m": "m metre metres meter meters",
    "cm": "cm centimetre centimetres centimeter centimeters",
    "mm": "mm millimetre millimetres millimeter millimeters",
    "in": "in in. ins inch inches",
    "ft": "ft ft. foot feet",
}
_MASSES = {
    "kg": "kg kgs kilogram kilograms kilogramme kilogrammes",
    "g": "g gram grams gramme grammes",
    "lb": "lb lb. lbs lbs. lbm pound pounds",
}
_FORCES = {
    "N": "N newton newtons",
    "kN": "kN kilonewton kilonewtons",
    "lbf": "lbf lbf. lb lb. lbs lbs. pound pounds pound-force pounds-force",
}
_ANGLES = {"deg": "° deg deg. degs degree degrees"}
_SHARES = {"%": "% percent"}


def _turned(names: Mapping[str, str]) -> dict[str, str]:
    return {word: name for name, words in names.items() for word in words.split()}


_WORDS: Mapping[str, Mapping[str, str]] = {
    "length": _turned(_LENGTHS),
    "mass": _turned(_MASSES),
    "force": _turned(_FORCES),
    "angle": _turned(_ANGLES),
    "percent": _turned(_SHARES),
}
_PAIRS = frozenset({("N", "m"), ("N", "cm"), ("N", "mm"), ("kN", "m"), ("lbf", "ft"), ("lbf", "in")})
_AREAS = frozenset({"m", "cm", "mm", "in"})
_BETWEEN = re.compile(r"[ ·*.-]+")
_JOINED = re.compile(r"(kN|N)(m|cm|mm)|(ft|in|foot|inch)(lbf?s?|pounds?)|(lbf?s?)(ft|in)")
_SQUARE = re.compile(r"([a-z]{1,12})(?:\^?2)|(?:sq\.?|square) ([a-z]{1,12})")
_PER_SECOND_SQUARED = re.compile(
    r"([a-z]{1,6})(?:/s\^?2|/s/s|/\(s\^?2\)|[ ·]s\^?-2|/sec\^?2)|([a-z]{1,6}) per second(?: squared| per second)"
)
_PER_LENGTH = re.compile(r"([A-Za-z-]{1,14}) ?(?:/| per ) ?([a-z]{1,12})")
_PLAIN = str.maketrans(
    {
        "\u00a0": " ",
        "\u2007": " ",
        "\u2009": " ",
        "\u202f": " ",
        "\t": " ",
        "−": "-",
        "⋅": "·",
        "∙": "·",
        "²": "^2",
        "⁻": "^-",
        "º": "°",
        "˚": "°",
    }
)


def plainly(text: str) -> str:
    """The text with the signs that look alike made one: spaces, the true minus, the dot between units, raised
    figures.
    """
    return text.strip().translate(_PLAIN).replace("^-^2", "^-2").strip()


def unit_of(word: str, kind: str) -> Unit | None:
    """The unit that a spelling (made plain) means where a quantity of this kind stands; None for a spelling not in the
    table.

    A pound is `lb` as a mass and `lbf` as a force; a moment is always force before length.
    """
    match kind:
        case "number":
            return None if word else ()
        case "moment":
            return _moment(word)
        case "area":
            found = _SQUARE.fullmatch(word)
            length = _WORDS["length"].get(found[1] or found[2]) if found else None
            return ((length, 2),) if length in _AREAS else None
        case "acceleration":
            found = _PER_SECOND_SQUARED.fullmatch(word)
            length = _WORDS["length"].get(found[1] or found[2]) if found else None
            return ((length, 1), ("s", -2)) if length in ("m", "ft") else None
        case "force per length":
            found = _PER_LENGTH.fullmatch(word)
            pair = (_WORDS["force"].get(found[1], ""), _WORDS["length"].get(found[2], "")) if found else ("", "")
            return ((pair[0], 1), (pair[1], -1)) if pair in _PAIRS else None
    name = _WORDS[kind].get(word)
    return ((name, 1),) if name else None


def _moment(word: str) -> Unit | None:
    joined = _JOINED.fullmatch(word)
    parts = [part for part in joined.groups() if part] if joined else _BETWEEN.split(word)
    if len(parts) != 2:
        return None
    for first, second in (parts, reversed(parts)):
        pair = _WORDS["force"].get(first, ""), _WORDS["length"].get(second, "")
        if pair in _PAIRS:
            return (pair[0], 1), (pair[1], 1)
    return None


def kinds_of(word: str) -> tuple[str, ...]:
    """The kinds of quantity whose unit can be spelled so: "lb" is of ("mass", "force")."""
    return tuple(kind for kind in OFFERED if word and unit_of(word, kind) is not None)


def spellings(kind: str) -> tuple[str, ...]:
    """What may be written for this kind, the units offered first: for messages and tests, not all ways to spell a
    compound.
    """
    return tuple(dict.fromkeys((*OFFERED[kind], *_WORDS.get(kind, ()))))
