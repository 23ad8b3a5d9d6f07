"""Knows how to make a true line or sentence false, to see whether the judges notice."""

from __future__ import annotations

import re
from collections.abc import Iterator

SWAPS = (
    ("counter-clockwise", "clockwise"),
    ("to the left", "to the right"),
    ("above the", "below the"),
    ("straight up", "straight down"),
    ("positive, as", "negative, as"),
    ("nearer: third", "nearer: second"),
    ("outside", "within"),
    ("sine says", "cosine says"),
)


def spoiled_numbers(text: str) -> Iterator[str]:
    """The text with one of its numbers made larger by a fifth, each in turn; numbers that name things are left."""
    for found in re.finditer(r"(?<![0-9A-Za-z_.\u202f])[0-9][0-9\u202f]*(?:\.[0-9]+)?", text):
        number = found[0].replace("\u202f", "")
        places = len(number.partition(".")[2])
        other = f"{float(number) * 1.2 + (0 if float(number) else 1):.{places}f}"
        if other != number:
            yield text[: found.start()] + other + text[found.end() :]


def spoiled_words(text: str) -> Iterator[str]:
    """The text with one of its words of place or sense turned round."""
    for a, b in SWAPS:
        for old, new in ((a, b), (b, a)):
            spoiled = re.sub(rf"(?<!-)\b{re.escape(old)}\b", new, text, count=1)
            if spoiled != text:
                yield spoiled
