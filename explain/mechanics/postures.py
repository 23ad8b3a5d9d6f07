"""The postures in which a body can be at rest where an angle is sought: every root, each found with the directions as
they turn in its own posture.

"30 deg from down toward out" turns to the other side where the sought slope passes the level; so the turn is cut into
the pieces between such
slopes, each piece is settled by itself, and what is found must lie in its piece and balance again when the body is cut
free in that very posture.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from fractions import Fraction
from itertools import pairwise, product
from typing import NamedTuple

from ..equation import key as keys
from .body import Body
from ..errors import Fault
from .free_body import cut_free
from ..problem.model import Problem
from .settlement import Settled, Settling, settle
from .sine_roots import NoRoot, key_of_angle
from .truth import Truth
from .undetermined import Undetermined, plain

Ends = tuple[Fraction, Fraction]
CLOSE = 1e-9  # degrees: an end of a range belongs to it


class Posture(NamedTuple):
    """A body cut free at its angles, with what is settled of it; `further` are the other postures at which it can
    be at rest.
    """

    body: Body
    truth: Truth
    settled: Settled
    further: tuple[Posture, ...] = ()

    @property
    def angles(self) -> dict[str, float]:
        """The sought angles of this posture in degrees, by key."""
        return {angle: roots[0] for angle, roots in self.settled.roots.items()}


def at_rest(body: Body) -> Posture:
    """The body in the posture that is wanted; its roots are all there are, the wanted one first. Raises Fault and
    NoWay.
    """
    angles = [each.letter.name for each in body.sought if keys.of(each.letter.name).is_angle]
    if not angles:
        truth = Truth(body)
        return Posture(body, truth, settle(body, truth))
    found: dict[tuple[float, ...], Posture] = {}
    refusals: list[Fault] = []
    for each in _candidates(body, angles, refusals):
        try:
            found[each] = _posture(body.problem, dict(zip(angles, each, strict=True)))
        except (NoRoot, Undetermined) as refusal:
            refusals.append(refusal)
    if not found:
        raise refusals[0] if refusals else _none(body, angles[0])
    order = _in_order(body, angles, sorted(found))
    best, *further = (found[each] for each in order)
    roots = {angle: list(dict.fromkeys(each[place] for each in order)) for place, angle in enumerate(angles)}
    return best._replace(settled=replace(best.settled, roots=roots), further=tuple(further))


def as_given(body: Body) -> Posture:
    """A body that need not be at rest, with what is given and what follows from it."""
    truth = Truth(body)
    return Posture(body, truth, Settled(Settling(body, truth).values_with({})))


def _posture(problem: Problem, angles: Mapping[str, float]) -> Posture:
    """A body cut free at its angles. Raises NoRoot where it does not balance there, Undetermined where another
    condition does not hold.
    """
    body = cut_free(problem, {angle: Fraction(root) for angle, root in angles.items()})
    truth = Truth(body)
    return Posture(body, truth, settle(body, truth, angles))


def _candidates(body: Body, angles: Sequence[str], refusals: list[Fault]) -> Iterator[tuple[float, ...]]:
    """The roots of each piece of the turn that lie in that piece; why others have none is added to the refusals."""
    for piece, part in _parts(body, angles):
        settling = Settling(part, Truth(part))
        try:
            settling.settle()
        except (NoRoot, Undetermined) as refusal:
            refusals.append(refusal)
        for each in product(*(settling.roots.get(angle, ()) for angle in angles)):
            if all(_lies_in(root, *ends) for root, ends in zip(each, piece, strict=True)):
                yield each


def _parts(body: Body, angles: Sequence[str]) -> list[tuple[tuple[Ends, ...], Body]]:
    """The pieces of the turn in which no direction turns to its other side, each with the body cut free there.

    Where a bone itself is given by two rays, the slopes at which others turn over differ from piece to piece: cut on
    until none is new.
    """
    slopes = set(body.turnovers)
    while True:
        pieces = product(*(_pieces(sorted(slope for name, slope in slopes if name == angle)) for angle in angles))
        parts = [
            (
                piece,
                cut_free(
                    body.problem, {angle: (low + high) / 2 for angle, (low, high) in zip(angles, piece, strict=True)}
                ),
            )
            for piece in pieces
        ]
        more = slopes.union(*(part.turnovers for _, part in parts))
        if more == slopes:
            return parts
        slopes = more


def _pieces(ends: Sequence[Fraction]) -> tuple[Ends, ...]:
    return tuple(pairwise((*ends, ends[0] + 360))) if ends else ((Fraction(-1), Fraction(360)),)


def _lies_in(root: float, low: Fraction, high: Fraction) -> bool:
    return any(low < each < high for each in (root, root + 360))


def _in_order(body: Body, angles: Sequence[str], found: Sequence[tuple[float, ...]]) -> list[tuple[float, ...]]:
    """Those within the range that was given first, or up to 180 degrees where none was. Raises Fault where none is
    within a given range.
    """
    order = list(found)
    for place, angle in reversed(list(enumerate(angles))):
        given = next((each.range for each in body.sought if each.letter.name == angle), None)
        low, high = (float(end) for end in given or (0, 180))
        inside = [each for each in order if low - CLOSE <= each[place] <= high + CLOSE]
        if given and not inside:
            only = " and ".join(f"{plain(root)} degrees" for root in sorted({each[place] for each in order}))
            raise Fault(
                file=body.problem.file,
                key=key_of_angle(angle).replace(".direction", ".range"),
                found=f"balance at {only} only",
                expected=f"an angle between {low:g} and {high:g} degrees",
                example='range = ["0 deg", "180 deg"]',
            )
        order = [*inside, *[each for each in order if each not in inside]]
    return order


def _none(body: Body, angle: str) -> Fault:
    return NoRoot(
        file=body.problem.file,
        key=key_of_angle(angle),
        found="no angle at which the moments add to zero",
        expected="an angle that balances: past the horizontal or the vertical a direction told between two rays "
        "turns to "
        "its other side, "
        "and on neither side is there one",
        example='force = "?"',
        advice="Give the angle, and ask for a force.",
    )
