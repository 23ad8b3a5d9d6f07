"""The steps of a series worked one after the other, each set beside an earlier one. Knows no rule: how a problem is
worked is handed in.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from decimal import Decimal
from typing import Any

from ..errors import Fault, NoWay
from ..problem.toml_table import Origin
from ..problem.reader import problem_of
from ..solve.outcome import Finding, Outcome
from ..problem.model import Problem
from ..solve.engine import Broken
from .comparison import Comparison, GoalKey, compare, followed, lines_of, unchanged
from .prediction import LESS, MORE, SAME
from .series_file import Series, Step
from .steps import as_read, at_step, changed
from .story import Story, story_of, told
from .swept_problem import put_at

Findings = tuple[tuple[str, Finding], ...]
Work = Callable[[Problem], tuple[Outcome, Findings]]


@dataclass(frozen=True, slots=True)
class Point:
    """One value of a sweep, in its unit (an angle in degrees): its working, or why there is none."""

    value: Decimal
    outcome: Outcome | None
    why_not: str = ""

    def __repr__(self) -> str:
        return f"<Point {self.value}: {self.why_not or 'worked'}>"


@dataclass(frozen=True, slots=True)
class Worked:
    """A step worked: its tables and problem, what came out, the answer it is followed by, and its place among the
    others.

    `story` is the author's last statement, kept from step to step.

    `homes` says of each goal in which step its lines stand in full. `points` are those of a sweep.
    """

    step: Step
    tables: Mapping[str, Any]
    problem: Problem
    outcome: Outcome
    checks: Findings
    follow: str
    comparison: Comparison | None
    homes: Mapping[GoalKey, int]
    points: tuple[Point, ...] = ()
    story: Story = Story("", {})

    def __repr__(self) -> str:
        answer = self.outcome.answers[self.follow]
        return f"<Worked step {self.step.number}, {self.problem.title!r}: {self.follow} {answer.shown}>"


def work_steps(series: Series, work: Work, course: Mapping[str, object] | None = None) -> tuple[Worked, ...]:
    """All steps, the start first. Raises Fault placed at its step, NoWay that names it."""
    problem_of(series.base, course)  # a fault of the base is reported as one of that file
    base, done = series.base.values, list[Worked]()
    for step in series.steps:
        done.append(_worked(series, step, base if not step.number else done[step.origin].tables, done, work, course))
    return tuple(done)


def _worked(
    series: Series,
    step: Step,
    before: Mapping[str, Any],
    done: Sequence[Worked],
    work: Work,
    course: Mapping[str, object] | None,
) -> Worked:
    tables = changed(before, step)
    story = story_of(tables) if step.statement or not step.number else done[step.origin].story
    points: tuple[Point, ...] = ()
    if step.sweep is not None:
        points = _swept(step, tables, work, series.base.origin, course)
        balanced = [point.value for point in points if point.outcome]
        tables = put_at(
            tables, step, step.sweep, balanced[len(balanced) // 2] if step.sweep.show is None else step.sweep.show
        )
    if step.number and not step.statement:
        tables = told(story, tables)
    problem = as_read(tables, done[step.origin].problem if step.number else None, step, series.base.origin, course)
    outcome, checks = _through(step, problem, work)
    return _placed(Worked(step, tables, problem, outcome, checks, "", None, {}, points, story), done)


def _through(step: Step, problem: Problem, work: Work) -> tuple[Outcome, Findings]:
    try:
        outcome, checks = work(problem)
        _ = outcome.answers
    except NoWay as none:
        raise NoWay(f"{'Start' if not step.number else f'Step {step.number}'}: {none.message}", none.last) from None
    except Fault as fault:
        raise (at_step(step, fault) if step.number or step.fields and step.fields.path else fault) from None
    return outcome, checks


def _placed(worked: Worked, done: Sequence[Worked]) -> Worked:
    """The step beside the one it is compared with."""
    step, outcome = worked.step, worked.outcome
    if step.follow and step.follow not in outcome.answers:
        raise step.fault(
            "follow",
            f'"{step.follow}", which is not asked here',
            "one of the answers: " + ", ".join(outcome.answers),
            f'follow = "{next(iter(outcome.answers), "")}"',
        )
    if not step.number:
        return replace(worked, follow=followed(outcome, step.follow), homes={key: 0 for key in lines_of(outcome)})
    old = done[step.compare]
    follow = followed(outcome, step.follow, old.follow)
    one = follow if follow in old.outcome.answers else old.follow
    asked_only = replace(worked.problem, title="", statement="", ask=()) == replace(
        old.problem, title="", statement="", ask=()
    )
    comparison = None if step.sweep else compare(old.outcome, one, outcome, follow, _touched(step), asked_only)
    _never_wrong(step, comparison)
    same = unchanged(old.outcome, outcome)
    homes = {key: old.homes.get(key, step.compare) if key in same else step.number for key in lines_of(outcome)}
    return replace(worked, follow=follow, comparison=comparison, homes=homes)


def _touched(step: Step) -> frozenset[str]:
    """The names that a step speaks of."""
    added = (" ".join(str(table.get("name", "")).split()) for tables in step.add.values() for table in tables)
    removed = (owner or key for owner, key in step.remove)
    return frozenset((*(owner for owner, _ in step.set), *added, *removed))


def _never_wrong(step: Step, comparison: Comparison | None) -> None:
    """A prediction that the numbers contradict is a fault of the program, and never printed."""
    if (
        comparison
        and comparison.way in (MORE, LESS)
        and comparison.prediction.way in (MORE, LESS, SAME)
        and comparison.prediction.way != comparison.way
    ):
        raise Broken(f"step {step.number}: predicted {comparison.prediction.way}, found {comparison.way}")


def _swept(
    step: Step, tables: Mapping[str, Any], work: Work, origin: Origin, course: Mapping[str, object] | None
) -> tuple[Point, ...]:
    """Every value of a sweep worked. Raises Fault where none of them balances."""
    assert step.sweep is not None
    points, unread = [], list[Fault]()
    for value in step.sweep.values:
        tables_there = put_at(tables, step, step.sweep, value)
        try:
            problem = as_read(tables_there, None, step, origin, course)
        except Fault as fault:
            unread.append(fault)
            points.append(Point(value, None, fault.found))
            continue
        points.append(_point(value, problem, work))
    if len(unread) == len(points):
        raise unread[0]
    if all(point.outcome is None for point in points):
        raise step.fault(
            "sweep",
            f"no {step.sweep.word} from {points[0].value:f} to {points[-1].value:f} {step.sweep.unit} that balances: "
            f"{points[0].why_not}",
            "a range with at least one value that can be worked",
            'from = "0 deg"\nto = "90 deg"',
        )
    return tuple(points)


def _point(value: Decimal, problem: Problem, work: Work) -> Point:
    try:
        outcome, _ = work(problem)
        _ = outcome.answers
    except (Fault, NoWay) as none:
        return Point(value, None, none.found if isinstance(none, Fault) else none.message)
    return Point(value, outcome)
