"""A person has the last word: a verdict that a tutor overrules holds in marks, reports and tallies, in every working
that has the same line or the same formula; the problem file takes it whole or not at all.
"""

from __future__ import annotations

import json
import os
import tomllib
from collections.abc import Mapping
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner, Result
from markings import TIN

import explain.output
from explain import Fault, Walkthrough, accept, work
from explain.cli.main import main
from explain.marking.marks.award import awarded
from explain.marking.marks.scheme import scheme_of
from explain.marking.report.page import report
from explain.marking.slips.verdict import Marking
from explain.tally.api import asked_of, of_answers
from explain.tally.answer_table import read_sheet
from explain.vary.source import with_values
from explain.write.html.pages import html
from explain.write.markdown.pages import markdown
from explain.write.text.pages import text

CASES = Path(__file__).with_name("cases") / "marks"
SOURCE = TIN.read_bytes().replace(b'course = "harbour-school.toml"\n', b"")  # it names no other file
# The tin with its arm, by hand: 2.5 kg at 31 cm, arm 1.8 kg at 16.5 cm, flexors straight up at 4.4 cm. Without the arm
# F = 24.525 x 31 / 4.4 = 172.8 N, and R = 172.8 - 24.525 = 148.3 N.
NO_ARM = "W = 2.5*9.81 = 24.525 N\nF*4.4 - 24.525*31 = 0\nF = 760.3/4.4 = 172.8 N\nR = 172.8 - 24.5 = 148.3 N down\n"
LINE = "F*4.4 - 24.525*31 = 0"
BECAUSE = "in this class the arm has no weight"
SWAPPED = "F = 239 N\nR = F + 24.525 + 17.658 = 281.2 N down\n"  # the weights with the wrong sign


def tin(*lines: Mapping[str, Any]) -> Walkthrough:
    return work({**tomllib.loads(SOURCE.decode()), "accept": list(lines)})


def marked(typed: str, *lines: Mapping[str, Any]) -> Marking:
    return tin(*lines).mark(typed)


def kinds(marking: Marking) -> list[str]:
    return [each.verdict for each in marking.lines if each.text]


def earned(walkthrough: Walkthrough, typed: str) -> int:
    return awarded(scheme_of(walkthrough.outcome), walkthrough.mark(typed)).earned


@pytest.fixture
def desk(tmp_path: Path) -> tuple[Path, Path]:
    """A problem file and a working in which line 2 does not hold."""
    problem, working = tmp_path / "tin.toml", tmp_path / "noor.txt"
    problem.write_bytes(SOURCE)
    working.write_text(NO_ARM, encoding="utf-8")
    return problem, working


def run(*arguments: object) -> Result:
    return CliRunner().invoke(main, ["mark", *map(str, arguments)])


# ---------------------------------------------------------------------- verdicts, marks, answers
def test_an_accepted_line_holds_and_so_does_what_follows_from_it() -> None:
    assert kinds(marked(NO_ARM))[:3] == ["holds", "slips", "carried"]
    found = marked(NO_ARM, {"line": LINE, "because": BECAUSE})
    assert kinds(found) == ["holds"] * 4 and found.first_wrong is None and not found.needs_a_person
    assert found.lines[1].says == f"A tutor accepted this line: {BECAUSE}."
    assert [(each.accepted, each.since) for each in found.lines[1:3]] == [(LINE, 0), ("", 2)]
    assert all(each.right and each.accepted for each in found.answers) and len(found.answers) == 2


def test_a_size_that_comes_of_accepted_parts_is_right_with_them() -> None:
    oranges = tomllib.loads((CASES / "oranges.toml").read_text(encoding="utf-8"))
    typed = (CASES / "23-wanda.txt").read_text(encoding="utf-8")
    walkthrough = work({**oranges, "accept": [{"line": typed.splitlines()[1]}]})
    assert all(each.right for each in walkthrough.mark(typed).answers)
    assert earned(walkthrough, typed) == 12


def test_marks_follow_it() -> None:
    assert earned(tin(), NO_ARM) < earned(tin({"line": LINE}), NO_ARM) == scheme_of(tin().outcome).total


