"""Small free bodies for the examples that rules carry: a level elbow and a steep shank."""

from __future__ import annotations

from functools import lru_cache
from typing import Any

from explain.solve.board import Board, Goal, Units
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


def level_elbow(kind: str, key: str = "") -> Board:
    """The board at the start of a goal of this kind, for a level forearm with a jug."""
    return _board(_elbow(), kind, key)


def steep_shank(kind: str, key: str = "") -> Board:
    """The board at the start of a goal of this kind, for a shank 30 degrees below level with an oblique pull."""
    return _board(_shank(), kind, key)


def _board(body: Body, kind: str, key: str) -> Board:
    goal = _goal(body, kind, key)
    checker = Checker(Truth(body))
    if kind == "resultant":
        checker.ledger["reaction.right"] = (term(_q("3", "N")),)
        checker.ledger["reaction.up"] = (term(_q("4", "N"), sign=-1),)
    if kind == "turning":
        checker.ledger[f"{key}.force"] = (term(_q("400", "N")),)
    return Board(None, goal.sought, checker.ledger, body.problem.course, Units("cm"), goal, body, sizes=checker.sizes)


def _goal(body: Body, kind: str, key: str) -> Goal:
    sought, extra = (
        {
            "fold": f"*fold {key}",
            "arm": f"*arm {key}",
            "turning": f"*turning {key}",
            "moment": f"*moment {key}",
            "stress": f"{key}.stress",
            "resultant": "reaction",
        }.get(kind, key),
        _extra(body, kind, key),
    )
    return Goal(kind, key, sought, extra=extra)


def _extra(body: Body, kind: str, key: str) -> Any:
    values = settle(body, Truth(body)).values
    letters = body.letters
    weight = Term(-1, (letters("jug.weight"), letters("jug.at")), "jug") if kind in ("moments", "moment") else None
    match kind:
        case "arm" | "turning":
            return lever(body, body.force(key), values)
        case "fold":
            return lever(body, body.force(key), values).derived[0]
        case "moments":
            return 1, (term(letters("biceps.force"), letters("biceps.at"), source="biceps"), weight)
        case "moment":
            return 1, (weight,)
        case "forces":
            return (
                UP,
                (
                    term(letters("reaction.up"), source="reaction"),
                    term(letters("biceps.force"), source="biceps"),
                    term(letters("jug.weight"), sign=-1, source="jug"),
                ),
                "upright forces",
            )
        case "resultant":
            return letters("reaction.right"), letters("reaction.up")
        case "convert":
            return (("m", 1),)
    return None
