"""The library: a problem from a path, a text or a mapping; its moves and answers; pages in every format, alike in
every run.
"""

from __future__ import annotations

import errno
import importlib
import inspect
import json
import os
import re
import subprocess
import sys
import tomllib
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from functools import cache
from html.parser import HTMLParser
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner

import explain
from explain import Answer, Fault, NoWay, Problem, Walkthrough, read, work
from explain.cli.main import main
from explain.formula.plain import plain

TESTS = Path(__file__).parent
CONTRACT = TESTS / "contract"
SAMPLES = TESTS.parent / "samples"
TIN = SAMPLES / "02-treacle-tin-again.toml"
FILES = sorted(CONTRACT.glob("*.toml"))
ROCK = CONTRACT / "rock-oblique.toml"
FORMS = ("markdown", "html", "text", "json", "pdf")
SOURCES: dict[str, Callable[[Path], Any]] = {
    "a path": lambda path: path,
    "a path as text": str,
    "a text": lambda path: path.read_text(encoding="utf-8"),
    "a mapping": lambda path: tomllib.loads(path.read_text(encoding="utf-8")),
    "a problem": read,
}
BEFORE = b"what was here before"


@cache
def rock() -> Walkthrough:
    return work(ROCK)


@cache
def rock_read_back() -> dict[str, Any]:
    read_back: dict[str, Any] = json.loads(rock().json())
    return read_back


@pytest.mark.parametrize("source", SOURCES.values(), ids=SOURCES)
@pytest.mark.parametrize("path", [ROCK, CONTRACT / "two-links.toml"], ids=lambda path: path.stem)
def test_every_source_gives_the_same_page(source: Callable[[Path], Any], path: Path) -> None:
    assert work(path).markdown() == work(source(path)).markdown()


@pytest.mark.parametrize("source", SOURCES.values(), ids=SOURCES)
def test_every_source_is_read_as_a_problem(source: Callable[[Path], Any]) -> None:
    found = read(source(ROCK))
    assert (Problem, "A rock on the palm: the tendon leans back", "elbow") == (
        type(found),
        found.title,
        found.pivot.name,
    )


@pytest.mark.parametrize("source", SOURCES.values(), ids=SOURCES)
def test_keys_of_a_course_go_before_those_of_the_problem(source: Callable[[Path], Any]) -> None:
    found = read(source(ROCK), course={"word": "moment", "figures": 4}).course
    assert ("moment", "M", 4, "m") == (found.word, found.letter, found.figures, found.lengths)


class TestFaults:
    @pytest.mark.parametrize(
        "source", ["", "no-such-file.toml", Path("no-such-file.toml"), "title =\n", {}, {"title": "x"}, {1: 2}]
    )
    def test_what_is_no_problem_is_a_fault(self, source: Any) -> None:
        fault = pytest.raises(Fault, work, source).value
        assert (2, True, True, True) == (fault.exit_code, bool(fault.found), bool(fault.expected), bool(fault.example))

    def test_a_fault_is_data_first(self) -> None:
        text = ROCK.read_text(encoding="utf-8").replace('"35 cm"', '"35 parsec"')
        fault = pytest.raises(Fault, work, text).value
        assert (21, "load[1].at", True) == (fault.line, fault.key, "parsec" in fault.found)

    def test_no_way_has_the_last_certified_line(self, monkeypatch: pytest.MonkeyPatch) -> None:
        import rules

        without = {
            order: tuple(each for each in moves if each is not rules.divide) for order, moves in rules.MOVES.items()
        }
        monkeypatch.setattr(rules, "MOVES", without)
        found = pytest.raises(NoWay, work, ROCK).value
        assert (3, "F_B (0.042286 m) = 23.269 N·m") == (found.exit_code, found.last)

    def test_a_faulty_course_is_a_fault(self) -> None:
        assert "word" == pytest.raises(Fault, work, ROCK, course={"word": "twist"}).value.key


