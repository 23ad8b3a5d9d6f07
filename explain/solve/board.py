"""The board a rule looks at: the line in hand, what is sought, the values known, the class's conventions. Knows how a
number is worked out
and rounded, and no move."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field
from decimal import Decimal
from fractions import Fraction

from .goal import Goal
from ..mechanics.body import Body
from ..problem.course import Course
from ..equation.terms import (
    DEGREE,
    Equation,
    Factor,
    Group,
    Inverse,
    Letter,
    Number,
    Power,
    Quantity,
    Quotient,
    Root,
    Shown,
    Term,
    Terms,
    Trig,
    Unit,
    changed,
)
from ..exact.prime_field import UNITS, dimension
from ..exact.interval import Sizes, Value, in_unit, negative, place, rounded, sign, to_figures

LENGTHS = ("m", "cm", "mm", "in", "ft")
FINEST = -6  # an angle that is gone on with is no finer than a millionth of a degree
FORCE, MASS, LENGTH, MOMENT = (1, 1, -2), (1, 0, 0), (0, 1, 0), (1, 2, -2)
FORCE_PER_LENGTH = (1, 0, -2)


@dataclass(frozen=True, slots=True)
class Units:
    """The units answers come in."""

    length: str = "m"
    force: str = "N"
    mass: str = "kg"


@dataclass(slots=True)
class Board:
    """What a rule may look at. `equation` is the line in hand, or None where a goal has just been set."""

    equation: Equation | None
    sought: str
    values: Mapping[str, Terms] = field(default_factory=dict)
    course: Course = field(default_factory=Course)
    units: Units = Units()
    goal: Goal = Goal("", "")
    body: Body | None = None
    settled: Mapping[str, float] = field(default_factory=dict)  # sought angles (degrees) and places (m) as balanced
    sizes: Sizes = field(default_factory=lambda: Sizes({}))
    beside: Equation | None = None  # a line found before that is taken together with the one in hand
    _sums: tuple[Equation | None, tuple[Terms, ...]] = (None, ())

    @property
    def eq(self) -> Equation:
        assert self.equation is not None
        return self.equation

    @property
    def stands(self) -> Goal | Equation:
        """What a rule may act on: the goal as long as there is no line, then the line."""
        return self.equation or self.goal

    @property
    def kinds(self) -> frozenset[type]:
        """The kind of goal, or the kinds of factors on the line."""
        return frozenset((type(self.goal),) if self.equation is None else map(type, self.equation.leaves))

    @property
    def free(self) -> Body:
        assert self.body is not None
        return self.body

    @property
    def sums(self) -> tuple[Terms, ...]:
        """Every sum of the line in hand, the inner ones first."""
        if self._sums[0] is not self.equation:
            self._sums = (self.eq, (*sums(self.eq.left), *sums(self.eq.right)))
        return self._sums[1]

    def letter(self, key: str) -> Letter:
        return self.free.letters(key)

    # ------------------------------------------------------------------ numbers
    def number(self, of: Term, unit: Unit | None = None, least: int = 1) -> Term:
        """A numeric term worked out: a sign and one written number, rounded where it has more figures than the
        working's, or than `least` where those are fewer.
        """
        value = self.sizes.sum((of,))
        unit = unit_of(of.factors, self.units) if unit is None else unit
        size = in_unit(value, unit) if sign(value) else Fraction(0)
        positive = size if sign(size) >= 0 else negative(size)
        sense = 1 if sign(size) >= 0 else -1
        figures = max(least, self.course.working_figures)
        exact = _written(positive, figures)
        if exact is not None:
            return Term(sense, (Quantity(exact, unit),), of.source)
        number = self.rounded(positive, figures)
        if unit == DEGREE and self.course.carry != "unrounded" and int(number.as_tuple().exponent) < FINEST:
            number = rounded(positive, FINEST, self.course.ties)
        stands_for = of if sense > 0 else of.flipped()
        return Term(sense, (Shown(Quantity(number, unit), stands_for),), of.source)

    def rounded(self, size: Value, figures: int | None = None) -> Decimal:
        """To the working figures; with one more where else the answer would seem to be rounded the wrong way
        (969.496: not 969.50, then 969).
        """
        course, working = self.course, figures or self.course.working_figures
        number = to_figures(size, working, course.ties)
        for more in range(1, 4):
            behind = number.as_tuple().digits[course.figures :]  # rounding again goes wrong from a half only
            if (
                course.carry != "unrounded"
                or behind[:1] != (5,)
                or any(behind[1:])
                or to_figures(Fraction(number), course.figures, course.ties)
                == to_figures(size, course.figures, course.ties)
            ):
                break
            number = to_figures(size, working + more, course.ties)
        return number


def _written(size: Value, figures: int) -> Decimal | None:
    """The exact decimal, if it has no more than so many figures."""
    if not isinstance(size, Fraction):
        return None
    if size == 0:
        return Decimal(0)
    last = place(size, figures)
    top, bottom = (
        (size.numerator, size.denominator * 10**last) if last >= 0 else (size.numerator * 10**-last, size.denominator)
    )
    whole, rest = divmod(top, bottom)
    if rest:
        return None
    number = Decimal(whole).scaleb(last).normalize()
    return number if int(number.as_tuple().exponent) <= 0 else number.quantize(Decimal(1))


def merged(factors: tuple[Factor, ...]) -> dict[str, int]:
    """The unit of a numeric product, power by power, as its factors are written."""
    out: dict[str, int] = {}
    for factor in factors:
        for name, power in _units(factor).items():
            out[name] = out.get(name, 0) + power
    return {name: power for name, power in out.items() if power}


def _units(factor: Factor) -> dict[str, int]:
    match factor:
        case Number():
            return dict(factor.written.unit)
        case Power(base, exponent):
            return {name: power * exponent for name, power in _units(base).items()}
        case Quotient(top, bottom):
            out = merged(top[0].factors) if top else {}
            for name, power in (merged(bottom[0].factors) if bottom else {}).items():
                out[name] = out.get(name, 0) - power
            return {name: power for name, power in out.items() if power}
        case Group(terms):
            return merged(terms[0].factors) if terms else {}
        case Root(terms):
            return {name: power // 2 for name, power in merged(terms[0].factors).items()} if terms else {}
        case Inverse():
            return {"deg": 1}
    return {}


def unit_of(factors: tuple[Factor, ...], units: Units) -> Unit:
    """The unit a numeric product is written in: kg m/s^2 is N; like units cancel; one unit of length; per cent is a
    number.
    """
    powers = merged(factors)
    powers.pop("%", None)
    if "deg" in powers:
        return DEGREE
    unit = tuple(powers.items())
    kind = dimension(unit)
    if kind == (0, 0, 0):
        return ()
    if kind == FORCE and len(powers) > 1:
        return ((units.force, 1),)
    if kind == MASS and len(powers) > 1:
        return ((units.mass, 1),)
    found = [name for name in powers if name in LENGTHS]
    if kind == LENGTH and len(powers) > 1:
        return ((found[0], 1),)
    if kind == MOMENT:
        force = next((name for name in powers if UNITS[name][1] == FORCE), units.force)
        return ((force, 1), (found[0] if found else units.length, 1))
    if len(found) > 1:
        total = sum(powers.pop(name) for name in found)
        powers[found[0]] = total
    return tuple((name, power) for name, power in powers.items() if power)


# ---------------------------------------------------------------------- looking at a line
def is_number(factor: Factor) -> bool:
    """A number as it is written, nothing left to do."""
    return isinstance(factor, Number)


def is_plain(each: Term) -> bool:
    return len(each.factors) == 1 and is_number(each.factors[0])


def each_sum(terms: Terms, change: Callable[[Terms], Terms]) -> Terms:
    """A sum with `change` applied to every sum in it, the inner ones first."""
    inner = [_within(each, change) for each in terms]
    return change(tuple([_opened(each) for each in inner if not any(_empty(factor) for factor in each.factors)]))


def _within(each: Term, change: Callable[[Terms], Terms]) -> Term:
    """A term with every sum in it changed, itself where it has none."""
    if all(isinstance(factor, Letter | Number) for factor in each.factors):
        return each
    return Term(each.sign, tuple([_each_sum(factor, change) for factor in each.factors]), each.source)


def _empty(factor: Factor) -> bool:
    return isinstance(factor, Quotient) and not factor.top or isinstance(factor, Group) and not factor.terms


def _opened(each: Term) -> Term:
    """A term without brackets around a single term."""
    if not any(isinstance(factor, Group) and len(factor.terms) == 1 for factor in each.factors):
        return each
    sign, factors = each.sign, list[Factor]()
    for factor in each.factors:
        if isinstance(factor, Group) and len(factor.terms) == 1:
            sign *= factor.terms[0].sign
            factors.extend(factor.terms[0].factors)
        else:
            factors.append(factor)
    return Term(sign, tuple(factors), each.source)


def _each_sum(factor: Factor, change: Callable[[Terms], Terms]) -> Factor:
    def inner(of: Factor) -> Factor:
        return _each_sum(of, change) if isinstance(of, Group) else of

    return changed(factor, lambda terms: each_sum(terms, change), inner)


def both_sides(equation: Equation, change: Callable[[Terms], Terms]) -> Equation:
    return Equation(each_sum(equation.left, change), each_sum(equation.right, change))


def sums(terms: Terms) -> Iterator[Terms]:
    """Every sum in a sum, the inner ones first."""
    for each in terms:
        for factor in each.factors:
            match factor:
                case Letter() | Quantity() | Shown():
                    continue
                case Quotient(top, bottom):
                    yield from sums(top)
                    yield from sums(bottom)
                case (
                    Group(inner) | Root(inner) | Inverse(of=inner) | Power(base=Group(inner)) | Trig(angle=Group(inner))
                ):
                    yield from sums(inner)
    yield terms
