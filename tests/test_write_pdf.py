"""The PDF writer: a tagged document that stands alone, formulas that line up, and typed text that stays text."""

from __future__ import annotations

import re
import subprocess
import sys
from collections.abc import Iterator
from dataclasses import replace
from functools import cache
from io import BytesIO
from pathlib import Path
from typing import Any
from xml.etree import ElementTree

import pikepdf
import pytest
import ziamath
from hypothesis import given, settings
from hypothesis import strategies as st
from lxml import html as reader
from pages import (
    DERIVATION,
    DIVIDED,
    FOUND,
    GIVEN,
    HOSTILE,
    JX,
    PICTURE,
    PULL,
    REACH,
    SECOND,
    SUM,
    WALKTHROUGH,
    J,
    everywhere,
    q,
    said,
)

from explain import work
from explain.equation.terms import Group, Letter, Power, Quotient, Root, Term, Terms, term
from explain.document.passage import Derivation, Maths, Page, Paragraph, Passage, Row
from explain.write.pdf import pages as writer
from explain.document.untrusted_text import clean
from explain.write.figure.free_body import layout
from explain.write.pdf.formula_layout import ink
from explain.write.pdf.formula_breaks import fitted
from explain.write.html.elements import article
from explain.formula.mathml import mathml, mathml_row
from explain.write.pdf.paper_markup import Paper
from explain.write.pdf.pages import NoPaper, pdf, pdf_pages
from explain.write.pdf.figure_room import room
from explain.write.pdf.weasy_fetch import Shelf
from explain.write.pdf.spacing import LEAST, gap, spaced
from explain.write.pdf.glyph_outlines import EM, Ink, strokes
from explain.write.pdf.pdf_tags import NoAlternative

HERE = Path(__file__).resolve()
EQUALS = ink(mathml_row(Row((), (("=", ()),)))).strokes[0].outline


@cache
def made() -> bytes:
    return pdf(WALKTHROUGH)


@cache
def opened(content: bytes) -> pikepdf.Pdf:
    """The document, kept open: what is taken from it is lost when it goes."""
    return pikepdf.open(BytesIO(content))


def elements(document: pikepdf.Pdf) -> Iterator[pikepdf.Object]:
    """Every element of the structure tree, in reading order."""
    waiting = [document.Root.StructTreeRoot.K[0]]
    while waiting:
        element = waiting.pop()
        yield element
        waiting.extend(kid for kid in reversed(list(element.get("/K", []))) if isinstance(kid, pikepdf.Dictionary))


def tagged(document: pikepdf.Pdf, *tags: str) -> list[pikepdf.Object]:
    return [each for each in elements(document) if str(each.S) in tags]


def alternatives(document: pikepdf.Pdf, tag: str) -> list[str]:
    return [str(each.Alt) for each in tagged(document, tag)]


def objects(document: pikepdf.Pdf) -> Iterator[Any]:
    return (each for each in document.objects if isinstance(each, pikepdf.Dictionary | pikepdf.Stream))


def keys_of(document: pikepdf.Pdf) -> set[str]:
    return set().union(*(each.keys() for each in objects(document)))


def set_for_paper(*passages: Passage) -> tuple[Paper, Any]:
    """The hand that set the passages, and what it made of them, read as HTML."""
    hand = Paper(True, {})
    return hand, reader.fromstring("<main>" + "".join(article(Page("Title", passages), hand)) + "</main>")


# --- the document


def test_the_document_is_tagged() -> None:
    assert bool(opened(made()).Root.MarkInfo.Marked) is True


def test_the_document_says_that_it_is_pdf_ua() -> None:
    with opened(made()).open_metadata() as metadata:
        assert metadata["pdfuaid:part"] == "1"


def test_the_document_says_its_language() -> None:
    assert str(opened(made()).Root.Lang) == "en"


def test_the_title_is_in_both_places_and_to_be_shown() -> None:
    document = opened(made())
    with document.open_metadata() as metadata:
        assert (str(document.docinfo.Title), metadata["dc:title"]) == ("A rock on the palm", "A rock on the palm")
    assert bool(document.Root.ViewerPreferences.DisplayDocTitle) is True


