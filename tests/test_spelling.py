"""Spelling, paper and g: what a class may choose besides its words."""

from __future__ import annotations

import ast
import re
from io import BytesIO
from pathlib import Path
from typing import Any

import pikepdf
import pytest
from imports import FILES
from test_conventions import data, page, worked, work

from explain import Fault
from explain.document.passage import Judged, JudgedLine, Paragraph, Prose, Text
from explain.document.spelling import AMERICAN, Spelling

SAMPLES = Path(__file__).parents[1] / "samples"
JUG, LEG = "jug-level", "leg-raise"
LIKE_BRITISH = re.compile(
    r"[a-z]*(?:[nt]tres?|centred|metres?|fibres?|olours?|avours?|bours?|haviour|elled|elling|bouring|gnised|hasised"
    r"|catalogues?|towards|judgement|licence|grey|anticlockwise)\b"
)
TYPED = {"kilometre", "decimetre", "metre", "metres", "centimetres", "millimetres"}  # words that people may write


def constants(source: str) -> list[str]:
    """The texts of a module that are no docstrings."""
    tree = ast.parse(source)
    doc = {
        id(node.body[0].value)
        for node in ast.walk(tree)
        if isinstance(node, ast.Module | ast.ClassDef | ast.FunctionDef)
        and node.body
        and isinstance(node.body[0], ast.Expr)
    }
    texts = [node for node in ast.walk(tree) if isinstance(node, ast.Constant) and isinstance(node.value, str)]
    return [node.value for node in texts if id(node) not in doc]


def test_every_word_of_ours_that_is_spelled_in_two_ways_is_known() -> None:
    found = {
        word
        for path in FILES.values()
        for text in constants(path.read_text("utf-8"))
        for word in LIKE_BRITISH.findall(text.casefold())
    }
    assert (True, set()) == ("centre" in found, found - AMERICAN.keys() - TYPED - {"spelling"})


def test_no_word_is_changed_twice() -> None:
    assert set() == set(AMERICAN) & set(AMERICAN.values()) - {"license"}


@pytest.mark.parametrize("name", [JUG, LEG, "rock-oblique"])
def test_an_american_page_has_no_british_word_and_the_same_lines(name: str) -> None:
    british, american = page(name), page(name, spelling="American")
    word = re.compile(rf"\b(?:{'|'.join(AMERICAN)})\b", re.IGNORECASE)
    assert (True, []) == (bool(word.search(british)), word.findall(american))
    assert "center of mass" in american
    assert british == british.replace("center", "centre")


LEVEL_WORDS = re.compile(r"\b(?:level|upright)\b", re.IGNORECASE)
HORIZONTAL_WORDS = re.compile(r"\b(?:horizontal|vertical)(?:ly)?\b", re.IGNORECASE)


@pytest.mark.parametrize("name", [LEG, "rock-oblique", "two-links"])
def test_a_class_says_horizontal_and_vertical_or_level_and_upright_and_nothing_else_changes(name: str) -> None:
    told = [
        {**data(name, level_words=words), "title": "-"} for words in ("horizontal and vertical", "level and upright")
    ]
    default, other = (work(problem) for problem in told)
    assert default.text() == work({**data(name), "title": "-"}).text()
    assert (True, []) == (bool(HORIZONTAL_WORDS.search(default.text())), LEVEL_WORDS.findall(default.text()))
    assert (True, []) == (bool(LEVEL_WORDS.search(other.text())), HORIZONTAL_WORDS.findall(other.text()))
    again = Spelling("British", (), "level and upright").passages(default.page.passages)
    assert again == other.page.passages


def test_an_article_goes_with_upright_and_names_keep_their_words() -> None:
    level = Spelling("American", ("horizontal bar",), "level and upright")
    said = "A vertical force, a horizontal one: horizontally, towards the centre of the horizontal bar."
    assert "An upright force, a level one: level, toward the center of the horizontal bar." == level.text(said)


