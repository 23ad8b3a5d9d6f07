"""A worked problem as passages, in the order of a good written solution. Knows sentences and sections, and decides
no look.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from .class_page import class_page
from .diagram import picture
from ..document.english import sentence
from ..equation.terms import letters, term
from .given_order import in_order
from .discussion import discussion
from ..solve.outcome import Finding, Outcome
from ..document.passage import (
    Caution,
    Emphasis,
    Heading,
    Line,
    Maths,
    Page,
    Paragraph,
    Passage,
    Prose,
    Strong,
    Table,
    Text,
)
from .sections import sections
from .strategy import strategy
from ..wording.statement import compose as compose_statement
from .general_words import find_line, taken_for_granted

CAUTION = (
    "A teaching model: {model}. Real joints differ. Not for treatment, training load, lifting or equipment decisions; "
    "for those, local rules and licensed practice hold."
)


def compose(outcome: Outcome, findings: Sequence[tuple[str, Finding]], numbered: bool = True) -> Page:
    """The page of a working, with what its checks found; its sections are `numbered`, unless a book has numbers of
    its own.
    """
    problem = outcome.body.problem
    parts = [Heading(1, (Text(problem.title),)), *_opening(outcome)]
    number = 0
    for section in sections(outcome):
        number += 1
        parts += [_headed(section.title, number if numbered else 0), *section.passages]
    if discussed := discussion(outcome, findings):
        parts += [_headed("Discussion", number + 1 if numbered else 0), *discussed]
    model = "plane, rigid and at rest" if problem.balanced else "plane and rigid"
    parts.append(Caution((Text(CAUTION.format(model=model)),)))
    return class_page(problem, problem.title, parts)


def _opening(outcome: Outcome) -> Iterator[Passage]:
    problem = outcome.body.problem
    yield Prose(problem.statement) if problem.statement else Paragraph((Text(compose_statement(problem)),))
    yield _given(outcome)
    yield from _looked_up(outcome)
    yield Paragraph((Strong("Find "), *find_line(outcome)))
    yield picture(outcome)
    granted = taken_for_granted(outcome)
    if granted:
        yield Paragraph((Strong("Assumptions. "), Text(granted)))
    if planned := strategy(outcome):
        yield Paragraph((Strong("Strategy. "), Text(planned)))


def _given(outcome: Outcome) -> Table:
    used = {
        move.line.equation.left[0].factors[0]: move for move in outcome.working.moves if move.goal.kind == "convert"
    }
    rows = []
    lines = [move.line.equation for move in outcome.working.moves]
    written = {name for line in lines for name in letters((*line.left, *line.right))}
    for given in in_order(outcome):
        if not given.value.number and given.letter.name not in written:
            continue
        cells: list[Line] = [
            (Maths((term(given.letter),)),),
            (Text(sentence(given.meaning).rstrip(".")),),
            (Maths((term(given.value),)),),
        ]
        if used:
            move = used.get(given.letter)
            cells.append((Maths(move.line.equation.right),) if move is not None else (Maths((term(given.value),)),))
        rows.append(tuple(cells))
    header: list[Line] = [(Text("Letter"),), (Text("Meaning"),), (Text("As given"),)]
    if used:
        header.append((Text("As used"),))
    return Table("Given", tuple(header), tuple(rows), frozenset(range(2, len(header))))


def _looked_up(outcome: Outcome) -> Iterator[Passage]:
    """Where looked-up values come from, each source once."""
    ends: dict[str, list[str]] = {}
    for given in outcome.body.givens:
        if given.source:
            table, _, end = given.source.partition("; ")
            named = f"{given.letter.name.partition('.')[0]}: {end}" if end else given.letter.name.partition(".")[0]
            if named not in ends.setdefault(table, []):
                ends[table].append(named)
    for table, rows in ends.items():
        yield Paragraph((Emphasis(f"Looked up in {table} ({'; '.join(rows)})."),))


def _headed(title: str, number: int) -> Heading:
    return Heading(2, (Text(f"{number} {title}" if number else title),))
