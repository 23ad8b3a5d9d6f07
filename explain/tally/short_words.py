"""What a tally says in few words: numbers, causes, counts; and what of a typed text may stand in a report without
names. Knows no page.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence

from ..document.english import listed, the
from ..errors import legible
from .counts import Sort
from .entry import Cause, Wrong

LONG = 120
_WORD = re.compile(r"[^\W_]+")
_ALL = 12  # explanations of one answer that a cell of a table has room for


def number(value: float) -> str:
    """A number as it was given, with a true minus."""
    return f"{value:.6g}".replace("-", "−")


def several(count: int, one: str, many: str = "") -> str:
    """ "1 student", "12 students"."""
    return f"{count:,} {one if count == 1 else many or one + 's'}"


def cause(each: Cause, known: Mapping[str, Sort]) -> str:
    """One explanation: the slip and what it is about; of a pair both."""
    return " with ".join(
        _slip(slip, item, known) for slip, item in zip(each.slips, (*each.items, "", ""), strict=False)
    )


def _slip(slip: str, item: str, known: Mapping[str, Sort]) -> str:
    title = known[slip].title if slip in known else slip.replace("-", " ")
    return f"{title} ({the(item)})" if item and item.casefold() not in title.casefold() else title


def causes(wrong: Wrong, known: Mapping[str, Sort], most: int = _ALL) -> str:
    """All explanations of a wrong answer; slips that may be about several things are named once, with all of them."""
    by_way: dict[tuple[str, ...], list[Cause]] = {}
    for each in wrong.causes:
        by_way.setdefault(each.slips, []).append(each)
    told = [_way(way, found, known) for way, found in by_way.items()]
    more = max(0, len(told) - most) + wrong.pairs
    return "; ".join(told[:most]) + (f"; and {more} more" if more and told else "")


def _way(way: tuple[str, ...], found: Sequence[Cause], known: Mapping[str, Sort]) -> str:
    items = list(dict.fromkeys(the(each.items[0]) for each in found if each.items and each.items[0]))
    if len(way) > 1 or len(items) < 2:
        return cause(found[0], known)
    title = known[way[0]].title if way[0] in known else way[0]
    return f"{title} ({' or '.join(items)})"


def titled(title: str) -> str:
    """A title with a capital letter, unless it begins with a letter of the trade ("g used twice")."""
    return title if title[1:2] == " " else title[:1].upper() + title[1:]


def covered(wrong: Wrong) -> str:
    """Which answers a finding covers, and the first number: "biceps 242.8 N, and reaction after it"."""
    if wrong.line:
        return wrong.text
    first, *rest = wrong.answers
    shown = f"{first} {number(wrong.value)} {wrong.unit}".strip() if wrong.value is not None else first
    return f"{shown}, with {listed(rest)}" if rest else shown


def hidden(text: str, names: frozenset[str]) -> str:
    """A line that was typed, fit for print and without the names of students."""
    text = legible(_WORD.sub(lambda found: "…" if found[0].casefold() in names else found[0], text))
    return text if len(text) <= LONG else f"{text[:LONG]}…"


def names_in(students: Iterable[str]) -> frozenset[str]:
    """The words of the names, which a report without names must not have: those of three letters or more, and long
    numbers.
    """
    words = (word.casefold() for student in students for word in _WORD.findall(student))
    return frozenset(word for word in words if len(word) > (5 if word.isdecimal() else 2))
