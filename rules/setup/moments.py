"""Write the balance of moments: each force with its lever arm and its sign."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from explain.equation import key as keys
from explain.solve import goal as goals
from explain.solve.board import Board
from explain.mechanics.body import Force
from explain.check.claim import Balance
from explain.document.english import listed, noun_of, the, verb, weight_of
from explain.equation.terms import Equation, Factor, Letter, Quantity, Term, Terms, Trig, letters, term
from explain.equation.terms import leaves as leaves_of
from explain.exact.interval import Sizes, sign
from explain.solve.rule import Say, Shows, Step

from ..example_boards import level_elbow
from .arm import arm_reason

WAYS = {1: "counter-clockwise", -1: "clockwise"}


on = frozenset({goals.Moments})


class Sight(NamedTuple):
    goal: goals.Moments
    word: str
    turning: str
    reason: str


def when(board: Board, goal: goals.Moments) -> Sight | None:
    """The balance of moments is to be written."""
    return Sight(goal, board.course.word, turning_words(board, goal), _reason(board, goal.terms))


def _reason(board: Board, terms: Terms) -> str:
    """Why a sine or cosine of an angle that is still sought stands beside a distance."""
    for each in terms:
        force = next((one for one in board.free.forces if one.name == each.source), None)
        sought = any(isinstance(leaf, Trig) and not isinstance(leaf.angle, Quantity) for leaf in leaves_of((each,)))
        if sought and force is not None and force.bearing is not None:
            return arm_reason((each,), force.bearing.degrees in (90, 270) and not force.bearing.unknown)
    return ""


def turning_words(board: Board, goal: goals.Moments) -> str:
    """Which forces turn which way: "the biceps turns counter-clockwise (+), the forearm and the jug clockwise (−)";
    and which do not turn at all.
    """
    sense, terms = goal.sense, goal.terms
    turning = [
        each
        for each in terms
        if not any(isinstance(factor, Letter) and board.values.get(factor.name) == () for factor in each.factors)
    ]
    ways = {each: _way_as_settled(board, each) for each in turning}
    over = [each for each in turning if ways[each] <= 0]
    turns = {each: _sign(board, each) * sense for each in turning}
    groups = {k: [each.source for each in turning if turns[each] == k and each not in over] for k in (1, -1)}
    said: list[str] = []
    for k, words in WAYS.items():
        if groups[k]:
            names = list(dict.fromkeys(groups[k]))
            does = "" if said else f"{verb(names[0], 'turn') if len(names) == 1 else 'turn'} "
            counted = "" if board.course.balance == "two sides" else f" ({'+' if k == sense else '−'})"
            said.append(f"{listed([the(name) for name in names])} {does}{words}{counted}")
    without = [force for force in board.free.forces if force.name not in {each.source for each in turning}]
    lost = [
        force
        for force in without
        if board.course.carry == "as shown" and force.toward is None and force.name in {each.source for each in terms}
    ]
    open_ways: dict[tuple[str, str], list[str]] = {}
    for each in {each.source: each for each in over}.values():
        what = "place" if any(_is_sought_place(board, one) for one in each.factors) else "angle"
        open_ways.setdefault((what, WAYS[-turns[each]] if ways[each] else "neither"), []).append(each.source)
    told = [
        f"the {what} that is sought decides which way {listed([the(name) for name in names])} "
        f"{verb(names[0], 'turn') if len(names) == 1 else 'turn'}, and at the one found below it is {way}"
        for (what, way), names in open_ways.items()
    ]
    through = _without_arm(board, [force for force in without if force not in lost])
    return "; ".join(each for each in (", ".join(said), *told, through, _lost_arm(lost)) if each)


def _sign(board: Board, each: Term) -> int:
    """The sign with which a term turns; the letter of a moment that was worked out before has it in its number."""
    own = keys.moment(each.source)
    return sign(board.sizes.sum(board.values[own])) if own in each.letters and own in board.values else each.sign


def _is_sought_place(board: Board, factor: Factor) -> bool:
    return isinstance(factor, Letter) and factor.name in board.settled and keys.of(factor.name).what == "at"


def _way_as_settled(board: Board, written: Term) -> int:
    """1 where a term turns as its sign says; -1 where at the angle or place that is sought it turns the other way, 0
    where it turns nothing.
    """
    settled = {
        key: (term(Quantity.of(f"{found:.9f}", "deg" if keys.of(key).is_angle else "m")),)
        for key, found in board.settled.items()
    }
    known = {**board.values, **settled}
    turned = tuple(
        each
        for each in written.factors
        if (names := letters((Term(1, (each,)),))) & settled.keys() and names <= known.keys()
    )
    return sign(Sizes(known).product(turned)) if turned else 1


def _without_arm(board: Board, forces: Sequence[Force]) -> str:
    """That the line of a force passes through the pivot."""
    if not forces:
        return ""
    names = [
        weight_of(each.name)
        if each.kind in ("weight", "load")
        else noun_of("pull" if each.kind == "muscle" else "line", each.name)
        for each in forces
    ]
    about = board.goal.about
    point = f"the point where {the(about)} {verb(about, 'act')}" if about else the(board.free.problem.pivot.name)
    passes, has, drops = ("pass", "have", "drop") if len(names) > 1 else ("passes", "has", "drops")
    return f"{listed(names)} {passes} through {point}, {has} no lever arm, and {drops} out"


def _lost_arm(forces: Sequence[Force]) -> str:
    """That of a lever arm the roundings that are carried leave nothing."""
    if not forces:
        return ""
    arms, drop = ("lever arms", "drop") if len(forces) > 1 else ("lever arm", "drops")
    names = listed([the(each.name) for each in forces])
    return f"to the figures that are carried nothing is left of the {arms} of {names}, which {drop} out"


def do(board: Board, sight: Sight) -> Step:
    goal = sight.goal
    if goal.sought == "total":
        total = Balance(None, goal.about, goal.sense, total=goal.sought)
        return Step(Equation((term(board.letter(goal.sought)),), goal.terms), total)
    line, side = two_sides(board, goal)
    return Step(line, Balance(None, goal.about, goal.sense * side))


def two_sides(board: Board, goal: goals.Moments | goals.Forces) -> tuple[Equation, int]:
    """A sum that is zero; or in a class of two sides what counts one way equal to what counts the other, every term
    with plus, the side with the unknown first. With it 1, or -1 where that is the side of the minus signs.
    """
    if board.course.balance != "two sides":
        return Equation(goal.terms, ()), 1
    sides = {sign_: tuple(each for each in goal.terms if each.sign == sign_) for sign_ in (1, -1)}
    first = -1 if {each.sign for each in goal.terms if _holds_unknown(board, each, goal)} == {-1} else 1
    left, right = (tuple(Term(1, each.factors, each.source) for each in sides[k]) for k in (first, -first))
    return Equation(left, right), first


def _holds_unknown(board: Board, each: Term, goal: goals.Moments | goals.Forces) -> bool:
    return goal.sought in each.letters or keys.of(goal.sought).owner == each.source


say = Say(what="each {word} is a force times its perpendicular distance: {turning}", why="{reason}")
shows = (Shows(level_elbow(goals.Moments), "F_B d_B − W_J d_J = 0"),)
leaves = (level_elbow(goals.Pivot),)
