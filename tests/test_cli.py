"""The command line: pages and exit codes out, faults on standard error, and files written whole or not at all."""

from __future__ import annotations

import errno
import json
import os
import re
import subprocess
import sys
from collections.abc import Sequence
from io import BytesIO
from pathlib import Path
from typing import Any

import click
import jsonschema
import pikepdf
import pytest
from click.testing import CliRunner, Result
from lxml import etree

import explain.api
import rules
from explain.cli.main import ELSEWHERE, main
from explain.errors import A_PERSON, AT_FAULT, BROKEN, DONE, NO_WAY, STOPPED
from explain.output import FORMATS
from explain.problem.course_file import COURSE_KEYS
from explain.problem.magnitudes import BOUNDS, _unit
from explain.api import Walkthrough

TESTS = Path(__file__).parent
SAMPLES = TESTS.parent / "samples"
WORK, SERIES, MARK, CLASS, MANUAL = (
    SAMPLES / f"{name}.md" for name in "problem-files series-files marking classes manuals".split()
)
TOLD_IN = {
    "work": WORK,
    "draw": WORK,
    "schema": WORK,
    "new": WORK,
    "sheet": CLASS,
    "desk": SAMPLES / "desk.md",
    "export": SAMPLES / "export.md",
    "series": SERIES,
    "mark": MARK,
    "manual": MANUAL,
    "lesson": SAMPLES / "lesson.md",
} | dict.fromkeys(("tally", "vary"), CLASS)
JUG, ROCK, SCALE = (TESTS / "contract" / name for name in ("jug-level.toml", "rock-oblique.toml", "scale-push.toml"))
JUG_TITLE, ROCK_TITLE = "A milk jug, forearm level", "A rock on the palm: the tendon leans back"
BEGINS = {
    "markdown": b"# A milk jug",
    "html": b"<!DOCTYPE html>",
    "pdf": b"%PDF-",
    "latex": b"% The body of a document",
    "text": b"A milk jug, forearm level\n===",
    "json": b'{"title": ',
}
SUFFIXES = (
    ".md markdown",
    ".markdown markdown",
    ".html html",
    ".htm html",
    ".pdf pdf",
    ".tex latex",
    ".txt text",
    ".json json",
    ".jsonl json",
    ".HTML html",
)
PROCESS = (sys.executable, "-c", "from explain.cli.main import main; main()")
BEFORE = b"what was here before"


def run(*arguments: object) -> Result:
    return CliRunner().invoke(main, [str(each) for each in arguments])


def process(*arguments: object) -> subprocess.CompletedProcess[bytes]:
    return subprocess.run([*PROCESS, *map(str, arguments)], capture_output=True, check=False, timeout=60)


def jug(path: Path, old: str = "", new: str = "") -> Path:
    path.parent.mkdir(exist_ok=True)
    path.write_text(JUG.read_text(encoding="utf-8").replace(old, new), encoding="utf-8")
    return path


@pytest.fixture
def bad(tmp_path: Path) -> Path:
    return jug(tmp_path / "given" / "bad.toml", '"33 cm"', '"33"')


@pytest.fixture
def pushing(tmp_path: Path) -> Path:
    return jug(tmp_path / "given" / "pushing.toml", 'direction = "up"', 'direction = "down"')


@pytest.fixture
def page(tmp_path: Path) -> Path:
    """A page from an earlier run, in a folder of its own."""
    path = tmp_path / "pages" / "page.html"
    path.parent.mkdir()
    path.write_bytes(BEFORE)
    return path


def untouched(page: Path) -> bool:
    return (page.read_bytes(), os.listdir(page.parent)) == (BEFORE, [page.name])


def break_on(monkeypatch: pytest.MonkeyPatch, name: str) -> None:
    """Make working a file of this name end in a fault of the program itself."""
    work = explain.api.work

    def work_or_fail(source: Path, **extra: Any) -> Walkthrough:
        if source.name == name:
            raise ZeroDivisionError("nothing divides by nothing")
        return work(source, **extra)

    monkeypatch.setattr(explain.api, "work", work_or_fail)