@pytest.mark.parametrize(
    "typed",
    (
        "F * 4.4  −  24.525 × 31 = 0",
        "F*0.044 = 2.5*9.81*0.31",
        "4.4 F = 2.5 × 9.81 × 31",
        "F = 2.5*9.81*31/4.4 = 172.8 N",
        "0 = 24.525*0.31 - 0.044*F",
    ),
)
def test_the_same_formula_in_another_working_is_accepted_however_it_is_written(typed: str) -> None:
    assert kinds(marked(typed))[:1] == ["slips"]
    found = marked(typed, {"line": LINE})
    assert (kinds(found), found.lines[0].accepted) == (["holds"], LINE)


@pytest.mark.parametrize(
    "typed",
    (
        "F*4.4 - 24.525*31 - 17.658*38 = 0",  # the arm at its tip
        "F*4.4 = 2.5*31 + 1.8*16.5",  # masses for weights
        "R = 24.525*31/4.4 = 172.8 N down",  # the same number, called another force
        "F*4.4 - 24.525*13 = 0",
    ),
)
def test_another_slip_or_another_quantity_is_not(typed: str) -> None:
    assert kinds(marked(typed)) == kinds(marked(typed, {"line": LINE})) != ["holds"]


def test_a_line_that_rests_on_others_is_told_by_its_formula_behind_them() -> None:
    assert kinds(marked(SWAPPED)) == ["holds", "slips"]
    table = {"line": "R = F + 24.525 + 17.658 = 281.2 N down", "after": ["F = 239 N"]}
    assert kinds(marked(SWAPPED, table)) == ["holds", "holds"]
    assert kinds(marked("T = 239 N\nR = 239 + 42.183 = 281.2 N down", table)) == ["holds", "holds"]


def test_a_line_that_could_not_be_followed_is_accepted_by_its_text() -> None:
    typed = "from the drawing, F = 777 N"
    assert kinds(marked(typed))[0] in ("unclear", "slips")
    assert kinds(marked(typed, {"line": "from the drawing,  F=777 N"})) == ["holds"]


def test_right_lines_and_other_problems_are_as_before() -> None:
    right = "F*4.4 = 24.525*31 + 17.658*16.5\nF = 239 N\nR = 196.8 N down"
    assert marked(right, {"line": LINE}).lines == marked(right).lines


# ---------------------------------------------------------------------- reports
def test_a_report_shows_how_to_contest_a_line_in_every_format() -> None:
    marking, walkthrough = marked(NO_ARM), tin()
    for form in (text, markdown, html):
        student, tutor = (" ".join(form(report(marking, walkthrough, each)).split()) for each in ("student", "tutor"))  # type: ignore[arg-type]
        assert "If you see it otherwise." in student and "show line 2 to your tutor" in student
        assert "--accept 2" in tutor and "--accept" not in student
    assert "[[accept]]" in text(report(marking, walkthrough, "tutor"))


def test_a_report_says_what_was_accepted_and_why_and_nothing_of_contesting() -> None:
    walkthrough = tin({"line": LINE, "because": BECAUSE})
    for audience in ("student", "tutor"):
        told = " ".join(text(report(walkthrough.mark(NO_ARM), walkthrough, audience)).split())  # type: ignore[arg-type]
        assert BECAUSE in told and "follows from line 2, which a tutor accepted" in told
        assert "last word" not in told
    assert "✓ accepted" in told


def test_json_names_the_table_it_was_accepted_by(desk: tuple[Path, Path]) -> None:
    run(*desk, "--accept", 2)
    found = json.loads(run(*desk, "--as", "json").stdout)
    assert [each.get("accepted") for each in found["lines"]][:3] == [None, LINE, None]


# ---------------------------------------------------------------------- the tally
def test_an_answer_by_an_accepted_line_is_right_in_the_tally(tmp_path: Path) -> None:
    table = tmp_path / "answers.csv"
    table.write_text("student,elbow flexors,reaction\nNoor,172.8,148.3\nOle,239,197\nPia,295,240\n", encoding="utf-8")
    for lines, right in (((), 1), (({"line": LINE},), 2), (({"line": "F = 172.8 N"},), 2)):
        walkthrough = tin(*lines)
        found = of_answers(walkthrough, read_sheet(table, asked_of(walkthrough))).tally
        assert found.right == right
    assert {each.note for each in found.entries[0].said if each.name == "elbow flexors"} == {
        "by a line that a tutor accepted"
    }


