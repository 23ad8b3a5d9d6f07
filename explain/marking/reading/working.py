"""A working as its lines: numbered as in the file, with parts, headings and what the student replaced. Reads no
line.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace

from .layout import Laid, laid_out
from .limits import LINE, LINES, WORKING

_NUMBER = re.compile(r"\s*([0-9]{1,2})[.)]\s")
_BREAK = re.compile(r"\r\n|\n|\r")


@dataclass(frozen=True, slots=True)
class WorkingLine:
    """One line: `number` counts from 1 and counts blank lines too. `part` is the part it belongs to ("b"), "" before
    the first.

    `replaced`: crossed out, or replaced by the next line of working. `bulleted`: a dash or a number in front is a list
    mark, as in the lines around.
    `trouble` is why the rest of the working was not read; the text of such a line is empty.
    """

    number: int
    text: str
    part: str = ""
    heading: bool = False
    replaced: bool = False
    bulleted: bool = False
    trouble: str = ""


def read_working(text: str) -> tuple[WorkingLine, ...]:
    """The lines of a working. A working that is too long is read as far as the limit, and its last line says so."""
    texts = _BREAK.split(text[:WORKING].removeprefix("\ufeff"), maxsplit=LINES)
    trouble = f"a working of more than {WORKING:,} characters" if len(text) > WORKING else ""
    if texts and not texts[-1]:
        texts.pop()
    if len(texts) > LINES:
        trouble, texts = f"a working of more than {LINES:,} lines", texts[:LINES]
    laid = [laid_out(each[:LINE]) for each in texts]
    dashes = sum(each.dash for each in laid)
    bulleted = dashes > 1 and dashes * 2 >= sum(bool(each.text.strip()) for each in laid)
    counted = _counted(texts)
    lines = [
        replace(each, bulleted=each.bulleted or place in counted)
        for place, each in enumerate(_with_parts(texts, laid, bulleted))
    ]
    for place, each in enumerate(laid):
        if each.replaces and not each.heading:
            _replace_before(lines, place)
    if trouble:
        lines.append(WorkingLine(len(texts) + 1, "", trouble=trouble))
    return tuple(lines)


def _counted(texts: Sequence[str]) -> frozenset[int]:
    """The places of lines that the numbers in front count: 1. 2. 3."""
    found: list[int] = []
    last = 0
    for place, text in enumerate(texts):
        number = _NUMBER.match(text)
        if number and last < int(number[1]) <= last + 3:
            found.append(place)
            last = int(number[1])
    return frozenset(found if len(found) > 2 else ())


def _with_parts(texts: Sequence[str], laid: Sequence[Laid], bulleted: bool) -> list[WorkingLine]:
    part, lines = "", []
    for number, (text, each) in enumerate(zip(texts, laid, strict=True), 1):
        part = each.part or part
        lines.append(WorkingLine(number, text, part, each.heading, each.struck, bulleted and each.dash))
    return lines


def _replace_before(lines: list[WorkingLine], place: int) -> None:
    """Mark the last line of working before a place as replaced."""
    for before in range(place - 1, -1, -1):
        if lines[before].text.strip() and not lines[before].heading:
            lines[before] = replace(lines[before], replaced=True)
            return