class TestFormats:
    @pytest.mark.parametrize("form", FORMATS)
    def test_every_format_goes_to_standard_output_and_to_a_file_alike(self, form: str, tmp_path: Path) -> None:
        result = run("work", JUG, "--as", form)
        assert (0, BEGINS[form], "") == (result.exit_code, result.stdout_bytes[: len(BEGINS[form])], result.stderr)
        assert (0, b"") == (
            (filed := run("work", JUG, "--as", form, "-o", tmp_path / "page")).exit_code,
            filed.stdout_bytes,
        )
        assert result.stdout_bytes.rstrip() == (tmp_path / "page").read_bytes().rstrip()

    @pytest.mark.parametrize(("suffix", "form"), map(str.split, SUFFIXES))
    def test_the_suffix_of_a_file_decides(self, suffix: str, form: str, tmp_path: Path) -> None:
        run("work", JUG, "-o", tmp_path / f"page{suffix}")
        assert BEGINS[form] == (tmp_path / f"page{suffix}").read_bytes()[: len(BEGINS[form])]

    def test_text_is_what_no_one_has_to_ask_for(self) -> None:
        assert run("work", JUG, "--as", "text").stdout == run("work", JUG).stdout

    def test_the_format_asked_for_goes_before_the_suffix(self, tmp_path: Path) -> None:
        run("work", JUG, "-o", tmp_path / "page.md", "--as", "html")
        assert (tmp_path / "page.md").read_bytes().startswith(BEGINS["html"])

    @pytest.mark.parametrize("name", ["page.docx", "page"])
    def test_a_suffix_that_stands_for_nothing_is_refused(self, name: str, tmp_path: Path) -> None:
        assert (2, [], True) == (
            (result := run("work", JUG, "-o", tmp_path / name)).exit_code,
            list(tmp_path.iterdir()),
            ".md" in result.stderr,
        )

    def test_a_course_file_goes_before_the_course_of_the_problem(self, tmp_path: Path) -> None:
        (tmp_path / "course.toml").write_text('word = "moment"\n', encoding="utf-8")
        result = run("work", ROCK, "--course", tmp_path / "course.toml")
        assert (0, "", True) == (result.exit_code, result.stderr, "moments about the elbow" in result.stdout)
        assert "= 0.045 m" in result.stdout  # the problem's own key still stands

    @pytest.mark.parametrize("text", [None, 'word = "twist"\n', 'from = "other.toml"\n'])
    def test_a_course_file_at_fault_is_named(self, text: str | None, tmp_path: Path) -> None:
        course = tmp_path / "course.toml"
        if text is not None:
            course.write_text(text, encoding="utf-8")
        assert (2, "", True) == (
            (result := run("work", JUG, "--course", course)).exit_code,
            result.stdout,
            str(course) in result.stderr,
        )


