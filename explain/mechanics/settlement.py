"""Which condition settles which unknown, in floats: the route through the balances, every root of an angle, and what
cannot be settled.

Decides nothing about the page; the walkthrough derives each value again, certified.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from itertools import combinations, permutations
from types import MappingProxyType

from ..equation import key as keys
from .body import Body
from .balances import Conditions
from ..errors import NoWay
from ..exact.linear import NOTHING, solved
from .polar import Polar, alone, polar_values
from .rough_surface import friction_needed
from .sharing import turn_one_way
from .sine_roots import NoRoot, key_of_angle, roots_of
from .truth import Truth
from .undetermined import Undetermined, consistent, not_settled, plain

CLOSE = 1e-9  # of the largest term: a root of a balance, in floats

__all__ = ("Settled", "Settling", "Stage", "Undetermined", "settle")


@dataclass(frozen=True, slots=True)
class Stage:
    """One balance and the unknown it settles: `balance` is "moments", "level", "upright", or "moments about NAME".

    With `partners`, further pairs of a balance and an unknown, they settle their unknowns together:
    each but the last gives its unknown by the later ones; or, where the partner is an angle, they are the two parts of
    one force.
    """

    balance: str
    unknown: str
    partners: tuple[tuple[str, str], ...] = ()

    @property
    def polar(self) -> bool:
        """Whether it settles the size and the angle of one force, from its two parts."""
        return any(keys.of(unknown).is_angle for _, unknown in self.partners)


@dataclass(frozen=True, slots=True)
class Settled:
    """Values of all letters (kg, m, s, degrees), the stages in order, and for an angle its roots the wanted one
    first.
    """

    values: Mapping[str, float]
    stages: tuple[Stage, ...] = ()
    roots: Mapping[str, Sequence[float]] = field(default_factory=dict)

    def largest_force(self, default: float = 0.0) -> float:
        """N, the largest force or weight without its sign."""
        return max((abs(value) for key, value in self.values.items() if keys.of(key).is_force), default=default)


class Settling(Conditions):
    """One search for a route."""

    def __init__(self, body: Body, truth: Truth, posture: Mapping[str, float] = MappingProxyType({})) -> None:
        super().__init__(body, truth)
        self.posture = posture
        self.stages: list[Stage] = []
        self.roots: dict[str, list[float]] = {}

    def settle(self) -> Settled:
        turn_one_way(self.body, self.truth, self.values_with({}))
        open_conditions = list(self.conditions)
        while self.pending:
            found = self._single(open_conditions)
            if found is None:
                together = self._together(open_conditions)
                pull = None if together else alone(self, open_conditions)
                if together is not None:
                    self._solve_together(together)
                elif pull is not None:
                    together = self._solve_polar(pull)
                else:
                    break
                used = (together.balance, *(balance for balance, _ in together.partners))
                open_conditions = [each for each in open_conditions if each not in used]
                continue
            balance, unknown = found
            self._solve(balance, unknown)
            self.stages.append(Stage(balance, unknown))
            self.pending.remove(unknown)
            open_conditions.remove(balance)
        if self.pending:
            not_settled(self, open_conditions)
        consistent(self, open_conditions)
        values = self.values_with({})
        turn_one_way(self.body, self.truth, values)
        return Settled(
            {**values, **self._masses(values), **friction_needed(self.body, values)}, tuple(self.stages), self.roots
        )

    def _single(self, conditions: list[str]) -> tuple[str, str] | None:
        """The first balance that depends on one unknown; the moments about the pivot come first, those about other
        points last.
        """
        for balance in conditions:
            found = [name for name in self.pending if self.depends(balance, name)]
            if len(found) == 1:
                return balance, found[0]
        return None

    def _together(self, conditions: list[str]) -> Stage | None:
        """Two or three balances that depend evenly on as many unknowns, and tell them apart."""
        independent = sorted(
            (each for each in conditions if not each.startswith("moments about")), key=lambda name: name == "moments"
        )
        for count in (2, 3):
            for balances in combinations(independent, count):
                found = [name for name in self.pending if any(self.depends(each, name) for each in balances)]
                if len(found) != count or any(keys.of(name).is_angle for name in found):
                    continue
                order = _ordered(balances, found, self)
                if order is not None and len(solved(self.system(balances, found))) == count:
                    return Stage(*order[0], order[1:])
        return None

    def _solve_together(self, stage: Stage) -> None:
        pairs = ((stage.balance, stage.unknown), *stage.partners)
        names = [unknown for _, unknown in pairs]
        for name, value in zip(names, solved(self.system([balance for balance, _ in pairs], names)), strict=True):
            self.known[name] = value
        self.stages.append(stage)
        self.pending = [name for name in self.pending if name not in names]

    def _solve_polar(self, pull: Polar) -> Stage:
        """The size and the angle of one force from the level and the upright forces."""
        self.known[pull.size], self.known[pull.angle] = polar_values(self, pull, self.posture)
        self.roots[pull.angle] = [self.known[pull.angle]]
        self.stages.append(Stage("level", pull.size, (("upright", pull.angle),)))
        self.pending = [name for name in self.pending if name not in (pull.size, pull.angle)]
        return self.stages[-1]

    def _solve(self, balance: str, unknown: str) -> None:
        others = {name: 0.5 for name in self.pending if name != unknown}

        def at(value: float) -> float:
            return self.evaluate(balance, {**others, unknown: value})

        if keys.of(unknown).is_angle:
            self.known[unknown] = self._angle(balance, unknown, at)
            return
        constant = at(0.0)
        step = max(1.0, abs(constant))  # beside a huge constant a step of one is lost
        slope = (at(step) - constant) / step
        if abs(at(2 * step) - constant - 2 * step * slope) > 1e-6 * (abs(step * slope) + abs(constant)):
            raise NoWay(
                f"The {balance} do not depend evenly on {self.name_of(unknown)}, so this working cannot settle it."
            )
        value = -constant / slope
        values = self.values_with({**others, unknown: value})
        largest = max((abs(values[each.size.name]) for each in self.body.forces), default=1.0)
        self.known[unknown] = (
            0.0 if abs(value) < NOTHING * largest and keys.of(unknown).what not in ("at", "moment_arm") else value
        )

    def _angle(self, balance: str, unknown: str, at: Callable[[float], float]) -> float:
        """The first root of a balance in an angle; in a given posture the angle of the posture, if it balances."""
        scale = self.scale(balance, {**{name: 0.5 for name in self.pending}, unknown: 37.0})
        posture = self.posture.get(unknown)
        if posture is None:
            self.roots[unknown] = roots_of(self, balance, unknown, at, scale)
        elif abs(at(posture)) > CLOSE * scale:
            raise NoRoot(
                file=self.body.problem.file,
                key=key_of_angle(unknown),
                found=f"moments that do not balance at {plain(posture)} degrees",
                expected="an angle that balances",
            )
        else:
            self.roots[unknown] = [posture]
        return self.roots[unknown][0]

    def _masses(self, values: Mapping[str, float]) -> dict[str, float]:
        """The masses that only their weights tell."""
        weights = {each.of[0].name: each for each in self.body.relations if each.kind == "weight"}
        return {
            mass: weight.sign * values[weight.letter.name] / values["g"]
            for mass, weight in weights.items()
            if mass not in values
        }


def _ordered(
    balances: Sequence[str], unknowns: Sequence[str], settling: Settling
) -> tuple[tuple[str, str], ...] | None:
    """Each balance with an unknown it depends on; friction with the part of the push that it is."""
    for names in permutations(unknowns):
        pairs = tuple(zip(balances, names, strict=True))
        apart = all(name == settling.used_up for balance, name in pairs if balance == "friction")
        if apart and all(settling.depends(balance, name) for balance, name in pairs):
            return tuple(zip(balances, names, strict=True))
    return None


def settle(body: Body, truth: Truth, posture: Mapping[str, float] = MappingProxyType({})) -> Settled:
    """The route and the values; `posture` tells angles that were found before.

    Raises Fault where the unknowns are not settled, NoWay where no route was found.
    """
    return Settling(body, truth, posture).settle()
