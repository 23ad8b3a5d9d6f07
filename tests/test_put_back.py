"""One value of a problem file changed, all else kept to the byte; and an angle turned in the words that it has."""

from __future__ import annotations

import tomllib
from collections.abc import Iterator
from copy import deepcopy
from decimal import Decimal
from pathlib import Path
from typing import Any

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from explain.problem.put_back import NotPut, add_table, cut_table, put
from explain.problem.toml_values import key_text, value_text
from explain.problem.turned import turnable, turned

TESTS = Path(__file__).parent
FILES = sorted((TESTS.parent / "samples").glob("[0-9]*.toml")) + sorted((TESTS / "scenarios").glob("*.toml"))
Steps = tuple[str | int, ...]


def leaves(top: Any, path: Steps = ()) -> Iterator[Steps]:
    """The path of every value in a file that is no table; lists, and what is in them."""
    if path and not isinstance(top, dict) and not (isinstance(top, list) and top and isinstance(top[0], dict)):
        yield path
    inner = top.items() if isinstance(top, dict) else enumerate(top) if isinstance(top, list) else ()
    for step, each in inner:
        yield from leaves(each, (*path, step))


def at(top: Any, path: Steps) -> Any:
    for step in path:
        top = top[step]
    return top


def another(value: object) -> object:
    """A value of the same kind that is another one, and hard to write."""
    match value:
        case bool():
            return not value
        case int() | float():
            return value + 1
        case list():
            return [*value, 'two "words"']
    return f"{value} #\"' ü\\"


# ---------------------------------------------------------------------- every sample
@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_every_value_goes_in_and_out_and_nothing_else_moves(path: Path) -> None:
    text = path.read_text("utf-8")
    before = tomllib.loads(text)
    looked = 0
    for where in leaves(before):
        new = put(text, where, another(at(before, where)))
        wanted = deepcopy(before)
        at(wanted, where[:-1])[where[-1]] = another(at(before, where))
        assert wanted == tomllib.loads(new), where
        old_lines, new_lines = text.splitlines(), new.splitlines()
        differ = [one for one, other in zip(old_lines, new_lines, strict=False) if one != other]
        assert len(old_lines) != len(new_lines) or 1 == len(differ), where
        back = put(new, where, at(before, where))
        assert before == tomllib.loads(back) and put(back, where, at(before, where)) == back, where
        looked += 1
    assert looked > 8


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_a_one_line_text_comes_back_to_the_byte(path: Path) -> None:
    text = path.read_text("utf-8")
    keys = tomllib.loads(text)
    for where in leaves(keys):
        value = at(keys, where)
        if isinstance(value, str) and "\n" not in value and f'"{value}"' in text:
            assert text == put(put(text, where, "12 cm"), where, value), where


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_a_key_comes_and_goes_to_the_byte(path: Path) -> None:
    text = path.read_text("utf-8")
    for kind, tables in tomllib.loads(text).items():
        for number in range(len(tables) if isinstance(tables, list) and isinstance(tables[0], dict) else 0):
            where = (kind, number, "extra")
            assert text == put(put(text, where, "x"), where, None), where
    assert text == put(put(text, ("burden",), "key lines shown"), ("burden",), None).replace("\n\n\n", "\n\n", 1) or (
        "burden" in text
    )


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_a_table_comes_and_goes_to_the_byte(path: Path) -> None:
    text = path.read_text("utf-8")
    more = add_table(text, "load", {"name": "one more", "mass": "1 kg", "at": "3 cm"})
    loads = tomllib.loads(more)["load"]
    assert more.startswith(text) and {"name": "one more", "mass": "1 kg", "at": "3 cm"} == loads[-1]
    assert text == cut_table(more, ("load", len(loads) - 1))
    for number in range(len(loads)):
        left = tomllib.loads(cut_table(more, ("load", number))).get("load", [])
        assert loads[:number] + loads[number + 1 :] == left


# ---------------------------------------------------------------------- spacing, comments, quotation marks
SPACE = st.sampled_from(["", " ", "\t", "   "])
COMMENT = st.sampled_from(["", " # a comment", '# "x" = 3', " # ]"])
KEY = st.sampled_from(["name", "at", "moment arm", "a.b", "ключ", 'quo"te', "true", "[x]"])
TEXT = st.text(st.characters(codec="utf-8"), max_size=12)
LEAF = st.one_of(TEXT, st.integers(-99, 99), st.booleans(), st.floats(-9, 9).map(lambda each: round(each, 2)))
VALUE = st.recursive(
    LEAF, lambda inner: st.one_of(st.lists(inner, max_size=3), st.dictionaries(KEY, inner, max_size=3)), max_leaves=5
)


