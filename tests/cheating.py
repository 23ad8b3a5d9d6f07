"""How to hand the checker a line that is not so: a line of a worked problem with its line or its ground changed."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import NamedTuple

from worked import EXTRA, HERE, extra, replayed, worked

from explain.check.checker import Certified, Checker
from explain.check.claim import Claim
from explain.equation.terms import Equation, Factor, Letter, Quantity, Shown, Term, Terms, term
from explain.solve.engine import Working

Change = Callable[[Equation, Claim], tuple[Equation, Claim]]


class Cheat(NamedTuple):
    """A problem, a ground, which line of that ground counting from none, what is done, and how."""

    problem: str
    ground: type
    number: int
    what: str
    change: Change


def problem(name: str) -> Working:
    """A problem of EXTRA, of the contract or of the samples by its name."""
    if name in EXTRA:
        return extra(name)
    found = [*HERE.glob(f"contract/{name}.toml"), *HERE.parent.glob(f"samples/{name}.toml")]
    return worked(found[0])


def at(name: str, ground: type, number: int = 0) -> tuple[Checker, Equation, Claim, Certified | None]:
    """A checker as it stands before a line, that line, its ground, and the line before it."""
    working = problem(name)
    place = [index for index, move in enumerate(working.moves) if isinstance(move.line.claim, ground)][number]
    checker, lines = replayed(working, place)
    move = working.moves[place]
    before = None if move.before is None else lines[[id(each.line) for each in working.moves].index(id(move.before))]
    return checker, move.line.equation, move.line.claim, before


# ---------------------------------------------------------------------- changes to the line
def left(change: Callable[[Terms], Terms]) -> Change:
    return lambda line, claim: (replace(line, left=change(line.left)), claim)


def right(change: Callable[[Terms], Terms]) -> Change:
    return lambda line, claim: (replace(line, right=change(line.right)), claim)


def ground(new: Claim) -> Change:
    """The line as it is on another ground."""
    return lambda line, claim: (line, new)


def both(first: Change, second: Change) -> Change:
    return lambda line, claim: second(*first(line, claim))


def flipped(place: int) -> Callable[[Terms], Terms]:
    return lambda terms: tuple(each.flipped() if index == place else each for index, each in enumerate(terms))


def without(place: int) -> Callable[[Terms], Terms]:
    return lambda terms: (*terms[:place], *terms[place + 1 :])


def twice(place: int) -> Callable[[Terms], Terms]:
    return lambda terms: (*terms[: place + 1], *terms[place:])


def times(*factors: Factor, place: int = 0) -> Callable[[Terms], Terms]:
    """One term with more factors."""
    return lambda terms: tuple(
        replace(each, factors=(*each.factors, *factors)) if index == place else each for index, each in enumerate(terms)
    )


def factors(new: Callable[[tuple[Factor, ...]], tuple[Factor, ...]], place: int = 0) -> Callable[[Terms], Terms]:
    """One term with its factors changed."""
    return lambda terms: tuple(
        replace(each, factors=new(each.factors)) if index == place else each for index, each in enumerate(terms)
    )


def source(name: str, place: int) -> Callable[[Terms], Terms]:
    return lambda terms: tuple(
        replace(each, source=name) if index == place else each for index, each in enumerate(terms)
    )


def only(*new: Factor, sign: int = 1) -> Callable[[Terms], Terms]:
    """One term in place of the whole side."""
    return lambda terms: (Term(sign, new),)


def letter(name: str, text: str) -> Letter:
    return Letter(name, text)


def value(number: str, unit: str = "") -> Callable[[Terms], Terms]:
    """The written number of a side that is one number changed, and nothing of what it stands for."""
    new = Quantity.of(number, unit)

    def change(terms: Terms) -> Terms:
        match terms[0].factors[0]:
            case Shown(of=of):
                return (replace(terms[0], factors=(Shown(new, of),)),)
        return (replace(terms[0], factors=(new,)),)

    return change


def one(*new: Factor, sign: int = 1) -> Terms:
    return (term(*new, sign=sign),)
