"""One final answer as it is typed into a cell: a number, how well it is known, a unit, a sense. Judges nothing, runs
nothing.
"""

from __future__ import annotations

import re
from typing import NamedTuple

from ..equation.terms import Unit
from ..marking.reading.numbers import RUN, Comma, Number, spelled
from ..marking.reading.units import unit_word

LONGEST = 80  # characters of a cell that can be an answer
_SIGNS = str.maketrans(
    {
        "−": "-",
        "–": "-",
        "\u2010": "-",
        "\u2011": "-",
        "×": "x",
        "·": " ",
        "⋅": " ",
        "*": " ",
        "\u00a0": " ",
        "\u202f": " ",
        "\u2009": " ",
        "²": "^2",
        "’": "'",
    }
)
_CELL = re.compile(
    rf"(?P<sign>[+-]?)\s*(?P<run>{RUN})(?:\s*x\s*10\s*\^\s*(?P<tens>[+-]?[0-9]{{1,2}}))?"
    r"(?P<tail>[^0-9]*(?:\^2[^0-9]*)?)"
)
_BEFORE = re.compile(r"[^0-9=]*[=≈]\s*|[~≈]\s*|(?:ca|about|approx)\.?\s+", re.IGNORECASE)
_GROUP = re.compile(r"(?<=[0-9]) (?=[0-9]{3}(?![0-9]))")
_WAYS = {"up": 1, "upward": 1, "upwards": 1, "right": 1, "down": -1, "downward": -1, "downwards": -1, "left": -1}
_ROUGHEST = 0.05  # of a value: a single figure tells no more than two would


class Cell(NamedTuple):
    """A number as typed: `half` is half a unit of its last place, `open` the same where final noughts are no figures
    ("360" may be 364 to two figures; at least two are), `unit` is () where none stands (or none that is
    known), `way` +1 up or right, -1 down or
    left, 0 untold. `other` is the number that it may be instead ("1,234"). `told`: a sign or a way stands in the cell.
    """

    text: str
    value: float
    half: float
    unit: Unit = ()
    way: int = 0
    other: float | None = None
    digits: str = ""
    open: float = 0.0

    @property
    def told(self) -> bool:
        return bool(self.way) or self.text.lstrip()[:1] in ("+", "-", "−")


def cell(text: str, comma: Comma = "") -> Cell | str:
    """The answer of a cell, or why it is none. `comma` says what commas mean in this file."""
    if len(text) > LONGEST:
        return "a text too long for an answer"
    plain = _GROUP.sub("", text.translate(_SIGNS).strip())
    if (before := _BEFORE.match(plain)) is not None:
        plain = plain[before.end() :]
    match = _CELL.fullmatch(plain)
    if match is None:
        return "more than one number" if len(re.findall(r"[0-9]+(?:[.,][0-9]+)*", plain)) > 1 else "no number"
    found = spelled(match["run"], comma)
    if found.number is None:
        return found.why or "no number"
    tens, sign = int(match["tens"] or 0), -1 if match["sign"] == "-" else 1
    value = float(found.number.value) * 10.0**tens
    half = (
        min(0.5 * 10.0 ** (tens - found.number.places), _ROUGHEST * value)
        if value
        else 0.5 * 10.0 ** (tens - found.number.places)
    )
    other = sign * float(found.other.value) * 10.0**tens if found.other is not None else None
    unit, way = _unit(match["tail"]), _way(match["tail"])
    return Cell(text.strip(), sign * value, half, unit, way, other, match["run"], _open(found.number, half, tens))


def _open(number: Number, half: float, tens: int) -> float:
    """Half a unit of the last figure that must be one, where a whole number ends in noughts."""
    whole = f"{number.value:f}".partition(".")[0].lstrip("0")
    noughts = min(len(whole) - len(whole.rstrip("0")), max(0, len(whole) - 2)) if not number.places else 0
    return max(half, 0.5 * 10.0 ** (tens + noughts)) if noughts else half


def _words(tail: str) -> list[str]:
    return re.findall(r"[^\s,;()]+", tail)


def _way(tail: str) -> int:
    return next(
        (_WAYS[word.casefold().rstrip(".")] for word in _words(tail) if word.casefold().rstrip(".") in _WAYS), 0
    )


def _unit(tail: str) -> Unit:
    """The unit that the words behind a number begin with."""
    words = [word for word in _words(tail) if word.casefold().rstrip(".") not in _WAYS]
    for count in (2, 1):
        found = unit_word("".join(words[:count]).rstrip(".")) if len(words) >= count else None
        if found is not None:
            return found
    return ()


def unit_of_header(header: str) -> tuple[str, Unit]:
    """The name of a column and the unit that it tells in brackets behind it: "biceps (N)", "elbow angle [deg]"."""
    match = re.fullmatch(r"\s*(.*?)\s*[(\[]([^()\[\]]+)[)\]]\s*", header)
    found = _unit(match[2].translate(_SIGNS)) if match else ()
    return (match[1], found) if match and found else (header.strip(), ())
