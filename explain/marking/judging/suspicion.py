"""Names the slips that would explain a value, and says how strong that evidence is. Settles nothing."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from ...reference.gravity import IN_CLASSES
from .kinds import FACTORS, KILOGRAMS, kind_of
from .known import Wrong
from .patterns import pattern
from .state import State
from .values import Meaning, Suspect, Value

# Slips whose values come about in many other ways too: alone they are no proof.
AMBIGUOUS = frozenset(
    """wrong-pivot-distance adding-arms arms-swapped mass-for-weight g-in-one-term-only kilogram-answer wrong-datum
digit-transposed decimal-shift sum-instead-of-product torque-by-division term-moved-sign-kept sign-of-a-term
stopped-at-moment pound-as-mass pound-kilogram-slip gram-kilogram-slip mixed-length-units inch-foot-mix
segment-left-out load-left-out second-segment-left-out helper-muscle-left-out insertion-used-as-arm
force-balance-only limb-share-twice moment-balance-for-reaction stance-leg-not-removed loads-merged-at-one-point
chain-distance-not-added reaction-in-moment-equation g-divided axial-part-counted""".split()
)
_LENGTHS = (12.0, 39.37, 2.54, 3.28084)


@dataclass(frozen=True, slots=True)
class Scored:
    """A slip's quantity with how well it fits what the line says."""

    score: float
    slip: str
    found: Wrong
    touched: bool


def scored(state: State, found: Sequence[Wrong], meaning: Meaning) -> list[Scored]:
    """The slips' quantities, the best fit first."""
    out = []
    for each in found:
        slip = state.known.slips[each.slip]
        kind, items = kind_of(each.key), state.hints.item_of(each.key)
        touched = each.key == slip.touched
        score = slip.common + 6 * touched + (0 if not meaning.kinds else 3 if kind in meaning.kinds else -6)
        if meaning.items:
            if "reaction" in each.key and meaning.role != "joint":
                continue
            score += 3 if items & meaning.items else -3 if items else 0
        if meaning.role:
            score += 4 if state.hints.is_answer(each.key, meaning) else -2
            score -= 3 * (each.key == "reaction" and meaning.axis != "")
        score -= 3 * (each.form == "kg") + 2 * (each.key in state.made and each.key not in state.known.unknowns)
        out.append(Scored(score, slip.name, each, touched))
    return sorted(out, key=lambda each: -each.score)


def slip_value(
    state: State,
    value: Value,
    found: Sequence[Wrong],
    meaning: Meaning,
    unit: str,
    force: bool = False,
    soft: bool = False,
) -> bool:
    """Suspect a value that is a slip's; False where the words speak against it."""
    ranked = scored(state, found, meaning)
    if not ranked or ranked[0].score < -1 or (state.line, ranked[0].found.key) in state.before.cleared:
        return False
    best = ranked[0]
    key, form = best.found.key, best.found.form
    worlds = frozenset(each.found.slip for each in ranked if each.score >= best.score - 3)
    if soft and worlds & state.before.settled:
        soft = False
    names = list(dict.fromkeys(each.slip for each in ranked if each.score >= best.score - 5))
    strong = (force or _sure(state, best, names[0], meaning, unit)) and not soft
    state.suspect(
        Suspect(state.line, names, key, strong, f"the value of {key} under {names[0]}", worlds, value.deps, soft), value
    )
    if not soft:
        true = state.known.truth[key] / (state.known.g if form == "kg" else 1)
        base = value.r if pattern(value.r) == pattern(best.found.row) else value.f
        value.r = true * abs(base[0] / best.found.row[0]) * np.sign(base[0]) * np.sign(true[0])
    return True


def _sure(state: State, best: Scored, name: str, meaning: Meaning, unit: str) -> bool:
    """Whether the words, the unit and the thing leave no doubt what was meant."""
    if meaning.role and state.hints.is_answer(best.found.key, meaning):
        return True
    kind, mine = kind_of(best.found.key), bool(state.hints.item_of(best.found.key) & meaning.items)
    if kind not in meaning.kinds or not best.touched:
        return False
    if name not in AMBIGUOUS and (mine or not meaning.items):
        return True
    return bool(unit) and mine and name not in ("wrong-pivot-distance", "adding-arms")


