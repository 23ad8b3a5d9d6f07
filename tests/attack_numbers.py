"""Random slips in a written number: its figures, its unit, its rounding, and what it stands for."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from decimal import ROUND_DOWN, ROUND_HALF_DOWN, ROUND_HALF_EVEN, ROUND_HALF_UP, ROUND_UP, Context, Decimal
from random import Random
from typing import Any

from fifty_digits import Worthless, mp, over, unit_size, worth
from spoiling import INSTEAD

from explain.equation.terms import Factor, Group, Letter, Quantity, Shown, Term, Unit, letters

DEGREE: Unit = (("deg", 1),)
TRACES = ("1e-9", "1e-20", "1e-30", "1e-40")
FIGURES = (0, 1, 2, 3, 4, 5, 6, 7, 9)
WAYS = (ROUND_HALF_UP, ROUND_HALF_EVEN, ROUND_UP, ROUND_DOWN, ROUND_HALF_DOWN)
ALIKE = {
    "N": ("kN", "lbf"),
    "kN": ("N", "lbf"),
    "lbf": ("N", "kN"),
    "kg": ("g", "lb"),
    "g": ("kg",),
    "lb": ("kg",),
    "m": ("cm", "mm", "in", "ft"),
    "cm": ("m", "mm", "in"),
    "mm": ("cm", "m"),
    "in": ("ft", "cm"),
    "ft": ("in", "m"),
}
Ways = dict[str, Callable[[], Any]]


@dataclass(slots=True)
class Pool:
    """What may stand in a line of one problem: its letters, its factors and terms, and the names of its forces."""

    letters: Sequence[Letter]
    factors: Sequence[Factor]
    terms: Sequence[Term]
    sources: Sequence[str]


class Numbers:
    """Slips in numbers, drawn from one source of chance; `made` says what the last slip was."""

    def __init__(self, draw: Random, pool: Pool) -> None:
        self.draw, self.pool = draw, pool
        self.made = ""

    def one_of(self, ways: Ways) -> Any:
        """What one of the ways gives."""
        self.made = self.draw.choice(list(ways))
        return ways[self.made]()

    def any_factor(self) -> Factor:
        return self.draw.choice(self.pool.factors)

    def any_number(self, factor: Factor) -> Factor:
        """Some number of the problem, as if it stood for this factor."""
        numbers = [each.value if isinstance(each, Shown) else each for each in self.pool.factors]
        found = [each for each in numbers if isinstance(each, Quantity)]
        return Shown(self.draw.choice(found), Term(1, (factor,))) if found else factor

    def turned(self, angle: Factor) -> Factor:
        """An angle shifted, or taken from a quarter, a half or a whole turn."""
        size = Quantity.of(self.draw.choice(("90", "180", "360", "0.000001", "1")), "deg")
        signs = self.draw.choice(((1, -1), (1, 1), (-1, 1)))
        return Group((Term(signs[0], (size,)), Term(signs[1], (angle,))))

    def quantity(self, quantity: Quantity) -> Factor:
        number, unit = quantity.number, quantity.unit
        found: Factor = self.one_of(
            {
                "the last figure changed": lambda: Quantity(number + self._step(number), unit),
                "a number finer by a trace": lambda: Quantity(number + Decimal(self.draw.choice(TRACES)), unit),
                "ten times": lambda: Quantity(number.scaleb(self.draw.choice((-2, -1, 1, 2))), unit),
                "below zero": lambda: Quantity(-number, unit),
                "a unit changed": lambda: Quantity(number, self.other_unit(unit)),
                "in another unit": lambda: self.converted(Term(1, (quantity,)), unit),
                "rounded": lambda: self.rounded(Term(1, (quantity,))),
                "another factor": self.any_factor,
                "an angle shifted": lambda: self.turned(quantity),
            }
        )
        return found

    def shown(self, shown: Shown) -> Factor:
        number, unit, of = shown.value.number, shown.value.unit, shown.of
        found: Factor = self.one_of(
            {
                "the last figure changed": lambda: Shown(Quantity(number + self._step(number), unit), of),
                "below zero": lambda: Shown(Quantity(-number, unit), of),
                "a unit changed": lambda: Shown(Quantity(number, self.other_unit(unit)), of),
                "in another unit": lambda: self.converted(of, unit),
                "rounded": lambda: self.rounded(of, unit),
                "rounded again": lambda: self.rounded(Term(1, (shown.value,)), unit),
                "rounded from a rounded one": lambda: self.rounded(Term(1, (shown,)), unit),
                "the number for what it stands for": lambda: shown.value,
                "the number stands for itself": lambda: Shown(shown.value, Term(1, (shown.value,))),
                "what it stands for written out": lambda: Group((of,)),
                "standing for another": lambda: Shown(shown.value, self.draw.choice(self.pool.terms or (of,))),
            }
        )
        return found

    def _step(self, number: Decimal) -> Decimal:
        step = Decimal((0, (1,), int(number.as_tuple().exponent)))
        return self.draw.choice((step, -step))

    def other_unit(self, unit: Unit) -> Unit:
        if not unit:
            return self.draw.choice((DEGREE, (("N", 1),), (("%", 1),), (("m", 1),)))
        place = self.draw.randrange(len(unit))
        name, power = unit[place]
        before, after = unit[:place], unit[place + 1 :]
        other = self.draw.choice(INSTEAD[name])
        new: tuple[Unit, ...] = (((other, power),), (), ((name, power + 1),))
        return (*before, *self.draw.choice(new), *after)

    def converted(self, of: Term, unit: Unit) -> Factor:
        """The same size in another unit, rounded to some figures."""
        return self.rounded(of, tuple((self._alike(name), power) for name, power in unit))

    def _alike(self, name: str) -> str:
        return self.draw.choice(ALIKE[name]) if name in ALIKE and self.draw.random() < 0.7 else name

    def rounded(self, of: Term, unit: Unit | None = None) -> Factor:
        """A rounded number for a term, to some figures, some way."""
        if letters((of,)):
            return Group((of,))
        if unit is None:
            numbers = [each.value if isinstance(each, Shown) else each for each in of.factors]
            unit = next((each.unit for each in numbers if isinstance(each, Quantity)), ())
        try:
            value = over(worth((of,), {}), unit_size(unit))
        except (Worthless, LookupError):
            return Group((of,))
        figures = self.draw.choice(FIGURES)
        exponent = 0 if not value else int(mp.floor(mp.log10(abs(value)))) + 1 - figures
        exact, last = Decimal(mp.nstr(value, 45)), Decimal((0, (1,), exponent))
        self.made = f"rounded to {figures} figures"
        return Shown(Quantity(exact.quantize(last, self.draw.choice(WAYS), Context(prec=60)), unit), of)