class TestManyFiles:
    @pytest.mark.parametrize(
        ("form", "suffix"), [((), ".md"), (("--as", "html"), ".html"), (("--as", "json"), ".json")]
    )
    def test_a_folder_gets_one_file_for_each_problem(self, form: Sequence[str], suffix: str, tmp_path: Path) -> None:
        result = run("work", JUG, ROCK, "-o", tmp_path / "new" / "pages", *form)
        assert (0, {f"jug-level{suffix}", f"rock-oblique{suffix}"}) == (
            result.exit_code,
            set(os.listdir(tmp_path / "new" / "pages")),
        )

    @pytest.mark.parametrize(
        ("name", "mark"), [("all.md", "# {}\n"), ("all.html", "<h1>{}</h1>"), ("all.txt", "{}\n====")]
    )
    def test_several_pages_go_into_one_file_in_order(self, name: str, mark: str, tmp_path: Path) -> None:
        run("work", JUG, ROCK, "-o", tmp_path / name)
        text = (tmp_path / name).read_text(encoding="utf-8")
        assert 0 <= text.find(mark.format(JUG_TITLE)) < text.find(mark.format(ROCK_TITLE))
        assert text.count("<!DOCTYPE") == (name == "all.html")

    def test_one_pdf_file_has_the_sheets_of_all(self, tmp_path: Path) -> None:
        """Of pages that are not set tighter where they stand alone, as one is whose last sheet has few lines."""
        flexors = SCALE.with_name("two-flexors.toml")
        singles = [run("work", each, "--as", "pdf").stdout_bytes for each in (flexors, SCALE)]
        run("work", flexors, SCALE, "-o", tmp_path / "all.pdf")
        assert sum(len(pikepdf.open(BytesIO(each)).pages) for each in singles) == len(
            pikepdf.open(tmp_path / "all.pdf").pages
        )

    def test_json_is_one_object_a_line(self) -> None:
        lines = run("work", JUG, ROCK, SCALE, "--as", "json").stdout.splitlines()
        assert [JUG_TITLE, ROCK_TITLE, "Pressing down on a kitchen scale"] == [
            json.loads(each)["title"] for each in lines
        ]

    def test_a_bad_file_is_told_and_passed_over(self, bad: Path) -> None:
        result = run("work", JUG, bad, ROCK, "--as", "json")
        assert (2, 2, True) == (
            result.exit_code,
            len(result.stdout.splitlines()),
            f"{bad}, line 15: load[1].at" in result.stderr,
        )

    def test_the_summary_names_what_was_not_worked_and_where_a_check_fails(self, bad: Path, pushing: Path) -> None:
        last = run("work", JUG, bad, pushing).stderr.splitlines()[-1]
        assert (True, True, True) == (last.startswith("2 of 3 worked"), str(bad) in last, str(pushing) in last)

    def test_a_terminal_gets_a_bar_and_standard_output_gets_none(self) -> None:
        ours, theirs = os.openpty()
        done = subprocess.run(
            [*PROCESS, "work", JUG, ROCK, "--as", "json"],
            stdout=subprocess.PIPE,
            stderr=theirs,
            check=False,
            timeout=60,
        )
        told = os.read(ours, 4096)
        os.close(theirs), os.close(ours)
        assert (0, True, True, 2) == (
            done.returncode,
            b"100%" in told,
            b"2 of 2 worked" in told,
            len(done.stdout.splitlines()),
        )

    def test_two_files_of_one_name_never_overwrite_each_other(self, tmp_path: Path) -> None:
        result = run(
            "work",
            jug(tmp_path / "monday" / "p.toml"),
            jug(tmp_path / "tuesday" / "p.toml", "milk", "tea"),
            "-o",
            tmp_path / "pages",
        )
        kept = len(os.listdir(tmp_path / "pages")) if (tmp_path / "pages").exists() else 0
        assert (result.exit_code, kept) in ((0, 2), (2, 0))

    def test_a_fault_of_the_program_in_one_file_does_not_stop_the_others(self, monkeypatch: pytest.MonkeyPatch) -> None:
        break_on(monkeypatch, "jug-level.toml")
        result = run("work", JUG, ROCK, SCALE, "--as", "json")
        assert (70, 2, True) == (result.exit_code, len(result.stdout.splitlines()), "jug-level.toml" in result.stderr)


