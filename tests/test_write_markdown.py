"""The Markdown writer: what GitHub is given, and that typed text reads back as the same text and as nothing else."""

from __future__ import annotations

from collections.abc import Sequence

import pytest
from formulas import DIVIDED, HOSTILE, ROWS, SUMS, a, one, q
from hypothesis import given, settings
from hypothesis import strategies as st
from markdown_it import MarkdownIt
from markdown_it.token import Token

from explain.equation.terms import Terms
from explain.document.passage import (
    Answer,
    Bullets,
    Caution,
    Derivation,
    Drawing,
    Emphasis,
    Heading,
    Inline,
    Maths,
    Page,
    Paragraph,
    Passage,
    Picture,
    Prose,
    Row,
    Strong,
    Table,
    Text,
)
from explain.document.untrusted_text import one_line
from explain.write.markdown.pages import markdown
from explain.write.markdown.line import escaped, markdown_line

PICTURE = Picture(
    Drawing((0.0, 0.0), "elbow"), "Forces", "A forearm [level] with $three forces", (Text("Not to scale."),)
)
DERIVED = Derivation(tuple(Row(row.left, row.right, note=(Text("why"),)) for row in ROWS))


def body(*passages: Passage, strokes: bool = True) -> str:
    """What stands below the title."""
    return markdown(Page("T", passages), strokes).removeprefix("# T\n").removeprefix("\n").removesuffix("\n")


def read(source: str) -> list[Token]:
    return MarkdownIt("commonmark").enable(["table", "strikethrough"]).parse(source)


def inline(source: str) -> list[Token]:
    """The innermost tokens of a Markdown text."""
    return [child for token in read(source) for child in token.children or ()]


def said(source: str) -> str:
    """The text a reader sees, tags left out, ends of lines as spaces."""
    return words(inline(source))


def words(tokens: Sequence[Token]) -> str:
    return "".join(
        " " if token.type == "softbreak" else token.content for token in tokens if token.type != "html_inline"
    )


def kinds(source: str) -> set[str]:
    return {token.type for token in read(source)} | {token.type for token in inline(source)}


# --- typed text

MARKS = st.text(alphabet="*_`[]()<>&|~#!$@:/\\-+=.1 \n\twxa\"'", max_size=30)
TYPED = st.one_of(st.text(max_size=30), MARKS, st.sampled_from(HOSTILE))
PLAIN_KINDS = {"paragraph_open", "paragraph_close", "inline", "text", "text_special", "html_inline"}
MARKED_KINDS = PLAIN_KINDS | {"strong_open", "strong_close", "em_open", "em_close", "code_inline"}


def once(text: str) -> str:
    """Text as a line shows it: clean, no space at its ends."""
    return one_line(text).strip()


@settings(max_examples=400, deadline=None)
@given(TYPED)
def test_any_typed_text_reads_back_as_the_same_text_and_nothing_else(text: str) -> None:
    source = body(Paragraph((Text("x"),)), Paragraph((Text(text),)), Paragraph((Text("y"),)))
    assert "x" + once(text) + "y" == said(source)
    assert PLAIN_KINDS >= kinds(source)


@settings(max_examples=500, deadline=None)
@given(TYPED, TYPED)
def test_any_text_in_a_table_reads_back_cell_by_cell(first: str, second: str) -> None:
    source = body(Table("", ((Text("h"),), (Text(first),)), (((Text(second),), (Text("z"),)),)))
    cells = [words(token.children or ()) for token in read(source) if token.type == "inline"]
    assert ["h", once(first), once(second), "z"] == cells


@settings(max_examples=300, deadline=None)
@given(TYPED)
def test_any_text_reads_back_from_headings_bullets_answers_and_titles(text: str) -> None:
    source = markdown(Page(text, (Heading(2, (Text(text),)), Bullets(((Text(text),),)), Answer((Text(text),)))))
    assert once(text) * 4 == said(source)


PIECES: st.SearchStrategy[Inline] = st.one_of(TYPED.map(Text), TYPED.map(Strong), TYPED.map(Emphasis))


@settings(max_examples=300, deadline=None)
@given(st.lists(PIECES, max_size=4))
def test_any_mixture_of_plain_and_marked_text_reads_back(pieces: list[Inline]) -> None:
    source = body(Paragraph(tuple(pieces)))
    expected = "".join(one_line(piece.text) for piece in pieces if not isinstance(piece, Maths)).strip()
    assert expected == said(source)
    assert MARKED_KINDS >= kinds(source)


@pytest.mark.parametrize(
    ("line", "expected"),
    [
        ((Strong("W"), Text(" and "), Emphasis("F")), "**W** and *F*"),
        ((Strong(" spaced "), Text("x")), "**spaced** x"),
        ((Text("a"), Strong("(b)"), Text("c")), "a<strong>(b)</strong>c"),
        ((Strong("a"), Emphasis("b")), "<strong>a</strong>*b*"),
        ((Text("take "), Maths(one(q("5", "m"))), Text("on")), r"take $`5\,\mathrm{m}`$ on"),
        ((Maths(one(q("5"))), Maths(one(q("6")))), "$`5`$ $`6`$"),
        ((Text("(see "), Maths(one(q("5"))), Text(")")), "(see $`5`$)"),
        ((Text("1. a"),), r"1\. a"),
        ((Text("- a"),), r"\- a"),
        ((Text("3.5 kg, (a) - b > c!"),), "3.5 kg, (a) - b > c!"),
    ],
)
def test_a_line_stays_pleasant_to_read(line: tuple[Inline, ...], expected: str) -> None:
    assert expected == markdown_line(line)


