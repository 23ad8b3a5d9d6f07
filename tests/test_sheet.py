"""Sheets: no answer on them, lines that fade with their reasons, and slips that can be found where they are."""

from __future__ import annotations

import re
from functools import cache
from io import BytesIO
from pathlib import Path

import pikepdf
import pytest
from click.testing import CliRunner, Result

from pdf_words import everything

from explain import Fault, Walkthrough, work
from explain.api import slips
from explain.cli.main import main
from explain.document.passage import Answer, Blanks, Derivation, Page, Picture
from explain.sheet.faded import Fading, faded, fading
from explain.sheet.problem_alone import problem_alone
from explain.sheet.slip_to_find import hide, pages, typed
from explain.write.formats import written
from sheets import KEPT, SHEETS

SAMPLES = Path(__file__).parents[1] / "samples"
PROBLEMS = sorted(SAMPLES.glob("[0-4]*.toml"))
FORMS = ("markdown", "html", "pdf", "latex", "text")


@cache
def sample(number: int) -> Walkthrough:
    return work(PROBLEMS[number - 1])


def run(*arguments: object) -> Result:
    return CliRunner().invoke(main, [str(each) for each in arguments])


def text(page: Page) -> str:
    return written((page,), "text").decode()


def rows(page: Page) -> int:
    return sum(len(each.rows) for each in page.passages if isinstance(each, Derivation))


def blanks(page: Page) -> int:
    return sum(len(each.reasons) for each in page.passages if isinstance(each, Blanks))


def answers(of: Walkthrough) -> set[str]:
    """Every asked number as it is shown, without those that are given as well."""
    found = {each.shown.split()[0] for each in of.answers.values()}
    return {each for each in found if each not in text(problem_alone(of.outcome)).split() and len(each) > 2}


@pytest.mark.parametrize("name", SHEETS)
def test_a_sheet_is_the_one_that_was_read(name: str) -> None:
    assert SHEETS[name]().splitlines() == (KEPT / name).read_text("utf-8").splitlines()


class TestTheProblemAlone:
    @pytest.mark.parametrize("form", FORMS)
    def test_it_has_room_and_no_answer(self, form: str) -> None:
        of = sample(2)
        told = written((problem_alone(of.outcome),), form)
        read = everything(pikepdf.open(BytesIO(told))) if form == "pdf" else told.decode()
        assert not [each for each in answers(of) if each in read]
        assert "Your working" in " ".join(read.split())

    def test_it_is_told_with_a_caution(self) -> None:
        assert "Not for treatment, training load" in " ".join(text(problem_alone(sample(2).outcome)).split())


class TestFading:
    @pytest.mark.parametrize("number", range(1, len(PROBLEMS) + 1))
    @pytest.mark.parametrize("which", ["last:2", "all-but:3"])
    def test_so_many_lines_are_empty_and_no_answer_of_theirs_is_told(self, number: int, which: str) -> None:
        of = sample(number)
        page = faded(of.outcome, fading(which))
        whole = rows(faded(of.outcome, Fading("last", 1))) + 1
        assert (
            (2, whole - 2) == (blanks(page), rows(page))
            if which == "last:2"
            else (whole - 3, 3)
            == (
                blanks(page),
                rows(page),
            )
        )
        assert [] == [each for each in page.passages if isinstance(each, Answer)] if which == "all-but:3" else True

    @pytest.mark.parametrize("number", range(1, len(PROBLEMS) + 1))
    def test_with_all_but_the_first_line_empty_no_answer_stands_anywhere(self, number: int) -> None:
        of = sample(number)
        said = text(faded(of.outcome, fading("all-but:1")))
        assert [] == [each for each in answers(of) if re.search(rf"(?<![\d.]){re.escape(each)}(?![\d.])", said)]

    def test_the_reasons_are_kept(self) -> None:
        said = " ".join(text(faded(sample(2).outcome, fading("all-but:2"))).split())
        assert all(each in said for each in ("multiply out; each sign stays with its term", "add like terms"))
        assert "1051.6" not in said and "…" in said  # what was worked out is not told

    def test_a_figure_that_would_tell_a_sought_angle_or_place_is_left_to_the_reader(self) -> None:
        drawn = {number: faded(sample(number).outcome, Fading("last", 2)).passages for number in (2, 14, 19)}
        assert [True, False, False] == [any(isinstance(each, Picture) for each in page) for page in drawn.values()]

    @pytest.mark.parametrize("said", ["last", "last:0", "last:x", "first:2", "last:-1", "last:1000000", ""])
    def test_what_cannot_be_read_is_answered(self, said: str) -> None:
        with pytest.raises(Fault, match="last: or all-but:"):
            fading(said)

    @pytest.mark.parametrize("said", ["last:99", "all-but:99"])
    def test_more_lines_than_there_are_is_answered(self, said: str) -> None:
        with pytest.raises(Fault, match="a number from"):
            faded(sample(1).outcome, fading(said))


