"""Quantities as people write them, read and converted exactly: the only module that knows the units library.

Factors: `data/units.txt`, from NIST Special Publication 811. The library sees unit names alone, never people's text.
"""

from __future__ import annotations

import difflib
import re
from collections.abc import Callable, Mapping
from decimal import ROUND_HALF_EVEN, Context, Decimal
from fractions import Fraction
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING, Any

from ..equation.terms import Quantity, Unit
from ..errors import Fault, shown
from .magnitudes import a_kind, within
from ..equation.unit_spellings import OFFERED, kinds_of, plainly, spellings, unit_of

if TYPE_CHECKING:
    from pint import UnitRegistry

EXAMPLES: Mapping[str, str] = {
    "length": "35 cm",
    "mass": "2.4 kg",
    "force": "95 N",
    "angle": "30 deg",
    "moment": "12 N m",
    "area": "9.5 cm^2",
    "acceleration": "9.81 m/s^2",
    "force per length": "1.2 N/cm",
    "number": "0.70",
    "percent": "50 %",
}
MOST_FIGURES = 30  # figures of a number, and at most two of its exponent
MOST_CHARACTERS = 80
ROUNDED_TO = 40  # figures kept where a converted number never ends
_READ_FOR_UNITS = 20_000  # characters of a file

# The number is matched as a whole and may not be followed by anything that could have belonged to it.
_NUMBER = re.compile(
    r"(?>([+-]?)((?:[0-9]+(?:\.[0-9]*)?|\.[0-9]+)(?:[eE][+-]?[0-9]{1,2})?))(?![0-9.,_+-]|[eExXbBoO][+-]?[0-9])"
)
_COMMA = re.compile(r"([+-]?[0-9]+),([0-9]+)(?![0-9,.])(.*)")
_BARE = re.compile(r"[A-Za-z]{1,20}")


def read(text: str, kind: str, usual: Callable[[], str] = str) -> Quantity:
    """The quantity that a text such as "4.0 cm" states; the number keeps its figures and its sign.

    kind: length, mass, force, angle, moment, area, acceleration, force per length, number (no unit), percent. `usual`
    gives the unit of the example where the text has none. Raises Fault, with no place.
    """
    plain = plainly(text)
    found = _NUMBER.match(plain) if len(plain) <= MOST_CHARACTERS else None
    if found is None:
        raise _unreadable(plain, kind)
    sign, figures = found.groups()
    mantissa = re.split("[eE]", figures)[0]
    if len(mantissa.replace(".", "")) > MOST_FIGURES:
        raise _fault(kind, f"{shown(text)}, more than {MOST_FIGURES} figures")
    if re.match("0[0-9]", mantissa):
        raise _fault(kind, f"{shown(text)}, a number with a needless nought in front", plain.lstrip("+-0"))
    word = " ".join(plain[found.end() :].split())
    unit = unit_of(word, kind)
    if unit is None:
        raise _wrong_unit(text, figures, word, kind, usual)
    number = Decimal(figures)
    return within(Quantity(-number if sign == "-" and number else number, unit), kind, EXAMPLES[kind])


def usual_unit(text: str, kind: str) -> str:
    """The unit that the quantities of a kind in a file's text have most often, "" where none is there."""
    found = re.findall(r"[0-9] ?([A-Za-z]{1,2}f?)\"", text[:_READ_FOR_UNITS])
    counts = {unit: found.count(unit) for unit in OFFERED[kind]}
    return max(counts, key=lambda unit: counts[unit]) if any(counts.values()) else ""


def convert(quantity: Quantity, unit: Unit) -> Quantity:
    """The same quantity in another unit, exactly; a number that would never end is rounded (half even) at 40 figures.

    A step of tens keeps the figures: 4.0 cm is 0.040 m. Raises Fault, with no place, where the kinds differ.
    """
    if quantity.unit == unit:
        return quantity
    return Quantity(_times(quantity.number, factor(quantity.unit, unit)), unit)


@cache
def factor(unit_from: Unit, unit_to: Unit) -> Fraction:
    """How many of `unit_to` one `unit_from` is, exactly. Raises Fault, with no place, where the kinds differ."""
    import pint

    registry = _registry()
    first, second = (
        registry.UnitsContainer({_library_name(name): power for name, power in unit}) for unit in (unit_from, unit_to)
    )
    unlike = Fault(
        found=f"{written_unit(unit_from)}, to be given in {written_unit(unit_to)}", expected="two units of one kind"
    )
    if not all(registry.parse_unit_name(name) for name in (*first, *second)):
        raise unlike
    try:
        return Fraction(registry.convert(Fraction(1), first, second))
    except pint.DimensionalityError as error:
        raise unlike from error


