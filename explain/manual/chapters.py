"""Chapter files: Markdown with prose and problem blocks. Knows where a block begins and ends, not what a problem says.

A problem block is a fenced code block whose info string begins with `problem`; a cross reference is a Markdown link to
`#` and a label.
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import NamedTuple

from markdown_it.token import Token
from markdown_it.tree import SyntaxTreeNode

from ..input import Door
from ..errors import Fault, shown
from ..document.passage import Heading, Paragraph, Passage, Reference, Text
from ..document.untrusted_text import clean, one_line
from ..document.author_markdown import block, reader, spoken
from .blocks import Block, problem_block

_WORD = "problem"
_LINKED = ("#", "%23")


class Chapter(NamedTuple):
    """`anchor` is the file's name without its suffix; `content` is prose and problem blocks in order, the title
    taken off; `text` is as written.
    """

    file: Path
    anchor: str
    title: str
    content: tuple[Passage | Block, ...]
    text: str


def read_chapter(path: Path, data: bytes, door: Door) -> Chapter:
    """The chapter that a file holds; `door` is its way to the problems that it names. Raises Fault where no chapter
    is to be read.
    """
    source = _text(path, data)
    tokens = reader().parse(source)
    for token in tokens:
        if token.children:
            token.children = list(_referred(token.children))
    content = [piece for node in SyntaxTreeNode(tokens).children for piece in _pieces(node, path, door)]
    title = next((piece for piece in content if isinstance(piece, Heading) and piece.level == 1), None)
    if title is None:
        raise Fault(
            str(path), 1, "", "no title", "a heading of the first level: the title of the chapter", "# The elbow"
        )
    content.remove(title)
    words = "".join(getattr(piece, "text", "") for piece in title.line)
    lowered = (Heading(max(piece.level, 2), piece.line) if isinstance(piece, Heading) else piece for piece in content)
    return Chapter(path, path.stem, words, tuple(lowered), source)


def missing_chapter(path: Path) -> Chapter:
    """What stands in the place of a chapter that cannot be read, so that the others keep their numbers."""
    words = f"This chapter is missing: {path.name} could not be read."
    return Chapter(path, path.stem, path.stem, (Paragraph((Text(words),)),), words)


def _text(path: Path, data: bytes) -> str:
    try:
        return clean(data.decode("utf-8-sig"))
    except UnicodeDecodeError as error:
        line = data.count(b"\n", 0, error.start) + 1
        raise Fault(str(path), line, "", "a byte that is not UTF-8", "text in UTF-8") from None


def _pieces(node: SyntaxTreeNode, path: Path, door: Door) -> Iterator[Passage | Block]:
    if _is_problem(node):
        yield problem_block(node, path, door)
        return
    inner = next((each for each in node.walk() if _is_problem(each)), None)
    if inner is not None:
        raise Fault(
            str(path),
            inner.map[0] + 1 if inner.map else None,
            "",
            "a problem block inside a list or a quotation",
            "problem blocks at the margin",
            "```problem label=treacle-tin",
        )
    if node.type == "heading":
        yield Heading(int(node.tag[1:]), spoken(node))
        return
    yield from block(node)


def _is_problem(node: SyntaxTreeNode) -> bool:
    return node.type == "fence" and node.info.split()[:1] == [_WORD]


def _referred(tokens: list[Token]) -> Iterator[Token]:
    """Links to a label of the book as one token each, with their words as plain text."""
    reference: Token | None = None
    for token in tokens:
        href = str(token.attrs.get("href", "")) if token.type == "link_open" else ""
        if href.startswith(_LINKED):
            reference = Token("reference", "", 0, attrs={"href": href.removeprefix("#").removeprefix("%23")})
        elif reference is not None and token.type == "link_close":
            yield reference
            reference = None
        elif reference is not None:
            reference.content += one_line(token.content) if token.type not in ("softbreak", "hardbreak") else " "
        else:
            yield token


def references(passages: tuple[Passage, ...]) -> Iterator[Reference]:
    """Every cross reference in some prose."""
    for passage in passages:
        for line in lines_of(passage):
            yield from (piece for piece in line if isinstance(piece, Reference))


def lines_of(passage: Passage) -> Iterator[tuple[object, ...]]:
    """The lines of a passage of prose: of a heading, a paragraph, a list or a table."""
    for value in (getattr(passage, "line", None), *getattr(passage, "items", ()), *getattr(passage, "header", ())):
        if value is not None:
            yield value
    for row in getattr(passage, "rows", ()):
        yield from row


def quoted(anchor: str) -> str:
    """A label as a message shows it."""
    return shown(f"#{anchor}")