FOUND = {
    1: ("mass-for-weight", "sum-instead-of-product", "arms-swapped", "divide-wrong-way"),
    2: ("segment-left-out", "sign-of-a-term", "g-twice", "reaction-omits-muscle", "term-moved-sign-kept"),
    4: ("load-left-out", "divide-one-term", "arms-swapped"),
    5: ("pound-as-mass", "inch-foot-mix"),
    10: ("sine-cosine-swap-muscle", "pythagoras-broken"),
    12: ("divide-by-trig",),
    25: ("angle-ignored-load", "sine-cosine-swap-load"),
}


class TestASlipToFind:
    @pytest.mark.parametrize(("number", "slip"), [(n, each) for n, many in FOUND.items() for each in many])
    def test_the_judge_finds_it_in_its_line_and_what_follows_is_carried(self, number: int, slip: str) -> None:
        of = sample(number)
        hidden = hide(of, slips(), slip)
        marking = of.mark(hidden.text)
        line = next(each for each in marking.lines if each.number == hidden.line)
        assert (slip, hidden.line, True) == (
            hidden.slip.slip,
            marking.first_wrong,
            slip in {each.slip for each in line.slips},
        )
        assert {"holds"} >= {each.verdict for each in marking.lines if each.number < hidden.line}

    @pytest.mark.parametrize("number", [1, 2, 4, 5, 6, 10, 12, 20])
    def test_any_slip_can_be_asked_for(self, number: int) -> None:
        assert hide(sample(number), slips()).line >= 1

    def test_another_seed_puts_it_elsewhere(self) -> None:
        assert len({hide(sample(2), slips(), "any", seed).text for seed in (0, 7, 30)}) > 1

    def test_the_key_is_on_a_page_of_its_own_and_the_sheet_does_not_tell(self) -> None:
        of = sample(2)
        hidden = hide(of, slips(), "segment-left-out")
        sheet, key = map(text, pages(of, hidden))
        assert (False, True, True) == (
            "left out" in sheet,
            f"Line {hidden.line}: Weight of a segment left out" in key,
            "239 N" in key,
        )
        assert "239 N" not in sheet
        lines = [" ".join(each.split()[1:]) for each in sheet.splitlines() if re.match(r"    \d  ", each)]
        assert len(hidden.rows) == len(lines)

    def test_a_slip_that_nobody_knows_is_answered(self) -> None:
        with pytest.raises(Fault, match="not in the catalogue") as caught:
            hide(sample(2), slips(), "segment-left-uot")
        assert "segment-left-out" in caught.value.example

    @pytest.mark.parametrize(("number", "slip"), [(3, "any"), (14, "any"), (1, "pythagoras-broken")])
    def test_a_problem_that_has_no_such_page_is_answered(self, number: int, slip: str) -> None:
        with pytest.raises(Fault, match="be found in it"):
            hide(sample(number), slips(), slip)

    def test_lines_are_typed_with_a_sign_for_every_product(self) -> None:
        said = typed(hide(sample(2), slips(), "sign-of-a-term").rows)
        assert "F_E × (4.4 cm)" in said and ")(" not in said


class TestTheCommand:
    @pytest.mark.parametrize("how", [(), ("--blank", "last:2"), ("--find-the-slip", "sign-of-a-term")])
    @pytest.mark.parametrize("form", ["md", "html", "pdf", "tex", "txt"])
    def test_every_sheet_in_every_format(self, how: tuple[str, ...], form: str, tmp_path: Path) -> None:
        done = run("sheet", PROBLEMS[1], *how, "-o", tmp_path / f"sheet.{form}")
        assert (0, "", True) == (done.exit_code, done.stdout, (tmp_path / f"sheet.{form}").stat().st_size > 500)

    def test_the_key_begins_a_sheet_of_paper(self, tmp_path: Path) -> None:
        run("sheet", PROBLEMS[1], "--find-the-slip", "any", "-o", tmp_path / "slip.pdf")
        with pikepdf.open(BytesIO((tmp_path / "slip.pdf").read_bytes())) as found:
            assert len(found.pages) >= 2

    def test_a_folder_gets_a_file_for_each(self, tmp_path: Path) -> None:
        assert 0 == run("sheet", *PROBLEMS[:2], "-o", tmp_path / "week", "--as", "html").exit_code
        assert {"01-treacle-tin.html", "02-treacle-tin-again.html"} == {
            each.name for each in (tmp_path / "week").iterdir()
        }

    def test_a_problem_without_such_a_page_does_not_stop_the_others(self, tmp_path: Path) -> None:
        done = run("sheet", PROBLEMS[2], PROBLEMS[1], "--find-the-slip", "any", "-o", tmp_path / "week")
        assert (2, ["02-treacle-tin-again.md"]) == (done.exit_code, [e.name for e in (tmp_path / "week").iterdir()])
        assert "03-tiller" in done.stderr

    @pytest.mark.parametrize(
        "how",
        [("--blank", "last:2", "--find-the-slip", "any"), ("--blank", "half"), ("-o", "x.json"), ("--as", "json")],
    )
    def test_what_cannot_be_is_2(self, how: tuple[str, ...]) -> None:
        assert (2, "") == ((done := run("sheet", PROBLEMS[1], *how)).exit_code, done.stdout)
