"""Random slips in a written line: anything may become anything that has the same shape. Knows the equation types and no mechanics."""
from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from decimal import ROUND_DOWN, ROUND_HALF_DOWN, ROUND_HALF_EVEN, ROUND_HALF_UP, ROUND_UP, Context, Decimal
from random import Random
from typing import Any

from fifty_digits import Worthless, mp, over, unit_size, worth
from spoiling import INSTEAD, OTHER, _swap

from explain.equation import (
    Equation,
    Factor,
    Group,
    Inverse,
    Letter,
    Power,
    Quantity,
    Quotient,
    Root,
    Shown,
    Term,
    Terms,
    Trig,
    Unit,
    leaves,
    letters,
)

DEGREE: Unit = (("deg", 1),)
WAYS = (ROUND_HALF_UP, ROUND_HALF_EVEN, ROUND_UP, ROUND_DOWN, ROUND_HALF_DOWN)
ALIKE = {"N": ("kN", "lbf"), "kN": ("N", "lbf"), "lbf": ("N", "kN"), "m": ("cm", "mm", "in", "ft"), "cm": ("m", "mm", "in"), "mm": ("cm", "m"),
         "in": ("ft", "cm"), "ft": ("in", "m"), "kg": ("g", "lb"), "g": ("kg",), "lb": ("kg",)}


@dataclass(slots=True)
class Pool:
    """What may stand in a line of one problem: its letters, written numbers, terms, and names of forces."""

    letters: Sequence[Letter]
    factors: Sequence[Factor]
    terms: Sequence[Term]
    sources: Sequence[str]


