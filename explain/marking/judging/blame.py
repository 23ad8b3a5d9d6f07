"""The judgement by answers: where an answer is right its lines are presumed right; where one is wrong, some line is
at fault.
"""

from __future__ import annotations

import re
from collections.abc import Sequence


from .answers import Answer
from .doubts import Doubts
from .evidence import of_another
from .fault import Fault
from .kinds import UNIT_KIND
from .state import State
from .stops_short import StopsShort
from .values import Claim, Suspect

_PLAIN = re.compile(
    r"(?:[^=]*?[=:])?[^=]*?(?<![\w.])[\d.]+\s*[a-zA-Z/²^0-9]*"
    r"(?:\s*[*x×·⋅+/÷−-]\s*[\d.]+\s*[a-zA-Z/²^0-9]*){1,3}\s*=\s*[\d.]+\s*[a-zA-Z "
    r"]*\W*"
)


class Blame:
    """One pass judged by its answers."""

    def __init__(self, state: State, answers: Sequence[Answer], groups: frozenset[str]) -> None:
        self.state, self.known, self.answers = state, state.known, answers
        self.presumed = 0  # the last line of a working whose answers are all right
        self.all_right = bool(answers) and {each.asked for each in answers if each.status == "right"} >= groups
        self.right = [each.claim for each in answers if each.status == "right"]
        self.wrong = [each.claim for each in answers if each.status == "wrong"]
        self.sure = frozenset[int]().union(
            *(claim.value.deps | {claim.line} for claim in self.right if self._traced(claim))
        )
        self.fault = Fault(state, self.sure)
        self.questions = self.fault.questions  # lines that are asked about

    def _traced(self, claim: Claim) -> bool:
        return bool(self.known.true_of(claim.value.f, claim.unit))

    def judge(self) -> None:
        """Clear what right answers rest on; look for the fault behind a wrong one."""
        if self.right and not self.wrong:
            self._presume()
        if not self.wrong:
            self._ask_about_sums()
        if self.wrong:
            first = min(self.wrong, key=lambda each: each.line)
            guilty = [each for each in self.state.guilty() if each.line <= first.line]
            if guilty:
                self._back(min(guilty, key=lambda each: each.line), first)
            else:
                self.fault.find(first)
        short = StopsShort(self.state, self.answers, self.fault)
        short.of_newtons()
        self.questions |= set(Doubts(self.state, self.answers, self.fault.excused()).lines())
        short.of_the_pull()
        for answer in self.answers:
            if answer.status == "other" and (
                not answer.claim.value.blames or not any(each.line <= answer.claim.line for each in self.state.guilty())
            ):
                self._other(answer)

    def _presume(self) -> None:
        end = max(each.line for each in self.right)
        parts = {each.claim.line for each in self.answers if each.status == "part"}
        self.presumed = end if self.all_right else 0
        for each in self.state.guilty():
            if each.why in ("arithmetic", "not what the equation gives"):
                if (each.line in self.sure or each.line <= end and self.all_right) and each.slips[0] not in (
                    "radian-mode",
                    "grad-mode",
                ):
                    each.state = "clear"
                    self.questions |= {each.line} if self._plainly(each) else set()
            elif not each.sticky and (
                self.all_right
                and each.at <= end
                and not self._by_formula(each)
                or {each.line, each.at} <= self.sure
                and each.line not in parts
            ):
                each.state = "clear"

    def _by_formula(self, suspect: Suspect) -> bool:
        """Whether a suspicion is of a formula that the line itself shows, every number of it traced."""
        places = self.state.places([suspect])
        own = [each for each in self.state.on(suspect.at) if places & each.value.blames]
        return any(each.formula and not each.value.free for each in own)

    def _ask_about_sums(self) -> None:
        """Sides that do not agree, that nothing explains and no answer needs to be wrong for: perhaps misread, so a
        question.
        """
        needed = frozenset[int]().union(*(each.claim.value.blames for each in self.answers if each.status != "right"))
        for place, each in enumerate(self.state.suspects):
            if (
                each.state == "guilty"
                and place not in needed
                and each.why == "arithmetic"
                and each.slips == ["arithmetic-slip"]
                and each.doubtful
                and not self._plainly(each)
            ):
                each.state = "open"
                self.questions.add(each.line)

    def _plainly(self, suspect: Suspect) -> bool:
        """False arithmetic of plain numbers, which nothing but a slip explains."""
        raw = re.sub(r"[()\[\]]+", " ", re.sub(r"\)\s*\(", " * ", self.state.lines[suspect.line - 1].text))
        return bool(_PLAIN.fullmatch(raw))

    def _back(self, suspect: Suspect, wrong: Claim) -> None:
        """Blame goes back from a slip to the line that it rests on, where that is no true quantity and nothing true
        rests on it.
        """
        excused, path = self.fault.excused(), wrong.value.deps | suspect.deps
        if "limb-share-forgotten" in suspect.slips[:2] and self._one_side(suspect, path):
            return
        for each in sorted(self.state.suspects, key=lambda each: each.line):
            if (
                each.state == "open"
                and not each.soft
                and each.line < suspect.line
                and (each.line in path or not suspect.deps)
                and each.line not in excused
                and set(each.slips[:3]) & set(suspect.slips[:3])
            ):
                each.state, each.strong = "guilty", True
                return
        if suspect.why in ("arithmetic", "conversion", "scale") or suspect.sticky:
            return
        for line in sorted(each for each in suspect.deps if each < suspect.line and each not in excused):
            for claim in self.state.on(line):
                plain = (
                    claim.status == "none"
                    and not claim.value.free
                    and claim.value.source != "trig"
                    and UNIT_KIND.get(claim.value.unit) in ("length", "moment", "force", None)
                )
                if (
                    plain
                    or suspect.worlds
                    and not claim.value.free
                    and set(of_another(self.state, claim, suspect.worlds)) & set(suspect.slips)
                ):
                    suspect.line = line
                    return

    def _one_side(self, suspect: Suspect, path: frozenset[int]) -> bool:
        """The first line with what one side makes, where no line has what both make."""
        own = [
            claim
            for claim in sorted(self.state.claims, key=lambda each: each.line)
            if claim.line in path and not claim.value.free
        ]
        first = next(
            (
                claim.line
                for claim in own
                if claim.line < suspect.line
                and (keys := self.fault.keys_of(claim))
                and all(" one " in each.key for each in keys)
            ),
            0,
        )
        both = any(
            " one " not in each.key
            and each.key.startswith(("*turning", "*moment", "*upright", "*level"))
            and any(item.count > 1 and item.name in each.key for item in self.known.first.items)
            for claim in own
            for each in self.fault.keys_of(claim)
        )
        if not first or both:
            return False
        suspect.line = first
        suspect.slips = ["limb-share-forgotten", *(name for name in suspect.slips if name != "limb-share-forgotten")]
        return True

    def _other(self, answer: Answer) -> None:
        """An asked quantity by name whose value is true of another thing: a slip's own answer is told, else it is
        asked about.
        """
        claim, group = answer.claim, answer.asked
        keys = {
            key
            for key in self.known.truth
            if key == group or group.startswith("reaction") and key.startswith("reaction")
        }
        slips = self.known.slips
        found = sorted(
            (
                (slips[each.slip].common + 3 * (slips[each.slip].touched == each.key), each.slip)
                for each in self.known.wrong_of(claim.value.f, claim.unit)
                if each.key in keys
            ),
            reverse=True,
        )
        if found and not claim.value.free:
            self.fault.accuse(
                claim.line,
                list(dict.fromkeys(slips[place].name for _, place in found)),
                frozenset(place for _, place in found),
                "true of another thing",
                claim,
            )
        else:
            self.questions.add(claim.line)
