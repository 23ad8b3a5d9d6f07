"""Superposition: what each force alone asks of the one unknown pull. Knows no balance but that of moments."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from .account_items import Item, Values


def alone(items: Sequence[Item], pull: Item, out: Mapping[str, float], fixed: Mapping[str, float]) -> Values:
    """The pulls in N that hold one force each, by "*alone X"; where one of them is fixed, the pull itself as their
    sum.
    """
    per = out[f"*moment {pull.name}"] / out[pull.key] if out[pull.key] else 0.0
    if not per:
        return {}
    keys = {
        f"*alone {each.name}": -out[f"*moment {each.name}"] * each.in_moments / per
        for each in items
        if each is not pull
    }
    found = {key: fixed.get(key, value) for key, value in keys.items()}
    return {**found, pull.key: sum(found.values())} if keys.keys() & fixed.keys() else found
