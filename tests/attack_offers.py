"""What is offered to the checker: lines of a working or lines built for a ground, spoilt, on any ground."""

from __future__ import annotations

from collections.abc import Callable
from random import Random
from typing import Any

from attack_built import Offer, Seen
from attack_steps import Steps

from explain.mechanics.body import RIGHT, UP
from explain.check.checker import Certified
from explain.check.claim import (
    Arm,
    AtRest,
    Balance,
    Between,
    Claim,
    Converted,
    Divided,
    Follows,
    Inverted,
    Moment,
    Put,
    Pythagoras,
    Rooted,
    Rounded,
    Scaled,
    Stress,
    Tangent,
    Turning,
)
from explain.equation.terms import Equation, Letter, Term, lone
from explain.solve.engine import Move, Working

KINDS: tuple[type, ...] = (
    AtRest,
    Balance,
    Follows,
    Arm,
    Turning,
    Moment,
    Between,
    Pythagoras,
    Stress,
    Scaled,
    Put,
    Rooted,
    Inverted,
    Tangent,
    Divided,
    Converted,
    Rounded,
)
SUMS = ("total", "level", "upright", "along", "across", "*moment reaction")
RIGHT_UP, ALONG_ACROSS = ("reaction.right", "reaction.up"), ("reaction.along", "reaction.across")


class Offers(Steps):
    """An endless draw of offers for one problem."""

    def __init__(self, working: Working, draw: Random, foreign: list[Certified]) -> None:
        super().__init__(working, draw)
        self.foreign = foreign

    def one(self, place: int, seen: Seen, before_of: Callable[[Move], Certified | None]) -> Offer:
        """An offer at a board where the first `place` moves are made, and maybe more lines."""
        if self.draw.random() < 0.35:
            offer = self.built(self.draw.choice(KINDS), seen)
            if offer is not None:
                return self._further(offer, seen, 0.4)
        if self.draw.random() < 0.02:
            line = self.draw.choice(self.foreign)
            return Offer(line.equation, Scaled(Term(1, ())), line, "a line from elsewhere")
        near = self.draw.random() < 0.6 and place < len(self.moves)
        move = self.moves[place] if near else self.draw.choice(self.moves)
        claim = move.line.claim
        return self._further(Offer(move.line.equation, claim, before_of(move), type(claim).__name__), seen, 0.85)

    def _further(self, offer: Offer, seen: Seen, spoilt: float) -> Offer:
        """Slips in the line, another ground, another line before."""
        line, claim, before, how = offer
        if self.draw.random() < spoilt:
            for _ in range(self.draw.choice((1, 1, 1, 2, 3))):
                slip, line = self.slips.one(line)
                how += f", {slip}"
        chance = self.draw.random()
        if chance < 0.12:
            claim, how = self.claim(self.draw.choice(KINDS), line), f"{how}, another kind of ground"
        elif chance < 0.3:
            claim, how = self.claim(type(claim), line), f"{how}, another ground of its kind"
        if self.draw.random() < 0.15:
            before = self.draw.choice([None, *seen.lines, *seen.lines, *self.foreign])
            how += ", another line before"
        return Offer(line, claim, before, how)

    # ------------------------------------------------------------------ grounds
    def claim(self, kind: type, line: Equation) -> Claim:
        """A ground of a kind, drawn at random; often it names the line's own letter and force."""
        pick: Callable[[Any], Any] = self.draw.choice
        left, key = lone(line.left), pick(self.letters).name
        own = left.name if isinstance(left, Letter) and self.draw.random() < 0.6 else key
        force = next((name for name in self.names if name in own), pick(self.names))
        force = force if self.draw.random() < 0.6 else pick(self.names)
        about = pick(("", "", *self.names))
        made: dict[type, Callable[[], Claim]] = {
            AtRest: lambda: AtRest(pick((own, *SUMS))),
            Balance: lambda: Balance(
                pick((None, None, RIGHT, UP, self.bearing())), about, self.sense(), pick(("", "", "total", own))
            ),
            Follows: lambda: Follows(pick((own, *self.working.truth.relation))),
            Arm: lambda: Arm(force, self.sense(), about),
            Turning: lambda: Turning(force, self.sense()),
            Moment: lambda: Moment(force, self.sense()),
            Between: lambda: Between(force, self.bearing(), self.bearing()),
            Pythagoras: lambda: Pythagoras(pick((RIGHT_UP, ALONG_ACROSS, RIGHT_UP[::-1], (own, RIGHT_UP[1])))),
            Stress: lambda: Stress(force),
            Scaled: lambda: Scaled(self.by(line)),
            Put: lambda: Put(tuple(pick((own, key, pick(self.letters).name)) for _ in range(pick((1, 1, 2, 3))))),
            Tangent: lambda: Tangent(self.by(line)),
            Divided: lambda: Divided(pick(self.moves).line.equation),
            Converted: lambda: Converted(own),
            Rooted: Rooted,
            Inverted: Inverted,
            Rounded: Rounded,
        }
        return made[kind]()
