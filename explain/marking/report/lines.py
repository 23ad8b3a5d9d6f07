"""The lines of a working as a page shows them: as typed, how each was read, its verdict in a sign and words. Decides
what is shown to whom.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace

from ...document.english import listed, sentence
from ...document.passage import Emphasis, JudgedLine, Line, Text
from ..slips.verdict import LineVerdict, Marking

SIGNS = {"holds": "✓", "carried": "→", "slips": "✗", "unclear": "?", "aside": "·"}
NOT_YET = ("…", "not looked at yet")
LONGEST = 2_000
Telling = Callable[[str], str]


def first_issue(marking: Marking) -> int | None:
    """The line a student looks at now: the first that is wrong."""
    return marking.first_wrong


def origin(each: LineVerdict, marking: Marking) -> int:
    """The wrong line that a carried one follows from: as told, else the last before it; 0 where there is none."""
    return each.since or max((line.number for line in marking.issues if line.number < each.number), default=0)


def student_lines(marking: Marking, tell: Telling) -> tuple[JudgedLine, ...]:
    """Up to the first line that does not hold; what follows from it is named, and the rest not looked at."""
    stop = first_issue(marking)
    return tuple(
        _line(each, tell, each.number == stop) if stop is None or each.number <= stop else _later(each, stop, marking)
        for each in _written(marking)
    )


def tutor_lines(marking: Marking) -> tuple[JudgedLine, ...]:
    """Every line with everything that is known about it."""
    return tuple(
        _line(replace(each, since=origin(each, marking)), str, each.verdict == "slips", _tutor_notes(each))
        for each in _written(marking)
    )


def _written(marking: Marking) -> Iterator[LineVerdict]:
    return (each for each in marking.lines if each.text.strip() or each.verdict not in ("aside", "holds"))


def _line(each: LineVerdict, tell: Telling, marked: bool, more: Sequence[Line] = ()) -> JudgedLine:
    notes: list[Line] = []
    if shown_reading(each):
        notes.append((Emphasis("read as "), Text(cut(each.read_as))))
    said = {"unclear": (each.says, each.note, each.question), "holds": (each.says, each.note)}.get(
        each.verdict, (each.note,)
    )
    notes += [(Text(sentence(told)),) for told in map(tell, said) if told]
    return JudgedLine(each.number, cut(each.text), SIGNS[each.verdict], word(each), (*notes, *more), marked)


def _later(each: LineVerdict, stop: int, marking: Marking) -> JudgedLine:
    if each.verdict == "carried" and origin(each, marking) == stop:
        return JudgedLine(
            each.number,
            cut(each.text),
            SIGNS["carried"],
            f"follows from line {stop}",
            ((Text(f"It will change with line {stop}."),),),
        )
    if each.verdict == "slips" and each.again and _same_slip(each, stop, marking):
        return JudgedLine(
            each.number,
            cut(each.text),
            SIGNS["carried"],
            f"like line {stop}",
            ((Text(f"The same as in line {stop} is to be changed here."),),),
        )
    if each.verdict == "aside":
        return JudgedLine(each.number, cut(each.text), SIGNS["aside"], word(each))
    return JudgedLine(each.number, cut(each.text), *NOT_YET)


def _same_slip(each: LineVerdict, stop: int, marking: Marking) -> bool:
    first = next(line for line in marking.lines if line.number == stop)
    return bool({slip.slip for slip in each.slips} & {slip.slip for slip in first.slips})


def _tutor_notes(each: LineVerdict) -> tuple[Line, ...]:
    if each.verdict != "slips" or not each.slips:
        return ()
    first, *others = each.slips
    line: list[Emphasis | Text] = [Emphasis("slip: "), Text(first.title)]
    if each.again:
        line.append(Text(", again"))
    if others:
        line.append(Text(f"; also possible: {listed([other.title for other in others])}"))
    return (tuple(line),)


def word(each: LineVerdict) -> str:
    """The verdict in words."""
    if each.verdict == "carried":
        return f"follows from line {each.since}" if each.since else "follows from a wrong line"
    return {"holds": "holds", "slips": "does not hold", "unclear": "could not be followed", "aside": "words"}[
        each.verdict
    ]


def shown_reading(each: LineVerdict) -> bool:
    """Whether how a line was read says more than the line: words, and what was read sign for sign, need no telling."""
    return each.verdict != "aside" and bool(each.read_as.strip()) and _bare(each.read_as) != _bare(each.text)


def _bare(text: str) -> str:
    return text.replace("*", "×").replace("−", "-").replace("·", "×").replace(" ", "")


def cut(text: str) -> str:
    """A text that is long beyond all use, shortened."""
    return text if len(text) <= LONGEST else f"{text[:LONGEST]}… ({len(text) - LONGEST} characters more)"


def numbered(numbers: Sequence[int]) -> str:
    """ "line 3", "lines 3 and 4", "lines 3 to 6"."""
    if len(numbers) == 1:
        return f"line {numbers[0]}"
    if len(numbers) > 2 and numbers[-1] - numbers[0] == len(numbers) - 1:
        return f"lines {numbers[0]} to {numbers[-1]}"
    return f"lines {listed([str(each) for each in numbers])}"
