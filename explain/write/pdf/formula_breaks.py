"""How a formula too wide for its room is broken: before a relation, else before plus and minus. Knows outlines and no
page.

What is broken goes on two quads farther in than it began, a right side two quads farther in than what stands behind its
relation.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from functools import reduce
from typing import NamedTuple

from .formula_layout import ink, summands
from .glyph_outlines import EM, Ink, beside, moved

_QUADS = 2 * EM
_RELATION = 1.28 * EM  # an equals sign with the space around it
_ZERO = 2.5 * EM  # a right side no wider than this, "= 0", does not stand on a line of its own
_LINE = 145.0  # from one line of a broken formula to the next, at least, where it drops no deeper than a letter
_DEPTH = 25.0
_LEADING = 40.0


class Formula(NamedTuple):
    """A formula laid out on one line, and the <math> element it comes from."""

    markup: str
    whole: Ink

    @property
    def advance(self) -> float:
        return self.whole.advance

    @property
    def parts(self) -> tuple[Ink, ...]:
        """Where it may be broken."""
        return summands(self.markup) if self.markup else (self.whole,)


class _Setting(NamedTuple):
    """Lines as far as they are set, and where the next piece would stand."""

    lines: tuple[tuple[Ink, ...], ...]
    at: float

    def put(self, piece: Ink) -> _Setting:
        line = (*self.lines[-1], moved(piece, right=self.at))
        return _Setting((*self.lines[:-1], line), self.at + piece.advance)

    def broken(self, at: float) -> _Setting:
        """A new line, unless the present one is still blank."""
        return _Setting((*self.lines, ()) if self.lines[-1] else self.lines, at)

    def flow(self, pieces: Iterable[Ink], inner: float, room: float) -> _Setting:
        """Pieces one after the other; one that would pass `room` begins a line at `inner`."""
        setting = self
        for piece in pieces:
            if setting.at + piece.advance > room and setting.lines[-1]:
                setting = setting.broken(inner)
            setting = setting.put(piece)
        return setting


def fitted(markup: str, longest: float) -> Ink:
    """The formula of a <math> element, in lines of at most `longest`; the baseline is that of the last, since a
    sentence goes on there.
    """
    whole = ink(markup)
    if whole.advance <= longest:
        return whole
    lines = _Setting(((),), 0.0).flow(summands(markup), _QUADS, longest).lines
    drawn = _under(lines)
    last = _over(lines[-1])
    return moved(drawn, down=last.drop - drawn.drop)


def set_row(left: Formula, links: Sequence[Formula], column: float, room: float) -> Ink:
    """A row of a derivation, as far as it can be broken no wider than `room`; the baseline is that of its first line.

    The left side ends at `column`; a wider one begins at 0. The links of its chain follow; one that does not fit begins
    a line,
    under the first where the left side ends at the column.
    """
    if left.advance <= column:
        setting, base = _Setting(((),), column - left.advance).put(left.whole), column
    else:
        links, parts = _joined(left, links, room)
        setting, base = _Setting(((),), 0.0).flow(parts, _QUADS, room), _QUADS
    for link in links:
        setting = _linked(setting, link, base, room)
    return _under(setting.lines)


def _joined(left: Formula, links: Sequence[Formula], room: float) -> tuple[Sequence[Formula], Sequence[Ink]]:
    """The pieces of a left side and the links behind it; a short first link becomes one with the last piece."""
    short = bool(links) and links[0].advance <= _ZERO
    wide = left.advance + (links[0].advance if short else 0.0)
    parts = (left.whole,) if wide <= room else left.parts
    return (links[1:], (*parts[:-1], beside((parts[-1], links[0].whole)))) if short else (links, parts)


def _linked(setting: _Setting, link: Formula, base: float, room: float) -> _Setting:
    if setting.at + link.advance <= room:
        return setting.put(link.whole)
    fresh = setting if setting.at <= base else setting.broken(base)
    if base + link.advance <= room:
        return fresh.put(link.whole)
    parts = link.parts
    inner = max((each.advance for each in parts[1:]), default=0.0)
    hang = next((each for each in (base + _RELATION + _QUADS, base + _RELATION) if each + inner <= room), base)
    return fresh.put(parts[0]).flow(parts[1:], hang, room)


def _over(pieces: Iterable[Ink]) -> Ink:
    """Formulas on one origin."""
    return reduce(
        lambda one, other: Ink(
            one.strokes + other.strokes,
            max(one.advance, other.advance),
            min(one.left, other.left),
            max(one.right, other.right),
            max(one.rise, other.rise),
            max(one.drop, other.drop),
        ),
        pieces,
    )


def _under(lines: Sequence[Iterable[Ink]]) -> Ink:
    """Lines under the first, whose baseline stays that of the whole."""
    whole, *others = map(_over, lines)
    for each in others:
        low = max(whole.drop + each.rise + _LEADING, whole.drop + _LINE - _DEPTH)
        whole = _over((whole, moved(each, down=low)))
    return whole
