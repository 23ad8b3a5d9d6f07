"""The book as PDF: one tagged document with contents, page numbers, links, bookmarks and running heads; no answer in
a student's.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache
from io import BytesIO
from pathlib import Path

import pikepdf
import pytest
from books import book, problem
from pdf_words import everything, words

from explain import Walkthrough, work
from explain.problem.reader import course_keys
from explain.manual.build import Order, build
from explain.manual.output import written
from explain.walkthrough.answer_sentences import pretty

SAMPLE = Path(__file__).parent.parent / "samples" / "book" / "book.toml"
GANGWAY, HAZELNUT, FLAG = (next(SAMPLE.parent.parent.glob(f"{start}-*.toml")) for start in ("12", "19", "10"))


@cache
def made(edition: str) -> bytes:
    order = Order(SAMPLE, "pdf", edition, jobs=1)
    return written(build(order).volume, order)


@cache
def opened(edition: str) -> pikepdf.Pdf:
    return pikepdf.open(BytesIO(made(edition)))


def elements(document: pikepdf.Pdf) -> Iterator[pikepdf.Object]:
    waiting = list(reversed(list(document.Root.StructTreeRoot.K)))
    while waiting:
        element = waiting.pop()
        yield element
        kids = element.get("/K", [])
        below = list(kids) if isinstance(kids, pikepdf.Array) else [kids]
        waiting.extend(kid for kid in reversed(below) if isinstance(kid, pikepdf.Dictionary) and "/S" in kid)


# --- the document


def test_the_document_is_tagged_and_says_that_it_is_pdf_ua() -> None:
    document = opened("instructor")
    with document.open_metadata() as metadata:
        assert ("1", "Levers of the Harbour", True) == (
            metadata["pdfuaid:part"],
            metadata["dc:title"],
            bool(document.Root.MarkInfo.Marked),
        )


def test_the_authors_are_named_and_no_date_is() -> None:
    info = opened("instructor").docinfo
    assert ("Ms Adebayo, Mr Tuilagi", []) == (str(info.Author), [key for key in info if "Date" in key])


def test_every_figure_and_formula_has_a_text_of_its_own() -> None:
    assert [] == [
        each.S
        for each in elements(opened("instructor"))
        if str(each.S) in ("/Figure", "/Formula") and not str(each.get("/Alt", "")).strip()
    ]


def test_every_walkthrough_has_its_figure() -> None:
    assert 15 == sum(str(each.S) == "/Figure" for each in elements(opened("instructor")))


def test_every_header_of_a_table_has_its_scope() -> None:
    assert set() == {str(each.A.Scope) for each in elements(opened("student")) if str(each.S) == "/TH"} - {
        "/Row",
        "/Column",
    }


def test_headings_do_not_skip_a_level() -> None:
    levels = [int(str(each.S)[2]) for each in elements(opened("instructor")) if re.fullmatch(r"/H\d", str(each.S))]
    assert [] == [pair for pair in zip(levels, levels[1:], strict=False) if pair[1] > pair[0] + 1]


def test_bookmarks_hold_chapters_and_problems() -> None:
    with opened("instructor").open_outline() as outline:
        found = {item.title: [child.title for child in item.children] for item in outline.root}
    assert [
        "Contents",
        "Conventions",
        "1 One hinge, one pull",
        "2 Pulls at an angle",
        "3 The question turned round",
        "Answers",
        "Index",
    ] == list(found)
    assert ["Problem 2.1 The coal scuttle", "Problem 2.2 The starter's flag"] == found["2 Pulls at an angle"][:2]


def destinations(document: pikepdf.Pdf) -> dict[str, pikepdf.Object]:
    names = list(document.Root.Names.Dests.Names)
    return {str(name): place for name, place in zip(names[::2], names[1::2], strict=True)}


def links(document: pikepdf.Pdf) -> Iterator[pikepdf.Object]:
    return (each for page in document.pages for each in page.get("/Annots", []) if each.Subtype == "/Link")


def test_every_link_leads_somewhere_and_is_told() -> None:
    document = opened("student")
    known = destinations(document)
    found = list(links(document))
    assert len(found) > 100
    assert [] == [
        str(each.Dest) for each in found if str(each.Dest) not in known or not str(each.get("/Contents", "")).strip()
    ]


def test_no_link_leads_out_of_the_book() -> None:
    assert [] == [each for each in links(opened("student")) if "/A" in each]


def test_the_page_numbers_of_the_contents_are_those_of_the_pages() -> None:
    document = opened("instructor")
    contents = re.sub(r"\s+", " ", words(document.pages[1]))
    numbers = {page.objgen: number for number, page in enumerate(document.pages, 1)}
    pages = {name: numbers[place[0].objgen] for name, place in destinations(document).items()}
    for label, said in (
        ("treacle-tin", "A tin of treacle"),
        ("stretcher", "Four carry Joss"),
        ("answers-of-the-book", "Answers"),
        ("index-of-the-book", "Index"),
    ):
        (number,) = re.findall(rf"{said}[ .]*?(\d+)", contents)
        assert pages[label] == int(number), label


def test_a_sheet_has_its_number_the_chapter_and_the_problem_in_its_running_head() -> None:
    document = opened("instructor")
    number = next(place for place, page in enumerate(document.pages) if "The coal scuttle" in words(page) and place > 2)
    text = re.sub(r"\s+", " ", words(document.pages[number + 1]))
    assert (True, True, True) == (
        "2 Pulls at an angle" in text,
        "Problem 2.1 The coal scuttle" in text,
        text.rstrip().endswith(str(number + 2)),
    )


def test_the_caution_stands_at_the_foot_of_every_sheet_but_the_cover_which_has_it_whole() -> None:
    pages = [re.sub(r"\s+", " ", words(page)) for page in opened("student").pages]
    assert [] == [
        place
        for place, text in enumerate(pages[1:], 2)
        if "not for treatment, training load, lifting or equipment decisions" not in text
    ]
    assert "local rules and licensed practice hold" in pages[0]


def test_running_heads_and_feet_are_no_part_of_the_text() -> None:
    """What stands on every sheet is an artifact: no element of the tree holds it."""
    document = opened("student")
    heads = [each for each in elements(document) if "teaching model: not for" in str(each.get("/Alt", ""))]
    assert [] == heads
    after_the_cover = [page.Contents.read_bytes().count(b"/Artifact") for page in list(document.pages)[1:]]
    assert after_the_cover != [] and min(after_the_cover) >= 1


# --- no answers for students


@cache
def worked(path: Path) -> Walkthrough:
    course = {
        key: value for key, value in course_keys(SAMPLE.parent.parent / "harbour-school.toml").items() if key != "axes"
    }
    return work(path, course=course)


def stands_in(answer: str, text: str) -> bool:
    return bool(re.search(rf"(?<![\d.]){re.escape(answer)}(?![\d.])", text))


@pytest.mark.parametrize("path", (GANGWAY, HAZELNUT, FLAG), ids=lambda path: path.stem)
def test_no_answer_can_be_read_in_the_student_edition(path: Path) -> None:
    text = everything(opened("student"))
    given = {"310 N"} if path is FLAG else set()  # a coincidence: what another problem gives
    assert (
        set()
        == {
            said
            for each in worked(path).answers.values()
            if each.value and stands_in(said := pretty(each).lstrip("−"), text)
        }
        - given
    )


@pytest.mark.parametrize("path", (GANGWAY, HAZELNUT, FLAG), ids=lambda path: path.stem)
def test_the_same_search_finds_all_that_was_asked_in_the_instructors(path: Path) -> None:
    text, found = everything(opened("instructor")), worked(path)
    assert [] == [
        name for name, _ in found.outcome.working.asked if not stands_in(pretty(found.answers[name]).lstrip("−"), text)
    ]


def test_the_student_edition_has_no_figure() -> None:
    assert 0 == sum(str(each.S) == "/Figure" for each in elements(opened("student")))


def test_a_hostile_title_is_text(tmp_path: Path) -> None:
    text = problem(1).replace("Jug 1", "<script>alert(1)</script> </title>")
    path = book(tmp_path, [text], more='subtitle = "<img src=x>"')
    order = Order(path, "pdf", "student", jobs=1)
    assert b"%PDF" == written(build(order).volume, order)[:4]
