"""Values that are true, but of something else than the line says: of both for each, of one for the total, of another
thing, of another axis.
"""

from __future__ import annotations

import re

from .case import Case
from .kinds import kind_of
from .known import is_bare, is_side
from .state import State
from .suspicion import slip_value
from .values import Claim

_EACH = re.compile(r"\b(each|per|one|apiece)\b")
_TOTAL = re.compile(r"\b(weights|loads|total|sum|altogether|all|both|together|combined|net)\b|Σ")
_LEVER = re.compile(r"\b(levers?|perp\w*|(?:moment|lever) arms?)\b")
_OTHERS_SHARE = re.compile(r"\b(for|alone|only|against|hold|holds|balances?|from|due)\b")


class TrueOfAnother:
    """The values of one pass that are true of another thing."""

    def __init__(self, state: State) -> None:
        self.state, self.known, self.hints = state, state.known, state.hints

    def look(self, case: Case, claim: Claim) -> None:
        """True, but of something else than the words say, and a slip's value for what they say."""
        value, meaning, keys = case.value, case.meaning, [each.key for each in claim.keys]
        wrong = self.known.wrong_of(value.r, case.unit)
        if not wrong:
            return
        if (
            _EACH.search(case.words.lower())
            and any(key.startswith(("*all", "*alone all")) or self._of_many(key) for key in keys)
            and not any(" one " in key or key in self.known.unknowns for key in keys)
        ):
            hits = [each for each in wrong if each.key in self.known.unknowns or each.key.endswith(".force")]
            if hits and slip_value(self.state, value, hits, meaning, case.unit, force=True):
                last = self.state.suspects[-1]
                last.sticky = True
                last.slips = ["limb-share-forgotten", *(each for each in last.slips if each != "limb-share-forgotten")]
                return
        if (
            case.expr is not None
            and "length" in meaning.kinds
            and self._from_pivot(case)
            and not any(key.startswith(("*arm", "*x", "*y", "*leg0")) for key in keys)
            and not (
                any(is_bare(key) or key.startswith("*line") for key in keys) and not _LEVER.search(case.words.lower())
            )
        ):
            hits = [
                each
                for each in wrong
                if each.key.startswith("*arm") and (not meaning.items or self.hints.item_of(each.key) & meaning.items)
            ]
            if hits and slip_value(self.state, value, hits, meaning, case.unit):
                return
        if (
            (case.expr is not None or self.state.solving or case.unit)
            and len(meaning.items) == 1
            and meaning.kinds
            and any(self.hints.item_of(key) for key in keys)
            and not any(self.hints.item_of(key) & meaning.items for key in keys)
            and not self._half_named(case, next(iter(meaning.items)))
            and not (value.blames and self._would_be_true(case))
        ):
            hits = [
                each
                for each in wrong
                if self.hints.item_of(each.key) & meaning.items
                and kind_of(each.key) in meaning.kinds
                and (each.key == self.known.slips[each.slip].touched or each.key in self.known.unknowns)
            ]
            if hits and slip_value(self.state, value, hits, meaning, case.unit):
                self.state.suspects[-1].strong &= case.expr is not None or self.state.solving != ""
                return
        if self._one_for_the_total(case, keys) and slip_value(self.state, value, wrong, meaning, case.unit):
            return
        axis = {"level": "*level ", "upright": "*upright "}.get(meaning.axis, "")
        if (
            axis
            and case.expr is not None
            and not any(key.startswith((axis, "reaction", f"*sum{meaning.axis}")) for key in keys)
        ):
            hits = [each for each in wrong if each.key.startswith(axis)]
            if hits and slip_value(self.state, value, hits, meaning, case.unit, soft=True):
                self.state.suspects[-1].axis = True
                return
        if value.blames and all(is_side(key) for key in keys) and same_world(self.state, case):
            claim.status = "carried"
            return
        if all(is_side(key) for key in keys):
            together = frozenset[str]().union(*(self.hints.item_of(key) for key in keys if key.startswith("*all")))
            together = together if meaning.items <= together else frozenset()
            hits = [
                each
                for each in self.known.wrong_of(value.f, case.unit)
                if each.key in self.known.unknowns and not each.form and not self.hints.item_of(each.key) & together
            ]
            if hits and not (meaning.items - self.hints.pulls and _OTHERS_SHARE.search(case.words.lower())):
                slip_value(self.state, value, hits, meaning, case.unit, soft=True)

    def _would_be_true(self, case: Case) -> bool:
        """Whether the value were true of what it is called, had the lines before been right."""
        keys = [each.key for each in self.known.true_of(case.value.r, case.unit)]
        return any(self.hints.item_of(key) & case.meaning.items for key in keys)

    def _one_for_the_total(self, case: Case, keys: list[str]) -> bool:
        """The moment of one thing where the words say that it is that of all which turn one way."""
        if (
            case.expr is None
            and not case.unit
            or case.meaning.items
            or "moment" not in case.meaning.kinds
            or not _TOTAL.search(case.words.lower())
        ):
            return False
        moments = self.known.truth
        own = [key for key in keys if key.startswith("*moment ")]
        alike = [
            each.name
            for each in self.known.first.items
            if own
            and each.name not in self.hints.unknown_items
            and f"*moment {each.name}" in moments
            and moments[f"*moment {each.name}"][0] * moments[own[0]][0] > 0
        ]
        return len(alike) > 1 and not any(key == "total" or self.hints.item_of(key) & self.hints.pulls for key in own)

    def _half_named(self, case: Case, item: str) -> bool:
        """Whether words say one part of a body that is named by both, "the hand" of a "forearm and hand"."""
        said = case.words.lower()
        words = "|".join(map(re.escape, self.hints.words[item]))
        if re.search(rf"\b(?:ball|heel|sole|end|edge|tip|back|middle) of (?:the |her |his )?(?:{words})\b", said):
            return True  # a place on it, where another thing acts
        return " and " in item and not all(word in said for word in self.hints.words[item])

    def _of_many(self, key: str) -> bool:
        """What both sides make together."""
        return (
            " one " not in key
            and key.startswith(("*turning", "*upright", "*level", "*along", "*across", "*moment"))
            and any(each.count != 1 and each.name in key for each in self.known.first.items)
        )

    def _from_pivot(self, case: Case) -> bool:
        words = "|".join(sorted(self.hints.pivot | {"pivot", "hinge", "joint"}))
        return bool(re.search(rf"from (?:the )?(?:{words})", f"{case.words} {self.state.raw}".lower()))


def same_world(state: State, case: Case) -> bool:
    """Whether a value is what an earlier slip makes of another quantity: a consequence, no new slip."""
    doubts = [state.suspects[each] for each in case.value.blames if state.suspects[each].worlds]
    hits = (
        [
            each
            for each in state.known.wrong_of(case.value.f, case.unit)
            if not case.meaning.role or state.hints.speaks(each.key, case.meaning)
        ]
        if doubts
        else []
    )
    for each in doubts:
        found = [hit for hit in hits if hit.slip in each.worlds]
        each.strong |= any(
            hit.key in state.known.unknowns
            or hit.key in state.hints.asked
            or hit.key.startswith(("reaction", "*stress"))
            for hit in found
        )
    return any(hit.slip in each.worlds for each in doubts for hit in hits)
