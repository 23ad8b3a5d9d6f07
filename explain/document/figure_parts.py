"""The parts in which a free-body diagram grows on a board: body, forces, arms, positive ways. Knows no looks."""

from __future__ import annotations

from .passage import Arrow, Drawing, Turn

BODY, ARMS, SIGNS, JOINT = "body", "arms", "signs", "joint"


def part_of(force: Arrow | Turn) -> str:
    """The part that a force is; the parts of the joint force are one."""
    return JOINT if force.kind == "joint" else force_part(force.name)


def force_part(name: str) -> str:
    """The part that the force of this name is; no name begins with a star."""
    return f"*{name}"


def parts(drawing: Drawing) -> tuple[str, ...]:
    """All parts of a drawing, in the order in which they are drawn on a board."""
    forces = dict.fromkeys((*map(part_of, drawing.arrows), *map(part_of, drawing.turns)))
    joint = (JOINT,) if JOINT in forces else ()
    arms = (ARMS,) if drawing.spans or drawing.openings or any(each.arm for each in drawing.arrows) else ()
    signs = (SIGNS,) if drawing.axes or drawing.sense else ()
    return (BODY, *(each for each in forces if each != JOINT), *joint, *arms, *signs)
