"""`explain mark`: files in, reports out, exit codes, what a bad working does to the others, and the samples for
real.
"""

from __future__ import annotations

import json
import re
import subprocess
import sys
from pathlib import Path

import pytest
from click.testing import CliRunner, Result
from markings import HERE, TIN, worked

from explain.cli.main import main
from explain.marking.report.without_numbers import numbers

SAMPLES = HERE.parent / "samples"
WORKINGS = SAMPLES / "workings"
LEFT_OUT, RIGHT = WORKINGS / "saoirse-02.txt", WORKINGS / "leo-02.txt"


def run(*arguments: object, stdin: bytes | None = None) -> Result:
    return CliRunner().invoke(main, ["mark", *map(str, arguments)], input=stdin)


def handed_in(tmp_path: Path, content: bytes | str, name: str = "working.txt") -> Path:
    path = tmp_path / name
    path.write_bytes(content.encode() if isinstance(content, str) else content)
    return path


# ---------------------------------------------------------------------- exit codes and what comes out
def test_a_wrong_line_asks_for_a_person_and_a_right_working_does_not() -> None:
    assert (run(TIN, LEFT_OUT).exit_code, run(TIN, RIGHT).exit_code) == (1, 0)


def test_the_text_names_the_first_line_that_does_not_hold() -> None:
    assert "Line 3 is the first that does not hold" in run(TIN, LEFT_OUT).stdout


def test_json_without_an_audience_is_everything_and_for_a_student_what_they_may_see() -> None:
    full, own = (json.loads(run(TIN, LEFT_OUT, "--as", "json", *more).stdout) for more in ((), ("--for", "student")))
    assert (full["first_wrong"], full["lines"][2]["slip"]) == (3, "segment-left-out") and full["marks"]["of"] == 6
    assert own["lines"][2]["slip"] is None and "marks" not in own


@pytest.mark.parametrize("suffix", (".md", ".html", ".pdf", ".txt", ".json"))
@pytest.mark.parametrize("audience", ("student", "tutor"))
def test_a_suffix_says_the_format(tmp_path: Path, suffix: str, audience: str) -> None:
    target = tmp_path / f"report{suffix}"
    assert run(TIN, LEFT_OUT, "-o", target, "--for", audience).exit_code == 1
    assert target.stat().st_size > 500 and list(tmp_path.iterdir()) == [target]


def test_a_tutor_has_the_walkthrough_behind_the_report_and_a_student_has_not() -> None:
    assert "The elbow flexors pull with 239 N" in run(TIN, LEFT_OUT, "--for", "tutor").stdout
    assert "239" not in run(TIN, LEFT_OUT, "--hints", 3).stdout


def test_standard_input_is_a_working() -> None:
    found = run(TIN, "-", "--as", "json", stdin=b"F = 239 N")
    assert json.loads(found.stdout)["lines"][0]["verdict"] == "holds"


def test_several_workings_go_into_one_file_with_a_summary_or_into_a_folder(tmp_path: Path) -> None:
    together = run(TIN, LEFT_OUT, RIGHT)
    assert "2 of 2 workings read; 1 with a line to look at: saoirse-02.txt." in together.stderr
    assert "(leo-02)" in together.stdout and "(saoirse-02)" in together.stdout
    run(TIN, LEFT_OUT, RIGHT, "-o", tmp_path / "reports", "--as", "html")
    assert sorted(each.name for each in (tmp_path / "reports").iterdir()) == [
        "leo-02-report.html",
        "saoirse-02-report.html",
    ]


# ---------------------------------------------------------------------- files of other kinds
def test_markdown_is_read_without_its_fences_list_marks_and_ticks(tmp_path: Path) -> None:
    path = handed_in(
        tmp_path, "# part (a)\n\n```\nF*4.4 = 24.525*31 + 17.658*16.5\n```\n\n- `F = 239 N`\n", "working.md"
    )
    found = json.loads(run(TIN, path, "--as", "json").stdout)
    assert [(each["number"], each["verdict"]) for each in found["lines"] if each["verdict"] == "holds"] == [
        (4, "holds"),
        (7, "holds"),
    ]