def test_workings_are_tallied_by_it(desk: tuple[Path, Path], tmp_path: Path) -> None:
    folder = tmp_path / "class"
    folder.mkdir()
    for name, typed in (("ole", "F*0.044 = 2.5*9.81*0.31\nF = 172.8 N"), ("pia", NO_ARM)):
        (folder / f"{name}.txt").write_text(typed, encoding="utf-8")

    def wrong() -> int:
        out = CliRunner().invoke(main, ["tally", str(desk[0]), str(folder), "--as", "json", "--jobs", "1"]).stdout
        return sum(bool(each["wrong"]) for each in json.loads(out)["rows"])

    assert wrong() == 2
    run(*desk, "--accept", 2)
    assert wrong() == 0


# ---------------------------------------------------------------------- the problem file
def test_a_line_is_added_and_all_else_kept_to_the_byte(desk: tuple[Path, Path]) -> None:
    before = desk[0].read_bytes()
    found = run(*desk, "--accept", 2, "--because", BECAUSE)
    after = desk[0].read_bytes()
    assert found.exit_code == 0 and "A tutor accepted this line" in found.stdout
    assert after.startswith(before)
    assert tomllib.loads(after.decode())["accept"] == [
        {"line": LINE, "because": BECAUSE, "after": ["W = 2.5*9.81 = 24.525 N"]}
    ]
    assert sorted(each.name for each in desk[0].parent.iterdir()) == ["noor.txt", "tin.toml"]


@pytest.mark.parametrize(("change", "end"), ((b"\n", b"\n"), (b"\r\n", b"\r\n")))
@pytest.mark.parametrize("mark", (b"", b"\xef\xbb\xbf"))
@pytest.mark.parametrize("last", (b"", b"\n", b"  # no line end"))
def test_line_ends_a_byte_order_mark_and_a_last_line_without_end_are_kept(
    desk: tuple[Path, Path], change: bytes, end: bytes, mark: bytes, last: bytes
) -> None:
    before = mark + SOURCE.rstrip().replace(b"\n", change) + last.replace(b"\n", change)
    desk[0].write_bytes(before)
    assert run(*desk, "--accept", 2).exit_code == 0
    added = desk[0].read_bytes().removeprefix(before)
    assert added.lstrip().startswith(b"[[accept]]" + end + b"line = ") and added.count(b"\n") == added.count(end)
    assert run(*desk).exit_code == 0


@pytest.mark.parametrize("typed", ('F = 777 N "by eye"', "F = 777 N \\ '", "F = 777 N ×÷ é", "F = 777 N ]] # x"))
def test_any_text_comes_back_from_the_file_as_it_was_typed(desk: tuple[Path, Path], typed: str) -> None:
    desk[1].write_text(typed, encoding="utf-8")
    run(*desk, "--accept", 1, "--because", typed)
    (found,) = tomllib.loads(desk[0].read_text(encoding="utf-8"))["accept"]
    assert (found["line"], found["because"]) == (typed, typed)


def test_a_link_to_the_problem_file_stays_a_link(desk: tuple[Path, Path], tmp_path: Path) -> None:
    link = tmp_path / "link.toml"
    link.symlink_to(desk[0])
    assert run(link, desk[1], "--accept", 2).exit_code == 0
    assert link.is_symlink() and "[[accept]]" in desk[0].read_text(encoding="utf-8")


def test_permissions_of_the_problem_file_are_kept(desk: tuple[Path, Path]) -> None:
    os.chmod(desk[0], 0o640)
    run(*desk, "--accept", 2)
    assert desk[0].stat().st_mode & 0o777 == 0o640


