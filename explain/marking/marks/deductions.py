"""What each slip of a working costs, once, and in which row of the scheme. Knows no slip by name."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from .mark_kinds import cost
from .scheme import DIAGRAM, UNIT, Scheme
from .evidence import shows
from ..slips.verdict import LineVerdict, Marking, Named


class Piece(NamedTuple):
    """One mark of a row, or all of a row's that stand or fall together."""

    row: int
    kind: str
    needs: tuple[str, ...]
    marks: int


def pieces_of(scheme: Scheme) -> tuple[Piece, ...]:
    """A row of as many marks as it needs quantities is split, one mark each."""
    return tuple(_pieces(scheme))


def _pieces(scheme: Scheme) -> Iterator[Piece]:
    for row, point in enumerate(scheme.points):
        if point.marks > 1 and point.marks == len(point.needs):
            yield from (Piece(row, point.kind, (need,), 1) for need in point.needs)
        else:
            yield Piece(row, point.kind, point.needs, point.marks)


class Charges:
    """Which pieces are lost (`lost`) and which a person decides about (`asking`), by place, each with the reason."""

    def __init__(self, scheme: Scheme, marking: Marking) -> None:
        self.scheme, self.pieces = scheme, pieces_of(scheme)
        self.lost: dict[int, str] = {}
        self.asking: dict[int, str] = {}
        self.ones: set[int] = set()  # pieces of which a slip costs one mark, not all
        self._lines = marking.lines
        counted: set[str] = set()
        for line in marking.issues:
            names = {each.slip for each in line.slips[:1]}
            if not line.again and not names & counted:
                self._charge(line, line.slips[0] if line.slips else None)
            counted |= names

    def led_to(self, method: int) -> int | None:
        """The accuracy mark that a method leads to."""
        mine = [place for place, each in enumerate(self.pieces) if each.kind == "accuracy"]
        return self._first_from(mine, self._rank(method))

    def _charge(self, line: LineVerdict, slip: Named | None) -> None:
        why = f"line {line.number}: {slip.title[:1].lower() + slip.title[1:] if slip else 'does not hold'}"
        touched = tuple(filter(None, slip.keys if slip else ())) or line.uses[-1:] or self._led(line)
        values = ("accuracy", "independent")
        match cost(slip) if slip else "":
            case "none":
                return
            case "unit" | "direction" as what:
                self._lose(self._said(what), why)
            case "method":
                balanced = ("moments",) if self._from_moments(touched, line.uses) else ()
                method = self._nearest(("method",), (*touched, *balanced), line.uses)
                self._lose(method, why, one=True)
                if method is not None:
                    self._lose(self.led_to(method), f"{why}; accuracy needs a right method", one=True)
            case "accuracy":
                self._lose(self._nearest(values, touched, line.uses), why)
            case _:
                self._lose(self._nearest(values, touched, line.uses), why)
                method = self._nearest(("method",), touched, line.uses)
                if method is not None:
                    self.asking.setdefault(method, f"{why}: was the method right?")

    def _from_moments(self, touched: Sequence[str], uses: Sequence[str]) -> bool:
        """Whether a line is about an unknown and nothing behind it: it comes of the balance of moments."""
        last = max(map(self.scheme.rank, touched), default=0)
        return bool(self.scheme.unknowns & {*touched, *uses}) and last <= max(
            map(self.scheme.rank, self.scheme.unknowns)
        )

    def _led(self, line: LineVerdict) -> tuple[str, ...]:
        """What the first line finds that follows from one which names nothing itself."""
        return next(
            (
                each.uses[-1:]
                for each in self._lines
                if each.verdict == "carried" and each.since == line.number and each.uses
            ),
            (),
        )

    def _lose(self, place: int | None, why: str, one: bool = False) -> None:
        if place is not None and place not in self.lost:
            self.lost[place] = why
            self.ones |= {place} if one else set()

    def cost(self, place: int) -> int:
        """How many marks of a piece are lost: of a method, or of what it leads to, one for each slip."""
        return 1 if place in self.ones else self.pieces[place].marks

    def _said(self, what: str) -> int | None:
        """Where a unit or a direction that is not told is lost."""
        found = [place for place, each in enumerate(self.pieces) if what in each.needs]
        if found:
            return found[0]
        if what == UNIT:
            return next(
                (
                    place
                    for place, each in enumerate(self.pieces)
                    if each.kind == "communication" and DIAGRAM not in each.needs
                ),
                None,
            )
        return self._nearest(("accuracy",), ("*angle reaction",), ())

    def _nearest(self, kinds: Sequence[str], touched: Sequence[str], uses: Sequence[str]) -> int | None:
        """The piece that looks for what went wrong: by its own key, by another of the line, else the next one that
        is found from it.
        """
        mine = [place for place, each in enumerate(self.pieces) if each.kind in kinds and place not in self.lost]
        for key in (*touched, *sorted(uses, key=self.scheme.rank, reverse=True)):
            found = [place for place in mine if any(shows(key, need) for need in self.pieces[place].needs)]
            if found:
                return found[0]
        return self._first_from(mine, max(map(self.scheme.rank, (*touched, *uses)), default=0))

    def _first_from(self, places: Sequence[int], least: int) -> int | None:
        later = [place for place in places if self._rank(place) >= least and UNIT not in self.pieces[place].needs]
        return min(later, key=lambda place: (self._rank(place), place), default=None)

    def _rank(self, place: int) -> int:
        return max(map(self.scheme.rank, self.pieces[place].needs))
