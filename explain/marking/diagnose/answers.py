"""The answers that a working gives: the last value of each thing asked. Judges no line again."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from ..reading import Chain, Expr, Measured, Negative, Number, Reading, Undefined, evaluate
from ..slips.verdict import Given
from .arithmetic import bare
from .piece_test import alone
from .piece_verdict import Found
from .judge import Judge


def answers(
    lines: Sequence[tuple[Reading, Sequence[Found]]], names: Mapping[str, str], judge: Judge
) -> tuple[Given, ...]:
    """By name of what was asked, in that order, the last value given for it."""
    out: dict[str, Given] = {}
    for reading, found in lines:
        chains = [piece for piece in reading.pieces if isinstance(piece, Chain)]
        judged = [each for each in found if each.chain is not None]
        for chain, each in (
            zip(chains, found, strict=False)
            if len(chains) == len(found)
            else [(each.chain, each) for each in judged if each.chain]
        ):
            key = _key(chain, each, names)
            if key and bare(chain.sides[-1]):
                given = _given(names[key], chain.sides[-1], each, reading.number)
                if given is not None:
                    out[key] = given
    return tuple(out[key] for key in names if key in out)


def _key(chain: Chain, found: Found, names: Mapping[str, str]) -> str:
    """The thing asked that a chain gives a value of."""
    name = alone(chain.sides[0])
    if name is not None:
        fit = next(
            (each for each in (found.holding.fits if found.holding else ()) if each and name.text in each.meanings),
            None,
        )
        if fit is not None:
            return fit.meanings[name.text].key if fit.meanings[name.text].key in names else ""
        return next((key for key in getattr(name, "keys", ()) if key in names), "")
    if found.chain is not None and found.chain is not chain and alone(found.chain.sides[0]) is not None:
        return next((key for key in getattr(alone(found.chain.sides[0]), "keys", ()) if key in names), "")
    return next((key for key in found.states if key in names), "") if len(chain.sides) == 1 else ""


def _given(name: str, side: Expr, found: Found, line: int) -> Given | None:
    try:
        value = evaluate(side, {}, units=False).value
    except Undefined:
        return None
    unit = _unit(side)
    return Given(name, value, unit, found.verdict == "holds", found.verdict == "carried", line, not unit)


def _unit(side: Expr) -> str:
    from ...solve.answers import spelled

    while isinstance(side, Negative):
        side = side.of
    if isinstance(side, Measured):
        return spelled(side.unit)
    return "" if isinstance(side, Number) else ""
