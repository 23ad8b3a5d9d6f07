"""A problem as its author wrote it: the nouns of a problem file. Knows no mechanics and reads no file."""

from __future__ import annotations

from dataclasses import dataclass, field
from fractions import Fraction
from typing import Union

from .course import Course
from ..equation.terms import Quantity


@dataclass(frozen=True, slots=True)
class Unknown:
    """What "?" stands for."""


@dataclass(frozen=True, slots=True)
class Percent:
    """A share in per cent, as written: of the person's mass or weight, or of the segment's length."""

    number: Quantity


@dataclass(frozen=True, slots=True)
class FromTable:
    """`"table"`: to be looked up in the person's segment table."""


@dataclass(frozen=True, slots=True)
class Multiple:
    """`"0.70 * biceps"`: so many times another force."""

    factor: Quantity
    of: str


@dataclass(frozen=True, slots=True)
class AtLimit:
    """`force = "limit"`: the muscle pulls with its limit."""


@dataclass(frozen=True, slots=True)
class Hung:
    """`hung = "6 kg"`: a cable over a smooth pulley, with this mass at its other end."""

    mass: Quantity | Unknown


UNKNOWN = Unknown()
BURDENS = ("next line follows", "key lines shown")
Amount = Union[Quantity, Percent, Unknown]
Pair = tuple[Quantity, Quantity]


@dataclass(frozen=True, slots=True)
class Direction:
    """`turn` degrees from `start` the shorter way toward `toward`; both are of up, down, left, right, out, back.

    `"30 deg below right"` is 30 degrees from right toward down. With no turn (None) the direction is `start` itself.
    """

    start: str
    turn: Quantity | Unknown | None = None
    toward: str = ""
    written: str = ""


@dataclass(frozen=True, slots=True)
class Place:
    """`at` along the segment `on` (empty: the last), or `point` from the pivot; both None where only a moment arm is
    known.
    """

    at: Amount | None = None
    on: str = ""
    point: Pair | None = None


@dataclass(frozen=True, slots=True)
class Segment:
    name: str
    length: Quantity | None = None
    direction: Direction = Direction("right")
    mass: Quantity | Percent | FromTable | Unknown | None = None
    weight: Amount | None = None
    com: Quantity | Percent | FromTable | Unknown | None = None
    start: str = ""  # the key `from`; empty: the segment before, the first at the pivot
    range: Pair | None = None


@dataclass(frozen=True, slots=True)
class Spread:
    """Two distances along a segment between which a load is spread: evenly, or `growing` evenly from nothing at the
    first.
    """

    ends: Pair
    growing: bool = False


@dataclass(frozen=True, slots=True)
class Load:
    """A `weight` in newtons per centimetre is that of each centimetre of a spread load; of one that grows, at its
    second end.
    """

    name: str
    place: Place
    mass: Amount | None = None
    weight: Amount | None = None
    spread: Spread | None = None

    @property
    def per_length(self) -> bool:
        return isinstance(self.weight, Quantity) and len(self.weight.unit) > 1


@dataclass(frozen=True, slots=True)
class Pull:
    """A muscle (`kind` "muscle") or any other force (`kind` "force")."""

    kind: str
    name: str
    place: Place = Place()
    direction: Direction | None = None
    toward: Pair | None = None
    moment_arm: Quantity | Unknown | None = None
    turns: int = 0  # +1 counter-clockwise, -1 clockwise, 0 where not given
    force: Quantity | Percent | Multiple | AtLimit | Hung | Unknown = UNKNOWN
    limit: Quantity | Unknown | None = None
    area: Quantity | None = None
    count: int = 1
    range: Pair | None = None
    share: str = ""  # "area": equal pull for each square centimetre, with all others that say so


@dataclass(frozen=True, slots=True)
class Couple:
    name: str
    moment: Quantity | Unknown
    turns: int


@dataclass(frozen=True, slots=True)
class Pivot:
    """What pushes there is a `bone`, or a `support`; where neither is named, a support.

    A rough `surface` is told by its direction in degrees; the body lies a quarter turn counter-clockwise of it.
    `slips` is +1 where the body is about to slip along it, -1 where back, 0 where that is not told.
    """

    name: str = "pivot"
    bone: str = ""
    reaction: bool = True
    support: str = ""
    surface: Fraction = Fraction(0)
    friction: Quantity | Unknown | None = None
    slips: int = 0


@dataclass(frozen=True, slots=True)
class Person:
    mass: Quantity | None = None
    height: Quantity | None = None
    table: str = ""  # a published table's name, or a path
    sex: str = ""  # "" | female | male
    own: str | None = field(default=None, repr=False)  # what the file at that path says


@dataclass(frozen=True, slots=True)
class Mark:
    """One row of the author's marking scheme: `kind` method, accuracy, independent or communication; `needs` what it
    looks for, as written.
    """

    kind: str
    what: str
    marks: int
    needs: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Accept:
    """A line of a working that a person accepted, whatever the judge says of it; `because` is told with it, `after`
    are the lines that it rests on.
    """

    line: str
    because: str = ""
    after: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Problem:
    """One problem file. `ask` is as written, empty where the file does not say; `file` is where it was read from."""

    title: str
    pivot: Pivot = Pivot()
    statement: str = ""
    course: Course = field(default_factory=Course)
    neglect: tuple[str, ...] = ()
    ask: tuple[str, ...] = ()
    balanced: bool = True
    figure_shown: bool = False  # to those who are to work it
    person: Person | None = None
    segments: tuple[Segment, ...] = ()
    loads: tuple[Load, ...] = ()
    pulls: tuple[Pull, ...] = ()  # muscles and forces in the order of the file's tables, muscles first
    couples: tuple[Couple, ...] = ()
    file: str = ""
    marks: tuple[Mark, ...] = ()
    burden: str = BURDENS[0]  # what a working has to show
    accepted: tuple[Accept, ...] = ()
    tables: tuple[str, ...] = field(default=(), compare=False)  # in the order in which the file first has them

    def __repr__(self) -> str:
        return f"<Problem {self.title!r}>"
