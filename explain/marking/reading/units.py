"""Units as they are typed behind a number, one word each. Knows no factor."""

from __future__ import annotations

import re
from collections.abc import Mapping

from ...equation.terms import Unit
from ...equation.unit_spellings import spellings, unit_of

_KINDS = ("length", "force", "mass", "angle", "percent")
_FORCES, _LENGTHS = ("N", "kN", "daN", "lbf", "lb", "kgf", "kg"), ("m", "cm", "mm", "dm", "ft", "in")
_MOMENT: Unit = (("N", 1), ("m", 1))
_MORE: Mapping[str, Unit] = {
    "kgf": (("kgf", 1),),
    "daN": (("daN", 1),),
    "dm": (("dm", 1),),
    "rad": (("rad", 1),),
    "rads": (("rad", 1),),
    "radian": (("rad", 1),),
    "radians": (("rad", 1),),
    "slug": (("slug", 1),),
    "slugs": (("slug", 1),),
    "J": _MOMENT,
    "joule": _MOMENT,
    "joules": _MOMENT,
    "lbm": (("lbm", 1),),
    "n": (("N", 1),),
    '"': (("in", 1),),
    "''": (("in", 1),),
    "'": (("ft", 1),),
}
_POUND: Unit = (("lb", 1),)
_POUND_FORCE: Unit = (("lbf", 1),)


def _table() -> dict[str, Unit]:
    plain: dict[str, Unit] = {}
    for kind in _KINDS:
        for word in spellings(kind):
            plain.setdefault(word, unit_of(word, kind) or ())
    plain |= _MORE
    joined = {first + second: (*_PLAIN_FORCES[first], (second, 1)) for first in _PLAIN_FORCES for second in _LENGTHS}
    joined |= {
        second + first: (*_PLAIN_FORCES[first], (second, 1))
        for first in ("lb", "lbf", "lbs")
        for second in ("ft", "in")
    }
    return joined | plain


_PLAIN_FORCES: Mapping[str, Unit] = {name: ((name.replace("lbs", "lb"), 1),) for name in (*_FORCES, "lbs")}
_WORDS: Mapping[str, Unit] = _table()
_ANY_CASE: Mapping[str, Unit] = {word.casefold(): unit for word, unit in reversed([*_WORDS.items()]) if len(word) > 1}
_RAISED = re.compile(r"([a-z]{1,2})([23])")


def unit_word(text: str) -> Unit | None:
    """The unit that one word spells, in any case where it has two letters or more; a pound is ("lb", 1) and not yet
    settled.
    """
    found = _WORDS.get(text) or _ANY_CASE.get(text.casefold())
    if found is None and (raised := _RAISED.fullmatch(text)) and raised[1] in _LENGTHS:
        return ((raised[1], int(raised[2])),)
    return _POUND if found == _POUND_FORCE and text.casefold().rstrip("s.") in ("lb", "pound") else found
