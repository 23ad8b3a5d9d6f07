"""Which claims of a working are called by what is asked: by words, by a letter that was solved for, by their unit.
Judges none.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from .hints import JOINT
from .kinds import FACTORS, UNIT_KIND, kind_of
from .known import is_side
from .state import State
from .values import Claim


class Called:
    """The claims of one pass, by what they are called."""

    def __init__(self, state: State) -> None:
        self.state, self.known, self.hints = state, state.known, state.hints

    def claims(self, key: str, group: str, claims: Sequence[Claim]) -> list[Claim]:
        """The claims that are called by what is asked."""
        kind, items = kind_of(key), self.hints.item_of(key)
        if group == "reaction":
            found = [
                each
                for each in claims
                if (each.meaning.role == "joint" or self.near_the_joint(each))
                and UNIT_KIND.get(each.unit, "force") in ("force", "mass")
                and not each.meaning.kinds & {"length", "moment"}
            ]
        elif kind == "force" and items & self.hints.pulls:
            found = [
                each
                for each in claims
                if (each.meaning.role == "pull" and (each.unit or each.name) or self._is_key(each, key))
                and UNIT_KIND.get(each.unit, "force") in ("force", "mass")
                and (
                    each.meaning.items & self.hints.pulls == items
                    or not each.meaning.items
                    and len(self.hints.pulls) == 1
                    or self._is_key(each, key)
                )
            ]
        elif kind == "angle":
            found = [
                each
                for each in claims
                if (each.unit == "deg" or not each.unit and each.shown and each.meaning.kinds == {"angle"})
                and each.meaning.role != "joint"
                and "reaction" not in each.words
            ]
        elif kind == "mass":
            found = [
                each
                for each in claims
                if each.meaning.items
                and each.meaning.items <= items
                and (each.unit in ("kg", "lb", "gram") or not each.unit and "mass" in each.meaning.kinds)
            ]
        elif kind == "stress":
            found = [
                each
                for each in claims
                if each.unit in FACTORS[kind]
                or re.search(r"stress|square|cm2|specific", f"{each.words}{each.name}".lower())
            ]
        else:
            found = [each for each in claims if each.meaning.items & items and kind in each.meaning.kinds]
        return found or self._by_letter(key, kind, claims)

    @staticmethod
    def _is_key(claim: Claim, key: str) -> bool:
        """A stated value that is what is asked by its formula, under any name but that of another thing."""
        return (
            claim.shown
            and bool(claim.unit)
            and claim.meaning.role != "joint"
            and claim.status == "true"
            and any(each.key == key and not each.form for each in claim.keys)
            and not claim.meaning.items
        )

    def _by_letter(self, key: str, kind: str, claims: Sequence[Claim]) -> list[Claim]:
        """The claims of a letter that was solved for, or the last line of all."""
        solved = [each for each in claims if each.name in self.state.solved and not each.meaning.items]
        if kind == "mass" and (
            found := [
                each for each in solved if each.unit in ("kg", "lb", "") and (each.unit or each.name in tuple("mMxXB"))
            ]
        ):
            return found
        if kind == "length" and (found := [each for each in solved if each.unit in ("m", "cm", "in")]):
            return found
        letters = [
            each
            for each in claims
            if each.name in ("x", "X", "d")
            and each.shown
            and not each.meaning.items
            and UNIT_KIND.get(each.unit) == kind
            and kind == "length"
        ]
        if letters:
            return letters
        asked = list(self.hints.asked_order)
        last = claims[-1] if claims else None
        if (
            last is None
            or last.line < self.state.lines[-1].number - 1
            or last.meaning.role
            not in ("", "joint" if key.startswith("reaction") else "pull" if kind == "force" else "")
        ):
            return []
        if last.meaning.items - self.hints.item_of(key) and last.meaning.items:
            return []
        fits = UNIT_KIND.get(last.unit) == kind or not last.unit and last.name and kind != "angle"
        return [last] if fits and (len(asked) == 1 or key == asked[-1] and last.unit and not last.meaning.items) else []

    def near_the_joint(self, claim: Claim) -> bool:
        """A force with no other name in a line that speaks of the joint."""
        if (
            claim.meaning.role
            or not claim.formula
            or claim.unit not in ("N", "lb")
            or claim.meaning.items & self.hints.pulls
            or any(claim.meaning.items == self.hints.item_of(each.key) and not is_side(each.key) for each in claim.keys)
        ):
            return False
        said = set(re.findall(r"[a-z]{3,}", self.state.raw_of(claim.line)))
        return bool(said & (self.hints.bone | JOINT)) and len({each.text for each in self.state.on(claim.line)}) == 1
