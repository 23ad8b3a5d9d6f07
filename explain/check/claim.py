"""On what ground a new line stands: what a rule says and the checker proves."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Union

from ..mechanics.body import Bearing
from ..equation.terms import Equation, Letter, Power, Term, Trig, lone


AT_REST = ("total", "level", "upright")
ALONG_AXES = ("along", "across")


@dataclass(frozen=True, slots=True)
class AtRest:
    """The sum that vanishes at rest (`key` is one of AT_REST), or `M_J = 0` of the joint force about its own point
    (keys.JOINT_MOMENT).
    """

    key: str


@dataclass(frozen=True, slots=True)
class Balance:
    """Every force with its sign, term by term, equal to zero: moments about the pivot (`about` another force's point),
    or
    components along an axis. `sense` is +1 or -1: the moments are counted counter-clockwise, or clockwise, positive."""

    axis: Bearing | None = None
    about: str = ""
    sense: int = 1
    total: str = ""  # the letter of the sum, where it is not zero but asked


@dataclass(frozen=True, slots=True)
class Follows:
    """A relation of the truth: a weight from a mass, a share, a multiple, a line from its two sides (as squares)."""

    key: str


@dataclass(frozen=True, slots=True)
class Arm:
    """letter = the perpendicular distance of a force: its moment over its size, `sense` +1 where it turns
    counter-clockwise.
    """

    force: str
    sense: int
    about: str = ""


@dataclass(frozen=True, slots=True)
class Turning:
    """letter = the part of a force across the bone: its moment over its distance from the pivot."""

    force: str
    sense: int


@dataclass(frozen=True, slots=True)
class Moment:
    """letter = the moment of a force, counted positive in `sense`."""

    force: str
    sense: int


@dataclass(frozen=True, slots=True)
class Between:
    """letter = the acute angle from the line of a force, `first`, to a line that it is measured against."""

    force: str
    first: Bearing
    second: Bearing


@dataclass(frozen=True, slots=True)
class Pythagoras:
    """The joint force from its two parts: squares added, or the tangent of its angle; or its size where one part
    vanishes; or the friction that it needs, its part along the surface over that across.
    """

    parts: tuple[str, str]


@dataclass(frozen=True, slots=True)
class Stress:
    """letter = force over area."""

    force: str


@dataclass(frozen=True, slots=True)
class Scaled:
    """The line before, times `by` (free of unknowns, not zero)."""

    by: Term = Term(1, ())


@dataclass(frozen=True, slots=True)
class Put:
    """The line before with these known values put in, some of them in brackets."""

    names: tuple[str, ...]
    bracketed: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Rooted:
    """From x^2 = a, x = sqrt(a), where x is known not to be negative."""


@dataclass(frozen=True, slots=True)
class Inverted:
    """From sin x = a (cosine, tangent), x = the angle that the balance needs, of all that have this value."""


@dataclass(frozen=True, slots=True)
class Tangent:
    """From a sin x + b cos x = 0, tan x = -b/a; `by` is a, and the cosine is not zero or nothing could balance the
    sine.
    """

    by: Term


@dataclass(frozen=True, slots=True)
class Divided:
    """The line before over another certified one, side by side: from F sin x = a and F cos x = b, not zero, tan x =
    a/b. Where a is nothing,
    sin x = 0: what the lines share is not zero, or b would be."""

    by: Equation


@dataclass(frozen=True, slots=True)
class Converted:
    """letter = its given value in another unit, the factor shown."""

    key: str


@dataclass(frozen=True, slots=True)
class Rounded:
    """The value of a letter at the figures of an answer."""


Claim = Union[
    AtRest,
    Balance,
    Follows,
    Arm,
    Turning,
    Moment,
    Between,
    Pythagoras,
    Stress,
    Scaled,
    Put,
    Rooted,
    Inverted,
    Tangent,
    Divided,
    Converted,
    Rounded,
]
Defining = (Follows, Arm, Turning, Moment, Between, Pythagoras, Stress)
Premise = (AtRest, Balance, Follows, Arm, Turning, Moment, Between, Pythagoras, Stress, Converted)


def defines(line: Equation, claim: Claim) -> str:
    """The name of the letter to which a premise gives its meaning, "" where it gives none."""
    if isinstance(claim, Balance):
        return claim.total
    match lone(line.left):
        case Letter(name=name) | Power(base=Letter(name=name)) | Trig(angle=Letter(name=name)) if isinstance(
            claim, Defining
        ):
            return name
    return ""
