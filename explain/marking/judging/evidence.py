"""What speaks for a slip behind a wrong answer: the slips whose answer it is, the true value of another thing, a datum
copied wrongly. Accuses nobody.
"""

from __future__ import annotations

import numpy as np

from .kinds import FACTORS, UNIT_KIND, kind_of
from .state import State
from .values import Claim


def worlds_of(state: State, claim: Claim) -> tuple[list[str], frozenset[int]]:
    """The slips whose answer a wrong answer is: by its formula, else by its figures."""
    asked = {
        key
        for key in state.known.truth
        if key in state.hints.asked or key in state.known.unknowns or key.startswith("reaction")
    }
    slips = state.known.slips
    found = [
        (slips[each.slip].common + 2 * (slips[each.slip].touched == each.key), each.slip)
        for each in state.known.wrong_of(claim.value.f, claim.unit)
        if each.key in asked
    ]
    if not found:
        found = [
            (slip.common, place)
            for place, slip in enumerate(slips)
            for key, row in slip.rows.items()
            if key in asked
            and (not claim.meaning.role or state.hints.speaks(key, claim.meaning))
            and _figures(claim, key, float(row[0]))
        ]
    found.sort(key=lambda each: -each[0])
    return list(dict.fromkeys(slips[place].name for _, place in found)), frozenset(place for _, place in found)


def _figures(claim: Claim, key: str, size: float) -> bool:
    factor = FACTORS[kind_of(key)].get(claim.unit, 1.0)
    return abs(abs(size) * factor - abs(claim.value.number)) <= claim.value.half * 1.1 + 0.004 * abs(claim.value.number)


def of_another(state: State, claim: Claim, worlds: frozenset[int]) -> list[str]:
    """The slips that give a thing the true value of another thing."""
    keys = state.known.true_of(claim.value.f, claim.unit)
    if not keys or len(claim.meaning.items) != 1 or not claim.meaning.kinds or claim.unit == "deg":
        return []
    item = next(iter(claim.meaning.items))
    own = [
        each.key for each in keys if item in each.key and not each.key.startswith(("*sum", "*turn ", "*away", "*ratio"))
    ]
    if any(not claim.unit or kind_of(key) == UNIT_KIND.get(claim.unit) for key in own):
        return []
    slips = state.known.slips
    found = [
        (
            slips[each.slip].common + 4 * (each.slip in worlds) + 3 * (slips[each.slip].item == item),
            slips[each.slip].name,
        )
        for each in state.known.wrong_of(claim.value.f, claim.unit)
        if item in each.key and kind_of(each.key) in claim.meaning.kinds
    ]
    return list(dict.fromkeys(name for _, name in sorted(found, key=lambda each: -each[0])))


def miscopied(state: State, claim: Claim, wrong: Claim) -> list[str]:
    """The slips that make a free number of a datum, where it puts the answer off by just that factor."""
    number, kind = abs(claim.value.number), UNIT_KIND.get(claim.unit, "")
    if not claim.value.free or claim.formula or claim.solved or not number or kind not in claim.meaning.kinds:
        return []
    truth = [
        abs(float(state.known.truth[key][0])) * FACTORS[kind_of(key)].get(wrong.unit, 1.0)
        for key in state.hints.asked
        if key in state.known.truth and state.hints.speaks(key, wrong.meaning)
    ]
    for source in state.trace.sources.all:
        if (
            source.rank
            or source.unit != claim.unit
            or claim.meaning.items
            and not state.hints.item_of(source.key) & claim.meaning.items
        ):
            continue
        ratio, off = number / abs(source.number), [abs(wrong.value.number) / each for each in truth if each]
        if any(abs(each * k - 1) < 0.01 for each in off for k in (ratio, 1 / ratio)):
            return _copied(ratio, f"{abs(source.number):.10g}", f"{number:.10g}")
    return []


def copied_for(state: State, claim: Claim, wrong: Claim) -> list[str]:
    """The slips that make a free number of a datum, where the whole problem with that number for the datum comes to
    the wrong answer.
    """
    asked = [
        key for key in state.hints.asked if key in state.known.truth and state.hints.speaks(key, wrong.meaning)
    ] or [key for key in state.known.unknowns if state.hints.speaks(key, wrong.meaning)]
    for key, row in state.known.data.items():
        kind = kind_of(key)
        if claim.meaning.items and not state.hints.item_of(key) & claim.meaning.items:
            continue
        if claim.meaning.kinds and kind not in claim.meaning.kinds or claim.unit and claim.unit not in FACTORS[kind]:
            continue
        number = abs(claim.value.number) / FACTORS[kind].get(claim.unit, 1.0)
        changed = state.known.with_datum(key, number)
        if any(
            name in changed
            and abs(abs(changed[name]) * FACTORS[kind_of(name)].get(wrong.unit, 1.0) - abs(wrong.value.number))
            <= wrong.value.half * 1.1 + 0.003 * abs(wrong.value.number)
            for name in asked
        ):
            return _copied(number / abs(float(row[0])), f"{abs(float(row[0])):.10g}", f"{number:.10g}")
    return []


def _copied(ratio: float, good: str, typed: str) -> list[str]:
    power = float(np.log10(ratio))
    if abs(power - round(power)) < 1e-6:
        return ["decimal-shift", "mixed-length-units", "wrong-datum"]
    swapped = sorted(good) == sorted(typed)
    return ["digit-transposed", "wrong-datum"] if swapped else ["wrong-datum", "digit-transposed"]


def near_truth(state: State, number: float) -> bool:
    return bool(state.trace.sources.near(abs(number), 0.004 * abs(number)))
