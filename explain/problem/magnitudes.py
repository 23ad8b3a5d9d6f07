"""How large and how small a quantity of a problem may be. Beyond that a slip of the pen is likelier than a limb, and
sums lose it.
"""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from ..equation.terms import Quantity
from ..errors import Fault
from ..exact.prime_field import STEP, scale

# In the units of the file format, so that a message can tell them: the least above nothing, and the most.
BOUNDS: Mapping[str, tuple[Quantity, Quantity]] = {
    "length": (Quantity.of("0.001", "mm"), Quantity.of("1000000", "m")),
    "mass": (Quantity.of("0.001", "g"), Quantity.of("1000000000", "kg")),
    "force": (Quantity.of("0.00001", "N"), Quantity.of("10000000", "kN")),
    "moment": (Quantity.of("0.001", "N mm"), Quantity.of("1000000000", "kN m")),
    "area": (Quantity.of("0.0001", "mm^2"), Quantity.of("10000", "m^2")),
    "acceleration": (Quantity.of("0.0001", "m s^-2"), Quantity.of("10000", "m s^-2")),
    "force per length": (Quantity.of("0.00001", "N m^-1"), Quantity.of("10000000000", "N m^-1")),
    "number": (Quantity.of("0.000001"), Quantity.of("1000000")),
    "percent": (Quantity.of("0.000001", "%"), Quantity.of("1000000", "%")),
}
UNIT_WORDS: Mapping[str, str] = {"acceleration": "m/s^2", "force per length": "N/m", "number": ""}


def in_metres(length: Quantity) -> Fraction:
    """A length in metres, exactly and with its sign."""
    return Fraction(length.number) * scale(length.unit)


def a_kind(kind: str) -> str:
    """A kind with its article: "a mass", "an area"."""
    return f"{'an' if kind[0] in 'aeiou' else 'a'} {kind}"


def within(found: Quantity, kind: str, example: str) -> Quantity:
    """The quantity, if it is of a size that can be worked with. Raises Fault, with no place."""
    if kind == "angle":
        return _of_a_millionth(found, example)
    least, most = BOUNDS[kind]
    size = abs(Fraction(found.number)) * scale(found.unit)
    if found.number and not Fraction(least.number) * scale(least.unit) <= size <= Fraction(most.number) * scale(
        most.unit
    ):
        what, bound = ("above", most) if size > Fraction(most.number) * scale(most.unit) else ("below", least)
        raise Fault(
            found=f"{found.number:g}{_unit(found, kind)}, {what} what can be worked with",
            expected=f"{a_kind(kind)} from {least.number:f}{_unit(least, kind)} to {most.number:f}{_unit(most, kind)}",
            example=f'"{example}"',
        )
    return found


def _of_a_millionth(found: Quantity, example: str) -> Quantity:
    if (Fraction(found.number) * STEP).denominator != 1:
        raise Fault(
            found=f"an angle of {found.number:f} deg, finer than a millionth of a degree",
            expected="an angle with at most six decimals",
            example=f'"{example}"',
        )
    return found


def _unit(quantity: Quantity, kind: str) -> str:
    word = UNIT_WORDS.get(
        kind, " ".join(name.replace("lbf", "lb") + (f"^{power}" if power > 1 else "") for name, power in quantity.unit)
    )
    return f" {word}" if word else ""
