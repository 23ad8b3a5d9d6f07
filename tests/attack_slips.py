"""Random slips in a written line: anything may become anything of its shape. Knows no mechanics."""

from __future__ import annotations

from dataclasses import replace

from attack_numbers import Numbers
from spoiling import OTHER, _swap

from explain.equation.terms import (
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
    leaves,
)

ONE = Quantity.of("1")
TWO_HALVES = (Root((Term(1, (Quantity.of("4"),)),)), Quantity.of("0.5"))


class Slips(Numbers):
    """Random slips in lines, sums and factors."""

    def one(self, line: Equation) -> tuple[str, Equation]:
        """The line with one slip, and what it was."""
        if self.draw.random() < 0.2:
            return self._whole(line)
        left = self.draw.random() < 0.4
        side = self.terms(line.left if left else line.right)
        return self.made, replace(line, left=side) if left else replace(line, right=side)

    # ------------------------------------------------------------------ the whole line
    def _whole(self, line: Equation) -> tuple[str, Equation]:
        left, right, rounded = line.left, line.right, line.rounded
        flipped = tuple(each.flipped() for each in right)
        turn = Term(1, (Quantity.of(self.draw.choice(("180", "360", "90")), "deg"),))
        found: Equation = self.one_of(
            {
                "letters swapped": lambda: self._swapped(line),
                "a letter written as another": lambda: self._renamed(line),
                "a term moved": lambda: self._moved(line),
                "sides swapped": lambda: Equation(right, left, rounded),
                "one side negated": lambda: Equation(left, flipped, rounded),
                "both sides negated": lambda: Equation(tuple(each.flipped() for each in left), flipped, rounded),
                "the right nothing": lambda: Equation(left, (), rounded),
                "the left nothing": lambda: Equation((), right, rounded),
                "both sides the same": lambda: Equation(left, left, rounded),
                "written as rounded, or not": lambda: Equation(left, right, not rounded),
                "an angle more": lambda: Equation(left, (*right, turn), rounded),
                "an angle less": lambda: Equation(left, (*right, turn.flipped()), rounded),
                "the angle beyond": lambda: Equation(left, (turn, *flipped), rounded),
                "another letter on the left": lambda: Equation((Term(1, (self._letter(),)),), right, rounded),
            }
        )
        return self.made, found

    def _swapped(self, line: Equation) -> Equation:
        found = list({leaf: None for leaf in (*leaves(line.left), *leaves(line.right)) if isinstance(leaf, Letter)})
        if not found:
            return line
        one, two = self.draw.choice(found), self.draw.choice([*found, *self.pool.letters])
        return Equation(_swap(line.left, one, two), _swap(line.right, one, two), line.rounded)

    def _renamed(self, line: Equation) -> Equation:
        """One letter throughout as it is written for another quantity."""
        found = [leaf for leaf in (*leaves(line.left), *leaves(line.right)) if isinstance(leaf, Letter)]
        if not found:
            return line
        one = self.draw.choice(found)
        other = Letter(one.name, self._letter().text)
        return Equation(_swap(line.left, one, other), _swap(line.right, one, other), line.rounded)

    def _moved(self, line: Equation) -> Equation:
        """A term on the other side, mostly with the sign it had."""
        if not line.right:
            return line
        place = self.draw.randrange(len(line.right))
        each = line.right[place]
        each = each.flipped() if self.draw.random() < 0.3 else each
        return Equation((*line.left, each), (*line.right[:place], *line.right[place + 1 :]), line.rounded)

    # ------------------------------------------------------------------ sums
    def terms(self, terms: Terms) -> Terms:
        if not terms:
            self.made = "a term added"
            return (self._any_term(),)
        place = self.draw.randrange(len(terms))
        before, each, after = terms[:place], terms[place], terms[place + 1 :]
        if self.draw.random() < 0.62:
            return (*before, self._term(each), *after)
        found: Terms = self.one_of(
            {
                "a sign flipped": lambda: (*before, each.flipped(), *after),
                "a term dropped": lambda: (*before, *after),
                "a term doubled": lambda: (*before, each, each, *after),
                "a term taken away again": lambda: (*before, each, each.flipped(), *after),
                "a term added": lambda: (*terms, self._any_term()),
                "another term": lambda: (*before, self._any_term(), *after),
                "another source": lambda: (*before, replace(each, source=self.draw.choice(self.pool.sources)), *after),
                "the other root of four": lambda: (
                    *before,
                    replace(each.flipped(), factors=each.factors + TWO_HALVES),
                    *after,
                ),
                "sources swapped": lambda: self._sources_swapped(terms),
                "terms in another order": lambda: tuple(self.draw.sample(terms, len(terms))),
                "in brackets": lambda: (Term(self.draw.choice((1, -1)), (Group(terms),)),),
            }
        )
        return found

    def _sources_swapped(self, terms: Terms) -> Terms:
        sources = self.draw.sample([each.source for each in terms], len(terms))
        return tuple(replace(each, source=source) for each, source in zip(terms, sources, strict=True))

    def _any_term(self) -> Term:
        return self.draw.choice(self.pool.terms) if self.pool.terms else Term(1, (ONE,))

    def _letter(self) -> Letter:
        return self.draw.choice(self.pool.letters)

    def _term(self, each: Term) -> Term:
        factors = each.factors
        if not factors:
            self.made = "a factor added"
            return replace(each, factors=(self.any_factor(),))
        place = self.draw.randrange(len(factors))
        before, after = factors[:place], factors[place + 1 :]
        if self.draw.random() < 0.78:
            return replace(each, factors=(*before, self.factor(factors[place]), *after))
        return replace(
            each,
            factors=self.one_of(
                {
                    "a factor dropped": lambda: (*before, *after),
                    "a factor doubled": lambda: (*factors, factors[place]),
                    "a factor added": lambda: (*factors, self.any_factor()),
                    "factors in another order": lambda: tuple(self.draw.sample(factors, len(factors))),
                    "a rounded number for a product": lambda: (self.rounded(Term(1, factors)),),
                }
            ),
        )

    # ------------------------------------------------------------------ factors
    def factor(self, factor: Factor) -> Factor:
        if self.draw.random() < 0.15:
            return self._any_shape(factor)
        match factor:
            case Letter(text=text):
                ways = {
                    "another letter": self._letter,
                    "another factor": self.any_factor,
                    "a number for the letter": lambda: self.any_number(factor),
                    "a letter under another name": lambda: Letter(self._letter().name, text),
                }
            case Quantity():
                return self.quantity(factor)
            case Shown():
                return self.shown(factor)
            case Trig(name, angle):
                ways = {
                    "another function": lambda: Trig(self.draw.choice(OTHER[name]), angle),
                    "an angle shifted": lambda: Trig(name, self.turned(angle)),
                    "within": lambda: Trig(name, self.factor(angle)),
                }
            case Inverse(name, terms):
                ways = {
                    "another function": lambda: Inverse(self.draw.choice(OTHER[name]), terms),
                    "within": lambda: Inverse(name, self.terms(terms)),
                }
            case Quotient(top, bottom):
                ways = {
                    "top and bottom swapped": lambda: Quotient(bottom, top),
                    "above": lambda: Quotient(self.terms(top), bottom),
                    "below": lambda: Quotient(top, self.terms(bottom)),
                }
            case Power(base, exponent):
                ways = {
                    "another power": lambda: Power(base, exponent + self.draw.choice((-2, -1, 1))),
                    "a power left out": lambda: base,
                    "within": lambda: Power(self.factor(base), exponent),
                }
            case Group(terms):
                return Group(self.terms(terms))
            case Root(terms):
                ways = {"a root left out": lambda: Group(terms), "within": lambda: Root(self.terms(terms))}
        found: Factor = self.one_of(ways)
        return found

    def _any_shape(self, factor: Factor) -> Factor:
        one = Term(1, (factor,))
        found: Factor = self.one_of(
            {
                "squared": lambda: Power(factor, 2),
                "to no power": lambda: Power(factor, 0),
                "one over it": lambda: Quotient((Term(1, (ONE,)),), (one,)),
                "negated": lambda: Group((one.flipped(),)),
                "the root of it": lambda: Root((one,)),
                "the root of its square": lambda: Root((Term(1, (Power(factor, 2),)),)),
                "half the root of four times its square": lambda: Group(
                    (
                        Term(
                            self.draw.choice((1, -1)),
                            (Root((Term(1, (Quantity.of("4"), Power(factor, 2))),)), Quantity.of("0.5")),
                        ),
                    )
                ),
                "the sine of it": lambda: Trig(self.draw.choice(("sin", "cos", "tan")), factor),
                "its sine turned back": lambda: Inverse("sin", (Term(1, (Trig("sin", factor),)),)),
                "a rounded number for it": lambda: self.rounded(one),
                "another factor": self.any_factor,
            }
        )
        return found
