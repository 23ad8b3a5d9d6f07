"""How a load that is spread along a segment is put into words."""

from __future__ import annotations

from ..document.english import its, the, verb
from ..equation.terms import Quantity
from .phrases import before, segment_of, told
from ..problem.model import Load, Problem


def spread(problem: Problem, load: Load) -> str:
    """What a spread load does: "is spread evenly between 10 cm and 40 cm from the trestle"."""
    assert load.spread is not None
    does = verb(load.name, "grow") if load.spread.growing else f"{verb(load.name, 'be')} spread"
    return f"{does} evenly {spread_between(problem, load)}"


def spread_between(problem: Problem, load: Load) -> str:
    """Between which distances a load is spread: "between 10 cm and 40 cm from the trestle"; of one that grows, "from
    nothing at 10 cm to its heaviest at 40 cm from the trestle".
    """
    assert load.spread is not None
    segment = segment_of(problem, load.place)
    near = problem.pivot.name if not before(problem, segment) else f"near end of {the(segment)}"
    behind = [each.number < 0 for each in load.spread.ends]
    first, second = (
        f"{told(each)} on the other side of {the(near)}" if other and not all(behind) else told(each)
        for each, other in zip(load.spread.ends, behind, strict=True)
    )
    if all(behind):
        second = f"{second} on the other side of {the(near)}"
    elif not behind[1]:
        second = f"{second} from {the(near)}"
    if load.spread.growing:
        per_length = load.weight if load.per_length and isinstance(load.weight, Quantity) else None
        most = told(per_length) if per_length else f"{its(load.name)} heaviest"
        return f"from nothing at {first} to {most} at {second}"
    return f"between {first} and {second}"
