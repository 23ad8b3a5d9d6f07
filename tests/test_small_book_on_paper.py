"""A book of a few sheets laid out at once, and in pieces and joined: one and the same to whoever reads it, opens its
outline or follows its links. pikepdf reads both.
"""

from __future__ import annotations

import re
from dataclasses import replace
from functools import cache
from io import BytesIO

import pikepdf
from formulas import DIVIDED, one
from pdf_words import words
from test_books_and_boards_whole import VOLUME
from test_manual_joined import destinations, links, outline, owners, tags

from explain.document.passage import Bullets, Maths, Paragraph, Space, Text
from explain.document.volume import Part
from explain.write.pdf.book import pdf_of_pieces, pdf_volume
from explain.write.pdf.page_numbers import page_numbers
from explain.write.pdf.pieces import Laid, pieces
from explain.write.pdf.set_piece import set_piece

SECOND = Part(
    "problem",
    "problem-1-2",
    2,
    "1.2",
    "Rock",
    (Paragraph((Maths(one(DIVIDED)), Text(" x"))), Bullets(((Text("a"),),)), Space("Yours", 60)),
)
BOOK = replace(VOLUME, parts=(*VOLUME.parts[:4], SECOND, *VOLUME.parts[5:]))


@cache
def laid() -> tuple[Laid, ...]:
    return tuple(map(set_piece, pieces(BOOK, 1)))


@cache
def both() -> tuple[pikepdf.Pdf, pikepdf.Pdf]:
    joined = pdf_of_pieces(BOOK, lambda found: laid(), most=1)
    return pikepdf.open(BytesIO(pdf_volume(BOOK))), pikepdf.open(BytesIO(joined))


def test_the_joined_book_is_the_whole_one() -> None:
    whole, joined = both()
    assert (destinations(whole), outline(whole), links(whole)) == (destinations(joined), outline(joined), links(joined))
    assert (tags(whole), owners(whole)) == (tags(joined), owners(joined))
    assert [sorted(words(page).split()) for page in whole.pages] == [
        sorted(words(page).split()) for page in joined.pages
    ]
    assert dict(whole.docinfo) == dict(joined.docinfo) and joined.check_pdf_syntax() == []


def test_the_outline_and_the_places_of_the_book_are_as_its_parts() -> None:
    """A title page with the contents behind it, then a sheet for each part that begins one, and the index."""
    _, joined = both()
    told = outline(joined)
    assert isinstance(told, list)
    titles = [(title, [below[0] for below in inner]) for title, _, _, _, inner in told]
    assert [
        ("Contents", []),
        ("How it is written", []),
        ("1 Level arms", ["Problem 1.1 Jug & palm", "Problem 1.2 Rock"]),
        ("Answers", ["1.1 Jug"]),
        ("Index", []),
    ] == titles
    names = destinations(joined)
    assert {"conventions", "chapter-1", "problem-1-1", "problem-1-2", "answers", "index-of-the-book"} <= set(names)
    pages = {name: place[0] for name, place in names.items() if isinstance(place, tuple)}
    assert sorted(pages.values()) == [
        pages[each]
        for each in (
            "conventions",
            "chapter-1",
            "problem-1-1",
            "problem-1-2",
            "answers",
            "answer-1-1",
            "index-of-the-book",
        )
    ]


def test_the_contents_name_the_page_of_each_part() -> None:
    _, joined = both()
    pages = {name: place[0] + 1 for name, place in destinations(joined).items() if isinstance(place, tuple)}
    contents = re.sub(r"[ .]+", " ", " ".join(words(page) for page in joined.pages[: pages["conventions"] - 1]))
    for title, name in (("1.2 Rock", "problem-1-2"), ("Index", "index-of-the-book"), ("Answers", "answers")):
        title = title.replace(".", " ")
        assert re.search(rf"{title} {pages[name]}\b", contents), (title, contents)


def test_marks_of_a_piece_count_from_its_first_page_in_points() -> None:
    whole = [(mark.name, mark.level) for piece in laid() for mark in piece.marks]
    assert {"problem-1-2", "answers"} <= {name for name, level in whole if not level}
    assert {("Problem 1.2 Rock", 2), ("Answers", 1)} <= set(whole)
    for piece in laid():
        with pikepdf.open(BytesIO(piece.data)) as document:
            assert len(document.pages) == piece.pages
            assert all(0 <= mark.page < piece.pages and 0 <= mark.x < 595 and 0 < mark.y < 842 for mark in piece.marks)


def test_a_page_number_is_drawn_from_the_right_in_the_type_of_the_foot() -> None:
    numbers = page_numbers("A4")
    assert (842, 10, 10) == (round(numbers.height), len(numbers.codes), len(numbers.widths))
    assert len(set(numbers.codes)) == 10 and all(0.3 < each / numbers.size < 0.7 for each in numbers.widths)
    drawn = numbers.drawn(107).decode()
    found = re.fullmatch(
        r"q 0\.75 0 0 -0\.75 0 ([\d.]+) cm /Artifact BMC ([\d.]+ [\d.]+ [\d.]+ rg) BT 1 0 0 -1 ([\d.]+) ([\d.]+) Tm "
        r"/PageNumber ([\d.]+) Tf <([0-9a-f]+)> Tj ET EMC Q",
        drawn,
    )
    assert found
    left = numbers.right - numbers.widths[1] - numbers.widths[0] - numbers.widths[7]
    assert abs(float(found[3]) - left) < 1e-3 and abs(float(found[4]) - numbers.base) < 1e-3
    assert (numbers.codes[1] + numbers.codes[0] + numbers.codes[7]).decode() == found[6]
    assert round(page_numbers("letter").height) == 792
