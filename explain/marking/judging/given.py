"""The answers of a working as the report and the marks need them: for each thing asked the last value, right,
carried or wrong. Blames nobody.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from math import hypot

from ..slips.verdict import Given
from .answers import CLOSE, Answers
from .kinds import FACTORS, UNIT_KIND, kind_of
from .passes import Judged
from .values import Claim
from .verdicts import Verdict

_UNITS = {
    "Nm": "N m",
    "Ncm": "N cm",
    "N/cm2": "N/cm^2",
    "lbin": "lbf in",
    "lbft": "lbf ft",
    "gram": "g",
    "deg": "deg",
    "acc": "",
}
_AXES = {"right": "level", "up": "upright", "along": "along", "across": "across"}


def given(judged: Judged, lines: Sequence[Verdict], names: Mapping[str, str]) -> tuple[Given, ...]:
    """By key of what is asked, in that order, the last value given for it."""
    answers = Answers(judged.state)
    found = (_given(judged, answers, lines, key, name) for key, name in names.items())
    return _from_parts([each for each in found if each is not None])


def ask_about(lines: Sequence[Verdict], answers: Sequence[Given]) -> None:
    """A wrong answer never leaves without a word: where no line slips or is asked about, its own line is asked
    about, if it does not answer something else rightly.
    """
    right = {each.line for each in answers if each.right}
    wrong = [each.line for each in answers if not each.right and each.line not in right]
    if not wrong or any(each.kind in ("slips", "unclear") or each.accepted for each in lines):
        return
    line = next(each for each in lines if each.number == min(wrong))
    line.kind, line.checked, line.why = "unclear", "", "answer"


def _from_parts(found: Sequence[Given]) -> tuple[Given, ...]:
    """With the size of the joint force as good as its parts, where it is not right and comes of these as given."""
    named = {each.name: each for each in found}
    for names in (("reaction.right", "reaction.up"), ("reaction.along", "reaction.across")):
        parts, whole = [named[each] for each in names if each in named], named.get("reaction")
        if len(parts) < 2 or whole is None or whole.right or {each.unit for each in parts} != {whole.unit}:
            continue
        size = hypot(*(each.value for each in parts))
        if abs(abs(whole.value) - size) <= CLOSE / 2 * size:
            accepted = all(each.right for each in parts) and any(each.accepted for each in parts)
            named["reaction"] = replace(whole, right=accepted, accepted=accepted, carried=not accepted)
    return tuple(named.values())


def _given(judged: Judged, answers: Answers, lines: Sequence[Verdict], key: str, name: str) -> Given | None:
    claims = [
        each
        for each in judged.state.claims
        if each.shown and each.value.number and names_it(judged, answers, each, key)
    ]
    if not claims:
        return None
    axis = _AXES.get(key.removeprefix("reaction."), "")
    claims = [each for each in claims if axis and each.meaning.axis == axis] or claims
    if any(answers.fits(each, [key], CLOSE) and each.unit not in _wrong_units(key) for each in claims):
        claims = [each for each in claims if not _of_another(each, key)] or claims
    last = claims[-1]
    verdict = next(each for each in lines if each.number == last.line)
    fits = bool(answers.fits(last, [key], CLOSE)) and last.unit not in _wrong_units(key)
    sense = not any(each.why in ("which way", "the sign of the component") for each in verdict.suspects)
    true = last.status == "true" and any(each.key == key and not each.form for each in last.keys)
    true = true and verdict.kind != "carried"  # right by its formula, with a number that is not
    is_right = (fits or true) and sense and (verdict.kind != "slips" or true)
    accepted = verdict.accepted and not is_right
    is_right |= accepted
    carried = not is_right and verdict.kind == "carried"
    unit = _UNITS.get(last.unit, last.unit)
    return Given(
        name,
        last.value.number,
        unit,
        is_right,
        carried,
        last.line,
        not last.unit and kind_of(key) not in ("ratio", "other"),
        accepted,
    )


def _of_another(claim: Claim, key: str) -> bool:
    """Whether a claim is true of something else than what is asked: a part of it, or the same without its g."""
    part = claim.meaning.role == "pull" and bool(claim.meaning.axis) and not any(each.key == key for each in claim.keys)
    return part or claim.status == "true" and not any(each.key == key and not each.form for each in claim.keys)


def _wrong_units(key: str) -> frozenset[str]:
    """Units of other kinds; kilograms are no force."""
    kind = kind_of(key)
    return frozenset(unit for unit, other in UNIT_KIND.items() if other != kind and unit not in FACTORS[kind]) - {"BW"}


def names_it(judged: Judged, answers: Answers, claim: Claim, key: str) -> bool:
    """Whether a claim is of what is asked: by its formula, or by what it is called."""
    hints = judged.state.hints
    called = (
        bool(claim.meaning.role)
        and hints.is_answer(key, claim.meaning)
        and UNIT_KIND.get(claim.unit, "force") in ("force", "mass")
    )
    if called and key == "reaction" and claim.meaning.axis:
        called = False
    if key.startswith("reaction"):
        own = any(each.key == key and not each.form for each in claim.keys)
        return (
            called
            and (own or not any(each.key.startswith("reaction") for each in claim.keys))
            or own
            and claim.meaning.role != "pull"
            and not claim.meaning.items & hints.pulls
        )
    if called and claim.meaning.items & hints.pulls and not claim.meaning.items & hints.item_of(key):
        return False
    if called and len(hints.pulls) > 1 and not claim.meaning.items:
        called = any(each.key == key for each in claim.keys)
    true = (
        claim.status in ("true", "carried", "again")
        and any(each.key == key for each in claim.keys)
        and (claim.meaning.role != "joint")
        and not (claim.meaning.items - hints.item_of(key) and claim.meaning.items & hints.pulls)
    )
    named = (
        kind_of(key) in claim.meaning.kinds and claim.meaning.items == hints.item_of(key) and kind_of(key) != "force"
    )
    return called or true or bool(named and claim.meaning.items)
