"""What is asked of paper before anything is laid out: markup and stylesheets, where columns stand, how formulas and
figures are drawn, how a book is cut, and what room is left for a figure.
"""

from __future__ import annotations

import re
import zlib
from collections.abc import Sequence
from dataclasses import replace
from typing import Any
from xml.etree import ElementTree

import pydyf
import pytest
from formulas import DIVIDED, PULL, a, one, q
from test_books_and_boards_whole import LESSON, VOLUME
from test_pages_by_every_writer import JUDGED, NOTED, PAGE
from ziamath.drawable import HLine, VLine

from explain.document.board import Board, Lesson
from explain.document.passage import (
    Answer,
    Axis,
    Blanks,
    Bullets,
    Curve,
    Derivation,
    Drawing,
    Heading,
    Line,
    Maths,
    Page,
    Paragraph,
    Passage,
    Picture,
    Plot,
    Prose,
    Row,
    Space,
    Table,
    Text,
)
from explain.document.volume import Part, Volume
from explain.equation.terms import Terms, term
from explain.formula.mathml import mathml
from explain.write.figure.free_body import Layout
from explain.write.figure.labels import Label
from explain.write.figure.shapes import Arc, Box, Disc, Patch, Pen
from explain.write.figure.shapes import Line as Stroke_
from explain.write.pdf import weasy
from explain.write.pdf.board import pdf_boards
from explain.write.pdf.book import pdf_of_pieces, pdf_volume
from explain.write.pdf.book_markup import bodies, head
from explain.write.pdf.derivation_columns import MEASURE, Set, columns
from explain.write.pdf.equation_image import EquationImage, TypeCase
from explain.write.pdf.figure_image import FigureImage
from explain.write.pdf.figure_room import figure_on_first_sheet, left, room
from explain.write.pdf.formula_breaks import Formula, fitted, set_row
from explain.write.pdf.formula_layout import ink, summands
from explain.write.pdf.glyph_outlines import EM, NOTHING, Ink, Stroke, beside, laid, moved, number, strokes
from explain.write.pdf.pages import kept_inks, pdf, pdf_pages
from explain.write.pdf.paper_markup import Paper
from explain.write.pdf.pieces import pieces
from explain.write.pdf.set_piece import carried


def says(words: str) -> Line:
    return (Text(words),)


class Press:
    """Takes what would be printed."""

    markup: str
    styles: tuple[str, ...]
    tighter: Sequence[str]

    def __call__(self, markup: str, hand: Paper, *styles: str, tighter: Sequence[str] = ()) -> bytes:
        self.markup, self.styles, self.tighter = markup, styles, tighter
        return b"printed"

    @property
    def shown(self) -> str:
        return re.sub(r"mem:[0-9a-f]{20}", "mem:*", self.markup).replace("><", ">\n<")


@pytest.fixture
def press(monkeypatch: pytest.MonkeyPatch) -> Press:
    found = Press()
    monkeypatch.setattr(weasy, "printed", found)
    return found


# ---------------------------------------------------------------------- pages
DERIVATIONS = """\
<ol class="derivation whole">
<li class="joined">
<span class="label w10">about E</span>
<img src="mem:*" alt="F sub B times 0.042 metres minus W sub R equals 0">
</li>
<li class="joined">
<img src="mem:*" alt="F sub B equals 23.27 newton metres divided by 0.042 metres" style="vertical-align:-0.956em">
<span class="w35 note">divide by 0.042\u00a0m</span>
</li>
<li>
<img src="mem:*" alt="equals 554.1 newtons is about 554 newtons">
</li>
</ol>
<ol class="derivation whole">
<li class="joined">
<img src="mem:*" alt="F sub B equals W sub R">
</li>
<li>
<img src="mem:*" alt="is about 554 newtons">
</li>
</ol>
<ol class="derivation whole">
<li>
<img src="mem:*" alt="F sub B equals W sub R">
</li>
</ol>
"""


def test_a_page_for_paper(press: Press) -> None:
    """Of everything but formulas, derivations and figures the elements are those of the screen."""
    assert b"printed" == pdf(PAGE)
    assert press.shown.startswith(
        '<!DOCTYPE html>\n<html lang="en">\n<head>\n<meta charset="utf-8">\n<title>A jug &amp; a palm</title>\n'
        '</head>\n<body>\n<article lang="en">\n<h1>A jug &amp; a palm</h1>\n'
    )
    assert press.shown.endswith("</article>\n</body>\n</html>")
    assert DERIVATIONS in press.shown
    assert '<h2>Find <img src="mem:*" alt="F sub B">\n</h2>' in press.shown
    assert '<div class="sheet">\n<img src="mem:*" alt="Forces. A level forearm." style="height:21.1mm">' in press.shown
    assert '<img src="mem:*" alt="Pull. It rises." style="height:90.0mm">' in press.shown
    assert '<th scope="row">\n<img src="mem:*" alt="F sub B">\n</th>' in press.shown
    assert ((), ("tight.css", "closest.css")) == (press.styles, press.tighter)


