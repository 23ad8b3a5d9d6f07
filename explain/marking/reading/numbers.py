"""How people type numbers: points, commas, thousands, exponents. A number is read in one way, or in two where the
comma can mean two things.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from decimal import Decimal
from typing import Literal, NamedTuple

from .limits import EXPONENT_FIGURES, FIGURES

Comma = Literal["", "decimal", "thousands"]  # "": by evidence

RUN = r"(?:[0-9](?:[0-9]|[.,](?=[0-9]))*(?:\.(?![.0-9\s]|$))?|\.[0-9](?:[0-9]|[.,](?=[0-9]))*)(?:[eE][+-]?[0-9]+)?"
_POINT = re.compile(r"[0-9]*\.?[0-9]*")
_COMMA = re.compile(r"[0-9]+,[0-9]+")
_GROUPS = re.compile(r"[1-9][0-9]{0,2}(?:,[0-9]{3})+(?:\.[0-9]+)?")
_GROUPS_BY_POINTS = re.compile(r"[1-9][0-9]{0,2}(?:\.[0-9]{3})+,[0-9]+")
_ONE_GROUP = re.compile(r"[1-9][0-9]{0,2}([.,])[0-9]{3}")
_SURE_COMMA = re.compile(
    r"(?<![0-9.,])(?:0,[0-9]+|[0-9]+,(?:[0-9]{1,2}|[0-9]{4,}))(?![0-9.,])|[=*/+(×·⋅∙≈-]\s*,[0-9]+(?![0-9.,])"
)
_SURE_POINT = re.compile(r"(?<![0-9,.])[0-9]*\.[0-9]+(?![0-9.,])|[0-9],[0-9]{3}\.[0-9]")


_FAR_MORE = 3  # times as many as the other: a slip of the key, or a power of 0.5


@dataclass(frozen=True, slots=True)
class Number:
    """A number as typed, never negative. `places` are the digits behind the point (-2 for 3e2), `figures` the
    significant ones.

    Zeros in front do not count as significant; zeros behind do. A whole number written without a point has no `point`.
    """

    value: Decimal
    places: int
    figures: int
    text: str
    point: bool = False


class Spelled(NamedTuple):
    """The number that a run of figures spells, another that it can spell too, or why it spells none."""

    number: Number | None
    other: Number | None = None
    why: str = ""


def comma_in(text: str) -> Comma:
    """What commas inside numbers mean, by the numbers of a text that can be read in one way only; "" where nothing
    tells.
    """
    comma, point = (len(each.findall(text)) for each in (_SURE_COMMA, _SURE_POINT))
    return "decimal" if comma > _FAR_MORE * point else "thousands" if point > _FAR_MORE * comma else ""


def spelled(run: str, comma: Comma) -> Spelled:
    """The number of a run of figures, points and commas, with an exponent or without."""
    mantissa, _, exponent = run.lower().partition("e")
    if sum(each.isdigit() for each in mantissa) > FIGURES:
        return Spelled(None, why=f"a number of more than {FIGURES} figures")
    if len(exponent.lstrip("+-")) > EXPONENT_FIGURES:
        return Spelled(None, why="an exponent of more than two figures")
    ways = _ways(mantissa.rstrip(".") if mantissa.count(".") > 1 else mantissa, comma)
    if not ways:
        return Spelled(None, why="a number with more than one point or comma")
    numbers = [_number(way, exponent, run) for way in ways]
    return Spelled(numbers[0], numbers[1] if len(numbers) > 1 else None)


def _ways(figures: str, comma: Comma) -> tuple[str, ...]:
    """The run with a decimal point and no thousands, in each way that it can be meant, the likelier first."""
    one = _ONE_GROUP.fullmatch(figures)
    if one and (one[1] == "," or comma == "decimal"):
        thousands, decimal = figures.replace(one[1], ""), figures.replace(one[1], ".")
        if one[1] == ",":
            return {"": (thousands, decimal), "decimal": (decimal,), "thousands": (thousands,)}[comma]
        return thousands, decimal
    if _POINT.fullmatch(figures):
        return (figures,)
    if _COMMA.fullmatch(figures):
        return (figures.replace(",", "."),)
    if _GROUPS.fullmatch(figures):
        return (figures.replace(",", ""),)
    return (figures.replace(".", "").replace(",", "."),) if _GROUPS_BY_POINTS.fullmatch(figures) else ()


def _number(figures: str, exponent: str, run: str) -> Number:
    """`figures` has a point or none; the exponent at most two figures, so that nothing here can grow large."""
    behind = len(figures.partition(".")[2])
    significant = figures.replace(".", "").lstrip("0") or "0"
    shown = f"0{figures}" if figures.startswith(".") else figures.rstrip(".")
    text = f"{shown}e{int(exponent)}" if exponent else shown
    return Number(Decimal(text), behind - int(exponent or 0), len(significant), run, "." in figures)
