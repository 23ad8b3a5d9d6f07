"""Random problems of the trade's kinds, with believable data, worked through: a level elbow, a knee from vertical, a
shallow shoulder pull, and so on.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from random import Random

from explain.marking.slips.account import Account
from explain.marking.slips.account_of_working import account_of
from explain.errors import Fault, NoWay
from explain.api import Walkthrough, work

from .limbs import (
    Table,
    ankle,
    back,
    jaw,
    knee,
    level_elbow,
    neck,
    oblique_elbow,
    shoulder,
    sloping_elbow,
    two_segments,
)
from .variants import (
    both_arms,
    cable,
    rows_of_a_table,
    scale_push,
    shared_elbow,
    shares_of_body,
    sought_angle,
    sought_distance,
    sought_mass,
    us_elbow,
    us_foot,
)


@dataclass(frozen=True, slots=True)
class Worked:
    """A problem as a mapping, its walkthrough and its account."""

    kind: str
    table: Table
    walkthrough: Walkthrough
    account: Account

    @property
    def us(self) -> bool:
        return self.kind.startswith("us")

    @property
    def joint(self) -> str:
        return str(self.table["pivot"]["name"])

    @property
    def bone(self) -> str:
        return str(self.table["pivot"].get("bone", ""))


KINDS: Mapping[str, Callable[[Random], Table]] = {
    each.__name__: each
    for each in (
        level_elbow,
        oblique_elbow,
        sloping_elbow,
        knee,
        shoulder,
        two_segments,
        ankle,
        neck,
        back,
        jaw,
        us_foot,
        us_elbow,
        shared_elbow,
        both_arms,
        shares_of_body,
        sought_mass,
        sought_distance,
        sought_angle,
        scale_push,
        cable,
        rows_of_a_table,
    )
}


def random_problem(random: Random, kinds: tuple[str, ...] = ()) -> Worked:
    """One problem worked through; data for which there is no way are drawn again. Every answer is positive."""
    kind = random.choice(kinds or tuple(KINDS))
    while True:
        table = KINDS[kind](random)
        try:
            walkthrough = work(table)
        except (Fault, NoWay):
            continue
        account = account_of(walkthrough.outcome.working)
        values = account.values()
        if all(values.get(key, 1.0) > 0 for key in account.unknowns):
            return Worked(kind, table, walkthrough, account)
