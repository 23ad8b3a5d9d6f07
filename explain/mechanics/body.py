"""The body cut free: its forces, where they act and which way, as geometry. Knows no equation.

Directions are bearings, in degrees counter-clockwise from right; distances are letters whose values are never negative.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from typing import TYPE_CHECKING, Literal, TypeVar

from ..equation.terms import Letter, Quantity

if TYPE_CHECKING:  # data of the author and the table of letters: the checker reads them and runs none of their code
    from .letters import Letters
    from ..problem.model import Problem

Kind = Literal["muscle", "force", "weight", "load"]
Name = TypeVar("Name")
Size = TypeVar("Size", float, Fraction)


@dataclass(frozen=True, slots=True)
class Bearing:
    """A direction: `degrees` plus so many times each unknown angle. `stated` is the angle as the author wrote it.

    `within` says whose stated angles are in the degrees, and which way the direction turns (+1, -1) as they grow.
    """

    degrees: Fraction
    unknown: tuple[tuple[Letter, int], ...] = ()
    stated: Quantity | None = None
    within: tuple[tuple[str, int], ...] = field(default=(), compare=False)

    def turned(self, degrees: Fraction | int) -> Bearing:
        return Bearing((self.degrees + degrees) % 360, self.unknown, self.stated, self.within)

    def at(self, angles: Mapping[str, Size]) -> Fraction | Size:
        """In degrees, with values for the unknown angles."""
        return self.degrees + sum((k * angles[letter.name] for letter, k in self.unknown), Fraction(0))


def turned_back(a: Bearing, b: Bearing) -> Bearing:
    """The angle from b to a."""
    return Bearing((a.degrees - b.degrees) % 360, _less(a.unknown, b.unknown), within=_less(a.within, b.within))


def _less(a: Sequence[tuple[Name, int]], b: Sequence[tuple[Name, int]]) -> tuple[tuple[Name, int], ...]:
    """How often each name is in a, less how often it is in b."""
    times: dict[Name, int] = {}
    for name, k in (*a, *((name, -k) for name, k in b)):
        times[name] = times.get(name, 0) + k
    return tuple((name, k) for name, k in times.items() if k)


RIGHT, UP = Bearing(Fraction(0)), Bearing(Fraction(90))


@dataclass(frozen=True, slots=True)
class Step:
    """A distance to walk in a direction."""

    distance: Letter
    bearing: Bearing


@dataclass(frozen=True, slots=True)
class Toward:
    """A pull towards a point: from the grip `across` to the side (sign `right`) and `rise` upwards (sign `up`);
    `line` is how far that is.
    """

    across: Letter
    right: int
    rise: Letter
    up: int
    line: Letter


@dataclass(frozen=True, slots=True)
class Force:
    """One force on the body. Either it has a place (`steps` from the pivot; none: at the pivot) or an `arm` that
    `turns` (+1, -1).

    `sign` is -1 where its letter stands for the part that points against its bearing: of a force down its part up.
    """

    name: str
    kind: Kind
    size: Letter
    steps: tuple[Step, ...] = ()
    bearing: Bearing | None = None
    toward: Toward | None = None
    arm: Letter | None = None
    turns: int = 0
    count: int = 1
    segment: str = ""
    sign: int = 1

    @property
    def directed(self) -> bool:
        return self.bearing is not None or self.toward is not None


@dataclass(frozen=True, slots=True)
class Twist:
    """A couple: its moment turns the body and has no force."""

    name: str
    size: Letter
    turns: int


@dataclass(frozen=True, slots=True)
class Given:
    """A value the author wrote, or that was looked up (`source`); `sign` is that of its letter."""

    letter: Letter
    meaning: str
    value: Quantity
    source: str = ""
    sign: int = 1


@dataclass(frozen=True, slots=True)
class Relation:
    """How a quantity follows from others before any balance.

    kind: weight (mass times g) · share (a share of another quantity) · multiple (so many times another force) ·
    across, rise (from the grip to the point pulled towards) · line (their Pythagoras) · middle, third (the place of a
    spread load) · per length (its weight) · ratio (of two cross-sections) · slips (what a rough surface pushes
    along itself). The last five have `parts`: a number and powers of letters, added. `sign` stands before what it
    follows from.
    """

    kind: str
    letter: Letter
    of: tuple[Letter, ...]
    steps: tuple[tuple[int, Step], ...] = ()
    sign: int = 1
    parts: tuple[tuple[Fraction, tuple[tuple[Letter, int], ...]], ...] = ()


@dataclass(frozen=True, slots=True)
class Sought:
    """An unknown: its letter, what it means, and its two ends if the author bounded it (degrees)."""

    letter: Letter
    meaning: str
    range: tuple[Fraction, Fraction] | None = None


@dataclass(frozen=True, slots=True)
class Body:
    problem: Problem
    letters: Letters
    bearings: dict[str, Bearing]  # of each segment
    starts: dict[str, tuple[Step, ...]]  # of each segment's near end
    forces: tuple[Force, ...]
    twists: tuple[Twist, ...]
    givens: tuple[Given, ...]
    relations: tuple[Relation, ...]
    sought: tuple[Sought, ...]
    length_unit: str
    force_unit: str
    mass_unit: str
    turnovers: tuple[
        tuple[str, Fraction], ...
    ] = ()  # the sought angles, in degrees, past which a direction turns to its other side

    def force(self, name: str) -> Force:
        return next(each for each in self.forces if each.name == name)
