"""A walkthrough whose later lines are left for the reader to write, their reasons kept: a faded worked example.

Knows which passages tell what a line would; nothing of how a line is made.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from decimal import Decimal

from ..document.passage import (
    Answer,
    Blanks,
    Caution,
    Derivation,
    Heading,
    Inline,
    Line,
    Maths,
    Page,
    Paragraph,
    Passage,
    Prose,
    Row,
    Space,
    Strong,
    Text,
)
from ..equation.terms import DEGREE, Equation, Quantity, Shown, leaves, lone, Letter
from ..errors import Fault, shown
from ..solve.outcome import Outcome
from ..walkthrough.answer_sentences import minus_line
from ..walkthrough.class_page import class_page
from ..walkthrough.diagram import picture
from ..walkthrough.exercise_sheet import DIAGRAM, checklist, given
from ..walkthrough.general_words import find_line, taken_for_granted
from ..walkthrough.page import CAUTION
from ..walkthrough.sections import sections
from ..walkthrough.strategy import strategy
from ..wording.statement import compose

_SAID = re.compile(r"(last|all-but):([0-9]{1,3})")
_FIGURES = re.compile(r"\d[\d\u202f ]*(?:[.,]\d+)?")
_UNTOLD = "…"
_PLACES = (".at", ".com", ".moment_arm", ".length")


@dataclass(frozen=True, slots=True)
class Fading:
    """Which lines are left empty: the `last` so many, or all but the first."""

    which: str
    count: int

    def shown(self, lines: int) -> int:
        """How many lines of so many are shown. Raises Fault where none would be left empty, or more than there are."""
        found = lines - self.count if self.which == "last" else self.count
        if not 0 <= found < lines:
            most = lines if self.which == "last" else lines - 1
            raise Fault(
                found=f"{self.which}:{self.count} of {lines} lines",
                expected=f"a number from {1 if self.which == 'last' else 0} to {most}",
                example=f"--blank {self.which}:{min(2, most)}",
            )
        return found


def fading(text: str) -> Fading:
    """What "last:2" or "all-but:3" says. Raises Fault."""
    found = _SAID.fullmatch(text.strip())
    if found is None or found[1] == "last" and not int(found[2]):
        raise Fault(
            found=f"--blank {shown(text)}",
            expected="last: or all-but: and a number of lines",
            example="--blank last:2",
        )
    return Fading(found[1], int(found[2]))


def faded(outcome: Outcome, of: Fading) -> Page:
    """The page, without checks and without a closing sentence, which would tell the answers. Raises Fault."""
    problem = outcome.body.problem
    parts = list(sections(outcome))
    lines = sum(len(each.rows) for part in parts for each in part.passages if isinstance(each, Derivation))
    model = "plane, rigid and at rest" if problem.balanced else "plane and rigid"
    body = _Faded(outcome, of.shown(lines))
    passages: list[Passage] = list(_opening(outcome))
    for number, part in enumerate(parts, 1):
        passages += [Heading(2, (Text(f"{number} {part.title}"),)), *body.passages(part.passages)]
    passages.append(Caution((Text(CAUTION.format(model=model)),)))
    return class_page(problem, f"{problem.title}: lines to write", passages)


def _opening(outcome: Outcome) -> Iterator[Passage]:
    problem = outcome.body.problem
    yield Prose(problem.statement) if problem.statement else Paragraph((Text(compose(problem)),))
    yield given(outcome)
    yield Paragraph((Strong("Find "), *find_line(outcome)))
    sought = (each.letter.name for each in outcome.body.sought)
    if any(name.startswith("*angle ") or name.endswith(_PLACES) for name in sought):
        yield Space("Your free-body diagram", DIAGRAM, tuple((Text(each),) for each in checklist(outcome)))
    else:  # a figure is drawn to scale, so one with a sought place or angle would tell it
        yield picture(outcome)
    if granted := taken_for_granted(outcome):
        yield Paragraph((Strong("Assumptions. "), Text(granted)))
    if planned := strategy(outcome):
        yield Paragraph((Strong("Strategy. "), Text(planned)))
    yield Paragraph((Text("Where a line is left empty, write it: the reason stands above it."),))


class _Faded:
    """The lines counted from the first section on, and what may still be told."""

    def __init__(self, outcome: Outcome, shown: int) -> None:
        self.left, self.outcome = shown, outcome
        self.given = {each.value for each in outcome.body.givens} | {outcome.body.problem.course.g}
        self.figures = {f"{each.number:f}" for each in self.given} | {"0", "1", "2", "90", "180"}
        asked = (name for name in outcome.answers if name.startswith("reaction."))
        self.signs = {minus_line(outcome, name) for name in asked} - {""}

    def passages(self, whole: Iterable[Passage]) -> Iterator[Passage]:
        empty = False
        for passage in whole:
            match passage:
                case Derivation(rows):
                    kept, gone = rows[: self.left], rows[self.left :]
                    self.left -= len(kept)
                    empty = bool(gone)
                    if kept:
                        yield Derivation(kept)
                    if gone:
                        yield Blanks(tuple(map(self._reason, gone)))
                case Answer() if empty or not self.left:
                    continue
                case Paragraph(line) if not self.left:
                    said = self._told(line)
                    if not any(isinstance(each, Text) and each.text in self.signs for each in line):
                        yield Paragraph(said)
                case _:
                    yield passage

    def _reason(self, row: Row) -> Line:
        """What stands beside a line, without a number that was worked out; of a line without a word what it finds."""
        if row.note:
            return self._told(row.note)
        sought = lone(row.left)
        return (Text("find "), Maths(row.left)) if isinstance(sought, Letter) else (Text("the balance in letters"),)

    def _told(self, line: Line) -> Line:
        return tuple(map(self._piece, line))

    def _piece(self, piece: Inline) -> Inline:
        match piece:
            case Maths(of):
                sums = (*of.left, *of.right) if isinstance(of, Equation) else of
                numbers = [each.value if isinstance(each, Shown) else each for each in leaves(sums)]
                told = all(self._may(each) for each in numbers if isinstance(each, Quantity))
                return piece if told else Text(_UNTOLD)
            case Text(text):
                return Text(_FIGURES.sub(lambda found: found[0] if found[0] in self.figures else _UNTOLD, text))
        return piece

    def _may(self, number: Quantity) -> bool:
        known = number in self.given or number.unit == DEGREE and number.number in (Decimal(90), Decimal(180))
        return known or not number.unit and number.number in (0, 1, 2)
