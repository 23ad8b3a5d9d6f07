"""Settles the suspicions of one pass: which are guilty by evidence, which a right answer clears, and on which line
each slip was made.
"""

from __future__ import annotations

import re
from collections.abc import Iterator


from .kinds import UNIT_KIND, kind_of
from .known import True_, is_bare, is_side
from .state import State
from .turns import SIGNS, to_its_sign
from .values import Claim, Suspect

_ABOUT_A_POINT = frozenset(
    "adding-arms wrong-pivot-distance wrong-datum arms-swapped chain-distance-not-added "
    "loads-merged-at-one-point".split()
)
_LEVER = re.compile(r"\barms?\b|lever|moment|torque|perp")
_WHOLE_BODY = re.compile(r"^\W*(?:the |her |his |my |whole )*(?:body ?weight|bw)\W*$")  # true as it stands
_PARTS = re.compile(
    r"\b(vertical\w*|horizontal\w*|upward|component|part|along|across|compress\w*|shear|normal|friction|[xy])\b"
)


class Settlement:
    """The suspicions of one pass, settled by what lines say alone."""

    def __init__(self, state: State) -> None:
        self.state, self.known = state, state.known

    def settle(self) -> None:
        """Each suspicion is guilty, clear or open; a guilty one stands on the line where its own quantity was made."""
        state = self.state
        self._one_part_for_the_whole()
        reached = {
            each.key
            for claim in state.claims
            if claim.status in ("true", "carried")
            for each in claim.keys
            if claim.status == "true" or each.key == "reaction"
        }
        clear = frozenset[int]().union(
            *(
                claim.value.blames
                for claim in state.claims
                if claim.status == "true" and any(self._ends(each.key) and not each.form for each in claim.keys)
            )
        )
        for place, each in enumerate(state.suspects):
            joint = each.key.startswith("reaction") and any(key.startswith("reaction") for key in reached)
            if (
                place not in clear
                and not each.strong
                and not each.soft
                and each.key
                and self._ends(each.key)
                and each.key not in reached
                and not joint
            ):
                each.strong = True
        needed = self._needed()
        for place, each in enumerate(state.suspects):
            if place in clear and (each.key or not each.strong) and not each.sticky:
                each.state = "clear"
            elif each.strong or place in needed and not each.soft:
                each.state = "guilty"
        for each in state.guilty():
            self._move(each)

    def _ends(self, key: str) -> bool:
        """Whether a quantity is an end of the working: an unknown, the joint force, what is asked."""
        return key in self.known.unknowns or key.startswith(("reaction", "*stress")) or key in self.state.hints.asked

    def _needed(self) -> frozenset[int]:
        """The suspicions without which a later big claim would not follow."""
        out: frozenset[int] = frozenset()
        for claim in self.state.claims:
            if claim.status == "carried" and any(
                self._ends(each.key)
                or each.key == "total"
                or each.key.startswith("*summoment")
                or each.key.endswith(".force")
                for each in claim.keys
            ):
                out |= claim.value.blames
        for place, each in enumerate(self.state.suspects):
            if each.strong:
                out |= frozenset().union(
                    *(
                        claim.value.blames
                        for claim in self.state.claims
                        if place in claim.value.blames and claim.line == each.line
                    )
                ) - {place}
        return out

    def _one_part_for_the_whole(self) -> None:
        """One part of the joint force given as the joint force."""
        state = self.state
        if "reaction" not in state.hints.asked or not {"reaction.right", "reaction.up"} <= self.known.truth.keys():
            return
        joint = [
            claim for claim in state.claims if claim.meaning.role == "joint" and claim.status in ("true", "carried")
        ]
        if not joint or any(
            each.key == "reaction"
            for claim in state.claims
            if claim.status in ("true", "carried")
            for each in claim.keys
        ):
            return
        last = joint[-1]
        words = f"{last.words} {last.name}".lower()
        sideways = any(
            each.key == "reaction.right" or each.key == "*level" for claim in state.claims for each in claim.keys
        )
        whole = (
            re.match(r"^(R|J|JRF|R_?j(oint)?|F_?(R|j|J|joint))$", last.name)
            or re.search(r"joint force|total|resultant|joint reaction", f"{words} {state.raw_of(last.line)}")
            or not sideways
        )
        if (
            whole
            and not _PARTS.search(words)
            and not re.search(r"\b(up|upright|sideways|vert\w*|horiz\w*)\b", words)
            and any(each.key in ("reaction.up", "reaction.right") for each in last.keys)
        ):
            state.suspect(
                Suspect(
                    last.line,
                    ["horizontal-part-forgotten", "reaction-along-bone"],
                    "",
                    True,
                    "one part for the whole",
                    deps=last.value.deps,
                    sticky=True,
                ),
                last.value,
            )

    def _earlier(self, line: int) -> Iterator[tuple[Claim, list[True_]]]:
        for claim in sorted(self.state.claims, key=lambda each: each.line):
            if claim.line < line:
                yield claim, self.known.true_of(claim.value.f, claim.unit)

    def _move(self, suspect: Suspect) -> None:
        """Back to the first line that has the slip's own quantity, and that nothing true excuses."""
        if suspect.sticky:
            return
        if suspect.worlds and suspect.slips[0] not in SIGNS:
            self._to_its_quantity(suspect)
        suspect.line = min(
            (
                each.line
                for each in self.state.suspects
                if each.state == "open" and not each.soft and each.line < suspect.line
                if each.key == suspect.key and each.worlds & suspect.worlds
                if each.line in suspect.deps or abs(each.number - suspect.number) <= 1e-3 * abs(suspect.number)
            ),
            default=suspect.line,
        )
        if suspect.worlds and suspect.line == suspect.at and suspect.slips[0] in _ABOUT_A_POINT:
            line = next(
                (
                    claim.line
                    for claim, _ in self._earlier(suspect.line)
                    if claim.status == "none"
                    and not claim.value.free
                    and claim.line in suspect.deps
                    and UNIT_KIND.get(claim.value.unit) in ("length", "moment")
                ),
                0,
            )
            if line:
                suspect.line = line
                suspect.slips += [name for name in ("wrong-pivot-distance", "adding-arms") if name not in suspect.slips]
        if suspect.why.startswith("kg"):
            for claim, _ in self._earlier(suspect.line):
                keys = self.known.true_of(claim.value.f)
                if (
                    claim.line in suspect.deps
                    and keys
                    and all(each.form == "kg" for each in keys)
                    and not any(kind_of(each.key) == "mass" for each in keys)
                ):
                    suspect.line = claim.line
                    break
        if SIGNS & {*suspect.slips[:2]}:
            to_its_sign(self.state, suspect)

    def _to_its_quantity(self, suspect: Suspect) -> None:
        for claim, keys in self._earlier(suspect.line):
            if any(each.key.startswith("*away") for each in keys) and not _LEVER.search(claim.words.lower()):
                continue
            if keys and suspect.key.startswith("reaction") and claim.meaning.role != "joint":
                continue
            if keys and self.state.hints.from_elsewhere(claim.words):
                continue
            if any(self.state.hints.is_its_part(each.key, claim.meaning) for each in keys):
                continue
            if claim.value.source == "trig" or claim.value.source in self.known.data:
                continue
            if (
                "stance-leg-not-removed" in suspect.slips[:2]
                and any(each.key == "*person.weight" for each in keys)
                and not _WHOLE_BODY.search(claim.words.lower())
                or self._one_of_many(suspect, claim, keys)
            ):
                suspect.line = claim.line
                return
            own = [
                each
                for each in self.known.wrong_of(claim.value.f, claim.unit)
                if each.slip in suspect.worlds and self.state.hints.item_of(each.key) & claim.meaning.items
            ]
            if (
                "limb-share-forgotten" in suspect.slips[:2]
                and own
                and claim.line in suspect.deps
                and not any(self.state.hints.item_of(each.key) & claim.meaning.items for each in keys)
            ):
                suspect.line = claim.line
                return
            chained = "chain-distance-not-added" in suspect.slips[:2]
            if any(
                (not is_side(each.key) and (not is_bare(each.key) or not chained))
                and (not each.form or kind_of(each.key) == "mass")
                for each in keys
            ):
                continue
            hits = [each for each in self.known.wrong_of(claim.value.f, claim.unit) if each.slip in suspect.worlds]
            if any(
                claim.line in suspect.deps
                or each.key in (self.known.slips[each.slip].touched, suspect.key)
                or suspect.slips[0] == "mass-for-weight"
                for each in hits
            ):
                suspect.line = claim.line
                return

    def _one_of_many(self, suspect: Suspect, claim: Claim, keys: list[True_]) -> bool:
        """What one side makes, where both sides were meant: the first line with it."""
        if "limb-share-forgotten" not in suspect.slips[:2] or claim.line not in suspect.deps or not keys:
            return False
        both = any(
            key.startswith("*moment ")
            and " one " not in key
            and any(
                each.count > 1 and each.name in key and each.name not in self.state.hints.unknown_items
                for each in self.known.first.items
            )
            for key in self.state.made
        )
        return (
            both and any(" one " in each.key for each in keys) and not any(each.key.endswith(".force") for each in keys)
        )