class TestExitCodes:
    def test_done_is_0_and_says_no_more_than_the_page(self) -> None:
        assert (0, b"") == ((done := process("work", JUG)).returncode, done.stderr)

    def test_a_check_that_fails_is_1_and_the_page_is_written(self, pushing: Path) -> None:
        result = process("work", pushing)
        assert (1, True) == (result.returncode, b"would have to push" in b" ".join(result.stdout.split()))

    def test_a_file_at_fault_is_2_with_where_and_what_to_write(self, bad: Path) -> None:
        result = process("work", bad)
        assert (2, b"") == (result.returncode, result.stdout)
        assert [True] * 4 == [
            each in result.stderr.decode()
            for each in (f"{bad}, line 15: load[1].at: found", '"33"', "Expected a length", 'at = "33')
        ]

    def test_no_way_is_3_and_shows_the_last_certified_line(self, monkeypatch: pytest.MonkeyPatch) -> None:
        without = {
            order: tuple(each for each in moves if each is not rules.divide) for order, moves in rules.MOVES.items()
        }
        monkeypatch.setattr(rules, "MOVES", without)
        result = run("work", JUG)
        assert (3, "", True) == (result.exit_code, result.stdout, "F_B (4.0 cm) = 1206.6 N·cm" in result.stderr)

    def test_a_fault_of_the_program_is_70(self, monkeypatch: pytest.MonkeyPatch) -> None:
        break_on(monkeypatch, "jug-level.toml")
        result = run("work", JUG)
        assert (70, "", True) == (result.exit_code, result.stdout, "fault of the program itself" in result.stderr)

    @pytest.mark.parametrize(
        "arguments",
        [
            (),
            ("work",),
            ("work", JUG, "--as", "word"),
            ("work", JUG, "--bogus"),
            ("frob",),
            ("schema", "page"),
            ("draw",),
            ("work", TESTS),
            ("work", "no-such-file.toml"),
            ("draw", "no-such-file.toml"),
        ],
    )
    def test_a_command_that_cannot_be_read_is_2(self, arguments: Sequence[object]) -> None:
        assert (2, "", True) == ((result := run(*arguments)).exit_code, result.stdout, bool(result.stderr))

    def test_the_worst_of_several_is_told(self, bad: Path, pushing: Path) -> None:
        assert [1, 2, 2] == [
            run("work", JUG, *each, "--as", "json").exit_code for each in ((pushing,), (bad, pushing), (pushing, bad))
        ]


class TestWholeOrNotAtAll:
    def test_a_file_at_fault_leaves_the_old_page_and_a_good_one_takes_its_place(self, page: Path, bad: Path) -> None:
        assert (2, True) == (run("work", bad, "-o", page).exit_code, untouched(page))
        assert (0, True) == (run("work", JUG, "-o", page).exit_code, page.read_bytes().startswith(b"<!DOCTYPE"))

    def test_a_writer_that_breaks_leaves_the_old_page(self, page: Path, monkeypatch: pytest.MonkeyPatch) -> None:
        monkeypatch.setattr(Walkthrough, "html", lambda self: 1 / 0)
        assert (70, True) == (run("work", JUG, "-o", page).exit_code, untouched(page))

    @pytest.mark.parametrize("command", ["work", "draw"])
    def test_a_folder_that_may_not_be_written_is_told(
        self, command: str, page: Path, monkeypatch: pytest.MonkeyPatch
    ) -> None:
        def closed(*_: object, **__: object) -> None:
            raise PermissionError(errno.EACCES, "Permission denied")

        monkeypatch.setattr("explain.output._new", closed)
        old = page if command == "work" else page.rename(page.with_suffix(".svg"))
        result = run(command, JUG, "-o", old)
        assert (2, True) == (result.exit_code, untouched(old))
        assert (True, False) == ("Permission denied" in result.stderr, "program itself" in result.stderr)

    @pytest.mark.parametrize("command", [("work", JUG), ("draw", JUG), ("work", JUG, ROCK)])
    @pytest.mark.parametrize("place", ["none/page.html", "page.html/page.html", "page.html/pages"])
    def test_a_place_that_is_no_folder_is_told(self, command: Sequence[str], place: str, page: Path) -> None:
        result = run(*command, "-o", page.parent / place)
        assert (2, True, "") == (result.exit_code, untouched(page), result.stdout)
        assert (True, False) == (page.parent.name in result.stderr, "program itself" in result.stderr)

    @pytest.mark.parametrize("command", [("work", "--as", "text"), ("draw",)])
    def test_a_problem_file_is_never_overwritten_by_its_page(self, command: Sequence[str], tmp_path: Path) -> None:
        mine = jug(tmp_path / "mine.toml")
        assert (2, JUG.read_bytes()) == (run(*command, mine, "-o", mine).exit_code, mine.read_bytes())


