"""What is believed: the only place where a Certified line is made. Trusts no rule; compares exactly in a prime field, sizes by intervals."""
from __future__ import annotations

from collections.abc import Callable
from typing import Any, NoReturn

from . import claim as ground
from .body import Bearing
from .equation import Equation, Letter, Power, Quantity, Root, Shown, Term, Terms, Trig, leaves, letters, lone
from .field import Field, Redraw
from .interval import Sizes, Undefined, in_unit, rounded, sign
from .replace import put, settled
from .truth import Truth

ANGLES = ("angle ", "fold ", "inclination ")
SUMS = ("total", "level", "upright", "along", "across", "moment reaction")
_SEAL = object()


class Refused(Exception):
    """A line that does not stand on the ground that was claimed for it."""


class Certified:
    """A line that the checker has proved, and the ground. Made by Checker only: not copied, pickled or changed."""

    __slots__ = ("equation", "claim")
    equation: Equation
    claim: ground.Claim

    def __init__(self, equation: Equation, claim: ground.Claim, seal: object) -> None:
        if seal is not _SEAL:
            raise TypeError("only a Checker makes a Certified line")
        object.__setattr__(self, "equation", equation)
        object.__setattr__(self, "claim", claim)

    def _no(self, *_: object) -> NoReturn:
        raise TypeError("a Certified line is made by a Checker and never changed or copied")

    __setattr__ = __delattr__ = __copy__ = __deepcopy__ = __reduce__ = __reduce_ex__ = _no  # type: ignore[assignment]


