"""The pull is set equal to the weights: a balance of forces without the joint stands in for the balance of moments."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace

from explain.marking.slips.account import Account, Item, Spoilt
from explain.marking.slips.slip import Words

from .changes import HEAVY, burdens, reach, spoilt

SLIP = "force-balance-only"
FAMILY = "signs and equilibrium"
COMMON = 4
SAYS = Words(
    title="force balance in place of moment balance",
    says="The pull is set equal to the weights, with no distance in the line.",
    light="Which forces act on the limb besides the muscle and the weights?",
    medium="The joint pushes too, so muscle and weights do not balance each other. Moments about the joint leave "
    "the joint force out.",
    strong="Write the sum of the moments about the joint and solve that for {item}.",
    question="Which balance is this line, of forces or of moments?",
    item="the pull",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it."""
    pulls = account.pulls
    if len(pulls) != 1 or pulls[0].kind in HEAVY or len(account.stages) != 1 or not reach(pulls[0]):
        return
    true, pull = account.values(), pulls[0]
    for chosen in (burdens(account), tuple(each for each in burdens(account) if each.kind != "weight")):
        whole = abs(sum(true[each.key] * each.count * (_side(each, account.roots)) for each in chosen))
        yield spoilt(
            SLIP, replace(account, fixed={**account.fixed, pull.key: whole / pull.count}), pull.key, "unknown", (pull,)
        )


def _side(item: Item, roots: Mapping[str, float]) -> float:
    """Up or down, and across: 1 or -1."""
    return 1.0 if item.upright is not None and item.upright.value(roots) > 1e-9 else -1.0
