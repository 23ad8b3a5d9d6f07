"""What may be asked of a problem, and whether what is asked can be. Knows the names of answers, not how to find any."""

from __future__ import annotations

from collections.abc import Iterator

from ..errors import shown
from .model import Hung, Problem, Pull, Unknown
from .source_tables import Sheet, directed, unknown_name

_REACTION = ("reaction", "reaction.right", "reaction.up", "reaction.direction")
_ALONG = ("reaction.along", "reaction.across")


def answers(problem: Problem) -> tuple[str, ...]:
    """The names of all answers that the problem's file could ask for, whatever the conditions can settle."""
    return tuple(_answers(problem))


def _answers(problem: Problem) -> Iterator[str]:
    for pull in problem.pulls:
        yield from _of_pull(pull)
    for load in problem.loads:
        yield from (f"{load.name}.{part}" for part in ("mass", "weight", "moment"))
        if load.place.at is not None or load.spread is not None:
            yield f"{load.name}.at"
    for segment in problem.segments:
        if segment.mass or segment.weight:
            yield from (f"{segment.name}.{part}" for part in ("mass", "weight", "moment", "com"))
        yield f"{segment.name}.direction"
    for couple in problem.couples:
        yield from (couple.name, f"{couple.name}.moment")
    yield "total.moment"
    if problem.pivot.reaction:
        yield from (*_REACTION, *_ALONG)
        if isinstance(problem.pivot.friction, Unknown):
            yield "reaction.friction"


def _of_pull(pull: Pull) -> Iterator[str]:
    yield from (pull.name, f"{pull.name}.moment", f"{pull.name}.moment_arm")
    if pull.place.at is not None:
        yield f"{pull.name}.at"
    if directed(pull):
        yield f"{pull.name}.direction"
    if pull.area is not None:
        yield f"{pull.name}.stress"
    if isinstance(pull.force, Hung):
        yield f"{pull.name}.hung"


def sought(problem: Problem) -> tuple[str, ...]:
    """The names of the answers for every "?" in the order of the tables; a muscle whose force is not told has one."""
    found: list[tuple[str, object]] = []
    for segment in problem.segments:
        found += [
            (f"{segment.name}.direction", segment.direction.turn),
            (f"{segment.name}.mass", segment.mass),
            (f"{segment.name}.weight", segment.weight),
            (f"{segment.name}.com", segment.com),
        ]
    for load in problem.loads:
        found += [
            (f"{load.name}.mass", load.mass),
            (f"{load.name}.weight", load.weight),
            (f"{load.name}.at", load.place.at),
        ]
    for pull in problem.pulls:
        found += [
            (f"{pull.name}.at", pull.place.at),
            (f"{pull.name}.direction", pull.direction and pull.direction.turn),
            (f"{pull.name}.moment_arm", pull.moment_arm),
        ]
        if isinstance(pull.force, Hung):
            found.append((f"{pull.name}.hung", pull.force.mass))
        at_limit = isinstance(pull.limit, Unknown)
        found.append((pull.name, pull.limit if at_limit else pull.force))
    found += [(couple.name, couple.moment) for couple in problem.couples]
    found.append(("reaction.friction", problem.pivot.friction))
    return tuple(name for name, value in found if isinstance(value, Unknown))


def check(sheet: Sheet) -> None:
    """Raise Fault where nothing is asked, or something that is no answer of this problem."""
    problem, top = sheet.problem, sheet.top
    if not problem.ask and not sought(problem):
        raise top.missing("ask", 'a question: "?" where a number would stand, or ask', 'ask = ["reaction"]')
    known = answers(problem)
    for place, name in enumerate(problem.ask):
        if name in problem.ask[:place]:
            raise top.fault("ask", f"{shown(name)} twice", "each answer asked for once", f'ask = ["{name}"]')
        if not problem.pivot.reaction and name.partition(".")[0] == "reaction":
            raise top.fault(
                "ask",
                f"{shown(name)}, but [pivot] says reaction = false",
                "an answer that the problem has",
                f'ask = ["{known[0]}"]',
                "Leave out reaction = false where something pushes at the pivot.",
            )
        _direction_told(sheet, name)
        if name not in known:
            fault = unknown_name(top, "ask", name, list(known), "the name of an answer")
            raise fault.placed(fault.file, fault.line, fault.key, fault.example.replace("ask = ", "ask = [") + "]")
        if name in _ALONG and not problem.course.axes:
            raise top.fault(
                "ask",
                f"{shown(name)}, but no axes along a segment",
                "axes along and across a segment",
                '[course] with axes = "along and across the forearm"',
            )
    if problem.pivot.friction is not None:
        _all_directed(sheet, "friction at the pivot")
    if problem.balanced and not problem.pivot.reaction:
        _all_directed(sheet, "the balance without a reaction")


def _direction_told(sheet: Sheet, name: str) -> None:
    """Refuse to look for the direction of a force, or for the reaction, where a direction is not told."""
    if name.partition(".")[0] == "reaction":
        _all_directed(sheet, shown(name))
    for pull in sheet.problem.pulls:
        if name == f"{pull.name}.direction" and not directed(pull):
            why = f'the direction with "?" for its angle, since {shown(name)} is asked'
            raise sheet.tables[pull.name].missing("direction", why, 'direction = "? above left"')


def _all_directed(sheet: Sheet, what: str) -> None:
    """Forces can only be added where each has a direction: name the first that has none."""
    for pull in sheet.problem.pulls:
        if not directed(pull):
            why = f"the direction of {shown(pull.name)} beside its moment arm, since {what} needs the sum of all forces"
            raise sheet.tables[pull.name].missing("direction", why, 'direction = "70 deg from back toward up"')
