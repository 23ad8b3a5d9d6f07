"""Turn a sine, cosine or tangent back into its angle, taking of its two angles the one the joint allows."""

from __future__ import annotations

from decimal import Decimal
from typing import NamedTuple

from explain.solve.board import Board, is_plain
from explain.check.claim import Inverted
from explain.equation.terms import (
    DEGREE,
    Equation,
    Group,
    Inverse,
    Letter,
    Quantity,
    Term,
    Terms,
    Trig,
    lone,
    term,
)
from explain.exact.interval import Sizes, middle
from explain.solve.rule import Say, Shows, Step

HALF_TURN = Quantity.of("180", "deg")
BRANCHES = (0, 1, 2, 3, -2, -1)


on = frozenset({Trig})


class Sight(NamedTuple):
    angle: Terms
    function: str
    right: Terms
    branch: int
    also: str


def when(board: Board, line: Equation) -> Sight | None:
    """A sine, cosine or tangent of the sought angle, or of a sum with it, alone on the left, equal to a number."""
    ratio, right = lone(line.left), line.right
    if (
        not isinstance(ratio, Trig)
        or board.sought not in ratio.angle.letters
        or (right and not (len(right) == 1 and is_plain(right[0])))
    ):
        return None
    angle = ratio.angle.terms if isinstance(ratio.angle, Group) else (term(ratio.angle),)
    right = right or (term(Quantity.of("0")),)
    return Sight(angle, ratio.name, right, _branch(board, angle, ratio.name, right), _also(board, ratio.name))


def _also(board: Board, function: str) -> str:
    """What is to be said of the other angle."""
    if board.beside is not None:
        name = {"tan": "tangent", "sin": "sine", "cos": "cosine"}[function]
        return f"of the two angles with this {name} it is the one that gives both parts of the force their signs"
    return "another angle of the turn has it too: see the discussion" if board.sought in board.settled else ""


def _branch(board: Board, angle: Terms, function: str, right: Terms) -> int:
    """Which of the angles is the one the joint allows."""
    wanted = board.settled.get(board.sought)
    if wanted is None:
        return 0
    at = middle(Sizes({board.sought: (term(Quantity(Decimal(repr(wanted)), DEGREE)),)}).sum(angle))
    principal = middle(board.sizes.sum((term(Inverse(function, right)),)))
    other = {"sin": 180 - principal, "cos": -principal, "tan": 180 + principal}[function]
    return min(BRANCHES, key=lambda branch: abs((principal, other)[branch % 2] + 360 * (branch // 2) - at))


def angle_of(function: str, right: Terms, branch: int) -> Terms:
    """The angles with this sine, cosine or tangent: branch 0 the principal one, 1 the other; each 2 more or less is
    a whole turn.
    """
    principal = term(Inverse(function, right))
    other = {
        "sin": (term(HALF_TURN), principal.flipped()),
        "cos": (principal.flipped(),),
        "tan": (term(HALF_TURN), principal),
    }[function]
    chosen: Terms = (principal,) if branch % 2 == 0 else other
    turns = branch // 2
    if not turns:
        return chosen
    whole = term(Quantity(HALF_TURN.number * 2 * abs(turns), DEGREE), sign=1 if turns > 0 else -1)
    return (whole, *chosen) if turns > 0 else (*chosen, whole)


def do(board: Board, sight: Sight) -> Step:
    return Step(Equation(sight.angle, angle_of(sight.function, sight.right, sight.branch)), Inverted())


say = Say(what="the angle that has this value", why="{also}")

_t, _b = Letter("*angle t", "theta"), Letter("*angle reaction", "beta")
_half = Equation((term(Trig("sin", _t)),), (term(Quantity.of("0.5")),))
_slope = Equation((term(Trig("tan", _b)),), (term(Quantity.of("0.5")),))
shows = (
    Shows(Board(_half, "*angle t", settled={"*angle t": 30.0}), "θ = sin⁻¹(0.5)"),
    Shows(Board(_half, "*angle t", settled={"*angle t": 150.0}), "θ = 180° − sin⁻¹(0.5)"),
    Shows(Board(_slope, "*angle reaction"), "β = tan⁻¹(0.5)"),
)
leaves = (Board(_half, "F"), Board(Equation((term(_t),), (Term(1, (Quantity.of("30", "deg"),)),)), "*angle t"))