def test_a_column_is_one_working_a_line_a_row(tmp_path: Path) -> None:
    path = handed_in(tmp_path, "n,working\n1,F*4.4 = 24.525*31 + 17.658*16.5\n2,F = 239 N\n", "w.csv")
    assert [each["text"] for each in json.loads(run(TIN, path, "--as", "json").stdout)["lines"]] == [
        "F*4.4 = 24.525*31 + 17.658*16.5",
        "F = 239 N",
    ]


def test_cells_of_several_lines_are_a_working_each(tmp_path: Path) -> None:
    path = handed_in(tmp_path, 'who;steps\nA;"F*4.4 = 24.525*31\nF = 172.8 N"\nB;F = 239 N\n', "w.csv")
    found = run(TIN, path, "--as", "json", "--column", "steps")
    assert [json.loads(each)["first_wrong"] for each in found.stdout.splitlines()] == [1, None]


def test_a_column_of_names_parts_a_class() -> None:
    found = run(SAMPLES / "01-treacle-tin.toml", WORKINGS / "class-01.csv", "--by", "student", "--as", "json")
    assert len(found.stdout.splitlines()) == 3 and "3 of 3 workings read" in found.stderr


@pytest.mark.parametrize(
    ("more", "says"),
    (
        ((), "none of them named"),
        (("--column", "step"), "--column steps"),
        (("--column", "steps", "--by", "name"), "no column"),
    ),
)
def test_a_column_that_is_not_there_is_told_with_those_that_are(
    tmp_path: Path, more: tuple[str, ...], says: str
) -> None:
    found = run(TIN, handed_in(tmp_path, "who,steps\nA,F = 3\n", "w.csv"), *more)
    assert found.exit_code == 2 and says in found.stderr


def test_names_from_a_table_cannot_leave_the_folder(tmp_path: Path) -> None:
    path = handed_in(tmp_path, "who,working\n../../up,F = 239 N\n/etc/x,F = 239 N\n...,F = 239 N\n", "w.csv")
    run(TIN, path, "--by", "who", "-o", tmp_path / "out", "--as", "text")
    assert sorted(each.name for each in (tmp_path / "out").iterdir()) == [
        "w-etc-x-report.txt",
        "w-report.txt",
        "w-up-report.txt",
    ]


# ---------------------------------------------------------------------- input at fault
@pytest.mark.parametrize(
    ("content", "says"),
    (
        (b"", "empty"),
        (b"\n \n\t", "empty"),
        (b"\x89PNG\r\n\x1a\n" + bytes(range(256)) * 20, "no text"),
        ("F = 239 N".encode("utf-32"), "no text"),
        (b"F = 1\n" * 200_000, "more than"),
        (b"%PDF-1.7\n" + bytes(range(32)) * 50, "no text"),
    ),
)
def test_what_is_no_working_is_told_and_exits_with_two(tmp_path: Path, content: bytes, says: str) -> None:
    found = run(TIN, handed_in(tmp_path, content))
    assert found.exit_code == 2 and says in found.stderr and not found.stdout


@pytest.mark.parametrize("encoding", ("utf-8", "utf-8-sig", "utf-16", "cp1252"))
def test_usual_encodings_are_read(tmp_path: Path, encoding: str) -> None:
    found = run(
        TIN, handed_in(tmp_path, "F × 4.4 = 24.525 × 31 + 17.658 × 16.5\nF = 239 N".encode(encoding)), "--as", "json"
    )
    assert [each["verdict"] for each in json.loads(found.stdout)["lines"]] == ["holds", "holds"]


def test_one_bad_line_leaves_the_others_read(tmp_path: Path) -> None:
    found = run(
        TIN, handed_in(tmp_path, b"F*4.4 = 24.525*31 + 17.658*16.5\n\x81\x8d\x90 = 3\nF = 239 N"), "--as", "json"
    )
    assert [each["verdict"] for each in json.loads(found.stdout)["lines"]] == ["holds", "unclear", "holds"]


