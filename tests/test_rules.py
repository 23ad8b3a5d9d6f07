"""One conformance test for all moves: what a rule must have, what its examples promise, what it may not import."""

from __future__ import annotations

import ast
import importlib
import string
from collections.abc import Mapping
from copy import copy
from dataclasses import replace
from functools import cache
from pathlib import Path
from types import ModuleType

import numpy as np
import pytest
from worked import CONTRACT, EXTRA, HERE, SAMPLES, extra, replayed, worked

import rules
from explain import work
from explain.solve.board import Board
from explain.check.checker import Certified, Checker, Refused
from explain.check.claim import (
    Arm,
    AtRest,
    Balance,
    Claim,
    Converted,
    Divided,
    Follows,
    Inverted,
    Moment,
    Put,
    Pythagoras,
    Rooted,
    Rounded,
    Scaled,
    Stress,
    Tangent,
    Turning,
)
from explain.equation.terms import Equation, Letter, Quantity, Term, leaves
from explain.solve.goal import Moments
from explain.solve.rule import Say, Shows, Step, seen
from explain.mechanics.truth import Truth
from explain.formula.plain import plain
from rules.example_boards import level_elbow

RULES = HERE.parent / "rules"
MOVES = tuple(
    sorted(
        path
        for kind in ("setup", "algebra", "units", "numbers")
        for path in (RULES / kind).glob("*.py")
        if path.stem != "__init__"
    )
)
ALL = tuple(sorted(RULES.rglob("*.py")))
# Who multiplies out first has nothing to gather in front of a bracket.
LEFT_OUT = {"multiply first": {"gather"}, "divide first": set(), "letters first": set()}


def _name(path: Path) -> str:
    return ".".join(path.relative_to(RULES.parent).with_suffix("").parts)


def _module(path: Path) -> ModuleType:
    return importlib.import_module(_name(path))


def _imports(path: Path) -> set[str]:
    """The modules a file imports, in full."""
    found: set[str] = set()
    package = _name(path).split(".") if path.stem == "__init__" else _name(path).split(".")[:-1]
    for node in ast.walk(ast.parse(path.read_text("utf-8"))):
        if isinstance(node, ast.Import):
            found |= {each.name for each in node.names}
        if isinstance(node, ast.ImportFrom):
            start = package[: len(package) - node.level + 1] if node.level else []
            base = ".".join([*start, *([node.module] if node.module else [])])
            found |= {base} | {f"{base}.{each.name}" for each in node.names}
    return found


SHOWS = [(path, number) for path in MOVES for number in range(len(_module(path).shows))]
LEAVES = [(path, number) for path in MOVES for number in range(len(_module(path).leaves))]


def _id(value: object) -> str:
    return value.stem if isinstance(value, Path) else str(value)


@pytest.mark.parametrize("order", LEFT_OUT)
def test_every_move_is_listed_for_each_order_once(order: str) -> None:
    listed = [each.__name__ for each in rules.MOVES[order]]
    assert sorted(listed) == sorted(_name(path) for path in MOVES if path.stem not in LEFT_OUT[order])


def test_the_orders_are_those_of_a_course() -> None:
    assert set(rules.MOVES) == set(LEFT_OUT)


@pytest.mark.parametrize("path", ALL, ids=_name)
def test_the_docstring_begins_with_a_sentence(path: Path) -> None:
    first = " ".join((ast.get_docstring(ast.parse(path.read_text("utf-8"))) or "").partition("\n\n")[0].split())
    assert first[:1].isupper() and first.endswith(".") and len(first.split()) > 2


@pytest.mark.parametrize("path", MOVES, ids=_id)
def test_a_move_has_all_its_parts(path: Path) -> None:
    rule = _module(path)
    assert [each for each in ("on", "when", "do", "say", "shows", "leaves", "Sight") if not hasattr(rule, each)] == []
    assert isinstance(rule.say, Say) and len(rule.shows) > 0 and len(rule.leaves) > 0
    assert all(isinstance(each, Shows) for each in rule.shows) and all(isinstance(each, Board) for each in rule.leaves)
    assert (rule.when.__doc__ or "").rstrip().endswith(".")


