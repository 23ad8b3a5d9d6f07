"""Put a force in as so many times another one that is sought."""

from __future__ import annotations

from typing import NamedTuple

from explain.solve.board import Board
from explain.equation.terms import Equation, Letter, Quantity, Terms, letters, term
from explain.solve.rule import Say, Shows

from .put import do as do


on = frozenset({Letter})


class Sight(NamedTuple):
    names: tuple[str, ...]
    share: Terms
    letter: Terms
    reason: str
    bracketed: tuple[str, ...] = ()  # a share is put in without brackets


def when(board: Board, line: Equation) -> Sight | None:
    """A letter whose value is written with another letter."""
    found = sorted(name for name in line.letters if name != board.sought and letters(board.values.get(name) or ()))
    names = tuple(name for name in found if not any(name in letters(board.values[other]) for other in found))
    if not names:
        return None
    letter = term(Letter(names[0], board.letter(names[0]).text if board.body else names[0]))
    found_before = board.body is not None and all(each.letter.name != names[0] for each in board.body.relations)
    return Sight(
        names,
        board.values[names[0]],
        (letter,),
        "an earlier balance gives it" if found_before else "the share is given",
    )


say = Say(what="put {share} in for {letter}", why="{reason}, so one unknown is left instead of two")

_F, _G, _d = Letter("F", "F"), Letter("G", "G"), Letter("d", "d")
_share = {"G": (term(Quantity.of("0.70"), _F),)}
shows = (Shows(Board(Equation((term(_F, _d), term(_G, _d)), ()), "F", _share), "F d + 0.70 F d = 0"),)
leaves = (Board(Equation((term(_F, _d),), ()), "F", _share),)
