"""What a working gives for each quantity that is asked: the last claim that is called so, and whether it is right.
Blames nobody.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Literal

import numpy as np

from .called import Called
from .kinds import FACTORS, KILOGRAMS, UNIT_KIND, kind_of
from .known import True_
from .state import State
from .values import Claim

Status = Literal["right", "part", "other", "wrong"]
CLOSE = 0.006
_ALONG = re.compile(r"\b(along|compress\w*|axial|press\w*)\b")
_ACROSS = re.compile(r"\b(across|shear\w*)\b")
_OF_A_LOAD = re.compile(r"\bweights?\b|\bloads?\b|component of|part of")
_WHOLE = re.compile(r"^(?:R|J|JRF|F_?[jR])$")
_WAYS = re.compile(r"\b(?:up|down|left|right|vert\w*|horiz\w*|sideways)\b|[↑↓←→]")
_UPRIGHT = re.compile(r"from (?:straight )?(?:down|up)\b|\bvertical\b|\bupright\b|hang\w* down")
_LEVEL = re.compile(r"horiz|level|complement|vertical|90\s*[-−–]")


@dataclass(frozen=True, slots=True, eq=False)
class Answer:
    """An answer: what was asked, the claim, and whether it is right, a part of it, true of another thing, or wrong."""

    asked: str
    claim: Claim
    status: Status


class Answers:
    """The answers of one pass."""

    def __init__(self, state: State) -> None:
        self.state, self.known, self.hints = state, state.known, state.hints
        self.called = Called(state)
        self.level = bool(_LEVEL.search("\n".join(each.text for each in state.lines).lower()))

    def all(self) -> list[Answer]:
        """The answers in the order in which they are asked; none where nothing is called so."""
        claims = [
            each
            for each in self.state.claims
            if (each.shown or each.solved) and np.isfinite(each.value.number) and abs(each.value.number) > 1e-12
        ]
        out: list[Answer] = []
        done: set[str] = set()
        for key in [each for each in self._asked() if each in self.known.truth]:
            part = self._part_of_joint(key, claims)
            if part is not None:
                out.append(part)
                continue
            group = "reaction" if key.startswith("reaction") else key
            if group in done:
                continue
            done.add(group)
            found = self.called.claims(key, group, claims)
            answer = self._answer(key, group, found) if found else None
            out += [answer] if answer and not self._of_another(answer) else []
        return out

    def _of_another(self, answer: Answer) -> bool:
        """A number without a name that is wrong for this, and right for something else that is asked."""
        others = [key for key in self._asked() if answer.asked not in (key, key.partition(".")[0])]
        nameless = not answer.claim.meaning.role and not answer.claim.name and not answer.claim.formula
        return answer.status == "wrong" and nameless and bool(self.fits(answer.claim, others, CLOSE))

    def _asked(self) -> Iterable[str]:
        return self.state.hints.asked_order

    def parts_right(self) -> bool:
        """Whether each of several parts of the joint force that are asked is given rightly."""
        keys = [each for each in self._asked() if each.startswith("reaction") and each in self.known.truth]
        told = [each for each in self.state.claims if each.shown or each.solved]
        return len(keys) < 2 or all(any(self.fits(each, [key], CLOSE) for each in told) for key in keys)

    def _part_of_joint(self, key: str, claims: Sequence[Claim]) -> Answer | None:
        """The joint force along or across the bone, by those words."""
        if key not in ("reaction.along", "reaction.across"):
            return None
        pattern = _ALONG if key.endswith("along") else _ACROSS
        own = [
            each
            for each in claims
            if pattern.search(f"{each.words} {each.name}".lower())
            and UNIT_KIND.get(each.unit, "force") == "force"
            and (each.unit or each.meaning.role == "joint")
            and not (each.meaning.items and each.meaning.items <= self.hints.pulls)
            and not _OF_A_LOAD.search(each.words.lower())
        ]
        last = next(
            (each for each in reversed(claims) if each.meaning.role == "joint" and self.fits(each, [key], CLOSE)),
            own[-1] if own else None,
        )
        if last is None:
            return None
        if self.fits(last, [key], CLOSE):
            return Answer(key, last, "right")
        if self.fits(last, [each for each in self.known.truth if each.startswith("reaction")], 2 * CLOSE):
            return Answer(key, last, "part")
        wrong = not self.known.true_of(last.value.f, last.unit) and not last.value.free
        return Answer(key, last, "wrong" if wrong else "other")

    def _related(self, key: str) -> list[str]:
        """Every true quantity that may be called by the words of what is asked."""
        if key.startswith("reaction"):
            return [each for each in self.known.truth if each.startswith(("reaction", "*reaction"))]
        items, kind = self.hints.item_of(key), kind_of(key)
        if kind != "force":
            return [key]
        more = [
            each
            for each in self.known.truth
            if each != key and items and self.hints.item_of(each) == items and kind_of(each) == kind
        ]
        return [
            key,
            *more,
            *(
                each
                for each in self.known.truth
                if each.startswith(("*all", "*sumpull")) and items & self.hints.item_of(each)
            ),
        ]

    def _answer(self, key: str, group: str, found: Sequence[Claim]) -> Answer | None:
        related = self._related(key)
        main = {each for each in self._asked() if each.startswith("reaction")} if group == "reaction" else {key}
        hits = [
            (claim, {each for each in self.fits(claim, related, CLOSE) if _of_axis(claim, each)}) for claim in found
        ]
        right = [claim for claim, own in hits if own & main and not self._part_for_whole(claim, own & main)]
        if self._whole_is_wrong(last := hits[-1][0], hits[-1][1], right):
            return Answer(group, last, "wrong")
        stated = {claim.name for claim, _ in hits if claim.shown}
        right = [claim for claim in right if claim.shown or claim.name not in stated]
        last, own = hits[-1]
        if right and (own or last in right):
            return Answer(group, right[-1], "right")
        if own and (not last.value.free or self.fits(last, related, CLOSE / 4)):
            return Answer(group, last, "part")
        true = [each for each in self.known.true_of(last.value.f, last.unit) if not each.key.startswith("*alone")]
        if (
            true
            and all(each.form == "kg" for each in true)
            and last.unit not in KILOGRAMS
            and not self._in_newtons(found, true)
        ):
            return Answer(group, last, "wrong")
        if true and last.meaning.role and any(self.hints.speaks(each.key, last.meaning) for each in true):
            return Answer(group, last, "part")
        if true and last.meaning.role == "pull" and last.meaning.items and last.formula:
            return Answer(group, last, "right" if right else "wrong")
        if true and any(each.form != "complement" for each in true):
            other = (
                group == "reaction"
                and (last.meaning.role == "joint" or self.called.near_the_joint(last))
                and not any(each.key in self.known.unknowns or each.key in self.hints.asked for each in true)
            )
            return Answer(group, last, "right" if right else "other" if other else "part")
        return Answer(group, right[-1] if right else last, "right" if right else "wrong")

    def _whole_is_wrong(self, last: Claim, own: set[str], right: Sequence[Claim]) -> bool:
        """Parts of the joint force are right, and the whole that closes the working is not."""
        return (
            "reaction" in self.hints.asked
            and last.meaning.role == "joint"
            and not own
            and not last.meaning.axis
            and bool(_WHOLE.match(last.name))
            and last.status in ("none", "suspect")
            and bool(right)
            and all(each.meaning.axis for each in right)
        )

    @staticmethod
    def _in_newtons(found: Sequence[Claim], kilograms: Sequence[True_]) -> bool:
        """Whether the same is given with its g too."""
        keys = {each.key for each in kilograms}
        return any(key.key in keys and not key.form for claim in found for key in claim.keys)

    def _part_for_whole(self, claim: Claim, keys: set[str]) -> bool:
        """A number that is near one part of the joint force by its figures alone, under the letter of the whole."""
        if (
            "reaction" in keys
            or claim.meaning.axis
            or not _WHOLE.match(claim.name)
            or "reaction" not in self.hints.asked
        ):
            return False
        return not {each.key for each in claim.keys} & keys and not _WAYS.search(self.state.raw_of(claim.line))

    def fits(self, claim: Claim, keys: Iterable[str], within: float) -> list[str]:
        """The quantities that a number is in size, by any g that is taught."""
        number, half, unit = abs(claim.value.number), claim.value.half, claim.unit
        if unit == "BW":
            weight = float(self.known.truth.get("*person.weight", np.zeros(1))[0])
            number, half, unit = number * weight, half * weight, "N"
        return [
            key
            for key in keys
            if key in self.known.truth and self._is(number, half, unit, key, within, self._turned(claim, key))
        ]

    def _turned(self, claim: Claim, key: str) -> bool:
        """Whether an angle may be meant that completes the asked one to 90 degrees."""
        stated = key in self.known.from_upright and _UPRIGHT.search(self.state.raw_of(claim.line))
        return self.level and not stated and not self.state.to_the_level(claim.line)

    def _is(self, number: float, half: float, unit: str, key: str, within: float, complement: bool) -> bool:
        kind = kind_of(key)
        sizes = {abs(float(self.known.truth[key][0]))} | {
            abs(found[key]) for found in self.state.trace.sources.others if key in found
        }
        if kind == "angle":
            if unit not in ("deg", ""):
                return False
            sizes |= {turned for size in list(sizes) for turned in (abs(180 - size), abs(360 - size)) if size > 90} | (
                {abs(90 - size) for size in list(sizes)} if complement else set()
            )
            return any(abs(size - number) <= max(half, 0.6) for size in sizes)
        factors = (
            [FACTORS[kind][unit]]
            if unit in FACTORS[kind]
            else []
            if unit and unit != "%"
            else list(FACTORS[kind].values())
            if kind != "mass"
            else [1.0]
        )
        if kind == "force" and unit in ("kg", "kgf"):
            factors = [*factors, 1 / self.known.g_written]
        if kind == "stress" and not unit:
            factors = [1e-4, 1.0, 1e-3, 1e-6]
        return any(
            abs(number - size * factor) <= max(half * 1.1, within * size * factor)
            for size in sizes
            for factor in factors
        )


def _of_axis(claim: Claim, key: str) -> bool:
    """Whether a claim of one part of a force may be this quantity: a part is not the whole."""
    return not (claim.meaning.axis and claim.meaning.role == "joint" and key == "reaction")
