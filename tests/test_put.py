"""One thing in a TOML text changed: what stands there then, to the byte, and what is said where it stays as it was."""

from __future__ import annotations

import pytest

from explain.problem.put_back import NotPut, add_table, cut_table, put

TEXT = """\
# a problem
title = "x"  # here
ask = [ "a", 'b', # two
  "c" ]

# the bone
[pivot]
name = 'elbow'
inner = { a = 1, "b c" = [2, 3], d.e = 2020-01-01 10:00:00 }

# the jug
[[load]]
name = "jug"
mass = 3.0

# the tin
[[load]]
name = "tin"
text = '''
one
two'''
"""
TWO = TEXT.replace("\n", "\r\n")


@pytest.mark.parametrize(
    ("path", "value", "old", "new"),
    [
        (("title",), "y", 'title = "x"  # here', 'title = "y"  # here'),
        (("title",), 'say "y"', 'title = "x"', 'title = "say \\"y\\""'),
        (("title",), 5, 'title = "x"', "title = 5"),
        (("title",), True, 'title = "x"', "title = true"),
        (("title",), ["a", 1.5], 'title = "x"', 'title = ["a", 1.5]'),
        (("title",), {"a": 1, "b c": False}, 'title = "x"', 'title = { a = 1, "b c" = false }'),
        (("title",), "a\nb", 'title = "x"', 'title = """\na\nb"""'),
        (("ask", 1), "it's", "'b'", '"it\'s"'),
        (("ask", 1), "d", "'b'", "'d'"),
        (("ask", 2), "d", '"c" ]', '"d" ]'),
        (("ask",), ["d"], '[ "a", \'b\', # two\n  "c" ]', '["d"]'),
        (("pivot", "name"), "knee", "'elbow'", "'knee'"),
        (("pivot", "inner", "a"), 7, "a = 1", "a = 7"),
        (("pivot", "inner", "b c", 1), 7, "[2, 3]", "[2, 7]"),
        (("pivot", "inner", "d", "e"), "then", "2020-01-01 10:00:00", '"then"'),
        (("load", 0, "mass"), 3, "mass = 3.0", "mass = 3"),
        (("load", 0, "mass"), None, "mass = 3.0\n", ""),
        (("load", 1, "text"), "one\nthree", "'''\none\ntwo'''", '"""\none\nthree"""'),
        (("load", 1, "mass"), "2 kg", "two'''\n", "two'''\nmass = \"2 kg\"\n"),
        (("load", 0, "a b"), 1, "mass = 3.0\n", 'mass = 3.0\n"a b" = 1\n'),
        (("g",), "9.8 m/s^2", '  "c" ]\n', '  "c" ]\ng = "9.8 m/s^2"\n'),
        (("pivot", "bone"), "ulna\nradius", "00 }\n", '00 }\nbone = """\nulna\nradius"""\n'),
        (("title",), "x", "", ""),
        (("nothing",), None, "", ""),
    ],
)
def test_a_value_is_put(path: tuple[str | int, ...], value: object, old: str, new: str) -> None:
    assert TEXT.replace(old, new, 1) == put(TEXT, path, value)
    assert TWO.replace(old.replace("\n", "\r\n"), new.replace("\n", "\r\n"), 1) == put(TWO, path, value)


def test_a_key_is_put_where_nothing_stands_yet() -> None:
    assert "a = 1\n" == put("", ("a",), 1)
    assert "b = 2\na = 1\n" == put("b = 2", ("a",), 1)
    assert "a = 1\n\n[t]\n" == put("[t]\n", ("a",), 1)
    assert "# top\n\na = 1\n\n# of t\n[t]\nb = 1" == put("# top\n\n# of t\n[t]\nb = 1", ("a",), 1)
    assert "# alone\na = 1\n" == put("# alone", ("a",), 1)
    assert "[t]\nb = 1\n" == put("[t]", ("t", "b"), 1)
    assert "a = nan" == put("a = nan", ("a",), float("nan"))


@pytest.mark.parametrize(
    ("text", "path", "value", "why"),
    [
        (TEXT, (), 1, "There is no such table in the file."),
        (TEXT, ("load", 2, "mass"), 1, "There is no such table in the file."),
        (TEXT, ("load", -1, "mass"), 1, "There is no such table in the file."),
        (TEXT, ("ask", 3), "x", "There is no such table in the file."),
        (TEXT, ("knee", "name"), 1, "There is no such table in the file."),
        (TEXT, ("pivot", "inner", "a"), None, "This is written within another value: change it in the file."),
        ("a = {}", ("a", "b"), 1, "This table has no header of its own: change it in the file."),
        ("a.b = 1\n[c]\n", ("a", "b"), None, ""),
        ("a = ", ("a",), 1, "The file is not TOML just now: mend it first."),
    ],
)
def test_what_cannot_be_put_is_told(text: str, path: tuple[str | int, ...], value: object, why: str) -> None:
    if not why:
        assert "[c]\n" == put("a.b = 1\na.d = 1\n[c]\n", ("a", "b"), None).replace("a.d = 1\n", "")
        return
    with pytest.raises(NotPut) as caught:
        put(text, path, value)
    assert why == str(caught.value)


def test_a_table_is_added_behind_all_else() -> None:
    table = {"line": "F = 3", "after": ["W = 2"]}
    block = '[[accept]]\nline = "F = 3"\nafter = ["W = 2"]\n'
    assert f"{TEXT}\n{block}" == add_table(TEXT, "accept", table)
    assert f"a = 1\n\n{block}" == add_table("a = 1", "accept", table)
    assert block == add_table("", "accept", table)
    assert f"{TWO}\r\n{block}".replace("\r", "").replace("\n", "\r\n") == add_table(TWO, "accept", table)
    assert f"{TEXT}\n[person]\nmass = 3\n" == add_table(TEXT, "person", {"mass": 3}, many=False)
    assert 2 == add_table(add_table(TEXT, "a b", {}), "a b", {}).count('[["a b"]]')


@pytest.mark.parametrize(("kind", "many"), [("pivot", True), ("pivot", False), ("title", True), ("load", False)])
def test_a_table_that_is_there_is_not_added(kind: str, many: bool) -> None:
    with pytest.raises(NotPut, match=f"^{kind} is there already, or written otherwise: change it in the file.$"):
        add_table(TEXT, kind, {}, many)


def test_a_table_is_cut_with_its_comment_left_to_the_next() -> None:
    jug = '[[load]]\nname = "jug"\nmass = 3.0\n\n'
    assert TEXT.replace(jug, "") == cut_table(TEXT, ("load", 0))
    assert TEXT[: TEXT.index('[[load]]\nname = "tin"')] == cut_table(TEXT, ("load", 1))
    assert "a = 1\n" == cut_table("a = 1\n\n\n[[t]]\nb = 1\n\n[[t.u]]\nc = 1\n", ("t", 0))
    assert "[[t]]\n[[t.u]]\nc = 2\n" == cut_table("[[t]]\n[[t.u]]\nc = 1\n[[t.u]]\nc = 2\n", ("t", 0, "u", 0))
    for path, why in (
        ((), "There is no such table in the file."),
        (("load", 2), "There is no such table in the file."),
        (("title",), "There is no such table in the file."),
        (("pivot", "inner"), "This table has no header of its own: change it in the file."),
    ):
        with pytest.raises(NotPut) as caught:
            cut_table(TEXT, path)
        assert why == str(caught.value)