@st.composite
def spelled(draw: st.DrawFn, value: Any) -> str:
    """A value in one of the ways that TOML has for it."""
    if isinstance(value, list):
        gap = draw(st.sampled_from(["", " ", "\n  ", " # one\n "]))
        inner = f",{gap}".join(draw(spelled(each)) for each in value)
        return f"[{gap}{inner}{draw(SPACE)}{draw(st.sampled_from(['', ','])) if value else ''}{gap}]"
    if isinstance(value, dict):
        pairs = (f"{key_text(key)}{draw(SPACE)}={draw(SPACE)}{draw(spelled(each))}" for key, each in value.items())
        return "{ " + ", ".join(pairs) + " }"
    if isinstance(value, str) and value.isprintable() and draw(st.booleans()):
        if "'" not in value:
            return draw(st.sampled_from([f"'{value}'", f"'''{value}'''"]))
        return value_text(value).replace('"', '"""', 1)[:-1] + '"""'
    return value_text(value)


@st.composite
def files(draw: st.DrawFn) -> str:
    """A text with keys on top, a table, and two tables of one kind."""
    out = []
    end = draw(st.sampled_from(["\n", "\r\n"]))
    for head in ("", "[one]", "[[many]]", "[[many]]", '[many."in it"]'):
        out += [f"{draw(SPACE)}{head}{draw(COMMENT)}"] if head else []
        for key, value in draw(st.dictionaries(KEY, VALUE, max_size=3)).items():
            out.append(
                f"{draw(SPACE)}{key_text(key)}{draw(SPACE)}={draw(SPACE)}{draw(spelled(value))}{draw(SPACE)}"
                f"{draw(COMMENT)}"
            )
        out += [""] * draw(st.integers(0, 2))
    return end.join(out).replace("\r\n", "\n").replace("\n", end) + draw(st.sampled_from(["", end]))


@settings(max_examples=250, deadline=None, derandomize=True)
@given(files(), LEAF, st.randoms(use_true_random=False))
def test_whatever_the_file_looks_like_one_value_changes_or_it_is_said_why(text: str, value: Any, chance: Any) -> None:
    before = tomllib.loads(text)
    paths = list(leaves(before))
    if not paths:
        return
    where = chance.choice(paths)
    new = put(text, where, value)  # every way of writing in `files` is one that can be changed
    wanted = deepcopy(before)
    at(wanted, where[:-1])[where[-1]] = value
    assert wanted == tomllib.loads(new)
    assert outside(text, new)


def outside(old: str, new: str) -> bool:
    """Whether what differs is one piece: all before it and behind it is the same."""
    ahead = next((n for n, (a, b) in enumerate(zip(old, new, strict=False)) if a != b), min(len(old), len(new)))
    behind = next(
        (n for n, (a, b) in enumerate(zip(old[ahead:][::-1], new[ahead:][::-1], strict=False)) if a != b),
        min(len(old), len(new)) - ahead,
    )
    return old[:ahead] + old[len(old) - behind :] == new[:ahead] + new[len(new) - behind :]


@settings(max_examples=150, deadline=None, derandomize=True)
@given(files(), TEXT, st.text(max_size=6))
@example("a = 1", "x", "b")
@example("[one]\n[one.two]\na = 1\n", "x", "b")
@example("# only a comment", "x", "b")
def test_a_key_is_put_in_and_taken_out(text: str, value: str, key: str) -> None:
    for where in ((key,), ("one", key), ("many", 1, key)):
        before = tomllib.loads(text)
        if at_or_none(before, where[:-1]) is None or key in at(before, where[:-1]):
            continue
        more = put(text, where, value)
        wanted = deepcopy(before)
        at(wanted, where[:-1])[key] = value
        assert wanted == tomllib.loads(more) and before == tomllib.loads(put(more, where, None))


def at_or_none(top: Any, path: Steps) -> Any:
    try:
        return at(top, path)
    except (KeyError, IndexError, TypeError):
        return None


@settings(max_examples=200, deadline=None, derandomize=True)
@given(st.text(alphabet="ab.[]{}=\"'#,\n\\ 1", max_size=40), st.sampled_from([("a",), ("a", "b"), ("a", 0), ("b", "")]))
def test_any_text_is_changed_in_that_alone_or_refused(text: str, where: Steps) -> None:
    try:
        new = put(text, where, "x")
    except NotPut as why:
        assert str(why).endswith(".")
        return
    wanted = tomllib.loads(text)
    at(wanted, where[:-1])[where[-1]] = "x"
    assert wanted == tomllib.loads(new)


