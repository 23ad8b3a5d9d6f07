"""A whole working read line by line into clauses. Judges nothing."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from typing import Any, TypeVar, cast

from ..reading import read_working as lines_of
from .agreement import agreement
from .clauses import Clause, clauses_of, declared
from .dress import bulleted, decimal_comma, plain, strange, undressed
from .spoken import spoken
from .tables import tables
from .tokens import Habits, tokens_of
from .vectors import has_vectors, split_vectors


MOST_KEPT = 1000  # lines and parts of them that are kept as they were read
Made = TypeVar("Made")


@dataclass(slots=True)
class Line:
    """One line: as typed, and as it was read. `struck`: taken back by the writer; `trouble`: why what follows was
    not read.
    """

    number: int
    text: str
    clauses: list[Clause]
    struck: bool = False
    part: str = ""
    trouble: str = ""


class Reader:
    """Reads workings. Each line is kept as it was read, by its content and by what it was read with: a line that comes
    again is not read again, and its clauses are the same object.
    """

    def __init__(self) -> None:
        self._kept: dict[tuple[object, ...], object] = {}
        self._used: dict[tuple[object, ...], object] = {}

    def _once(self, make: Callable[..., Made], *key: Any) -> Made:
        """What is made of this, made once."""
        mark = (make, *key)
        if mark not in self._used:
            self._used[mark] = self._kept[mark] if mark in self._kept else make(*key)
        return cast(Made, self._used[mark])

    def read(self, text: str, inches: bool, compounds: Sequence[tuple[str, str]] = ()) -> list[Line]:
        """The lines of a working. `compounds` are pairs of words that belong together, as in "shank and foot"."""
        laid = lines_of(text)
        raw = [each.text for each in laid]
        bullets = bulleted(raw)
        bare = [self._once(undressed, each, bullets) for each in raw]
        comma = decimal_comma(bare)
        lines = [self._once(plain, each, comma) for each in tables(bare, comma)]
        vectors, pairs = has_vectors(lines), tuple(compounds)
        lines = [self._once(_in_signs, each, vectors, pairs) for each in lines]
        names = frozenset[str]().union(*(self._once(_declared, each) for each in lines))
        mass = any(self._once(_is_mass, each) for each in lines)
        out = []
        for each, line in zip(laid, lines, strict=True):
            own = frozenset(name for name in names if name in line)
            habits = Habits(own | {"m"} if mass and "m" in line else own - {"m"}, inches)
            clauses = self._once(_clauses, line, habits, own)
            trouble = each.trouble or self._once(strange, each.text)
            out.append(Line(each.number, each.text, [] if trouble else clauses, each.replaced, each.part, trouble))
        self._kept = self._used if len(self._used) + len(self._kept) > MOST_KEPT else {**self._kept, **self._used}
        self._used = {}
        return out


def read_working(text: str, inches: bool, compounds: Sequence[tuple[str, str]] = ()) -> list[Line]:
    """The lines of one working."""
    return Reader().read(text, inches, compounds)


def _in_signs(line: str, vectors: bool, compounds: tuple[tuple[str, str], ...]) -> str:
    """A plain line with its vectors split, its words for signs as signs, and no number of a step in front."""
    return _unnumbered(spoken(split_vectors(line) if vectors else line, compounds))


def _declared(line: str) -> frozenset[str]:
    return declared([line])


def _is_mass(line: str) -> bool:
    """Whether m is a letter of this line."""
    return bool(re.search(r"(?<![\d.] )(?<![\d.])\bm\s*[*=]\s*[\d(]", line))


def _clauses(line: str, habits: Habits, names: frozenset[str]) -> list[Clause]:
    """The clauses of a line. Where N or m is a letter of the working, "2 N" is two newtons or twice N: whichever the
    numbers of the line bear out; where they bear out both, N is the newton and m the letter, unless a length ends a
    statement.
    """
    out = clauses_of(tokens_of(line, habits), names)
    for letter, other in (
        ("N", replace(habits, newton_is_letter=True)),
        ("m", replace(habits, letters=habits.letters - {"m"})),
    ):
        if letter in habits.letters and re.search(rf"\d ?{letter}\b", line):
            second = clauses_of(tokens_of(line, other), names)
            fits, fits_second = (min((agreement(each, letter) for each in some), default=0) for some in (out, second))
            ends = letter == "m" and fits == fits_second and re.search(r"=\s*[\d.]+ m\s*(?:$|[,;)])", line)
            out = second if fits_second > fits or ends else out
    return out


def _unnumbered(line: str) -> str:
    """Without the number or letter of a part or step in front."""
    return re.sub(r"^\s*(?:(?:\(?[a-h]\)|\(?\d{1,2}\)|\d{1,2}\.(?=\s+\S))\s*|part [a-d]\)?:?\s*)+", "", line)