def test_json_and_the_words_of_the_figure_are_spelled_alike() -> None:
    both = [{"spelling": spelling} for spelling in ("British", "American")]
    problem = SAMPLES / "34-over-the-gym-bench.toml"
    assert [True, False] == ["centre" in work(problem, course=each).json() for each in both]
    assert [True, False] == ["centre" in work(problem, course=each).figure() for each in both]


def test_names_titles_statements_and_typed_lines_stay_as_they_were_written() -> None:
    problem = data(JUG, spelling="American")
    problem["segment"][0]["name"] = "centre board"
    problem["statement"] = "The centre board is held level."
    said = work(problem).text(300)
    assert (True, True, True) == (
        "The centre board is held" in said,
        "weight of the centre board" in said,
        "center of mass of the centre board" in said,
    )
    typed = Judged("The centre", (JudgedLine(1, "d = centre", "x", "holds"),))
    spelled = Spelling("American", ()).passages((Prose("centre"), Paragraph((Text("Centre"),)), typed))
    assert (Prose("centre"), Paragraph((Text("Center"),))) == spelled[:2]
    assert Judged("The center", (JudgedLine(1, "d = centre", "x", "holds"),)) == spelled[2]


def test_a_report_in_json_is_spelled_as_the_class_spells() -> None:
    from explain.marking.report.files import json_lines

    walkthrough = worked(JUG, spelling="American")
    text = "F 4.0 = 29.43*33 + 15.696*7.5\n"
    told = json_lines(walkthrough, [walkthrough.mark(text)], "tutor", 3).decode()
    assert ("centre" in told, text.strip() in told) == (False, True)


@pytest.mark.parametrize(("paper", "size"), [("A4", (595, 842)), ("letter", (612, 792))])
def test_a_pdf_has_the_paper_of_the_class(paper: str, size: tuple[int, int]) -> None:
    # ISO 216: 210 x 297 mm; ANSI Y14.1: 8.5 x 11 in
    with pikepdf.open(BytesIO(worked(JUG, paper=paper).pdf())) as found:
        boxes = {tuple(round(float(each)) for each in sheet.mediabox[2:]) for sheet in found.pages}
    assert {size} == boxes


def test_g_at_the_top_goes_before_the_course_and_not_before_what_is_given_beside_it() -> None:
    def g_of(problem: dict[str, Any], **course: str) -> str:
        return str(work(problem, course=course or None).problem.course.g.number)

    assert "9.79" == g_of({**data(JUG), "g": "9.79 m/s^2"})
    assert "9.8" == g_of({**data(JUG), "g": "9.79 m/s^2"}, g="9.8 m/s^2")
    with pytest.raises(Fault, match="g here and in \\[course\\] too"):
        work({**data(JUG, g="9.8 m/s^2"), "g": "9.79 m/s^2"})


def test_g_of_a_problem_goes_before_that_of_its_book(tmp_path: Path) -> None:
    from explain import manual

    text = (Path(__file__).parent / "contract" / f"{JUG}.toml").read_text("utf-8")
    (tmp_path / "jug.toml").write_text('g = "10 m/s^2"\n' + text, "utf-8")
    (tmp_path / "course.toml").write_text('g = "9.8 m/s^2"\npaper = "letter"\nspelling = "American"\n', "utf-8")
    (tmp_path / "one.md").write_text('# One\n\n```problem file="jug.toml"\n```\n', "utf-8")
    (tmp_path / "book.toml").write_text('title = "B"\ncourse = "course.toml"\nchapters = ["one.md"]\n', "utf-8")
    manual(tmp_path / "book.toml", tmp_path / "book.md", cache=None)
    said = (tmp_path / "book.md").read_text("utf-8")
    assert (True, False, True) == ("30 " in said or "30.0" in said, "29.4" in said, "center of mass" in said)
    manual(tmp_path / "book.toml", tmp_path / "book.pdf", cache=None)
    with pikepdf.open(tmp_path / "book.pdf") as found:
        assert {(612, 792)} == {tuple(round(float(each)) for each in sheet.mediabox[2:]) for sheet in found.pages}
