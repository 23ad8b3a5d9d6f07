"""In which ways an unknown is worked out of the other terms and what it is multiplied by, right and wrong ones.
Knows no problem.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import product as every

from .signs import Bit, product, quotient, sum_of
from .style import Style


class Form:
    """How an unknown comes from the other terms and what it is multiplied by: signs in front of the terms, or
    another way that is named.
    """

    def __init__(self, signs: tuple[int, ...], way: str = "", first: str = "", behind: str = "") -> None:
        self.signs, self.way = signs if not way else (), way
        self.all, self.first, self.behind = signs, first, behind

    def value(self, values: Sequence[float], by: float, length: float) -> float:
        total = sum(sign * value for sign, value in zip(self.all, values, strict=True))
        if self.way.startswith("term "):
            place = int(self.way[5:])
            return values[place] / by + (total - values[place]) / length if by else 0.0
        match self.way:
            case "upside down":
                return by / total if total else 0.0
            case "times":
                return total * by / length**2
            case "whole":
                return total / length
        return total / by if by else 0.0

    def text(self, style: Style, by: str, terms: list[str], values: Sequence[float]) -> str:
        """The right side as it is written, from the terms as they are shown."""
        signs = [1 if value > 0 else -1 for value in values]
        total = sum_of(list(zip(signs, terms, strict=True)), style)
        row = len(terms) > 1
        if self.way.startswith("term "):
            place = int(self.way[5:])
            terms[place] = quotient(terms[place], by, style, row_below="sin" in by or " " in by)
            return sum_of(list(zip(signs, terms, strict=True)), style)
        match self.way:
            case "upside down":
                return quotient(by, total, style, row_below=row)
            case "whole":
                return total
            case "times":
                return product([Bit(total, "sum" if row else "number"), Bit(by)], style)
            case "unbracketed":
                return product([Bit(quotient(total, self.first, style, row_above=row)), Bit(self.behind)], style)
        return ""


def forms(count: int) -> Iterator[Form]:
    for signs in every((1, -1), repeat=count):
        yield Form(signs)
    plain = tuple([1] * count)
    for way in ("upside down", "times", "whole", *(f"term {place}" for place in range(count if count > 1 else 0))):
        yield Form(plain, way)


def close(a: float, b: float) -> bool:
    return abs(a - b) <= 1e-9 * max(abs(a), abs(b), 1e-9)
