"""The HTML writer: one file that stands alone, says what everything is, and in which typed text is text."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from lxml import html as reader
from pages import DERIVATION, HOSTILE, JOINT, PICTURE, SECOND, SINE, WALKTHROUGH, everywhere, m, q, said

from explain.equation.terms import term
from explain.document.passage import Bullets, Derivation, Heading, Page, Paragraph, Passage, Row, Text
from explain.document.untrusted_text import clean
from explain.write.html.pages import html, html_pages

PLAIN = {
    "html",
    "head",
    "meta",
    "title",
    "style",
    "body",
    "main",
    "article",
    "h1",
    "h2",
    "p",
    "strong",
    "em",
    "ul",
    "ol",
    "li",
    "table",
    "caption",
    "thead",
    "tbody",
    "tr",
    "th",
    "td",
    "div",
    "span",
    "wbr",
    "figure",
    "figcaption",
    "math",
    "mi",
    "mo",
    "mn",
    "mtext",
    "mspace",
    "msub",
    "msup",
    "msubsup",
    "mfrac",
    "msqrt",
    "mrow",
    "menclose",
    "svg",
    "desc",
    "rect",
    "g",
    "path",
    "line",
    "circle",
}


def read(document: str) -> Any:
    return reader.document_fromstring(document)


def part(*passages: Passage) -> Any:
    return read(html(Page("Title", passages)))


def words(elements: Sequence[Any]) -> list[str]:
    return [element.text_content() for element in elements]


PAGE = read(html(WALKTHROUGH))


def test_a_page_refers_to_nothing() -> None:
    assert PAGE.xpath("//@src | //@href | //@*[name()='xlink:href'] | //script | //link | //img | //@onload") == []


def test_a_figure_stands_in_a_frame_of_the_page() -> None:
    assert [each.getparent().get("class") for each in PAGE.xpath("//figure//*[name()='svg']")] == ["sheet"]


def test_the_policy_forbids_everything_but_inline_style() -> None:
    assert PAGE.xpath("//meta[@http-equiv='Content-Security-Policy']/@content") == [
        "default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'"
    ]


def test_the_stylesheet_fetches_nothing() -> None:
    style = PAGE.xpath("string(//style)")
    assert [word for word in ("url(", "@import", "http") if word in style] == []


def test_a_page_says_its_language_and_title() -> None:
    assert (PAGE.get("lang"), PAGE.xpath("string(//title)")) == ("en", "A rock on the palm")


def test_the_title_heads_the_page_and_its_parts_follow_in_order() -> None:
    assert [(each.tag, each.text_content()) for each in PAGE.xpath("//main//*[self::h1 or self::h2]")] == [
        ("h1", "A rock on the palm"),
        ("h2", "1 Numbers in"),
        ("h2", "2 The joint"),
    ]


def test_a_page_that_begins_with_its_own_title_gets_no_second_one() -> None:
    assert words(part(Heading(1, said("Mine"))).xpath("//h1")) == ["Mine"]


def test_a_table_has_a_caption_and_its_headers_say_what_they_head() -> None:
    scopes = [(each.text_content(), each.get("scope")) for each in PAGE.xpath("//table//th")]
    assert words(PAGE.xpath("//table/caption")) == ["Given"]
    heads = [("letter", "col"), ("meaning", "col"), ("value", "col")]
    assert scopes == [*heads, ("d sub BdB", "row"), ("d sub RdR", "row")]


def test_a_figure_has_title_description_and_caption() -> None:
    (figure,) = PAGE.xpath("//figure")
    assert [figure.xpath(f"string(.//{tag})") for tag in ("title", "desc", "figcaption")] == [
        "Free-body diagram",
        PICTURE.description,
        "The forearm.",
    ]


def test_every_row_of_a_derivation_is_an_item_with_its_note() -> None:
    rows = part(DERIVATION).xpath("//ol[contains(@class, 'derivation')]/li")
    assert [words(row.xpath(".//div[@class='note']")) for row in rows] == [
        [],
        ["divide by what stands beside FB"],
        ["newtons are left"],
    ]


def test_a_short_sum_is_one_formula() -> None:
    assert words(part(JOINT).xpath("(//div[@class='across'])[1]//math")) == ["Jx−FBcos70°=0"]


def test_relations_begin_the_right_hand_cells() -> None:
    links = part(DERIVATION).xpath("//div[@class='rest']/span/math/*[1]")
    assert [(each.tag, each.text) for each in links] == [("mo", "="), ("mo", "="), ("mo", "≈")]


def test_a_long_sum_is_one_formula_for_each_term_so_that_its_line_can_break() -> None:
    assert words(part(DERIVATION).xpath("(//div[@class='across'])[1]//math")) == [
        "FB(0.045m)sin70°",
        "−(58.86N)(0.35m)=0",
    ]


def test_a_row_that_says_that_a_sum_is_zero_is_not_aligned_and_all_others_are() -> None:
    cells = part(DERIVATION).xpath("//ol/li/div[1]/@class")
    assert cells == ["across", "left", "left"]


def test_a_row_with_a_long_left_side_is_broken_before_its_relation_too() -> None:
    wide = Row(DERIVATION.rows[0].left, (("=", (term(q("1", "N m")),)),))
    assert words(part(Derivation((wide,))).xpath("//div[@class='across']//math")) == [
        "FB(0.045m)sin70°",
        "−(58.86N)(0.35m)",
        "=1N·m",
    ]


def test_a_row_without_a_left_side_continues_the_row_above() -> None:
    assert words(part(JOINT).xpath("//div[@class='left']")) == ["J", ""]


def test_a_label_stands_before_its_row() -> None:
    assert words(part(JOINT).xpath("//li/div[1][@class='label']")) == ["Level"]


def test_a_lone_number_is_text_that_does_not_break() -> None:
    assert words(part(Paragraph((m((term(q("441.6", "N"), sign=-1),)),))).xpath("//p")) == ["−441.6\u00a0N"]


def test_units_that_cancel_are_struck_out_unless_told_otherwise() -> None:
    struck = [
        len(read(html(WALKTHROUGH, strokes=strokes)).xpath("//menclose[@class='cancel']")) for strokes in (True, False)
    ]
    assert struck == [2, 0]


def test_a_formula_in_a_sentence_is_mathml() -> None:
    assert words(part(Paragraph((m((term(SINE),)),))).xpath("//p/math[@display='inline']")) == ["sin70°"]


@pytest.mark.parametrize("text", HOSTILE)
def test_typed_text_never_becomes_markup(text: str) -> None:
    page = read(html(everywhere(text)))
    assert {each.tag for each in page.iter() if isinstance(each.tag, str)} - PLAIN == set()
    assert {
        name for each in page.iter() for name in each.attrib if name.startswith("on") or name in ("href", "src")
    } == set()


@pytest.mark.parametrize("text", HOSTILE)
def test_typed_text_reads_back_as_it_was(text: str) -> None:
    page = read(html(everywhere(text)))
    assert words(page.xpath("//h2 | //strong | //em | //ul/li | //caption")) == [clean(text)] * 6
    assert page.xpath("string(//title)") == clean(text)


@settings(max_examples=60, deadline=None)
@given(st.text(max_size=40))
def test_any_text_reads_back(text: str) -> None:
    assert words(part(Bullets(((Text(text),),))).xpath("//ul/li")) == [clean(text)]


def test_several_pages_are_articles_in_their_own_language_with_a_list_in_front() -> None:
    book = read(html_pages((WALKTHROUGH, SECOND), "Two problems"))
    assert [(each.get("id"), each.get("lang")) for each in book.xpath("//main/article")] == [
        ("page-1", None),
        ("page-2", "fr"),
    ]
    assert [(each.get("href"), each.text) for each in book.xpath("//nav//a")] == [
        ("#page-1", "A rock on the palm"),
        ("#page-2", "Un seau d’eau"),
    ]


def test_identifiers_of_figures_are_their_own() -> None:
    found = read(html_pages((WALKTHROUGH, SECOND, WALKTHROUGH), "Three")).xpath("//@id")
    assert len(found) == len(set(found))


def test_no_pages_are_a_document_too() -> None:
    assert words(read(html_pages((), "Empty")).xpath("//title | //main")) == ["Empty", "\n"]


def test_an_empty_derivation_is_an_empty_list() -> None:
    assert part(Derivation(())).xpath("//ol/li") == []


def test_the_same_page_is_the_same_file() -> None:
    assert html(WALKTHROUGH) == html(WALKTHROUGH)
