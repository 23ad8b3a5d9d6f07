"""Lines built for one kind of ground: second definitions, other roots, branches and senses, values from elsewhere."""
from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from decimal import Decimal
from random import Random
from typing import Any, NamedTuple

from attack_numbers import Pool
from attack_slips import TWO_HALVES, Slips
from fifty_digits import mp

from explain.body import RIGHT, UP, Bearing, Force
from explain.check import Certified
from explain.claim import (
    Arm,
    AtRest,
    Balance,
    Between,
    Claim,
    Converted,
    Inverted,
    Moment,
    Put,
    Pythagoras,
    Rooted,
    Rounded,
    Scaled,
    Tangent,
)
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
    leaves,
    letters,
    lone,
)
from explain.faults import Fault
from explain.replace import put
from explain.solve import Move, Working

TINY, HUGE = Quantity(Decimal("1e-60")), Quantity(Decimal("1e60"))
OTHER_ROOT = Term(-1, TWO_HALVES)
HALF, WHOLE = (Term(1, (Quantity.of(size, "deg"),)) for size in ("180", "360"))


class Offer(NamedTuple):
    """A line, its ground, the line before, and how it was made."""

    line: Equation
    claim: Claim
    before: Certified | None
    how: str = ""


class Seen(NamedTuple):
    """What an attacker sees of a board: the lines made there, and the values it knows."""

    lines: Sequence[Certified]
    ledger: Mapping[str, Terms]


def times(terms: Terms, by: Term) -> Terms:
    """Every term with the factors and the sign of another."""
    sign = by.sign if by.sign in (1, -1) else 1
    return tuple(Term(each.sign * sign, (*each.factors, *by.factors), each.source) for each in terms)


def flipped(terms: Terms) -> Terms:
    return tuple(each.flipped() for each in terms)


