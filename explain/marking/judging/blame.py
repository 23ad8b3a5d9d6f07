"""The judgement by answers: where an answer is right its lines are presumed right; where one is wrong, some line is
at fault.
"""

from __future__ import annotations

import re
from collections.abc import Sequence


import numpy as np

from .answers import Answer
from .kinds import FACTORS, KILOGRAMS, UNIT_KIND, kind_of
from .known import True_, is_bare, pattern
from .mending import undone
from .state import State
from .values import Claim, Suspect

_PLAIN = re.compile(
    r"(?:[^=]*?[=:])?[^=]*?(?<![\w.])[\d.]+\s*[a-zA-Z/²^0-9]*"
    r"(?:\s*[*x×·⋅+/÷−-]\s*[\d.]+\s*[a-zA-Z/²^0-9]*){1,3}\s*=\s*[\d.]+\s*[a-zA-Z "
    r"]*\W*"
)

_NO_EXCUSE = ("*away", "*turn ", "*ratio")  # true of another point than the pivot
_PART = re.compile(r"component|part|perp|vertical|horizontal|turning|\bside|alone|each|⊥")


class Blame:
    """One pass judged by its answers."""

    def __init__(self, state: State, answers: Sequence[Answer], groups: frozenset[str]) -> None:
        self.state, self.known, self.answers = state, state.known, answers
        self.questions: set[int] = set()  # lines whose answer is not right though nothing shows why
        self.presumed = 0  # the last line of a working whose answers are all right
        self.all_right = bool(answers) and {each.asked for each in answers if each.status == "right"} >= groups
        self.right = [each.claim for each in answers if each.status == "right"]
        self.wrong = [each.claim for each in answers if each.status == "wrong"]
        self.sure = frozenset[int]().union(
            *(claim.value.deps | {claim.line} for claim in self.right if self._traced(claim))
        )

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
                self._find(first)
        self._kilograms()
        self._doubt()
        for answer in self.answers:
            if (
                answer.status == "part"
                and self._a_moment(answer)
                and not any(each.line <= answer.claim.line for each in self.state.guilty())
            ):
                self._accuse(
                    answer.claim.line,
                    ["stopped-at-moment", "unit-label-wrong", "divide-one-term"],
                    frozenset(),
                    "a moment that is called the pull",
                    answer.claim,
                )
            if answer.status == "part" and self._only_a_part(answer) and not self.state.guilty():
                self.questions.add(answer.claim.line)
            if answer.status == "other" and (
                not answer.claim.value.blames or not any(each.line <= answer.claim.line for each in self.state.guilty())
            ):
                self._other(answer)

    def _doubt(self) -> None:
        """Behind a wrong answer, ask about what stands before the first line at fault and is not known to be true: a
        formula that is no quantity of the problem, or one that is true of another thing than the words say.
        """
        wrong = [each.claim for each in self.answers if each.status in ("wrong", "other")]
        if not wrong:
            return
        guilty = [each.line for each in self.state.guilty()]
        end = min(guilty, default=max(each.line for each in wrong) + 1)
        excused = self._excused()
        for each in self.state.guilty():
            if each.slips and each.slips[0].endswith("left-out"):
                self.questions |= {claim.line for claim in self.state.claims if self._may_be_the_sum(claim, each)}
        for line in {each.line for each in self.state.claims if each.line < end} - excused:
            own = self.state.on(line)
            known = any(each.status == "true" for each in own)
            if not known and any(map(self._is_no_quantity, own)) or any(map(self._is_of_another, own)):
                self.questions.add(line)

    def _may_be_the_sum(self, claim: Claim, left_out: Suspect) -> bool:
        """The moment of one thing, with no name, from which a fault goes on where another that turns the same way is
        left out: perhaps it was meant to be that of all.
        """
        moments = self.known.truth
        without = {f"*moment {self.known.slips[place].item}" for place in left_out.worlds}
        return (
            claim.line in left_out.deps
            and claim.line < left_out.line
            and claim.status == "true"
            and claim.meaning.kinds == {"moment"}
            and not claim.meaning.items
            and any(
                moments[one.key][0] * moments[other][0] > 0
                for one in claim.keys
                for other in without
                if one.key.startswith("*moment ") and other in moments
            )
        )

    @staticmethod
    def _is_no_quantity(claim: Claim) -> bool:
        return (
            claim.status in ("none", "suspect")
            and claim.value.source != "trig"
            and claim.unit != "deg"
            and (claim.formula or claim.solved or bool(claim.unit))
        )

    def _is_of_another(self, claim: Claim) -> bool:
        """Whether what is true of one thing is told of another: neither its thing nor its kind fits the words."""
        meaning, keys = claim.meaning, [each.key for each in claim.keys]
        if claim.status != "true" or not claim.formula or not meaning.kinds or not keys:
            return False
        if meaning.role:
            return not any(self.state.hints.speaks(key, meaning) for key in keys)
        return len(meaning.items) == 1 and not any(
            self.state.hints.item_of(key) & meaning.items or key.startswith(("*sum", "total", "*weights"))
            for key in keys
        )

    def _kilograms(self) -> None:
        """A force that is asked for, and left in kilograms to the end."""
        for answer in self.answers:
            claim = answer.claim
            if (
                answer.status == "right"
                and claim.unit == "kg"
                and answer.asked in self.known.truth
                and kind_of(answer.asked) == "force"
                and any(each.form == "kg" for each in claim.keys)
                and not any(kind_of(each.key) == "mass" for each in claim.keys)
                and not self._in_newtons_later(claim)
            ):
                self._accuse(
                    claim.line,
                    ["kilogram-answer", "mass-for-weight", "unit-label-wrong"],
                    frozenset(),
                    "a force in kilograms",
                    claim,
                )

    @staticmethod
    def _a_moment(answer: Answer) -> bool:
        """The last value called the pull is a moment."""
        claim = answer.claim
        return (
            claim.meaning.role == "pull"
            and bool(claim.name)
            and bool(claim.keys)
            and all(kind_of(each.key) == "moment" for each in claim.keys)
        )

    def _in_newtons_later(self, claim: Claim) -> bool:
        keys = {each.key for each in claim.keys}
        return any(
            each.line >= claim.line and each is not claim and any(key.key in keys and not key.form for key in each.keys)
            for each in self.state.claims
        )

    def _only_a_part(self, answer: Answer) -> bool:
        """The last line calls the pull what is only a part of it, or what one force alone asks of it."""
        claim = answer.claim
        if (
            claim.meaning.role != "pull"
            or claim.meaning.axis
            or claim.name[-1:] in tuple("xyXYhvHV")
            or _PART.search(self.state.raw_of(claim.line))
            or claim.line < self.state.lines[-1].number - 1
        ):
            return False
        return bool(claim.keys) and all(
            each.key.startswith(("*turning", "*level", "*upright", "*along", "*across")) for each in claim.keys
        )

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

    def _keys(self, claim: Claim) -> list[True_]:
        return self.known.true_of(claim.value.f, claim.unit)

    def _excused(self) -> frozenset[int]:
        """Lines on whose value something true rests."""
        out = set(self.sure)
        for claim in self.state.claims:
            if (
                claim.status == "true"
                and not claim.value.free
                and (
                    not claim.meaning.role
                    or any(self.state.hints.speaks(each.key, claim.meaning) for each in claim.keys)
                )
                and not all(is_bare(each.key) or each.key.startswith(_NO_EXCUSE) for each in claim.keys)
            ):
                out |= claim.value.deps - {claim.line}
        return frozenset(out)

    def _accuse(self, line: int, names: Sequence[str], worlds: frozenset[int], why: str, claim: Claim) -> None:
        names = names or undone(self.state, claim.case)
        if not names:  # nothing but a wrong answer speaks against it: a question
            self.questions.add(line)
            return
        place = self.state.suspect(
            Suspect(line, list(names), "", True, why, worlds, claim.value.deps, state="guilty"), claim.value
        )
        self.state.suspects[place].at = line

    def worlds_of(self, claim: Claim) -> tuple[list[str], frozenset[int]]:
        """The slips whose answer a wrong answer is: by its formula, else by its figures."""
        asked = {
            key
            for key in self.known.truth
            if key in self.state.hints.asked or key in self.known.unknowns or key.startswith("reaction")
        }
        slips = self.known.slips
        found = [
            (slips[each.slip].common + 2 * (slips[each.slip].touched == each.key), each.slip)
            for each in self.known.wrong_of(claim.value.f, claim.unit)
            if each.key in asked
        ]
        if not found:
            found = [
                (slip.common, place)
                for place, slip in enumerate(slips)
                for key, row in slip.rows.items()
                if key in asked
                and (not claim.meaning.role or self.state.hints.speaks(key, claim.meaning))
                and self._figures(claim, key, float(row[0]))
            ]
        found.sort(key=lambda each: -each[0])
        return list(dict.fromkeys(slips[place].name for _, place in found)), frozenset(place for _, place in found)

    @staticmethod
    def _figures(claim: Claim, key: str, size: float) -> bool:
        factor = FACTORS[kind_of(key)].get(claim.unit, 1.0)
        return abs(abs(size) * factor - abs(claim.value.number)) <= claim.value.half * 1.1 + 0.004 * abs(
            claim.value.number
        )

    def _find(self, wrong: Claim) -> None:
        """The first line that the answer rests on whose formula is no true quantity; else a question."""
        excused, (names, worlds) = self._excused(), self.worlds_of(wrong)
        path = wrong.value.deps | {wrong.line}
        if (
            wrong.value.free
            or len(path) == 1
            or any(
                each.value.free and each.formula and each.meaning.kinds for line in path for each in self.state.on(line)
            )
        ):
            path = frozenset(range(1, wrong.line + 1))
        path = frozenset(line for line in path if line <= wrong.line)
        if self._complement(path, names, worlds) or self._without_g(wrong, path):
            return
        for line in sorted(path):
            if (line not in excused or line == wrong.line) and self._at(line, wrong, names, worlds):
                return
        if not (self._alone(wrong, names, worlds) or self._from_nowhere(wrong, path, excused, names, worlds)):
            self.questions.add(wrong.line)

    def _without_g(self, wrong: Claim, path: frozenset[int]) -> bool:
        """A working that never multiplies by g: the first line with a moment or a force made of masses."""
        if not all(each.form == "kg" for each in self._keys(wrong)) or not self._keys(wrong):
            return False
        for claim in sorted(self.state.claims, key=lambda each: each.line):
            keys = self.known.true_of(claim.value.f) if claim.line in path and not claim.value.free else []
            if keys and all(each.form == "kg" for each in keys) and claim.unit not in KILOGRAMS:
                self._accuse(
                    claim.line,
                    ["mass-for-weight", "kilogram-answer", "g-in-one-term-only"],
                    frozenset(),
                    "masses for weights",
                    claim,
                )
                return True
        return False

    def _complement(self, path: frozenset[int], names: list[str], worlds: frozenset[int]) -> bool:
        """An asked angle counted from the other line."""
        for claim in sorted(self.state.claims, key=lambda each: each.line):
            keys = self._keys(claim) if claim.line in path and not claim.value.free else []
            if keys and all(each.form == "complement" and each.key in self.state.hints.asked for each in keys):
                slips = ["sine-cosine-swap-load", "angle-wrong-reference"]
                if not re.search(r"sin|cos", self.state.raw_of(claim.line)):
                    slips.reverse()
                self._accuse(
                    claim.line,
                    [*slips, *(name for name in names if name not in slips)],
                    worlds,
                    "true of another thing",
                    claim,
                )
                return True
        return False

    def _at(self, line: int, wrong: Claim, names: list[str], worlds: frozenset[int]) -> bool:
        """Whether something on this line is at fault."""
        for each in self.state.suspects:
            if (
                each.state != "open"
                or line not in (each.at, each.line)
                or each.soft
                and not self._soft_counts(each, line, wrong, worlds)
            ):
                continue
            each.state, each.strong = "guilty", True
            each.slips += [name for name in names if name not in each.slips]
            return True
        for claim in self.state.on(line):
            if claim.status == "none" and not claim.value.free and claim.value.source != "trig" and claim.unit != "deg":
                self._accuse(line, names, worlds, "no true quantity", claim)
                return True
            if (
                claim.status == "none"
                and line < wrong.line
                and line not in self.sure
                and self._comes_from(claim, wrong)
            ):
                self._accuse(line, names, worlds, "the answer comes from here", claim)
                return True
        for claim in self.state.on(line):
            copied = self._miscopied(claim, wrong)
            if copied:
                self._accuse(line, copied, frozenset(), "a datum copied wrongly", claim)
                return True
        for claim in self.state.on(line):
            other = [] if claim.value.free else self._of_another(claim, worlds)
            if other:
                self._accuse(
                    line,
                    [*other, *(name for name in names if name not in other)],
                    worlds,
                    "true of another thing",
                    claim,
                )
                return True
        return False

    def _miscopied(self, claim: Claim, wrong: Claim) -> list[str]:
        """The slips that make a free number of a datum, where it puts the answer off by just that factor."""
        number, kind = abs(claim.value.number), UNIT_KIND.get(claim.unit, "")
        if not claim.value.free or claim.formula or claim.solved or not number or kind not in claim.meaning.kinds:
            return []
        truth = [
            abs(float(self.known.truth[key][0])) * FACTORS[kind_of(key)].get(wrong.unit, 1.0)
            for key in self.state.hints.asked
            if key in self.known.truth and self.state.hints.speaks(key, wrong.meaning)
        ]
        for source in self.state.trace.sources.all:
            if (
                source.rank
                or source.unit != claim.unit
                or claim.meaning.items
                and not self.state.hints.item_of(source.key) & claim.meaning.items
            ):
                continue
            ratio, off = number / abs(source.number), [abs(wrong.value.number) / each for each in truth if each]
            if any(abs(each * k - 1) < 0.01 for each in off for k in (ratio, 1 / ratio)):
                return self._copied(ratio, f"{abs(source.number):.10g}", f"{number:.10g}")
        return []

    @staticmethod
    def _copied(ratio: float, good: str, typed: str) -> list[str]:
        power = float(np.log10(ratio))
        if abs(power - round(power)) < 1e-6:
            return ["decimal-shift", "mixed-length-units", "wrong-datum"]
        swapped = sorted(good) == sorted(typed)
        return ["digit-transposed", "wrong-datum"] if swapped else ["wrong-datum", "digit-transposed"]

    def _soft_counts(self, suspect: Suspect, line: int, wrong: Claim, worlds: frozenset[int]) -> bool:
        if line == wrong.line:
            return True
        if suspect.axis:
            things = self.state.hints.item_of(suspect.key)
            return any(self.known.slips[place].item in things for place in worlds)
        mine = [claim for claim in self.state.on(line) if self.state.places([suspect]) & claim.value.blames]
        return not any(claim.meaning.items - self.state.hints.pulls for claim in mine) and any(
            pattern(claim.value.f) == pattern(wrong.value.f) for claim in mine
        )

    def _near_truth(self, number: float) -> bool:
        return bool(self.state.trace.sources.near(abs(number), 0.004 * abs(number)))

    def _comes_from(self, claim: Claim, wrong: Claim) -> bool:
        """A line that already gives the wrong answer's number, though it cannot be traced."""
        number = claim.value.number
        return bool(number) and abs(abs(number) / abs(wrong.value.number) - 1) < 0.006 and not self._near_truth(number)

    def _alone(self, wrong: Claim, names: list[str], worlds: frozenset[int]) -> bool:
        """What one force alone asks of the pull, given as the pull."""
        keys = self._keys(wrong)
        if (
            not worlds
            or wrong.value.free
            or not keys
            or not all(each.key.startswith("*alone") for each in keys)
            or not self.known.wrong_of(wrong.value.f, wrong.unit)
        ):
            return False
        same = pattern(wrong.value.f)
        first = next(
            (
                each
                for each in sorted(self.state.claims, key=lambda each: each.line)
                if each.line <= wrong.line
                and each.line not in self.sure
                and not each.value.free
                and pattern(each.value.f) == same
            ),
            None,
        )
        if first is None:
            return False
        self._accuse(first.line, names, worlds, "the answer of a slip", first)
        return True

    def _from_nowhere(
        self, wrong: Claim, path: frozenset[int], excused: frozenset[int], names: list[str], worlds: frozenset[int]
    ) -> bool:
        """A number that comes from nothing, where the answer is a slip's."""
        for line in sorted(path) if worlds else []:
            for claim in self.state.on(line) if line not in excused or line == wrong.line else []:
                if (
                    claim.status == "none"
                    and claim.value.free
                    and claim.unit
                    and not self._near_truth(claim.value.number)
                ):
                    self._accuse(line, names, worlds, "a number that comes from nowhere", claim)
                    return True
        return False

    def _of_another(self, claim: Claim, worlds: frozenset[int]) -> list[str]:
        """The slips that give a thing the true value of another thing."""
        keys = self._keys(claim)
        if not keys or len(claim.meaning.items) != 1 or not claim.meaning.kinds or claim.unit == "deg":
            return []
        item = next(iter(claim.meaning.items))
        own = [
            each.key
            for each in keys
            if item in each.key and not each.key.startswith(("*sum", "*turn ", "*away", "*ratio"))
        ]
        if any(not claim.unit or kind_of(key) == UNIT_KIND.get(claim.unit) for key in own):
            return []
        slips = self.known.slips
        found = [
            (
                slips[each.slip].common + 4 * (each.slip in worlds) + 3 * (slips[each.slip].item == item),
                slips[each.slip].name,
            )
            for each in self.known.wrong_of(claim.value.f, claim.unit)
            if item in each.key and kind_of(each.key) in claim.meaning.kinds
        ]
        return list(dict.fromkeys(name for _, name in sorted(found, key=lambda each: -each[0])))

    def _back(self, suspect: Suspect, wrong: Claim) -> None:
        """Blame goes back from a slip to the line that it rests on, where that is no true quantity and nothing true
        rests on it.
        """
        excused, path = self._excused(), wrong.value.deps | suspect.deps
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
                    and set(self._of_another(claim, suspect.worlds)) & set(suspect.slips)
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
                and (keys := self._keys(claim))
                and all(" one " in each.key for each in keys)
            ),
            0,
        )
        both = any(
            " one " not in each.key
            and each.key.startswith(("*turning", "*moment", "*upright", "*level"))
            and any(item.count > 1 and item.name in each.key for item in self.known.first.items)
            for claim in own
            for each in self._keys(claim)
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
            self._accuse(
                claim.line,
                list(dict.fromkeys(slips[place].name for _, place in found)),
                frozenset(place for _, place in found),
                "true of another thing",
                claim,
            )
        else:
            self.questions.add(claim.line)
