"""Where a working shows a quantity, and how it was judged there: in a line of its own, or by a later one that needs it.
Awards nothing.

A value alone shows no method, unless the step before it is shown.

A line that has an unknown and two products or quotients is taken for a balance of moments: with it the arms and weights
in it are shown.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from typing import NamedTuple

from .scheme import Scheme
from ..slips.verdict import Given, LineVerdict, Marking

GOOD = ("holds", "carried", "again")
_ORDER = (*GOOD, "slips", "unclear")
# An operation between two things, a function, a number in brackets behind a letter; no mere sign and no unit.
_WORKED = re.compile(
    r"[\w)°%.²]\s*[×*^]\s*[\w(]|[\w)°%.²]\s[/+−-]\s[\w(.]|\)\(|\w\(\.?\d|\d/\d|√|\b(?:sin|cos|tan|sqrt|tan⁻¹)"
)


class Sight(NamedTuple):
    """A verdict on a quantity ("implied ..." where only a later line shows it), and the line; 0 for an answer without
    one. `bare`: the value stands there with no working beside it.
    """

    verdict: str
    line: int
    bare: bool = False


class Sights:
    """All that one working shows."""

    def __init__(self, scheme: Scheme, marking: Marking) -> None:
        self.scheme, self.marking = scheme, marking
        self.bare = {each.number for each in marking.lines if _is_bare(each)}
        self.seen = self._seen()
        self.shown = [
            (sight.line, scheme.rank(key)) for key, each in self.seen.items() for sight in each if not sight.bare
        ]

    def of(self, need: str, kind: str = "method") -> Sight | None:
        """How a quantity was seen, None where nothing shows it: for a method in working, for an accuracy mark of an
        answer in the value that is given last.
        """
        found = [sight for key, each in self.seen.items() if shows(key, need) for sight in each]
        moments = [sight for key, each in self.seen.items() if key.startswith("*moment ") for sight in each[:1]]
        if need == "moments" and not found and len(moments) > 1:
            found = moments
        if kind == "accuracy" and (told := self._told(need)):
            return told
        if kind == "method":
            found = [each for each in found if self._worked(each, need)]
        best = _best(found)
        if (best and best.verdict in GOOD) or need in self.scheme.asked:
            return best
        if self.scheme.strict:
            return best or (
                self.of("moments") if need.endswith(".weight") or need.startswith(("*arm ", "*turning ")) else None
            )
        level = self.scheme.rank(need)
        later = _best(
            [
                sight
                for key, each in self.seen.items()
                if self.scheme.rank(key) > level
                for sight in each
                if self._worked(sight, need)
            ]
        )
        return Sight(f"implied {later.verdict}", later.line) if later and later.verdict in GOOD else best

    def _worked(self, sight: Sight, need: str) -> bool:
        """Whether there is working behind a value: beside it, or the step before it shown by then. One step may be
        done in the head, two may not.
        """
        least = self.scheme.rank(need) - 1
        return not sight.bare or any(line <= sight.line and rank >= least for line, rank in self.shown)

    def _told(self, need: str) -> Sight | None:
        """The value that is given for what is asked."""
        given = next((each for each in self.marking.answers if need in _keys(each)), None)
        if given is None or need not in self.scheme.asked:
            return None
        return Sight(_verdict(given), given.line, given.line in self.bare)

    def _seen(self) -> Mapping[str, Sequence[Sight]]:
        """Every key with what is said of it, the best verdict of each line first."""
        found: dict[str, list[Sight]] = {}
        for line in self.marking.lines:
            verdict = "again" if line.verdict == "slips" and line.again else line.verdict
            balance = ("moments",) if _balances(line, self.scheme) else ()
            for key in (*line.uses, *balance) if verdict != "aside" else ():
                found.setdefault(key, []).append(Sight(verdict, line.number, line.number in self.bare))
        for given in self.marking.answers:
            for key in _keys(given):
                bare = not given.line or given.line in self.bare
                found.setdefault(key, []).append(Sight(_verdict(given), given.line, bare))
        return {key: sorted(each, key=lambda one: _ORDER.index(one.verdict)) for key, each in found.items()}


def _keys(given: Given) -> frozenset[str]:
    owner, _, part = given.name.rpartition(".")
    return frozenset((given.name, f"{given.name}.force", *((f"*angle {owner}",) if part == "direction" else ())))


def _verdict(given: Given) -> str:
    return "holds" if given.right else "carried" if given.carried else "slips"


def _is_bare(line: LineVerdict) -> bool:
    """Whether a line only states: no product, quotient, sum or function, and no balance by name. Of one that could not
    be followed nobody knows.
    """
    return (
        line.verdict != "unclear"
        and not _WORKED.search(line.read_as)
        and not {*line.uses} & {"total", "moments", "level", "upright"}
    )


def shows(key: str, need: str) -> bool:
    """Whether a line that uses a key shows what a mark needs."""
    head, _, name = need.partition(" ")
    match head:
        case "moments":
            return key in ("moments", "total", "*sum")
        case "level" | "upright":
            return key in (need, {"level": "reaction.right", "upright": "reaction.up"}[need], "reaction")
        case "*arm" | "*turning":
            return key in (f"*arm {name}", f"*turning {name}", f"*reach {name}", f"*moment {name}")
    return key == need


def _balances(line: LineVerdict, scheme: Scheme) -> bool:
    return bool(scheme.unknowns & {*line.uses}) and line.read_as.count("×") + line.read_as.count("/") > 1


def _best(sights: Sequence[Sight]) -> Sight | None:
    return min(sights, key=lambda each: _ORDER.index(each.verdict), default=None)
