"""Letters with their sign: each stands for the vertical part of its force, of a force down for a number below nothing.
Changes no force, only what its letter means.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from .body import Body, Force, Given, Relation
from ..errors import Fault
from ..problem.model import Problem

Signed = tuple[tuple[Force, ...], tuple[Given, ...], tuple[Relation, ...]]


def with_signs(
    problem: Problem, forces: Sequence[Force], givens: Sequence[Given], relations: Sequence[Relation]
) -> Signed:
    """The forces, what is given and what follows, with a sign in each force's letter: up is positive. Raises Fault
    where a force is not vertical.
    """
    slanting = [each.name for each in forces if not _is_vertical(each)]
    if slanting:
        raise Fault(
            file=problem.file,
            key="course.signs",
            found=f'"with the numbers" and "up is positive", but {slanting[0]} is not vertical',
            expected="vertical forces alone, each of which has one sign, or the signs in the equation",
            example='signs = "in the equation"',
        )
    down = {each.size.name for each in forces if each.bearing is not None and each.bearing.degrees % 360 == 270}
    return (
        tuple(replace(each, sign=-1) if each.size.name in down else each for each in forces),
        tuple(replace(each, sign=-1) if each.letter.name in down else each for each in givens),
        tuple(
            replace(each, sign=-1) if sum(letter.name in down for letter in (each.letter, *each.of)) % 2 else each
            for each in relations
        ),
    )


def of_force_down(body: Body) -> frozenset[str]:
    """The letters that stand for the part of their force against its direction."""
    return frozenset(each.size.name for each in body.forces if each.sign < 0)


def along_each(body: Body, values: Mapping[str, float]) -> Mapping[str, float]:
    """Values with that of each force along its own direction, whichever its letter stands for."""
    against = of_force_down(body)
    if not against:
        return values
    return {key: -value if key in against else value for key, value in values.items()}


def _is_vertical(force: Force) -> bool:
    return force.bearing is not None and not force.bearing.unknown and force.bearing.degrees % 180 == 90
