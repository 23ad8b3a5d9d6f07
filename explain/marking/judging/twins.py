"""Twins of a problem: the same problem with every datum moved by a few per cent, as accounts that can be compared
one by one.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import fields, is_dataclass, replace
from decimal import Decimal
from random import Random
from typing import Any

from ..slips.account import Account, Impossible
from ..slips.account_of_working import account_of
from ...problem.course import Course
from ...equation.terms import Quantity
from ...errors import Fault
from ...mechanics.free_body import cut_free
from ...problem.model import FromTable, Percent, Problem, Segment
from ...mechanics.postures import as_given, at_rest
from ...solve.engine import Working

TWINS = 3
_TRIES = 40
_FIXED = {"%": (0, 50, 100), "deg": (0, 90, 180)}
_KEPT = frozenset(("range", "limit", "course", "marks"))
_POUNDS = frozenset(("lb", "lbf"))
_KILONEWTONS = frozenset(("kN",))


def in_pounds(account: Account) -> bool:
    """Whether the problem gives weights in pounds."""
    return any(unit in _POUNDS for _, unit in account.written.values())


def in_kilonewtons(account: Account) -> bool:
    """Whether the problem gives a force in kilonewtons."""
    return any(unit in _KILONEWTONS for _, unit in account.written.values())


def twins_of(working: Working) -> tuple[Account, ...]:
    """The account of a problem as written, and those of its twins; where no twin can be settled, fewer."""
    problem = working.body.problem
    first = account_of(working)
    out = [first]
    for seed in range(1, _TRIES):
        moved = _Moved(Random(seed), first).problem(problem)
        other = _account(moved, working)
        if other is not None and _alike(first, other):
            out.append(_other_gravity(replace(other, rows=first.rows), Random(seed), not in_pounds(first)))
        if len(out) > TWINS:
            break
    return tuple(out)


def _account(problem: Problem, working: Working) -> Account | None:
    try:
        body = cut_free(problem)
        body, truth, settled, _ = at_rest(body) if problem.balanced else as_given(body)
        account = account_of(Working(body, truth, settled, working.asked, working.checker, ()))
        account.values()
    except (Fault, Impossible, ArithmeticError, ValueError, LookupError, RuntimeError):
        return None
    return account


def _alike(one: Account, other: Account) -> bool:
    """Whether two accounts have the same terms with the same senses, so that their quantities can be put side by
    side. The sine of an angle may be the cosine of another one, where the data happen to make it so.
    """

    def shape(account: Account) -> list[object]:
        return [
            (each.name, each.turns, [(leg.turned.sign, bool(leg.turned.function)) for leg in each.legs])
            for each in account.items
        ]

    return shape(one) == shape(other) and one.stages == other.stages


def _other_gravity(account: Account, random: Random, moves: bool) -> Account:
    if not moves:
        return account
    factor = 1 + random.uniform(0.015, 0.04) * random.choice((1, -1))
    changed = {key: account.data[key] * factor for key in ("g", "*person.weight") if key in account.data}
    return replace(account, data={**account.data, **changed})


class _Moved:
    """One way of moving the data: equal ones move together, so that what is equal stays equal."""

    def __init__(self, random: Random, account: Account) -> None:
        self.random, self.account = random, account
        self.shifts: dict[tuple[object, Decimal], float] = {}

    def problem(self, problem: Problem) -> Problem:
        return self.changed(problem)  # type: ignore[no-any-return]

    def changed(self, value: Any) -> Any:
        match value:
            case Quantity():
                return self._quantity(value)
            case Course():
                return value
            case tuple():
                return tuple(self.changed(each) for each in value)
            case Segment():
                return self._record(
                    replace(value, mass=self._looked_up(value, "mass"), com=self._looked_up(value, "com"))
                )
            case _ if is_dataclass(value):
                return self._record(value)
        return value

    def _record(self, value: Any) -> Any:
        names: Sequence[str] = [each.name for each in fields(value) if each.name not in _KEPT]
        return replace(value, **{name: self.changed(getattr(value, name)) for name in names})

    def _looked_up(self, segment: Segment, key: str) -> Any:
        """A share from a table as a share that is given, so that it can be moved."""
        written, share = getattr(segment, key), self.account.data.get(f"{segment.name}.{key}%")
        if isinstance(written, FromTable) and share is not None:
            return Percent(Quantity(Decimal(repr(round(100 * share, 9))), (("%", 1),)))
        return written

    def _quantity(self, value: Quantity) -> Quantity:
        unit = value.unit[0][0] if value.unit else ""
        size = abs(value.number)
        if not size or size in _FIXED.get(unit, ()):
            return value
        if unit == "deg":
            return Quantity((size + self._turn(size)).copy_sign(value.number), value.unit)
        key = (value.unit, size)
        if key not in self.shifts:
            self.shifts[key] = float(size) * self.random.uniform(0.008, 0.045) * self.random.choice((1, -1))
        moved = Decimal(repr(round(float(size) + self.shifts[key], 9)))
        return Quantity(moved.copy_sign(value.number), value.unit)

    def _turn(self, size: Decimal) -> Decimal:
        """How far an angle moves: those that complete each other move apart, so that they still do."""
        rest = size % 90
        key = ("deg", min(rest, 90 - rest))
        if key not in self.shifts:
            self.shifts[key] = self.random.uniform(0.8, 2.5) * self.random.choice((1, -1))
        turned = self.shifts[key] if rest <= 45 else -self.shifts[key]
        return Decimal(repr(round(turned, 9)))
