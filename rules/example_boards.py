"""Small free bodies for the examples that rules carry: a level elbow and a steep shank."""

from __future__ import annotations

from functools import lru_cache

from explain.equation import key as keys
from explain.solve import goal as goals
from explain.solve.board import Board, Units
from explain.solve.goal import Goal
from explain.mechanics.body import UP, Body
from explain.check.checker import Checker
from explain.equation.terms import Quantity, Term, term
from explain.mechanics.free_body import cut_free
from explain.mechanics.geometry import lever
from explain.problem.model import Direction, Load, Pivot, Place, Problem, Pull, Segment
from explain.mechanics.settlement import settle
from explain.mechanics.truth import Truth


def _q(number: str, unit: str) -> Quantity:
    return Quantity.of(number, unit)


@lru_cache(maxsize=2)
def _elbow() -> Body:
    forearm = Segment("forearm")
    biceps = Pull("muscle", "biceps", Place(_q("4.0", "cm")), Direction("up"), area=_q("8", "cm^2"))
    return cut_free(
        Problem(
            "Level elbow",
            Pivot("elbow"),
            segments=(forearm,),
            pulls=(biceps,),
            loads=(Load("jug", Place(_q("33", "cm")), _q("3.0", "kg")),),
            ask=("biceps", "reaction"),
        )
    )


@lru_cache(maxsize=2)
def _shank() -> Body:
    shank = Segment("shank", direction=Direction("right", _q("30", "deg"), "down"))
    muscle = Pull("muscle", "quadriceps", Place(_q("6.0", "cm")), Direction("left", _q("70", "deg"), "up"))
    return cut_free(
        Problem(
            "Steep shank",
            Pivot("knee"),
            segments=(shank,),
            pulls=(muscle,),
            loads=(Load("cuff", Place(_q("36", "cm")), _q("3.0", "kg")),),
        )
    )


def level_elbow(kind: type[Goal], key: str = "") -> Board:
    """The board at the start of a goal of this kind, for a level forearm with a jug."""
    return _board(_elbow(), kind, key)


def steep_shank(kind: type[Goal], key: str = "") -> Board:
    """The board at the start of a goal of this kind, for a shank 30 degrees below level with an oblique pull."""
    return _board(_shank(), kind, key)


def _board(body: Body, kind: type[Goal], key: str) -> Board:
    goal, checker = _goal(body, kind, key), Checker(Truth(body))
    if kind in (goals.Resultant, goals.Friction):
        checker.ledger["reaction.right"] = (term(_q("3", "N")),)
        checker.ledger["reaction.up"] = (term(_q("4", "N"), sign=-1 if kind is goals.Resultant else 1),)
    if kind is goals.Turning:
        checker.ledger[f"{key}.force"] = (term(_q("400", "N")),)
    return Board(None, goal.sought, checker.ledger, body.problem.course, Units("cm"), goal, body, sizes=checker.sizes)


def _goal(body: Body, kind: type[Goal], key: str) -> Goal:
    letters = body.letters
    if issubclass(kind, goals.Arm | goals.Fold):
        arm = lever(body, body.force(key), settle(body, Truth(body)).values)
        sought = f"*{kind.kind} {key}"
        return kind(key, sought, arm) if issubclass(kind, goals.Arm) else goals.Fold(key, sought, *arm.derived[0], "")
    if issubclass(kind, goals.Moments):
        weight = Term(-1, (letters("jug.weight"), letters("jug.at")), "jug")
        if issubclass(kind, goals.Moment):
            return kind(key, keys.moment(key), 1, (weight,))
        if issubclass(kind, goals.MomentLetters):
            return kind(key, key, 1, tuple(term(letters(keys.moment(each)), source=each) for each in ("biceps", "jug")))
        return kind(key, key, 1, (term(letters("biceps.force"), letters("biceps.at"), source="biceps"), weight))
    if issubclass(kind, goals.Forces):
        terms = (
            term(letters("reaction.up"), source="reaction"),
            term(letters("biceps.force"), source="biceps"),
            term(letters("jug.weight"), sign=-1, source="jug"),
        )
        return kind(key, key, UP, terms, "vertical forces")
    if issubclass(kind, goals.Resultant):
        sought = keys.FRICTION if kind is goals.Friction else "reaction"
        return kind(key, sought, (letters("reaction.right"), letters("reaction.up")))
    if issubclass(kind, goals.Convert):
        return kind(key, key, (("m", 1),))
    return kind(key, f"{key}.stress" if kind is goals.Stress else key)
