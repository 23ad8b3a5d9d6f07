"""What a notation of formulas must be able to spell, and how letters, numbers and units are taken apart. Knows no
notation.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping, Sequence
from decimal import Decimal
from functools import lru_cache
from typing import NamedTuple, Protocol

from ..equation.terms import Quantity, Unit
from ..document.decimal_comma import CommaNumber
from ..document.untrusted_text import one_line

GREEK: Mapping[str, str] = dict(
    alpha="α",
    beta="β",
    gamma="γ",
    delta="δ",
    epsilon="ε",
    zeta="ζ",
    eta="η",
    theta="θ",
    iota="ι",
    kappa="κ",
    mu="μ",
    nu="ν",
    xi="ξ",
    pi="π",
    rho="ρ",
    sigma="σ",
    tau="τ",
    upsilon="υ",
    phi="φ",
    chi="χ",
    psi="ψ",
    omega="ω",
    Gamma="Γ",
    Delta="Δ",
    Theta="Θ",
    Lambda="Λ",
    Xi="Ξ",
    Pi="Π",
    Sigma="Σ",
    Phi="Φ",
    Psi="Ψ",
    Omega="Ω",
    **{"lambda": "λ"},
)
GREEK_NAME: Mapping[str, str] = {letter: name for name, letter in GREEK.items()}
INDICES = frozenset("xyz")  # a subscript that is itself a quantity is italic (ISO 80000-1)
UNIT_NAMES: Mapping[str, str] = {"lbf": "lb", "deg": "°"}


class Symbol(NamedTuple):
    """A letter taken apart: whether a capital sigma stands before it, its base, and its subscript."""

    summed: bool
    base: str
    subscript: str

    @property
    def pieces(self) -> tuple[str, ...]:
        """The subscript cut at commas and at the signs for "across" and "along", which are pieces of their own."""
        return tuple(piece.strip() for piece in re.split("([,⊥∥])", self.subscript) if piece.strip())


class Side(NamedTuple):
    """The written top or bottom of a fraction; `bare` says that it needs no brackets beside a slanted bar."""

    text: str
    bare: bool


class Notation(Protocol):
    """What one notation must be able to spell. `stacked` says that its fractions need no brackets."""

    @property
    def stacked(self) -> bool: ...

    def quantity(self, of: Quantity, struck: frozenset[str]) -> str: ...

    def letter(self, of: Symbol, exponent: int | None) -> str: ...

    def function(self, name: str, argument: str, inverse: bool, bracketed: bool) -> str: ...

    def fraction(self, top: Side, bottom: Side) -> str: ...

    def root(self, inner: str) -> str: ...

    def power(self, base: str, exponent: int) -> str: ...

    def bracket(self, inner: str, tall: bool) -> str:
        """Brackets that change the meaning."""

    def aside(self, inner: str, tall: bool) -> str:
        """Brackets that only keep neighbours apart."""

    def product(self, pieces: Sequence[str], crossed: bool) -> str: ...

    def total(self, terms: Sequence[tuple[int, str]]) -> str: ...

    def relation(self, sign: str) -> str: ...


@lru_cache(maxsize=4096)
def symbol(text: str) -> Symbol:
    """A letter's text taken apart: what follows the first underscore is the subscript, a Greek name is its letter."""
    whole = one_line(text).strip() or "\ufffd"
    base, _, subscript = whole.partition("_")
    if not base.strip():
        return Symbol(False, whole, "")
    inner = base.removeprefix("Σ").strip()
    summed = base.startswith("Σ") and bool(inner)
    letter = inner if summed else base.strip()
    return Symbol(summed, GREEK.get(letter, letter), subscript.strip())


def digits(number: Decimal, gap: str, minus: str) -> str:
    """Plain decimals, five and more digits before the point in groups of three (SI Brochure, 5.4.4)."""
    whole, point, part = format(abs(number), "f").partition(".")
    if len(whole) >= 5:
        whole = gap.join(re.findall(r"\d{1,3}(?=(?:\d{3})*$)", whole))
    mark = "," if point and isinstance(number, CommaNumber) else point
    return (minus if number < 0 else "") + whole + mark + part


def unit_line(unit: Unit, one: Callable[[str, int], str], dot: str, slash: str, brackets: tuple[str, str]) -> str:
    """A unit on one line: what has a positive power, then behind a slash the rest; `one` spells a name with its
    power.
    """
    above = dot.join(one(name, power) for name, power in unit if power > 0)
    below = [one(name, -power) for name, power in unit if power < 0]
    if not above:
        return dot.join(one(name, power) for name, power in unit)
    if len(below) > 1:
        return above + slash + brackets[0] + dot.join(below) + brackets[1]
    return above + "".join(slash + each for each in below)
