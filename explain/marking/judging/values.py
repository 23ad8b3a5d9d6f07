"""What is noted while a working is traced: values with their formula, claims, suspicions. Decides nothing."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field

import numpy as np

from .known import True_
from .quantities import Row


@dataclass(slots=True, eq=False)
class Value:
    """A number of a working, traced.

    `f` is what its formula gives in the problem and its twins, `r` what it would be had the lines before been right.
    `number` is as shown, `half`
    half a unit of its last place. `line` made it, `deps` are the lines that it rests on, `blames` the suspicions.
    `free`: traced to nothing.
    """

    f: Row
    r: Row
    number: float
    half: float = 0.0
    unit: str = ""
    line: int = 0
    deps: frozenset[int] = frozenset()
    blames: frozenset[int] = frozenset()
    source: str = ""
    free: bool = False
    exact: bool = False
    spread: float = 0.0  # how far off its rounding may have left it

    @property
    def apart(self) -> bool:
        """Whether something before it is in doubt."""
        return self.r is not self.f and bool(np.any(self.r != self.f))

    def times(self, factor: Row | float) -> Value:
        """The same value by a factor, as in another unit."""
        size = float(factor[0]) if isinstance(factor, np.ndarray) else factor
        return Value(
            self.f * factor,
            self.r * factor,
            self.number * size,
            abs(self.half * size),
            "",
            self.line,
            self.deps,
            self.blames,
            self.source,
            self.free,
            False,
            abs(self.spread * size),
        )


@dataclass(frozen=True, slots=True)
class Meaning:
    """What words and a letter say that a value is: of what kinds, of which things; `role` "pull" or "joint" where they
    say so plainly.

    `axis` is the part of a force that they speak of: "level", "upright", "along", "across".
    """

    kinds: frozenset[str] = frozenset()
    items: frozenset[str] = frozenset()
    role: str = ""
    axis: str = ""


@dataclass(slots=True, eq=False)
class Claim:
    """A value with what the line calls it, and what was found of it: true, follows, suspect, none."""

    line: int
    value: Value
    meaning: Meaning
    unit: str
    words: str
    name: str
    text: str
    status: str
    keys: list[True_] = field(default_factory=list)
    formula: bool = False  # whether the line shows how it was made
    solved: bool = False  # whether it was solved for
    shown: bool = True
    case: object = None  # the case that it was judged by


@dataclass(slots=True, eq=False)
class Suspect:
    """A line in doubt. `slips` would explain it, the likeliest first; `worlds` are their places among the problem's
    slips.

    `strong`: evidence by itself. `soft`: true, but also a slip's. `sticky`: no right answer clears it. `state`: open,
    guilty, clear.
    """

    line: int
    slips: list[str]
    key: str = ""
    strong: bool = False
    why: str = ""
    worlds: frozenset[int] = frozenset()
    deps: frozenset[int] = frozenset()
    soft: bool = False
    sticky: bool = False
    state: str = "open"
    at: int = 0
    number: float = 0.0
    doubtful: bool = False  # the line may have been misread
    axis: bool = False  # true, but of the other axis than the line says
    place: int = -1  # among the suspicions of its pass


def all_deps(values: Iterable[Value]) -> tuple[frozenset[int], frozenset[int]]:
    """The lines and the suspicions that some values rest on."""
    lines: frozenset[int] = frozenset()
    blames: frozenset[int] = frozenset()
    for each in values:
        lines, blames = lines | each.deps, blames | each.blames
    return lines, blames