def test_a_compact_page_has_its_figures_smaller_and_beside_words(press: Press) -> None:
    small = Plot("bars", "N", "", Axis("x"), Axis("y"), (Curve("c", ((0.0, 1.0),)),), ("one",))
    pdf(Page("T", (PAGE.passages[13], PAGE.passages[14], small)), compact=True)
    sheets = re.findall(
        r'(?:<div class="(\w+)">\n)?<div class="sheet">\n<img src="mem:\*" alt="(.*?)" style="(.*?)"', press.shown
    )
    assert ("beside", "Forces. A level forearm.", "height:15.8mm") == sheets[0]
    assert ("plot", "Pull. It rises.") == sheets[1][:2]  # a little too wide: drawn a little smaller
    assert "N" == sheets[2][1]
    assert (("compact.css",), ("compact-tight.css",)) == (press.styles, press.tighter)


def test_several_pages_have_the_paper_of_the_first_and_none_of_them_is_tightened(press: Press) -> None:
    pdf_pages((Page("A", (), "fr", "letter"), Page("B", ())), "T & u")
    assert (
        '<html lang="fr">\n<head>\n<meta charset="utf-8">\n<title>T &amp; u</title>\n</head>\n<body>\n'
        '<article lang="fr">\n<h1>A</h1>\n</article>\n<article lang="en">\n<h1>B</h1>\n</article>\n</body>\n</html>'
    ) == press.shown.partition("\n")[2]
    assert (("letter.css",), ()) == (press.styles, press.tighter)
    pdf_pages((), "T")
    assert ('<html lang="en">' in press.markup, (), ()) == (True, press.styles, press.tighter)


def test_strokes_and_inks_are_passed_on(press: Press) -> None:
    page = Page("T", (Paragraph((Maths(one(DIVIDED)),)),))
    inks: dict[str, Ink] = {}
    pdf_pages((page,), "T", inks=inks)
    kept = dict(inks)
    pdf_pages((page,), "T", strokes=False, inks=inks)
    assert [True, False] == ["cancel" in "".join(each) for each in (kept, inks.keys() - kept.keys())]
    pdf_pages((page,), "T")
    assert kept.keys() <= kept_inks().keys()


def test_rows_of_a_derivation_hold_together_at_its_ends_and_a_short_one_throughout() -> None:
    hand = Paper(True, {})
    for count, whole, joined in (
        (1, True, []),
        (2, True, [0]),
        (5, True, [0, 1, 3]),
        (10, True, [0, 1, 8]),
        (11, False, [0, 1, 9]),
    ):
        rows = [Row(one(PULL), (("=", one(q(str(each)))),)) for each in range(count)]
        markup = hand.derivation(rows)
        found = [place for place, each in enumerate(re.findall("<li(.*?)>", markup)) if each == ' class="joined"']
        assert (whole, joined) == ("whole" in markup, found)


def test_a_note_without_room_stands_under_its_row() -> None:
    long = Row(one(PULL), (("=", (term(a("x" * 80)),)),), (), says("a note"))
    assert '<span class="under note">a note</span>' in Paper(True, {}).derivation([long])


# ---------------------------------------------------------------------- books and boards
def test_a_book_for_paper(press: Press) -> None:
    assert b"printed" == pdf_volume(VOLUME)
    assert press.shown.startswith(
        '<!DOCTYPE html>\n<html lang="en">\n<head>\n<meta charset="utf-8">\n<title>Levers &amp; arms</title>\n'
        '<meta name="author" content="Ilva Marsk, Oke Brandt">\n</head>\n<body>\n<header class="cover">'
    )
    assert (
        '<p>How hard?</p>\n<figure>\n<div class="sheet">\n<img src="mem:*" alt="Forces. A level forearm."'
        in press.shown
    )
    assert press.shown.endswith("</main>\n</body>\n</html>")
    assert ("book.css",) == press.styles
    assert "author" not in head(Volume("T", "", (), "", "", "", ()))
    assert b"printed" == pdf_of_pieces(replace(VOLUME, parts=VOLUME.parts[:5]), lambda found: [])


