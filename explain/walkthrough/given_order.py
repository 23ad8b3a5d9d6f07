"""In which order the data of a problem are listed: by item, as the problem file has them. Knows no values."""

from __future__ import annotations

from collections.abc import Iterator

from ..equation import key as keys
from ..mechanics.body import Given
from ..problem.model import Problem
from ..solve.outcome import Outcome


def in_order(outcome: Outcome) -> tuple[Given, ...]:
    """The data of each item together; what belongs to none, such as g, behind."""
    place = {name: number for number, name in enumerate(_names(outcome.body.problem))}

    def rank(given: Given) -> tuple[int, bool]:
        key = keys.of(given.letter.name)
        return place.get(key.owner, len(place)), key.what != "length"

    return tuple(sorted(outcome.body.givens, key=rank))


def _names(problem: Problem) -> Iterator[str]:
    items = {
        "person": ["*person"],
        "segment": [each.name for each in problem.segments],
        "load": [each.name for each in problem.loads],
        "muscle": [each.name for each in problem.pulls if each.kind == "muscle"],
        "force": [each.name for each in problem.pulls if each.kind == "force"],
        "couple": [each.name for each in problem.couples],
    }
    for table in dict.fromkeys((*problem.tables, *items)):
        yield from items[table]
