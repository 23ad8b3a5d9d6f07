"""Which lines give an answer that nothing leads to: a bare number, or one made of numbers from nowhere. Blames nobody.

To tell of such a line whether it is right would let a student find an answer by trying numbers.
"""

from __future__ import annotations

from collections.abc import Sequence

from .answers import Answers
from .explained import Explained
from .given import names_it
from .passes import Judged
from .values import Claim
from .verdicts import Verdict


def bare_answers(judged: Judged, found: Sequence[Verdict], asked: Sequence[str]) -> frozenset[int]:
    """The numbers of these lines. Behind the first line that leads to an answer and holds there is none: an equation
    that an unknown was solved from, or a product, of numbers that are all explained.
    """
    answers, explained = Answers(judged.state), Explained(judged.state)
    out: set[int] = set()
    for line, verdict in zip(judged.state.lines, found, strict=True):
        made = any(map(_is_made, verdict.claims))
        shown = explained.line(line, made and verdict.kind in ("holds", "carried"))
        about = any(names_it(judged, answers, claim, key) for claim in verdict.claims for key in asked)
        about |= any(map(_of_the_joint, verdict.claims))
        if about and shown and made and verdict.kind == "holds":
            break
        blamed = verdict.kind in ("slips", "unclear") and not made
        if verdict.kind == "slips" and not blamed:
            continue  # a slip in a formula has its own proof
        nameless = not made and verdict.kind == "holds" and all(map(_is_nameless, verdict.claims))
        if about or nameless and verdict.claims or blamed and _of_nothing(verdict):
            out.add(verdict.number)
    return frozenset(out)


def _is_made(claim: Claim) -> bool:
    """Whether a line shows how a value is made, with numbers that were traced."""
    return claim.solved or claim.formula and not claim.value.free


def _is_nameless(claim: Claim) -> bool:
    """Whether a number says of nothing what it is, and is that of nothing."""
    return not (claim.keys or claim.name or claim.meaning.items or claim.meaning.role)


def _of_nothing(verdict: Verdict) -> bool:
    """Whether a line that is blamed says of nothing in the problem what it is: an answer is what it can be."""
    return not any(each.key for each in verdict.suspects) and not any(each.meaning.items for each in verdict.claims)


def _of_the_joint(claim: Claim) -> bool:
    """Whether a claim is true of the joint force, or of a part of it."""
    return claim.status == "true" and any(each.key.startswith("reaction") for each in claim.keys)
