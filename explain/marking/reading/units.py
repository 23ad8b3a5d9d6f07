"""Units as they are typed behind a number: one word, or several with dots, dashes, strokes and powers. Knows no
factor.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping, Sequence

from ...equation.terms import Unit
from ...equation.unit_spellings import spellings, unit_of
from .tokens import Token
from .words import SMALL

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
_PER_SECOND: Mapping[str, Unit] = {"s": (("s", 1),), "sec": (("s", 1),), "s2": (("s", 2),), "sec2": (("s", 2),)}
Known = Callable[[str], bool]


def unit_word(text: str) -> Unit | None:
    """The unit that one word spells, in any case where it has two letters or more; a pound is ("lb", 1) and not yet
    settled.
    """
    found = _WORDS.get(text) or _ANY_CASE.get(text.casefold())
    if found is None and (raised := _RAISED.fullmatch(text)) and raised[1] in _LENGTHS:
        return ((raised[1], int(raised[2])),)
    return _POUND if found == _POUND_FORCE and text.casefold().rstrip("s.") in ("lb", "pound") else found


def are_one_unit(first: str, second: str) -> bool:
    """Whether two words side by side are a unit of moment: N m, ft lb."""
    unit = unit_word(first)
    return unit is not None and _usual(unit, second)


def spells_unit(text: str) -> bool:
    """Whether a word is a unit's in just these capitals: ft, not Ft."""
    return text in _WORDS


def read_unit(tokens: Sequence[Token], at: int, known: Known, pound: str = "lbf") -> tuple[Unit, int] | None:
    """The unit that stands from `at` on, and the place behind it; None where none stands. `known` tells the letters
    of the problem.
    """
    first = _one(tokens, at)
    if first is None:
        return None
    unit, at = first
    if unit in ((("deg", 1),), (("%", 1),)):
        return unit, at
    while (more := _more(tokens, at, unit, known)) is not None:
        unit, at = more
    return _settled(unit, pound), at


def _one(tokens: Sequence[Token], at: int) -> tuple[Unit, int] | None:
    """One unit word with its power."""
    token = tokens[at]
    if token.kind in ("degree", "percent"):
        return ((("deg" if token.kind == "degree" else "%"), 1),), at + 1
    if token.kind == "quote" and not token.spaced:
        unit = _WORDS.get(token.text)
        return (unit, at + 1) if unit else None
    if token.kind != "word":
        return None
    if token.text == "ms" and (power := _power(tokens, at + 1) or _close_power(tokens, at + 1)) and power[0] == -2:
        return (("m", 1), ("s", -2)), power[1]
    unit = unit_word(token.text)
    if unit is None or _is_preposition(tokens, at):
        return None
    after = at + 1 + _ends_short(tokens, at + 1)
    power = _power(tokens, after)
    return (_raised(unit, power[0]), power[1]) if power else (unit, after)


def _is_preposition(tokens: Sequence[Token], at: int) -> bool:
    """Whether an "in" is the word, not the inch: another word follows it that is no unit."""
    after = tokens[at + 1]
    if tokens[at].text.casefold() != "in" or after.kind != "word" or after.text.casefold() in ("x", "lb", "lbs", "lbf"):
        return False
    return unit_word(after.text) is not None or len(after.text) > 2 or after.text.casefold() in SMALL


def _ends_short(tokens: Sequence[Token], at: int) -> int:
    """1 where the point of a shortened unit ("lb.") stands, and goes on to a sign or ends the line."""
    after = tokens[at + 1]
    return int(
        tokens[at].kind == "stop"
        and not tokens[at].spaced
        and (after.spaced or after.kind in ("end", "comma", "close", "relation"))
    )


def _power(tokens: Sequence[Token], at: int) -> tuple[int, int] | None:
    """A power of a unit, -3 to 3, and the place behind it: ^2, ^(-2), -2 close by."""
    shapes = (
        ("power", "number"),
        ("power", "minus", "number"),
        ("power", "open", "number", "close"),
        ("power", "open", "minus", "number", "close"),
    )
    for shape in shapes:
        found = tokens[at : at + len(shape)]
        if tuple(each.kind for each in found) == shape:
            figure = next(each for each in found if each.kind == "number")
            size = int(figure.text) if figure.text in ("1", "2", "3") else 0
            return ((-size if "minus" in shape else size), at + len(shape)) if size else None
    return None


