"""A student's set of numbers: drawn, screened, and drawn again until one may be handed out; and why none may. Knows
no file.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping
from typing import Any, NamedTuple

from ..marking.slips.account import Impossible
from ..errors import Fault, NoWay
from ..solve.outcome import Outcome
from ..marking.slips.slip import SlipRule
from .class_list import Student
from .shuffle import drawn, tries
from .settle_only import accounted, settled
from .ranges import Range
from .screen import Experts, Measure, Refusal, at_once, measure, screened
from .source import with_values
from .reuse_account import Swift

_SOME = 24  # values of one range that are tried with all else as written
_LIKELY = 12  # slips that are looked at before all else
_EXPLAINED = 64  # sets that a refusal is explained by


class Set(NamedTuple):
    """A set of numbers that may be handed out: the place of each value in its range, the problem, its outcome."""

    places: tuple[int, ...]
    tables: dict[str, Any]
    outcome: Outcome


class Trials:
    """The sets of one problem. `name` is what messages call it, and where its paths begin. Raises Fault where the
    problem as written cannot be worked.
    """

    def __init__(self, tables: Mapping[str, Any], ranges: tuple[Range, ...], name: str, experts: Experts) -> None:
        self.tables, self.ranges, self.name, self.experts = dict(tables), ranges, name, experts
        self.sizes = tuple(len(each.values) for each in ranges)
        self.base = settled(with_values(self.tables, (), ()), name)
        self.like: Measure = measure(self.base, experts)
        self.keys = tuple(key for _, key in self.base.working.asked)
        self.swift = Swift(ranges)
        self.likely: list[SlipRule] = []  # slips that refused a set lately: of no weight, but quick to refuse the next

    def set_for(self, seed: int, student: Student) -> Set:
        """The first set that may be handed out to a student. Raises Fault where none may."""
        ticket = student.ticket(seed)
        for attempt in tries(self.sizes):
            places = drawn(seed, ticket, attempt, self.sizes)
            found = self._at_once(places) or self._tried(self.ranges, places, self.swift)
            if not isinstance(found, Refusal):
                return Set(places, *found)
            named = [each for slip in found.slips for each in self.experts.slips if slip == each.SLIP]
            self.likely = [*named, *(each for each in self.likely if each not in named)][:_LIKELY]
        raise self._none(seed, ticket)

    def _at_once(self, places: tuple[int, ...]) -> Refusal | None:
        account = self.swift.account(places)
        try:
            return at_once(account, self.keys, self.like, self.likely) if account else None
        except Impossible:
            return None

    def _tried(
        self, ranges: tuple[Range, ...], places: tuple[int, ...], swift: Swift | None = None
    ) -> tuple[dict[str, Any], Outcome] | Refusal:
        tables = with_values(self.tables, ranges, places)
        try:
            outcome = settled(tables, self.name)
            account, values = accounted(outcome)
            if swift is not None:
                swift.keep(places, account)
            return screened(outcome, account, values, self.like, self.experts) or (tables, outcome)
        except (Fault, NoWay, Impossible) as trouble:
            return Refusal(_said(trouble))

    def _none(self, seed: int, ticket: int) -> Fault:
        """What is said where no set may be handed out: the ranges that no value satisfies by themselves, else the
        commonest reasons.
        """
        why, reasons = Counter[Refusal](), Counter[str]()
        for attempt in tries(self.sizes)[:_EXPLAINED]:
            found = self._tried(self.ranges, drawn(seed, ticket, attempt, self.sizes))
            if isinstance(found, Refusal):
                why[found] += 1
        for refusal, times in why.items():
            reasons[refusal.why] += times
        told = "; ".join(f"{times} times because {reason}" for reason, times in reasons.most_common(4))
        alone = list(self._alone())
        if alone:
            said = "; ".join(
                f"{each}, of which no value can be used, with all else as written: {reason}" for each, reason in alone
            )
            return Fault(
                self.name,
                None,
                f'vary."{alone[0][0].name}"',
                said,
                "values that a variant can have",
                _example(alone[0][0]),
            )
        of = {name for refusal in why for name in refusal.of}
        bears = [each for each in self.ranges if each.owner in of] or list(self.ranges)
        count = len(tries(self.sizes))
        return Fault(
            self.name,
            None,
            "vary",
            f"ranges of which none of {count} sets of numbers can be used: of the first {why.total()}, {told}",
            "ranges wide enough, in steps small enough, for sets that can: each alone has values that can be used, "
            "not all together",
            _example(bears[0]),
            "What bears on it: " + "; ".join(map(str, bears)) + ".",
        )

    def _alone(self) -> Iterator[tuple[Range, str]]:
        """Each range that has no value that can be used with all else as written, and why."""
        for each in self.ranges:
            step = max(1, len(each.values) // _SOME)
            found = [self._tried((each,), (place,)) for place in range(0, len(each.values), step)]
            refused = [one.why for one in found if isinstance(one, Refusal)]
            if len(refused) == len(found):
                yield each, Counter(refused).most_common(1)[0][0]


def _said(trouble: Exception) -> str:
    if isinstance(trouble, Fault):
        return f"the problem would have {trouble.found}" + (f" ({trouble.key})" if trouble.key else "")
    return str(trouble).partition("\n")[0].rstrip(".")


def _example(each: Range) -> str:
    return f'"{each.name}" = {{ from = ..., to = ..., step = ... }}'
