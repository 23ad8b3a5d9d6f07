"""What was found of one piece of a line. Knows nothing."""

from __future__ import annotations

from typing import NamedTuple

from ..reading import Chain
from ..slips.verdict import Kind
from .piece_test import Holding
from .alternatives import World

RANK: tuple[Kind, ...] = ("aside", "holds", "carried", "unclear", "slips")


class Found(NamedTuple):
    """The verdict on a piece. `slips` are names, the likeliest first; `worlds` those they lead to; `states` the keys of
    what the piece states.

    `why` says what kind of fault it is ("numbers", "sense", "again", a letter that stands for nothing); `chain` is the
    reading that was judged.
    """

    verdict: Kind
    slips: tuple[str, ...] = ()
    worlds: tuple[World, ...] = ()
    note: str = ""
    why: str = ""
    states: tuple[str, ...] = ()
    holding: Holding | None = None
    chain: Chain | None = None


def worst(found: tuple[Found, ...] | list[Found]) -> Kind:
    """The verdict of a line from those of its pieces."""
    return max((each.verdict for each in found), key=RANK.index, default="aside")
