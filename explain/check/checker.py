"""What is believed: the only place where a Certified line is made. Trusts no rule; compares exactly in a prime
field, sizes by intervals.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from itertools import product
from typing import ClassVar, NoReturn

from ..equation import key as keys
from . import claim as ground
from .angle_branch import inverted, is_angle
from .comparison import gap, only_worked_out
from ..equation.terms import (
    Equation,
    Factor,
    Letter,
    Power,
    Quotient,
    Root,
    Shown,
    Term,
    Terms,
    Trig,
    letters,
    lone,
    number,
)
from ..exact.prime_field import Field, Redraw, drawn
from ..exact.interval import Sizes, Undefined, sign
from ..exact.dimensions import well_formed
from .premise import Premises
from ..equation.substitution import in_brackets, put
from ..equation.terms import settled
from .roundings import Refused as Refused
from .roundings import Roundings
from .trials import Trials
from ..mechanics.truth import Truth

MOST_ROOTS = 6
_SEAL = object()


class Certified:
    """A line that the checker has proved, and the ground. Made by Checker only: not copied, pickled or changed."""

    __slots__ = ("equation", "claim")
    equation: Equation
    claim: ground.Claim
    show: ClassVar[Callable[[Equation], str]] = repr  # how a line prints itself; nothing is proved by it

    def __init__(self, equation: Equation, claim: ground.Claim, seal: object) -> None:
        if seal is not _SEAL:
            raise TypeError("only a Checker makes a Certified line")
        object.__setattr__(self, "equation", equation)
        object.__setattr__(self, "claim", claim)

    def __repr__(self) -> str:
        return f"<Certified {Certified.show(self.equation)}>"

    def _no(self, *_: object) -> NoReturn:
        raise TypeError("a Certified line is made by a Checker and never changed or copied")

    __setattr__ = __delattr__ = __copy__ = __deepcopy__ = __reduce__ = __reduce_ex__ = _no


def _angle(line: Equation) -> Letter:
    """The letter of which a line gives the tangent. Raises Refused where it gives none."""
    match lone(line.left):
        case Trig("tan", Letter() as angle):
            return angle
    raise Refused("this gives no tangent of an angle")


class Checker:
    """Certifies the lines of one working. `ledger` holds each given or found value as it is written.

    `angles` are the sought angles in degrees as the balances settle them: of two angles with one sine they tell which.
    """

    def __init__(self, truth: Truth, *, angles: Mapping[str, float] | None = None) -> None:
        self.truth, self.angles, self.course = truth, dict(angles or {}), truth.body.problem.course
        self.carry_shown = self.course.carry == "as shown"
        self.field = drawn().fresh()
        self.ledger: dict[str, Terms] = {
            each.letter.name: (Term(each.sign, (each.value,)),) for each in truth.body.givens
        }
        self.sizes = Sizes(self.ledger)
        self.premises = Premises(truth, self.ledger, self.sizes, self.angles)
        self.defined: dict[str, Terms] = {}
        self.converting: dict[str, Terms] = {}  # values of which only the factor is written so far
        self.grounds: dict[str, ground.Claim] = {}
        self.lines: list[Certified] = []
        self._made: list[tuple[Certified, Equation]] = []
        self.texts: dict[str, Letter] = {}
        self.roundings = Roundings(self.sizes, self.course.ties)
        self.trials = Trials(self.sizes, self.angles, self.field.draw)

    def vouches_for(self, line: object) -> bool:
        """Whether this very line was certified here, and is as it was."""
        return any(made is line and made.equation is equation for made, equation in self._made)

    def certify(self, after: Equation, claim: ground.Claim, before: Certified | None = None) -> Certified:
        """The line, certified; raises Refused where it does not stand on its claim, and then nothing has changed."""
        try:
            written = after.leaves
            if not (well_formed(after.left) and well_formed(after.right)) or after.rounded != isinstance(
                claim, ground.Rounded
            ):
                raise Refused("this is not written as it would be read")
            self._letters_known(written)
            self._nothing_below(written)
            self._defined_once(after, claim)
            self._hold(after, claim, before)
            for leaf in written:
                if isinstance(leaf, Shown):
                    self.roundings.hold(leaf, self.course.figures if after.rounded else self.course.working_figures)
        except (ArithmeticError, ValueError, LookupError, StopIteration, AttributeError, TypeError) as error:
            raise Refused(f"this cannot be read as a line of that kind: {error}") from error
        line = Certified(after, claim, _SEAL)
        self.lines.append(line)
        self._made.append((line, after))
        self._enter(after, claim)
        return line

    # ------------------------------------------------------------------ what is known
    def _letters_known(self, written: Iterable[Factor]) -> None:
        for leaf in written:
            if isinstance(leaf, Letter) and (
                self.truth.body.letters.known.get(leaf.name) != leaf or self.texts.setdefault(leaf.text, leaf) != leaf
            ):
                raise Refused(f"the letter {leaf.text} does not stand for {leaf.name} here")

    def _nothing_below(self, written: Iterable[Factor]) -> None:
        """Nothing is divided by what is zero, nor by what nobody knows yet not to be."""
        for leaf in written:
            below = leaf.bottom if isinstance(leaf, Quotient) else ()
            if isinstance(leaf, Power) and leaf.exponent < 0:
                below = (Term(1, (leaf.base,)),)
            try:
                if below and sign(self.sizes.sum(below)) == 0:
                    raise Refused("this divides by what is zero")
            except Undefined:
                raise Refused("this divides by what nobody knows yet") from None

    def _defined_once(self, after: Equation, claim: ground.Claim) -> None:
        """A letter whose ground is a premise keeps it: an arm about another point, a sense, an angle to another line
        needs a letter of its own.
        """
        name = ground.defines(after, claim)
        if name and self.grounds.get(name, claim) != claim:
            raise Refused(f"{name} was defined before, in another way")

    def _as_carried(self, line: Certified) -> Equation:
        return line.equation.as_shown if self.carry_shown else line.equation

    def _enter(self, after: Equation, claim: ground.Claim) -> None:
        """What a new line adds: the definition of an arm, the value of a letter."""
        letter, right = lone(after.left), after.right
        self.grounds.setdefault(ground.defines(after, claim), claim)
        if not isinstance(letter, Letter) or after.rounded:
            return
        if isinstance(claim, ground.Arm | ground.Turning):
            self.defined[letter.name] = right
            self.field.define(letter.name, right)
        if isinstance(claim, ground.Converted):
            self.converting[claim.key] = self.ledger.pop(claim.key)
        here, last = letters(right), self.ledger.get(letter.name)
        if (
            (here or not right or number(right))
            and letter.name not in here
            and self.ledger.keys().isdisjoint(here)
            and (last is None or letters(last))
        ):
            self.converting.pop(letter.name, None)
            self.ledger[letter.name] = settled(right) if self.carry_shown else right

    def _known(self, by: Term) -> int:
        """A multiplier as an element: free of unknowns, and not zero."""
        if sign(self.sizes.sum((by,))) == 0:
            raise Refused("multiplied by what may be zero")
        return self.field.sum((by,))

    # ------------------------------------------------------------------ the test
    def _hold(self, after: Equation, claim: ground.Claim, before: Certified | None) -> None:
        if not isinstance(claim, (*ground.Premise, ground.Rounded)) and (
            before is None or not self.vouches_for(before) or before.equation.rounded
        ):
            raise Refused("the line before is not one that was certified here, or is a rounded one")
        for attempt in range(60):
            try:
                if attempt or self.field.opaque:
                    self._draw(before if attempt % 2 else None)
                if self._any_roots(after, claim, before):
                    return
                if not self.field.opaque:
                    raise Refused("this does not follow")
            except Redraw:
                continue
        raise Refused("no prime was found in which the line can be tested")

    def _draw(self, opaque: Certified | None) -> None:
        """A new prime. The rounded numbers of a line may be taken as letters there: what holds for any numbers holds
        for these, but what does not may hold for just these.
        """
        self.field = Field()
        self.field.opaque = tuple(leaf for leaf in opaque.equation.leaves if isinstance(leaf, Shown)) if opaque else ()
        for name, terms in self.defined.items():
            self.field.define(name, terms)

    def _any_roots(self, after: Equation, claim: ground.Claim, before: Certified | None) -> bool:
        """The field cannot tell a root from its opposite: some choice of signs must do there, and the sizes decide."""
        if self._test(after, claim, before):
            return self._sizes_agree(after, claim, before)
        squares = list(self.field.roots)
        if len(squares) > MOST_ROOTS:
            raise Redraw("too many roots to try each with either sign")
        for flips in product((False, True), repeat=len(squares)):
            self.field.flip(squares, flips)
            if self._test(after, claim, before):
                return self._sizes_agree(after, claim, before)
        return False

    def _test(self, after: Equation, claim: ground.Claim, before: Certified | None) -> bool:
        if isinstance(claim, ground.Premise):
            return not self.trials.rooted(after) and self.premises.holds(after, claim, self.field)
        if isinstance(claim, ground.Rounded):
            return self._of_the_found(after)
        assert before is not None
        return self._step(self._as_carried(before), after, claim)

    def _of_the_found(self, after: Equation) -> bool:
        """A letter and a rounded number that stands for just the value found, sign and all."""
        letter = lone(after.left)
        if not isinstance(letter, Letter) or not after.rounded or len(after.right) != 1:
            return False
        (found,), new = self.ledger[letter.name], after.right[0]
        if len(new.factors) != 1 or not isinstance(new.factors[0], Shown) or new.sign != found.sign:
            return False
        value = found.factors[0]
        return new.factors[0].of == (value.of if isinstance(value, Shown) else Term(1, found.factors))

    def _step(self, before: Equation, after: Equation, claim: ground.Claim) -> bool:
        f = self.field
        match claim:
            case ground.Scaled(by):
                if by == Term(1, ()) and only_worked_out(before, after):
                    return True
                if self._angular(before) != self._angular(after):
                    return False
                if self._angular(after):
                    turned = self._residual(before) if by.sign > 0 else f.over(1, self._residual(before))
                    return not by.factors and turned == self._residual(after)
                return self._residual(after) == self._known(by) * self._residual(before) % f.p
            case ground.Put(names, bracketed):
                values = in_brackets({name: self.ledger[name] for name in names}, bracketed)
                return (
                    after.letters.isdisjoint(names)
                    and after == Equation(put(before.left, values), put(before.right, values))
                    and self._numbers_agree(after)
                )
            case ground.Rooted():
                square = lone(before.left)
                sizes = ("reaction", *(key for key in self.truth.relation if keys.of(key).what == "line"))
                return (
                    isinstance(square, Power)
                    and square.exponent == 2
                    and isinstance(square.base, Letter)
                    and square.base.name in sizes
                    and lone(after.left) == square.base
                    and lone(after.right) == Root(before.right)
                )
            case ground.Tangent(by):
                cosine = f.factor(Trig("cos", _angle(after)))
                return self._residual(before) == self._known(by) * cosine * self._residual(after) % f.p
            case ground.Divided(by):
                return by in map(self._as_carried, filter(self.vouches_for, self.lines)) and self._divided(
                    before, after, by
                )
            case ground.Inverted():
                return inverted(before, after, self.sizes, self.angles)
        return False

    def _divided(self, before: Equation, after: Equation, by: Equation) -> bool:
        """Each side over the same side of `by`, the right of which is not zero. Of a product that is zero the one
        factor that `by` has not.
        """
        f, ratio = self.field, Term(1, (Quotient(before.right, by.right),))
        odd = any(
            self._angular(each) or each.rounded or self.trials.rooted(Equation(each.left, ()))
            for each in (before, after, by)
        )
        if odd or sign(self.sizes.sum(by.right)) == 0:
            return False
        zero, all_ = (
            lone(after.left),
            before.left[0].factors if len(before.left) == len(by.left) == 1 and not before.right else (),
        )
        left = (
            zero in all_
            and {*all_} <= {zero, *by.left[0].factors}
            or f.over(f.sum(before.left), f.sum(by.left)) == f.sum(after.left)
        )
        return (
            left
            and f.sum((ratio,)) == f.sum(after.right)
            and sign(self.sizes.sum((ratio, *(each.flipped() for each in after.right)))) == 0
        )

    # ------------------------------------------------------------------ both sides
    def _angular(self, equation: Equation) -> bool:
        """Whether a line is one of angles. Raises Refused where angles stand beside something else."""
        terms = (*equation.left, *equation.right)
        angles = sum(len(each.factors) == 1 and is_angle(each.factors[0]) for each in terms)
        if 0 < angles < len(terms):
            raise Refused("angles are added to what is no angle")
        return angles > 0

    def _numbers_agree(self, line: Equation) -> bool:
        """Values that were rounded on the way may be put in, but not where the two sides then differ by nothing else:
        neither in numbers, nor whatever the letters are.
        """
        if not self.carry_shown:
            return True
        try:
            return sign(gap(line, Sizes({**self.ledger, **self.converting}) if self.converting else self.sizes)) == 0
        except Undefined:
            return not self.trials.apart_by_roundings(line, self.course.working_figures)

    def _residual(self, equation: Equation) -> int:
        """Left less right; of angles left turned back by right."""
        f, left, right = self.field, equation.left, equation.right
        return f.over(f.angle(left), f.angle(right)) if self._angular(equation) else (f.sum(left) - f.sum(right)) % f.p

    def _sizes_agree(self, after: Equation, claim: ground.Claim, before: Certified | None) -> bool:
        """Where roots or angles are worked out, both lines also agree in size, whatever the letters that are still
        sought.
        """
        if not isinstance(claim, ground.Scaled | ground.Tangent) or before is None:
            return True
        first = self._as_carried(before)
        if not (self._angular(first) or self.trials.rooted(first) or self.trials.rooted(after)):
            return True
        new, old = Term(1, ()), claim.by
        if isinstance(claim, ground.Tangent):
            new, old = Term(claim.by.sign, (*claim.by.factors, Trig("cos", _angle(after)))), new
        return self.trials.agree(after, new, first, old)