def test_one_bad_working_leaves_the_others_read(tmp_path: Path) -> None:
    found = run(TIN, handed_in(tmp_path, b""), tmp_path / "nowhere.txt", RIGHT, "--as", "json")
    assert found.exit_code == 2 and len(found.stdout.splitlines()) == 1
    assert "1 of 3 workings read" in found.stderr and "not read: " in found.stderr


def test_a_problem_at_fault_stops_before_anything_is_written(tmp_path: Path) -> None:
    found = run(handed_in(tmp_path, "title = 3", "p.toml"), LEFT_OUT, "-o", tmp_path / "r.txt")
    assert found.exit_code == 2 and not (tmp_path / "r.txt").exists()


@pytest.mark.parametrize("name", ("w.docx", "w.pdf"))
def test_other_suffixes_are_refused(tmp_path: Path, name: str) -> None:
    found = run(TIN, handed_in(tmp_path, "F = 239 N", name))
    assert found.exit_code == 2 and ".txt, .md or .csv" in found.stderr


def test_a_report_is_not_written_over_an_input(tmp_path: Path) -> None:
    path = handed_in(tmp_path, "F = 239 N")
    assert run(TIN, path, "-o", path).exit_code == 2 and path.read_text() == "F = 239 N"


def test_help_brings_in_nothing_heavy() -> None:
    code = (
        "import sys; from explain.cli.main import main; main(['--help'], standalone_mode=False); "
        "print(sorted({'sympy', 'pint', 'weasyprint', 'rules'} & set(sys.modules)))"
    )
    found = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True).stdout
    assert found.strip().endswith("[]") and "mark" in found


# ---------------------------------------------------------------------- the samples, for real
@pytest.mark.parametrize(
    ("problem", "working", "first", "slip"),
    (
        ("02-treacle-tin-again", "saoirse-02.txt", 3, "segment-left-out"),
        ("02-treacle-tin-again", "zofia-02.txt", 7, "reaction-omits-muscle"),
        ("02-treacle-tin-again", "leo-02.txt", None, None),
        ("01-treacle-tin", "harriet-01.txt", 2, "mass-for-weight"),
        ("10-regatta-flag", "dinesh-10.md", 10, "sine-cosine-swap-muscle"),
        ("05-crab-pot", "petra-05.txt", 1, "pound-as-mass"),
        ("08-dog-on-the-plank", "joss-08.txt", None, None),
    ),
)
def test_a_sample_working_goes_wrong_where_it_was_made_to(
    problem: str, working: str, first: int | None, slip: str | None
) -> None:
    found = json.loads(run(SAMPLES / f"{problem}.toml", WORKINGS / working, "--as", "json").stdout)
    assert found["first_wrong"] == first
    named = [each for each in found["lines"] if each["number"] == first]
    assert slip in [None] * (first is None) + [
        name for each in named for name in (each["slip"], *each["also_possible"])
    ]


@pytest.mark.parametrize(
    ("problem", "working"),
    (
        ("02-treacle-tin-again", "saoirse-02.txt"),
        ("02-treacle-tin-again", "zofia-02.txt"),
        ("01-treacle-tin", "harriet-01.txt"),
        ("10-regatta-flag", "dinesh-10.md"),
        ("05-crab-pot", "petra-05.txt"),
    ),
)
@pytest.mark.parametrize("form", ("text", "json", "html", "markdown"))
def test_no_sample_report_for_a_student_holds_a_true_answer_that_was_not_typed(
    problem: str, working: str, form: str
) -> None:
    told = run(SAMPLES / f"{problem}.toml", WORKINGS / working, "--for", "student", "--hints", 3, "--as", form).stdout
    told = re.sub(r"(?s)<style>.*?</style>", "", told)
    typed = set(numbers((WORKINGS / working).read_text(encoding="utf-8")))
    values = [abs(each.value) for each in worked(SAMPLES / f"{problem}.toml").answers.values() if each.value]
    secrets = {f"{value:.{figures}g}" for value in values for figures in range(3, 7)} | {
        f"{value:.{places}f}" for value in values for places in range(3)
    }
    found = {each for each in secrets if re.search(rf"(?<![\d.,]){re.escape(each)}(?!\d)", told)}
    assert len(told) > 300 and {each for each in found if float(each) not in typed} == set()