BOARDS = """\
<!DOCTYPE html>
<html lang="en-GB">
<head>
<meta charset="utf-8">
<title>Jug &amp; palm</title>
</head>
<body>
<section class="board">
<div class="face">
<h1 class="part chapter" data-label="Jug">Jug &amp; all</h1>
<div class="words whole">
<p>Hold it.</p>
</div>
<p class="number">1 / 4</p>
</div>
</section>
<section class="board">
<div class="face tight">
<h2 class="part page" data-label="The balance of all turning moments about the joint E: sum">The balance of all turning moments about the joint E</h2>
<div class="figure">
<img src="mem:*" alt="Forces. A level forearm." style="width:18.416em;height:19.600em;margin:0.000em 0.992em">
</div>
<div class="words">
<ol class="lines" style="font-size:0.800em">
<li>
<div class="label">about E</div>
<img src="mem:*" alt="F sub B equals 5 newtons">
<div class="note">why</div>
</li>
<li class="newest">
<img src="mem:*" alt="equals 6 newtons">
</li>
</ol>
</div>
<p class="number">2 / 4</p>
</div>
</section>
<section class="board">
<div class="face">
<h2 class="part page long" data-label="The balance of all turning moments about the joint of elb: x">The balance of all turning moments about the joint of elb</h2>
<div class="words whole">
<figure>
<img src="mem:*" alt="Pull. It rises." style="width:34.616em;height:18.400em;margin:0.000em 2.092em">
</figure>
</div>
<p class="number">3 / 4</p>
</div>
</section>
<section class="board">
<div class="face">
<h2 class="part page" data-label="The balance of all turning moments about the joint of el: y">The balance of all turning moments about the joint of el</h2>
<div class="words whole">
</div>
<p class="number">4 / 4</p>
</div>
</section>
</body>
</html>"""  # noqa: E501


def test_a_lesson_for_paper(press: Press) -> None:
    pdf_boards(LESSON)
    assert BOARDS == press.shown
    assert ("html/board.css", "board-paper.css") == press.styles


def test_a_handout_has_four_boards_a_sheet(press: Press) -> None:
    """Each has room for notes beside it, on eight lines."""
    pdf_boards(Lesson("T", tuple(Board(f"b{place}", f"b{place}") for place in range(5))), True)
    sheets = press.shown.split('<div class="four">\n<div class="pair">')
    notes = '</div>\n</section>\n<div class="notes">\n<p>Notes</p>\n' + "<div>\n</div>\n" * 8 + "</div>\n</div>"
    assert [[], ["1", "2", "3", "4"], ["5"]] == [re.findall(rf"(\d) / 5</p>\n{notes}", sheet) for sheet in sheets]
    assert ("html/board.css", "board-paper.css", "board-handout.css") == press.styles
    assert ('data-label="b0"' in press.shown, "</div>\n</div>\n</body>\n</html>" in press.shown) == (True, True)


# ---------------------------------------------------------------------- a book in pieces
def _parts(kinds: str) -> tuple[Part, ...]:
    """c chapter, p problem, w prose, x closing, a answers, o conventions."""
    names = dict(c="chapter", p="problem", w="prose", x="closing", a="answers", o="conventions")
    return tuple(
        Part(names[kind], level=1 if kind in "coa" else 2 if kind == "p" else 0, number=str(place), title=kind)
        for place, kind in enumerate(kinds)
    )


@pytest.mark.parametrize(
    ("kinds", "most", "expected"),
    [
        ("ocpppcppa", 2, "ocpp:0 o | pcp:1 c | p:5 c | a:8 a"),
        ("cpppp", 3, "cppp:0 c | p:0 c"),
        ("cpwpx", 1, "cp:0 c | wpx:0 c"),
        ("cpxcp", 1, "cpx:0 c | cp:3 c"),
        ("cppa", 8, "cpp:0 c | a:3 a"),
        ("p", 8, "p:"),
        ("", 8, ""),
    ],
)
def test_a_book_is_cut_where_a_sheet_begins(kinds: str, most: int, expected: str) -> None:
    volume = Volume("T", "", ("N",), "E", "C", "F", _parts(kinds), language="fr", paper="letter")
    found = pieces(volume, most)
    letters = {part.number: part.title for part in volume.parts}
    assert kinds == "".join(letters[part.number] for piece in found for part in piece.parts)
    told = " | ".join(f"{''.join(part.title for part in piece.parts)}:{piece.chapter}" for piece in found)
    assert expected == told
    assert {("F", "T", ("N",), "fr", "letter")} >= {each[3:] for each in found}
    assert [each.parts[0] for each in found[1:]] == [each.behind for each in found[:-1]]
    assert found[-1:] == () or found[-1].behind is None


def test_a_piece_carries_what_stands_at_head_and_foot() -> None:
    assert ' data-chapter="1 A &amp; b" data-foot="&quot;F&quot;"' == carried("1 A & b", '"F"')


BLANK = Space("Yours", 60, (says("all"),))


def _blank(*parts: Part, behind: Part | None = None, paper: str = "A4") -> list[int]:
    markup = "".join(bodies(parts, paper, Paper(True, {}), behind))
    return [int(each) for each in re.findall(r"height:(\d+)mm", markup)]


