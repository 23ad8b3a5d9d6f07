"""One line of Markdown, in which typed text is never markup. Knows what CommonMark and GitHub would take for markup."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from functools import lru_cache
from typing import NamedTuple

from ...document.passage import Emphasis, Inline, Line, Maths, Reference, Strong, Text
from ...document.untrusted_text import one_line
from ...formula.latex import latex

# GitHub looks for dollars and addresses again after the backslashes are gone; it keeps a dollar in a span out of
# formulas:
# docs.github.com, "Writing mathematical expressions"
_APART = re.compile(r"[$@]")
_MARKS = re.compile(r"[\\`*_\[\]<&|~#]")
_ADDRESS = re.compile(r":(?=//)|(?<=www)\.", re.IGNORECASE)
_TAGS = {"**": "strong", "*": "em"}


class _Piece(NamedTuple):
    """`mark` is "" for text, "$" for a formula, "*" or "**"; `body` is Markdown already."""

    mark: str
    body: str


def markdown_line(line: Line, strokes: bool = False) -> str:
    """A line as Markdown without a line end; it can stand in a paragraph, a heading, a list item or a cell of a
    table.
    """
    pieces = [piece for inline in line for piece in _pieces(inline, strokes)]
    text = ""
    for place, piece in enumerate(pieces):
        text += _set(piece, text, _first(pieces[place + 1 :]))
    return _start_escaped(text.strip())


@lru_cache(maxsize=4096)
def escaped(text: str) -> str:
    """Typed text as Markdown that reads back as the same text, except at the start of a line."""
    marked = _ADDRESS.sub(r"\\\g<0>", _MARKS.sub(r"\\\g<0>", one_line(text)))
    return _APART.sub(r"<span>\\\g<0></span>", marked)


def _start_escaped(text: str) -> str:
    """A line that a list, a quotation or a rule could begin with, made plain."""
    if re.match(r"[-+>]", text):
        return "\\" + text
    return re.sub(r"^(\d{1,9})([.)])(?=\s|$)", r"\1\\\2", text)


def _pieces(inline: Inline, strokes: bool) -> Iterator[_Piece]:
    match inline:
        case Maths(of):
            yield _Piece("$", latex(of, strokes))
        case Text(text):
            yield _Piece("", escaped(text))
        case Strong(text):
            yield from _marked("**", one_line(text))
        case Emphasis(text):
            yield from _marked("*", one_line(text))
        case Reference(text, anchor):
            yield _Piece("", f"[{escaped(text)}](#{anchor})")


def _marked(mark: str, text: str) -> Iterator[_Piece]:
    """Marked text; spaces at its ends stand outside the marks, where Markdown wants them."""
    inner = text.strip()
    before, _, behind = text.partition(inner) if inner else (text, "", "")
    yield from (_Piece("", before),) if before else ()
    yield from (_Piece(mark, escaped(inner)),) if inner else ()
    yield from (_Piece("", behind),) if behind else ()


def _first(pieces: Sequence[_Piece]) -> str:
    return next(((piece.mark or piece.body)[0] for piece in pieces if piece.mark or piece.body), " ")


def _set(piece: _Piece, before: str, after: str) -> str:
    last = before[-1:] or " "
    match piece:
        case _Piece("", body):
            return body
        case _Piece("$", body):
            # GitHub wants no letter, digit or dollar next to the dollars of a formula
            return (" " if _joins(last) else "") + f"$`{body}`$" + (" " if _joins(after) else "")
        case _Piece(mark, body):
            if _opens(last, body[0]) and _opens(after, body[-1]):
                return f"{mark}{body}{mark}"
            return f"<{_TAGS[mark]}>{body}</{_TAGS[mark]}>"


def _joins(neighbour: str) -> bool:
    return neighbour.isalnum() or neighbour == "$"


def _opens(outside: str, inside: str) -> bool:
    """Whether Markdown takes asterisks between the two for a mark: CommonMark 0.31, 6.2, narrowed to what is beyond
    doubt.
    """
    if outside in "*_":
        return False
    return inside.isalnum() or outside.isspace() or (outside.isascii() and not outside.isalnum())