@pytest.mark.parametrize("path", MOVES, ids=_id)
def test_the_wording_speaks_only_of_what_was_seen(path: Path) -> None:
    rule = _module(path)
    texts = (rule.say.what, rule.say.why, rule.say.watch)
    slots = {
        slot.split(".")[0].split("[")[0]
        for text in texts
        for _, slot, _, _ in string.Formatter().parse(text)
        if slot is not None
    }
    assert slots - set(rule.Sight._fields) == set()


@pytest.mark.parametrize(("path", "number"), SHOWS, ids=_id)
def test_an_example_is_made_as_it_is_shown(path: Path, number: int) -> None:
    rule = _module(path)
    shown: Shows = rule.shows[number]
    sight = seen(rule, shown.before)
    assert isinstance(sight, rule.Sight)
    step = rule.do(shown.before, sight)
    assert isinstance(step, Step)
    assert plain(step.after) == shown.after


@pytest.mark.parametrize(("path", "number"), SHOWS, ids=_id)
def test_looking_changes_nothing_and_sees_the_same_again(path: Path, number: int) -> None:
    rule = _module(path)
    before: Board = rule.shows[number].before
    line = before.equation
    assert seen(rule, before) == seen(rule, before)
    assert before.equation is line


@pytest.mark.parametrize(("path", "number"), LEAVES, ids=_id)
def test_what_a_move_leaves_alone_it_does_not_see(path: Path, number: int) -> None:
    assert seen(_module(path), _module(path).leaves[number]) is None


@pytest.mark.parametrize("path", [path for path in ALL if path != RULES / "example_boards.py"], ids=_name)
def test_no_rule_imports_the_checker_or_a_writer(path: Path) -> None:
    barred = (
        "explain.check.checker",
        "explain.check.premise",
        "explain.write",
        "explain.walkthrough.page",
        "explain.cli.main",
        "explain.solve.engine",
    )
    assert [each for each in _imports(path) if each.startswith(barred)] == []


# ---------------------------------------------------------------------- examples, certified
class Supposing(Checker):
    """A checker that takes the line of an example's board for granted, and nothing else."""

    def suppose(self, line: Equation) -> Certified:
        self.granted = line
        return self.certify(line, Scaled())

    def _hold(self, after: Equation, claim: Claim, before: Certified | None) -> None:
        if after is not getattr(self, "granted", None):
            super()._hold(after, claim, before)


def standing(board: Board, step: Step) -> tuple[Checker, Certified | None]:
    """A checker that knows what a board knows, and the lines that the board has in hand and beside it, supposed."""
    body = board.body or level_elbow(Moments).free
    lines = (board.equation, step.after, board.beside)
    known = {
        leaf.name: leaf
        for line in lines
        if line
        for leaf in (*leaves(line.left), *leaves(line.right))
        if isinstance(leaf, Letter)
    }
    letters = copy(body.letters)
    letters.known = {**body.letters.known, **known} if board.body is None else body.letters.known
    checker = Supposing(
        Truth(replace(body, letters=letters, problem=replace(body.problem, course=board.course))),
        angles=board.settled,
    )
    checker.ledger.update(board.values)
    if board.beside is not None:
        checker.suppose(board.beside)
    return checker, None if board.equation is None else checker.suppose(board.equation)


def example(path: Path, number: int) -> tuple[Step, Checker, Certified | None]:
    """What a rule makes of one of its examples, and a checker that stands before that line."""
    rule = _module(path)
    board: Board = rule.shows[number].before
    step = rule.do(board, seen(rule, board))
    return step, *standing(board, step)


@pytest.mark.parametrize(("path", "number"), SHOWS, ids=_id)
def test_an_example_stands_on_the_ground_that_its_rule_claims(path: Path, number: int) -> None:
    step, checker, before = example(path, number)
    assert checker.certify(step.after, step.claim, before).equation == step.after


