"""One muscle as so many times another: "Fbr = 0.6 Fbi", "biceps = 0.8 brachialis". Knows the shares that the problem
gives and those of its slips.
"""

from __future__ import annotations

import re

import numpy as np

from .clauses import Clause
from .formula import Expr, value
from .patterns import same
from .state import State
from .values import Claim, Meaning, Suspect, Value
from .ways import choices


def relation(state: State, clause: Clause, names: list[str], exprs: list[Expr]) -> bool:
    """The relation in words, "biceps = 0.8 brachialis"; False where it is none."""
    sides = clause.sides
    if (
        len(exprs) != 1
        or len(sides) != 2
        or not exprs[0].lone
        or exprs[0].unit
        or sides[1].expr is not exprs[0]
        or not sides[1].after
    ):
        return False
    one = _pull(state, f"{names[0] if names else ''} {sides[0].words}", "")
    other = _pull(state, re.split(r"\bcall\b", sides[1].after)[0], "")
    if not one or not other:
        return False
    row = state.known.truth[other]
    state.trace.names["§other"] = Value(row, row, float(row[0]))
    return _judged(
        state, one, other, Expr(("*", exprs[0].node, ("v", "§other")), exprs[0].leaves, ["§other"]), "§other"
    )


def relation_of_letters(state: State, name: str, expr: Expr, letter: str) -> bool:
    """The relation of two letters, "Fbr = 0.6 Fbi"."""
    one, other = (
        _pull(state, f"{each if len(each) > 2 else ''} {state.alias.get(each, '')}", each) for each in (name, letter)
    )
    return bool(one and other) and _judged(state, one, other, expr, letter)


def relation_said(state: State, words: str, exprs: list[Expr], unknown: list[str]) -> bool:
    """The relation of a pull that is named and a letter: "the bow rope pulls with 0.75 S"."""
    if len(exprs) != 1 or len(unknown) != 1 or not exprs[0].leaves or not re.search(r"\bpull|force|tension", words):
        return False
    letter = unknown[0]
    one, other = _pull(state, words, ""), _pull(state, state.alias.get(letter, ""), letter)
    return bool(one and other) and _judged(state, one, other, exprs[0], letter)


def _pull(state: State, words: str, name: str) -> str:
    items = state.hints.of(words, name, "N").items & state.hints.pulls
    keys = [each.key for each in state.known.first.items if each.name in items and each.key in state.known.truth]
    return keys[0] if len(keys) == 1 else ""


def _judged(state: State, one: str, other: str, expr: Expr, letter: str) -> bool:
    if one == other:
        return False

    def made(row: np.ndarray, leaves: tuple[Value, ...]) -> np.ndarray:
        return np.asarray(np.abs(np.asarray(value(expr.node, [each.f for each in leaves], {letter: row}), float)))

    some = choices(state.trace, [expr])
    value_ = Value(state.known.truth[one], state.known.truth[one], float(state.known.truth[one][0]), line=state.line)
    claim = Claim(state.line, value_, Meaning(), "", "", "", state.text, "true")
    if any(same(np.abs(state.known.truth[one]), made(state.known.truth[other], leaves), 1e-8) for leaves in some):
        state.claims.append(claim)
        return True
    worlds = [
        place
        for place, slip in enumerate(state.known.slips)
        if one in slip.rows
        and other in slip.rows
        and any(same(np.abs(slip.rows[one]), made(slip.rows[other], leaves), 1e-8) for leaves in some)
    ]
    if not worlds:
        return False
    names = list(dict.fromkeys(state.known.slips[place].name for place in worlds))
    every = frozenset(place for place, slip in enumerate(state.known.slips) if slip.name in names)
    claim.status = "suspect"
    state.claims.append(claim)
    state.suspect(Suspect(state.line, names, one, True, "a relation between two pulls", every), value_)
    return True
