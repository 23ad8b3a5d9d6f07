"""Where a slip first shows: the numbered section of the walkthrough that its quantity belongs to. Knows keys and
moves, no slip.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import cached_property

from ..solve.outcome import Outcome
from ..walkthrough.sections import sections

_ARMS = ("at", "com", "com%", "moment_arm", "length")
_Wish = tuple[tuple[str, ...], str]  # kinds of goals, and a key; "" for any


class Steps:
    """The sections of one walkthrough by the quantities that are found in them."""

    def __init__(self, outcome: Outcome) -> None:
        self.outcome = outcome
        self._told: dict[str, str] = {}

    @cached_property
    def _titles(self) -> tuple[str, ...]:
        return tuple(each.title for each in sections(self.outcome))

    def of(self, key: str) -> str:
        """ "step 4, The moments"; "" where no step is about this quantity."""
        if key not in self._told:
            self._told[key] = self._found(key)
        return self._told[key]

    def _found(self, key: str) -> str:
        moves = self.outcome.working.moves
        move = next(
            (
                each
                for kinds, wish in _wishes(key)
                for each in moves
                if each.goal.kind in kinds and wish in ("", each.goal.key)
            ),
            None,
        )
        if move is None:
            return ""
        title = next(iter(sections(self.outcome, lambda each: each is move))).title
        return f"step {self._titles.index(title) + 1}, {title}"


def _wishes(key: str) -> Iterator[_Wish]:
    """What to look for, the most exact first."""
    head, _, named = key.partition(" ")
    owner, _, what = key.rpartition(".")
    yield ("relation",), key
    if key in ("*angle reaction", "*direction reaction", "reaction"):
        yield ("resultant angle", "resultant"), ""
    if key.startswith("reaction") or head in ("*level", "*upright") or key.endswith(" reaction"):
        yield ("forces", "at rest"), {"reaction.right": "level", "reaction.up": "upright"}.get(key, "")
    if what in ("mass", "weight", "mass%"):
        yield ("relation",), f"{owner}.weight"
    if what in _ARMS or head in ("*arm", "*turning", "*reach", "*line"):
        yield ("arm", "turning", "moment"), owner if what in _ARMS else named
    yield ("moments", "at rest"), ""
