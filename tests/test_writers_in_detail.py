"""What the writers do at the edges: where a derivation is broken, which typed characters mean something to LaTeX and
Markdown, what is kept on one line in HTML.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

import pytest
from formulas import DIVIDED, PULL, a, one, q

from explain.document.passage import (
    Answer,
    Axis,
    Blanks,
    Bullets,
    Caution,
    Curve,
    Derivation,
    Drawing,
    Emphasis,
    Heading,
    Inline,
    Judged,
    JudgedLine,
    Line,
    Maths,
    Page,
    Paragraph,
    Passage,
    Picture,
    Plot,
    Prose,
    Reference,
    Row,
    Space,
    Strong,
    Table,
    Text,
)
from explain.equation.terms import Equation, Terms, term
from explain.write.html.elements import kept, line, lone_number
from explain.write.html.pages import Screen, html, html_pages, passages_html
from explain.write.latex.characters import escaped as latex_escaped
from explain.write.latex.characters import formula
from explain.write.latex.pages import latex_pages
from explain.write.markdown.line import escaped, markdown_line
from explain.write.markdown.pages import markdown, passages_markdown
from explain.write.text.pages import line_text, text


def says(words: str) -> Line:
    return (Text(words),)


def body(*passages: Passage, width: int = 80) -> str:
    """Text below the title."""
    return text(Page("T", passages), width).partition("\n=\n\n")[2]


LONG = tuple(term(PULL, q("0.045", "m")) for _ in range(4))
FIRST = Row(one(PULL, q("0.042", "m"), q("3", "N")), (("=", one(q("23.269", "N m"))),))
SECOND = Row(one(PULL), (("=", one(DIVIDED)),))
ALIGNED = """\
    F_B (0.042 m)(3 N) = 23.269 N·m
                   F_B = 23.269 N·m / 0.042286 m
"""
AT_MARGIN = """\
    F_B (0.042 m)(3 N) = 23.269 N·m
    F_B = 23.269 N·m / 0.042286 m
"""
BROKEN = """\
    F_B (0.042 m)(3 N)
        = 23.269 N·m
    F_B = 23.269 N·m / 0.042286 m
"""


# ---------------------------------------------------------------------- text
@pytest.mark.parametrize(
    ("width", "expected"),
    [(80, ALIGNED), (48, ALIGNED), (47, AT_MARGIN), (35, AT_MARGIN), (34, BROKEN), (33, BROKEN)],
)
def test_relations_stand_under_each_other_as_long_as_every_side_fits(width: int, expected: str) -> None:
    assert expected == body(Derivation((FIRST, SECOND)), width=width)


LABELLED = tuple(
    Row(each.left, each.right, says(label), says("because the arms are level"))
    for each, label in ((FIRST, "a long label here"), (SECOND, "lab"))
)


@pytest.mark.parametrize(
    ("width", "expected"),
    [
        (
            100,
            """\
    a long label here  F_B (0.042 m)(3 N) = 23.269 N·m                because the arms are level
    lab                               F_B = 23.269 N·m / 0.042286 m   because the arms are level
""",
        ),
        (
            80,
            """\
    a long label here  F_B (0.042 m)(3 N) = 23.269 N·m
                           because the arms are level
    lab                F_B = 23.269 N·m / 0.042286 m   because the arms are
                                                       level
""",
        ),
        (
            56,
            """\
    F_B (0.042 m)(3 N) = 23.269 N·m
        a long label here because the arms are level
                   F_B = 23.269 N·m / 0.042286 m
        lab because the arms are level
""",
        ),
        (
            57,
            """\
    a long label here  F_B (0.042 m)(3 N) = 23.269 N·m
                           because the arms are level
    lab                F_B = 23.269 N·m / 0.042286 m
                           because the arms are level