class TestTheRest:
    def test_a_drawing_is_well_formed_with_title_and_description(self, tmp_path: Path) -> None:
        result = run("draw", ROCK)
        root = etree.fromstring(result.stdout_bytes)
        texts = [root.findtext(f"{{*}}{tag}") or "" for tag in ("title", "desc")]
        assert (0, "svg", True, True) == (
            result.exit_code,
            etree.QName(root).localname,
            "forearm and hand" in texts[0],
            "rock" in texts[1],
        )
        assert (0, "") == ((filed := run("draw", ROCK, "-o", tmp_path / "rock.svg")).exit_code, filed.stdout)
        assert result.stdout_bytes.rstrip() == (tmp_path / "rock.svg").read_bytes().rstrip()

    @pytest.mark.parametrize("suffix", [".png", ".pdf", ".html"])
    def test_a_drawing_in_another_format_is_refused(self, suffix: str, tmp_path: Path) -> None:
        result = run("draw", JUG, "-o", tmp_path / f"jug{suffix}")
        assert (2, "", []) == (result.exit_code, result.stdout, list(tmp_path.iterdir()))
        assert f'the suffix "{suffix}"' in result.stderr and "jug.svg" in result.stderr

    @pytest.mark.parametrize("which", ["problem", "course"])
    def test_a_schema_is_printed_as_json_schema(self, which: str) -> None:
        printed = json.loads(run("schema", which).stdout)
        jsonschema.Draft202012Validator.check_schema(printed)
        assert printed["$id"].endswith(which)

    @pytest.mark.parametrize("name", ELSEWHERE)
    def test_the_list_of_commands_says_what_the_command_itself_says_first(self, name: str) -> None:
        command = main.get_command(click.Context(main), name)
        assert command is not None and command.help is not None
        assert (True, True) == (
            " ".join(command.help.split()).startswith(ELSEWHERE[name].rstrip(".")),
            ELSEWHERE[name] in " ".join(run("--help").stdout.split()),
        )

    def test_help_imports_no_command_that_lies_elsewhere(self) -> None:
        code = (
            "import sys\nfrom explain.cli.main import main\ntry:\n    main(['--help'])\nfinally:\n    "
            "print(*(each for each in sys.modules if each.startswith('explain')), file=sys.stderr)"
        )
        done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True, timeout=60)
        assert {"explain", "explain.cli", "explain.cli.main", "explain.errors", "explain.output"} == set(
            done.stderr.split()
        )

    def test_help_loads_nothing_heavy(self) -> None:
        code = (
            "import sys\nfrom explain.cli.main import main\ntry:\n    main(['--help'])\nfinally:\n    "
            "print(*sys.modules, file=sys.stderr)"
        )
        done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True, timeout=60)
        loaded = {each.partition(".")[0] for each in done.stderr.split()}
        assert (True, set()) == (
            "Usage" in done.stdout,
            loaded & {"sympy", "mpmath", "pint", "markdown_it", "weasyprint", "ziamath", "rules", "numpy"},
        )

    @pytest.mark.parametrize("name", sorted(TOLD_IN))
    def test_every_option_of_a_command_stands_in_its_page(self, name: str) -> None:
        command = main.get_command(click.Context(main), name)
        assert command is not None
        options = [word for each in command.params if isinstance(each, click.Option) for word in each.opts]
        told = TOLD_IN[name].read_text(encoding="utf-8")
        missing = [word for word in (f"explain {name}", *options) if not re.search(rf"(?<![\w-]){word}(?![\w-])", told)]
        assert [] == missing

    def test_every_command_has_a_page(self) -> None:
        assert sorted(TOLD_IN) == main.list_commands(click.Context(main))

    def test_every_key_of_a_course_file_stands_in_its_page(self) -> None:
        told = (SAMPLES / "course-files.md").read_text(encoding="utf-8")
        assert [] == [key for key in COURSE_KEYS if f"`{key}`" not in told]

    def test_the_limits_of_quantities_stand_in_the_page_of_problem_files(self) -> None:
        told = WORK.read_text(encoding="utf-8")
        rows = [
            f"| {kind} | {' | '.join(f'{each.number:f}{_unit(each, kind)}' for each in BOUNDS[kind])} |"
            for kind in BOUNDS
        ]
        assert [] == [row for row in rows if row not in told]

    def test_the_exit_codes_stand_in_the_page_of_problem_files(self) -> None:
        told = re.findall(r"^\| (\d+) \|", WORK.read_text(encoding="utf-8"), re.MULTILINE)
        assert [str(code) for code in (DONE, A_PERSON, AT_FAULT, NO_WAY, BROKEN, STOPPED)] == told
