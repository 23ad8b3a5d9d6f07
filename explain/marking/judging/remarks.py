"""Comments on a line that cost nothing: rounding, equals signs that run on, kilograms for newtons, another g. Judges
nothing.
"""

from __future__ import annotations

from .kinds import FACTORS, kind_of
from .passes import Judged
from .reading import Line
from .values import Claim
from .verdicts import Verdict

ROUNDING = "Right by its own figures; more figures on the way would bring it nearer."
RUN_ON = "The equals signs run on from one step to the next; the numbers are right."
OTHER_TABLE = "Right with the segments of another published table."
KILOGRAMS = "The number is right; as a force its unit is N, not kg."
_FAR = 0.004
_NEAR = 0.03


def remark(judged: Judged, line: Line, verdict: Verdict) -> str:
    """What is said of a line that holds or follows."""
    if any(_kilograms(each) for each in verdict.claims):
        return KILOGRAMS
    if line.number in judged.state.other_table:
        return OTHER_TABLE
    if line.number in judged.state.run_on:
        return RUN_ON
    if verdict.kind == "holds" and any(_rounded(judged, each) for each in verdict.claims):
        return ROUNDING
    return ""


def _kilograms(claim: Claim) -> bool:
    """A force whose number is in newtons and whose unit says kilograms."""
    return (
        claim.unit == "kg"
        and claim.status == "true"
        and bool(claim.keys)
        and all(kind_of(each.key) == "force" and not each.form for each in claim.keys)
    )


def _rounded(judged: Judged, claim: Claim) -> bool:
    """A number that is off the true one by more than its last figure, since figures were dropped on the way."""
    if claim.status != "true" or not claim.shown or not claim.keys or not claim.value.number or claim.value.exact:
        return False
    known, number = judged.state.known, abs(claim.value.number)
    sizes = [
        abs(float(known.truth[each.key][0])) * factor
        for each in claim.keys
        if not each.form and each.key in known.truth
        for factor in (
            [FACTORS[kind_of(each.key)][claim.unit]]
            if claim.unit in FACTORS[kind_of(each.key)]
            else FACTORS[kind_of(each.key)].values()
        )
    ]
    sizes += [
        abs(found[each.key]) * FACTORS[kind_of(each.key)].get(claim.unit, 1.0)
        for found in known.by_g.values()
        for each in claim.keys
        if each.key in found
    ]
    off = min((abs(number / size - 1) for size in sizes if size), default=0.0)
    return _FAR < off < _NEAR and off * number > 1.5 * claim.value.half
