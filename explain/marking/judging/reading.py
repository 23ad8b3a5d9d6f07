"""A whole working read line by line into clauses. Judges nothing."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass, replace

from ..reading import read_working as lines_of
from .agreement import agreement
from .clauses import Clause, clauses_of, declared
from .dress import bulleted, decimal_comma, plain, strange, undressed
from .spoken import spoken
from .tables import tables
from .tokens import Habits, tokens_of
from .vectors import has_vectors, split_vectors


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


def read_working(text: str, inches: bool, compounds: Iterable[tuple[str, str]] = ()) -> list[Line]:
    """The lines of a working. `compounds` are pairs of words that belong together, as in "shank and foot"."""
    laid = lines_of(text)
    raw = [each.text for each in laid]
    bullets = bulleted(raw)
    bare = [undressed(each, bullets) for each in raw]
    comma = decimal_comma(bare)
    lines = [plain(each, comma) for each in tables(bare, comma)]
    if has_vectors(lines):
        lines = [split_vectors(each) for each in lines]
    lines = [_unnumbered(spoken(each, compounds)) for each in lines]
    names = declared(lines)
    letters = (
        names | {"m"} if re.search(r"(?<![\d.] )(?<![\d.])\bm\s*[*=]\s*[\d(]", "\n".join(lines)) else names - {"m"}
    )
    out = []
    for each, line in zip(laid, lines, strict=True):
        clauses = _clauses(line, Habits(letters, inches), names)
        trouble = each.trouble or strange(each.text)
        out.append(Line(each.number, each.text, [] if trouble else clauses, each.replaced, each.part, trouble))
    return out


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
