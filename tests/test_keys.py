"""Keys: what is put together is taken apart again, and one module does both for what works a problem."""

from __future__ import annotations

import ast
import json

import pytest
from hypothesis import given
from hypothesis import strategies as st
from imports import FILES
from test_floors import folder

from explain.equation import key as keys
from explain.equation.key import Key

NAMES = st.text(st.characters(exclude_characters="*\n", exclude_categories=("Cs",)), min_size=1)
BUILT = {
    "*turning": keys.turning,
    "*moment": keys.moment,
    "*fold": keys.fold,
    "*inclination": keys.inclination,
    "*angle": keys.angle,
}
WORKING = ("equation", "check", "solve", "mechanics", "rules/setup", "rules/algebra", "rules/numbers", "rules/checks")
PARSING = {"startswith", "endswith", "removeprefix", "removesuffix", "partition", "rpartition", "split"}


def parts(key: Key) -> tuple[str, str, str]:
    return key.what, key.owner, key.about


@given(NAMES, NAMES)
def test_a_key_is_taken_apart_as_it_was_put_together(name: str, about: str) -> None:
    assert [parts(keys.of(build(name))) for build in BUILT.values()] == [(what, name, "") for what in BUILT]
    assert parts(keys.of(keys.arm(name))) == ("*arm", name, "")
    assert parts(keys.of(keys.arm(name, about))) == ("*arm", name, about)
    assert parts(keys.of(f"{name}.force")) == ("force", name, "")


@given(NAMES)
def test_a_key_is_its_text_wherever_it_is_written(name: str) -> None:
    for text in (keys.arm(name), f"{name}.weight"):
        key = keys.of(text)
        assert (key, hash(key), f"{key}", json.dumps(key)) == (text, hash(text), text, json.dumps(text))
        assert parts(keys.of(key)) == parts(key)


@pytest.mark.parametrize(
    ("text", "angle", "force", "joint"),
    [
        ("*angle forearm", True, False, False),
        ("*fold biceps", True, False, False),
        ("biceps.force", False, True, False),
        ("jug.weight", False, True, False),
        ("reaction", False, False, True),
        ("reaction.up", False, False, True),
        ("reaction rope.force", False, True, False),
        ("*person.mass", False, False, False),
        ("g", False, False, False),
    ],
)
def test_what_a_key_is_of(text: str, angle: bool, force: bool, joint: bool) -> None:
    key = keys.of(text)
    assert (key.is_angle, key.is_force, key.is_joint) == (angle, force, joint)


def test_no_other_module_that_works_a_problem_takes_keys_apart_or_puts_starred_ones_together() -> None:
    found = [
        (module, ast.unparse(node))
        for module, path in FILES.items()
        if folder(module) in WORKING and module != "explain.equation.key"
        for node in ast.walk(ast.parse(path.read_text("utf-8")))
        if _parses(node) or _builds(node)
    ]
    assert found == []


def _parses(node: ast.AST) -> bool:
    """Whether text is cut at a star, a point before a kind of quantity, or the name of the joint force."""
    return (
        isinstance(node, ast.Call)
        and isinstance(node.func, ast.Attribute)
        and node.func.attr in PARSING
        and any(
            isinstance(each, ast.Constant)
            and isinstance(each.value, str)
            and each.value.startswith(("*", ".", "reaction"))
            for argument in node.args
            for each in ast.walk(argument)
        )
        and "__name__" not in ast.unparse(node)
        and not ast.unparse(node).startswith("f'{abs(value):f}'")
    )


def _builds(node: ast.AST) -> bool:
    return (
        isinstance(node, ast.JoinedStr)
        and isinstance(node.values[0], ast.Constant)
        and str(node.values[0].value).startswith("*")
    )
