"""With the joint force put in, the moments about any other point add to zero too: this catches a slip in the force
balance as well.
"""

from __future__ import annotations

from math import hypot

from explain.mechanics.body import Force
from explain.document.english import is_a_weight, the, verb, weight_of
from explain.solve.outcome import SILENT, Finding, Outcome
from explain.wording.pivot_words import pivot_force
from explain.solve.comparable_numbers import NEGLIGIBLE, nothing_over, signed

LABEL = "A second pivot"


def look(outcome: Outcome) -> Finding:
    if not outcome.joint_asked or outcome.joint is None or not outcome.directed:
        return SILENT
    placed = [force for force in outcome.body.forces if force.steps and force.arm is None]
    if not placed:
        return SILENT
    other = max(placed, key=outcome.reach)
    terms = _terms(outcome, other, outcome.joint)
    largest, rest = max(map(abs, terms.values())), sum(terms.values())
    lost = outcome.moved * (
        outcome.way(other) * hypot(*outcome.joint) + sum(outcome.way(each) * outcome.pull(each) for each in placed)
    )
    if largest <= max(1e-12, lost):
        return SILENT
    shown = {name: each for name, each in terms.items() if abs(each) > float(NEGLIGIBLE) * largest}
    written = outcome.beside(tuple(shown.values()), outcome.one_moment, nothing_over)
    listed = ", ".join(f"{name} {signed(each)}" for name, each in zip(shown, written.numbers, strict=True))
    said = (
        f"About the point where {_acting(other)}, counter-clockwise positive: {listed} {outcome.moment_unit}, together"
    )
    if abs(rest) > lost:
        return Finding("fails", f"{said} {outcome.moment(rest)}.", LABEL, of=(other.name,))
    if written.true:
        return Finding("holds", f"{said} 0.", LABEL)
    return Finding(
        "holds", f"{said} {signed(written.total)} {outcome.moment_unit}, no more than rounding leaves.", LABEL
    )


def _acting(force: Force) -> str:
    """ "the weight of the dumbbell acts", "the biceps acts"."""
    if force.kind in ("weight", "load"):
        return f"{weight_of(force.name)} {verb(force.name if is_a_weight(force.name) else 'weight', 'act')}"
    return f"{the(force.name)} {verb(force.name, 'act')}"


def _terms(outcome: Outcome, other: Force, joint: tuple[float, float]) -> dict[str, float]:
    """The moment of everything that turns the body about the point where another force acts, in N m."""
    x, y = outcome.place(other)
    terms = {name: outcome.moments[name] - x * up + y * right for name, (right, up) in outcome.components.items()}
    terms |= {each.name: outcome.moments[each.name] for each in outcome.body.twists}
    return {**terms, pivot_force(outcome.body.problem): -x * joint[1] + y * joint[0]}