class Slips:
    """Random slips, drawn from one source of chance."""

    def __init__(self, draw: Random, pool: Pool) -> None:
        self.draw, self.pool = draw, pool
        self.made = ""

    def one(self, line: Equation) -> tuple[str, Equation]:
        """The line with one slip, and what it was."""
        if self.draw.random() < 0.2:
            return self._whole(line)
        left = self.draw.random() < 0.4
        side = self.terms(line.left if left else line.right)
        return self.made, replace(line, left=side) if left else replace(line, right=side)

    def _pick(self, *ways: tuple[str, Any]) -> Any:
        """One of the ways, each a name and what it gives."""
        self.made, found = self.draw.choice(ways)
        return found() if callable(found) else found

    # ------------------------------------------------------------------ the whole line
    def _whole(self, line: Equation) -> tuple[str, Equation]:
        found = list({leaf.name: leaf for leaf in (*leaves(line.left), *leaves(line.right)) if isinstance(leaf, Letter)}.values())

        def swapped() -> Equation:
            if not self.pool.letters or not found:
                return line
            one, two = self.draw.choice(found), self.draw.choice([*found, *self.pool.letters])
            return Equation(_swap(line.left, one, two), _swap(line.right, one, two), line.rounded)

        def moved() -> Equation:
            if not line.right:
                return line
            place = self.draw.randrange(len(line.right))
            each = line.right[place]
            each = each.flipped() if self.draw.random() < 0.3 else each
            return Equation((*line.left, each), (*line.right[:place], *line.right[place + 1:]), line.rounded)
        flipped = tuple(each.flipped() for each in line.right)
        whole = Term(1, (Quantity.of(self.draw.choice(("180", "360", "90")), "deg"),))
        line = self._pick(("letters swapped", swapped), ("a term moved", moved), ("sides swapped", Equation(line.right, line.left, line.rounded)),
                          ("one side negated", replace(line, right=flipped)), ("one side to zero", replace(line, right=())),
                          ("left to zero", replace(line, left=())), ("both the same", Equation(line.left, line.left, line.rounded)),
                          ("written as rounded, or not", replace(line, rounded=not line.rounded)),
                          ("both sides negated", Equation(tuple(each.flipped() for each in line.left), flipped, line.rounded)),
                          ("an angle shifted by a turn", replace(line, right=(*line.right, whole if self.draw.random() < 0.5 else whole.flipped()))),
                          ("the angle beyond", replace(line, right=(whole, *flipped))),
                          ("another letter on the left", lambda: replace(line, left=(Term(1, (self._letter(),)),))))
        return self.made, line

    # ------------------------------------------------------------------ sums
    def terms(self, terms: Terms) -> Terms:
        if not terms:
            self.made = "a term added"
            return (self._any_term(),)
        place = self.draw.randrange(len(terms))
        before, each, after = terms[:place], terms[place], terms[place + 1:]
        if self.draw.random() < 0.62:
            return (*before, *self._term(each), *after)
        return self._pick(("a sign flipped", (*before, each.flipped(), *after)), ("a term dropped", (*before, *after)),
                          ("a term doubled", (*before, each, each, *after)), ("a term taken away again", (*before, each, each.flipped(), *after)),
                          ("a term added", lambda: (*terms, self._any_term())), ("another term", lambda: (*before, self._any_term(), *after)),
                          ("another source", lambda: (*before, replace(each, source=self._source()), *after)),
                          ("terms in another order", lambda: tuple(self.draw.sample(terms, len(terms)))),
                          ("sources swapped", lambda: self._sources_swapped(terms)),
                          ("in brackets", (Term(self.draw.choice((1, -1)), (Group(terms),)),)))

    def _sources_swapped(self, terms: Terms) -> Terms:
        sources = self.draw.sample([each.source for each in terms], len(terms))
        return tuple(replace(each, source=source) for each, source in zip(terms, sources, strict=True))

    def _source(self) -> str:
        return self.draw.choice((*self.pool.sources, ""))

    def _any_term(self) -> Term:
        return self.draw.choice(self.pool.terms) if self.pool.terms else Term(1, (Quantity.of("1"),))

    def _letter(self) -> Letter:
        return self.draw.choice(self.pool.letters)

    def _any_factor(self) -> Factor:
        return self.draw.choice(self.pool.factors)

    def _term(self, each: Term) -> Terms:
        factors = each.factors
        if not factors:
            self.made = "a factor added"
            return (replace(each, factors=(self._any_factor(),)),)
        place = self.draw.randrange(len(factors))
        if self.draw.random() < 0.78:
            new: tuple[Factor, ...] = (*factors[:place], self.factor(factors[place]), *factors[place + 1:])
        else:
            new = self._pick(("a factor dropped", (*factors[:place], *factors[place + 1:])), ("a factor doubled", (*factors, factors[place])),
                             ("a factor added", lambda: (*factors, self._any_factor())),
                             ("factors in another order", lambda: tuple(self.draw.sample(factors, len(factors)))),
                             ("a rounded number for a product", lambda: (self.rounded(Term(1, factors)),)))
        return (replace(each, factors=new),)

    # ------------------------------------------------------------------ factors
    def factor(self, factor: Factor) -> Factor:
        if self.draw.random() < 0.15:
            return self._any_shape(factor)
        match factor:
            case Letter():
                return self._pick(("another letter", self._letter), ("another factor", self._any_factor),
                                  ("a letter under another name", lambda: Letter(self._letter().name, factor.text)))
            case Quantity():
                return self._quantity(factor)
            case Shown():
                return self._shown(factor)
            case Trig(name, angle):
                return self._pick(("another function", Trig(self.draw.choice(OTHER[name]), angle)),
                                  ("an angle shifted", Trig(name, self._turned(angle))), ("", lambda: Trig(name, self._inner(angle))))
            case Inverse(name, terms):
                return self._pick(("another function", Inverse(self.draw.choice(OTHER[name]), terms)), ("", lambda: Inverse(name, self._into(terms))))
            case Quotient(top, bottom):
                return self._pick(("top and bottom swapped", Quotient(bottom, top)), ("", lambda: Quotient(self._into(top), bottom)),
                                  ("", lambda: Quotient(top, self._into(bottom))))
            case Power(base, exponent):
                return self._pick(("another power", Power(base, exponent + self.draw.choice((-2, -1, 1)))), ("a power left out", base),
                                  ("", lambda: Power(self._inner(base), exponent)))
            case Group(terms):
                return Group(self.terms(terms))
            case Root(terms):
                return self._pick(("a root left out", Group(terms)), ("", lambda: Root(self._into(terms))))
        return factor

    def _into(self, terms: Terms) -> Terms:
        return self.terms(terms)

    def _inner(self, factor: Factor) -> Factor:
        return self.factor(factor)

    def _any_shape(self, factor: Factor) -> Factor:
        one = (Term(1, (factor,)),)
        return self._pick(("squared", Power(factor, 2)), ("one over it", Quotient((Term(1, (Quantity.of("1"),)),), one)), ("negated", Group((Term(-1, (factor,)),))),
                          ("the root of it", Root(one)), ("the root of its square", Root((Term(1, (Power(factor, 2),)),))),
                          ("another factor", self._any_factor), ("the sine of it", Trig(self.draw.choice(("sin", "cos", "tan")), factor)),
                          ("a rounded number for it", lambda: self.rounded(one[0])), ("to no power", Power(factor, 0)),
                          ("the sine turned back", Inverse("sin", (Term(1, (Trig("sin", factor),)),))))

    def _turned(self, angle: Factor) -> Factor:
        size = Quantity.of(self.draw.choice(("90", "180", "360", "0.000001", "1")), "deg")
        signs = self.draw.choice(((1, -1), (1, 1), (-1, 1)))
        return Group((Term(signs[0], (size,)), Term(signs[1], (angle,))))

    # ------------------------------------------------------------------ numbers
    def _quantity(self, quantity: Quantity) -> Factor:
        number, unit = quantity.number, quantity.unit
        step = Decimal((0, (1,), int(number.as_tuple().exponent)))
        tiny = number + Decimal(self.draw.choice(("1e-9", "1e-20", "1e-30", "1e-40")))
        return self._pick(("the last figure changed", Quantity(number + self.draw.choice((step, -step)), unit)), ("a number finer by a trace", Quantity(tiny, unit)),
                          ("ten times", Quantity(number.scaleb(self.draw.choice((-1, 1, 2, -2))), unit)), ("a unit changed", lambda: Quantity(number, self._unit(unit))),
                          ("in another unit", lambda: self._converted(Term(1, (quantity,)), unit)), ("below zero", Quantity(-number, unit)),
                          ("rounded coarsely", lambda: self.rounded(Term(1, (quantity,)))), ("another factor", self._any_factor),
                          ("an angle shifted", lambda: self._turned(quantity)))

    def _shown(self, shown: Shown) -> Factor:
        number, unit = shown.value.number, shown.value.unit
        step = Decimal((0, (1,), int(number.as_tuple().exponent)))
        return self._pick(("the last figure changed", Shown(Quantity(number + self.draw.choice((step, -step)), unit), shown.of)),
                          ("a rounded number for its value", shown.value), ("what it stands for written out", Group((shown.of,))),
                          ("rounded coarsely", lambda: self.rounded(shown.of, unit)), ("a unit changed", lambda: Shown(Quantity(number, self._unit(unit)), shown.of)),
                          ("in another unit", lambda: self._converted(shown.of, unit)), ("rounded again", Shown(shown.value, Term(1, (shown.value,)))),
                          ("standing for another", lambda: Shown(shown.value, self._term(shown.of)[0])), ("below zero", Shown(Quantity(-number, unit), shown.of)),
                          ("rounded from a rounded one", lambda: self.rounded(Term(1, (shown,)), unit)))

    def _unit(self, unit: Unit) -> Unit:
        if not unit:
            return self.draw.choice((DEGREE, (("N", 1),), (("%", 1),), (("m", 1),)))
        place = self.draw.randrange(len(unit))
        name, power = unit[place]
        other = self.draw.choice(INSTEAD[name])
        return self._pick(("a unit changed", (*unit[:place], (other, power), *unit[place + 1:])), ("a unit dropped", (*unit[:place], *unit[place + 1:])),
                          ("a unit's power changed", (*unit[:place], (name, power + 1), *unit[place + 1:])))

    def _converted(self, of: Term, unit: Unit) -> Factor:
        """The same size in another unit, rounded to some figures."""
        other = tuple((self.draw.choice(ALIKE[name]) if name in ALIKE and self.draw.random() < 0.7 else name, power) for name, power in unit)
        return self.rounded(of, other)

    def rounded(self, of: Term, unit: Unit | None = None) -> Factor:
        """A rounded number for a term, to some figures, some way."""
        if letters((of,)):
            return Group((of,))
        unit = unit if unit is not None else next((f.unit if isinstance(f, Quantity) else f.value.unit for f in of.factors if isinstance(f, Quantity | Shown)), ())
        try:
            value = over(worth((of,), {}), unit_size(unit))
        except (Worthless, LookupError):
            return Group((of,))
        figures = self.draw.choice((0, 1, 2, 3, 4, 5, 6, 7, 9))
        exponent = 0 if not value else int(mp.floor(mp.log10(abs(value)))) + 1 - figures
        number = Decimal(mp.nstr(value, 45)).quantize(Decimal((0, (1,), exponent)), self.draw.choice(WAYS), Context(prec=60))
        self.made = f"rounded to {figures} figures"
        return Shown(Quantity(number, unit), of)

