"""Which kind of mark a slip costs, where the slip itself does not say. Knows slips by name only from a table."""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache
from importlib.resources import files
from typing import cast, get_args

from ..slips.verdict import Cost, Named


def cost(slip: Named) -> Cost:
    """ "" where neither the slip nor the table says it."""
    return slip.costs or _table().get(slip.slip, "")


@lru_cache(maxsize=1)
def _table() -> Mapping[str, Cost]:
    """A row is a kind of mark, a colon and names; one without a colon goes on with the row before."""
    out: dict[str, Cost] = {}
    kind = ""
    for row in (files(__package__) / "costs.txt").read_text(encoding="utf-8").splitlines():
        if row.startswith("#"):
            continue
        head, colon, rest = row.partition(":")
        kind, names = (head.strip(), rest) if colon else (kind, row)
        if kind in get_args(Cost):
            out |= {name: cast(Cost, kind) for name in names.split()}
    return out
