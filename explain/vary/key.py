"""The teacher's key: every student's numbers and answers, as a table for a program and as a page for a person. Knows
no mechanics.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import NamedTuple

from ..solve.answers import Answer
from ..document.english import listed as listed_names
from ..walkthrough.class_page import class_page
from ..walkthrough.page import CAUTION
from ..equation.terms import term
from ..solve.outcome import Outcome
from ..document.passage import Caution, Line, Maths, Page, Paragraph, Table, Text
from ..table import csv_file
from .lookalike_answers import ALIKE, RIGHT, answer_name
from .ranges import Range, printed
from .class_list import Student
from .screen import Measure

MOST_ON_A_PAGE = 1_000  # students; more are in the table for programs alone


class Entry(NamedTuple):
    """One student's part of the key: numbers as given, answers unrounded for a program, answers as shown for a
    person.
    """

    numbers: tuple[str, ...]
    values: tuple[str, ...]
    shown: tuple[str, ...]


def entry_of(ranges: Sequence[Range], places: Sequence[int], outcome: Outcome) -> Entry:
    numbers = tuple(_number(each.values[place]) for each, place in zip(ranges, places, strict=True))
    answers = tuple(outcome.answers.values())
    return Entry(
        numbers, tuple(value for each in answers for value in _values(each)), tuple(_shown(each) for each in answers)
    )


def _number(value: object) -> str:
    return value if isinstance(value, str) else printed(value)


def _values(answer: Answer) -> tuple[str, ...]:
    """The value to all its figures; of a joint force its direction too, in degrees counter-clockwise from right."""
    if answer.name != "reaction":
        return (repr(answer.value),)
    return repr(answer.value), "" if answer.direction is None else repr(answer.direction)


def _shown(answer: Answer) -> str:
    return f"{answer.shown}, {answer.words}" if answer.name == "reaction" and answer.words else answer.shown


def columns(ranges: Sequence[Range], outcome: Outcome, ids: bool = False) -> tuple[str, ...]:
    """The heads of the table for programs, with one for the `ids` where students have any."""
    heads: list[str] = []
    for each in outcome.answers.values():
        heads.append(f"{each.name} in {each.unit}" if each.unit else each.name)
        if each.name == "reaction":
            heads.append("reaction direction in deg")
    return ("student", *(("id",) if ids else ()), "file", *(each.name for each in ranges), *heads)


def key_csv(heads: Sequence[str], students: Sequence[Student], entries: Iterable[Entry]) -> bytes:
    """The key as a CSV file; `file` is the path of the student's own problem file, from where the key is."""
    rows = (
        [
            student.name,
            *((student.id,) if "id" in heads else ()),
            f"variants/{student.file}.toml",
            *entry.numbers,
            *entry.values,
        ]
        for student, entry in zip(students, entries, strict=True)
    )
    return csv_file((heads, *rows))


def key_page(
    title: str,
    ranges: Sequence[Range],
    outcome: Outcome,
    students: Sequence[Student],
    entries: Sequence[Entry],
    like: Measure,
    seed: int,
) -> Page:
    """The key as a page: what was drawn and screened, and a row for each student."""
    names = [_cell(student.name) for student in students]
    answers = tuple((name, *map(_cell, entry.shown)) for name, entry in zip(names, entries, strict=True))
    numbers = tuple(
        (name, *(_cell(printed(each)) for each in entry.numbers)) for name, entry in zip(names, entries, strict=True)
    )
    model = "plane, rigid and at rest" if outcome.body.problem.balanced else "plane and rigid"
    return class_page(
        outcome.body.problem,
        f"{title}: key",
        (
            Paragraph((Text("For the teacher. " + _drawn(ranges, entries, seed)),)),
            Paragraph((Text(_screened(like)),)),
            Table("Answers", (_cell("Student"), *map(_cell, outcome.answers)), answers),
            Table(
                "Numbers",
                (_cell("Student"), *(_head(each, outcome) for each in ranges)),
                numbers,
                frozenset(range(1, len(ranges) + 1)),
            ),
            Caution((Text(CAUTION.format(model=model)),)),
        ),
    )


def _head(each: Range, outcome: Outcome) -> Line:
    """The letter that the sheets have for it, which is short, or its name where it has none."""
    given = next((found for found in outcome.body.givens if found.letter.name == each.name), None)
    return (Maths((term(given.letter),)),) if given else _cell(each.name)


def _cell(text: str) -> Line:
    return (Text(text),)


def _drawn(ranges: Sequence[Range], entries: Sequence[Entry], seed: int) -> str:
    sets = len({entry.numbers for entry in entries})
    same = (
        "no two alike"
        if sets == len(entries)
        else f"{sets} of them different: more values in the ranges make more of them"
    )
    return (
        f"{len(entries)} sets of numbers, {same}, drawn by seed {seed} and each student's name or number from "
        f"{'; '.join(map(str, ranges))}."
    )


def _screened(like: Measure) -> str:
    said = (
        "Every set is as hard as the problem as written: the same balances, terms, senses and functions. Muscles "
        "pull, and no check warns of anything "
        "that it does not warn of there. No slip of the catalogue that changes an answer leaves it within "
        f"{RIGHT:.0%} of the right one, each answer looked at by itself, and of the very common slips no two give "
        f"answers within {ALIKE:.0%} of each other"
    )
    right: dict[str, list[str]] = {}
    for slip, key in sorted(like.imitates.right):
        right.setdefault(slip, []).append(answer_name(key))
    kept = [f"{slip.replace('-', ' ')} (for {listed_names(names)})" for slip, names in right.items()]
    kept += [" and ".join(pair).replace("-", " ") for pair in sorted(like.imitates.alike)]
    listed = ", ".join(kept)
    return (
        f"{said}, but for those that do so in the problem as written: {listed}. Only lines tell these."
        if kept
        else f"{said}."
    )