class TestWalking:
    def test_answers_are_found_by_name(self) -> None:
        found = rock().answers["biceps"]
        assert (Answer, "biceps", "N", "550 N") == (type(found), found.name, found.unit, found.shown)
        assert (pytest.approx(550.282, rel=1e-6), pytest.approx(110.0)) == (found.value, found.direction)

    def test_answers_stand_in_the_order_asked_for(self) -> None:
        assert ("biceps", "reaction.right", "reaction.up", "reaction") == tuple(rock().answers)

    def test_moves_are_walked_with_their_lines_and_reasons(self) -> None:
        told = [(move.rule.__name__, plain(move.line.equation), move.rule.say.what) for move in rock().moves]
        assert ("rules.setup.moments", "F_B d_B⊥ − W_F d_F − W_R d_R = 0") in [each[:2] for each in told]
        assert [] == [each for each in told if not all(each)]

    def test_every_move_that_goes_on_starts_from_the_line_before_it(self) -> None:
        moves = rock().moves
        assert [move.before for move in moves if move.before] == [
            before.line for before, move in zip(moves, moves[1:], strict=False) if move.before
        ]

    def test_checks_have_a_name_and_a_finding(self) -> None:
        assert ("pulls", "holds") in [(name, finding.result) for name, finding in rock().checks]
        assert {"holds", "warns", "fails", "does not apply"} >= {finding.result for _, finding in rock().checks}

    def test_a_walkthrough_cannot_be_changed(self) -> None:
        with pytest.raises(AttributeError):
            rock().problem = read(FILES[0])  # type: ignore[misc]

    def test_the_names_of_the_library_are_all_there(self) -> None:
        results = {
            "Answer",
            "Built",
            "ClassReport",
            "Finding",
            "Handed",
            "Marking",
            "Problem",
            "Walkthrough",
            "WorkedSeries",
        }
        functions = {"accept", "draw", "manual", "mark", "read", "series", "tally", "vary", "work", "work_series"}
        assert results | functions | {"Fault", "NoWay"} == set(explain.__all__)
        assert [] == [name for name in explain.__all__ if not callable(getattr(explain, name))]

    def test_a_name_it_does_not_have_is_no_attribute(self) -> None:
        assert not hasattr(explain, "wrok")


class TestJson:
    def test_the_keys_are_those_of_the_contract(self) -> None:
        assert ["title", "answers", "lines", "checks"] == list(rock_read_back())

    def test_an_answer_has_value_unit_shown_direction_and_words(self) -> None:
        answers = rock_read_back()["answers"]
        assert {"value", "unit", "shown", "direction", "words"} == set(answers["biceps"]) == set(answers["reaction"])
        assert {"value", "unit", "shown"} == set(answers["reaction.up"])

    def test_every_line_has_what_the_contract_asks_for_and_is_certified(self) -> None:
        wanted = {"move": str, "equation": str, "latex": str, "what": str, "why": str, "certified": bool}
        assert [] == [
            line
            for line in rock_read_back()["lines"]
            if any(type(line[key]) is not kind for key, kind in wanted.items())
        ]
        assert [] == [line for line in rock_read_back()["lines"] if line["certified"] is not True or not line["what"]]

    def test_every_check_has_a_name_a_result_and_words(self) -> None:
        assert [] == [each for each in rock_read_back()["checks"] if not {"name", "result", "says"} <= set(each)]
        assert [] == [
            each for each in rock_read_back()["checks"] if (each["result"] == "does not apply") == bool(each["says"])
        ]

    def test_the_other_roots_of_an_angle_stand_beside_it(self) -> None:
        found = json.loads(work(CONTRACT / "how-steep.toml").json())["answers"]["shank.direction"]
        assert (pytest.approx([180 - found["value"]]), 1) == (found["others"], len(found["set_aside"]))

    def test_a_joint_force_of_nothing_has_no_direction(self) -> None:
        nothing = {
            "title": "Nothing at the joint",
            "pivot": {"name": "elbow"},
            "segment": [{"name": "forearm"}],
            "ask": ["biceps", "reaction"],
            "load": [{"name": "jug", "weight": "40 N", "at": "10 cm"}],
            "muscle": [{"name": "biceps", "at": "10 cm", "direction": "up"}],
        }
        found = json.loads(work(nothing).json())["answers"]["reaction"]
        assert (0.0, None) == (found["value"], found["direction"])


