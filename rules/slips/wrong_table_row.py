"""A share is taken from another row of the class's table: another segment of the same limb, alone or together with
its neighbour.
"""

from __future__ import annotations

from collections.abc import Iterator

from explain.marking.slips.account import Account, Spoilt
from explain.marking.slips.slip import Words

SLIP = "wrong-table-row"
FAMILY = "weight and mass"
COMMON = 3
SAYS = Words(
    title="wrong row of the segment table",
    says="The share used for {item} stands in the table, in the row of another segment.",
    light="Read once more what the row is called from which the share of {item} comes.",
    medium="Tables list single segments and joined ones. The row must be for the part that is drawn and no more, on "
    "one side of the body.",
    strong="Find the row named like {item} in the class's table and take the share that stands there.",
    question="Which row of which table is the share from?",
    item="the segment",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it."""
    names = {
        key: each.name for each in account.items for key in (each.mass, each.legs[-1].key if each.legs else "") if key
    }
    for share in account.shares:
        for other in account.rows.get(share.part, ()):
            where = "weight" if share.whole.startswith("*person") else "arm"
            yield Spoilt(SLIP, account.with_data(**{share.part: other}), share.key, where, names.get(share.key, ""))