class Built:
    """Builds lines for one problem."""

    def __init__(self, working: Working, draw: Random) -> None:
        self.working, self.draw, self.body = working, draw, working.body
        self.moves = working.moves
        self.names = [each.name for each in (*self.body.forces, *self.body.twists)] + ["reaction"]
        lines = [move.line.equation for move in self.moves]
        found = [leaf for line in lines for leaf in (*leaves(line.left), *leaves(line.right))]
        known = (*found, *self.body.letters.known.values())
        self.letters = list({each: None for each in known if isinstance(each, Letter)})
        directed = [each.bearing for each in self.body.forces if each.bearing]
        bearings = [RIGHT, UP, *self.body.bearings.values(), *directed]
        bearings += [each.turned(90) for each in bearings]
        self.bearings = bearings + [step.bearing for force in self.body.forces for step in force.steps]
        terms = [each for line in lines for each in (*line.left, *line.right)]
        factors = list(dict.fromkeys(found)) or [Quantity.of("1")]
        self.slips = Slips(draw, Pool(self.letters, factors, terms, self.names))
        self.builders: Mapping[type, Callable[[Seen], Offer | None]] = {
            AtRest: self._at_rest, Arm: self._arm, Between: self._between, Moment: self._moment, Balance: self._balance,
            Pythagoras: self._pythagoras, Put: self._put, Scaled: self._scaled, Rounded: self._rounded,
            Converted: self._converted, Rooted: self._rooted, Inverted: self._inverted, Tangent: self._tangent}

    def built(self, kind: type, seen: Seen) -> Offer | None:
        """A line for this kind of ground, where the problem has what it needs."""
        found = self.builders[kind](seen) if kind in self.builders else None
        return found and found._replace(how=f"{kind.__name__} built")

    # ------------------------------------------------------------------ what there is
    def _moves_of(self, kind: type) -> list[Move]:
        return [move for move in self.moves if isinstance(move.line.claim, kind)]

    def _force(self) -> Force | None:
        return self.draw.choice(self.body.forces) if self.body.forces else None

    def letter(self, key: str) -> Letter | None:
        """The letter of a key, where there can be one."""
        try:
            return self.body.letters(key)
        except (Fault, LookupError):
            return None

    def sense(self) -> int:
        return self.draw.choice((1, -1, 1, -1, 1, -1, 0, 2, -3))

    def bearing(self) -> Bearing:
        bearing: Bearing = self.draw.choice(self.bearings)
        return bearing.turned(self.draw.choice((0, 0, 0, 90, 180, 270, 45)))

    def by(self, line: Equation) -> Term:
        """What a line is multiplied by: a sign, a factor of the line or of another, nothing in disguise."""
        there = [factor for each in (*line.left, *line.right) for factor in each.factors]
        one: Factor = self.draw.choice(there or [Quantity.of("1")])
        nothing = Group((Term(1, (one,)), Term(-1, (one,))))
        factors = ((), (one,), (Quotient((Term(1, ()),), (Term(1, (one,)),)),), (nothing,), (Power(one, 0),),
                   (self.slips.any_factor(),), (Quantity.of("0"),), (Quantity.of("2"),), (TINY,), (HUGE,))
        return Term(self.draw.choice((1, 1, 1, -1, -1, 2)), self.draw.choice(factors))

    # ------------------------------------------------------------------ where a line may start
    def _at_rest(self, seen: Seen) -> Offer | None:
        letter = self.draw.choice(self.letters)
        return Offer(Equation((Term(1, (letter,)),), ()), AtRest(letter.name), None)

    def _arm(self, seen: Seen) -> Offer | None:
        """An arm about some point, as if both lay on one straight line, under its own letter or another's."""
        force, about = self._force(), self._force()
        if force is None or about is None or not force.steps or not about.steps:
            return None
        arm = f"*arm {force.name}"
        letter = self.letter(self.draw.choice((arm, f"{arm} *about {about.name}", f"*turning {force.name}")))
        if letter is None:
            return None
        here, there = force.steps[0].distance, about.steps[0].distance
        own = next((move.line.equation.right for move in self._moves_of(Arm)
                    if getattr(move.line.claim, "force", "") == force.name), ())
        rest = tuple(each for each in own[0].factors if each != here) if len(own) == 1 else ()
        first, second = Term(1, (here, *rest)), Term(1, (there, *rest))
        right = self.draw.choice(((first,), (first, second.flipped()), (second, first.flipped())))
        claim = Arm(force.name, self.sense(), self.draw.choice(("", about.name, about.name)))
        return Offer(Equation((Term(1, (letter,)),), right), claim, None)

    def _between(self, seen: Seen) -> Offer | None:
        """A letter of an angle, and the acute angle between any two lines."""
        found = [each for each in self.letters if each.name.startswith(("*fold", "*inclination"))]
        force, first, second = self._force(), self.bearing(), self.bearing()
        letter = self.draw.choice(found) if found else self.letter(f"*fold {force.name}") if force else None
        if letter is None or first.unknown != second.unknown:
            return None
        apart = (first.degrees - second.degrees) % 180
        acute = min(apart, 180 - apart)
        number = Quantity.of(str(mp.mpf(acute.numerator) / acute.denominator).removesuffix(".0"), "deg")
        name = letter.name.partition(" ")[2]
        return Offer(Equation((Term(1, (letter,)),), (Term(1, (number,)),)), Between(name, first, second), None)

    def _moment(self, seen: Seen) -> Offer | None:
        """A moment, or nothing in its place, in some sense."""
        force, found = self._force(), self._moves_of(Moment)
        letter = self.letter(f"*moment {force.name}") if force else None
        if force is None or letter is None:
            return None
        line, claim = Equation((Term(1, (letter,)),), ()), Moment(force.name, self.sense())
        if found and self.draw.random() < 0.6:
            move = self.draw.choice(found)
            line = move.line.equation
            line = replace(line, right=flipped(line.right)) if self.draw.random() < 0.5 else line
            claim = replace(move.line.claim, sense=self.sense())
        return Offer(line, claim, None)

    def _balance(self, seen: Seen) -> Offer | None:
        """A balance with its signs or one part of its ground changed."""
        found = self._moves_of(Balance)
        if not found:
            return None
        line, claim = (move := self.draw.choice(found)).line.equation, move.line.claim
        assert isinstance(claim, Balance)
        if self.draw.random() < 0.5:
            line = replace(line, left=flipped(line.left), right=flipped(line.right))
        other: list[dict[str, Any]] = [{}, {"sense": -claim.sense}, {"sense": self.sense()}, {"axis": self.bearing()},
                                       {"about": self.draw.choice(self.names)}, {"total": "total"}]
        return Offer(line, replace(claim, **self.draw.choice(other)), None)

    def _pythagoras(self, seen: Seen) -> Offer | None:
        """The joint force of one part alone, or of parts with other signs."""
        found, joint = self._moves_of(Pythagoras), self.letter("reaction")
        if not found or joint is None:
            return None
        line, claim = (move := self.draw.choice(found)).line.equation, move.line.claim
        assert isinstance(claim, Pythagoras)
        part = self.letter(self.draw.choice(claim.parts)) or joint
        root = Root((Term(1, (Power(part, 2),)),))
        right = self.draw.choice(((Term(self.draw.choice((1, -1)), (part,)),), (Term(1, (root,)),)))
        alone = Equation((Term(1, (joint,)),), right)
        return Offer(self.draw.choice((alone, replace(line, right=flipped(line.right)))), claim, None)

    # ------------------------------------------------------------------ what follows from a line
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
        right = self.draw.choice((
            (angle,), (angle.flipped(),), (HALF, angle), (HALF, angle.flipped()), (WHOLE, angle),
            (WHOLE, angle.flipped()), (angle, WHOLE.flipped()), (WHOLE, HALF, angle.flipped()),
            (HALF, angle.flipped(), WHOLE.flipped())))
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
