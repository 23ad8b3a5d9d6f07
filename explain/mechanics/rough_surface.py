"""What a rough surface pushes with: along itself and straight away from itself, in floats."""

from __future__ import annotations

from collections.abc import Mapping
from math import cos, hypot, radians, sin

from ..equation import key as keys
from .body import Body
from .undetermined import Undetermined, plain
from ..problem.model import Pivot, Unknown

NOTHING = 1e-9


def push_on_surface(pivot: Pivot, values: Mapping[str, float]) -> tuple[float, float]:
    """The push on the body, in N: along the surface, and across it to the side of the body."""
    turn, right, up = radians(float(pivot.surface)), values[keys.RIGHT], values[keys.UP]
    return right * cos(turn) + up * sin(turn), up * cos(turn) - right * sin(turn)


def friction_needed(body: Body, values: Mapping[str, float]) -> dict[str, float]:
    """The least coefficient of friction, where it is sought. Raises Undetermined where none can hold the body on its
    surface.
    """
    pivot = body.problem.pivot
    if not isinstance(pivot.friction, Unknown) or keys.RIGHT not in values:
        return {}
    along, across = push_on_surface(pivot, values)
    if across <= NOTHING * hypot(along, across):
        raise Undetermined(
            file=body.problem.file,
            key="pivot.friction",
            found=f"no friction that holds: at rest the surface would have to pull the body with {plain(-across)} N",
            expected="forces that press the body on its surface, which lies on the other side of it",
            example='surface = "right"',
            advice="The body lies a quarter turn counter-clockwise of the direction of surface.",
        )
    return {keys.FRICTION: abs(along) / across}