def test_a_blank_space_goes_to_the_end_of_its_sheet_or_has_one_of_its_own() -> None:
    """A sheet has 252 mm (234 for letter), of which slack, running head and the title of the problem take 39, the title
    of the space 12 and each line of words 7.7."""
    line = Paragraph(says("x"))
    assert [201] == _blank(Part("problem", body=(BLANK,)))
    assert [193] == _blank(Part("problem", body=(line, BLANK)))
    assert [183] == _blank(Part("problem", body=(BLANK,)), paper="letter")
    chapter = Part("chapter", title="One", body=(line,))
    assert [176] == _blank(chapter, Part("problem", body=(BLANK,)))
    assert [193] == _blank(Part("prose", body=(line,)), Part("problem", body=(BLANK,)))
    assert [201] == _blank(Part("answers", body=(line,)), Part("problem", body=(BLANK,)))
    full = Part("problem", body=(*([line] * 20), BLANK))
    assert [205] == _blank(full)
    assert [187] == _blank(full, paper="letter")
    assert [250] == _blank(Part("problem", body=(*([line] * 20), Space("Yours", 250))))
    closing = Part("closing", body=(line,))
    assert [182] == _blank(Part("problem", body=(BLANK,)), closing)
    assert [182] == _blank(Part("problem", body=(BLANK,)), behind=closing)
    assert [186] == _blank(full, closing)
    assert [60] == _blank(Part("problem", body=(BLANK, line)))
    assert [60] == _blank(Part("prose", body=(BLANK,)))


# ---------------------------------------------------------------------- room for a figure
HEIGHTS: list[tuple[Passage, float]] = [
    (Heading(1, says("x" * 43)), 16.5),
    (Heading(1, says("x" * 44)), 25.0),
    (Heading(2, says("x")), 14.0),
    (Paragraph(says("x" * 95)), 7.72),
    (Paragraph(says("x" * 96)), 13.24),
    (Paragraph((Text("x" * 90), Maths(one(q("5", "N"), PULL)))), 13.24),
    (Paragraph(()), 7.72),
    (Prose("x\n\ny"), 15.44),
    (Bullets((says("x"), says("y" * 96))), 18.76),
    (Table("", (says("h"),), ((says("x"),), (says("y" * 67), says("z")))), 36.8),
    (Table("", (), ((),)), 24.4),
    (Derivation(NOTED[:2]), 22.5),
    (JUDGED, 49.2),
    (Blanks((says("x" * 112), says("x" * 113))), 37.65),
    (Space("", 60), 71.0),
    (Answer(says("x")), 22.08),
]


@pytest.mark.parametrize(("passage", "height"), HEIGHTS)
def test_what_a_passage_takes_of_its_sheet_is_estimated(passage: Passage, height: float) -> None:
    """In mm, from the stylesheet for paper: rather too high, by line and row."""
    assert (250 - height, 232 - height) == pytest.approx((left((passage,)), left((passage,), "letter")))


def test_what_runs_over_a_sheet_goes_on_on_the_next_and_a_blank_space_as_a_whole() -> None:
    lines = [Paragraph(says("x"))] * 40
    assert 250 - (40 * 7.72 - 252) == pytest.approx(left(lines))
    assert 250 - 71 == pytest.approx(left([*lines[:30], Space("", 60)]))
    assert 250 - 5 * 7.72 - 71 == pytest.approx(left([*lines[:5], Space("", 60)]))
    assert (250, -1) == (left([Space("", 241)]), left([Space("", 240)]))


FIGURE = Picture(Drawing((0.0, 0.0), "e"), "F", "D", says("x" * 113))
LINE = Paragraph(says("x"))
GIVEN = Table("Given", (says("h"),), ((says("x"),),) * 20)
ROOM = 252 - 2 - 16.5 - 5.5 - 9.1  # the title over it, its frame and two lines of caption under it


@pytest.mark.parametrize(
    ("passages", "expected"),
    [
        ((FIGURE,), ROOM),
        ((Heading(1, says("x")), FIGURE), ROOM),
        ((LINE, LINE, FIGURE), ROOM - 15.44),
        ((LINE, FIGURE, LINE, FIGURE), ROOM - 7.72),
        ((*[LINE] * 31, FIGURE), ROOM + 16.5 - (16.5 + 31 * 7.72 - 252)),
        ((LINE,), 0.0),
    ],
)
def test_the_room_for_the_first_figure(passages: tuple[Passage, ...], expected: float) -> None:
    assert expected == pytest.approx(room(Page("T", passages)))
    assert (
        expected - (18 if expected else 0) == pytest.approx(room(Page("T", passages, paper="letter")))
        or len(passages) > 9
    )


@pytest.mark.parametrize(
    ("passages", "least", "order", "height"),
    [
        ((GIVEN, FIGURE, LINE), 60.0, "GFL", ROOM - 142.2),
        ((GIVEN, FIGURE, LINE), 80.0, "FGL", ROOM),
        ((GIVEN, LINE, FIGURE, LINE), 77.0, "FGLL", ROOM),
        ((GIVEN, LINE, FIGURE, LINE), 76.0, "FGLL", ROOM - 142.2),
        ((GIVEN, LINE, FIGURE, LINE), 68.0, "GLFL", ROOM - 142.2 - 7.72),
        ((FIGURE, GIVEN), 300.0, "FG", ROOM),
        ((LINE, GIVEN, FIGURE), 220.0, "LGF", ROOM - 142.2 - 7.72),
        ((LINE, GIVEN), 1.0, "LG", 0.0),
    ],
)
def test_a_figure_stands_before_the_table_where_it_would_come_on_a_later_sheet(
    passages: tuple[Passage, ...], least: float, order: str, height: float
) -> None:
    page, found = figure_on_first_sheet(Page("T", passages), least)
    letters = {"G": GIVEN, "F": FIGURE, "L": LINE}
    assert ([letters[each] for each in order], height) == (list(page.passages), pytest.approx(found))


