"""Write the balance of moments: each force with its lever arm and its sign."""
from __future__ import annotations

from typing import NamedTuple

from explain.board import Board
from explain.claim import Balance
from explain.english import the, verb
from explain.equation import Equation, Quantity, Term, Terms, Trig
from explain.equation import leaves as leaves_of
from explain.rule import Say, Shows, Step

from ..example import level_elbow
from .arm import arm_reason


class Sight(NamedTuple):
    terms: Terms
    sense: int
    word: str
    turning: str
    reason: str


def when(board: Board) -> Sight | None:
    """The balance of moments is to be written."""
    if board.equation is not None or board.goal.kind != "moments":
        return None
    sense, terms = board.goal.extra
    return Sight(terms, sense, board.course.word, turning_words(board, terms), _reason(board, terms))


def _reason(board: Board, terms: Terms) -> str:
    """Why a sine or cosine of an angle that is still sought stands beside a distance."""
    for each in terms:
        force = next((one for one in board.free.forces if one.name == each.source), None)
        sought = any(isinstance(leaf, Trig) and not isinstance(leaf.angle, Quantity) for leaf in leaves_of((each,)))
        if sought and force is not None and force.bearing is not None:
            return arm_reason((each,), force.bearing.degrees in (90, 270) and not force.bearing.unknown)
    return ""


def turning_words(board: Board, terms: Terms) -> str:
    """Which forces turn which way: "the biceps turns counter-clockwise (+), the forearm and the jug clockwise (−)"."""
    sense = board.goal.extra[0]
    groups = {k: [each.source for each in terms if each.sign * sense == k] for k in (1, -1)}
    said: list[str] = []
    for k, words in ((1, "counter-clockwise"), (-1, "clockwise")):
        if groups[k]:
            names = [the(name) for name in dict.fromkeys(groups[k])]
            listed = names[0] if len(names) == 1 else ", ".join(names[:-1]) + " and " + names[-1]
            does = "" if said else "turn" if len(names) > 1 else verb(groups[k][0], "turn")
            said.append(f"{listed} {does} {words} ({'+' if k == sense else '−'})".replace("  ", " "))
    return ", ".join(said)


def do(board: Board, sight: Sight) -> Step:
    if board.goal.key == "total moment":
        return Step(Equation((Term(1, (board.letter("total"),)),), sight.terms), Balance(None, board.goal.about, sight.sense, total="total"))
    return Step(Equation(sight.terms, ()), Balance(None, board.goal.about, sight.sense))


say = Say(what="each {word} is a force times its perpendicular distance: {turning}", why="{reason}")
shows = (Shows(level_elbow("moments"), "F_B d_B − W_J d_J = 0"),)
leaves = (level_elbow("pivot"),)