def written_unit(unit: Unit) -> str:
    """A unit as it would be typed: "cm", "N m", "m s^-2"; both pounds are "lb"."""
    names = ((name.replace("lbf", "lb"), power) for name, power in unit)
    return " ".join(name if power == 1 else f"{name}^{power}" for name, power in names)


def _times(number: Decimal, by: Fraction) -> Decimal:
    tens = _power_of_ten(by)
    if tens is not None:
        return Decimal(f"{number.scaleb(tens, Context(prec=2 * ROUNDED_TO)):f}")
    exact = Fraction(number) * by
    top, bottom, places = exact.numerator, exact.denominator, 0
    while bottom % 10 == 0:
        bottom, places = bottom // 10, places + 1
    for prime, other in ((2, 5), (5, 2)):
        while bottom % prime == 0:
            bottom, top, places = bottom // prime, top * other, places + 1
    if bottom == 1:
        return Decimal(top).scaleb(-places, Context(prec=10 * ROUNDED_TO))
    rounding = Context(prec=ROUNDED_TO, rounding=ROUND_HALF_EVEN)
    return rounding.divide(Decimal(exact.numerator), Decimal(exact.denominator))


def _power_of_ten(by: Fraction) -> int | None:
    many, sign = (by.numerator, 1) if by >= 1 else (by.denominator, -1)
    noughts = len(str(many)) - 1
    return sign * noughts if many == 10**noughts and 1 in (by.numerator, by.denominator) else None


@cache
def _registry() -> UnitRegistry[Any]:
    import pint

    return pint.UnitRegistry(str(Path(__file__).with_name("units.txt")), non_int_type=Fraction)


def _library_name(name: str) -> str:
    return "percent" if name == "%" else name


def _fault(kind: str, found: str, example: str = "", advice: str = "") -> Fault:
    units = ", ".join(OFFERED[kind])
    expected = {"number": "a number without a unit", "percent": "a number and %"}.get(
        kind, f"{a_kind(kind)}: a number, a space and a unit ({units})"
    )
    return Fault(found=found, expected=expected, example=f'"{example or EXAMPLES[kind]}"', advice=advice)


def _unreadable(plain: str, kind: str) -> Fault:
    comma = _COMMA.fullmatch(plain)
    if comma and len(plain) <= MOST_CHARACTERS:
        whole, rest, unit = comma.groups()
        advice = "A comma is not read: write a decimal point, and thousands without any mark."
        return _fault(kind, f"{shown(plain)}, a number with a comma", f"{whole}.{rest}{unit}", advice)
    return _fault(
        kind,
        f"{shown(plain)}, which does not begin with a number that can be read" if plain else "an empty text",
        advice="A number has the figures 0 to 9, one decimal point, and an exponent of at most two figures.",
    )


def _wrong_unit(text: str, figures: str, word: str, kind: str, usual: Callable[[], str]) -> Fault:
    unit = (not word and usual()) or (OFFERED[kind][0] if OFFERED[kind] else "")
    example = f"{figures} {unit}".strip()
    if not word:
        advice = "" if kind == "percent" else "A number stands in quotation marks, with its unit."
        return _fault(kind, f"{shown(text)}, a number without a unit", example, advice)
    if kind == "number":
        return _fault(kind, f"{shown(text)}, a number with a unit", example)
    others = kinds_of(word)
    if others:
        weighed = kind == "force" and "mass" in others
        advice = "A scale gives a mass; where a force is meant, give newtons or pounds." if weighed else ""
        return _fault(kind, f'{shown(text)}: "{word}" is a unit of {" or ".join(others)}', EXAMPLES[kind], advice)
    if _BARE.fullmatch(word) and (known := _known_elsewhere(figures, word, kind)):
        return known
    folded = {each.casefold(): each for each in reversed(spellings(kind))}
    near = difflib.get_close_matches(word.casefold(), folded, 1)
    return _fault(
        kind,
        f"{shown(text)}, with a unit that is not known, {shown(word, 30)}",
        f"{figures} {folded[near[0]]}" if near else "",
    )


def _known_elsewhere(figures: str, word: str, kind: str) -> Fault | None:
    """The fault for a unit that exists but is not offered, with its worth where the kind is right; None for no unit
    at all.
    """
    if not _registry().parse_unit_name(word):
        return None
    unit = unit_of(OFFERED[kind][0], kind) or ()
    try:
        worth = convert(Quantity(Decimal(figures), ((word, 1),)), unit)
    except Fault:
        return _fault(kind, f'"{figures} {word}": "{word}" is not a unit of {kind}')
    return _fault(kind, f'"{figures} {word}", in a unit that is not offered', f"{worth.number:f} {OFFERED[kind][0]}")