# ---------------------------------------------------------------------- what is refused
@pytest.mark.parametrize(
    ("text", "where", "value", "why"),
    (
        ("a = ", ("a",), "x", "not TOML"),
        ("a = " + "[" * 300 + "]" * 300, ("a",), "x", ""),
        ("a = " + "[" * 9_000, ("a",), "x", "not TOML"),
        ("a = 1", ("b", "c"), "x", "no such table"),
        ("a = [1]", ("a", 1), "x", "no such table"),
        ("a = { b = 1 }", ("a", "c"), "x", "no header of its own"),
        ("a = { b = 1 }", ("a", "b"), None, "within another value"),
        ("a = [1, 2]", ("a", 0), None, "within another value"),
        ("", (), "x", "no such table"),
    ),
)
def test_what_is_not_plain_is_refused_with_its_reason(text: str, where: Steps, value: Any, why: str) -> None:
    try:
        new = put(text, where, value)
    except NotPut as refused:
        assert why and why in str(refused)
    else:
        assert "" == why and {"a": "x"} == tomllib.loads(new)


def test_a_table_that_is_written_otherwise_is_refused() -> None:
    with pytest.raises(NotPut):
        add_table("load = 3", "load", {})
    for text, where in (("load = [{ a = 1 }]", ("load", 0)), ("[a]\nb = 1", ("c",)), ("[a]\nb = 1", ("a", "b"))):
        with pytest.raises(NotPut):
            cut_table(text, where)


def test_a_table_that_is_cut_takes_its_own_tables_along_and_leaves_the_comment_of_the_next() -> None:
    text = "[[a]]\nx = 1\n[a.in]\ny = 2\n\n# of b\n[b]\nz = 3\n"
    assert "# of b\n[b]\nz = 3\n" == cut_table(text, ("a", 0))


def test_one_and_true_are_two_values() -> None:
    assert ("a = true", "a = 1.0") == (put("a = 1", ("a",), True), put("a = 1", ("a",), 1.0))


def test_line_ends_and_quotation_marks_stay_as_they_are() -> None:
    text = "a = 'one'\r\nb = \"two\"\r\nc = '''\r\nx'''\r\n"
    assert "a = 'three'\r\n" in put(text, ("a",), "three")
    assert text.count("\r\n") + 1 == put(text, ("c",), "y\nz").count("\r\n")
    assert "\n" not in put(text, ("c",), "y\nz").replace("\r\n", "")


# ---------------------------------------------------------------------- an angle in its own words
@pytest.mark.parametrize(
    ("words", "degrees", "told"),
    (
        ("70 deg from back toward up", "62", "62 deg from back toward up"),
        ("70 deg from back toward up", "62.3", "62.3 deg from back toward up"),
        ("70 deg from back toward up", "62.34", "62.3 deg from back toward up"),
        ("70 deg from back toward up", "95", "90 deg from back toward up"),
        ("30° below right", "-4", "0° below right"),
        ("45.00 deg above right", "46", "46.00 deg above right"),
        ("22.5 deg right of up", "23", "23 deg right of up"),
        ("120 deg from out toward up", "130", "130 deg from out toward up"),
        ("120 deg from out toward up", "200", "180 deg from out toward up"),
        ("30  degrees   left of up", "31", "31  degrees   left of up"),
        ("up", "3", None),
        ("? below right", "3", None),
        ("3e1 deg below right", "3", None),
        ("30 deg", "3", None),
        ("30 deg below right", "NaN", None),
        ("30 deg below right", "1e400", "90 deg below right"),
    ),
)
def test_an_angle_is_turned_in_the_words_that_it_has(words: str, degrees: str, told: str | None) -> None:
    assert told == turned(words, Decimal(degrees))


@given(st.decimals(0, 90, places=1), st.decimals(-400, 400, places=1))
@settings(max_examples=60, deadline=None, derandomize=True)
def test_what_is_turned_can_be_turned_on(old: Decimal, new: Decimal) -> None:
    words = turned(f"{old} deg from back toward up", new)
    assert words is not None
    found = turnable(words)
    assert found is not None and min(max(new, Decimal(0)), Decimal(90)) == found.degrees


def test_a_lone_table_is_added_once() -> None:
    text = add_table("a = 1", "person", {"mass": "70 kg"}, many=False)
    assert 'a = 1\n\n[person]\nmass = "70 kg"\n' == text
    with pytest.raises(NotPut):
        add_table(text, "person", {"mass": "70 kg"}, many=False)
