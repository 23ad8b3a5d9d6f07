"""How much of a line's make-up a world explains: whether the line's terms are, one by one, those of the world's
balance. Knows no slip.
"""

from __future__ import annotations

from ..reading import Chain, Expr, Name, Sum, Undefined, within
from .piece_test import Holding, Holds, alone
from .alternatives import World

_SAME = 0.012


def structure(chain: Chain, world: World, holding: Holding, holds: Holds) -> int:
    """2 where the terms of an equation are those of a balance of the world, 1 where the line states what the slip
    touches first, else 0.
    """
    touched = world.slips[-1].touched
    states = {
        key for side in chain.sides for each in within(side) if isinstance(each, Name) for key in each.keys
    } | set(holding.states)
    name = alone(chain.sides[0])
    if name is not None and touched in getattr(name, "keys", ()) or touched in holding.states and chain.label:
        return 3
    for whole in (False, True):
        terms = _terms(chain, world, holding, holds, whole)
        if len(terms) > 1 and any(_same(terms, each) for each in _balances(world)):
            return 2
    return 1 if touched in states else 0


def _terms(chain: Chain, world: World, holding: Holding, holds: Holds, whole: bool) -> list[float]:
    """The sizes of the terms of the widest equation of a chain; `whole`: a sum inside a product is one factor."""
    scales = holds.scales(world, chain, holds.own)
    best: list[float] = []
    for left, right, fit in zip(chain.sides, chain.sides[1:], holding.fits, strict=False):
        if fit is None:
            continue
        found: list[float] = []
        try:
            for side in (left, right):
                found += [
                    abs(scales.value(each, holding.frame, fit.meanings)[0])
                    for each in (_parts(side) if whole else scales.terms(side))
                ]
        except Undefined:
            continue
        found = [each for each in found if each > 0]
        if len(found) > len(best):
            best = found
    return best


def _parts(side: Expr) -> tuple[Expr, ...]:
    return side.terms if isinstance(side, Sum) else (side,)


def _balances(world: World) -> list[list[float]]:
    out = []
    for balance in ("moments", "level", "upright"):
        terms = [abs(value) for _, value in world.account.balance(balance, world.values)]
        out.append([each for each in terms if each > 1e-12 * max(terms or [1])])
    joint = [abs(world.values.get(key, 0.0)) for key in ("reaction.right", "reaction.up")]
    out[1].append(joint[0])
    out[2].append(joint[1])
    return [[each for each in terms if each] for terms in out]


def _same(terms: list[float], balance: list[float]) -> bool:
    """Whether two rows of sizes agree up to one factor."""
    if len(terms) != len(balance) or not terms:
        return False
    a, b = sorted(terms), sorted(balance)
    factor = sum(a) / sum(b)
    return all(abs(x - factor * y) <= _SAME * a[-1] for x, y in zip(a, b, strict=True))
