"""Puts what was found of a working into words: of the line and the force, never of the person. Decides nothing."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from ..slips.account import Account, Spoilt
from ..slips.slip import SlipRule
from ..slips.slip import named as slip_named
from ..slips.verdict import LineVerdict, Named
from .clauses import Clause
from .formula import shown
from .known import Known
from .passes import Judged
from .reading import Line
from .remarks import remark
from .verdicts import Verdict

MOST_SLIPS = 8
HOLDS = {"claim": "This line is true of the problem.", "arithmetic": "The arithmetic of this line holds."}
_SAYS = {
    "carried": "This line follows from the one that does not hold; it will change with it.",
    "aside": "Words, or a line that was replaced: not judged.",
}
_WHY = {
    "arithmetic": "The two sides of an equals sign do not come to the same number.",
    "scale": "The number is not that of the letter in this unit.",
    "not what the equation gives": "The number is not what the equation before it gives.",
    "conversion": "The two numbers are not the same quantity in two units.",
    "which way": "The size is right; the direction that the words give is not that of this force.",
}
_QUESTIONS = {
    "nothing explains it": (
        "This line could not be followed: nothing in the problem or in the lines before it gives this value.",
        "How was this value found?",
    ),
    "answer": (
        "This line could not be followed to its value, which is not the one that is asked for.",
        "Which lines lead to this value, and by which equation?",
    ),
    "unread": ("This line could not be followed.", "Can it be written in smaller steps?"),
}


def told(judged: Judged, line: Line, verdict: Verdict, known: Known, rules: Mapping[str, SlipRule]) -> LineVerdict:
    """The verdict on a line in words."""
    slips = _named(verdict, known, rules) if not verdict.accepted else ()
    says, question = _says(verdict, slips), ""
    if verdict.kind == "unclear":
        says, question = _QUESTIONS[verdict.why or "unread"]
    elif verdict.kind == "slips" and len(slips) > 1:
        question = rules[slips[0].slip].SAYS.question or _which(slips)
    if verdict.accepted:
        says = _accepted(judged, verdict)
    elif line.trouble:
        verdict.kind, says, question = (
            "unclear",
            f"This line could not be followed: {line.trouble}.",
            "Can it be written another way?",
        )
    note = remark(judged, line, verdict) if verdict.kind in ("holds", "carried") else ""
    return LineVerdict(
        line.number,
        line.text,
        "; ".join(filter(None, map(_read_as, line.clauses))),
        verdict.kind,
        says,
        note,
        slips,
        question,
        line.part,
        verdict.again,
        _uses(judged, verdict, known),
        verdict.since,
        verdict.checked if verdict.kind == "holds" else "",
        accepted=judged.accepted[line.number].line if verdict.accepted and line.number in judged.accepted else "",
    )


def _says(verdict: Verdict, slips: Sequence[Named]) -> str:
    if verdict.kind == "holds":
        return HOLDS[verdict.checked or "arithmetic"]
    if verdict.kind == "slips":
        sense = next((_WHY[each.why] for each in verdict.suspects if each.why == "which way"), "")
        return sense or (
            slips[0].says
            if slips
            else _WHY.get(
                verdict.suspects[0].why,
                "The value of this line is not the one that is asked for, and the lines before it do not give it.",
            )
        )
    return _SAYS.get(verdict.kind, "")


def _accepted(judged: Judged, verdict: Verdict) -> str:
    """What is said of a line that a person accepted, or that follows from one."""
    if verdict.since or verdict.number not in judged.accepted:
        return f"This line follows from line {verdict.since}, which a tutor accepted."
    because = judged.accepted[verdict.number].because.rstrip(".")
    return f"A tutor accepted this line: {because}." if because else "A tutor accepted this line."


def _read_as(clause: Clause) -> str:
    """A clause as it was read; words alone need no telling."""
    sides = [f"{side.before.lstrip('§')} {shown(side.expr)}".strip() for side in clause.sides if side.expr is not None]
    return " = ".join(sides)


def _named(verdict: Verdict, known: Known, rules: Mapping[str, SlipRule]) -> tuple[Named, ...]:
    """The slips of a line with their wording, the likeliest first."""
    out: dict[str, Named] = {}
    for suspect in verdict.suspects:
        for name in suspect.slips:
            if name in rules and name not in out and len(out) < MOST_SLIPS:
                out[name] = slip_named(rules[name], _spoilt(name, suspect.worlds, known, known.first, suspect.key))
    return tuple(out.values())


def _spoilt(name: str, worlds: frozenset[int], known: Known, account: Account, key: str) -> Spoilt:
    """The place where the slip was made, for the words of its hints."""
    found = next((known.slips[place].spoilt for place in sorted(worlds) if known.slips[place].name == name), None)
    return found or Spoilt(name, account, key if key in known.truth else "", "answer")


def _which(slips: Sequence[Named]) -> str:
    return f"Which of these was it: {'; or '.join(each.title[:1].lower() + each.title[1:] for each in slips[:3])}?"


def _uses(judged: Judged, verdict: Verdict, known: Known) -> tuple[str, ...]:
    """The quantities that a line states, by the keys of the account; of a wrong line that states none, those of the
    first line that rests on it.
    """
    keys = [each.key for claim in verdict.claims for each in claim.keys]
    keys += [each.key for each in verdict.suspects if each.key]
    if verdict.kind == "slips" and not keys:
        places = judged.state.places(verdict.suspects)
        later = (
            claim
            for claim in judged.state.claims
            if claim.line > verdict.number
            and claim.keys
            and (claim.value.blames & places or verdict.number in claim.value.deps)
        )
        keys = [each.key for claim in list(later)[:1] for each in claim.keys]
    return tuple(
        dict.fromkeys(
            key
            for key in keys
            if key in known.truth
            and not key.startswith(("*sum", "*trig", "*ratio", "*away", "*turn ", "*leg", "*x ", "*y "))
        )
    )
