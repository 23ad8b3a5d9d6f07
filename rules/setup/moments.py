"""Write the balance of moments: each force with its lever arm and its sign."""
from __future__ import annotations

from typing import NamedTuple

from explain.board import Board
from explain.claim import Balance
from explain.english import the, verb
from explain.equation import Equation, Term, Terms
from explain.rule import Say, Shows, Step

from ..example import level_elbow


class Sight(NamedTuple):
    terms: Terms
    sense: int
    word: str
    turning: str


def when(board: Board) -> Sight | None:
    """The balance of moments is to be written."""
    if board.equation is not None or board.goal.kind != "moments":
        return None
    sense, terms = board.goal.extra
    return Sight(terms, sense, board.course.word, turning_words(board, terms))


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
    total = board.letter("total") if board.goal.key == "total moment" else None
    right: Terms = (Term(1, (total,)),) if total else ()
    return Step(Equation(sight.terms, right), Balance(None, board.goal.about, sight.sense, total="total" if total else ""))


say = Say(what="each {word} is a force times its perpendicular distance: {turning}")
shows = (Shows(level_elbow("moments"), "F_B d_B − W_J d_J = 0"),)
leaves = (level_elbow("pivot"),)