class TestSaving:
    @pytest.mark.parametrize("suffix", [".md", ".html", ".pdf", ".txt", ".json"])
    def test_the_suffix_says_the_format(self, suffix: str, tmp_path: Path) -> None:
        saved = rock().save(tmp_path / f"rock{suffix}")
        form = {".md": "markdown", ".html": "html", ".pdf": "pdf", ".txt": "text", ".json": "json"}[suffix]
        assert (tmp_path / f"rock{suffix}", rock().written(form)) == (saved, saved.read_bytes())

    def test_the_format_can_be_said(self, tmp_path: Path) -> None:
        assert rock().written("html") == rock().save(str(tmp_path / "rock.page"), "html").read_bytes()

    @pytest.mark.parametrize(("name", "form"), [("rock.docx", ""), ("rock", ""), ("rock.md", "word")])
    def test_a_format_that_is_not_known_is_a_fault(self, name: str, form: str, tmp_path: Path) -> None:
        fault = pytest.raises(Fault, rock().save, tmp_path / name, form).value
        assert ([], True) == (os.listdir(tmp_path), "md" in fault.expected or "markdown" in fault.expected)

    def test_a_disk_without_room_leaves_the_old_page_and_no_rest(
        self, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
    ) -> None:
        def full(*_: object) -> None:
            raise OSError(errno.ENOSPC, "No space left on device")

        (tmp_path / "rock.html").write_bytes(BEFORE)
        monkeypatch.setattr(os, "replace", full)
        fault = pytest.raises(Fault, rock().save, tmp_path / "rock.html").value
        assert (BEFORE, ["rock.html"], True) == (
            (tmp_path / "rock.html").read_bytes(),
            os.listdir(tmp_path),
            "No space left" in fault.found,
        )

    def test_a_page_that_is_replaced_keeps_who_may_read_it(self, tmp_path: Path) -> None:
        (tmp_path / "rock.html").write_bytes(BEFORE)
        (tmp_path / "rock.html").chmod(0o640)
        assert 0o640 == rock().save(tmp_path / "rock.html").stat().st_mode & 0o777


class TestNotebooks:
    def test_markdown_is_the_markdown_page(self) -> None:
        assert rock().markdown() == rock()._repr_markdown_()

    def test_html_is_one_frame_that_holds_the_page(self) -> None:
        frames: list[tuple[str, dict[str, str | None]]] = []

        class Frames(HTMLParser):
            def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
                frames.append((tag, dict(attrs)))

        Frames().feed(rock()._repr_html_())
        assert [("iframe", rock().html(), rock().title)] == [
            (tag, each["srcdoc"], each["title"]) for tag, each in frames
        ]


class TestTheSameEveryTime:
    @staticmethod
    def pages(path: Path) -> list[bytes]:
        walkthrough = work(path)
        return [walkthrough.written(form) for form in FORMS]

    def test_threads_and_runs_make_the_same_pages(self) -> None:
        alone = [self.pages(path) for path in FILES[::3]]
        with ThreadPoolExecutor(4) as threads:
            assert [*alone, *alone] == list(threads.map(self.pages, [*FILES[::3], *FILES[::3]]))

    def test_other_processes_make_the_same_pages_although_their_primes_differ(self) -> None:
        code = (
            "import sys, hashlib, explain; w = explain.work(sys.argv[1]);"
            f"print(*(hashlib.sha256(w.written(form)).hexdigest() for form in {FORMS}), "
            "w.outcome.working.checker.field.p)"
        )
        runs = [
            subprocess.run(
                [sys.executable, "-c", code, ROCK],
                check=True,
                capture_output=True,
                text=True,
                timeout=60,
                env={**os.environ, "PYTHONHASHSEED": seed},
            ).stdout.rsplit(maxsplit=1)
            for seed in ("1", "2")
        ]
        assert (1, 2) == (len({pages for pages, _ in runs}), len({prime for _, prime in runs}))


