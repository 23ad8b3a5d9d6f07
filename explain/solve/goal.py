"""What is to be worked out next: a closed set of kinds, each with what its rule needs to write the first line."""

from __future__ import annotations

from dataclasses import dataclass, field
from fractions import Fraction
from typing import ClassVar, Literal

from ..equation.terms import Letter, Terms, Unit
from ..mechanics.body import Bearing
from ..mechanics.geometry import Lever


@dataclass(frozen=True)
class Goal:
    """`key` names the quantity, relation or force, `sought` the letter wanted, `about` another force whose point takes
    the place of the pivot.

    A line is worked until its letter is found; or is left `open` in another unknown; or until one `part` of a force
    stands alone.
    """

    kind: ClassVar[str] = ""
    key: str
    sought: str
    asked: bool = field(default=False, kw_only=True)
    about: str = field(default="", kw_only=True)
    until: Literal["found", "open", "part"] = field(default="found", kw_only=True)


class AtRest(Goal):
    """The sum that vanishes."""

    kind = "at rest"


class Pivot(Goal):
    kind = "pivot"


class Stress(Goal):
    kind = "stress"


class Back(Goal):
    """A line that was left open is taken up again."""

    kind = "back"


@dataclass(frozen=True)
class Convert(Goal):
    kind = "convert"
    unit: Unit


@dataclass(frozen=True)
class Relation(Goal):
    """What a quantity follows from; `newtons` where it comes out in newtons, in a class of pounds too."""

    kind = "relation"
    newtons: bool = False


@dataclass(frozen=True)
class Fold(Goal):
    """The acute angle between two lines, and which these are in words."""

    kind = "fold"
    first: Bearing
    second: Bearing
    acute: Fraction
    which: str


@dataclass(frozen=True)
class Arm(Goal):
    kind = "arm"
    lever: Lever


class Turning(Arm):
    kind = "turning"


@dataclass(frozen=True)
class Moments(Goal):
    """The balance of moments, counted positive in `sense`; or their sum where that is sought."""

    kind = "moments"
    sense: int
    terms: Terms


class Moment(Moments):
    """The moment of one force."""

    kind = "moment"


class MomentLetters(Moments):
    """The balance of moments in the moments' own letters, before the products."""

    kind = "moment letters"


@dataclass(frozen=True)
class Forces(Goal):
    """The balance of forces along an axis, the `way` in words."""

    kind = "forces"
    axis: Bearing
    terms: Terms
    way: str


@dataclass(frozen=True)
class Resultant(Goal):
    """The size of the joint force from its two parts."""

    kind = "resultant"
    parts: tuple[Letter, Letter]


class ResultantAngle(Resultant):
    kind = "resultant angle"


class Friction(Resultant):
    """The least coefficient of friction, from the two parts of the push at the pivot."""

    kind = "friction"


@dataclass(frozen=True)
class Ratio(Goal):
    """An angle from the part of a force, of size `size`, in the balance `key` over its part in the balance `cosine`."""

    kind = "ratio"
    size: str
    cosine: str
