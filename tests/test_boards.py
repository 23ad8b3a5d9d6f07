"""A whole lesson, board by board: what heads it, what stands on it, parts of the figure, what is said and asked."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from pathlib import Path

import pytest
from what_is_said import parts

from explain.document.board import Board, Lesson, Question
from explain.document.passage import (
    Answer,
    Axis,
    Blanks,
    Bullets,
    Caution,
    Derivation,
    Heading,
    Line,
    Maths,
    Paragraph,
    Passage,
    Plot,
    Table,
    Text,
)
from explain.equation.terms import Terms, term
from explain.errors import Fault
from explain.formula.plain import plain, plain_rows
from explain.lesson.api import WorkedLesson, lesson
from explain.lesson.captions import Cue, captions, cues, seconds, total, words
from explain.lesson.marks import read_marks
from explain.lesson.room import BESIDE, WHOLE, fits, high, parted, width
from explain.lesson.script import script
from explain.lesson.spoken import sentences, spoken_text

HERE = Path(__file__).parent
LESSONS = {
    "tin": HERE.parent / "samples" / "02-treacle-tin-again.toml",
    "how steep": HERE / "contract" / "how-steep.toml",
}


@cache
def made(name: str) -> WorkedLesson:
    return lesson(LESSONS[name])


def worded(line: Line) -> str:
    return "".join(plain(each.of) if isinstance(each, Maths) else each.text for each in line)


def stands(passage: Passage) -> Iterator[str]:
    match passage:
        case Paragraph(line) | Caution(line) | Answer(line):
            yield f"{type(passage).__name__.lower()} {worded(line)}"
        case Derivation(rows):
            for row in rows:
                line = " ".join(each for pair in plain_rows((row,)) for each in pair)
                yield f"line {line}" + (f"   | {worded(row.note)}" if row.note else "")
        case Bullets(items):
            yield from (f"bullet {worded(item)}" for item in items)
        case Table(header=header, rows=rows):
            yield from (f"row {' | '.join(map(worded, row))}" for row in (header, *rows))
        case Plot(title=title):
            yield f"plot {title}"
        case _:
            yield type(passage).__name__


def board_text(board: Board) -> Iterator[str]:
    if board.chapter:
        yield f"CHAPTER {board.chapter}"
    yield f"# {board.part} [{board.label}]"
    small = f", squeezed {board.squeeze:.3f}" if board.squeeze < 1 else ""
    if board.picture is not None or board.tight or small:
        yield (
            f"figure {'all' if board.shown is None else ' '.join(board.shown)}" * (board.picture is not None)
            + (" tight" if board.tight else "")
            + small
        )
    for passage in board.passages:
        yield from stands(passage)
    yield from (f"says {each}" for each in board.said)
    yield from (f"asks {each.ask} -> {each.answer or 'nothing'}" for each in board.asks)


def told(name: str) -> str:
    return "\n\n".join("\n".join(board_text(board)) for board in made(name).boards)


KEPT = parts("lessons_told.txt", "== ")


@pytest.mark.parametrize("name", LESSONS)
def test_a_lesson_is_told_board_by_board(name: str) -> None:
    assert KEPT[name] == told(name)


def test_boards_of_a_worked_series_know_what_was_there_before() -> None:
    found = lesson(HERE.parent / "samples" / "series" / "treacle-tin.toml")
    grown = [(board.part, board.shown) for board in found.boards if board.shown is not None and len(board.shown) > 3]
    heads = [board.part for board in found.boards if board.chapter]
    assert found.needs_a_person is False
    assert repr(found) == f"<WorkedLesson {found.lesson.title!r}: {len(found.boards)} pages>"
    same = [board for board in found.boards if board.part == "The same body"]
    assert {each.said[-1] for each in same} == {
        "The same forces act on it as before.",
        "Everything that was there before is there still, and something more.",
    }
    assert len(same) >= 2 and len(heads) == len(found.boards[0].chapter and heads) and grown
    assert 1 == sum(board.part == "A teaching model" for board in found.boards)


# ---------------------------------------------------------------------- room
LINE = Paragraph((Text("a" * 40),))  # 40 × 0.47 + 1.0 = 19.8 em: two lines beside a figure, one without


def text(letters: int) -> Paragraph:
    return Paragraph((Text("a" * letters),))


def terms(*names: str) -> Terms:
    return (term(*names),)


@pytest.mark.parametrize(
    ("passage", "wide", "em"),
    [
        (LINE, 19.6, 2 * 1.32 + 0.55),
        (LINE, 39.6, 1.32 + 0.55),
        (Caution((Text(""),)), 19.6, 1.32 + 0.55),
        (Answer((Text("a" * 36),)), 19.6, 2 * 1.32 * 1.06 + 2.2),  # 17.92 em in 17.4
        (Answer((Text("a" * 34),)), 19.6, 1.32 * 1.06 + 2.2),
        (Bullets(((Text("a" * 38),), (Text("a" * 36),))), 19.6, 2 * 1.32 + 0.55 + 1.32 + 0.55),
        (Blanks(("one", "two")), 19.6, 6.0),
        (Heading(2, (Text("h"),)), 19.6, 2.0),
        (Table("", ((Text("h"),),), (((Text("a"),), (Text("b"),)),)), 19.6, 2 * (1.32 + 0.55)),
        (Table("caption", ((Text("h"),),), (((Text("a" * 100),),),)), 19.6, 2.2 + 1.32 + 0.55 + 1.32 * 3 + 0.55),
    ],
)
def test_how_high_a_passage_stands(passage: Passage, wide: float, em: float) -> None:
    """A letter of words 0.47 em, of a formula 0.54; a line 1.32, what is between two passages 0.55 (the stylesheet)."""
    assert high(passage, wide) == pytest.approx(em)


def test_a_board_holds_so_much_and_no_more() -> None:
    """17.6 em high: nine lines of 1.87 em are 16.8, ten are 18.7; in the smaller type eleven are 16.5."""
    assert [True, False] == [fits([text(10)] * count, True) for count in (9, 10)]
    assert [True, False] == [fits([text(10)] * count, False, tight=True) for count in (11, 12)]
    assert (19.6, 39.6) == (width(True), width(False)) == (BESIDE, WHOLE)


def test_words_are_parted_between_sentences_and_none_is_lost() -> None:
    words_of = "One. " * 100 + "Two; three? Four!"
    pieces = list(parted(Paragraph((Text(words_of),)), True))
    assert len(pieces) > 1 and all(fits((each,), True) for each in pieces)
    assert words_of == " ".join(worded(each.line) for each in pieces if isinstance(each, Paragraph))
    assert not fits((Paragraph((Text(f"{worded(pieces[0].line)} One."),)),), True)  # type: ignore[attr-defined]
    assert [LINE] == list(parted(LINE, True))


def test_lists_and_tables_are_parted_between_rows() -> None:
    items = tuple((Text(str(place) + "a" * 60),) for place in range(12))
    assert [Bullets((item,)) for item in items] == list(parted(Bullets(items), True))
    rows = tuple(((Text(f"{place}"),),) for place in range(20))
    pieces = list(parted(Table("c", ((Text("h"),),), rows, (True,)), False))
    assert [(7, "c"), (7, "c"), (6, "c")] == [
        (len(each.rows), each.caption) for each in pieces if isinstance(each, Table)
    ]
    assert list(rows) == [row for each in pieces if isinstance(each, Table) for row in each.rows]
    assert all(fits((each,), False) for each in pieces)


# ---------------------------------------------------------------------- captions, notes, marks
TALK = Lesson(
    "A *talk*",
    (
        Board("One", "one", chapter="Ch", said=("A word of 12.5 & more.", "No."), asks=(Question("Why?", "So."),)),
        Board("Two", "two", said=("<b> --> end.",), asks=(Question("What?"),)),
    ),
)


def test_captions_by_the_length_of_the_words() -> None:
    """At 60 words a minute one word is a second; a number is read digit by digit, 12.5 as four words."""
    assert (8, 1) == (words("A word of 12.5 & more."), words("No."))
    assert (8.0, 0.8, 1.0) == (seconds("A word of 12.5 & more.", 60), seconds("No.", 600), seconds("No.", 60))
    assert (
        "WEBVTT\n\n"
        "1\n00:00:00.000 --> 00:00:08.000\nA word of 12.5 &amp; more.\n\n"
        "2\n00:00:08.400 --> 00:00:09.400\nNo.\n\n"
        "3\n00:00:09.800 --> 00:00:10.800\nWhy?\n\n"
        "4\n00:00:13.800 --> 00:00:14.800\nSo.\n\n"
        "5\n00:00:15.800 --> 00:00:17.800\n&lt;b&gt; --&gt; end.\n\n"
        "6\n00:00:18.200 --> 00:00:19.200\nWhat?\n"
    ) == captions(TALK, None, 60)
    assert 19.2 == total(TALK, 60)
    assert 0.0 == total(Lesson("x", ()), 60)


def test_captions_by_marks_are_pressed_together_where_there_is_little_room() -> None:
    """The first page takes 15.2 s at 60 words a minute; in 7.6 s each sentence has half of its time."""
    found = list(cues(TALK, {1: 3600.0, 2: 3607.6}, 60))
    assert Cue(3600000, 3604000, "A word of 12.5 & more.") == found[0]
    assert [3604200, 3604900, 3606900, 3607600] == [each.start for each in found[1:5]]
    assert "01:00:07.600 --> 01:00:09.600" in captions(TALK, {1: 3600.0, 2: 3607.6}, 60)
    assert [0, 100000] == [each.start for each in cues(TALK, {1: 0.0, 2: 100.0}, 60)][0:5:4]
    assert all(each.end > each.start for each in cues(TALK, {1: 0.0, 2: 0.001}, 60))


def test_notes_have_a_heading_a_page_and_questions_set_off() -> None:
    assert (
        "# A \\*talk\\*\n\n## Ch\n\n### Page 1: One\n\nA word of 12.5 \\& more.\n\nNo.\n\n"
        "> **Ask, and wait:** Why? *(So.)*\n\n"
        "### Page 2: Two\n\n\\<b> --> end.\n\n> **Ask, and wait:** What?\n"
    ) == script(TALK)


@pytest.mark.parametrize(
    ("rows", "found", "line"),
    [
        ("pages,seconds\n1,0\n", "no first row with the names page and seconds", 1),
        ("", "no first row with the names page and seconds", 1),
        ("page,seconds\n1,0\n1,2\n", "page 1 a second time", 3),
        ("page,seconds\n0,0\n", "page 0 of a lesson of 2 pages", 2),
        ("page,seconds\n1,0\n3,2\n", "page 3 of a lesson of 2 pages", 3),
        ("page,seconds\n1,0\n", "no mark for page 2 of 2", None),
        ("page,seconds\n1,3\n2,3\n", "page 2 at 3 s, which is not after page 1 at 3 s", None),
        ("page,seconds\n1,-1\n2,3\n", '"1, -1"', 2),
        ("page,seconds\n1,inf\n2,3\n", '"1, inf"', 2),
        ("page,seconds\n1,1000000\n2,3\n", '"1, 1000000"', 2),
        ("page,seconds\n1,0,4\n2,3\n", '"1, 0, 4"', 2),
        ("page,seconds\none,0\n2,3\n", '"one, 0"', 2),
        ("page,seconds\n1\n2,3\n", '"1"', 2),
    ],
)
def test_marks_at_fault_are_told_with_their_line(rows: str, found: str, line: int | None, tmp_path: Path) -> None:
    file = tmp_path / "marks.csv"
    file.write_text(rows, "utf-8")
    with pytest.raises(Fault) as caught:
        read_marks(file, 2)
    assert (str(file), line, found) == (caught.value.file, caught.value.line, caught.value.found)
    assert "a row for each page, with its number and the second at which it comes up" == caught.value.expected
    assert "page,seconds\n1,0\n2,14.5" == caught.value.example


def test_marks_are_read_in_any_order(tmp_path: Path) -> None:
    (tmp_path / "marks.csv").write_text(" Page ;SECONDS\n2;14.5;\n1;0\n", "utf-8")
    assert {1: 0.0, 2: 14.5} == read_marks(tmp_path / "marks.csv", 2)
    (tmp_path / "marks.csv").write_text("page,seconds\n1,999999.5\n", "utf-8")
    assert {1: 999999.5} == read_marks(tmp_path / "marks.csv", 1)


@pytest.mark.parametrize(
    ("written", "said"),
    [
        ("ΣM = 0", "the sum of M equals 0"),
        ("ΣF ≈ 3 × 4 / 5 + 1 − 2", "the sum of F is about 3 times 4 over 5 plus 1 minus 2"),
        ("(+) and (−), −3", "(plus) and (minus), minus 3"),
        ("50 %", "50 per cent"),
        ("30° and 4 °", "30 degrees and 4 degrees"),
        ("1 kg, 2 kg", "1 kilogram, 2 kilograms"),
        ("9.81 m/s²", "9.81 metres per second squared"),
        ("1 N·m, 5 N·m", "1 newton metre, 5 newton metres"),
        ("−5 N", "minus 5 newtons"),
        ("9 cm³", "9 centimetres cubed"),
        ("10\u202f000 ✓", "10000"),
    ],
)
def test_what_is_written_is_said_in_words(written: str, said: str) -> None:
    assert said == spoken_text(written)


def test_a_passage_is_said_sentence_by_sentence() -> None:
    said = list(sentences(Paragraph((Text('it is so. "why?" (Source: a book.) m sub F is it! '),))))
    assert ["It is so.", '"why?"', "(Source: a book.)", "m sub F is it!"] == said
    assert ["One, two.", "A blank row."] == list(
        sentences(Table("", ((Text("h"),),), (((Text("one."),), (Text("two"),)), ((Text(""),),))))
    )
    assert ["A title.", "What it shows."] == list(
        sentences(Plot("lines", "A title", "What it shows.", Axis("x"), Axis("y"), ()))  # type: ignore[call-arg]
    )