def test_no_date_is_written() -> None:
    assert sorted(opened(made()).docinfo.keys()) == ["/Producer", "/Title"]


def test_pages_are_a4() -> None:
    assert [round(float(side)) for side in opened(made()).pages[0].MediaBox] == [0, 0, 595, 842]


def test_every_font_is_embedded() -> None:
    descriptors = [each for each in objects(opened(made())) if each.get("/Type") == "/FontDescriptor"]
    assert len(descriptors) >= 3
    assert [each for each in descriptors if not {"/FontFile", "/FontFile2", "/FontFile3"} & set(each.keys())] == []


def test_nothing_leads_out_of_the_document() -> None:
    assert (
        keys_of(opened(made()))
        & {"/URI", "/Annots", "/EmbeddedFiles", "/AF", "/JS", "/JavaScript", "/OpenAction", "/Launch", "/GoToR"}
        == set()
    )


def test_the_foot_bears_title_and_number_and_is_no_part_of_the_text() -> None:
    page = opened(made()).pages[0]
    marks = [
        str(operands[0]) for operands, operator in pikepdf.parse_content_stream(page) if str(operator) in ("BMC", "BDC")
    ]
    assert marks[-2:] == ["/Artifact", "/Artifact"]


def test_all_content_that_is_marked_hangs_in_the_tree() -> None:
    document = opened(made())
    hanging = {each.objgen for each in elements(document)}
    numbers = list(document.Root.StructTreeRoot.ParentTree.Nums)
    owners = {place: list(owned) for place, owned in zip(numbers[::2], numbers[1::2], strict=True)}
    for page in document.pages:
        for operands, operator in pikepdf.parse_content_stream(page):
            if str(operator) == "BDC":
                assert owners[page.StructParents][int(operands[1].MCID)].objgen in hanging


# --- what those who cannot see it are told


def test_formulas_are_read_aloud_in_words() -> None:
    assert alternatives(opened(pdf(Page("T", (DERIVATION,)))), "/Formula") == [
        "F sub B times 0.045 metres times sine of 70 degrees minus 58.86 newtons times 0.35 metres equals 0",
        "F sub B equals 20.601 newton metres divided by 0.042286 metres",
        "F sub B",
        "F sub B equals 487.18 newtons is about 487 newtons",
    ]


def test_a_figure_is_described() -> None:
    assert alternatives(opened(made()), "/Figure") == [f"Free-body diagram. {PICTURE.description}"]


def test_no_alternative_text_is_a_bare_number() -> None:
    said_aloud = alternatives(opened(made()), "/Formula")
    assert [words for words in said_aloud if re.fullmatch(r"[\d.]+", words)] == []


def test_header_cells_say_what_they_head() -> None:
    scopes = [str(each.A.Scope) for each in tagged(opened(made()), "/TH")]
    assert scopes == ["/Column", "/Column", "/Column", "/Row", "/Row"]


def test_headings_are_tagged_in_order() -> None:
    assert [str(each.S) for each in tagged(opened(made()), "/H1", "/H2", "/H3")] == ["/H1", "/H2", "/H2"]


def test_a_figure_without_a_title_is_refused() -> None:
    with pytest.raises(NoAlternative):
        pdf(Page("T", (replace(PICTURE, title="", description=""),)))


# --- the same bytes


def test_the_same_page_gives_the_same_bytes_whatever_was_made_in_between() -> None:
    pdf(SECOND)
    assert pdf(WALKTHROUGH) == made()


def test_other_processes_give_the_same_bytes() -> None:
    code = (
        "from pages import WALKTHROUGH; from explain.write.pdf.pages import pdf; from hashlib import sha256; "
        "print(sha256(pdf(WALKTHROUGH)).hexdigest())"
    )
    runs = [
        subprocess.run(
            [sys.executable, "-c", code],
            check=True,
            capture_output=True,
            text=True,
            env={"PYTHONPATH": f"{HERE.parent}:{HERE.parents[1]}", "PYTHONHASHSEED": seed, "PATH": ""},
        ).stdout
        for seed in ("1", "2")
    ]
    assert runs[0] == runs[1] != ""


