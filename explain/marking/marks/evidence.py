"""Where a working shows a quantity, and how it was judged there: in a line of its own, or by a later one that needs it.
Awards nothing.

A line that has an unknown and two products or quotients is taken for a balance of moments: with it the arms and weights
in it are shown.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import NamedTuple

from .scheme import Scheme
from ..slips.verdict import LineVerdict, Marking

GOOD = ("holds", "carried", "again")
_ORDER = (*GOOD, "slips", "unclear")


class Sight(NamedTuple):
    """The best verdict on a quantity ("implied ..." where only a later line shows it), and the line; 0 for an answer
    without one.
    """

    verdict: str
    line: int


class Sights:
    """All that one working shows."""

    def __init__(self, scheme: Scheme, marking: Marking) -> None:
        self.scheme, self.seen = scheme, _seen(marking, scheme)

    def of(self, need: str) -> Sight | None:
        """How a quantity was seen, None where nothing shows it."""
        found = [sight for key, sight in self.seen.items() if shows(key, need)]
        moments = [sight for key, sight in self.seen.items() if key.startswith("*moment ")]
        if need == "moments" and not found and len(moments) > 1:
            found = moments
        best = _best(found)
        if (best and best.verdict in GOOD) or need in self.scheme.asked:
            return best
        if self.scheme.strict:
            return best or (
                self.of("moments") if need.endswith(".weight") or need.startswith(("*arm ", "*turning ")) else None
            )
        level = self.scheme.rank(need)
        later = _best([sight for key, sight in self.seen.items() if self.scheme.rank(key) > level])
        return Sight(f"implied {later.verdict}", later.line) if later and later.verdict in GOOD else best


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


def _seen(marking: Marking, scheme: Scheme) -> Mapping[str, Sight]:
    """Every key with the best verdict on it."""
    found: dict[str, list[Sight]] = {}
    for line in marking.lines:
        verdict = "again" if line.verdict == "slips" and line.again else line.verdict
        balance = ("moments",) if _balances(line, scheme) else ()
        for key in (*line.uses, *balance) if verdict != "aside" else ():
            found.setdefault(key, []).append(Sight(verdict, line.number))
    for given in marking.answers:
        verdict = "holds" if given.right else "carried" if given.carried else "slips"
        for key in {
            given.name,
            f"{given.name}.force",
            f"*angle {given.name.removesuffix('.direction')}" if given.name.endswith(".direction") else given.name,
        }:
            found.setdefault(key, []).append(Sight(verdict, given.line))
    return {key: best for key, each in found.items() if (best := _best(each))}


def _best(sights: Sequence[Sight]) -> Sight | None:
    return min(sights, key=lambda each: _ORDER.index(each.verdict), default=None)