@pytest.mark.parametrize(("path", "number"), SHOWS, ids=_id)
def test_a_line_that_is_not_so_does_not_stand_on_that_ground(path: Path, number: int) -> None:
    step, checker, before = example(path, number)
    lie = Equation((step.after.left[0], *step.after.left), step.after.right, step.after.rounded)
    with pytest.raises(Refused):
        checker.certify(lie, step.claim, before)


LYING = (
    AtRest("level"),
    Balance(None, sense=-1),
    Follows("jug.mass"),
    Arm("jug", 1),
    Turning("jug", 1),
    Moment("jug", 1),
    Pythagoras(("reaction.up", "reaction.right")),
    Stress("jug"),
    Scaled(Term(1, (Quantity.of("2"),))),
    Scaled(Term(-1, (Quantity.of("1", "m"),))),
    Put(("nobody.force",)),
    Rooted(),
    Inverted(),
    Tangent(Term(1, (Quantity.of("1"),))),
    Converted("nobody.at"),
    Rounded(),
    Divided(Equation((), ())),
)


@pytest.mark.parametrize(("path", "number"), SHOWS, ids=_id)
def test_an_example_stands_on_no_ground_of_another_kind(path: Path, number: int) -> None:
    """A rule with a lying claim is found out by its examples: not one of these claims bears the line of another."""
    step, _, _ = example(path, number)
    stands = []
    for claim in LYING:
        _, checker, before = example(path, number)
        try:
            checker.certify(step.after, claim, before)
            stands.append(claim)
        except Refused:
            pass
    assert [claim for claim in stands if type(claim) is not type(step.claim)] == []
    assert [claim for claim in stands if claim != step.claim] == []


# ---------------------------------------------------------------------- rules in real problems
@cache
def fired() -> Mapping[str, str]:
    """Each rule that made a line of a sample, of the contract or of the problems in `worked`, with the first problem
    in which it did.
    """
    found: dict[str, str] = {}
    named = [(path.stem, worked(path)) for path in (*SAMPLES, *CONTRACT)] + [(name, extra(name)) for name in EXTRA]
    for name, working in named:
        for move in working.moves:
            found.setdefault(move.rule.__name__, name)
    return found


@pytest.mark.parametrize("path", MOVES, ids=_id)
def test_each_rule_makes_a_line_of_a_real_problem(path: Path) -> None:
    assert _name(path) in fired()


@pytest.mark.parametrize("order", LEFT_OUT)
@pytest.mark.parametrize(("name", "more"), (("a cord aslant", 0.0), ("a cord aslant and a muscle", 12.0)))
def test_where_the_sine_of_a_sum_is_written_out_the_angle_is_that_of_a_fine_scan(
    name: str, more: float, order: str
) -> None:
    """The moments in N m as they are, at a million slopes below the level: 60 N at 40° above it, 90 N straight down,
    and the muscle.
    """
    walkthrough = work(EXTRA[name], course={"order": order})
    slopes = np.linspace(0, 180, 1_000_001)
    turn = 0.25 * 60 * np.sin(np.radians(slopes + 40)) - 0.30 * 90 * np.cos(np.radians(slopes)) + more
    crossing = slopes[1:][np.sign(turn[1:]) != np.sign(turn[:-1])]
    assert any(move.rule.__name__ == "rules.algebra.unfold" for move in walkthrough.moves)
    assert [walkthrough.answers["forearm.direction"].value] == pytest.approx(list(crossing[:1]), abs=2e-4)


def test_a_rule_that_lies_is_found_out() -> None:
    """The examples above hold by the rule's own word; this one shows that the word alone does not do."""
    working = worked(next(path for path in CONTRACT if path.stem == "jug-level"))
    checker, lines = replayed(working, 1)
    lie = working.moves[1].line.equation
    with pytest.raises(Refused):
        checker.certify(type(lie)(lie.left, (lie.right[0].flipped(),)), working.moves[1].line.claim, lines[0])
