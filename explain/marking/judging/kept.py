"""What was traced of the last workings, kept by their content: a working that has grown, or was changed in the middle,
is traced again only from the first line that reads otherwise.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace

from .reading import Line
from .state import Before, Mark, State
from .tokens import Token

MOST_KEPT = 4  # passes of workings


@dataclass(slots=True)
class Traced:
    """One pass over one working, as it was before anything was settled. `marks`: how it stood after each line."""

    lines: list[Line]
    state: State
    tens: bool
    before: Before
    letters: Mapping[str, object]
    marks: list[Mark] = field(default_factory=list)

    def shared(self, lines: Sequence[Line], tens: bool, before: Before, letters: Mapping[str, object]) -> int:
        """How many lines of another working, from its first on, are traced as they are here."""
        if tens != self.tens or before.settled != self.before.settled:
            return 0
        changed = {key for key in {*letters, *self.letters} if letters.get(key) != self.letters.get(key)}
        count = 0
        for one, other in zip(lines, self.lines, strict=False):
            if (
                count >= len(self.marks)
                or not _alike(one, other)
                or any(each in one.text for each in changed)
                or before.of(one.number) != self.before.of(one.number)
            ):
                break
            count += 1
        return count


def _alike(one: Line, other: Line) -> bool:
    """Whether two lines were read alike."""
    return (
        one.clauses is other.clauses
        and one.text == other.text
        and one.struck == other.struck
        and bool(one.trouble) == bool(other.trouble)
    )


def letters_of(alias: Mapping[str, str], bound: Mapping[str, Token]) -> dict[str, object]:
    """What is known of letters from the whole working."""
    return {
        **{f"{key}": each for key, each in alias.items()},
        **{key: (alias.get(key), each.text, each.unit) for key, each in bound.items()},
    }


class Kept:
    """The last passes."""

    def __init__(self) -> None:
        self._last: list[Traced] = []

    def keep(self, traced: Traced) -> None:
        """Keep a pass; the oldest is forgotten."""
        self._last = [traced, *self._last[: MOST_KEPT - 1]]

    def longest(
        self, lines: Sequence[Line], tens: bool, before: Before, letters: Mapping[str, object]
    ) -> tuple[Traced | None, int]:
        """The pass that shares the most lines with this one, and how many."""
        best: tuple[Traced | None, int] = None, 0
        for each in self._last:
            count = each.shared(lines, tens, before, letters)
            best = (each, count) if count > best[1] else best
        return best


def settling(state: State) -> State:
    """A copy of what was found, on which blame may be settled: what was traced stays as it was."""
    values = {id(each.value): replace(each.value) for each in state.claims}
    out = State(state.known, state.hints, state.trace, state.lines, state.before, state.made)
    out.claims = [replace(each, value=values[id(each.value)]) for each in state.claims]
    out.suspects = [replace(each, slips=list(each.slips)) for each in state.suspects]
    for name in ("solved", "unread", "other_table", "run_on", "words_only"):
        setattr(out, name, set(getattr(state, name)))
    out.tens, out.alias, out.bound = state.tens, state.alias, state.bound
    return out
