"""Write the least coefficient of friction: the push along the surface over the push straight away from it."""

from __future__ import annotations

from typing import NamedTuple

from explain.solve import goal as goals
from explain.solve.board import Board
from explain.check.claim import Pythagoras
from explain.document.english import the
from explain.equation.terms import Equation, Letter, Quotient, Term, Terms, flipped, term
from explain.exact.interval import sign
from explain.mechanics.body import Bearing, turned_back
from explain.mechanics.geometry import Stated, quantity, sine
from explain.solve.rule import Say, Shows, Step

from ..example_boards import level_elbow


on = frozenset({goals.Friction})


class Sight(NamedTuple):
    goal: goals.Friction
    along: Terms
    across: Terms
    place: str


def when(board: Board, goal: goals.Friction) -> Sight | None:
    """Both parts of the push at the pivot are known, and the friction that they need is wanted."""
    surface = Bearing(board.free.problem.pivot.surface)
    bone = board.free.bearings.get(board.course.axes)
    way = turned_back(surface, bone) if bone else surface
    stated = (Stated("surface", quantity(min(way.degrees % 180, 180 - way.degrees % 180))),)
    along, across = (_part_along(goal.parts, each, stated) for each in (way, way.turned(90)))
    if sign(board.sizes.sum(along)) < 0:
        along = flipped(along)
    return Sight(goal, _ordered(along), _ordered(across), the(board.free.problem.pivot.name))


def _part_along(parts: tuple[Letter, Letter], way: Bearing, stated: tuple[Stated, ...]) -> Terms:
    """The component of the push along a way: its first part with the cosine of the angle, its second with the sine."""
    folds = zip(parts, (sine(way.turned(90), stated), sine(way, stated)), strict=True)
    return tuple(Term(fold.sign, (part, *fold.factors)) for part, fold in folds if fold.sign)


def _ordered(terms: Terms) -> Terms:
    return tuple(sorted(terms, key=lambda each: -each.sign))


def do(board: Board, sight: Sight) -> Step:
    first, second = sight.goal.parts
    ratio = term(Quotient(sight.along, sight.across))
    return Step(Equation((term(board.letter(sight.goal.sought)),), (ratio,)), Pythagoras((first.name, second.name)))


say = Say(
    what="least coefficient of friction at {place}",
    why="friction can be as large as the coefficient times the normal force, the part of the push that is square to "
    "the surface, and no larger",
)
shows = (Shows(level_elbow(goals.Friction), "μ = J_x / J_y"),)
leaves = (level_elbow(goals.Resultant),)
