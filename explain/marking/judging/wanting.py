"""What a right answer still wants: a direction, a line its angle starts from, fewer figures. Judges no number: each
is a comment that costs nothing.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence

from ..slips.slip import SlipRule
from .passes import Judged
from .values import Claim
from .verdicts import Verdict

MOST_FIGURES = 6  # no datum of a class has more (common practice, no source)
_ANGLES = ("*angle reaction", "*direction reaction", "reaction.direction")
_PARTS = frozenset(("reaction.right", "reaction.up"))
_WAYS = re.compile(
    r"\b(up|down|left|right|back|forw|out|in|over|opp|hoch|unten|links|rechts|ned|oppover|nedover)\w*\b|[↑↓←→]|above|below|horiz|vertical|level|compress|push|pull|toward|away|lateral|medial|anterior|posterior",
    re.I,
)


def wants(
    judged: Judged, lines: Sequence[Verdict], asked: Sequence[str], rules: Sequence[SlipRule]
) -> Mapping[int, tuple[str, str]]:
    """By line number what an answer that holds still wants: the name of the slip, and its own words, nothing of its
    hints.
    """
    says = {rule.SLIP: rule.SAYS.says for rule in rules}
    held = [claim for each in lines if each.kind == "holds" for claim in each.claims if claim.status == "true"]
    found = dict(_figures(judged, held, asked)) | dict(_angle(judged, held))
    if "reaction" in asked:
        found |= dict(_direction(judged, held))
    return {line: (slip, says[slip]) for line, slip in found.items() if slip in says}


def _told(judged: Judged, claim: Claim) -> bool:
    return bool(_WAYS.search(judged.state.lines[claim.line - 1].text))


def _about_joint(claim: Claim) -> bool:
    return any(each.key.startswith(("reaction", *_ANGLES)) for each in claim.keys)


def _direction(judged: Judged, held: Sequence[Claim]) -> Iterator[tuple[int, str]]:
    """The size of the joint force, where no line has its parts, an angle or a word for where it points."""
    keys = {each.key for claim in held for each in claim.keys}
    sizes = [
        claim.line
        for claim in held
        if any(each.key == "reaction" for each in claim.keys) and claim.meaning.role == "joint"
    ]
    told = any(_told(judged, claim) for claim in held if _about_joint(claim))
    if sizes and not told and not keys & {*_ANGLES} and not keys >= _PARTS:
        yield sizes[-1], "direction-missing"


def _angle(judged: Judged, held: Sequence[Claim]) -> Iterator[tuple[int, str]]:
    """The last angle of the joint force, where no line says from where it is counted."""
    found = [claim for claim in held if any(each.key in _ANGLES for each in claim.keys)]
    if found and not any(_told(judged, claim) for claim in found):
        yield found[-1].line, "angle-reference-not-stated"


def _figures(judged: Judged, held: Sequence[Claim], asked: Sequence[str]) -> Iterator[tuple[int, str]]:
    for claim in held:
        figures = f"{abs(claim.value.number):.12g}".replace(".", "").lstrip("0")
        if (
            claim.shown
            and claim.value.half
            and len(figures) > MOST_FIGURES
            and {each.key for each in claim.keys} & {*asked}
        ):
            yield claim.line, "figures-overstated"
