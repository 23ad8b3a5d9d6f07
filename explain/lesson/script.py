"""What to say on each page, as Markdown: headings, questions set off, every formula in spoken words."""

from __future__ import annotations

from collections.abc import Iterator

from ..document.board import Board, Lesson, Question
from ..document.passage import Emphasis, Line, Strong, Text
from ..write.markdown.line import markdown_line


def script(lesson: Lesson) -> str:
    """The notes, a heading a page."""
    blocks = [f"# {_line(lesson.title)}"]
    for number, board in enumerate(lesson.boards, 1):
        blocks += _page(number, board)
    return "\n\n".join(blocks) + "\n"


def _page(number: int, board: Board) -> Iterator[str]:
    if board.chapter:
        yield f"## {_line(board.chapter)}"
    yield f"### Page {number}: {_line(board.part)}"
    for each in board.said:
        yield _line(each)
    yield from (_asked(each) for each in board.asks)


def _asked(question: Question) -> str:
    line: Line = (Strong("Ask, and wait:"), Text(f" {question.ask}"))
    if question.answer:
        line = (*line, Text(" "), Emphasis(f"({question.answer})"))
    return f"> {markdown_line(line)}"


def _line(words: str) -> str:
    return markdown_line((Text(words),))
