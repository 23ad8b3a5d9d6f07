"""One piece of a line as a chain, as words, or as what could not be read: labels, relations, remarks, other ways to
read it. Judges nothing.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise
from typing import NamedTuple

from .comments import Comment, has_named, has_tag, without_comments
from .cursor import Unreadable, is_plain
from .labels import beginning, is_value, label_end, unwrapped
from .limits import OTHERWISE
from .piece import Chain, Piece, Relation, Remark, Unread, Words
from .remarks import remark
from .sides import Reader, Told, side
from .split import has_arithmetic, has_relation
from .tokens import BEGINS, OPERATORS, Token
from .tree import Name, Sigma, UnknownName

Row = Sequence[Token]
_WORKED = OPERATORS | BEGINS
_WITHOUT_CHOICE = ("dash", "tag", "times", "letter", "angle")  # tried where the likelier way cannot be read


class Line(NamedTuple):
    """The line that a piece stands in: as typed, in plain signs, and the place of each plain sign in the line as
    typed.
    """

    typed: str
    plain: str
    places: Sequence[int]

    def span(self, row: Row) -> tuple[int, int]:
        """Where a row begins and ends in the line as typed."""
        start = self.places[row[0].at]
        return start, max(self.places[max(row[-1].end - 1, 0)] + 1, start)

    def text(self, row: Row) -> str:
        """What was typed there."""
        return self.typed[slice(*self.span(row))] if row else ""

    def told(self, row: Row) -> str:
        """The same in plain signs."""
        return self.plain[row[0].at : row[-1].end] if row else ""


class Draft(NamedTuple):
    """A chain, or words, and what could be meant otherwise in it."""

    piece: Chain | Words
    met: frozenset[str] = frozenset()


def piece(row: Row, line: Line, reader: Reader, dash: bool = False) -> Piece:
    """The piece that a row of tokens is. With `dash` the dash in front may be a list mark."""
    try:
        first = _draft(row, line, reader)
    except Unreadable as fault:
        return _otherwise_read(row, line, reader) or _not_read(row, line, reader, fault)
    if isinstance(first.piece, Words):
        return first.piece
    choices = (
        first.met
        | ({"dash"} if dash else set())
        | ({"tag"} if has_tag(row) else set())
        | ({"named"} if has_named(row, reader.vocabulary) else set())
    )
    return replace(first.piece, otherwise=_others(row, line, reader, first.piece, sorted(choices)))


def _others(row: Row, line: Line, reader: Reader, first: Chain, choices: Sequence[str]) -> tuple[Chain, ...]:
    """The other ways to read a row, each different from the ones before it."""
    found: list[Chain] = []
    for choice in choices:
        try:
            other = _draft(row, line, reader._replace(flipped=frozenset((choice,)))).piece
        except Unreadable:
            continue
        if isinstance(other, Chain) and all(other.sides != each.sides for each in (first, *found)):
            found.append(replace(other, choice=choice))
    return tuple(found[:OTHERWISE])


def _otherwise_read(row: Row, line: Line, reader: Reader) -> Chain | None:
    """The row in the first less likely way in which it can be read."""
    for choice in _WITHOUT_CHOICE:
        try:
            other = _draft(row, line, reader._replace(flipped=frozenset((choice,)))).piece
        except Unreadable:
            continue
        if isinstance(other, Chain):
            return replace(other, choice=choice)
    return None


def _not_read(row: Row, line: Line, reader: Reader, fault: Unreadable) -> Words | Unread:
    """Words where there is no arithmetic; else the place where the reading stopped."""
    start, end = line.span(row)
    worked = has_relation(row) or has_arithmetic(row, reader.vocabulary) or any(each.why for each in row)
    if not worked and (
        any(is_plain(each, reader.vocabulary) for each in row) or not any(each.kind in _WORKED for each in row)
    ):
        return Words(line.text(row), start, end)
    at = line.places[min(fault.token.at, len(line.plain))] if fault.token.kind != "end" else end
    return Unread(line.text(row), at, fault.why, fault.ask, start, end)


# ---------------------------------------------------------------------- label, relations, sides
def _draft(row: Row, line: Line, reader: Reader) -> Draft:
    """The row as a chain or as words, read in one way. Raises Unreadable."""
    row = row[1:] if "dash" in reader.flipped and row[0].kind == "minus" and len(row) > 1 else row
    kept, comments = without_comments(
        unwrapped(row), reader.vocabulary, "tag" not in reader.flipped, "named" in reader.flipped
    )
    first = beginning(kept, reader.vocabulary)
    colon = label_end(kept, first, reader.vocabulary)
    start = first if colon is None else colon + 1
    if start >= len(kept) or not has_relation(kept) and not is_value(kept[start:]):
        return Draft(Words(line.text(row), *line.span(row)))
    marks = [place for place in range(start, len(kept)) if kept[place].kind in ("relation", "compare")]
    _check_marks(kept, marks)
    leads, trails = _relation(kept, start), _relation(kept, len(kept) - 1)
    bounds = list(zip((start, *(mark + 1 for mark in marks)), (*marks, len(kept)), strict=True))[bool(leads) :]
    bounds = bounds[:-1] if trails and len(kept) - 1 > start else bounds
    opens = not leads and (bool(marks) or has_arithmetic(kept, reader.vocabulary))
    told = [
        side(kept[lo:hi], reader, opens and not place, place == len(bounds) - 1)
        for place, (lo, hi) in enumerate(bounds)
    ]
    label = [line.text(kept[first:colon])] if colon is not None else []
    return _joined(
        row,
        line,
        _Sides(kept, comments, bounds, told, [_relation(kept, mark) or "=" for mark in marks], leads, trails, label),
    )


class _Sides(NamedTuple):
    """A row taken apart: the tokens, the comments, where the sides begin and end, what they say, and the relations."""

    kept: Row
    comments: Sequence[Comment]
    bounds: Sequence[tuple[int, int]]
    told: Sequence[Told]
    relations: Sequence[Relation]
    leads: Relation | None
    trails: Relation | None
    label: Sequence[str]


def _joined(row: Row, line: Line, sides: _Sides) -> Draft:
    """The sides as a chain; a side in words is its label."""
    met = frozenset(choice for each in sides.told for choice in each.met)
    exprs = [place for place, each in enumerate(sides.told) if each.expr is not None]
    labels = [*sides.label, *(line.text(each.before) for each in sides.told if each.before)]
    span = line.span(row)
    values = [expr for each in sides.told if (expr := each.expr) is not None]
    worked = any(each.kind in _WORKED for each in sides.kept)
    named = len(values) == 1 and (isinstance(values[0], Name | UnknownName | Sigma) or not worked)
    if not values or named and not sides.leads and not sides.trails:
        return Draft(Words(line.text(row), *span, values[0] if values and len(sides.told) > 1 else None))
    remarks = tuple(_remark(sides, place, line) for place in exprs)
    if len(sides.told) == 1 and not sides.leads and _only_mentions(sides, remarks[0]):
        return Draft(Words(line.text(row), *span))
    inner = sides.relations[bool(sides.leads) :]
    relations: list[Relation] = ["≈" if "≈" in inner[lo:hi] else "=" for lo, hi in pairwise(exprs)]
    label = "; ".join(each for each in labels if each)
    return Draft(
        Chain(tuple(values), tuple(relations), remarks, line.text(row), *span, label, sides.leads, sides.trails), met
    )


def _only_mentions(sides: _Sides, words: Remark | None) -> bool:
    """Whether a lone value is part of a sentence: more numbers stand in its words, and no sign."""
    numbers = words is not None and any(each.isdigit() for each in words.text)
    return numbers and not any(each.kind in OPERATORS for each in sides.kept)


def _remark(sides: _Sides, place: int, line: Line) -> Remark | None:
    low, high = sides.bounds[place]
    behind = sides.told[place].behind
    rows = [*([behind] if behind else []), *(each.tokens for each in sides.comments if low <= each.after <= high)]
    return remark([line.text(each) for each in rows], [line.told(each) for each in rows])


def _relation(row: Row, place: int) -> Relation | None:
    if not 0 <= place < len(row) or row[place].kind != "relation":
        return None
    return "≈" if {"~", "≈"} & set(row[place].text) else "="


def _check_marks(row: Row, marks: Sequence[int]) -> None:
    """Raises Unreadable for a comparison, and for two relations with nothing between."""
    for mark, following in pairwise((*marks, -1)):
        if row[mark].kind == "compare":
            raise Unreadable(
                row[mark], f'a comparison with "{row[mark].text}"', "Can it be written with an equals sign?"
            )
        if following == mark + 1:
            raise Unreadable(
                row[following], f'"{row[following].text}" with nothing before it', "What stands on this side?"
            )