def test_formulas_kept_from_before_give_the_same_bytes() -> None:
    inks: dict[str, Ink] = {}
    first = pdf_pages((WALKTHROUGH,), "A rock on the palm", inks=inks)
    known = dict(inks)
    assert pdf_pages((WALKTHROUGH,), "A rock on the palm", inks=inks) == first
    assert (len(inks), len(known) > 10) == (len(known), True)


# --- books


def test_every_page_of_a_book_begins_a_sheet() -> None:
    book = opened(pdf_pages((WALKTHROUGH, SECOND), "Two problems"))
    assert len(book.pages) == sum(len(opened(pdf(page)).pages) for page in (WALKTHROUGH, SECOND))
    assert str(book.docinfo.Title) == "Two problems"


def test_a_formula_that_comes_back_is_drawn_once() -> None:
    forms = [
        sum(
            each.get("/Subtype") == "/Form" and "/XObject" in each.get("/Resources", pikepdf.Dictionary())
            for each in objects(opened(pdf_pages(pages, "Book")))
        )
        for pages in ((SECOND,), (SECOND, SECOND, SECOND))
    ]
    assert forms == [1, 1]


# --- formulas as images: what WeasyPrint asks of them is not documented


def test_the_page_draws_each_formula_as_a_form() -> None:
    page = opened(pdf(Page("T", (DERIVATION,)))).pages[0]
    drawn = [str(operands[0]) for operands, operator in pikepdf.parse_content_stream(page) if str(operator) == "Do"]
    kinds = {str(page.Resources.XObject[name].Subtype) for name in drawn}
    assert (len(drawn), kinds) == (4, {"/Form"})


def test_every_letter_of_a_formula_is_there() -> None:
    document = opened(pdf(Page("T", (DERIVATION,))))
    form = next(each for each in objects(document) if each.get("/Subtype") == "/Form" and "/Resources" in each)
    used = {str(operands[0]) for operands, operator in pikepdf.parse_content_stream(form) if str(operator) == "Do"}
    assert used - set(form.Resources.XObject.keys()) == set()
    assert len(used) >= 5


def test_a_formula_takes_the_size_of_the_text_around_it() -> None:
    hand, _ = set_for_paper(DERIVATION)
    image = next(iter(hand.images.values()))
    wide, high, ratio = image.get_intrinsic_size(1.0, 14.0)
    assert (wide, high) == pytest.approx((image.drawn.advance * 0.14, (image.above + image.below) * 0.14))
    assert ratio == pytest.approx(wide / high)


FLAT = [
    (term(PULL, q("0.045", "m")), term(Letter("w", "W_F,upper"), sign=-1)),
    (term(q("12345.678", "N m s^-2")),),
    (term(REACH),),
]


@pytest.mark.parametrize("of", FLAT)
def test_a_formula_set_piece_by_piece_is_the_formula_set_whole(of: Terms) -> None:
    pieces = ink(mathml(of))
    whole = ziamath.Math(spaced(ElementTree.fromstring(mathml(of))), size=EM, margin=0).node
    assert pieces.advance == pytest.approx(whole.xadvance())
    assert (pieces.rise, -pieces.drop) == pytest.approx((whole.bbox.ymax, whole.bbox.ymin))


def test_a_fraction_has_the_same_space_on_both_sides() -> None:
    drawn = ink(mathml((term(Quotient((term(PULL),), (term(REACH, REACH),))),)))
    bar = next(stroke for stroke in drawn.strokes if stroke.outline == "0 0 1 1 re f")
    assert bar.x == pytest.approx(drawn.advance - bar.x - bar.wide)


