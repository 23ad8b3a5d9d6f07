"""What an author's Markdown says, as passages: images and raw HTML are refused, links become their text and address."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from itertools import groupby

from markdown_it import MarkdownIt
from markdown_it.tree import SyntaxTreeNode

from .passage import Bullets, Emphasis, Line, Paragraph, Passage, Reference, Strong, Table, Text
from .untrusted_text import clean as clean
from .untrusted_text import one_line

_Said = Text | Strong | Emphasis | Reference
_QUESTION = re.compile(r"\((?:[a-z]|i{2,3}|iv|vi{1,3})\)\s")
_Style = type[Text] | type[Strong] | type[Emphasis]


def prose(markdown: str) -> tuple[Passage, ...]:
    """An author's Markdown (CommonMark and tables) as passages of plain text, strong and emphasised text.

    A heading becomes a strong paragraph, a nested list part of its list, a numbered item a paragraph with its number,
    code its text. Raw HTML stays text; an image leaves its description and its address as text.
    """
    tree = SyntaxTreeNode(reader().parse(clean(markdown)))
    return tuple(passage for node in tree.children for passage in block(node))


def reader() -> MarkdownIt:
    """What reads people's Markdown: CommonMark and tables, raw HTML as text, no images."""
    return MarkdownIt("commonmark", {"html": False}).enable("table").disable("image")


def spoken(node: SyntaxTreeNode) -> Line:
    """The words of a heading or a paragraph. A node of the type "reference" (made by who reads a book) is a
    Reference to its `href`.
    """
    return _joined(_inline(node.children, Text))


def block(node: SyntaxTreeNode) -> Iterator[Passage]:
    match node.type:
        case "bullet_list":
            yield Bullets(tuple(_lines(node)))
        case "blockquote":
            for child in node.children:
                yield from block(child)
        case "table":
            yield _table(node)
        case "paragraph":
            for part in _asked([child for inline in node.children for child in inline.children]):
                yield from map(Paragraph, _filled(_inline(part, Text)))
        case _:
            for line in _lines(node):
                yield Paragraph(line)


def _asked(nodes: Sequence[SyntaxTreeNode]) -> list[list[SyntaxTreeNode]]:
    """What stands in a paragraph, in parts: a line of it that begins with "(a)" begins a part of its own."""
    parts: list[list[SyntaxTreeNode]] = [[]]
    for place, node in enumerate(nodes):
        behind = "".join(map(_words, nodes[place + 1 : place + 4]))  # an empty text stands before what is marked
        if node.type in ("softbreak", "hardbreak") and _QUESTION.match(behind):
            parts.append([])
        else:
            parts[-1].append(node)
    return parts


def _words(node: SyntaxTreeNode) -> str:
    return "".join(map(_words, node.children)) if node.children else node.content


def _lines(node: SyntaxTreeNode) -> Iterator[Line]:
    """The lines of a block, of the blocks in it, and of the items of a list."""
    match node.type:
        case "paragraph":
            yield from _filled(_inline(node.children, Text))
        case "heading":
            yield from _filled(_inline(node.children, Strong))
        case "fence" | "code_block":
            for line in node.content.splitlines():
                yield from _filled([Text(one_line(line))])
        case "ordered_list":
            first = int(node.attrs.get("start", 1))
            for place, item in enumerate(node.children):
                yield from _numbered(f"{first + place}. ", _lines(item))
        case "table":
            yield from (cell for row in _cells(node) for cell in row)
        case _:
            for child in node.children:
                yield from _lines(child)


def _numbered(mark: str, lines: Iterator[Line]) -> Iterator[Line]:
    for place, line in enumerate(lines):
        yield line if place else (Text(mark), *line)


def _filled(pieces: Sequence[_Said]) -> Iterator[Line]:
    line = _joined(pieces)
    if line:
        yield line


def _table(node: SyntaxTreeNode) -> Table:
    header, *rows = _cells(node)
    cells = node.children[0].children[0].children
    right = frozenset(place for place, cell in enumerate(cells) if "right" in str(cell.attrs.get("style", "")))
    return Table("", header, tuple(rows), right)


def _cells(node: SyntaxTreeNode) -> list[tuple[Line, ...]]:
    return [
        tuple(_joined(_inline(cell.children, Text)) for cell in row.children)
        for part in node.children
        for row in part.children
    ]


def _inline(nodes: Sequence[SyntaxTreeNode], style: _Style) -> list[_Said]:
    return [piece for node in nodes for piece in _pieces(node, style)]


def _pieces(node: SyntaxTreeNode, style: _Style) -> list[_Said]:
    match node.type:
        case "text" | "code_inline":
            return [style(one_line(node.content))]
        case "softbreak" | "hardbreak":
            return [style(" ")]
        case "strong":
            return _inline(node.children, Strong)
        case "em":
            return _inline(node.children, style if style is Strong else Emphasis)
        case "link":
            return _link(node, style)
        case "reference":
            return [Reference(one_line(node.content), str(node.attrs["href"]))]
    return _inline(node.children, style)


def _link(node: SyntaxTreeNode, style: _Style) -> list[_Said]:
    label, address = _inline(node.children, style), one_line(str(node.attrs.get("href", "")))
    said = "".join(piece.text for piece in label).strip()
    if not said:
        return [style(address)]
    if said == address or node.markup == "autolink":
        return label
    return [*label, style(f" ({address})")]


def _joined(pieces: Sequence[_Said]) -> Line:
    """Neighbours of one style joined, what is empty left out."""
    line: list[_Said] = []
    for style, group in groupby(pieces, key=type):
        alike = list(group)
        line += alike if style is Reference else [style("".join(piece.text for piece in alike))]
    return tuple(piece for piece in line if piece.text or isinstance(piece, Reference))