def scaled(state: State, value: Value, meaning: Meaning, unit: str) -> bool:
    """Suspect a value that is a true quantity but for a factor: a unit, a g, a thousand."""
    found = [
        each
        for each in state.known.scaled_of(value.r, unit)
        if (not meaning.kinds or kind_of(each[0]) in meaning.kinds)
        and (not meaning.items or state.hints.item_of(each[0]) & meaning.items)
        and (not meaning.role or state.hints.speaks(each[0], meaning))
    ]
    if not found:
        return False
    key, form, factor, _ = found[0]
    names = _kilogram_names(state, key) if form == "kg" else factor_names(state, key, factor)
    if not names:
        return False
    kind = kind_of(key)
    sure = bool(meaning.role and key in state.known.unknowns) or bool(
        unit and (meaning.items or kind in meaning.kinds) and unit not in KILOGRAMS
    )
    state.suspect(
        Suspect(state.line, names, key, sure and bool(unit), f"{form} {key} by {factor:.4g}".strip(), deps=value.deps),
        value,
    )
    value.r = value.r * (state.known.g * FACTORS[kind].get(unit, 1.0) if form == "kg" else 1 / factor)
    return True


def mislabelled(state: State, value: Value, meaning: Meaning, unit: str) -> bool:
    """Suspect a moment whose number is right in another unit of moments than the one that is written."""
    if unit not in ("Nm", "Ncm", "lbin", "lbft") or value.free:
        return False
    for key, form, factor, _ in state.known.scaled_of(value.r, unit):
        if form or kind_of(key) != "moment" or meaning.items and not state.hints.item_of(key) & meaning.items:
            continue
        names = factor_names(state, key, factor)
        if names and names[0] in ("mixed-length-units", "inch-foot-mix"):
            label = ["torque-in-newton-centimetre-mislabelled", "unit-label-wrong", *names]
            state.suspect(
                Suspect(state.line, label, key, True, "a moment in another unit", deps=value.deps, sticky=True), value
            )
            return True
    return False


def _kilogram_names(state: State, key: str) -> list[str]:
    if kind_of(key) == "moment" or key not in state.known.unknowns:
        return ["mass-for-weight", "g-in-one-term-only", "kilogram-answer"]
    return ["mass-for-weight", "kilogram-answer"]


def factor_names(state: State, key: str, factor: float) -> list[str]:
    """The slips that put a factor into a quantity."""
    kind, power = kind_of(key), float(np.log10(factor))
    names: list[str] = []
    if abs(power - round(power)) < 1e-5 and round(power):
        names = (
            ["mixed-length-units", "decimal-shift"]
            if abs(round(power)) == 2
            else ["decimal-shift", "mixed-length-units", "percent-slip"]
        )
        if abs(round(power)) == 3 and kind in ("force", "mass", "moment"):
            names = ["gram-kilogram-slip", *names]
        if kind in ("force", "mass", "moment") and any(each.endswith("%") for each in state.known.data):
            names = [*names, "percent-slip"]
    if _near(factor, [2.204622622**k for k in (1, -1, 2, -2)], 0.003):
        names = ["pound-kilogram-slip", "pound-as-mass"]
    if _near(factor, IN_CLASSES):
        names = ["pound-as-mass", "g-twice"] if state.known.pounds else ["g-twice"]
    if _near(factor, [1 / each for each in IN_CLASSES]):
        names = ["mass-for-weight", "kilogram-answer", "g-divided"]
    if _near(factor, [each**k for each in _LENGTHS for k in (1, -1)], 0.003):
        names = ["inch-foot-mix", "mixed-length-units"]
    if _near(factor, (2.0, 0.5), 1e-5):
        names = ["limb-share-forgotten", "limb-share-twice"]
    return names


def _near(factor: float, figures: Sequence[float], within: float = 0.004) -> bool:
    return any(abs(factor / each - 1) < within for each in figures)