def test_what_stands_before_a_problem_keeps_its_place_on_its_sheet() -> None:
    passages = (GIVEN, LINE, GIVEN, FIGURE)
    page, _ = figure_on_first_sheet(Page("T", passages), 60.0, 1)
    assert (GIVEN, LINE, FIGURE, GIVEN) == page.passages


# ---------------------------------------------------------------------- formulas
def _ink(advance: float, rise: float = 70.0, drop: float = 10.0, name: str = "f") -> Ink:
    return Ink((Stroke(name, 1.0, -1.0, 0.0, 0.0),), advance, 2.0, advance - 3.0, rise, drop)


def test_ink_is_moved_with_the_blank_before_it() -> None:
    assert Ink((Stroke("f", 1.0, -1.0, 5.0, 7.0),), 105.0, 7.0, 102.0, 63.0, 17.0) == moved(_ink(100.0), 5.0, 7.0)
    assert _ink(100.0) == moved(_ink(100.0))


def test_pieces_stand_beside_each_other_on_one_baseline() -> None:
    found = beside((_ink(100.0), _ink(50.0, 90.0, 5.0, "g")))
    assert (
        (Stroke("f", 1.0, -1.0, 0.0, 0.0), Stroke("g", 1.0, -1.0, 100.0, 0.0)),
        150.0,
        0.0,
        150.0,
        90.0,
        10.0,
    ) == tuple(found)
    wide = Ink((), 10.0, -4.0, 30.0, 1.0, 1.0)
    assert (-4.0, 30.0) == (beside((wide,)).left, beside((wide,)).right)
    assert NOTHING == beside(())


@pytest.mark.parametrize(
    ("value", "written"),
    [
        (0.0, "0"),
        (0.049, "0"),
        (-0.049, "0"),
        (0.05, "0.1"),
        (-0.06, "-0.1"),
        (10.0, "10"),
        (1.25, "1.2"),
        (100.04, "100"),
    ],
)
def test_numbers_are_written_to_a_tenth(value: float, written: str) -> None:
    assert written == number(value)


def _formula(advance: float, name: str = "f", rise: float = 70.0, drop: float = 10.0) -> Formula:
    return Formula("", _ink(advance, rise, drop, name))


def _places(drawn: Ink) -> list[tuple[str, float, float]]:
    return [(each.outline, round(each.x, 3), round(each.y, 3)) for each in drawn.strokes]


def test_a_row_ends_its_left_side_at_the_column_and_goes_on_under_the_first_link() -> None:
    left_, links = _formula(100.0, "l"), (_formula(300.0, "a"), _formula(300.0, "b"))
    assert [("l", 100.0, 0.0), ("a", 200.0, 0.0), ("b", 500.0, 0.0)] == _places(set_row(left_, links, 200.0, 800.0))
    narrow = set_row(left_, links, 200.0, 700.0)
    assert [("l", 100.0, 0.0), ("a", 200.0, 0.0), ("b", 200.0, 130.0)] == _places(narrow)
    assert (500.0, 70.0, 140.0) == (narrow.advance, narrow.rise, narrow.drop)


def test_lines_stand_apart_by_what_they_hold() -> None:
    """At least 145 hundredths from baseline to baseline less the depth of a letter, more where a line is tall."""
    tall = set_row(_formula(100.0, "l", drop=60.0), (_formula(300.0, "a"), _formula(300.0, "b", 90.0)), 100.0, 400.0)
    assert [("l", 0.0, 0.0), ("a", 100.0, 0.0), ("b", 100.0, 190.0)] == _places(tall)


def test_a_left_side_wider_than_its_column_begins_at_the_margin_and_its_links_two_quads_in() -> None:
    links = (_formula(300.0, "a"), _formula(600.0, "b"))
    found = set_row(_formula(500.0, "l"), links, 200.0, 800.0)
    assert [("l", 0.0, 0.0), ("a", 500.0, 0.0), ("b", 200.0, 130.0)] == _places(found)


def test_a_zero_stays_with_what_it_is_said_of() -> None:
    zero = _formula(250.0, "0")
    assert [("l", 0.0, 0.0), ("0", 500.0, 0.0)] == _places(set_row(_formula(500.0, "l"), (zero,), -1.0, 700.0))
    wide = _formula(251.0, "0")
    assert [("l", 0.0, 0.0), ("0", 200.0, 130.0)] == _places(set_row(_formula(500.0, "l"), (wide,), -1.0, 700.0))


