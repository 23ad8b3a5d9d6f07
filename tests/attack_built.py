"""Lines built for grounds that stand on no line before: second definitions, other points, senses, axes and parts."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from decimal import Decimal
from random import Random
from typing import Any, NamedTuple

from attack_numbers import Pool
from attack_slips import Slips
from fifty_digits import mp

from explain.mechanics.body import RIGHT, UP, Bearing, Force
from explain.check.checker import Certified
from explain.check.claim import Arm, AtRest, Balance, Between, Claim, Moment, Pythagoras
from explain.equation.terms import Equation, Factor, Group, Letter, Power, Quantity, Quotient, Root, Term, Terms, leaves
from explain.errors import Fault
from explain.solve.engine import Move, Working

TINY, HUGE = Quantity(Decimal("1e-60")), Quantity(Decimal("1e60"))


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


def flipped(terms: Terms) -> Terms:
    return tuple(each.flipped() for each in terms)


class Built:
    """What there is in a problem to build lines of, and the lines that stand on no other."""

    def __init__(self, working: Working, draw: Random) -> None:
        self.working, self.draw, self.body = working, draw, working.body
        self.moves = working.moves
        acting = [each.name for each in self.body.forces], [each.name for each in self.body.twists]
        self.names = [*acting[0], *acting[1], "reaction"]
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
        self.builders: dict[type, Callable[[Seen], Offer | None]] = {
            AtRest: self._at_rest,
            Arm: self._arm,
            Between: self._between,
            Moment: self._moment,
            Balance: self._balance,
            Pythagoras: self._pythagoras,
        }

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
        factors = (
            (),
            (one,),
            (Quotient((Term(1, ()),), (Term(1, (one,)),)),),
            (nothing,),
            (Power(one, 0),),
            (self.slips.any_factor(),),
            (Quantity.of("0"),),
            (Quantity.of("2"),),
            (TINY,),
            (HUGE,),
        )
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
        own = next(
            (
                move.line.equation.right
                for move in self._moves_of(Arm)
                if getattr(move.line.claim, "force", "") == force.name
            ),
            (),
        )
        rest = tuple(each for each in own[0].factors if each != here) if len(own) == 1 else ()
        first, second = Term(1, (here, *rest)), Term(1, (there, *rest))
        right = self.draw.choice(((first,), (first, second.flipped()), (second, first.flipped())))
        claim = Arm(force.name, self.sense(), self.draw.choice(("", about.name, about.name)))
        return Offer(Equation((Term(1, (letter,)),), right), claim, None)

    def _between(self, seen: Seen) -> Offer | None:
        """A letter of an angle, and the acute angle between any two lines, often from the force's own."""
        found = [each for each in self.letters if each.name.startswith(("*fold", "*inclination"))]
        force, first, second = self._force(), self.bearing(), self.bearing()
        letter = self.draw.choice(found) if found else self.letter(f"*fold {force.name}") if force else None
        if letter is None:
            return None
        name = letter.name.partition(" ")[2]
        own = next((each.bearing for each in self.body.forces if each.name == name), None)
        first = own if own is not None and self.draw.random() < 0.6 else first
        if first.unknown != second.unknown:
            return None
        apart = (first.degrees - second.degrees) % 180
        acute = min(apart, 180 - apart)
        number = Quantity.of(str(mp.mpf(acute.numerator) / acute.denominator).removesuffix(".0"), "deg")
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
            claim = Moment(getattr(move.line.claim, "force", ""), self.sense())
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
        other: list[dict[str, Any]] = [
            {},
            {"sense": -claim.sense},
            {"sense": self.sense()},
            {"axis": self.bearing()},
            {"about": self.draw.choice(self.names)},
            {"total": "total"},
        ]
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