def _raised(unit: Unit, power: int) -> Unit:
    return tuple((name, each * power) for name, each in unit)


def _more(tokens: Sequence[Token], at: int, unit: Unit, known: Known) -> tuple[Unit, int] | None:
    """The unit with one more factor: N·m, N-m, N m, m/s², m s^-2; None where it ends."""
    sign, word = tokens[at], tokens[at + 1]
    if sign.kind == "word":
        return _beside(tokens, at, unit)
    close = not sign.spaced and not word.spaced
    if known(word.text) and not spells_unit(word.text) and word.text not in _PER_SECOND:
        return None  # in × Ft
    free = not known(word.text) or _usual(unit, word.text) or word.text in _PER_SECOND
    if word.kind != "word" or _is_times(sign, tokens, at):
        return None
    if sign.kind == "over" and (close or free) and (per := _per(tokens, at + 1)):
        return (*unit, *_raised(per[0], -1)), per[1]
    joins = (
        sign.kind in ("stop", "minus")
        and close
        or sign.kind == "times"
        and sign.text not in ("x", "X")
        and (close or free)
    )
    more = _one(tokens, at + 1) if joins else None
    return ((*unit, *more[0]), more[1]) if more else None


def _is_times(sign: Token, tokens: Sequence[Token], at: int) -> bool:
    """Whether a sign behind a unit multiplies what follows: a bracket or a number stands behind the next word."""
    return sign.kind in ("times", "minus") and tokens[at + 2].kind in ("number", "open") and not tokens[at + 2].spaced


def _beside(tokens: Sequence[Token], at: int, unit: Unit) -> tuple[Unit, int] | None:
    """A unit word after a space: N m, ft lb, m s^-2."""
    word = tokens[at].text
    if word in _PER_SECOND and (power := _power(tokens, at + 1) or _close_power(tokens, at + 1)) and power[0] < 0:
        return (*unit, ("s", power[0])), power[1]
    more = _one(tokens, at) if _usual(unit, word) else None
    return ((*unit, *more[0]), more[1]) if more else None


def _close_power(tokens: Sequence[Token], at: int) -> tuple[int, int] | None:
    """The power of "s-2"."""
    close = (
        tokens[at].kind == "minus"
        and not tokens[at].spaced
        and tokens[at + 1].kind == "number"
        and tokens[at + 1].text == "2"
    )
    return (-2, at + 2) if close else None


def _per(tokens: Sequence[Token], at: int) -> tuple[Unit, int] | None:
    word = tokens[at].text
    if word in _PER_SECOND:
        unit, after = _PER_SECOND[word], at + 1
        if tokens[after].kind == "over" and tokens[after + 1].text == "s":
            return (("s", 2),), after + 2
        power = _power(tokens, after)
        return (_raised(unit, power[0]), power[1]) if power else (unit, after)
    return _one(tokens, at)


def _usual(unit: Unit, word: str) -> bool:
    """Whether a word goes on a unit to one of the trade's: a force or mass and a length."""
    more = unit_word(word)
    if more is None or len(more) != 1 or len(unit) != 1:
        return False
    first, second = unit[0][0], more[0][0]
    return first in _FORCES and second in _LENGTHS or first in ("ft", "in") and second in ("lb", "lbf")


def _settled(unit: Unit, pound: str) -> Unit:
    """A pound with a length is a force; alone it is what the class says. Force stands before length."""
    force = len(unit) == 2 and bool({name for name, _ in unit} & set(_LENGTHS))
    pounds = {"lb": "lbf" if force else pound, "lbm": "lb"}
    told = tuple((pounds.get(name, name), power) for name, power in unit)
    return told if len(told) != 2 or told[0][0] not in _LENGTHS or told[1][0] not in _FORCES else (told[1], told[0])