SUM: Terms = tuple(term(PULL, sign=1 if place % 2 else -1) for place in range(6))


def test_a_long_sum_is_laid_in_lines_with_its_last_baseline() -> None:
    markup = mathml(SUM)
    whole, pieces_ = ink(markup), summands(markup)
    assert 6 == len(pieces_) and whole.advance == pytest.approx(sum(each.advance for each in pieces_))
    assert whole == fitted(markup, whole.advance)
    room_ = sum(each.advance for each in pieces_[:3]) + 1.0
    lines = fitted(markup, room_)
    letters = [each for each in lines.strokes if each.outline == ink(mathml(one(PULL))).strokes[0].outline]
    begins = sorted({round(each.y, 3) for each in letters})
    assert (6, 4, 0.0) == (len(letters), len(begins), begins[-1])
    first, *others = (min(each.x for each in letters if round(each.y, 3) == line) for line in begins)
    assert first < EM < 2 * EM < min(others) and others == pytest.approx(others[:1] * 3)


def test_a_form_has_its_letters_by_name_and_short_outlines_in_place() -> None:
    long = "0 0 m " + "10 20 l " * 8 + "h f"
    drawn = Ink(
        (
            Stroke(long, 0.0123456, -0.5, 1.26, 2.0),
            Stroke("0 0 1 1 re f", 20.0, 4.0, 0.0, -3.0),
            Stroke(long, 1.0, -1.0, 9.0, 0.0),
            Stroke("", 1.0, 1.0, 0.0, 0.0),
        ),
        50.0, -1.0, 49.0, 70.0, 10.0,
    )  # fmt: skip
    case = TypeCase()
    form = case.form(drawn)
    assert (
        "q 0.01235 0 0 -0.5 1.3 2 cm /L0 Do Q\nq 20 0 0 4 0 -3 cm 0 0 1 1 re f Q\nq 1 0 0 -1 9 0 cm /L0 Do Q"
    ) == zlib.decompress(form.stream[0]).decode()
    assert ["-3", "-72", "51", "12"] == [str(each) for each in form.extra["BBox"]]
    assert ("/XObject", "/Form", "/FlateDecode") == tuple(form.extra[each] for each in ("Type", "Subtype", "Filter"))


def test_letters_are_laid_into_a_document_once_each_in_a_box_around_them() -> None:
    case = TypeCase()
    forms = [case.form(ink(mathml(one(PULL)))) for _ in range(2)]
    document = pydyf.PDF()
    before = len(document.objects)
    case.lay_in(document)
    first, second, resources = document.objects[before:]
    assert {"XObject": {"L0": first.reference, "L1": second.reference}} == dict(resources)
    assert {resources.reference} == {each.extra["Resources"] for each in forms}
    for letter in (first, second):
        numbers = [float(each) for each in re.findall(r"-?\d+(?:\.\d+)?", zlib.decompress(letter.stream[0]).decode())]
        across, up = numbers[::2], numbers[1::2]
        assert [min(across) - 1, min(up) - 1, max(across) + 1, max(up) + 1] == [
            float(each) for each in letter.extra["BBox"]
        ]


def test_a_stroke_through_a_unit_goes_up_to_the_right_over_all_of_it() -> None:
    drawn = ink(mathml(one(DIVIDED), strokes=True))
    strikes = [each for each in drawn.strokes if each.outline.endswith("S")]
    assert 2 == len(strikes)
    for each in strikes:
        found = re.fullmatch(r"([\d.]+) w 0 ([\d.]+) m ([\d.]+) 0 l S", each.outline)
        assert found and (1.0, 1.0) == (each.wide, each.high)
        wide, high, across = map(float, found.groups())
        assert 3 < wide < 7 and 40 < high < 60 and 70 < across < 85  # an m is 0.5 em high and 0.8 em wide


def test_a_letter_is_drawn_as_the_font_has_it() -> None:
    """The outline ends where the font says that the letter does, in its units (1000 to the em)."""
    for text in ("F", "o", "8"):
        node = laid(ElementTree.fromstring(f"<mtext>{text}</mtext>"), "inline")
        (glyph,) = (each for each in node.nodes[0].nodes)
        (drawn,) = strokes(glyph, 3.0, 4.0)
        assert (0.1, -0.1, 3.0, 4.0) == pytest.approx(tuple(drawn[1:]))
        ends = re.findall(r"(-?[\d.]+) (-?[\d.]+) [mlc]", drawn.outline)
        across, up = ([float(each[place]) for each in ends] for place in (0, 1))
        box = glyph.glyph.path.bbox
        assert (box.xmin, box.xmax, box.ymin, box.ymax) == pytest.approx(
            (min(across), max(across), min(up), max(up)), abs=1.0
        )
        assert drawn.outline.count(" m") == drawn.outline.count("h") and drawn.outline.endswith(" h f")


