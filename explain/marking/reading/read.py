"""A line of a student's working, from what was typed to its pieces: bounded, shown back, never run. Judges nothing
and knows no mechanics.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from . import latex
from .chains import Line, piece
from .layout import laid_out
from .limits import LINE, TOKENS
from .normal import Plain, normal
from .numbers import Comma, comma_in
from .piece import Piece, Reading, Unread, Words
from .sides import Reader
from .split import pieces
from .tokens import tokens_of
from .vocabulary import Vocabulary
from .working import WorkingLine, read_working

_NOT_READ = "Can it be split into several lines?"


@dataclass(frozen=True, slots=True)
class Habits:
    """How a class or a student writes: `comma` in numbers ("": by evidence), `pound` as a force ("lbf") or a mass
    ("lb").
    """

    comma: Comma = ""
    pound: str = "lbf"


def read_line(
    text: str,
    vocabulary: Vocabulary,
    *,
    number: int = 1,
    habits: Habits = Habits(),
    bulleted: bool = False,
    replaced: bool = False,
) -> Reading:
    """One line, in time and space bounded by the limits, whatever it is. Never raises for a text."""
    typed = text[:LINE]
    laid = laid_out(typed, bulleted)
    if laid.heading:
        return Reading(number, typed, (_words(typed),), (), laid.part, replaced or laid.struck)
    plain = _plain(laid.text)
    tokens = tokens_of(plain, habits.comma or comma_in(plain.text))
    line = Line(typed, plain.text, plain.places)
    reader = Reader(vocabulary, habits.pound)
    rows = pieces(tokens.all, vocabulary)
    read = [piece(row, line, reader, laid.dash and place == 0) for place, row in enumerate(rows)]
    if len(text) > LINE or tokens.cut:
        read[-1:] = [_cut(typed, line.span(rows[-1])[0] if rows else 0, len(text) > LINE)]
    if not read and typed.strip():
        read = [_words(typed)]
    changed = (*plain.changed, *tokens.changed)
    return Reading(number, typed, tuple(read), changed, laid.part, replaced or laid.struck, laid.replaces)


def read_lines(text: str, vocabulary: Vocabulary, habits: Habits = Habits()) -> tuple[Reading, ...]:
    """A whole working, line by line; what commas mean is told by all its numbers together."""
    lines = read_working(text)
    known = Habits(habits.comma or comma_in("\n".join(each.text[:LINE] for each in lines)), habits.pound)
    return tuple(_read(each, vocabulary, known) for each in lines)


def _read(line: WorkingLine, vocabulary: Vocabulary, habits: Habits) -> Reading:
    if line.trouble:
        return Reading(line.number, "", (Unread("", 0, line.trouble, "Can it be handed in in parts?", 0, 0),))
    return read_line(
        line.text, vocabulary, number=line.number, habits=habits, bulleted=line.bulleted, replaced=line.replaced
    )


def _words(typed: str) -> Words:
    return Words(typed.strip(), len(typed) - len(typed.lstrip()), len(typed.rstrip()))


def _plain(text: str) -> Plain:
    """The line in plain signs, with the place of each in the line as typed."""
    if not latex.is_latex(text):
        return normal(text, range(len(text) + 1))
    told, places, refused = latex.plain(text)
    plain = normal(told, places)
    return plain._replace(refused=_merged(plain, refused), changed=("LaTeX read as text", *plain.changed))


def _merged(plain: Plain, refused: Mapping[int, str]) -> Mapping[int, str]:
    """What was refused as LaTeX stands at the end of the plain text."""
    return {**plain.refused, **({len(plain.text) - 1: why for why in refused.values()} if refused else {})}


def _cut(typed: str, start: int, long: bool) -> Piece:
    why = (
        f"a line of more than {LINE:,} characters" if long else f"a line of more than {TOKENS} numbers, words and signs"
    )
    return Unread(typed[start:], start, why, _NOT_READ, start, len(typed))