class TestTheFace:
    """What `from explain import ...` gives, and how it prints itself."""

    def test_every_name_is_what_its_home_defines(self) -> None:
        wrong = [name for name in explain.__all__ if getattr(explain, name).__name__ not in (name, "series")]
        assert (21, []) == (len(explain.__all__), wrong)

    @pytest.mark.parametrize("name", ["series", "tally", "vary", "manual"])
    def test_a_function_keeps_its_name_when_its_folder_has_been_imported(self, name: str) -> None:
        importlib.import_module(f"explain.{name}")
        assert (True, name) == (callable(found := getattr(explain, name)), found.__name__)

    @pytest.mark.parametrize("name", [each for each in explain.__all__ if each[0].islower()])
    def test_a_function_says_what_it_raises(self, name: str) -> None:
        said = inspect.getdoc(getattr(explain, name)) or ""
        assert re.search(r"Raises Fault|errors are\s+those of|errors are those of", said)

    def test_a_result_prints_itself_on_a_short_line(self, tmp_path: Path) -> None:
        worked = explain.series(SAMPLES / "series" / "treacle-tin.toml")
        steps = worked.steps
        results = [
            *(worked, *steps, *steps[-1].points[:1], steps[0].outcome, steps[0].outcome.working),
            *(rock(), rock().problem, rock().outcome, *rock().moves, *(move.line for move in rock().moves)),
            explain.mark(rock(), "F = 1 N"),
            explain.tally(TIN, SAMPLES / "class" / "answers.csv"),
            explain.vary(SAMPLES / "class-variants" / "bucket-of-mussels.toml", tmp_path, count=1),
        ]
        assert [] == [said for said in map(repr, results) if len(said) > 200 or "\n" in said or " at 0x" in said]

    def test_a_line_prints_itself_in_plain_text(self) -> None:
        moves = rock().moves
        assert [f"<Certified {plain(move.line.equation)}>" for move in moves] == [repr(move.line) for move in moves]

    def test_a_drawing_is_the_figure_of_the_walkthrough(self) -> None:
        assert rock().figure() == explain.draw(ROCK)

    def test_marking_a_path_and_a_walkthrough_give_the_same(self) -> None:
        text = (SAMPLES / "workings" / "saoirse-02.txt").read_text(encoding="utf-8")
        marking = explain.mark(TIN, text)
        assert (marking, True) == (explain.mark(work(TIN), text), marking.first_wrong is not None)

    @pytest.mark.parametrize("given", ["answers.csv", "workings"])
    def test_a_tally_is_that_of_the_command_line(self, given: str, tmp_path: Path) -> None:
        source, out = SAMPLES / "class" / given, tmp_path / "report.json"
        CliRunner().invoke(main, ["tally", str(TIN), str(source), "-o", str(out)])
        assert out.read_bytes() == explain.tally(TIN, source).written("json")

    def test_variants_are_those_of_the_command_line(self, tmp_path: Path) -> None:
        problem, roll = SAMPLES / "class-variants" / "bucket-of-mussels.toml", tmp_path / "class.csv"
        roll.write_text("name\nAda Quill\nBirk Tallow\n", encoding="utf-8")
        CliRunner().invoke(main, ["vary", str(problem), "--names", str(roll), "-o", str(tmp_path / "one")])
        made = explain.vary(problem, tmp_path / "two", names=["Ada Quill", "Birk Tallow"])
        keys = [(tmp_path / name / "key.csv").read_bytes() for name in ("one", "two")]
        assert (keys[0], 2) == (keys[1], made.fresh)

    def test_variants_without_names_or_a_count_are_refused(self, tmp_path: Path) -> None:
        with pytest.raises(Fault, match="neither names nor a count"):
            explain.vary(TIN, tmp_path)

    def test_a_manual_is_that_of_the_command_line(self, tmp_path: Path) -> None:
        book = small_book(tmp_path)
        words = ["manual", str(book), "--edition", "student", "--no-cache", "-o", str(tmp_path / "one.html")]
        CliRunner().invoke(main, words)
        built = explain.manual(book, tmp_path / "two.html", edition="student")
        pages = [(tmp_path / name).read_bytes() for name in ("one.html", "two.html")]
        assert (pages[0], "<Built 'Small': 1 problems, 0 in trouble>") == (pages[1], repr(built))

    def test_an_edition_that_is_not_known_is_refused(self, tmp_path: Path) -> None:
        with pytest.raises(Fault, match='the edition "teacher"'):
            explain.manual(small_book(tmp_path), tmp_path / "book.html", edition="teacher")


def small_book(folder: Path) -> Path:
    (folder / "book.toml").write_text('title = "Small"\nchapters = ["one.md"]\n', encoding="utf-8")
    fence = f'```problem file="{TIN.name}" label=tin\n```\n'
    (folder / "one.md").write_text(f"# One\n\n{fence}", encoding="utf-8")
    for each in (TIN, SAMPLES / "harbour-school.toml"):
        (folder / each.name).write_bytes(each.read_bytes())
    return folder / "book.toml"
