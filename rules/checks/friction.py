"""Whether a rough surface holds the body: what it pushes along itself, against what it could."""

from __future__ import annotations

from explain.document.english import the
from explain.equation.terms import Quantity
from explain.mechanics.rough_surface import push_on_surface
from explain.solve.outcome import SILENT, Finding, Outcome

LABEL = "Friction"
BLUR = 1e-9


def look(outcome: Outcome) -> Finding:
    pivot = outcome.body.problem.pivot
    if not isinstance(pivot.friction, Quantity) or outcome.joint is None or not outcome.body.problem.balanced:
        return SILENT
    right, up = outcome.joint
    along, across = push_on_surface(pivot, {"reaction.right": right, "reaction.up": up})
    lost, place = BLUR * outcome.all_forces + outcome.moved * outcome.all_forces, the(outcome.pivot)
    if across < -lost:
        return Finding(
            "fails",
            f"At {place} the surface would have to pull with {outcome.force(-across)}, and it can only push: the body "
            "lifts off. Look again at the forces, and at the side on which the surface lies.",
            LABEL,
        )
    most = float(pivot.friction.number) * max(across, 0.0)
    if pivot.slips:
        return _about_to_slip(outcome, (along, across), most, lost)
    needed = f"At {place} {outcome.force(abs(along))} of friction are needed, and there are"
    at_most = f"{outcome.force(most)} ({_coefficient(outcome, across)})"
    if abs(along) > most + lost:
        return Finding("fails", f"{needed} at most {at_most}: the body slips.", LABEL)
    spare = outcome.force(max(0.0, most - abs(along)))
    return Finding("holds", f"{needed} up to {at_most}: it holds, with {spare} to spare.", LABEL)


def _coefficient(outcome: Outcome, across: float) -> str:
    """ "0.40 times the normal force of 873 N"."""
    friction = outcome.body.problem.pivot.friction
    assert isinstance(friction, Quantity)
    return f"{friction.number} times the normal force of {outcome.force(max(across, 0.0))}"


def _about_to_slip(outcome: Outcome, push: tuple[float, float], most: float, lost: float) -> Finding:
    """What was told of slipping, put back: all of the friction is used, against the slipping."""
    along, across = push
    said = (
        f"At {the(outcome.pivot)} the friction is {outcome.force(abs(along))}, of at most {outcome.force(most)} "
        f"({_coefficient(outcome, across)})"
    )
    if abs(along + outcome.body.problem.pivot.slips * most) > lost + 1e-6 * most:
        return Finding("fails", f"{said}: where the body is about to slip they should be the same.", LABEL)
    return Finding("holds", f"{said}: all of it is used, as where a body is about to slip.", LABEL)
