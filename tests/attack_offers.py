"""What is offered to the checker: lines of a working, spoilt, on grounds that are or are not their own, beside lines built for one kind of ground."""
from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from random import Random
from typing import Any, NamedTuple

from attack_slips import DEGREE, Pool, Slips
from fifty_digits import mp

from explain.body import RIGHT, UP, Bearing
from explain.check import Certified
from explain.claim import (
    Arm,
    AtRest,
    Balance,
    Between,
    Claim,
    Converted,
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
from explain.equation import Equation, Factor, Group, Inverse, Letter, Power, Quantity, Quotient, Root, Shown, Term, Terms, Trig, leaves, letters, lone
from explain.faults import Fault
from explain.replace import put
from explain.solve import Move, Working

KINDS: tuple[type, ...] = (AtRest, Balance, Follows, Arm, Turning, Moment, Between, Pythagoras, Stress, Scaled, Put, Rooted, Inverted, Tangent,
                           Converted, Rounded)
AT_REST = ("total", "level", "upright", "along", "across", "*moment reaction")
PARTS = ("reaction.right", "reaction.up", "reaction.along", "reaction.across")


class Offer(NamedTuple):
    """A line, its ground, the line before, and how it was made."""

    line: Equation
    claim: Claim
    before: Certified | None
    how: str


class Offers:
    """An endless draw of offers for one problem."""

    def __init__(self, working: Working, draw: Random, foreign: list[Certified]) -> None:
        self.working, self.draw, self.foreign = working, draw, foreign
        self.moves = working.moves
        self.body = working.body
        self.names = [each.name for each in (*self.body.forces, *self.body.twists)] + ["reaction"]
        lines = [move.line.equation for move in self.moves]
        found = [leaf for line in lines for leaf in (*leaves(line.left), *leaves(line.right))]
        self.letters = list({leaf: None for leaf in found if isinstance(leaf, Letter)})
        self.letters += [each for each in self.body.letters.known.values() if each not in self.letters]
        self.bearings = [RIGHT, UP, *self.body.bearings.values(), *(each.bearing for each in self.body.forces if each.bearing)]
        self.bearings += [each.turned(90) for each in self.bearings] + [step.bearing for force in self.body.forces for step in force.steps]
        factors = list(dict.fromkeys(found)) or [Quantity.of("1")]
        terms = [each for line in lines for each in (*line.left, *line.right)]
        self.slips = Slips(draw, Pool(self.letters, factors, terms, self.names))
        self.claims = [move.line.claim for move in self.moves]

    # ------------------------------------------------------------------ one offer
    def one(self, place: int, made: list[Certified], before_of: Callable[[Move], Certified | None], ledger: Any) -> Offer:
        """An offer at a board where the first `place` moves and maybe more are made; `made` are its lines."""
        if self.draw.random() < 0.35:
            found = self._built(self.draw.choice(KINDS), made, ledger)
            if found is not None:
                line, claim, before, how = found
                return self._further(Offer(line, claim, before, how), made, 0.4)
        move = self._move(place)
        offer = Offer(move.line.equation, move.line.claim, before_of(move), type(move.line.claim).__name__)
        return self._further(offer, made, 0.85)

    def _move(self, place: int) -> Move:
        chance = self.draw.random()
        if chance < 0.6 and place < len(self.moves):
            return self.moves[place]
        return self.draw.choice(self.moves)

    def _further(self, offer: Offer, made: list[Certified], spoilt: float) -> Offer:
        """Slips in the line, another ground, another line before."""
        line, claim, before, how = offer
        if self.draw.random() < spoilt:
            for _ in range(self.draw.choice((1, 1, 1, 2, 3))):
                slip, line = self.slips.one(line)
                how += f", {slip}"
        chance = self.draw.random()
        if chance < 0.12:
            claim, how = self.claim(self.draw.choice(KINDS), line), f"{how}, another ground"
        elif chance < 0.3:
            claim, how = self.claim(type(claim), line), f"{how}, another ground of its kind"
        if self.draw.random() < 0.15:
            before, how = self.draw.choice([None, *made, *made, *self.foreign]), f"{how}, another line before"
        return Offer(line, claim, before, how)

    # ------------------------------------------------------------------ grounds
    def _name(self) -> str:
        return self.draw.choice(self.names)

    def _key(self) -> str:
        return self.draw.choice(self.letters).name if self.letters else "g"

    def _sense(self) -> Any:
        return self.draw.choice((1, -1, 1, -1, 1, -1, 0, 2, -3))

    def _bearing(self) -> Bearing:
        bearing = self.draw.choice(self.bearings)
        return bearing.turned(self.draw.choice((0, 0, 0, 90, 180, 270, 45)))

    def claim(self, kind: type, line: Equation) -> Claim:
        """A ground of a kind, drawn at random; often the line's own letter is named."""
        left = lone(line.left)
        own = left.name if isinstance(left, Letter) and self.draw.random() < 0.6 else self._key()
        force = next((name for name in self.names if name in own), self._name()) if self.draw.random() < 0.6 else self._name()
        about = self.draw.choice(("", "", *self.names))
        made: dict[type, Callable[[], Claim]] = {
            AtRest: lambda: AtRest(self.draw.choice((own, *AT_REST))),
            Balance: lambda: Balance(self.draw.choice((None, None, RIGHT, UP, self._bearing())), about, self._sense(), self.draw.choice(("", "", "total", own))),
            Follows: lambda: Follows(self.draw.choice((own, *self.working.truth.relation))),
            Arm: lambda: Arm(force, self._sense(), about), Turning: lambda: Turning(force, self._sense()), Moment: lambda: Moment(force, self._sense()),
            Between: lambda: Between(force, self._bearing(), self._bearing()),
            Pythagoras: lambda: Pythagoras(self.draw.choice(((PARTS[0], PARTS[1]), (PARTS[2], PARTS[3]), (PARTS[1], PARTS[0]), (own, PARTS[1])))),
            Stress: lambda: Stress(force), Scaled: lambda: Scaled(self._by(line)),
            Put: lambda: Put(tuple(self.draw.choice((own, self._key())) for _ in range(self.draw.choice((1, 1, 2, 3))))),
            Rooted: Rooted, Inverted: Inverted, Tangent: lambda: Tangent(self._by(line)),
            Converted: lambda: Converted(own), Rounded: Rounded}
        return made[kind]()

    def _by(self, line: Equation) -> Term:
        """What a line is multiplied by: a sign, a factor of the line, nothing in disguise."""
        there: list[Factor] = [factor for each in (*line.left, *line.right) for factor in each.factors] or [Quantity.of("1")]
        one = self.draw.choice(there)
        nothing = Group((Term(1, (one,)), Term(-1, (one,))))
        return self.draw.choice((Term(1, ()), Term(-1, ()), Term(1, (one,)), Term(-1, (one,)), Term(1, (Quotient((Term(1, ()),), (Term(1, (one,)),)),)),
                                 Term(1, (nothing,)), Term(1, (self.draw.choice(self.slips.pool.factors),)), Term(1, (Quantity.of("0"),)),
                                 Term(1, (Power(one, 0),)), Term(2, ()), Term(1, (Quantity.of("2"),))))

    # ------------------------------------------------------------------ lines built for one kind of ground
    def _built(self, kind: type, made: list[Certified], ledger: Any) -> tuple[Equation, Claim, Certified | None, str] | None:
        if not self.letters:
            return None
        letter = self.draw.choice(self.letters)
        builder: dict[type, Callable[[], tuple[Equation, Claim, Certified | None] | None]] = {
            AtRest: lambda: (Equation((Term(1, (letter,)),), ()), AtRest(letter.name), None),
            Arm: self._arm, Between: self._between, Moment: self._moment, Turning: self._arm,
            Put: lambda: self._put(made, ledger), Scaled: lambda: self._scaled(made), Rounded: lambda: self._rounded(ledger),
            Converted: lambda: self._rounded(ledger, Converted), Rooted: lambda: self._rooted(made), Inverted: lambda: self._inverted(made),
            Tangent: lambda: self._tangent(made), Balance: self._balance, Pythagoras: self._pythagoras}
        found = builder[kind]() if kind in builder else None
        return None if found is None else (*found, f"{kind.__name__} built")

    def _known(self, key: str) -> Letter | None:
        """The letter of a key, where there can be one."""
        try:
            return self.body.letters(key)
        except (Fault, LookupError):
            return None

    def _arm(self) -> tuple[Equation, Claim, None] | None:
        """An arm about some point, where both lie on one straight line, or another force's arm under this letter."""
        force = self.draw.choice(self.body.forces)
        about = self.draw.choice(self.body.forces)
        own_key = self.draw.choice((f"*arm {force.name}", f"*arm {force.name} *about {about.name}"))
        letter = self._known(own_key) or next((each for each in self.letters if each.name.startswith("*arm")), None)
        if letter is None or not force.steps:
            return None
        own = next((claim_line.line.equation.right for claim_line in self.moves if claim_line.line.claim == Arm(force.name, 1) or
                    claim_line.line.claim == Arm(force.name, -1)), None)
        rest = tuple(f for f in own[0].factors if f != force.steps[0].distance) if own and len(own) == 1 else ()
        right: Terms = (Term(1, (force.steps[0].distance, *rest)),)
        if about.steps and self.draw.random() < 0.7:
            right = self.draw.choice(((*right, Term(-1, (about.steps[0].distance, *rest))), (Term(1, (about.steps[0].distance, *rest)), right[0].flipped())))
        name = about.name if self.draw.random() < 0.7 else ""
        return Equation((Term(1, (letter,)),), right), Arm(force.name, self.draw.choice((1, -1)), name), None

    def _between(self) -> tuple[Equation, Claim, None] | None:
        """A letter of an angle, and the acute angle between any two lines."""
        found = [each for each in self.letters if each.name.startswith(("*fold", "*inclination"))]
        force = self.draw.choice(self.body.forces)
        letter = self.draw.choice(found) if found else self._known(f"*fold {force.name}")
        if letter is None:
            return None
        name = letter.name.partition(" ")[2]
        first, second = self._bearing(), self._bearing()
        apart = (first.degrees - second.degrees) % 180
        acute = min(apart, 180 - apart)
        number = Quantity.of(str(mp.mpf(acute.numerator) / acute.denominator).removesuffix(".0"), "deg")
        if first.unknown != second.unknown:
            return None
        return Equation((Term(1, (letter,)),), (Term(1, (Quantity(number.number, DEGREE),)),)), Between(name, first, second), None

    def _moment(self) -> tuple[Equation, Claim, None] | None:
        """A moment, or nothing in its place, in some sense."""
        found = [each for each in self.moves if isinstance(each.line.claim, Moment)]
        force = self.draw.choice(self.body.forces)
        letter = self._known(f"*moment {force.name}")
        if letter is None:
            return None
        right: Terms = ()
        if found and self.draw.random() < 0.6:
            move = self.draw.choice(found)
            letter, right = lone(move.line.equation.left), move.line.equation.right     # type: ignore[assignment]
            force = self.body.force(letter.name.partition(" ")[2])
            right = tuple(each.flipped() for each in right) if self.draw.random() < 0.5 else right
        return Equation((Term(1, (letter,)),), right), Moment(force.name, self._sense()), None

    def _balance(self) -> tuple[Equation, Claim, None] | None:
        found = [each for each in self.moves if isinstance(each.line.claim, Balance)]
        if not found:
            return None
        move = self.draw.choice(found)
        line, claim = move.line.equation, move.line.claim
        left = tuple(each.flipped() for each in line.left) if self.draw.random() < 0.5 else line.left
        assert isinstance(claim, Balance)
        changed = self.draw.choice((replace(claim, sense=-claim.sense), replace(claim, sense=self._sense()), replace(claim, about=self._name()),
                                    replace(claim, axis=self._bearing()), replace(claim, total="total"), claim))
        return replace(line, left=left), changed, None

    def _pythagoras(self) -> tuple[Equation, Claim, None] | None:
        found = [each for each in self.moves if isinstance(each.line.claim, Pythagoras)]
        joint = self._known("reaction")
        if not found or joint is None:
            return None
        move = self.draw.choice(found)
        assert isinstance(move.line.claim, Pythagoras)
        part = self._known(self.draw.choice(move.line.claim.parts)) or joint
        sign = self.draw.choice((1, -1))
        line = self.draw.choice((Equation((Term(1, (joint,)),), (Term(sign, (part,)),)), replace(move.line.equation, right=tuple(
            each.flipped() for each in move.line.equation.right)), Equation((Term(1, (joint,)),), (Term(1, (Root((Term(1, (Power(part, 2),)),)),)),))))
        return line, move.line.claim, None

    def _put(self, made: list[Certified], ledger: Any) -> tuple[Equation, Claim, Certified | None] | None:
        """Some letters of a line replaced by what the board, or another board, knows of them."""
        line = self.draw.choice(made)
        here = sorted((letters(line.equation.left) | letters(line.equation.right)) & ledger.keys())
        if not here:
            return None
        names = self.draw.sample(here, self.draw.randint(1, len(here)))
        values = {name: ledger[name] for name in names}
        if self.draw.random() < 0.4:
            name = self.draw.choice(names)
            other = self.draw.choice([*ledger.values(), *(each.line.equation.right for each in self.moves if lone(each.line.equation.left) == self._known(name))])
            values[name] = other
        return Equation(put(line.equation.left, values), put(line.equation.right, values)), Put(tuple(names)), line

    def _scaled(self, made: list[Certified]) -> tuple[Equation, Claim, Certified | None] | None:
        """Both sides of a line times something, now and then not quite."""
        line = self.draw.choice(made)
        by = self._by(line.equation)
        sign = by.sign if by.sign in (1, -1) else 1

        def times(terms: Terms) -> Terms:
            return tuple(Term(each.sign * sign, (*each.factors, *by.factors), each.source) for each in terms)
        return Equation(times(line.equation.left), times(line.equation.right)), Scaled(by), line

    def _rounded(self, ledger: Any, kind: type = Rounded) -> tuple[Equation, Claim, Certified | None] | None:
        """A known letter at some figures, some way."""
        name = self.draw.choice(sorted(ledger))
        letter, value = self._known(name), ledger[name]
        if letter is None or len(value) != 1:
            return None
        factor = value[0].factors[0] if len(value[0].factors) == 1 else None
        unit = factor.value.unit if isinstance(factor, Shown) else factor.unit if isinstance(factor, Quantity) else None
        of = factor.of if isinstance(factor, Shown) and self.draw.random() < 0.7 else Term(1, value[0].factors)
        new = self.slips.rounded(of, unit) if self.draw.random() < 0.6 else self.slips._converted(of, unit or ())
        line = Equation((Term(1, (letter,)),), (Term(value[0].sign, (new,)),), rounded=kind is Rounded or self.draw.random() < 0.3)
        return line, Rounded() if kind is Rounded else Converted(name), None

    def _rooted(self, made: list[Certified]) -> tuple[Equation, Claim, Certified | None] | None:
        """The root of both sides, of the wrong sign, or of what is no square."""
        found = [each for each in made if isinstance(lone(each.equation.left), Power)] or made
        line = self.draw.choice(found)
        base = lone(line.equation.left)
        letter = base.base if isinstance(base, Power) else self.draw.choice(self.letters)
        root = Term(self.draw.choice((1, -1)), (Root(line.equation.right),))
        return Equation((Term(1, (letter,)),), (root,)), Rooted(), line

    def _inverted(self, made: list[Certified]) -> tuple[Equation, Claim, Certified | None] | None:
        """An angle of a sine, cosine or tangent, on any branch."""
        found = [each for each in made if isinstance(lone(each.equation.left), Trig)]
        if not found:
            return None
        line = self.draw.choice(found)
        ratio = lone(line.equation.left)
        assert isinstance(ratio, Trig)
        left: Terms = ratio.angle.terms if isinstance(ratio.angle, Group) else (Term(1, (ratio.angle,)),)
        principal = Term(1, (Inverse(ratio.name, line.equation.right),))
        half, whole = (Term(1, (Quantity.of(size, "deg"),)) for size in ("180", "360"))
        right = self.draw.choice(((principal,), (half, principal.flipped()), (half, principal), (principal.flipped(),), (whole, principal),
                                  (whole, principal.flipped()), (principal, whole.flipped()), (whole, half, principal.flipped())))
        return Equation(left, right), Inverted(), line

    def _tangent(self, made: list[Certified]) -> tuple[Equation, Claim, Certified | None] | None:
        found = [each for each in self.moves if isinstance(each.line.claim, Tangent)]
        if not found:
            return None
        move = self.draw.choice(found)
        assert isinstance(move.line.claim, Tangent)
        line = replace(move.line.equation, right=tuple(each.flipped() for each in move.line.equation.right)) if self.draw.random() < 0.5 else move.line.equation
        return line, Tangent(self._by(line) if self.draw.random() < 0.5 else move.line.claim.by), self.draw.choice(made)
