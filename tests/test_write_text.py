"""The text writer: wrapped prose, aligned relations and columns, and nothing that could steer a terminal."""

from __future__ import annotations

import re
from unicodedata import category

import pytest
from formulas import BALANCE, DIVIDED, HOSTILE, PULL, SUMS, a, one, q
from hypothesis import given, settings
from hypothesis import strategies as st

from explain.equation.terms import Terms
from explain.document.passage import (
    Answer,
    Bullets,
    Caution,
    Derivation,
    Drawing,
    Emphasis,
    Heading,
    Line,
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
from explain.write.terminal_columns import padded, width_of, wrapped
from explain.write.text.pages import text

TYPED = st.one_of(
    st.text(max_size=40), st.sampled_from(HOSTILE), st.text(alphabet="ab \n\x1b[31m漢字é\u0301", max_size=60)
)


def body(*passages: Passage, width: int = 80) -> list[str]:
    """The lines below the title."""
    return text(Page("T", passages), width).splitlines()[3:]


def says(words: str) -> Line:
    return (Text(words),)


def row(left: Terms, right: Terms, note: str = "", label: str = "") -> Row:
    return Row(left, (("=", right),), says(label) if label else (), says(note) if note else ())


def test_the_title_is_underlined_and_stands_once() -> None:
    page = Page("Rock", (Heading(1, says("Rock")), Heading(2, says("Find")), Heading(3, says("why"))))
    assert "Rock\n====\n\nFind\n----\n\nwhy\n~~~\n" == text(page)
    assert "Rock\n====\n" == text(Page("Rock", ()))


def test_prose_is_wrapped_and_its_marks_are_gone() -> None:
    assert ["A rock of 6.0 kg rests", "on the elbow, held", "level.", "", "- one", "- two"] == body(
        Prose("A **rock** of 6.0 kg\nrests on the *elbow*, held level.\n\n- one\n- two"), width=24
    )


def test_a_short_formula_is_not_broken_over_lines() -> None:
    line = (Text("so that at last the pull "), Maths(one(q("23.269", "N m"))), Text("."))
    assert ["so that at last the pull", "23.269 N·m."] == body(Paragraph(line), width=32)


def test_a_bullet_hangs() -> None:
    assert ["- the pull came out", "  positive"] == body(Bullets((says("the pull came out positive"),)), width=24)


def test_relations_stand_under_each_other() -> None:
    rows = (
        row(one(PULL, q("0.042", "m")), one(q("23.269", "N m"))),
        row(one(PULL), one(DIVIDED)),
        Row((), (("=", one(q("550.28", "N"))), ("≈", one(q("550", "N"))))),
    )
    assert [
        "    F_B (0.042 m) = 23.269 N·m",
        "              F_B = 23.269 N·m / 0.042286 m",
        "                  = 550.28 N ≈ 550 N",
    ] == body(Derivation(rows))


def test_notes_stand_at_the_right_where_there_is_room() -> None:
    first = row(one(PULL, q("0.042", "m")), one(q("23.269", "N m")), "carry across")
    rows = (first, row(one(PULL), one(q("550", "N")), "divide"))
    assert [
        "    F_B (0.042 m) = 23.269 N·m   carry across",
        "              F_B = 550 N        divide",
    ] == body(Derivation(rows))


def test_a_long_note_is_wrapped_in_its_own_column() -> None:
    assert ["    F_B = 550 N   the metres cancel and", "                  newtons are left"] == body(
        Derivation((row(one(PULL), one(q("550", "N")), "the metres cancel and newtons are left"),)), width=44
    )


def test_notes_stand_beneath_where_there_is_no_room() -> None:
    assert ["    F_B = 550 N", "        the metres cancel"] == body(
        Derivation((row(one(PULL), one(q("550", "N")), "the metres cancel"),)), width=36
    )


def test_a_left_side_that_is_too_wide_does_not_push_the_others_out() -> None:
    rows = (row(BALANCE.left, ()), row(one(PULL), one(DIVIDED)))
    assert [
        "    F_B (0.045 m) sin 70° − (16.677 N)(0.16 m) = 0",
        "    F_B = 23.269 N·m / 0.042286 m",
    ] == body(Derivation(rows), width=56)


def test_a_row_that_is_too_wide_is_broken_before_a_sign() -> None:
    assert ["    F_B (0.045 m) sin 70°", "        − (16.677 N)(0.16 m) = 0"] == body(
        Derivation((row(BALANCE.left, ()),)), width=36
    )


def test_labels_stand_before_their_rows() -> None:
    rows = (row(one(a("J_x")), (), label="level:"), row(one(a("J_y")), (), label="upright:"))
    assert ["    level:    J_x = 0", "    upright:  J_y = 0"] == body(Derivation(rows))


def test_a_table_stands_in_columns_with_numbers_at_the_right() -> None:
    rows = (((Maths(one(a("d"))),), says("35 cm")), (says("e"),))
    table = Table("Given", (says("letter"), says("as given")), rows, frozenset({1}))
    assert ["Given", "", "letter  as given", "------  --------", "d          35 cm", "e"] == body(table)


def test_a_wide_cell_is_wrapped() -> None:
    table = Table("", (says("a"), says("meaning")), ((says("x"), says("the mass of the rock on the palm")),))
    assert ["a  meaning", "-  ---------------------", "x  the mass of the rock", "   on the palm"] == body(
        table, width=24
    )


def test_an_answer_is_boxed() -> None:
    assert ["┌──────────┐", "│ It pulls │", "└──────────┘"] == body(Answer(says("It pulls")))


def test_a_caution_is_marked_and_hangs() -> None:
    caution = Caution(says("A teaching model: not for treatment."))
    assert ["! A teaching model: not", "  for treatment."] == body(caution, width=24)


def test_a_picture_is_its_description() -> None:
    picture = Picture(Drawing((0.0, 0.0), "elbow"), "Forces", "A level forearm.", says("Not to scale."))
    assert ["[Forces: A level forearm.]", "", "Not to scale."] == body(picture)


def test_marks_of_one_language_and_wide_letters_of_another_are_counted() -> None:
    assert (4, 1, 3) == (width_of("漢字"), width_of("e\u0301"), width_of("a\u200bbc"))
    assert "漢  |" == padded("漢", 4) + "|"


def test_a_word_that_is_too_long_is_cut() -> None:
    assert ["abcd", "efgh", "i jk"] == wrapped("abcdefghi jk", 4)


@pytest.mark.parametrize("typed", HOSTILE)
def test_typed_text_is_shown_as_typed(typed: str) -> None:
    shown = " ".join(body(Paragraph((Text(typed),))))
    assert re.sub("[\u202e\\s]+", lambda found: "\ufffd" if "\u202e" in found.group() else " ", typed).strip() == shown


def _page(typed: str, of: Terms) -> Page:
    words = says(typed)
    rows = (Row(of, (("=", of), ("≈", ())), label=words, note=words), Row((), (("=", of),), note=(Maths(of),)))
    table = Table(typed, (words, (Strong(typed),)), ((words, (Maths(of),)), (words,)), frozenset({1}))
    return Page(
        typed,
        (
            Heading(2, words),
            Paragraph((Emphasis(typed), Maths(of), Text(typed))),
            Prose(typed),
            Derivation(rows),
            Derivation(rows[:1]),
            Answer(words),
            Bullets((words, words)),
            table,
            Caution(words),
            Picture(Drawing((0.0, 0.0), typed), typed, typed, words),
        ),
    )


@settings(max_examples=60, deadline=None)
@given(TYPED, SUMS, st.integers(24, 100))
def test_no_line_is_wider_than_the_terminal(typed: str, of: Terms, width: int) -> None:
    assert [] == [line for line in text(_page(typed, of), width).splitlines() if width_of(line) > width]


@settings(max_examples=60, deadline=None)
@given(TYPED, SUMS)
def test_no_character_of_a_page_can_steer_a_terminal(typed: str, of: Terms) -> None:
    written = text(_page(typed, of)).replace("\n", "")
    assert [] == [letter for letter in written if category(letter) == "Cc"] + re.findall(
        "[\u202a-\u202e\u2066-\u2069]", written
    )


@settings(max_examples=60, deadline=None)
@given(st.text(alphabet="abc xyz.,;()", max_size=300), st.integers(24, 100))
def test_wrapping_loses_and_adds_no_word(typed: str, width: int) -> None:
    assert typed.replace(" ", "") == "".join(body(Paragraph((Text(typed),)), width=width)).replace(" ", "")
