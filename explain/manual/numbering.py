"""How problems are numbered and what cross references say. Knows labels and numbers, and no problem."""

from __future__ import annotations

import re
from collections.abc import Collection, Mapping, Sequence
from dataclasses import replace
from typing import NamedTuple

from ..errors import Fault, nearest
from ..document.passage import Bullets, Heading, Line, Paragraph, Passage, Reference, Table, Text
from .blocks import Block
from .chapters import Chapter, quoted, references


CONVENTIONS = "conventions"  # the anchor of the page that states them


class Number(NamedTuple):
    """What is printed, and the running number that is odd or even: the last one of what is printed."""

    printed: str
    running: int


def numbered(chapters: Sequence[Chapter], numbering: str) -> Mapping[str, Number]:
    """The number of every problem by its label. Raises Fault for a label or a number that stands twice."""
    numbers: dict[str, Number] = {}
    homes: dict[str, Block] = {}
    total = 0
    for place, chapter in enumerate(chapters, 1):
        blocks = [each for each in chapter.content if isinstance(each, Block)]
        for within, block in enumerate(blocks, 1):
            total += 1
            printed = block.number or (f"{place}.{within}" if numbering == "chapter" else str(total))
            _once(block, "label", block.label, homes)
            _once(block, "number", f"number {printed}", homes)
            numbers[block.label] = Number(printed, int((re.findall(r"\d+", printed) or ["0"])[-1]))
    return numbers


def _once(block: Block, key: str, name: str, homes: dict[str, Block]) -> None:
    first = homes.setdefault(name, block)
    if first is not block:
        what = f"the {key} {name.removeprefix('number ')}"
        raise Fault(
            str(block.chapter),
            block.line,
            key,
            f"{what} a second time (first in {first.chapter.name}, line {first.line})",
            f"a {key} of its own for every problem",
            f"```problem {key}={'2.7' if key == 'number' else name[:70] + '-2'}",
        )


def anchors(chapters: Sequence[Chapter], numbers: Mapping[str, Number]) -> Mapping[str, str]:
    """What every anchor of the book is called: "Problem 2.3", "Chapter 2". Raises Fault for two chapters or problems
    of one name.
    """
    named = {CONVENTIONS: "Conventions"} | {label: f"Problem {number.printed}" for label, number in numbers.items()}
    for place, chapter in enumerate(chapters, 1):
        if chapter.anchor in named:
            raise Fault(
                str(chapter.file),
                found=f"{quoted(chapter.anchor)} as the name of this chapter and of something else",
                expected="chapter files with names of their own, that are no labels of problems",
            )
        named[chapter.anchor] = f"Chapter {place}"
    for chapter in chapters:
        for reference in references(tuple(each for each in chapter.content if not isinstance(each, Block))):
            if reference.anchor not in named:
                near = nearest(reference.anchor, named)
                raise Fault(
                    str(chapter.file),
                    _line(chapter, reference.anchor),
                    "",
                    f"a cross reference to {quoted(reference.anchor)}, which nothing has as its label",
                    f"the label {quoted(near)}" if near else "the label of a problem, or the name of a chapter's file",
                    f"[](#{near or next(iter(named))})",
                )
    return named


def _line(chapter: Chapter, anchor: str) -> int | None:
    return next((place for place, line in enumerate(chapter.text.splitlines(), 1) if f"#{anchor}" in line), None)


def resolved(passage: Passage, named: Mapping[str, str], present: Collection[str]) -> Passage:
    """Prose with its cross references spelled out: "Problem 2.3" by itself, or in brackets behind the author's words.

    What is not `present` in this edition is named, but not led to.
    """

    def spelled(line: Line) -> Line:
        return tuple(_spelled(piece, named, present) if isinstance(piece, Reference) else piece for piece in line)

    match passage:
        case Heading(line=line) | Paragraph(line=line):
            return replace(passage, line=spelled(line))
        case Bullets(items):
            return Bullets(tuple(map(spelled, items)))
        case Table(header=header, rows=rows):
            return replace(
                passage, header=tuple(map(spelled, header)), rows=tuple(tuple(map(spelled, row)) for row in rows)
            )
    return passage


def _spelled(piece: Reference, named: Mapping[str, str], present: Collection[str]) -> Reference | Text:
    known = named[piece.anchor]
    words = (
        piece.text
        if piece.anchor == CONVENTIONS and piece.text.strip()
        else f"{piece.text} ({known})"
        if piece.text.strip()
        else known
    )
    return Reference(words, piece.anchor) if piece.anchor in present else Text(words)