def test_a_long_sum_is_broken_into_lines_without_losing_a_stroke() -> None:
    of = mathml(tuple(term(PULL, q("0.045", "m"), sign=-1) for _ in range(9)))
    whole, broken = ink(of), fitted(of, 2000.0)
    assert (broken.advance <= 2000.0 < whole.advance) is True
    assert sorted(stroke.outline for stroke in broken.strokes) == sorted(stroke.outline for stroke in whole.strokes)


def test_a_broken_sum_keeps_the_baseline_of_its_last_line() -> None:
    of = mathml(tuple(term(PULL, sign=-1) for _ in range(9)))
    assert fitted(of, 1200.0).drop == pytest.approx(ink(of).drop)


@settings(max_examples=60, deadline=None)
@given(st.text(max_size=8))
def test_a_letter_of_any_text_can_be_set(text: str) -> None:
    letter = Letter("any", text)
    hand, _ = set_for_paper(Paragraph((Maths((term(letter, Power(letter, 2)),)),)))
    assert [image.get_intrinsic_size(1.0, 14.0)[0] > 0 for image in hand.images.values()] == [True]


BIG = term(Quotient((term(PULL, q("0.045", "m")),), (term(REACH), term(q("12", "m")))))
WHOLE = {
    "fraction": BIG,
    "root": term(Root((term(Power(q("3", "N"), 2)), term(Power(JX, 2))))),
    "power": term(Power(q("188.2", "N"), 2)),
    "tall power": term(Power(Group((BIG,)), 2)),
    "root in a fraction": term(Quotient((term(Root((term(PULL),))),), (term(REACH),))),
}


@pytest.mark.parametrize("of", WHOLE.values(), ids=WHOLE)
def test_what_is_laid_out_in_parts_is_as_high_as_what_is_laid_out_whole(of: Term) -> None:
    drawn = ink(mathml((of,), True))
    box = ziamath.Math(spaced(ElementTree.fromstring(mathml((of,), True))), size=EM, margin=0).node.bbox
    assert (drawn.rise, drawn.drop) == pytest.approx((box.ymax, -box.ymin), abs=0.01)


@pytest.mark.parametrize("of", [WHOLE["root"], WHOLE["power"]], ids=["root", "power"])
def test_what_is_laid_out_in_parts_is_where_it_is_when_laid_out_whole(of: Term) -> None:
    node = ziamath.Math(spaced(ElementTree.fromstring(mathml((of,), True))), size=EM, margin=0).node
    whole, parts = (
        [(stroke.outline, round(stroke.x), round(stroke.y)) for stroke in found]
        for found in (strokes(node), ink(mathml((of,), True)).strokes)
    )
    assert sorted(parts) == sorted(whole)


@pytest.mark.parametrize("letter", ["P", "F", "T", "W", "Y", "V", "J", "d", "tau"])
@pytest.mark.parametrize("index", ["B", "F⊥", "y", "along"])
def test_a_subscript_stands_clear_of_its_letter(letter: str, index: str) -> None:
    pair = spaced(ElementTree.fromstring(mathml((term(Letter("any", f"{letter}_{index}")),))))[0]
    for each in pair.iter():
        each.tag = each.tag.rpartition("}")[2]
    assert gap(pair) >= LEAST * EM - 0.01


def test_a_space_is_as_wide_as_it_says() -> None:
    assert ink(
        '<math xmlns="http://www.w3.org/1998/Math/MathML"><mspace width="2em"/></math>'
    ).advance == pytest.approx(2 * EM, abs=0.1)


# --- figures


def figure_height(*passages: Passage) -> float:
    """In mm."""
    page = reader.fromstring(Paper(True, {}).article(Page("Title", passages)))
    return float(re.sub(r"[^\d.]", "", page.xpath("string(//figure//img/@style)")))


def filled(lines: int) -> tuple[Passage, ...]:
    return tuple(Paragraph(said("word " * 8)) for _ in range(lines))


def test_a_figure_is_drawn_as_high_as_it_is_laid_out() -> None:
    assert figure_height(PICTURE) == pytest.approx(layout(PICTURE.drawing).view.height * 25.4 / 96, abs=0.1)


