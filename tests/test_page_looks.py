"""How a page behaves in a window and on paper, from its stylesheets and its markup: widths, what scrolls, contrast,
what is not parted at a line's end, the last sheet.

The ratios of contrast are those of the Web Content Accessibility Guidelines 2.2, success criteria 1.4.3 (text, 4.5 to
1) and 1.4.11 (what is not text, 3 to 1); scrolling by keyboard and names are 2.1.1 and 4.1.2.
"""

from __future__ import annotations

import re
from importlib.resources import files
from io import BytesIO

import pikepdf
import pytest
from lxml import html as reader
from pages import DERIVATION, PICTURE, m, said

from explain.document.untrusted_text import clean
from explain.document.passage import Page, Paragraph, Passage, Prose, Strong, Table, Text
from explain.equation.terms import Letter, term
from explain.write.figure.arms import ARM
from explain.write.figure.body import THIN
from explain.write.figure.forces import LOOKS, PAPER
from explain.write.html.pages import html
from explain.write.markdown.pages import markdown
from explain.write.pdf.derivation_columns import MEASURE
from explain.write.pdf.paper_markup import Paper
from explain.write.pdf.pages import pdf

SCREEN = (files("explain.write.html") / "screen.css").read_text(encoding="utf-8")
BOOK = (files("explain.write.html") / "book-screen.css").read_text(encoding="utf-8")
SHEET = (files("explain.write.pdf") / "paper.css").read_text(encoding="utf-8")


def part(*passages: Passage) -> reader.HtmlElement:
    return reader.fromstring(html(Page("Title", passages)))


def rules(style: str, selector: str) -> list[str]:
    """What a stylesheet declares for a selector, wherever it does."""
    found = re.findall(rf"(?:^|[}}\n])\s*{re.escape(selector)} \{{([^}}]*)\}}", re.sub(r"/\*.*?\*/", "", style))
    return [re.sub(r"\s+", " ", each).strip() for each in found]


# ---------------------------------------------------------------------- in a window
def test_text_tables_and_derivations_have_one_width_in_the_middle_of_the_window() -> None:
    assert [
        "max-width: calc(var(--measure) + 2 * var(--edge)); margin: 0 auto" in each
        for each in rules(SCREEN, "main, nav")
    ] == [True, False]
    for selector in ("p, ul, nav ol", ".scroll, .wide", "figure", "table"):
        assert any("max-width: var(--measure)" in each for each in rules(SCREEN, selector)), selector


def test_the_cover_of_a_book_is_as_wide_as_its_pages() -> None:
    (cover,) = rules(BOOK, ".cover")
    assert "max-width: calc(var(--measure) + 2 * var(--edge)); margin: 0 auto" in cover


def test_on_a_wide_screen_a_lone_figure_stays_beside_the_lines() -> None:
    (wide,) = re.findall(r"@media screen and \(min-width: 76rem\) \{(.*?)\n\}", SCREEN, re.DOTALL)
    assert "grid-template-columns: var(--measure) minmax(0, 1fr)" in wide
    (figure,) = re.findall(r"> figure \{([^}]*)\}", wide)
    assert [word in figure for word in ("grid-column: 2", "position: sticky")] == [True, True]
    assert ":not(:has(> figure ~ figure))" in wide  # several figures keep their places


def test_a_figure_is_never_wider_than_the_window_and_does_not_scroll() -> None:
    (svg,) = rules(SCREEN, ".sheet svg")
    assert ("max-width: 100%" in svg, "overflow" in "".join(rules(SCREEN, ".sheet"))) == (True, False)
    assert part(PICTURE).xpath("//figure//*[@tabindex]") == []


def test_all_that_scrolls_can_be_reached_by_keyboard_and_has_a_name() -> None:
    scrolling = re.findall(r"([^\n{}]*) \{[^{}]*overflow: auto hidden", SCREEN)
    assert scrolling == [".scroll, .wide"]
    page = part(DERIVATION, Table("Given", (said("a"), said("b")), ((said("c"), said("d")),)))
    found = page.xpath("//*[contains(@class, 'scroll') or contains(@class, 'wide')]")
    assert [(each.get("tabindex"), each.get("role"), each.get("aria-label")) for each in found] == [
        ("0", "group", "Lines of working"),
        ("0", "group", "Given"),
    ]


def test_a_row_head_that_is_a_formula_is_told_in_words_and_another_is_not() -> None:
    force = (term(Letter("biceps.force", "F_B")),)
    table = Table("Given", (said("letter"), said("meaning")), (((m(force),), said("pull")), (said("plain"), said("x"))))
    heads = part(table).xpath("//th[@scope='row']")
    assert [each.xpath("string(span[@class='heard'])") for each in heads] == ["F sub B", ""]
    assert [bool(each.xpath("span[@aria-hidden]//*[local-name()='math']")) for each in heads] == [True, False]
    (heard,) = rules(SCREEN, ".heard")
    assert ("position: absolute" in heard, "display: none" in heard) == (True, False)  # unseen, not unheard


def _channel(value: int) -> float:
    share = value / 255
    return share / 12.92 if share <= 0.04045 else ((share + 0.055) / 1.055) ** 2.4


def contrast(one: str, other: str) -> float:
    """The ratio of the relative luminances of two colours (WCAG 2.2, definition of contrast ratio)."""
    shades = []
    for colour in (one, other):
        red, green, blue = (_channel(int(colour[place : place + 2], 16)) for place in (1, 3, 5))
        shades.append(0.2126 * red + 0.7152 * green + 0.0722 * blue + 0.05)
    return max(shades) / min(shades)


