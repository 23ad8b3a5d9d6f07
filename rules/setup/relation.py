"""Write a quantity by what it follows from: a weight from a mass, a share of the body, a stated multiple, a line
between two points.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import NamedTuple

from explain.equation import key as keys
from explain.solve import goal as goals
from explain.solve.board import Board
from explain.mechanics.body import Relation
from explain.check.claim import Follows
from explain.document.english import force_of, noun_of, the, weight_of
from explain.equation.terms import Equation, Power, Quotient, Term, Terms, flipped, term
from explain.mechanics.geometry import Stated, sine
from explain.mechanics.spread import spread_terms
from explain.solve.rule import Say, Shows, Step
from explain.wording.phrases import square_of

from ..example_boards import level_elbow


on = frozenset({goals.Relation})
_EQUAL = "equal pull for each {}: the pulls are to each other as the cross-sections, and together they are one unknown"
_SLIPS = (
    "where a body is about to slip, friction is as large as it can be, and acts against the slipping: the coefficient "
    "of friction times the normal force, the part of the push that is square to the surface"
)
_PULLEY = (
    "over a smooth pulley a cable pulls as hard at one end as at the other, and at its other end it holds up a mass at "
    "rest: so it pulls with the weight of that mass"
)


class Sight(NamedTuple):
    relation: Relation
    letter: Terms
    what: str
    reason: str


def when(board: Board, goal: goals.Relation) -> Sight | None:
    """A relation has just been taken up."""
    relation = next(each for each in board.free.relations if each.letter.name == goal.key)
    name = keys.of(relation.letter.name).owner
    whose = "the body" if name == "*person" else the(name)
    if relation.of and keys.of(relation.of[0].name).what == "hung":
        return Sight(relation, (term(relation.letter),), f"pull of {whose} from what hangs on it", _PULLEY)
    by_area = any(each.kind == "ratio" and each.letter in relation.of for each in board.free.relations)
    if relation.kind == "slips":
        pivot = the(board.free.problem.pivot.name)
        return Sight(relation, (term(relation.letter),), f"all the friction there is at {pivot}", _SLIPS)
    aim = "the line of a pull runs from its grip to the point it pulls towards"
    words: Mapping[str, Callable[[], tuple[str, str]]] = {
        "weight": lambda: (
            f"weight of {whose} from its mass",
            f"a weight is a force, the mass times g{'; down is negative' * (relation.sign < 0)}",
        ),
        "share": lambda: (
            f"{_share_of(relation)} of {whose} as a share",
            f"the percentage is taken of {_whole(relation)}",
        ),
        "multiple": lambda: (
            f"{the(name)} as so many times the other",
            "" if by_area else f"the ratio of {_two(board, relation)} is given",
        ),
        "ratio": lambda: (f"cross-section of {whose} beside the first one", _EQUAL.format(_square(board, name))),
        "across": lambda: (f"how far to the side the line of {the(name)} runs", aim),
        "rise": lambda: (f"how far up or down the line of {the(name)} runs", aim),
        "middle": lambda: (
            f"place of {whose}: the middle between its two ends",
            "an evenly spread load weighs as much before its middle as behind it, so it turns as if all of it stood "
            "there",
        ),
        "third": lambda: (
            f"place of {whose}: two thirds of the way to its heavy end",
            "a load that grows evenly from nothing turns as if all of it stood two thirds of the way from there, "
            "nearer to its heavy end",
        ),
        "per length": lambda: (f"weight of all of {whose}", _per_length(board, relation)),
        "line": lambda: (
            f"length of the line of pull of {the(name)}",
            "Pythagoras: the two distances are at right angles",
        ),
    }
    return Sight(relation, (term(relation.letter),), *words[relation.kind]())


def _two(board: Board, relation: Relation) -> str:
    """The two forces of a stated ratio: "the pull of the brachialis to that of the biceps"."""
    owners = [keys.of(each.name).owner for each in (relation.letter, relation.of[1])]
    muscles = {force.name for force in board.free.forces if force.kind == "muscle"}
    first, second = (
        noun_of("pull", name)
        if name in muscles
        else weight_of(name)
        if keys.of(letter.name).what == "weight"
        else force_of(name)
        for name, letter in zip(owners, (relation.letter, relation.of[1]), strict=True)
    )
    return f"{first} to {second.replace('the pull of', 'that of')}"


def _whole(relation: Relation) -> str:
    """What a share is a share of."""
    whole = keys.of(relation.of[1].name)
    if whole.owner == "*person":
        return f"the body {whole.what}"
    return f"the whole {whole.what}"


def _per_length(board: Board, relation: Relation) -> str:
    loads = {each.name: each for each in board.free.problem.loads}
    load = loads.get(keys.of(relation.letter.name).owner)
    if load is not None and load.spread is not None and load.spread.growing:
        return "a load that grows evenly from nothing has on the average half the weight per length of its heavy end"
    return "the weight of each length, times how long the load is"


def _square(board: Board, muscle: str) -> str:
    """The unit of a cross-section in words."""
    return square_of(next((pull.area for pull in board.free.problem.pulls if pull.name == muscle), None))


def _share_of(relation: Relation) -> str:
    return {"mass": "mass", "weight": "weight", "force": "force"}.get(keys.of(relation.letter.name).what, "distance")


def do(board: Board, sight: Sight) -> Step:
    relation = sight.relation
    left: Terms = (term(relation.letter),)
    match relation.kind:
        case "line":
            left = (term(Power(relation.letter, 2)),)
            right: Terms = tuple(term(Power(each, 2)) for each in relation.of)
        case "across" | "rise":
            right = _walked(board, relation)
        case "middle" | "third" | "per length":
            right = spread_terms(board.sizes, relation)
        case "slips":
            sign, ((friction, _), (across, _)) = relation.parts[0]
            right = (term(friction, across, sign=1 if sign > 0 else -1),)
        case "ratio":
            own, whole = relation.of
            right = (term(Quotient((term(own),), (term(whole),))),)
        case _:
            right = (term(*relation.of),)
    return Step(Equation(left, right if relation.sign > 0 else flipped(right)), Follows(relation.letter.name))


def _walked(board: Board, relation: Relation) -> Terms:
    stated = [Stated(whose, each.stated) for whose, each in board.free.bearings.items() if each.stated is not None]
    out = []
    for k, step in relation.steps:
        fold = sine(step.bearing.turned(90 if relation.kind == "across" else 0), stated)
        if fold.sign and k:
            out.append(Term(k * fold.sign, (step.distance, *fold.factors)))
    return tuple(sorted(out, key=lambda each: -each.sign))


say = Say(what="{what}", why="{reason}")
shows = (Shows(level_elbow(goals.Relation, "jug.weight"), "W_J = m_J g"),)
leaves = (level_elbow(goals.Pivot),)