class Checker:
    """Certifies the lines of one working. `ledger` holds each given or found value as it is written."""

    def __init__(self, truth: Truth, *, ties: str = "up", carry_shown: bool = False, field: Field | None = None) -> None:
        self.truth, self.ties, self.carry_shown = truth, ties, carry_shown
        self.field = field or Field()
        self.twin = self.field.twin()
        self.ledger: dict[str, Terms] = {each.letter.name: (Term(1, (each.value,)),) for each in truth.body.givens}
        self.sizes = Sizes(self.ledger)
        self.defined: dict[str, Terms] = {}
        self.lines: list[Certified] = []
        self._checked: dict[int, Shown] = {}
        self._texts: dict[str, str] = {each.letter.text: each.letter.name for each in truth.body.givens}

    def vouches_for(self, line: object) -> bool:
        """Whether this very line was certified here."""
        return any(each is line for each in self.lines)

    def certify(self, after: Equation, claim: ground.Claim, before: Certified | None = None) -> Certified:
        """The line, certified; raises Refused where it does not stand on its claim."""
        self._letters_unique(after)
        if isinstance(claim, ground.Premise):
            self._hold(lambda: self._premise(after, claim), after)
            self._define(after, claim)
        else:
            if isinstance(claim, ground.Rounded):
                self._hold(lambda: self._rounding(after), after)
            elif before is None or not self.vouches_for(before):
                raise Refused("the line before is not one that was certified here")
            else:
                self._hold(lambda: self._step(self._as_carried(before.equation), after, claim), after)
        for leaf in (*leaves(after.left), *leaves(after.right)):
            if isinstance(leaf, Shown):
                self._rounding_holds(leaf)
        line = Certified(after, claim, _SEAL)
        self.lines.append(line)
        self._found(after)
        return line

    # ------------------------------------------------------------------ machinery
    def _hold(self, test: Callable[[], bool], after: Equation) -> None:
        for _ in range(200):
            try:
                if test():
                    return
                raise Refused("this does not follow")
            except Redraw:
                self.field = Field()
                self.twin = self.field.twin()
                for name, terms in self.defined.items():
                    self.field.letters[name] = self.field.sum(terms)
        raise Refused("no prime was found in which the line can be tested")

    def _letters_unique(self, equation: Equation) -> None:
        for leaf in (*leaves(equation.left), *leaves(equation.right)):
            if isinstance(leaf, Letter) and self._texts.setdefault(leaf.text, leaf.name) != leaf.name:
                raise Refused(f"the letter {leaf.text} stands for two things")

    def _as_carried(self, equation: Equation) -> Equation:
        return Equation(settled(equation.left), settled(equation.right)) if self.carry_shown else equation

    def _define(self, after: Equation, claim: ground.Claim) -> None:
        alone = lone(after.left)
        if isinstance(claim, ground.Converted):
            self.ledger.pop(claim.key)
        if isinstance(claim, ground.Arm | ground.Turning) and isinstance(alone, Letter):
            self.defined[alone.name] = after.right
            self.field.letters[alone.name] = self.field.sum(after.right)

    def _found(self, after: Equation) -> None:
        alone = lone(after.left)
        if not isinstance(alone, Letter) or after.rounded or letters(after.right) & (self.ledger.keys() | {alone.name}):
            return
        if len(after.right) > 1 or any(not isinstance(x, Quantity | Shown | Letter) for each in after.right for x in each.factors):
            return
        if len(after.right) == 1 and len(after.right[0].factors) > 1 and not letters(after.right):
            return
        if alone.name not in self.ledger or letters(self.ledger[alone.name]):
            self.ledger[alone.name] = settled(after.right) if self.carry_shown else after.right

    def _angular(self, equation: Equation) -> bool:
        first = next((factor for side in (equation.left, equation.right) for each in side for factor in each.factors), None)
        return isinstance(first, Letter) and first.name.startswith(ANGLES) and len(equation.left[0].factors) == 1

    def _residual(self, equation: Equation) -> int:
        f = self.field
        if self._angular(equation):
            return f.over(f.angle(equation.left), f.angle(equation.right))
        return (f.sum(equation.left) - f.sum(equation.right)) % f.p

    def _known(self, by: Term) -> int:
        """A multiplier as an element: free of unknowns, and not zero."""
        if sign(self.sizes.sum((by,))) == 0:
            raise Refused("multiplied by what may be zero")
        return self.field.sum((by,))

    def _rounding_holds(self, shown: Shown) -> None:
        if self._checked.get(id(shown)) is shown:
            return
        if letters((shown.of,)):
            raise Refused("a rounded number stands for numbers only")
        number, unit = shown.value.number, shown.value.unit
        size = in_unit(self.sizes.factor(shown), unit)
        if rounded(size, number.as_tuple().exponent, self.ties) != number:  # type: ignore[arg-type]
            raise Refused(f"{number} is not {size}, rounded")
        if unit != (("deg", 1),):
            self._hold(lambda: self._same_kind(shown), Equation((shown.of,), ()))
        self._checked[id(shown)] = shown

    def _same_kind(self, shown: Shown) -> bool:
        """The value keeps its ratio to the unit (but for the sign of a root) when kilogram, metre and second change."""
        first, second = (f.over(f.sum((shown.of,)), f.unit(shown.value.unit)) for f in (self.field, self.twin))
        return (first - second) * (first + second) % self.field.p == 0

    # ------------------------------------------------------------------ grounds
    def _step(self, before: Equation, after: Equation, claim: ground.Claim) -> bool:
        f = self.field
        match claim:
            case ground.Scaled(by):
                if self._angular(before):
                    turned = self._residual(before) if by.sign > 0 else f.over(1, self._residual(before))
                    return not by.factors and turned == self._residual(after)
                return self._residual(after) == self._known(by) * self._residual(before) % f.p
            case ground.Put(names):
                values = {name: self.ledger[name] for name in names if name in self.ledger}
                if len(values) < len(names) or set(names) & (letters(after.left) | letters(after.right)):
                    raise Refused("a value was put in that is neither given nor found")
                full = Equation(put(before.left, values), put(before.right, values))
                return self._residual(after) == self._residual(full)
            case ground.Combined(by, other, other_by):
                second = self._residual(self._as_carried(self.lines[other].equation))
                return self._residual(after) == (self._known(by) * self._residual(before) + self._known(other_by) * second) % f.p
            case ground.Rooted():
                base = lone(before.left)
                return (isinstance(base, Power) and base.exponent == 2 and lone(after.left) == base.base and isinstance(base.base, Letter)
                        and base.base.name in ("reaction",) + tuple(k for k in self.truth.relation if k.endswith(".line"))
                        and lone(after.right) == Root(before.right))
            case ground.Tangent(by):
                ratio = lone(after.left)
                if not isinstance(ratio, Trig) or ratio.name != "tan":
                    return False
                return self._residual(before) == self._known(by) * f.factor(Trig("cos", ratio.angle)) * self._residual(after) % f.p
            case ground.Inverted():
                ratio = lone(before.left)
                if not isinstance(ratio, Trig) or not letters(after.left) or any(isinstance(x, Trig) for x in leaves(after.right)):
                    return False
                self.sizes.sum(after.right)
                unit = f.angle(after.right)
                value = f.sine(unit) if ratio.name == "sin" else f.cosine(unit) if ratio.name == "cos" else f.over(f.sine(unit), f.cosine(unit))
                return value == f.sum(before.right)
        return False

    def _rounding(self, after: Equation) -> bool:
        letter, value = lone(after.left), after.right
        if not isinstance(letter, Letter) or letter.name not in self.ledger:
            raise Refused("only a found value is rounded")
        exact = Equation(after.left, self.ledger[letter.name])
        if self._angular(exact):
            return self.field.angle(value) == self.field.angle(exact.right)
        return self.field.sum(value) == self.field.sum(exact.right)

    def _premise(self, after: Equation, claim: ground.Claim) -> bool:
        f, truth = self.field, self.truth
        right = f.sum(after.right) if not isinstance(claim, ground.Between) else f.angle(after.right)
        match claim:
            case ground.AtRest():
                return not after.right and all(isinstance(factor, Letter) and factor.name in SUMS
                                               for each in after.left for factor in each.factors)
            case ground.Balance():
                return self._balance(after, claim)
            case ground.Follows(key):
                return f.sum(after.left) == pow(f.letter(key), 2 if key.endswith(".line") else 1, f.p) \
                    and right == truth.carry(truth.relation[key], f)
            case ground.Arm(force, sense, about):
                moment = truth.moment_about(about, force) if about else truth.moment[force]
                cut = truth.body.force(force)
                return self._turns(after.right, sense) and \
                    sense * right * cut.count * f.letter(cut.size.name) % f.p == truth.carry(moment, f)
            case ground.Turning(force, sense):
                cut = truth.body.force(force)
                return len(cut.steps) == 1 and self._turns(after.right, sense) and \
                    sense * cut.count * right * f.letter(cut.steps[0].distance.name) % f.p == truth.carry(truth.moment[force], f)
            case ground.Moment(force, sense):
                return right == sense * truth.carry(truth.moment[force], f) % f.p
            case ground.Between(first, second):
                between = f.over(self._unit(first), self._unit(second))
                return right in (between, f.over(1, between), f.p - between, f.p - f.over(1, between)) and self._acute(after.right)
            case ground.Pythagoras(parts):
                return self._pythagoras(after, parts)
            case ground.Converted(key):
                return not letters(after.right) and lone(after.left) == truth.body.letters(key) and right == f.sum(self.ledger.get(key, ()))
            case ground.Stress(force):
                return right == f.over(f.letter(f"{force}.force"), f.letter(f"{force}.area"))
        return False

    def _unit(self, bearing: Bearing) -> int:
        out = self.field.turn(bearing.degrees % 360)
        for letter, k in bearing.unknown:
            out = out * pow(self.field.letter(letter.name), k, self.field.p) % self.field.p
        return out

    def _acute(self, right: Terms) -> bool:
        size: Any = self.sizes.sum(right)
        return bool(0 <= size <= 90)

    def _turns(self, right: Terms, sense: int) -> bool:
        """An arm is a length: not negative. One with an unknown in it cannot be told yet."""
        try:
            return sense in (1, -1) and sign(self.sizes.sum(right)) >= 0
        except Undefined:
            return sense in (1, -1)

    def _balance(self, after: Equation, claim: ground.Balance) -> bool:
        f, truth = self.field, self.truth
        if claim.sense not in (1, -1) or bool(claim.total) != bool(after.right):
            return False
        if claim.total and lone(after.right) != Letter("total", getattr(lone(after.right), "text", "")):
            return False
        written: dict[str, int] = dict.fromkeys(truth.moment, 0)
        for each in after.left:
            if each.source not in written:
                raise Refused(f"a term of no force: {each.source!r}")
            written[each.source] += f.sum((each,))
        return all(total % f.p == claim.sense * self._share(name, claim) % f.p for name, total in written.items())

    def _share(self, name: str, claim: ground.Balance) -> int:
        """What one force adds to a balance, from the truth."""
        if claim.axis is None:
            return self.truth.carry(self.truth.moment_about(claim.about, name) if claim.about else self.truth.moment[name], self.field)
        if name == "reaction" and (claim.axis.degrees % 90 or claim.axis.unknown or self.truth.body.problem.course.axes):
            bone = self.truth.body.bearings[self.truth.body.problem.course.axes]
            return self.field.letter("reaction.along" if claim.axis.degrees == bone.degrees else "reaction.across")
        return self.truth.carry(self.truth.component(name, claim.axis), self.field)

    def _pythagoras(self, after: Equation, parts: tuple[str, str]) -> bool:
        f, (x, y) = self.field, parts
        if {x, y} not in ({"reaction.right", "reaction.up"}, {"reaction.along", "reaction.across"}):
            return False
        match lone(after.left):
            case Power(Letter(name="reaction"), 2):
                return f.sum(after.right) == (f.letter(x) ** 2 + f.letter(y) ** 2) % f.p
            case Trig("tan", Letter(name="angle reaction")):
                ratio = f.over(f.letter(y), f.letter(x))
                return f.sum(after.right) ** 2 % f.p == ratio**2 % f.p and sign(self.sizes.sum(after.right)) > 0
            case Letter(name="reaction"):
                zero = not self.ledger.get(x, (1,))
                return zero and f.sum(after.right) in (f.letter(y), f.p - f.letter(y)) and sign(self.sizes.sum(after.right)) >= 0
        return False
