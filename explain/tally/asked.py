"""The answers of a problem as a class gives them: which quantity of the account each is, in which unit, and when a
number is right. Knows no student.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from typing import NamedTuple

from ..marking.slips.account import Account, Values
from ..solve.answers import spelled, unit_of_answer
from ..equation.terms import DEGREE, Unit
from ..errors import Fault
from ..exact.interval import in_unit, middle
from ..solve.outcome import Outcome
from ..problem.quantity import factor

_PARTS = ("reaction.right", "reaction.up", "reaction.along", "reaction.across")


class Wanted(NamedTuple):
    """One answer: its name, the key of its quantity, its unit, what a value in kg, m, s or degrees is multiplied by,
    and the true value.

    `signed`: the sign of the number tells its sense; of other answers a sign only says that a pull came out negative.
    `other` are further names.
    """

    name: str
    key: str
    unit: Unit
    factor: float
    value: float
    signed: bool = False
    other: tuple[str, ...] = ()

    @property
    def spelled(self) -> str:
        return spelled(self.unit)

    @property
    def is_force(self) -> bool:
        return self.key.startswith("reaction") or self.key.endswith((".force", ".weight"))

    def of(self, values: Values) -> float | None:
        """The number that an account gives, in the answer's unit."""
        found = values.get(self.key)
        return None if found is None else found * self.factor


def wanted(outcome: Outcome, account: Account) -> tuple[Wanted, ...]:
    """What is asked, and the parts of the joint force with it; in the order in which a working finds them. What no
    account has is left out.
    """
    values, keys = account.values(), dict(outcome.working.asked)
    found = [_one(outcome, name, keys.get(name, name), values) for name in outcome.answers]
    return tuple(
        sorted((each for each in found if each is not None), key=lambda each: _rank(each.key, account.unknowns))
    )


def in_unit_of(own: Wanted, other: Wanted) -> Wanted:
    """The answer in the unit of the same answer to another variant, where the two are of one kind."""
    if own.unit == other.unit:
        return own
    try:
        by = float(factor(own.unit, other.unit))
    except Fault:
        return own
    return own._replace(unit=other.unit, factor=own.factor * by, value=own.value * by)


def _one(outcome: Outcome, name: str, key: str, values: Values) -> Wanted | None:
    unit = DEGREE if key.startswith("*angle ") else unit_of_answer(outcome.working, key)
    if key.endswith(".stress") and values.get(force := f"{key.removesuffix('.stress')}.force"):
        return Wanted(name, force, unit, outcome.answers[name].value / values[force], outcome.answers[name].value)
    if key not in values:
        return None
    signed = key in _PARTS or key.startswith("*moment ") or key == "total"
    letters = outcome.body.letters.known
    factor = _factor(outcome, key, unit)
    return Wanted(name, key, unit, factor, values[key] * factor, signed, (letters[key].text,) if key in letters else ())


def _factor(outcome: Outcome, key: str, unit: Unit) -> float:
    """Moments have the sign of the class's positive sense; the joint force is the push on the body cut free."""
    if unit == DEGREE:
        return 1.0
    sense = outcome.body.problem.course.sense if key.startswith("*moment ") or key == "total" else 1
    return float(middle(in_unit(Fraction(1), unit))) * sense


def _rank(key: str, unknowns: Sequence[str]) -> tuple[int, int]:
    """Unknown pulls first, in the order in which they are found; then what follows; then the parts of the joint
    force; its size last.
    """
    if key in unknowns:
        return 0, unknowns.index(key)
    return (3 if key == "reaction" else 2 if key in _PARTS else 1), 0