def test_a_figure_that_would_just_not_fit_on_its_sheet_is_drawn_smaller() -> None:
    whole = figure_height(PICTURE)
    heights = [figure_height(*filled(count), PICTURE) for count in range(20, 34)]
    assert (heights[0], min(heights) < whole, min(heights) >= 0.54 * whole, heights[-1]) == (whole, True, True, whole)


def test_less_room_is_left_for_a_figure_the_more_stands_before_it() -> None:
    rooms = [room(Page("Title", (*filled(count), GIVEN, PICTURE))) for count in (0, 5, 10)]
    assert rooms == sorted(rooms, reverse=True) and rooms[0] - rooms[1] == pytest.approx(rooms[1] - rooms[2])


def placed(*passages: Passage) -> list[Passage]:
    return list(Paper(True, {}).placed(Page("Title", passages))[0].passages)


def test_a_figure_that_would_come_on_the_second_sheet_stands_before_the_table_of_what_is_given() -> None:
    few, many = filled(6), filled(14)
    long = replace(GIVEN, rows=GIVEN.rows * (30 // len(GIVEN.rows)))
    assert placed(*few, GIVEN, PICTURE) == [*few, GIVEN, PICTURE]
    assert placed(*many, long, *few, PICTURE) == [*many, PICTURE, long, *few]
    assert placed(*filled(40), long, PICTURE) == [*filled(40), long, PICTURE]
    assert placed(*many, PICTURE, long) == [*many, PICTURE, long]


def test_no_last_sheet_of_a_page_bears_a_few_lines_where_less_space_saves_it() -> None:
    """Pages bound together have the space of every page, and here each has a sheet more, with few lines on it."""
    page = work(Path(__file__).parent.parent / "samples" / "11-top-shelf.toml").page
    roomy, alone = (pikepdf.open(BytesIO(each)) for each in (pdf_pages((page, page), "Twice"), pdf(page)))
    assert (len(roomy.pages), len(alone.pages)) == (6, 2)


def test_a_figure_has_all_its_shapes_and_letters() -> None:
    laid = layout(PICTURE.drawing)
    form = next(each for each in objects(opened(pdf(Page("T", (PICTURE,))))) if each.get("/Subtype") == "/Form")
    painted = [str(operator) for _, operator in pikepdf.parse_content_stream(form) if str(operator) in ("f", "S", "B")]
    assert len(painted) == len(laid.shapes) + len(laid.labels)


# --- derivations


def drawn_of(row: Row) -> Ink:
    """The one formula of a row in a derivation of its own."""
    hand, _ = set_for_paper(Derivation((row,)))
    (image,) = (each for each in hand.images.values() if EQUALS in {stroke.outline for stroke in each.drawn.strokes})
    return image.drawn


def equals_signs(derivation: Derivation) -> list[float]:
    """Where the first equals sign of each row stands, from the left edge of the list, in em."""
    hand, page = set_for_paper(derivation)
    places = []
    for row in page.xpath("//ol/li"):
        label = sum(
            int(name[1:]) / 2
            for name in row.xpath("string(span[1]/@class)").split()
            if re.fullmatch(r"w\d+", name) and row[0].tag == "span"
        )
        image = hand.images[row.xpath("string(img/@src)")]
        places.append(
            round(label + min(stroke.x for stroke in image.drawn.strokes if stroke.outline == EQUALS) / EM, 6)
        )
    return places


ALIGNED = Derivation((DIVIDED, FOUND, Row((), (("=", (term(q("0.487", "kN")),)),))))
LABELLED = Derivation(tuple(replace(row, label=said("Level")) for row in (DIVIDED, Row((term(J),), FOUND.right))))


@pytest.mark.parametrize("derivation", [ALIGNED, LABELLED], ids=["notes", "labels"])
def test_rows_line_up_at_their_equals_signs(derivation: Derivation) -> None:
    places = equals_signs(derivation)
    assert places == [places[0]] * len(derivation.rows)


def test_a_row_that_says_that_a_sum_is_zero_moves_no_equals_sign() -> None:
    assert equals_signs(DERIVATION)[1:] == equals_signs(Derivation(DERIVATION.rows[1:]))


def test_a_row_that_says_that_a_sum_is_zero_begins_at_the_margin() -> None:
    hand, page = set_for_paper(DERIVATION)
    first, second = (hand.images[address].drawn for address in page.xpath("//li/img/@src")[:2])
    assert min(stroke.x for stroke in first.strokes) == pytest.approx(
        min(stroke.x for stroke in ink(mathml_row(SUM, True)).strokes)
    )


def test_notes_stand_beside_their_rows_in_one_column() -> None:
    hand, page = set_for_paper(DERIVATION)
    noted = page.xpath("//li[span[contains(@class, 'note')]]")
    ends = {hand.images[row.xpath("string(img/@src)")].drawn.advance for row in noted}
    assert (len(noted), len(ends), page.xpath("//span[contains(@class, 'under')]")) == (2, 1, [])


LONG_SUM = tuple(term(PULL, q("0.045", "m")) for _ in range(9))
NOTE = said("a note")


def test_a_long_row_is_broken_and_keeps_its_note_beside_it() -> None:
    _, page = set_for_paper(Derivation((Row((term(PULL),), (("=", LONG_SUM),), note=NOTE),)))
    assert [each.get("class").split()[-1] for each in page.xpath("//li/span")] == ["note"]
    assert page.xpath("//span[contains(@class, 'under')]") == []


def test_the_note_of_a_row_that_cannot_be_broken_stands_under_it() -> None:
    long = Row((term(PULL),), (("=", (term(Quotient(LONG_SUM[:6], (term(REACH),))),)),), note=NOTE)
    _, page = set_for_paper(Derivation((long,)))
    assert [each.text_content() for each in page.xpath("//span[contains(@class, 'under')]")] == ["a note"]


def test_a_left_side_stands_on_the_first_line_of_a_broken_right_side() -> None:
    strokes = drawn_of(Row((term(PULL),), (("=", LONG_SUM),))).strokes
    assert (
        strokes[0].y
        == next(stroke.y for stroke in strokes if stroke.outline == EQUALS)
        == min(stroke.y for stroke in strokes if stroke.outline == strokes[0].outline)
    )


def test_a_broken_right_side_goes_on_two_quads_behind_its_equals_sign() -> None:
    strokes = drawn_of(Row((term(PULL),), (("=", LONG_SUM),))).strokes
    lines = sorted({stroke.y for stroke in strokes if stroke.outline == strokes[0].outline})
    (_, begins, *_), *others = (
        [stroke.x for stroke in strokes if stroke.outline == strokes[0].outline and stroke.y == line] for line in lines
    )
    sign = ink(mathml((term(PULL), term(PULL)))).advance - 2 * ink(mathml((term(PULL),))).advance
    assert [round(each[0] - sign - begins) for each in others] == [round(2 * EM)] * len(others)


def test_a_long_left_side_goes_on_two_quads_from_the_margin_with_its_zero() -> None:
    strokes = drawn_of(Row((*LONG_SUM, term(REACH, sign=-1)), (("=", ()),), note=NOTE)).strokes
    last = max(stroke.y for stroke in strokes if stroke.outline == strokes[0].outline)
    assert next(stroke.y for stroke in strokes if stroke.outline == EQUALS) == last > strokes[0].y
    assert min(stroke.x for stroke in strokes if stroke.y > strokes[0].y + EM) >= 2 * EM


def test_all_type_of_a_derivation_has_one_size() -> None:
    """But subscripts, which are smaller."""
    hand, _ = set_for_paper(Derivation((Row((term(PULL),), (("=", LONG_SUM),), note=NOTE), SUM, DIVIDED, FOUND)))
    sizes = {
        round(stroke.wide, 6)
        for image in hand.images.values()
        for stroke in image.drawn.strokes
        if stroke.wide == -stroke.high
    }
    assert len(sizes) == 2


def test_no_row_is_wider_than_the_page() -> None:
    wide = Row(
        tuple(term(PULL, q("0.045", "m")) for _ in range(12)),
        tuple(("=", (term(q("1234.5678", "N m")),)) for _ in range(9)),
        said("A long label in many words"),
        said("and a note"),
    )
    hand, _ = set_for_paper(Derivation((wide, *DERIVATION.rows)))
    assert [image for image in hand.images.values() if image.drawn.advance / EM > 41.5] == []


def test_a_lone_number_is_text_and_a_letter_an_image() -> None:
    _, page = set_for_paper(Paragraph((Maths((term(q("9.81", "m s^-2")),)), Maths((term(PULL),)))))
    assert (page.xpath("string(//p)"), page.xpath("//p/img/@alt")) == ("9.81\u00a0m/s²", ["F sub B"])


# --- typed text


@pytest.mark.parametrize("text", HOSTILE)
def test_typed_text_never_becomes_markup(text: str) -> None:
    _, page = set_for_paper(*everywhere(text).passages)
    tags = {each.tag for each in page.iter()}
    assert (
        tags & {"script", "a", "link", "style", "iframe", "object", "embed", "base", "meta", "b", "input", "form"}
        == set()
    )
    assert [
        address
        for address in page.xpath("//@src | //@href | //@data")
        if not re.fullmatch(r"mem:[0-9a-f]{20}", address)
    ] == []
    assert {each.text_content() for each in page.xpath("//h2 | //strong | //em | //caption")} == {clean(text)}


def test_typed_text_brings_nothing_into_the_document(caplog: pytest.LogCaptureFixture) -> None:
    document = opened(pdf_pages([everywhere(text) for text in HOSTILE], HOSTILE[0]))
    assert keys_of(document) & {"/URI", "/Annots", "/EmbeddedFiles", "/AF", "/JS", "/Launch"} == set()
    assert (len(tagged(document, "/Figure")), tagged(document, "/Link")) == (len(HOSTILE), [])
    assert [record.getMessage() for record in caplog.records if record.name == "weasyprint"] == []


@pytest.mark.parametrize(
    "address",
    [
        "file:///etc/hosts",
        "http://example.invalid/",
        "https://example.invalid/",
        "data:text/plain,a",
        "ftp://example.invalid/",
        "mem:other",
        "mem:a/../b",
        "MEM:a",
        "a",
        "",
    ],
)
def test_the_shelf_refuses_all_but_its_own_names(address: str) -> None:
    with pytest.raises(ValueError, match="may not fetch"):
        Shelf({"mem:a": (b"thing", "text/plain")}).fetch(address)


def test_the_shelf_gives_what_was_put_there() -> None:
    assert Shelf({"mem:a": (b"thing", "text/plain")}).fetch("mem:a").read() == b"thing"


# --- without Pango


def test_without_pango_one_line_says_what_to_install(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    def missing(name: str) -> None:
        print("-----\nadvice at length\n-----")
        raise OSError("cannot load library 'libgobject-2.0-0'")

    monkeypatch.setattr(writer, "import_module", missing)
    with pytest.raises(
        NoPaper, match=r"^PDF needs Pango.*apt install libpango-1.0-0 libpangoft2-1.0-0 libharfbuzz-subset0$"
    ) as caught:
        pdf(WALKTHROUGH)
    assert (caught.value.exit_code, capsys.readouterr().out) == (2, "")


def test_weasyprint_is_not_loaded_before_a_pdf_is_asked_for() -> None:
    code = (
        "import sys; import explain.write.pdf.pages; print(sorted({'weasyprint', 'ziamath', 'pydyf'} & "
        "set(sys.modules)))"
    )
    run = subprocess.run(
        [sys.executable, "-c", code],
        check=True,
        capture_output=True,
        text=True,
        env={"PYTHONPATH": str(HERE.parents[1])},
    )
    assert run.stdout == "[]\n"