def test_contrast_is_reckoned_as_the_guidelines_do() -> None:
    assert (round(contrast("#000000", "#ffffff"), 2), round(contrast("#777777", "#ffffff"), 2)) == (21.0, 4.48)


@pytest.mark.parametrize("scheme", [0, 1], ids=["light", "dark"])
def test_text_can_be_read_in_light_and_in_dark(scheme: int) -> None:
    colours = [dict(re.findall(r"--([a-z]+): (#[0-9a-f]{6})", each)) for each in rules(SCREEN, ":root")][scheme]
    pairs = [(ink, ground) for ink in ("ink", "quiet") for ground in ("ground", "box")]
    assert [round(contrast(colours[ink], colours[ground]), 1) >= 4.5 for ink, ground in pairs] == [True] * 4


@pytest.mark.parametrize("ground", [PAPER, *re.findall(r"--sheet: (#[0-9a-f]{6})", SCREEN)])
def test_letters_and_lines_of_a_figure_can_be_seen_on_every_sheet(ground: str) -> None:
    letters = [look.ink for look in LOOKS.values()] + [ARM.ink]
    assert [ink for ink in letters if contrast(ink, ground) < 4.5] == []
    assert contrast(THIN.ink, ground) >= 3.0


# ---------------------------------------------------------------------- at a line's end
def test_a_number_is_not_parted_from_its_unit_nor_a_question_from_its_letter() -> None:
    typed = "Holds 6 kg, 4.5 cm off, 2.2 % of 82 kg; 3 knots. (a) Find (b) it at 10 N·m and 9.81 m/s², 3 N/cm²."
    page = part(Paragraph((Text(typed),)))
    assert [each.text for each in page.xpath("//span[@class='kept']")] == [
        "6 kg",
        "4.5 cm",
        "2.2 %",
        "82 kg",
        "(a) Find",
        "(b) it",
        "10 N·m",
        "9.81 m/s²",
        "3 N/cm²",
    ]
    assert [rules(style, ".kept") for style in (SCREEN, SHEET)] == [["white-space: nowrap"]] * 2


def test_a_mark_is_not_parted_from_the_formula_before_it() -> None:
    pull = m((term(Letter("F", "F")),))
    page = part(Paragraph((*said("Find "), pull, *said("; then "), pull, *said(" is known: "), pull)))
    assert [each.text_content()[-1] for each in page.xpath("//main//span[@class='kept']")] == [";"]
    assert page.xpath("//main//p")[0].text_content().count("; then") == 1


@pytest.mark.parametrize("text", ["6 kg<script>", "(a) <b>", '1 m&amp; 2 N"', "5 N\u202e", "(a) (b) (c) 3 cm."])
def test_what_is_kept_together_is_text_all_the_same(text: str) -> None:
    (paragraph,) = part(Paragraph((Text(text), Strong(text)))).xpath("//main//p")
    assert paragraph.text_content() == clean(text) * 2
    assert {each.tag for each in paragraph.iter()} == {"p", "strong", "span"}


def test_questions_on_lines_of_their_own_are_paragraphs_in_every_format() -> None:
    asked = Page("Title", (Prose("Marek holds it.\n(a) Find the pull.\n(b) Find the push."),))
    words = ["Marek holds it.", "(a) Find the pull.", "(b) Find the push."]
    assert [each.text_content() for each in reader.fromstring(html(asked)).xpath("//main//p")] == words
    assert markdown(asked).split("\n\n")[1:] == [*words[:-1], words[-1] + "\n"]
    hand = Paper(True, {})
    assert [each.text_content() for each in reader.fromstring(hand.article(asked)).xpath("//p")] == words


# ---------------------------------------------------------------------- on paper
def test_text_and_derivations_have_one_width_on_paper() -> None:
    """A4 is 210 mm wide (ISO 216); an em of the text is 11 points of 1/72 inch."""
    (margins,) = re.findall(r"size: A4;\s*margin: \d+mm (\d+)mm", SHEET)
    (size,) = re.findall(r"font: (\d+)pt/", SHEET)
    wide = (210 - 2 * int(margins)) / 25.4 * 72 / int(size)
    assert 0.0 <= wide - 1.0 - MEASURE < 0.05  # the derivation begins one em in
    assert "max-width" not in "".join(rules(SHEET, "p") + rules(SHEET, "figure") + rules(SHEET, "ul"))


def sheets(content: bytes) -> int:
    with pikepdf.open(BytesIO(content)) as document:
        return len(document.pages)


def test_a_few_lines_on_a_last_sheet_are_saved_by_a_little_less_space() -> None:
    from explain.write.pdf.weasy import printed

    def page(count: int) -> Page:
        return Page("Title", tuple(Paragraph((Text(f"Paragraph {n}."),)) for n in range(count)))

    def plainly(count: int) -> int:
        hand = Paper(True, {})
        return sheets(
            printed(
                f"<html lang='en'><head><title>T</title></head><body>{hand.article(page(count))}</body></html>", hand
            )
        )

    over = next(count for count in range(20, 60) if plainly(count) == 2)
    assert (sheets(pdf(page(over))), sheets(pdf(page(over + 1))), sheets(pdf(page(2 * over - 8)))) == (1, 1, 2)