@pytest.mark.parametrize(
    ("number", "typed", "says"),
    (
        (9, NO_ARM, "line 9 of a working of 4 lines"),
        (1, NO_ARM, "line 1, which holds already"),
        (3, NO_ARM, "line 3, which follows from line 2"),
        (1, f"the moments:\n{LINE}", "line 1, which is words"),
        (2, f"W = 24.525 N\n\n{LINE}", "line 2, on which nothing is written"),
    ),
)
def test_a_line_that_cannot_be_accepted_is_told_and_nothing_is_written(
    desk: tuple[Path, Path], number: int, typed: str, says: str
) -> None:
    before = desk[0].read_bytes()
    desk[1].write_text(typed, encoding="utf-8")
    found = run(*desk, "--accept", number)
    assert (found.exit_code, found.stdout, desk[0].read_bytes()) == (2, "", before)
    assert says in found.stderr and f"--accept {2 if typed == NO_ARM else len(typed.splitlines())}" in found.stderr


def test_a_line_is_not_accepted_twice(desk: tuple[Path, Path]) -> None:
    run(*desk, "--accept", 2)
    before = desk[0].read_bytes()
    assert "line 2, which is accepted already" in run(*desk, "--accept", 2).stderr
    assert desk[0].read_bytes() == before


@pytest.mark.parametrize("number", (0, -1, "two"))
def test_a_number_that_is_no_line_is_refused(desk: tuple[Path, Path], number: object) -> None:
    assert run(*desk, "--accept", number).exit_code == 2


def test_one_working_is_accepted_at_a_time_and_a_reason_needs_a_line(desk: tuple[Path, Path]) -> None:
    assert "with 2 workings" in run(*desk, desk[1], "--accept", 2).stderr
    assert "--because without --accept" in run(*desk, "--because", "x").stderr
    assert desk[0].read_bytes() == SOURCE


def test_a_file_that_may_only_be_read_is_refused_whoever_asks(desk: tuple[Path, Path]) -> None:
    os.chmod(desk[0], 0o444)
    found = run(*desk, "--accept", 2)
    assert found.exit_code == 2 and "may only be read" in found.stderr and "Nothing was changed." in found.stderr
    assert desk[0].read_bytes() == SOURCE


def test_a_disk_without_room_leaves_the_problem_file_as_it_was(
    desk: tuple[Path, Path], monkeypatch: pytest.MonkeyPatch
) -> None:
    def full(*_: object) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(explain.output.os, "replace", full)
    found = run(*desk, "--accept", 2)
    assert found.exit_code == 2 and "cannot be added" in found.stderr
    assert desk[0].read_bytes() == SOURCE and len(list(desk[0].parent.iterdir())) == 2


def test_a_file_with_its_accepted_lines_in_one_row_is_refused_as_it_is(desk: tuple[Path, Path]) -> None:
    before = b'accept = [{ line = "F = 777 N" }]\n' + SOURCE
    desk[0].write_bytes(before)
    assert "cannot be added" in run(*desk, "--accept", 2).stderr and desk[0].read_bytes() == before


def test_a_pipe_for_a_problem_file_cannot_be_added_to(desk: tuple[Path, Path], tmp_path: Path) -> None:
    from explain.marking.report.accepting import put_accepted
    from explain.problem.model import Accept

    os.mkfifo(tmp_path / "pipe.toml")
    with pytest.raises(Fault, match="cannot be added"):
        put_accepted(tmp_path / "pipe.toml", Accept(LINE))


def test_an_accepted_line_that_nobody_wrote_is_named(desk: tuple[Path, Path]) -> None:
    desk[0].write_bytes(SOURCE + b'\n[[accept]]\nline = "F = 777 N"\n')
    found = run(*desk)
    assert 'accept[1].line: found "F = 777 N", which no line of this working is.' in found.stderr
    desk[1].write_text("F = 777 N", encoding="utf-8")
    assert "accept" not in run(*desk).stderr


def test_the_library_does_the_same(desk: tuple[Path, Path]) -> None:
    assert kinds(accept(desk[0], NO_ARM, 2, BECAUSE).mark(NO_ARM)) == ["holds"] * 4
    with pytest.raises(Fault, match="holds already"):
        accept(desk[0], NO_ARM, 1)


def test_variants_have_other_numbers_and_take_no_accepted_line() -> None:
    tables = {**tomllib.loads(SOURCE.decode()), "accept": [{"line": LINE}]}
    assert set(tables) - set(with_values(tables, (), ())) == {"accept"}
