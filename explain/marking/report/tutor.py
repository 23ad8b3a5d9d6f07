"""What only a tutor sees: slips by name, what else is possible, answers beside the true ones, marks. Knows sentences
and tables.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from ...document.english import listed, sentence
from ..marks.award import Award, Marks
from ...solve.outcome import Outcome
from ...document.passage import Bullets, Heading, Line, Paragraph, Passage, Strong, Table, Text
from .lines import numbered, origin
from ...walkthrough.answer_sentences import pretty
from ..slips.verdict import Given, LineVerdict, Marking

_SIGN = {"method": "M", "accuracy": "A", "independent": "B", "communication": "C"}


def issue(line: LineVerdict, marking: Marking) -> Iterator[Passage]:
    """One wrong line: which slip explains it, what else could, its hints and what follows from it."""
    first = line.slips[0] if line.slips else None
    yield Heading(
        2, (Text(f"Line {line.number}: {_start(first.title) if first else 'no slip is known that explains it'}"),)
    )
    said = " ".join(sentence(each) for each in dict.fromkeys((line.says, first.says if first else "")) if each)
    if said:
        yield Paragraph((Text(said),))
    items: list[Line] = []
    if len(line.slips) > 1:
        items.append((Strong("Also possible. "), Text(sentence(listed([each.title for each in line.slips[1:]])))))
    if line.question:
        items.append((Strong("To ask. "), Text(sentence(line.question))))
    if line.again:
        items.append((Strong("Again. "), Text("The slip was counted before and costs nothing here.")))
    items += [
        (Strong(f"Hint {level}. "), Text(hint)) for level, hint in enumerate(first.hints if first else (), 1) if hint
    ]
    carried = [
        each.number for each in marking.lines if each.verdict == "carried" and origin(each, marking) == line.number
    ]
    if carried:
        items.append(
            (
                Strong("Followed through. "),
                Text(f"{sentence(numbered(carried))[:-1]} {'follows' if len(carried) == 1 else 'follow'} from it."),
            )
        )
    if items:
        yield Bullets(tuple(items))


def last_word(numbers: Sequence[int]) -> Paragraph:
    """How verdicts are overruled."""
    return Paragraph(
        (
            Strong("The last word is yours. "),
            Text(
                f"If {numbered(numbers)} {'holds' if len(numbers) == 1 else 'hold'} after all: explain mark PROBLEM "
                f"WORKING --accept {numbers[0]}{'' if len(numbers) == 1 else ', and so on'}. It writes the line into "
                "the problem file as a table [[accept]]; marks and tallies follow it, in other workings too."
            ),
        )
    )


def _start(title: str) -> str:
    return sentence(title).rstrip(".")


def answers_table(marking: Marking, outcome: Outcome) -> Table:
    header: tuple[Line, ...] = ((Text("Answer"),), (Text("As given"),), (Text("True"),), (Text("Verdict"),))
    return Table("Answers given", header, tuple(_answer(each, outcome) for each in marking.answers), frozenset((1, 2)))


def _answer(given: Given, outcome: Outcome) -> tuple[Line, ...]:
    true = outcome.answers.get(given.name)
    verdict = (
        "✓ accepted"
        if given.accepted
        else "✓ right"
        if given.right
        else "→ follows from a wrong line"
        if given.carried
        else "✗ not right"
    )
    unit = "no unit" if given.unit_missing else given.unit
    return (
        (Text(given.name),),
        (Text(f"{_plain(given.value)} {unit}".strip()),),
        (Text(pretty(true) if true else ""),),
        (Text(verdict),),
    )


def _plain(value: float) -> str:
    return f"{value:.8g}".replace("-", "−")


def marks_table(marks: Marks) -> Table:
    rows = [_award(each) for each in marks.awards]
    upto = f" to {marks.earned + marks.open}" if marks.open else ""
    rows.append(((Strong("Together"),), (Text(""),), (Strong(f"{marks.earned}{upto} of {marks.total}"),), (Text(""),)))
    header: tuple[Line, ...] = ((Text("For"),), (Text("Kind"),), (Text("Marks"),), (Text("Why"),))
    return Table(
        "Marks, with follow-through: M method, A accuracy, B independent, C communication",
        header,
        tuple(rows),
        frozenset((2,)),
    )


def _award(award: Award) -> tuple[Line, ...]:
    upto = f" to {award.marks + award.open}" if award.open else ""
    sign = "✓" if award.marks == award.point.marks else "?" if award.open else "✗"
    return (
        (Text(award.point.what),),
        (Text(_SIGN[award.point.kind]),),
        (Text(f"{award.marks}{upto} of {award.point.marks} {sign}"),),
        (Text(award.why),),
    )
