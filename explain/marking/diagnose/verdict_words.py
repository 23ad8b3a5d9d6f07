"""Words for a verdict: of the line and the force, never of the person. Decides nothing."""

from __future__ import annotations

from collections.abc import Sequence

from ..reading import Reading, Unread, read_back
from ..slips.account import Account, Spoilt
from ..slips.slip import SlipRule
from ..slips.slip import named as slip_named
from ..slips.verdict import LineVerdict, Named
from .piece_verdict import Found, worst

_SAYS = {
    "holds": "This line holds.",
    "carried": "This line follows from the one that does not hold; it will change with it.",
    "aside": "Words, or a line that was replaced: not judged.",
}
_NOTES = {
    "rounding": "Right by its own figures; more figures on the way would bring it nearer.",
    "run-on": "The equals signs run on from one step to the next; the numbers are right.",
}
_WHY = {
    "numbers": "The two sides of an equals sign do not come to the same number.",
    "sense": "The size is right; the direction that the words give is not that of this force.",
}
_UNKNOWN = "This line is not true of the problem and does not follow from the lines before it."


def judged(reading: Reading, found: Sequence[Found], rules: Sequence[SlipRule], account: Account) -> LineVerdict:
    """The verdict on a whole line from those on its pieces."""
    verdict = worst(list(found))
    first = next((each for each in found if each.verdict == verdict), None)
    slips = named(first, rules, account) if first is not None and verdict == "slips" else ()
    states = tuple(dict.fromkeys(key for each in found for key in each.states))
    read_as = "; ".join(read_back(each) for each in reading.pieces)
    says, question = _SAYS.get(verdict, ""), ""
    if verdict == "slips":
        says = slips[0].says if slips else _WHY.get(first.why if first else "", _UNKNOWN)
        question = _question(slips)
    if verdict == "unclear":
        says, question = _unclear(reading, first)
    note = (
        next((_NOTES.get(each.note, each.note) for each in found if each.note), "")
        if verdict in ("holds", "carried")
        else ""
    )
    return LineVerdict(
        reading.number, reading.text, read_as, verdict, says, note, slips, question, reading.part, False, states
    )


def _unclear(reading: Reading, first: Found | None) -> tuple[str, str]:
    unread = next((each for each in reading.pieces if isinstance(each, Unread)), None)
    if unread is not None:
        return f"This line could not be followed: {unread.why}.", unread.ask
    if first is not None and first.why:
        if first.why.startswith("the letter"):
            return (
                f"This line could not be followed: it uses {first.why}, which stands for nothing yet.",
                "What does this letter stand for?",
            )
        return f"This line could not be followed: {first.why}.", "Can it be written in smaller steps?"
    return "This line could not be followed.", "Which quantity does this line work out?"


def named(found: Found, rules: Sequence[SlipRule], account: Account) -> tuple[Named, ...]:
    """The slips of a piece with their wording filled in."""
    made = [each for world in found.worlds if world.slips for each in (world.slips[-1], *world.slips[-1].also)]
    out = []
    for slip in found.slips:
        rule = next((each for each in rules if slip == each.SLIP), None)
        spoilt = next((each for each in made if each.slip == slip), None)
        if rule is not None:
            out.append(slip_named(rule, spoilt or Spoilt(slip, account, "", "answer")))
    return tuple(out)


def _question(slips: Sequence[Named]) -> str:
    if len(slips) < 2:
        return ""
    return f"Which of these was it: {'; or '.join(each.title[:1].lower() + each.title[1:] for each in slips[:3])}?"
