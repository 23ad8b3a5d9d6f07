"""Who is a student of the class: of several attempts of one student one counts, and what is nobody's that is known is
set aside. Counts nothing.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import NamedTuple

from ..vary.class_list import folded_name
from .entry import Entry

FIRST, LAST, BEST = "first", "last", "best"
ATTEMPTS = (FIRST, LAST, BEST)


class Handed(NamedTuple):
    """What was handed in, in order: the attempt of each student that counts, the others, and what is nobody's that is
    known.
    """

    students: tuple[Entry, ...]
    further: tuple[Entry, ...]
    strangers: tuple[Entry, ...]


def who(entry: Entry) -> object:
    """What tells one student from another: whose variant it is, else the name however it is written, else the
    place.
    """
    return entry.whose or folded_name(entry.student) or entry.place


def sorted_out(entries: Iterable[Entry], attempt: str = LAST) -> Handed:
    """Each student once, by the attempt that counts: the first, the last or the best in the order of the table."""
    found, strangers = dict[object, list[Entry]](), list[Entry]()
    for each in entries:
        if each.stranger:
            strangers.append(each)
        else:
            found.setdefault(who(each), []).append(each)
    counted = [_chosen(some, attempt) for some in found.values()]
    further = [each for some, one in zip(found.values(), counted, strict=True) for each in some if each is not one]
    return Handed(_in_order(counted), _in_order(further), tuple(strangers))


def _chosen(attempts: Sequence[Entry], attempt: str) -> Entry:
    """One of a student's attempts; what could not be read counts only where nothing could."""
    read = [each for each in attempts if not each.trouble] or attempts
    if attempt == BEST:
        return max(read, key=_worth)
    return read[0] if attempt == FIRST else read[-1]


def _worth(entry: Entry) -> tuple[float, int, int, int]:
    verdicts = [each.verdict for each in entry.said]
    score = entry.score
    return (
        score.earned / score.total if score and score.total else 0.0,
        verdicts.count("right"),
        verdicts.count("carried"),
        -len(entry.wrongs),
    )


def _in_order(entries: Iterable[Entry]) -> tuple[Entry, ...]:
    return tuple(sorted(entries, key=lambda each: each.place))
