"""What stands in front of a chain: "so", "we get", a label before a colon, brackets around it all. Reads no
expression.
"""

from __future__ import annotations

from collections.abc import Sequence

from .split import has_arithmetic, has_relation
from .tokens import Token
from .vocabulary import Vocabulary
from .words import LEADS, SENSES, SUMS

Row = Sequence[Token]


def unwrapped(row: Row) -> Row:
    """Without the brackets around a whole equation."""
    depth = 0
    for place, token in enumerate(row):
        depth += (token.kind == "open") - (token.kind == "close")
        if depth == 0 and place < len(row) - 1:
            return row
    return row[1:-1] if len(row) > 2 and depth == 0 and has_relation(row) else row


def beginning(row: Row, vocabulary: Vocabulary) -> int:
    """Where the line's own words begin: behind "so", "then", "we get" and stray signs."""
    place = _before_sigma(row)
    while place < len(row) - 1:
        lead = row[place].text.casefold() in LEADS and not vocabulary.keys(row[place].text)
        if not (lead and row[place + 1].kind not in ("relation", "colon")) and row[place].kind not in (
            "comma",
            "stop",
            "mark",
            "colon",
        ):
            break
        place += 1
    return place


def _before_sigma(row: Row) -> int:
    """Where a sum begins behind the sense that counts as positive: "+↑ ΣF_y", "ccw + ΣM"; 0 where none does."""
    for place, token in enumerate(row[:7]):
        if token.kind == "sigma" or token.text.casefold() in SUMS:
            return place
        if token.kind not in ("plus", "minus", "comma", "colon") and token.text.casefold() not in SENSES:
            break
    return 0


def label_end(row: Row, first: int, vocabulary: Vocabulary) -> int | None:
    """The last colon before the first relation, where it parts a label from what it labels."""
    depth, found = 0, None
    for place in range(first, len(row)):
        depth += (row[place].kind == "open") - (row[place].kind == "close")
        if row[place].kind == "relation":
            break
        if row[place].kind == "colon" and depth == 0 and place > first:
            found = place
    if found is None or has_arithmetic(row[first:found], vocabulary):
        return None
    ratio = (
        row[found - 1].kind == "number"
        and row[found + 1 : found + 2]
        and row[found + 1].kind == "number"
        and not row[found + 1].spaced
    )
    return None if ratio else found


def is_value(row: Row) -> bool:
    """Whether a row without a relation may be a value: it has a number, or a sign between letters."""
    signs = any(each.kind in ("times", "over", "plus", "power", "root", "function") for each in row)
    return signs or any(each.kind in ("number", "refused") for each in row)
