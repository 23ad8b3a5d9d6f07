"""Lines built as a step from another: other roots and branches, tiny factors, coarse roundings, values from
elsewhere.
"""

from __future__ import annotations

from dataclasses import replace
from random import Random

from attack_built import Built, Offer, Seen, flipped
from attack_slips import TWO_HALVES

from explain.check.claim import Converted, Divided, Inverted, Put, Rooted, Rounded, Scaled, Tangent
from explain.equation.terms import (
    Equation,
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
    letters,
    lone,
)
from explain.equation.substitution import put
from explain.solve.engine import Working

OTHER_ROOT = Term(-1, TWO_HALVES)
HALF, WHOLE = (Term(1, (Quantity.of(size, "deg"),)) for size in ("180", "360"))


def times(terms: Terms, by: Term) -> Terms:
    """Every term with the factors and the sign of another."""
    sign = by.sign if by.sign in (1, -1) else 1
    return tuple(Term(each.sign * sign, (*each.factors, *by.factors), each.source) for each in terms)


class Steps(Built):
    """Builds steps in one problem as well."""

    def __init__(self, working: Working, draw: Random) -> None:
        super().__init__(working, draw)
        self.builders |= {
            Put: self._put,
            Scaled: self._scaled,
            Rounded: self._rounded,
            Converted: self._converted,
            Rooted: self._rooted,
            Inverted: self._inverted,
            Tangent: self._tangent,
            Divided: self._divided,
        }

    def _put(self, seen: Seen) -> Offer | None:
        """Some letters of a line replaced by what this board, or another, knows of them."""
        line = self.draw.choice(seen.lines)
        here = sorted((letters(line.equation.left) | letters(line.equation.right)) & seen.ledger.keys())
        if not here:
            return None
        names = self.draw.sample(here, self.draw.randint(1, len(here)))
        values = {name: seen.ledger[name] for name in names}
        if self.draw.random() < 0.4:
            name = self.draw.choice(names)
            lines = [move.line.equation for move in self.moves]
            own = [each.right for each in lines if lone(each.left) == self.letter(name)]
            values[name] = self.draw.choice([*seen.ledger.values(), *own])
        left, right = (put(side, values) for side in (line.equation.left, line.equation.right))
        return Offer(Equation(left, right), Put(tuple(names)), line)

    def _scaled(self, seen: Seen) -> Offer | None:
        """Both sides of a line times something, the right one now and then by the other root of four as well."""
        line = self.draw.choice(seen.lines)
        by = self.by(line.equation)
        left, right = (times(side, by) for side in (line.equation.left, line.equation.right))
        right = times(right, OTHER_ROOT) if self.draw.random() < 0.2 else right
        return Offer(Equation(left, right), Scaled(by), line)

    def _rounded(self, seen: Seen) -> Offer | None:
        """A known letter at some figures, some way."""
        name = self.draw.choice(sorted(seen.ledger))
        letter, value = self.letter(name), seen.ledger[name]
        if letter is None or len(value) != 1:
            return None
        factor = value[0].factors[0] if len(value[0].factors) == 1 else None
        number = factor.value if isinstance(factor, Shown) else factor
        unit = number.unit if isinstance(number, Quantity) else ()
        of = factor.of if isinstance(factor, Shown) and self.draw.random() < 0.7 else Term(1, value[0].factors)
        new = self.slips.rounded(of, unit) if self.draw.random() < 0.6 else self.slips.converted(of, unit)
        line = Equation((Term(1, (letter,)),), (Term(value[0].sign, (new,)),), rounded=True)
        return Offer(line, Rounded(), None)

    def _converted(self, seen: Seen) -> Offer | None:
        offer = self._rounded(seen)
        left = lone(offer.line.left) if offer else None
        if offer is None or not isinstance(left, Letter):
            return None
        return Offer(replace(offer.line, rounded=self.draw.random() < 0.2), Converted(left.name), None)

    def _rooted(self, seen: Seen) -> Offer | None:
        """The root of both sides, of either sign, or of what is no square."""
        squares = [each for each in seen.lines if isinstance(lone(each.equation.left), Power)]
        line = self.draw.choice(squares or seen.lines)
        power = lone(line.equation.left)
        base = power.base if isinstance(power, Power) else self.draw.choice(self.letters)
        root = Term(self.draw.choice((1, -1)), (Root(line.equation.right),))
        return Offer(Equation((Term(1, (base,)),), (root,)), Rooted(), line)

    def _inverted(self, seen: Seen) -> Offer | None:
        """An angle of a sine, cosine or tangent, on any branch."""
        found = [each for each in seen.lines if isinstance(lone(each.equation.left), Trig)]
        if not found:
            return None
        line = self.draw.choice(found)
        ratio = lone(line.equation.left)
        assert isinstance(ratio, Trig)
        left = ratio.angle.terms if isinstance(ratio.angle, Group) else (Term(1, (ratio.angle,)),)
        angle = Term(1, (Inverse(ratio.name, line.equation.right),))
        right = self.draw.choice(
            (
                (angle,),
                (angle.flipped(),),
                (HALF, angle),
                (HALF, angle.flipped()),
                (WHOLE, angle),
                (WHOLE, angle.flipped()),
                (angle, WHOLE.flipped()),
                (WHOLE, HALF, angle.flipped()),
                (HALF, angle.flipped(), WHOLE.flipped()),
            )
        )
        return Offer(Equation(left, right), Inverted(), line)

    def _tangent(self, seen: Seen) -> Offer | None:
        """A tangent with another sign, from another line, by another factor."""
        found = self._moves_of(Tangent)
        if not found:
            return None
        line, claim = (move := self.draw.choice(found)).line.equation, move.line.claim
        line = replace(line, right=flipped(line.right)) if self.draw.random() < 0.5 else line
        line = replace(line, right=times(line.right, OTHER_ROOT)) if self.draw.random() < 0.3 else line
        claim = Tangent(self.by(line)) if self.draw.random() < 0.5 else claim
        before = self.draw.choice(seen.lines[-3:] if self.draw.random() < 0.7 else seen.lines)
        return Offer(line, claim, before)

    def _divided(self, seen: Seen) -> Offer | None:
        """One line over another, side by side; or a factor of a line that is nothing. Often two lines that do
        divide, with a slip.
        """
        known = [each for each in self._moves_of(Divided) if each.before is not None]
        before, by = (self.draw.choice(seen.lines) for _ in range(2))
        if known and self.draw.random() < 0.5:
            claim = known[0].line.claim
            assert isinstance(claim, Divided)
            by = next((each for each in seen.lines if each.equation == claim.by), by)
        top, bottom = before.equation, by.equation
        lefts: list[Terms] = [move.line.equation.left for move in known]
        lefts += [(Term(1, (factor,)),) for each in top.left for factor in each.factors]
        lefts += [(Term(1, (Quotient(top.left, bottom.left),)),)] if top.left and bottom.left else []
        if not lefts or not bottom.right:
            return None
        right: Terms = (Term(self.draw.choice((1, -1)), (Quotient(top.right, bottom.right),)),) if top.right else ()
        right = times(right, OTHER_ROOT) if self.draw.random() < 0.2 else right
        return Offer(Equation(self.draw.choice(lefts), right), Divided(bottom), before)
