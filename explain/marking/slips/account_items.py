"""How one force or couple enters a working: its size, its arm leg by leg, its parts, in floats. Knows no balance and
proves nothing.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from math import cos, pi, sin, tan

Values = dict[str, float]
_FUNCTIONS: Mapping[str, Callable[[float], float]] = {"sin": sin, "cos": cos, "tan": tan}
_TURNS: Mapping[str, float] = {"deg": pi / 180, "rad": 1.0, "grad": pi / 200}


class Impossible(ArithmeticError):
    """No value fits: a sine above one, an unknown that drops out, a division by zero."""


@dataclass(frozen=True, slots=True)
class Turned:
    """A sign times a sine, cosine or tangent as it is written, "" for one (nothing is written); `over`: divided by it.

    `unknown` are angles with their sense.
    """

    sign: int = 1
    function: str = ""
    degrees: float = 0.0
    unknown: tuple[tuple[str, int], ...] = ()
    over: bool = False

    def value(self, values: Mapping[str, float], mode: str = "deg") -> float:
        """The number it stands for. Raises Impossible for a division by nothing."""
        if not self.function or not self.sign:
            return float(self.sign)
        angle = self.degrees
        for key, k in self.unknown:
            angle += k * values[key]
        found = _FUNCTIONS[self.function](angle * _TURNS[mode])
        if self.over:
            if abs(found) < 1e-12:
                raise Impossible("a division by nothing")
            return self.sign / found
        return self.sign * found


@dataclass(frozen=True, slots=True)
class Leg:
    """One term of a lever arm: the distance with its key (the value where it is known), and what it is multiplied
    by. `times` is a slip's factor.
    """

    key: str
    turned: Turned = Turned()
    times: float = 1.0


@dataclass(frozen=True, slots=True)
class Item:
    """One force or couple as it enters the working.

    `key` is its size's. A weight is mass x g^`powers`; with no mass the size is a datum, an unknown, or `multiple` of
    another (factor key, key).
    `legs` make up the arm, or `arm` is a datum's key. `turns` is +1 counter-clockwise. `scale` multiplies the size,
    `in_moments` and `in_forces`
    the term in the balances (0 leaves it out, -1 turns it over). `length` is the key of its segment's length, "" where
    that is not given.
    `joined` says how size and arm make the moment: "times", or by a slip "over" or "plus" (the number of the arm in the
    class's unit).
    """

    name: str
    kind: str  # muscle, force, weight, load, couple
    key: str
    mass: str = ""
    powers: int = 1
    multiple: tuple[str, str] = ("", "")
    legs: tuple[Leg, ...] = ()
    arm: str = ""
    turns: int = 1
    level: Turned | None = None
    upright: Turned | None = None
    count: int = 1
    scale: float = 1.0
    in_moments: float = 1.0
    in_forces: float = 1.0
    segment: str = ""
    length: str = ""
    joined: str = "times"

    def terms(self, values: Mapping[str, float], mode: str = "deg") -> float:
        """The arm in m, signed as `turns` says (never negative in the truth)."""
        if self.arm:
            return values[self.arm]
        total = 0.0
        for leg in self.legs:
            total += values[leg.key] * leg.turned.value(values, mode) * leg.times
        return total

    def moved_by(self, keys: set[str]) -> bool:
        """Whether its size, arm or parts change with one of these quantities."""
        if (
            self.key in keys
            or self.mass in keys
            or self.arm in keys
            or self.multiple[0] in keys
            or self.multiple[1] in keys
        ):
            return True
        turned = [leg.turned for leg in self.legs] + [each for each in (self.level, self.upright) if each is not None]
        return any(leg.key in keys for leg in self.legs) or any(
            key in keys for each in turned for key, _ in each.unknown
        )


@dataclass(frozen=True, slots=True)
class Share:
    """A datum that follows from others before any balance: so many per cent of another (`whole`), by the keys;
    `times` is a slip's factor.
    """

    key: str
    part: str
    whole: str
    times: float = 1.0