def test_bars_are_as_long_and_as_thick_as_they_are_and_other_marks_are_refused() -> None:
    assert [Stroke("0 0 1 1 re f", 20.0, 4.0, 1.0, 2.0)] == list(strokes(HLine(20.0, 4.0), 1.0, 2.0))
    assert [Stroke("0 0 1 1 re f", 4.0, 20.0, -1.0, 2.0)] == list(strokes(VLine(20.0, 4.0), 1.0, 2.0))
    with pytest.raises(ValueError, match="a formula holds a stroke that is not drawn here: object"):
        list(strokes(object()))


class Stream:
    """Takes what an image does to a page."""

    def __init__(self) -> None:
        self.done: list[object] = []

    def set_color(self, colour: object, stroke: bool = False) -> None:
        self.done.append((colour, stroke))

    def transform(self, *numbers: float) -> None:
        self.done.append(tuple(round(each, 6) for each in numbers))

    def add_image(self, image: Any, interpolate: bool, ratio: float) -> str:
        return f"{image.id} {interpolate} {ratio}"

    def draw_x_object(self, name: str) -> None:
        self.done.append(name)


def test_a_formula_is_placed_in_the_colour_and_the_size_of_its_text() -> None:
    image = EquationImage("name", _ink(200.0), 78.0, 22.0, TypeCase())
    assert (20.0, 10.0, 2.0) == image.get_intrinsic_size(1.0, 10.0)
    assert (0.1, 10.0, 0.01) == pytest.approx(
        EquationImage("n", _ink(0.5), 78.0, 22.0, TypeCase()).get_intrinsic_size(1.0, 10.0)
    )
    stream = Stream()
    image.draw(stream, 20.0, 10.0, {"color": "grey"})
    assert [("grey", False), ("grey", True), (0.1, 0, 0, 0.1, 0, 7.8), "name True 1"] == stream.done


def test_a_formula_has_the_box_of_a_line_unless_it_is_taller() -> None:
    hand = Paper(True, {})
    assert [
        '<img src="mem:*" alt="&lt;x">',
        '<img src="mem:*" alt="x">',
        '<img src="mem:*" alt="x" style="vertical-align:-0.470em">',
    ] == [
        re.sub("mem:[0-9a-f]{20}", "mem:*", hand.image(name, drawn, spoken))
        for name, drawn, spoken in (
            ("a", _ink(10.0, 78.0, 28.0), "<x"),
            ("b", _ink(10.0, 79.0, 28.0), "x"),
            ("c", _ink(10.0, 78.0, 29.0), "x"),
        )
    ]
    assert [(78.0, 28.0), (97.0, 28.0), (78.0, 47.0)] == [
        (each.above, each.below) for each in hand.images.values() if isinstance(each, EquationImage)
    ]
    assert {"<x", "x"} == hand.spoken


# ---------------------------------------------------------------------- columns
def _set(left_: float, *links: float, label: str = "", note: str = "", zero: bool = False) -> Set:
    row = Row(one(PULL), (("=", () if zero else one(PULL)),), says(label) if label else (), says(note) if note else ())
    return Set(row, _formula(left_ * EM), tuple(_formula(each * EM) for each in links))


@pytest.mark.parametrize(
    ("rows", "label", "equals", "note"),
    [
        ((_set(2, 3), _set(5, 3)), 0.0, 5.0, 0.5),
        ((_set(2, 3), _set(10, 3)), 0.0, 10.0, 0.5),
        ((_set(2, 3), _set(10.1, 3)), 0.0, 2.0, 0.5),
        ((_set(2, 3), _set(9, 3, zero=True)), 0.0, 2.0, 0.5),
        ((_set(2, 33), _set(7.2, 3)), 0.0, 7.2, 0.5),
        ((_set(2, 33), _set(7.3, 3)), 0.0, 2.0, 0.5),
        ((_set(2, 3, 33), _set(7.3, 3)), 0.0, 2.0, 0.5),
        ((_set(2, 3, label="abc"),), 2.5, 2.0, 0.5),
        ((_set(2, 3, label="aBC"),), 3.0, 2.0, 0.5),
        ((_set(2, 3, label="a" * 40), _set(2, 3)), 9.0, 2.0, 0.5),
        ((_set(12, 3),), 0.0, 0.0, 0.5),
        ((_set(2, 16, note="n"),), 0.0, 2.0, 0.5),
        ((_set(2, 17, note="n"),), 0.0, 2.0, 0.58),
        ((_set(2, 21, note="n"),), 0.0, 2.0, 0.66),
        ((_set(2, 30, note="n"),), 0.0, 2.0, 0.5),
        ((), 0.0, 0.0, 0.5),
    ],
)
def test_where_the_columns_of_a_derivation_stand(
    rows: tuple[Set, ...], label: float, equals: float, note: float
) -> None:
    """In em; notes begin at half of the measure, or farther on where a formula beside one needs it."""
    assert (label, equals, note * (MEASURE - label)) == pytest.approx(tuple(columns(rows)))