""",
        ),
    ],
)
def test_labels_and_notes_stand_beside_where_there_is_room(width: int, expected: str) -> None:
    assert expected == body(Derivation(LABELLED), width=width)


@pytest.mark.parametrize(
    ("row", "width", "expected"),
    [
        (
            Row(one(PULL), (("=", LONG),), (), says("note")),
            60,
            """\
    F_B = F_B (0.045 m) + F_B (0.045 m) + F_B (0.045 m)
        + F_B (0.045 m)
        note
""",
        ),
        (
            Row(LONG, (("=", ()),), says("E"), says("a note")),
            60,
            """\
    E  F_B (0.045 m) + F_B (0.045 m) + F_B (0.045 m)
           + F_B (0.045 m) = 0
           a note
""",
        ),
        (
            Row(one(PULL), (("=", LONG), ("≈", one(q("5", "N"))))),
            40,
            """\
    F_B = F_B (0.045 m) + F_B (0.045 m)
        + F_B (0.045 m) + F_B (0.045 m)
        ≈ 5 N
""",
        ),
        (Row((), (("=", one(q("5", "N"))),)), 40, "    0 = 5 N\n"),
        (
            Row(one(PULL), (("=", one(q("5", "N"))),), (), says("a note of many words that goes on")),
            40,
            "    F_B = 5 N   a note of many words\n                that goes on\n",
        ),
        (
            Row(one(PULL), (("=", one(q("5", "N"))),), (), says("a note of many words that goes on")),
            39,
            "    F_B = 5 N\n        a note of many words that goes\n        on\n",
        ),
    ],
)
def test_a_wide_row_is_broken_before_its_signs(row: Row, width: int, expected: str) -> None:
    assert expected == body(Derivation((row,)), width=width)


def test_notes_stand_beneath_where_few_of_them_fit_beside() -> None:
    few = Row(one(PULL), (("=", one(q("5", "N"))),), (), says("halve"))
    wide = Row(one(PULL), (("=", LONG),), (), says("divide"))
    assert """\
    F_B = 5 N
        halve
    F_B = F_B (0.045 m) + F_B (0.045 m) + F_B (0.045 m)
        + F_B (0.045 m)
        divide
    F_B = F_B (0.045 m) + F_B (0.045 m) + F_B (0.045 m)
        + F_B (0.045 m)
        divide