def test_addresses_and_dollars_are_kept_from_github() -> None:
    assert r"http\://x, www\.y, a<span>\@</span>b, <span>\$</span>5" == escaped("http://x, www.y, a@b, $5")


# --- passages


def test_the_title_heads_the_page_unless_a_heading_does() -> None:
    heading = Heading(1, (Text("Rock"),))
    assert ("# Rock\n", "# Rock\n\nx\n") == (
        markdown(Page("Other", (heading,))),
        markdown(Page("Rock", (Paragraph((Text("x"),)),))),
    )


def test_a_bare_derivation_is_a_display_aligned_at_the_relations() -> None:
    assert (
        "```math\n\\begin{aligned}\n"
        "F_{\\mathrm{B}} &= \\frac{23.269\\,\\mathrm{N{\\cdot}m}}{0.042286\\,\\mathrm{m}} \\\\\n"
        " &= 550\\,\\mathrm{N}\n\\end{aligned}\n```"
    ) == body(
        Derivation((Row(one(a("F_B")), (("=", one(DIVIDED)),)), Row((), (("=", one(q("550", "N"))),)))), strokes=False
    )


def test_one_bare_row_is_a_display_of_its_own() -> None:
    assert "```math\nF = 0\n```" == body(Derivation((Row(one(a("F")), (("=", ()),)),)))


def test_a_derivation_with_notes_has_them_beside_the_formulas() -> None:
    lines = body(DERIVED, strokes=False).splitlines()
    assert (
        "|  |  |  |",
        "| --: | :-- | :-- |",
        r"| $`F_{\mathrm{B}}`$ | $`\displaystyle {} = \frac{23.269\,\mathrm{N{\cdot}m}}{0.042286\,\mathrm{m}}`$ | "
        r"why |",
        r"|  | $`{} = 550.28\,\mathrm{N} \approx 550\,\mathrm{N}`$ | why |",
    ) == (*lines[:2], *lines[3:])


def test_a_label_stands_before_its_row() -> None:
    row = Row(one(a("F")), (("=", ()),), label=(Text("level:"),))
    assert "| level: | $`F`$ | $`{} = 0`$ |" == body(Derivation((row,))).splitlines()[-1]


def test_strokes_can_be_left_out() -> None:
    assert (True, False) == tuple(r"\cancel" in body(DERIVED, strokes=strokes) for strokes in (True, False))


@settings(max_examples=60, deadline=None)
@given(SUMS, TYPED)
def test_any_formula_in_a_table_stays_in_its_cell(of: Terms, text: str) -> None:
    table = Table("c", ((Text("a"),), (Text("b"),)), (((Maths(of),), (Maths(one(a(text))),)),))
    source = body(table)
    formulas = [token.content for token in inline(source) if token.type == "code_inline"]
    assert (1, 2, 2) == (source.count("\n| $`"), len(formulas), sum(token.type == "td_open" for token in read(source)))


@settings(max_examples=200, deadline=None)
@given(TYPED)
def test_no_letter_ends_a_display(text: str) -> None:
    source = body(Derivation((Row(one(a(text)), (("=", ()),)), Row((), (("=", one(a(text))),)))))
    assert ["fence"] == [token.type for token in read(source)]


def test_a_table_names_its_caption_and_sets_numbers_right() -> None:
    rows = (((Maths(one(a("d"))),), (Text("3 | 4"),)), ((Text("e"),),))
    table = Table("Given", ((Text("letter"),), (Text("value"),)), rows, frozenset({1}))
    assert ("**Given**\n\n| letter | value |\n| :-- | --: |\n| $`d`$ | 3 \\| 4 |\n| e |  |") == body(table)


def test_an_answer_is_set_off_and_strong_and_its_formula_stays_one() -> None:
    answer = Answer((Text("The pull is "), Maths(one(q("5", "N"))), Text(".")))
    assert "> **The pull is** $`5\\,\\mathrm{N}`$." == body(answer)


def test_a_caution_is_emphasised() -> None:
    assert "*A teaching model: not for treatment.*" == body(Caution((Text("A teaching model: not for treatment."),)))


def test_a_picture_without_an_address_is_its_description() -> None:
    assert "*A forearm \\[level\\] with <span>\\$</span>three forces*\n\nNot to scale." == body(PICTURE)


def test_a_picture_with_an_address_carries_its_description_as_alternative_text() -> None:
    source = markdown(Page("T", (PICTURE,)), figure=lambda picture: f"fig/{picture.title} (1).svg")
    (image,) = (token for token in inline(source) if token.type == "image")
    text = "".join(child.content for child in image.children or () if child.type != "html_inline")
    assert ("fig/Forces%20%281%29.svg", "A forearm [level] with $three forces") == (image.attrs["src"], text)


@settings(max_examples=500, deadline=None)
@given(TYPED)
def test_no_authors_markdown_puts_an_image_a_link_or_html_on_the_page(source: str) -> None:
    written = body(Prose(source))
    tags = {token.content for token in inline(written) if token.type == "html_inline"}
    assert set() == kinds(written) & {"image", "link_open", "html_block"}
    assert {"<span>", "</span>", "<strong>", "</strong>", "<em>", "</em>"} >= tags


def test_a_whole_page_ends_in_one_line_end_and_keeps_its_order() -> None:
    formula = Paragraph((Maths(one(a("F"))),))
    page = Page("Rock", (Prose("How hard?"), Heading(2, (Text("Work"),)), formula, Caution((Text("x"),))))
    assert "# Rock\n\nHow hard?\n\n## Work\n\n$`F`$\n\n*x*\n" == markdown(page)
