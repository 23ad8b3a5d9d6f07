"""Numbers that a sentence sets side by side, written so finely that what is said of them is true as printed. Knows
no mechanics.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from decimal import ROUND_HALF_EVEN, ROUND_HALF_UP, Context, Decimal
from typing import NamedTuple

FINER = 2  # figures more than a class writes, to tell numbers apart that look alike
NEGLIGIBLE = Decimal("1e-6")  # of the largest: less need not show a figure
ROUNDING = {"up": ROUND_HALF_UP, "even": ROUND_HALF_EVEN}
EXACT = Context(prec=60)


class Beside(NamedTuple):
    """Numbers as written, and whether what was to be said of them is true as they stand."""

    numbers: tuple[Decimal, ...]
    true: bool

    @property
    def texts(self) -> tuple[str, ...]:
        return tuple(map(spelled, self.numbers))

    @property
    def total(self) -> Decimal:
        return sum(self.numbers, Decimal(0))


def in_one_place(
    values: Sequence[float], figures: int, most: int, ties: str, said: Callable[[Sequence[Decimal]], bool]
) -> Beside:
    """All to the coarsest decimal place, from so many figures of the largest up to so many at `most`, at which `said`
    is true; to the first
    one where it never is. Where the smallest would show no figure the place is finer."""
    exact = [Decimal(f"{value:.12g}") for value in values]
    sizes = [abs(each) for each in exact if each]
    if not sizes:
        return Beside(tuple(exact), said(exact))
    largest = max(sizes).adjusted()
    first = min(largest - figures + 1, max(min(sizes), max(sizes) * NEGLIGIBLE).adjusted())
    last = min(first, largest - most + 1)
    return _first([tuple(_rounded(each, place, ties) for each in exact) for place in range(first, last - 1, -1)], said)


def to_like_figures(
    values: Sequence[float], figures: int, ties: str, said: Callable[[Sequence[Decimal]], bool]
) -> Beside:
    """Each to the same number of figures, the least from `figures` on with which `said` is true; to `figures` where
    it never is.
    """
    exact = [Decimal(f"{value:.12g}") for value in values]
    return _first(
        [
            tuple(_rounded(each, each.adjusted() - figures + 1 - more, ties) for each in exact)
            for more in range(FINER + 1)
        ],
        said,
    )


def _first(ways: Sequence[tuple[Decimal, ...]], said: Callable[[Sequence[Decimal]], bool]) -> Beside:
    found = next((each for each in ways if said(each)), None)
    return Beside(ways[0], False) if found is None else Beside(found, True)


def _rounded(value: Decimal, place: int, ties: str) -> Decimal:
    unit = Decimal(1).scaleb(place)
    return (
        (value / unit).quantize(Decimal(1), ROUNDING[ties], EXACT) * unit
        if place > 0
        else value.quantize(unit, ROUNDING[ties], EXACT)
    )


def spelled(value: Decimal) -> str:
    """A number with a true minus, thousands apart and no exponent."""
    whole, point, rest = f"{abs(value):f}".partition(".")
    if len(whole) > 4:
        whole = f"{int(whole):,}".replace(",", "\u202f")
    return ("−" if value < 0 else "") + whole + point + rest


def signed(value: Decimal) -> str:
    """A term of a sum: with its sign always."""
    return spelled(value) if value < 0 else f"+{spelled(value)}"


# ---------------------------------------------------------------------- what may be said
def nothing_over(numbers: Sequence[Decimal]) -> bool:
    """That they add to nothing, and each is something."""
    return not sum(numbers) and all(numbers)


def growing(numbers: Sequence[Decimal]) -> bool:
    """That each is larger than the one before."""
    return all(one < other for one, other in zip(numbers, numbers[1:], strict=False))


def equal(numbers: Sequence[Decimal]) -> bool:
    """That they are all the same."""
    return len(set(numbers)) == 1
