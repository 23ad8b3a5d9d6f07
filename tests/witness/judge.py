"""Knows what may come of a valid problem: which exits, failing checks and answers are findings."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Any

from .answers import failings
from .courses import all_vertical, letters_have_signs
from .page import WAY, way_agrees
from .problems import Case
from .quantities import si
from .run_one import Outcome
from .solution import Statics

Finding = tuple[str, str]


def findings(case: Case, outcome: Outcome) -> Iterator[Finding]:
    """Each fault of an outcome: its sort and what was said."""
    if outcome.exit == 2 and case.refused is not False and "course.positive: " in outcome.message:
        return
    if (
        outcome.exit == 2
        and "course.signs: " in outcome.message
        and letters_have_signs(case.problem)
        and not all_vertical(case.solution.roots[0].pulls)
    ):
        return
    if outcome.exit == 2 and is_coarse(case) and "course.working_figures: " in outcome.message:
        return  # so few figures that a sine came out beyond one
    if outcome.exit in (2, 3, 70):
        yield f"exit {outcome.exit}: {sort_of(outcome.message)}", outcome.message
        return
    if case.refused:
        yield '"up is positive" not refused', str(case.problem["course"])
    yield from failings(case, outcome.json)
    yield from failing_checks(case, outcome)
    yield from failing_words(case, outcome)


def is_coarse(case: Case) -> bool:
    """Whether numbers go on as they are shown, in one or two figures."""
    course = case.problem["course"]
    return course.get("carry") == "as shown" and course.get("working_figures", 5) <= 2


def failing_words(case: Case, outcome: Outcome) -> Iterator[Finding]:
    """A direction in words is the direction in degrees, to the figures of the words, or to those that were carried."""
    course = case.problem["course"]
    carried = 3 * 10.0 ** (3 - course.get("working_figures", 5)) if course.get("carry") == "as shown" else 0.0
    for name, answer in outcome.json["answers"].items():
        words, direction = answer.get("words") or "", answer.get("direction")
        if direction is not None and re.fullmatch(WAY, words) and not way_agrees(words, direction, carried):
            yield "words and direction disagree", f"{name}: {words}, {direction}"


def sort_of(message: str) -> str:
    """The message without its names and numbers."""
    return re.sub(r"[0-9.]+", "#", re.sub(r"'[^']*'|\"[^\"]*\"", "…", message))[:60]


def is_impossible(case: Case) -> bool:
    """Whether a muscle would push, or a mass, moment arm or distance comes out negative: a check must fail or warn."""
    root = case.solution.roots[0]
    muscles = [root.sizes[muscle["name"]] for muscle in case.problem.get("muscle", [])]
    sought = [value for name, value in root.values.items() if name.endswith((".mass", ".weight", ".hung"))]
    if case.solution.bent.endswith(".moment_arm"):
        sought.append(root.unknown)
    noise = 1e-9 * max((abs(value) for value in root.sizes.values()), default=1.0)
    return any(value < -noise for value in [*muscles, *sought]) or is_outside(case) or does_not_hold(case)


def does_not_hold(case: Case) -> bool:
    """Whether a body stands on a rough surface that would have to pull it, or to push along itself with more than it
    can.
    """
    pivot, root = case.problem.get("pivot", {}), case.solution.roots[0]
    friction = pivot.get("friction", "?")
    if friction == "?":
        return False
    along, across = Statics(case.problem, {}).push(root.values)
    most = float(friction) * across
    return across < 0 or "slips" not in pivot and abs(along) > most


def is_outside(case: Case) -> bool:
    """Whether a centre of mass that was sought lies off its segment."""
    name, _, part = case.solution.bent.partition(".")
    if part != "com":
        return False
    length = next(si(segment["length"], "length") for segment in case.problem["segment"] if segment["name"] == name)
    return not 0 <= case.solution.roots[0].unknown <= length


def failing_checks(case: Case, outcome: Outcome) -> Iterator[Finding]:
    failed = [check for check in outcome.json["checks"] if check["result"] == "fails"]
    if bool(failed) != (outcome.exit == 1):
        yield "exit and checks disagree", f"exit {outcome.exit}, {[check['name'] for check in failed]}"
    if is_impossible(case):
        if not failed:
            yield "something impossible passes", str(case.solution.roots[0].values)
        failed = [
            check
            for check in failed
            if check["name"] in ("put_back", "second_pivot", "force_balance", "triangle", "parallel")
        ]
    elif over_limit(case):
        failed = [check for check in failed if "limit" not in check["name"] and "limit" not in check["says"]]
    if loses_its_sign(outcome.json):
        failed = [check for check in failed if check["name"] != "rounded_away"]
    for check in failed:
        yield f"a right answer fails the check {check['name']}", check["says"]


def loses_its_sign(told: dict[str, Any]) -> bool:
    """Whether an answer is printed with the other sign than its value, which is judged elsewhere: roundings did it."""
    return any(
        answer["value"] and answer["shown"].replace("−", "-").startswith("-") != (answer["value"] < 0)
        for answer in told["answers"].values()
    )


def over_limit(case: Case) -> bool:
    root = case.solution.roots[0]
    return any(
        root.sizes[muscle["name"]] > si(muscle["limit"], "force")
        for muscle in case.problem.get("muscle", [])
        if "limit" in muscle
    )
