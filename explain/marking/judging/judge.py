"""Says of one traced value whether it is true, follows, or is suspect. Settles no blame."""

from __future__ import annotations

import re

import numpy as np

from .case import Case
from .true_of_another import TrueOfAnother, same_world
from .kinds import UNIT_KIND, kind_of
from .known import True_, is_bare, is_side
from .mending import copied_wrongly, mended, more_names
from .sources import OTHER_TABLE
from .state import State
from .suspicion import mislabelled, scaled, slip_value
from .values import Claim, Meaning, Suspect


_NEWTONS = re.compile(r"\d\W*(?:(?:text|mathrm)\{)?(?:N|[Nn]ewtons?|lbf?|pounds?)\b")


_SUPPOSED = re.compile(r"\b(?:would|[Ii]f)\b")  # of another posture than the problem's


class Judge:
    """Judges the values of one pass."""

    def __init__(self, state: State) -> None:
        self.state, self.known, self.hints = state, state.known, state.hints
        self.another = TrueOfAnother(state)

    def status(self, f: np.ndarray, r: np.ndarray, meaning: Meaning, unit: str) -> tuple[str, list[True_]]:
        """What a formula comes to by itself: true, follows from what was before, or neither."""
        true = self.state.true_of(f, unit)
        if true and meaning.role and r is not f and not self._speaks(true, meaning):
            follows = self.state.true_of(r, unit)
            if follows and self._speaks(follows, meaning):
                return "carried", follows
        if true:
            return "true", true
        follows = self.state.true_of(r, unit) if r is not f else []
        return ("carried", follows) if follows else ("none", [])

    def _speaks(self, keys: list[True_], meaning: Meaning) -> bool:
        return any(self.hints.speaks(each.key, meaning) for each in keys)

    def judge(self, case: Case) -> Claim:
        """Note a claim of the value, and a suspicion where a slip explains it and nothing true does."""
        value, state = case.value, self.state
        status, keys = self.status(value.f, value.r, case.meaning, case.unit)
        claim = Claim(
            state.line,
            value,
            case.meaning,
            case.unit,
            case.words,
            case.name,
            state.text,
            status,
            keys,
            case.expr is not None,
            bool(state.solving),
            case.shown,
        )
        claim.case = case
        state.claims.append(claim)
        if any(each.source.endswith(OTHER_TABLE) for each in (case.way.leaves if case.way else (value,))):
            state.other_table.add(state.line)
        before = len(state.suspects)
        self._look(case, claim)
        if len(state.suspects) > before:
            soft = state.suspects[-1].soft
            claim.status = claim.status if soft else "suspect"
        elif claim.status == "true":
            state.made |= {each.key for each in keys}
        return claim

    def _look(self, case: Case, claim: Claim) -> None:
        """The first thing that speaks against a value, in order."""
        if (
            "vec" in case.words
            and (case.unit in ("m", "cm", "in") or case.name[:1] in ("r", "d"))
            and not case.meaning.role
        ):
            if claim.status == "none" and case.value.source.startswith(("*x ", "*y ")):
                claim.status = "true"
            return
        if (
            self._blamed_before(case, claim)
            or self._other_role(case, claim)
            or self._below_nothing(case, claim)
            or self._contradicted(case)
        ):
            return
        if not case.meaning.role and (self.hints.about_elsewhere(case.words) or _SUPPOSED.search(case.words)):
            return
        if claim.status == "true":
            self.another.look(case, claim)
            return
        if case.expr is None and value_is_datum(case):
            return
        if claim.status == "carried" or same_world(self.state, case):
            claim.status = "carried"
            return
        if mislabelled(self.state, case.value, case.meaning, case.unit):
            return
        wrong = self.known.wrong_of(case.value.r, case.unit)
        if wrong and slip_value(self.state, case.value, wrong, case.meaning, case.unit):
            if case.meaning.role == "joint":
                more_names(self.state, case)
            if self.known.pounds and case.way and any(each.source == "g" for each in case.way.leaves):
                self.state.suspects[-1].slips.insert(0, "pound-as-mass")
            return
        if not case.free and scaled(self.state, case.value, case.meaning, case.unit):
            return
        if case.expr is not None and copied_wrongly(self.state, case):
            return
        if case.expr is not None and not case.free and self._wants_mending(case):
            mended(
                self.state,
                case,
                case.meaning if case.meaning.role else Meaning(case.meaning.kinds, frozenset(), "pull"),
            )

    def _wants_mending(self, case: Case) -> bool:
        if case.meaning.role:
            return True
        unknowns = self.known.unknowns
        return (
            case.unit in ("N", "lb")
            and len(unknowns) == 1
            and not unknowns & self.state.made
            and kind_of(next(iter(unknowns))) == "force"
            and case.expr is not None
            and case.expr.node[0] in ("/", "*", "i*")
            and not case.meaning.items
        )

    def _blamed_before(self, case: Case, claim: Claim) -> bool:
        """An earlier pass found out that the slip was made on this line."""
        worlds = self.state.before.blamed.get(self.state.line)
        if not worlds or case.free or claim.status == "carried":
            return False
        hits = [each for each in self.known.wrong_of(case.value.f, case.unit) if each.slip in worlds]
        chained = any(self.known.slips[each].name == "chain-distance-not-added" for each in worlds)
        if any(self.hints.is_its_part(each.key, case.meaning) for each in claim.keys):
            return False
        if chained and self.hints.from_elsewhere(case.words):
            return False
        if not hits or any(
            not is_side(each.key) and not (is_bare(each.key) and chained)
            for each in self.known.true_of(case.value.f, case.unit)
            if not each.form
        ):
            return False
        return slip_value(self.state, case.value, hits, case.meaning, case.unit, force=True)

    def _other_role(self, case: Case, claim: Claim) -> bool:
        """Called the pull or the joint force, but true of something else, and a slip's."""
        if claim.status not in ("true", "carried") or not case.meaning.role or self._speaks(claim.keys, case.meaning):
            return False
        hits = [
            each
            for each in self.known.wrong_of(case.value.r, case.unit)
            if self.hints.is_answer(each.key, case.meaning)
        ]
        if not hits or not slip_value(self.state, case.value, hits, case.meaning, case.unit, force=True):
            return False
        more_names(self.state, case)
        return True

    def _below_nothing(self, case: Case, claim: Claim) -> bool:
        """A pull below nothing."""
        if claim.status != "true" or case.value.number >= 0 or not self.hints.muscles:
            return False
        named = (
            case.meaning.role == "pull" and case.name and "vec" not in case.words and not case.name.endswith(("x", "y"))
        )
        key = next((each.key for each in claim.keys if each.key in self.known.unknowns and not each.form), "")
        if not key or not (self.state.solving or named) or self.known.truth[key][0] <= 0:
            return False
        names = ["negative-muscle"] if case.expr is None and not self.state.solving else []
        names += ["sign-of-a-term", "up-positive-both-sides", "term-moved-sign-kept", "scale-force-direction"]
        self.state.suspect(
            Suspect(
                self.state.line, names, "", True, "the pull comes out below nothing", deps=case.value.deps, sticky=True
            ),
            case.value,
        )
        case.value.r = -case.value.r
        return True

    def _contradicted(self, case: Case) -> bool:
        """The pull in a unit that is no force's; a moment that is called the pull."""
        meaning = case.meaning
        if meaning.role == "joint" and case.unit == "kg" and self._in_kilograms(case):
            return True
        if (
            case.unit in ("m", "cm", "in", "Nm", "Ncm", "kg", "lbin")
            and case.name[:1] in tuple("FPTBEQDA")
            and case.name
        ):
            meaning = self.hints.of(case.words, case.name, "")
        said = (
            case.name
            or meaning.items
            and meaning.items <= self.hints.pulls
            and case.unit
            and re.search(r"\b(pulls?|force|tension|muscle)", case.words.lower())
        )
        if meaning.role != "pull" or not said or case.value.free:
            return False
        own = [
            each.key
            for each in self.known.true_of(case.value.r)
            if not each.form
            and (
                each.key in self.known.unknowns
                or each.key.endswith(".force")
                and self.hints.item_of(each.key) & (meaning.items or self.hints.unknown_items)
            )
        ]
        names: list[str] = []
        if any(kind_of(key) == "force" for key in own) and UNIT_KIND.get(case.unit, "force") != "force":
            names = (
                ["kilogram-answer", "unit-label-wrong", "mass-for-weight"]
                if case.unit == "kg"
                else ["unit-label-wrong", "stopped-at-moment"]
            )
        elif (
            not own
            and case.unit in ("N", "lb")
            and self._is_moment(case.value.r)
            and not any(kind_of(each.key) == "force" for each in self.known.true_of(case.value.r, case.unit))
        ):
            names = ["stopped-at-moment", "unit-label-wrong", "divide-one-term"]
        if names:
            self.state.suspect(
                Suspect(
                    self.state.line,
                    names,
                    "",
                    True,
                    "the unit is not that of what it is called",
                    deps=case.value.deps,
                    sticky=True,
                ),
                case.value,
            )
        return bool(names)

    def _in_kilograms(self, case: Case) -> bool:
        """The joint force itself, counted without its g, and no force given from here on."""
        if any(_NEWTONS.search(each.text) for each in self.state.lines[self.state.line - 1 :]):
            return False
        keys = self.known.true_of(case.value.r, case.unit)
        if not any(each.form == "kg" and self.hints.is_answer(each.key, case.meaning) for each in keys):
            return False
        names = ["kilogram-answer", "mass-for-weight", "unit-label-wrong"]
        why = "the unit is not that of what it is called"
        suspect = Suspect(self.state.line, names, "", True, why, deps=case.value.deps, sticky=True)
        self.state.suspect(suspect, case.value)
        return True

    def _is_moment(self, row: np.ndarray) -> bool:
        """Whether a value is the moment of all that is known, or of the unknown itself."""
        return any(
            each.key == "total"
            or each.key.startswith("*moment")
            and self.hints.item_of(each.key) & self.hints.unknown_items
            for each in self.known.true_of(row)
            if not each.form
        )


def value_is_datum(case: Case) -> bool:
    """A number alone that is an angle as given: it states nothing else."""
    return case.value.source == "angle" and case.value.exact
