"""A series proposed for a problem: down to its simplest form, up again a step at a time, then varied. Every step is
worked before it is proposed.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from ..errors import Fault, NoWay
from ..problem.toml_table import Fields, Origin
from ..problem.reader import problem_of
from ..solve.outcome import Outcome
from ..problem.model import Problem
from ..mechanics.asked import key_of
from .growth_pattern import Change, Rung, questions, rungs, variations
from .series_file import Step, start_of, step_of
from .steps import Tables, as_read, changed, of_tables
from .toml_text import written
from .swept_problem import put_at
from .worked_steps import Work

_COMMENT = (
    "A proposal, each step of it worked once. Change what you like: titles, ideas, numbers, the order.\nThe "
    "path of base is relative to this file."
)


def suggest(top: Fields, work: Work, base: str, course: Mapping[str, object] | None = None) -> str:
    """A series file for a problem, as text; `base` is the path that it names the problem by. Raises Fault where
    there is no pull to be found.
    """
    return _Proposal(top, work, course).written(base)


class _Proposal:
    """One proposal: the problem in full, and what has been worked of it so far."""

    def __init__(self, top: Fields, work: Work, course: Mapping[str, object] | None) -> None:
        self.file, self.origin, self.work, self.course = top.origin.file, top.origin, work, course
        self.problem = problem_of(top, course)
        self.tables: Tables = dict(top.values)
        self.outcome, _ = work(self.problem)
        self.goal = self._goal()
        self.main = self._main()

    def written(self, base: str) -> str:
        start, left = self._down()
        steps: list[Change] = []
        here = self._made(start_of(self._fields(start)), self.tables)
        assert here is not None
        where, number = here, 0
        for change in (*(rung.back for rung in left), *questions(self.outcome, self.goal)):
            found = self._made(step_of(self._fields(change), 1), where[0])
            if found is not None:
                steps.append(_ordered(change, {}))
                where, number = found, number + 1
        for change in variations(where[2], self.main, self.goal):
            if self._made(step_of(self._fields(change), 1), where[0]) is not None:
                at = {"from": number} if len(steps) > number else {}
                steps.append(_ordered(change, at))
        if not steps:
            raise Fault(
                file=self.file,
                found="nothing that could be left out or varied",
                expected="a problem with more than one thing in it",
                example='[[load]]\nname = "jug"\nmass = "3.0 kg"\nat = "33 cm"',
            )
        return written(
            {"title": f"{self.problem.title}, step by step", "base": base, "start": start, "step": steps}, _COMMENT
        )

    def _goal(self) -> str:
        """The answer that the series follows: the pull of a muscle before any other pull, and a pull before anything
        else.
        """
        sought = {each.letter.name for each in self.outcome.body.sought}
        found = [name for name in self.outcome.answers if key_of(self.outcome.body, name) in sought]
        kinds = {pull.name: pull.kind for pull in self.problem.pulls}
        if not found or not self.problem.balanced:
            raise Fault(
                file=self.file,
                found="nothing that a balance has to give",
                expected="a problem at rest that asks for an unknown",
                example='[[muscle]]\nname = "biceps"\nat = "4.0 cm"\ndirection = "up"',
            )
        return min(found, key=lambda name: {"muscle": 0, "force": 1}.get(kinds.get(name, ""), 2))

    def _main(self) -> str:
        """The weight that turns most: it stays to the end."""
        return max(
            (force.name for force in self.outcome.weights), key=lambda name: abs(self.outcome.moments[name]), default=""
        )

    def _down(self) -> tuple[Change, list[Rung]]:
        """The start, with everything left out that it can do without, and what has to come back."""
        start: Change = {"title": "One load, one muscle", "idea": "one balance of moments", "ask": [self.goal]}
        left: list[Rung] = []
        for rung in rungs(self.tables, (self.main, self.goal.partition(".")[0])):
            trial = _joined(start, rung.without)
            if any(set(rung.without.get("set", {})) & set(other.without.get("set", {})) for other in left):
                continue
            found = self._made(start_of(self._fields(trial)), self.tables)
            if found is not None:
                start, left = trial, [*left, rung]
        return start, left

    def _fields(self, change: Change) -> Fields:
        return Fields(change, Origin(self.file))

    def _made(self, step: Step, before: Mapping[str, Any]) -> tuple[Tables, Problem, Outcome] | None:
        """The step made and worked, None where it cannot be, or where the muscle would have to push."""
        try:
            tables = changed(before, step)
            if step.sweep is not None:
                tables = put_at(tables, step, step.sweep, step.sweep.values[len(step.sweep.values) // 2])
            earlier = of_tables(dict(before), self.origin, self.course) if step.number else None
            problem = as_read(tables, earlier, step, self.origin, self.course)
            outcome, checks = self.work(problem)
            good = all(answer.value > 0 for name, answer in outcome.answers.items() if not name.startswith("reaction"))
        except (Fault, NoWay):
            return None
        fails = any(finding.result == "fails" for _, finding in checks)
        return (tables, problem, outcome) if good and not fails else None


def _ordered(change: Change, at: Change) -> Change:
    """The keys as a person would write them: what it is called, from where, what it does."""
    first = {key: change[key] for key in ("title", "idea")}
    return {**first, **at, **{key: value for key, value in change.items() if key not in first}}


def _joined(start: Change, more: Change) -> Change:
    out = dict(start)
    for key, value in more.items():
        out[key] = {**out.get(key, {}), **value} if isinstance(value, dict) else [*out.get(key, []), *value]
    return out
