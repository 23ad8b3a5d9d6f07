"""New files: each works at once, nothing is asked, and nothing that is there is touched."""

from __future__ import annotations

import os
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from explain import work
from explain.cli.main import main
from explain.problem.new_files import LIKE, new_files


def run(*arguments: object) -> Result:
    return CliRunner().invoke(main, [str(each) for each in arguments])


@pytest.fixture(autouse=True)
def here(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.chdir(tmp_path)
    return tmp_path


@pytest.mark.parametrize("like", LIKE)
def test_a_new_problem_works_at_once_and_every_check_holds(like: str, here: Path) -> None:
    assert (0, "") == ((made := run("new", "pail", "--like", like)).exit_code, made.stderr)
    assert ["pail.toml"] == os.listdir(here)
    worked = work(here / "pail.toml")
    assert (True, False) == (bool(worked.answers), worked.needs_a_person)
    assert {"fails", "warns"} & {finding.result for _, finding in worked.checks} == set()
    assert "#" in (here / "pail.toml").read_text("utf-8") and "pail.toml" in made.stdout


def test_without_a_word_it_is_an_elbow(here: Path) -> None:
    run("new", "pail.toml")
    assert new_files("problem", "pail")["pail.toml"] == (here / "pail.toml").read_text("utf-8")
    assert "elbow" == work(here / "pail.toml").problem.pivot.name


@pytest.mark.parametrize("like", LIKE)
def test_a_new_series_works_at_once(like: str, here: Path) -> None:
    assert 0 == run("new", "week", "--series", "--like", like).exit_code
    assert {"week.toml", "week-base.toml"} == set(os.listdir(here))
    done = run("series", "week.toml")
    assert (0, True) == (done.exit_code, "A heavier bag" in done.stdout)


@pytest.mark.parametrize("like", ["elbow", "hip"])
def test_a_new_book_is_made_at_once(like: str, here: Path) -> None:
    assert 0 == run("new", "term", "--book", "--like", like).exit_code
    done = run("manual", "term.toml", "--no-cache", "--jobs", 1)
    assert (0, True) == (done.exit_code, "1.1" in done.stdout)


def test_a_new_course_changes_nothing_until_it_is_changed(here: Path) -> None:
    run("new", "class", "--course"), run("new", "pail")
    assert run("work", "pail.toml").stdout == run("work", "pail.toml", "--course", "class.toml").stdout
    text = (here / "class.toml").read_text("utf-8")
    (here / "class.toml").write_text(text.replace('word = "moment"', 'word = "torque"'), "utf-8")
    assert "torque" in run("work", "pail.toml", "--course", "class.toml").stdout


@pytest.mark.parametrize("kind", [(), ("--course",), ("--series",), ("--book",)])
def test_nothing_is_overwritten(kind: tuple[str, ...], here: Path) -> None:
    (here / "pail.toml").write_text("mine", "utf-8")
    done = run("new", "pail", *kind)
    assert (2, "", "mine", ["pail.toml"]) == (
        done.exit_code,
        done.stdout,
        (here / "pail.toml").read_text("utf-8"),
        os.listdir(here),
    )
    assert "left as it is" in done.stderr and "explain new pail-2" in done.stderr


@pytest.mark.parametrize(("kind", "second"), [("--series", "pail-base.toml"), ("--book", "pail-1.md")])
def test_of_two_files_none_is_written_where_one_is_there(kind: str, second: str, here: Path) -> None:
    (here / second).write_text("mine", "utf-8")
    assert (2, [second], "mine") == (
        run("new", "pail", kind).exit_code,
        os.listdir(here),
        (here / second).read_text("utf-8"),
    )


@pytest.mark.parametrize(
    ("name", "said"),
    [
        ("", "as the name of a file"),
        (".", "as the name of a file"),
        ("..", "as the name of a file"),
        (".hidden", "as the name of a file"),
        ("pail/", "as the name of a file"),
        ("a\nb", "as the name of a file"),
        ("x" * 200, "as the name of a file"),
        ("none/pail", 'no folder "none"'),
        ("pail.md", 'the suffix ".md"'),
        ("pail.pdf", "explain new pail"),
    ],
)
def test_a_bad_name_is_answered(name: str, said: str, here: Path) -> None:
    done = run("new", name)
    assert (2, "", [], True) == (done.exit_code, done.stdout, os.listdir(here), said in done.stderr)
    assert "program itself" not in done.stderr


def test_two_kinds_at_once_are_refused(here: Path) -> None:
    assert (2, []) == (run("new", "pail", "--course", "--like", "knee").exit_code, os.listdir(here))


def test_a_name_with_spaces_is_quoted_in_what_comes_next(here: Path) -> None:
    assert 'explain work "my pail.toml"' in run("new", "my pail").stdout
    assert ["my pail.toml"] == os.listdir(here)