def test_a_row_beside_a_note_has_the_room_before_it() -> None:
    places = columns((_set(2, 3, note="n", label="abc"),))
    noted, bare = _set(1, 1, note="n").row, _set(1, 1).row
    assert (0.5 * 37.7 - 1.6, 37.7) == pytest.approx((places.room(noted), places.room(bare)))


# ---------------------------------------------------------------------- figures
class Outline:
    """A letter's outline."""

    path = "M 0 0 L 10 0 Q 10 10 0 10 Q 0 20 10 20 C 1 2 3 4 5 6.005 Z"


VIEW = Box(-10.0, -20.0, 90.0, 180.0)


def _drawn(*shapes: Any, labels: tuple[Any, ...] = ()) -> str:
    form = FigureImage("f", Layout(labels, shapes, VIEW)).get_x_object(True, 1.0)
    return zlib.decompress(form.stream[0]).decode()


@pytest.mark.parametrize(
    ("shape", "operators"),
    [
        (Stroke_((0.0, 1.0), (2.5, -0.001), Pen("#ff0000")), "q 1 0 0 RG 1 w 0 1 m 2.5 0 l S Q"),
        (
            Stroke_((0.0, 0.0), (1.0, 1.0), Pen("#000000", 1.25, "4 2", round=True)),
            "q 0 0 0 RG 1.25 w [4 2] 0 d 1 J 0 0 m 1 1 l S Q",
        ),
        (
            Patch(((0.0, 0.0), (4.0, 0.0), (4.0, 3.0)), Pen("#000000", 0.0, fill="#336699")),
            "q 0.2 0.4 0.6 rg 0 0 m 4 0 l 4 3 l h f Q",
        ),
        (
            Patch(((0.0, 0.0), (4.0, 0.0)), Pen("#000000", 2.0, fill="#ffffff")),
            "q 1 1 1 rg 0 0 0 RG 2 w 0 0 m 4 0 l h B Q",
        ),
        (Patch(((0.0, 0.0), (4.0, 0.0)), Pen("#000000", 0.0)), "q  0 0 m 4 0 l h n Q"),
        (
            Disc((10.0, 20.0), 10.0, Pen("#000000")),
            "q 0 0 0 RG 1 w 20 20 m 20 14.48 15.52 10 10 10 c 4.48 10 0 14.48 0 20 c 0 25.52 4.48 30 10 30 c "
            "15.52 30 20 25.52 20 20 c h S Q",
        ),
        (
            Arc((0.0, 0.0), 10.0, 0.0, 90.0, Pen("#000000")),
            "q 0 0 0 RG 1 w 10 0 m 10 -5.52 5.52 -10 0 -10 c S Q",
        ),
        (
            Arc((0.0, 0.0), 10.0, 90.0, -90.0, Pen("#000000")),
            "q 0 0 0 RG 1 w 0 -10 m 5.52 -10 10 -5.52 10 0 c S Q",
        ),
    ],
)  # fmt: skip
def test_a_shape_is_drawn_with_the_operators_of_pdf(shape: Any, operators: str) -> None:
    """ISO 32000-1, 8.5: m, l, c and h make a path, S, f, B and n paint it; a quarter of a circle has its handles at
    0.5523 of the radius (common practice).
    """
    assert operators == _drawn(shape)


def test_an_arc_of_more_than_a_quarter_is_drawn_in_pieces() -> None:
    counts = [
        _drawn(Arc((0.0, 0.0), 10.0, 0.0, sweep, Pen("#000000"))).count(" c") for sweep in (0.0, 90.0, 91.0, -181.0)
    ]
    assert [1, 1, 2, 3] == counts


def test_a_label_is_its_outline_in_its_place() -> None:
    label = Label(Box(5.0, 6.5, 7.0, 8.0), Outline(), "#000000")  # type: ignore[arg-type]
    outline = "0 0 m 10 0 l 10 6.67 6.67 10 0 10 c 0 16.67 3.33 20 10 20 c 1 2 3 4 5 6 c h"
    assert f"0 0 0 rg q 1 0 0 1 5 6.5 cm {outline} f Q" == _drawn(labels=(label,))


def test_a_figure_has_its_view_for_a_box_and_fills_the_height_it_is_given() -> None:
    image = FigureImage("f", Layout((), (), VIEW))
    assert (100.0, 200.0, 0.5) == image.get_intrinsic_size(1.0, 14.0)
    stream = Stream()
    image.draw(stream, 50.0, 100.0, {})
    assert [(0.5, 0, 0, 0.5, 5.0, 10.0), "f True 1"] == stream.done
    form = image.get_x_object(True, 1.0)
    assert (-10.0, -20.0, 90.0, 180.0) == tuple(form.extra["BBox"])
    assert ("/XObject", "/Form", "/FlateDecode") == tuple(form.extra[each] for each in ("Type", "Subtype", "Filter"))