""" == body(Derivation((few, wide, wide)), width=60)
    assert body(Derivation((few, wide)), width=60).startswith("    F_B = 5 N   halve\n    F_B = F_B")


def test_a_line_keeps_short_formulas_whole_and_long_ones_at_their_signs() -> None:
    short, long = one(q("1.3456789012", "N m")), (*one(PULL, q("3", "N")), *one(PULL, q("4", "N")))
    assert ("1.3456789012\u00a0N·m", "F_B\u00a0(3\u00a0N)\u00a0+\u00a0F_B\u00a0(4\u00a0N)") == (
        line_text((Maths(short),)),
        line_text((Maths(long),)),
    )
    longer = (*long, *one(PULL, q("5", "N")))
    assert "F_B\u00a0(3\u00a0N) +\u00a0F_B\u00a0(4\u00a0N) +\u00a0F_B\u00a0(5\u00a0N)" == line_text((Maths(longer),))
    assert "a b" == line_text(says("a\nb"))


def test_blanks_bullets_and_boxes_are_wrapped_to_the_width() -> None:
    words = says("the pull of the biceps comes out positive")
    rule = "_" * 20
    assert f"the pull of the\nbiceps comes out\npositive\n\n    {rule}\n\n" in body(Blanks((words,)), width=24) + "\n"
    assert "- the pull of the biceps\n  comes out positive\n" == body(Bullets((words,)), width=24)
    assert "" == body(Table("T", (), ()), width=24)


FITS, OVER = "aaaaaaaaaaaaaaaaaa bbbbbbbbbbbbbbbbbbb", "aaaaaaaaaaaaaaaaaa bbbbbbbbbbbbbbbbbbbb"  # 38 and 39 columns


@pytest.mark.parametrize("words", [FITS, OVER])
def test_lines_fill_the_width_to_the_last_column(words: str) -> None:
    noted = Row(one(a("x" * 12)), (("=", one(q("5", "N"))),), (), says(words))
    told = [
        body(Paragraph(says(words)), width=38),
        body(Blanks((says(words),)), width=42),
        body(Answer(says(words)), width=42),
        body(Bullets((says(words),)), width=40),
        body(Caution(says(words)), width=40),
        body(Derivation((noted,)), width=46),
        body(Picture(Drawing((0.0, 0.0), "e"), "t", "d", says(words)), width=38),
        body(Space("Yours", 9, (says(words),)), width=42),
        body(Space(words, 9), width=38),
        body(Table(words, (says("h"),), ((says("x"),),)), width=38),
        body(Judged(words, ()), width=38),
    ]
    assert [words == FITS] * len(told) == [words in each for each in told], told
    described = body(Picture(Drawing((0.0, 0.0), "e"), *words.split()), width=41)
    assert (words == FITS) is (f"[{words.replace(' ', ': ')}]" in described)


@pytest.mark.parametrize(("letters", "space"), [(20, "\u00a0"), (21, " ")])
def test_a_formula_of_up_to_twenty_four_columns_is_not_broken(letters: int, space: str) -> None:
    told = line_text((Maths(Equation(one(a("x" * letters)), one(a("y")))),))
    assert f"{'x' * letters}{space}=\u00a0y" == told


def test_a_plot_is_told_as_a_table_unless_the_page_has_one() -> None:
    plot = Plot("lines", "Pull", "It rises.", Axis("x"), Axis("y"), (Curve("c", ((0.5, 1.5),)),), caption=says("So."))
    tabled = replace(plot, tabled=True)
    assert "[Pull: It rises.]\n\nSo.\n" == body(tabled)
    assert "*It rises.*\n\nSo." == passages_markdown((tabled,))
    assert "\n\\textit{Pull. It rises.}\n" == latex_pages((Page("T", (tabled,)),)).partition("{T}\n")[2]
    assert [True] * 3 == [
        "0.5" in each for each in (body(plot), passages_markdown((plot,)), latex_pages((Page("T", (plot,)),)))
    ]


def test_a_page_has_one_title() -> None:
    own, none = Page("T", (Heading(1, says("Mine")),)), Page("T", (Heading(2, says("Part")),))
    assert ("Mine\n====\n", "T\n=\n\nPart\n----\n") == (text(own), text(none))
    assert ("# Mine\n", "# T\n\n## Part\n") == (markdown(own), markdown(none))


@pytest.mark.parametrize("width", [23, 24, 0])
def test_no_page_is_narrower_than_twenty_four_columns(width: int) -> None:
    assert "Title of a page that\ngoes on\n====================\n" == text(
        Page("Title of a page that goes on", ()), width
    )


# ---------------------------------------------------------------------- LaTeX
TYPED = "\\{}$&#%_^~<>|`[]*-\u00a0\u202f\u2009°−·×²³′≈≤≥≠→√⊥∥⁻½–—‘’“”…✓✗ßæÆøØœŒłŁı"
SET = (
    r"\textbackslash{}\{\}\$\&\#\%\_\textasciicircum{}\textasciitilde{}\textless{}\textgreater{}\textbar{}"
    r"\textasciigrave{}{[}{]}{*}{-}~\,\,$^\circ$$-$$\cdot$$\times$$^2$$^3$$'$$\approx$$\le$$\ge$$\ne$$\to$$\surd$"
    r"$\perp$$\parallel$$^-$$\tfrac12$\textendash{}\textemdash{}\textquoteleft{}\textquoteright{}\textquotedblleft{}"
    r"\textquotedblright{}\ldots{}(holds)(fails)\ss{}\ae{}\AE{}\o{}\O{}\oe{}\OE{}\l{}\L{}\i{}"
)


def test_every_sign_that_latex_would_read_is_spelled_out() -> None:
    """The commands of Lamport, LaTeX: A Document Preparation System, chapter 3 (from memory)."""
    assert SET == latex_escaped(TYPED)


def test_accents_are_put_over_their_letters_however_they_were_typed() -> None:
    accented = r"\`{a}\'{a}\^{a}\~{a}\={a}\u{a}\.{a}\"{a}\r{a}\H{o}\v{a}\c{c}\d{a}\~{n}"
    assert accented == latex_escaped("àáâãāăȧäåőǎçạñ")
    assert r"\'{e}\`{A}" == latex_escaped("e\u0301A\u0300")
    assert "(U+01FB) 1(U+0301) (U+044C)" == latex_escaped("ǻ 1\u0301 ь")


def test_plain_letters_stay_as_they_are() -> None:
    plain = "".join(map(chr, range(32, 127)))
    plain = re.sub(r"[\\{}$&#%_^~<>|`\[\]*\"-]", "", plain)
    assert plain == latex_escaped(plain)
    assert "(U+FFFD)" == latex_escaped("\x7f")


def test_what_only_other_packages_know_is_spelled_in_commands_of_amsmath() -> None:
    assert r"< > \text{\textasciigrave}'\text{\'{e}}\text{(U+8171)}x" == formula("\\lt \\gt \\backprime ′é腱x")


def derived(*rows: Row) -> str:
    return latex_pages((Page("T", (Derivation(rows),)),)).partition("\\section*{T}\n")[2]


@pytest.mark.parametrize(("letters", "aligned"), [(25, True), (26, False)])
def test_rows_are_aligned_as_long_as_they_are_short(letters: int, aligned: bool) -> None:
    row = Row(one(a("x" * letters)), (("=", one(a("y" * 25))),))
    assert aligned is ("align*" in derived(row))


def test_long_derivations_are_parted_after_eight_rows_and_notes_have_their_column() -> None:
    rows = [Row(one(a("x")), (("=", one(q(str(place)))),)) for place in range(9)]
    rows[0] = Row(rows[0].left, rows[0].right, label=says("lab"))
    rows[8] = Row(rows[8].left, rows[8].right, note=says("why"))
    first, second = derived(*rows).strip().split("\n\n")
    assert r"\medskip\noindent\begin{tabular}{@{}ll@{}}" == second.splitlines()[0]
    cell = r"{\raggedright\hangindent=2em $\displaystyle "
    assert [
        r"\medskip\noindent\begin{tabular}{@{}ll@{}}",
        rf"\parbox[t]{{.92\linewidth}}{cell}\text{{lab}}\quad x = 0$\strut}} \\[.6ex]",
        *(rf"\parbox[t]{{.92\linewidth}}{cell}x = {place}$\strut}} \\[.6ex]" for place in range(1, 8)),
        r"\end{tabular}\par\medskip",
    ] == first.splitlines()
    assert (
        rf"\parbox[t]{{.57\linewidth}}{cell}x = 8$\strut}} & "
        r"\parbox[t]{.36\linewidth}{\raggedright {\footnotesize why}\strut} \\[.6ex]"
    ) == second.splitlines()[1]


def test_labels_stand_in_an_aligned_derivation_too() -> None:
    row = Row(one(a("x")), (("=", one(q("1"))),), label=says("level"))
    assert "\n\\begin{align*}\n\\text{level}\\quad x &= 1\n\\end{align*}\n" == derived(row)


def test_what_is_empty_leaves_nothing_in_latex_and_markdown() -> None:
    empty = Page("T", (Derivation(()), Bullets(()), Table("", (), ()), Paragraph(()), Prose("")))
    assert "\\section*{T}\n" == latex_pages((empty,)).partition("\n\n")[2]
    assert "# T\n" == markdown(empty)


def test_columns_of_words_share_the_width_in_latex() -> None:
    table = Table("", tuple(map(says, "abcd")), ((says("1"),),), frozenset({3}))
    assert r"\begin{tabular}{lp{0.31\linewidth}p{0.31\linewidth}r}" in latex_pages((Page("T", (table,)),))


@pytest.mark.parametrize(
    ("level", "command"),
    [(0, "section"), (1, "section"), (2, "subsection"), (3, "subsubsection"), (4, "paragraph"), (5, "paragraph")],
)
def test_headings_have_the_sections_of_an_article(level: int, command: str) -> None:
    page = Page("T", (Paragraph(says("p")), Heading(level, says("x"))))
    assert f"\n\n\\{command}*{{x}}\n" in latex_pages((page,))


def test_a_page_that_begins_with_its_title_gets_no_second_one_in_latex() -> None:
    own = latex_pages((Page("T", (Heading(1, says("Mine")),)), Page("U", (Heading(2, says("x")),))))
    assert "\\section*{Mine}\n\n\\clearpage\n\n\\section*{U}\n\n\\subsection*{x}\n" == own.partition("\n\n")[2]


# ---------------------------------------------------------------------- Markdown
@pytest.mark.parametrize(
    ("typed", "written"),
    [
        ("\\`*_[]<&|~#", r"\\\`\*\_\[\]\<\&\|\~\#"),
        ("a$b@c", r"a<span>\$</span>b<span>\@</span>c"),
        ("http://x WWW.y www.z aww.", r"http\://x WWW\.y www\.z aww."),
        ("a: b", "a: b"),
        ("a\nb", "a b"),
    ],
)
def test_typed_marks_are_made_plain_in_markdown(typed: str, written: str) -> None:
    assert written == escaped(typed)


M = Maths(one(q("5")))


@pytest.mark.parametrize(
    ("pieces", "written"),
    [
        ([Text("+ a")], r"\+ a"),
        ([Text("> a")], r"\> a"),
        ([Text("12) a")], r"12\) a"),
        ([Text("1234567890. a")], "1234567890. a"),
        ([Text("12.")], r"12\."),
        ([Text("1.5")], "1.5"),
        ([Text("a + b")], "a + b"),
        ([Text("a"), M, Text("b")], "a $`5`$ b"),
        ([Text("($"), M], r"(<span>\$</span>$`5`$"),
        ([M, Text(".")], "$`5`$."),
        ([M, Text(""), M], "$`5`$ $`5`$"),
        ([M, Strong("b")], "$`5`$**b**"),
        ([Strong("a"), Strong("b")], "<strong>a</strong>**b**"),
        ([Emphasis("a"), Text("b")], "*a*b"),
        ([Text("a"), Emphasis("b")], "a*b*"),
        ([Text("é"), Strong("(b)")], "é<strong>(b)</strong>"),
        ([Text("-"), Strong("(b)"), Text("-")], r"\-**(b)**-"),
        ([Strong("  ")], ""),
        ([Text("a"), Strong(" "), Text("b")], "a b"),
        ([Text("a"), Emphasis(" b "), Text("c")], "a *b* c"),
        ([Reference("see [1]", "p-1")], r"[see \[1\]](#p-1)"),
        ([Text(" a ")], "a"),
    ],
)
def test_a_line_of_markdown(pieces: Sequence[Inline], written: str) -> None:
    assert written == markdown_line(tuple(pieces))


def test_units_are_struck_out_in_markdown_where_it_is_asked_for() -> None:
    of = (Maths(one(DIVIDED)),)
    assert [False, True, False] == [
        "cancel" in each for each in (markdown_line(of), markdown_line(of, strokes=True), markdown_line(of, False))
    ]
    page = Page("T", (Heading(1, of), Paragraph(of)))
    assert (4, 0) == (markdown(page).count("cancel"), markdown(page, strokes=False).count("cancel"))
    assert (2, 0) == (
        passages_markdown((Paragraph(of),)).count("cancel"),
        passages_markdown((Paragraph(of),), strokes=False).count("cancel"),
    )


def test_passages_of_markdown_have_no_title_and_no_line_end_behind() -> None:
    picture = Picture(Drawing((0.0, 0.0), "e"), "Forces", "Level.", says("To scale."))
    assert "a\n\n![Level.](fig/a%20b.svg?x=1)\n\nTo scale." == passages_markdown(
        (Paragraph(says("a")), Paragraph(()), picture), lambda _: "fig/a b.svg?x=1"
    )
    assert "*Level.*\n\nTo scale." == passages_markdown((picture,), lambda _: "")


@pytest.mark.parametrize(("level", "marks"), [(-1, "#"), (0, "#"), (1, "#"), (2, "##"), (6, "######"), (7, "######")])
def test_headings_of_markdown_have_one_to_six_marks(level: int, marks: str) -> None:
    assert f"{marks} x" == passages_markdown((Heading(level, says("x")),))


@pytest.mark.parametrize(
    ("typed", "code"),
    [
        ("F = 1", "`F = 1`"),
        ("a`b", "``a`b``"),
        ("`a", "`` `a ``"),
        ("a|b", r"`a\|b`"),
        (" a", "`  a `"),
        ("", ""),
        (" ", ""),
    ],
)
def test_a_typed_line_is_code_in_markdown(typed: str, code: str) -> None:
    judged = Judged("J", (JudgedLine(1, typed, "✓", "holds"),))
    assert f"| 1 | ✓ holds | {code} |" == passages_markdown((judged,)).splitlines()[-1]


def test_an_answer_is_strong_but_for_its_formula_and_its_full_stop() -> None:
    words = (Text("It is "), M, Text(", not "), Emphasis("six"), Text("."))
    assert "> **It is** $`5`$**, not** *six*." == passages_markdown((Answer(words),))
    assert "*It is* $`5`$*, not* *six*." == passages_markdown((Caution(words),))


# ---------------------------------------------------------------------- HTML
@pytest.mark.parametrize(
    ("words", "together"),
    [
        ("5 N", ["5 N"]),
        ("5 N/m and 3 kg·m", ["5 N/m", "3 kg·m"]),
        ("12.5 cm²", ["12.5 cm²"]),
        ("2 m³ of sand", ["2 m³"]),
        ("1,5 m", ["1,5 m"]),
        ("9.81 m/s²", ["9.81 m/s²"]),
        ("5 pounds", ["5 pounds"]),
        ("1 pound", ["1 pound"]),
        ("5 degrees", ["5 degrees"]),
        ("5 N·m or 5 N.cm or 5 Nm", ["5 N·m", "5 N.cm"]),
        ("5 Newfoundland ponies", []),
        ("5 mice, 5 in2", []),
        ("5 cm^3", []),
        ("16 % of", ["16 %"]),
        ("(a) word (ii) x (iii) y (iv) z (viii) v", ["(a) word", "(ii) x", "(iii) y", "(iv) z", "(viii) v"]),
        ("(ab) x (a)x (A) x", []),
    ],
)  # fmt: skip
def test_what_is_kept_on_one_line(words: str, together: list[str]) -> None:
    assert together == re.findall('<span class="kept">(.*?)</span>', kept(words))
    assert words == re.sub("<.*?>", "", kept(words))


def test_typed_markup_is_text_before_between_and_behind_what_is_kept() -> None:
    assert '&lt;a&gt; <span class="kept">5 N</span> &amp; <span class="kept">(b) &quot;x&quot;</span> �' == kept(
        '<a> 5 N & (b) "x" \x00'
    )


def test_a_lone_number_is_text() -> None:
    assert ("−3.5\u00a0N·m", "0", "", "") == (
        lone_number((term(q("3.5", "N m"), sign=-1),)),
        lone_number(()),
        lone_number(one(PULL)),
        lone_number(Equation(one(q("1")), ())),
    )


class _Hand:
    def formula(self, of: Terms | Equation) -> str:
        return "F"

    def heard(self, cell: Line) -> str:
        return ""

    def derivation(self, rows: Sequence[Row]) -> str:
        return "D"

    def figure(self, picture: object, caption: str) -> str:
        return "P"


@pytest.mark.parametrize("mark", list(".,:;)?"))
def test_a_mark_stays_with_its_formula(mark: str) -> None:
    assert f'<span class="kept">F{mark}</span> and' == line((M, Text(f"{mark} and")), _Hand())


def test_other_text_behind_a_formula_stands_for_itself() -> None:
    assert ("F! x", "F x", "F", "F<strong>. x</strong>", 'F<span class="kept">F.</span>') == (
        line((M, Text("! x")), _Hand()),
        line((M, Text(" x")), _Hand()),
        line((M, Text("")), _Hand()),
        line((M, Strong(". x")), _Hand()),
        line((M, M, Text(".")), _Hand()),
    )


def shown(markup: str) -> str:
    bare = re.sub(r"<mo [^>]*>(.)</mo>", r"\1", markup)
    return re.sub(r"<math[^>]*>(.*?)</math>", lambda found: f"[{re.sub('<[^>]*>', '', found[1])}]", bare)


def _sum(letters: int) -> Terms:
    return (term(a("a" * letters)), term(a("b")))


A = {count: "a" * count for count in (17, 18, 19)}


@pytest.mark.parametrize(
    ("of", "expected"),
    [
        (_sum(18), f"[{A[18]}+b]"),
        (_sum(19), f"[{A[19]}]<wbr>[+b]"),
        (Equation(_sum(18), one(a("c"))), f"[{A[18]}]<wbr>[+b]<wbr>[=c]"),
        (Equation(_sum(18), one(a("c")), rounded=True), f"[{A[18]}]<wbr>[+b]<wbr>[≈c]"),
        ((term(a(A[19]), sign=-1), term(a("b"), sign=-1)), f"[−{A[19]}]<wbr>[−b]"),
        (one(q("5", "N")), "5\u00a0N"),
    ],
)
def test_a_long_formula_may_be_broken_at_its_signs(of: Terms | Equation, expected: str) -> None:
    assert expected == shown(Screen(True).formula(of))


def test_how_long_a_formula_may_be_is_told_to_the_screen() -> None:
    assert ("[a+b]", "[a]<wbr>[+b]") == tuple(shown(Screen(True, short=each).formula(_sum(1))) for each in (5, 4))


PIECE = "FB(0.045m)"


@pytest.mark.parametrize(
    ("row", "first", "expected"),
    [
        (Row(one(a("x" * 22)), (("=", one(PULL)),)), True, f"left: [{'x' * 22}] rest: [=FB]"),
        (Row(one(a("x" * 23)), (("=", one(PULL)),)), True, f"across: [{'x' * 23}]<wbr>[=FB]"),
        (Row((), (("=", one(PULL)), ("≈", one(a("c"))))), True, "left: [0] rest: [=FB][≈c]"),
        (Row((), (("=", one(PULL)),)), False, "left:  rest: [=FB]"),
        (
            Row(one(PULL), (("=", LONG[:3]),)),
            False,
            f"left: [FB] rest: [={PIECE}]<wbr>[+{PIECE}]<wbr>[+{PIECE}]",
        ),
        (Row(LONG[:3], (("=", ()),)), False, f"across: [{PIECE}]<wbr>[+{PIECE}]<wbr>[+{PIECE}=0]"),
        (Row(_sum(17), (("=", ()),)), False, f"across: [{A[17]}+b=0]"),
        (Row(_sum(18), (("=", ()),)), False, f"across: [{A[18]}]<wbr>[+b=0]"),
        (Row(_sum(18), (("=", one(a("c"))), ("=", ()))), False, f"across: [{A[18]}]<wbr>[+b=c=0]"),
        (Row(LONG[:2], ()), False, f"across: [{PIECE}]<wbr>[+{PIECE}]"),
    ],
)
def test_a_row_stands_in_two_columns_or_across_both(row: Row, first: bool, expected: str) -> None:
    cells = re.findall(r'<div class="(\w+)">(.*?)</div>', shown(Screen(True).row(row, first)))
    assert expected == " ".join(f"{name}: {re.sub('</?span>', '', cell)}" for name, cell in cells)


def test_rows_are_shown_large_and_struck_out_where_it_is_asked_for() -> None:
    long = (*LONG[:3], *one(DIVIDED))
    for row in (SECOND, Row(LONG[:3], (("=", one(DIVIDED)),)), Row(one(DIVIDED), (("=", long),))):
        marked, bare = Screen(True).row(row, True), Screen(False).row(row, True)
        assert (True, True, False) == ('class="cancel"' in marked, "cancel" in marked, "cancel" in bare)
        assert "inline" not in marked


def test_a_head_with_a_formula_is_heard_in_words() -> None:
    hand = Screen(False)
    assert ("a F sub B b", "", "") == (
        hand.heard((Text("a "), Maths(one(PULL)), Text(" b"))),
        hand.heard((Text("a "), Maths(one(q("5", "N"))))),
        hand.heard(says("a")),
    )


@pytest.mark.parametrize(("level", "rank"), [(-1, 1), (0, 1), (2, 2), (6, 6), (7, 6)])
def test_a_heading_of_html_has_one_of_six_ranks(level: int, rank: int) -> None:
    assert f"<h{rank}>x</h{rank}>" == passages_html((Heading(level, says("x")),), "p")


def test_passages_of_html_stand_without_a_document_with_figures_of_their_own() -> None:
    picture = Picture(Drawing((0.0, 0.0), "e"), "F", "D")
    found = passages_html((Paragraph(says("a")), picture, picture, Paragraph((Maths(one(DIVIDED)),))), "part-1")
    first, *_, last = found.split("\n")
    assert ("<p>a</p>", True) == (first, last.startswith("<p><math"))
    assert ["part-1-1-title", "part-1-2-title"] == re.findall('<title id="(.*?)"', found)
    assert (True, False) == (
        "cancel" in found,
        "cancel" in passages_html((Paragraph((Maths(one(DIVIDED)),)),), "p", False),
    )


def test_a_document_has_the_language_of_its_first_page_and_a_list_of_several() -> None:
    pages = (Page("Un & deux", (), "fr"), Page("Two", (), "en"), Page("Trois", (), "fr"))
    document = html_pages(pages, "All & more")
    assert (
        '<body>\n<nav aria-label="All &amp; more">\n<p>All &amp; more</p>\n<ol>\n<li><a href="#page-1">'
        'Un &amp; deux</a></li>\n<li><a href="#page-2">Two</a></li>\n'
        '<li><a href="#page-3">Trois</a></li>\n</ol>\n</nav>\n'
        "<main>\n"
        '<article id="page-1">\n<h1>Un &amp; deux</h1>\n</article>\n<article id="page-2" lang="en">\n<h1>Two</h1>\n'
        '</article>\n<article id="page-3">\n<h1>Trois</h1>\n</article>\n</main>\n</body>\n</html>\n'
    ) == document[document.index("<body>") :]
    assert document.startswith(
        '<!DOCTYPE html>\n<html lang="fr">\n<head>\n<meta charset="utf-8">\n<meta http-equiv="Content-Security-Policy"'
    )
    assert (False, 'lang="en"') == ("<nav" in html(pages[0]), re.findall('lang="en"', html_pages((), "E"))[0])
    assert html(pages[0]) == html_pages(pages[:1], "Un & deux")
