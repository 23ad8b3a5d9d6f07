"""One conformance test for all moves: what a rule must have, what its examples promise, what it may not import."""
from __future__ import annotations

import ast
import importlib
import string
from pathlib import Path
from types import ModuleType

import pytest
from worked import HERE

import rules
from explain.board import Board
from explain.check import Refused
from explain.rule import Say, Shows, Step
from explain.write.plain import plain

RULES = HERE.parent / "rules"
MOVES = tuple(sorted(path for kind in ("setup", "algebra", "units", "numbers") for path in (RULES / kind).glob("*.py") if path.stem != "__init__"))
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
def test_the_docstring_begins_with_a_sentence_of_one_line(path: Path) -> None:
    first = (ast.get_docstring(ast.parse(path.read_text("utf-8"))) or "").partition("\n")[0]
    assert first[:1].isupper() and first.endswith(".") and len(first.split()) > 2


@pytest.mark.parametrize("path", MOVES, ids=_id)
def test_a_move_has_all_its_parts(path: Path) -> None:
    rule = _module(path)
    assert [each for each in ("when", "do", "say", "shows", "leaves", "Sight") if not hasattr(rule, each)] == []
    assert isinstance(rule.say, Say) and len(rule.shows) > 0 and len(rule.leaves) > 0
    assert all(isinstance(each, Shows) for each in rule.shows) and all(isinstance(each, Board) for each in rule.leaves)
    assert (rule.when.__doc__ or "").endswith(".")


@pytest.mark.parametrize("path", MOVES, ids=_id)
def test_the_wording_speaks_only_of_what_was_seen(path: Path) -> None:
    rule = _module(path)
    texts = (rule.say.what, rule.say.why, rule.say.watch)
    slots = {slot.split(".")[0].split("[")[0] for text in texts for _, slot, _, _ in string.Formatter().parse(text) if slot is not None}
    assert slots - set(rule.Sight._fields) == set()


@pytest.mark.parametrize(("path", "number"), SHOWS, ids=_id)
def test_an_example_is_made_as_it_is_shown(path: Path, number: int) -> None:
    rule = _module(path)
    shown: Shows = rule.shows[number]
    sight = rule.when(shown.before)
    assert isinstance(sight, rule.Sight)
    step = rule.do(shown.before, sight)
    assert isinstance(step, Step)
    assert plain(step.after) == shown.after


@pytest.mark.parametrize(("path", "number"), SHOWS, ids=_id)
def test_looking_changes_nothing_and_sees_the_same_again(path: Path, number: int) -> None:
    rule = _module(path)
    before: Board = rule.shows[number].before
    line = before.equation
    assert rule.when(before) == rule.when(before)
    assert before.equation is line


@pytest.mark.parametrize(("path", "number"), LEAVES, ids=_id)
def test_what_a_move_leaves_alone_it_does_not_see(path: Path, number: int) -> None:
    assert _module(path).when(_module(path).leaves[number]) is None


@pytest.mark.parametrize("path", [path for path in ALL if path != RULES / "example.py"], ids=_name)
def test_no_rule_imports_the_checker_or_a_writer(path: Path) -> None:
    barred = ("explain.check", "explain.premise", "explain.write", "explain.compose", "explain.cli", "explain.solve")
    assert [each for each in _imports(path) if each.startswith(barred)] == []


def test_a_rule_that_lies_is_found_out() -> None:
    """The examples above hold by the rule's own word; this one shows that the word alone does not do."""
    from worked import CONTRACT, replayed, worked

    working = worked(next(path for path in CONTRACT if path.stem == "jug-level"))
    checker, lines = replayed(working, 1)
    lie = working.moves[1].line.equation
    with pytest.raises(Refused):
        checker.certify(type(lie)(lie.left, (lie.right[0].flipped(),)), working.moves[1].line.claim, lines[0])
