"""Turn a sine, cosine or tangent back into its angle, taking of its two angles the one the joint allows."""
from __future__ import annotations

from typing import NamedTuple

from explain.board import Board, is_plain
from explain.claim import Inverted
from explain.equation import Equation, Inverse, Letter, Quantity, Term, Terms, Trig, lone, term
from explain.interval import middle
from explain.rule import Say, Shows, Step

HALF_TURN, FULL_TURN = Quantity.of("180", "deg"), Quantity.of("360", "deg")


class Sight(NamedTuple):
    angle: Letter
    function: str
    right: Terms
    branch: int


def when(board: Board) -> Sight | None:
    """A sine, cosine or tangent of the sought angle, alone on the left, equal to a number."""
    if board.equation is None:
        return None
    ratio, right = lone(board.eq.left), board.eq.right
    if not isinstance(ratio, Trig) or not isinstance(ratio.angle, Letter) or ratio.angle.name != board.sought:
        return None
    if right and not (len(right) == 1 and is_plain(right[0])):
        return None
    right = right or (term(Quantity.of("0")),)
    return Sight(ratio.angle, ratio.name, right, _branch(board, ratio.name, right))


def _branch(board: Board, function: str, right: Terms) -> int:
    """Which of the angles is the one the joint allows."""
    wanted = board.settled_angles.get(board.sought)
    if wanted is None:
        return 0
    distance = [abs(middle(board.sizes.sum(angle_of(function, right, branch))) - wanted) for branch in range(4)]
    return distance.index(min(distance))


def angle_of(function: str, right: Terms, branch: int) -> Terms:
    """The angles with this sine, cosine or tangent: branch 0 the principal one, 1 the other; 2 and 3 the same a whole turn on."""
    principal = term(Inverse(function, right))
    other = {"sin": (term(HALF_TURN), principal.flipped()), "cos": (principal.flipped(),), "tan": (term(HALF_TURN), principal)}[function]
    chosen: Terms = (principal,) if branch % 2 == 0 else other
    return (term(FULL_TURN), *chosen) if branch >= 2 else chosen


def do(board: Board, sight: Sight) -> Step:
    return Step(Equation((term(sight.angle),), angle_of(sight.function, sight.right, sight.branch)), Inverted(sight.branch > 0))


say = Say(what="ask which angle has this value", why="the inverse function answers with one angle; another angle of the turn has the same value, and is tried too")

_t = Letter("angle t", "theta")
_half = Equation((term(Trig("sin", _t)),), (term(Quantity.of("0.5")),))
shows = (Shows(Board(_half, "angle t"), "θ = sin⁻¹(0.5)"), Shows(Board(_half, "angle t", settled_angles={"angle t": 150.0}), "θ = 180° − sin⁻¹(0.5)"))
leaves = (Board(_half, "F"), Board(Equation((term(_t),), (Term(1, (Quantity.of("30", "deg"),)),)), "angle t"))
