"""What all else stands on: messages and exit codes, the door to files, tables, files written whole, the names of the
library.
"""

from __future__ import annotations

import errno
import os
from pathlib import Path

import pytest
from bad_inputs import GOOD

import explain
from explain.errors import Fault, NoWay, code_of, legible, nearest, shown, worst
from explain.input import CHAPTER, COURSE, PROBLEM, SHUT, TABLE, Door, Kind, given, real_root, text_of
from explain.output import (
    FORMATS,
    SUFFIXES,
    drawing_only,
    fit,
    form_of,
    make_folder,
    no_room,
    put_all,
    put_new,
    put_whole,
    same,
)
from explain.table import Table, csv_file, safe, table_lines, table_text, unguarded

LIBRARY = {
    "api": "Walkthrough accept draw mark read work",
    "errors": "Fault NoWay",
    "manual.build": "Built",
    "manual.library": "manual",
    "marking.slips.verdict": "Marking",
    "problem.model": "Problem",
    "series.api": "WorkedSeries series work_series",
    "solve.answers": "Answer",
    "solve.outcome": "Finding",
    "tally.library": "ClassReport tally",
    "vary.handouts": "Handed",
    "vary.library": "vary",
}


# ---------------------------------------------------------------------- the library's names
@pytest.mark.parametrize("module", LIBRARY)
def test_the_library_gives_its_names(module: str) -> None:
    import importlib

    home = importlib.import_module(f"explain.{module}")
    for name in LIBRARY[module].split():
        assert getattr(home, name) is getattr(explain, name)


def test_the_library_has_these_names_and_no_others() -> None:
    assert sorted(name for names in LIBRARY.values() for name in names.split()) == sorted(explain.__all__)
    assert "0.1.0" == explain.__version__
    with pytest.raises(AttributeError, match="module 'explain' has no attribute 'word'"):
        explain.word  # type: ignore[attr-defined]


def test_a_folder_of_the_library_is_there_unless_a_function_has_its_name() -> None:
    import explain.series.api
    import explain.wording.phrases

    assert (True, False) == (callable(explain.series), callable(explain.wording))


def test_a_walkthrough_is_all_that_was_worked_out(tmp_path: Path) -> None:
    worked = explain.work(GOOD)
    assert "<Walkthrough 'A milk jug, forearm level': biceps 302 N; 16 lines>" == repr(worked)
    assert [worked.markdown(), worked.html(), worked.text(), worked.latex()] == [
        worked.written(form).decode() for form in ("markdown", "html", "text", "latex")
    ]
    assert worked.json() + "\n" == worked.written("json").decode()
    assert max(map(len, worked.text(60).splitlines())) <= 60 < max(map(len, worked.text().splitlines())) <= 100
    assert worked.markdown() == worked._repr_markdown_() == worked.save(tmp_path / "a.md").read_text("utf-8")
    assert worked.html() == worked.save(tmp_path / "a.txt", "html").read_text("utf-8")
    shown = worked._repr_html_()
    assert shown.startswith('<iframe title="A milk jug, forearm level" srcdoc="&lt;!DOCTYPE html&gt;')
    assert shown.endswith('" style="width:100%;height:48rem;border:0"></iframe>')
    assert worked.figure() == explain.draw(GOOD)
    assert (False, True) == (worked.needs_a_person, explain.work(GOOD.replace('"up"', '"down"')).needs_a_person)
    with pytest.raises(Fault) as caught:
        worked.written("gif")
    assert ('the format "gif"', "one of markdown, html, pdf, latex, text, json") == (
        caught.value.found,
        caught.value.expected,
    )
    assert 'save("page.html", "html")' == caught.value.example


def test_a_problem_that_was_read_may_have_another_course() -> None:
    problem = explain.read(GOOD)
    assert (problem, "torque") == (explain.read(problem), explain.read(problem, course={"word": "torque"}).course.word)
    assert "torque" == explain.read(GOOD, course={"word": "torque"}).course.word


def test_a_line_is_accepted_in_the_file(tmp_path: Path) -> None:
    file = tmp_path / "jug.toml"
    file.write_text(GOOD, "utf-8")
    worked = explain.accept(file, "F*4.0 = 29.43*33\nF = 243 N", 1, "no arm")
    assert f'{GOOD}\n[[accept]]\nline = "F*4.0 = 29.43*33"\nbecause = "no arm"\n' == file.read_text("utf-8")
    assert 1 == len(worked.problem.accepted)
    assert [line.verdict for line in explain.mark(worked, "F = 302 N").lines] == [
        line.verdict for line in explain.mark(GOOD, "F = 302 N").lines
    ]


# ---------------------------------------------------------------------- messages and codes
@pytest.mark.parametrize(
    ("codes", "code"),
    [((), 0), ((0, 1), 1), ((1, 3), 3), ((3, 2), 2), ((2, 70), 70), ((70, 130), 130), ((0,), 0), ((99, 70, 1), 99)],
)
def test_the_worst_of_several_codes_counts(codes: tuple[int, ...], code: int) -> None:
    assert code == worst(codes)


def test_an_exception_has_its_code() -> None:
    assert [2, 3, 70] == [code_of(each) for each in (Fault(), NoWay("no"), ValueError())]


@pytest.mark.parametrize(
    ("fault", "said"),
    [
        (Fault(found="x"), "found x."),
        (Fault("f", found="x"), "f: found x."),
        (Fault("f", 0, found="x"), "f, line 0: found x."),
        (Fault("f", 1, "k", "x", "y", "z", "so"), "f, line 1: k: found x.\nExpected y.\nso\nWrite, for example: z"),
        (
            Fault("f", 1, "k", "x\x07", "y", "a\nb"),
            "f, line 1: k: found x\\x07.\nExpected y.\nWrite, for example: a\nb",
        ),
        (
            Fault("f", 1, "k", "x", "y", "z", "so").placed("g", 2, "l"),
            "g, line 2: l: found x.\nExpected y.\nso\nWrite, for example: z",
        ),
        (Fault("f", 1, "k", "x", "", "z").placed("g", None, "", "w"), "g: found x.\nWrite, for example: w"),
        (NoWay("No way\x07"), "No way\\x07"),
    ],
)
def test_a_message_has_all_its_parts_and_no_others(fault: Exception, said: str) -> None:
    assert said == str(fault)


@pytest.mark.parametrize(
    ("value", "said"),
    [
        ("4 cm", '"4 cm"'),
        ("a" * 60, '"' + "a" * 60 + '"'),
        ("a" * 61, '"' + "a" * 60 + '..."'),
        (True, "true"),
        (3.5, "3.5"),
        ([1, 2], "a list of 2"),
        ((), "a list of 0"),
        ({}, "a table"),
        (10**60, "1" + "0" * 59),
        (10**60 + 1, "a very long number"),
        (-(10**61), "a very long number"),
        (None, "None"),
    ],
)
def test_a_value_is_shown_on_one_line(value: object, said: str) -> None:
    assert said == shown(value)


def test_the_nearest_word_and_what_cannot_be_printed() -> None:
    assert ["Biceps", "", "Biceps"] == [
        nearest("bicpes", ["Biceps"]),
        nearest("jug", ["Biceps"]),
        nearest("BICEPS", ["Biceps"]),
    ]
    assert ["", "com"] == [nearest("comm", ["com"], 0.9), nearest("comm", ["com"], 0.85)]
    assert "a\\nb\\u202e" == legible("a\nb\u202e")


# ---------------------------------------------------------------------- the door
def refused(door: Door, name: str, kind: Kind = TABLE) -> str:
    with pytest.raises(Fault) as caught:
        door.read(name, kind)
    assert f"the path of {kind.what} ({kind.suffixes[0]}), from where this file is" == caught.value.expected
    return caught.value.found.partition(", but ")[2]


def test_a_name_is_refused_with_its_reason(tmp_path: Path) -> None:
    (tmp_path / "big.csv").write_bytes(b"a" * 1_000_001)
    (tmp_path / "just.csv").write_bytes(b"a" * 1_000_000)
    (tmp_path / "folder.csv").mkdir()
    (tmp_path / "loop.csv").symlink_to("loop.csv")
    (tmp_path / "in").mkdir()
    door = Door(str(tmp_path / "jug.toml"))
    assert 1_000_000 == len(door.read("just.csv", TABLE))
    no_name, no_path = "that is no name of a file", "that is not a path from where this file is"
    assert {
        "big.csv": "it has more than 1 MB",
        "none.csv": "there is no such file",
        "just.csv/x.csv": "there is no such file",
        "folder.csv": "that is a folder",
        "loop.csv": "its links lead nowhere",
        "": no_name,
        "a\x1f.csv": no_name,
        "a\x7f.csv": no_name,
        "/a.csv": no_path,
        "C:\\a.csv": no_path,
        "a.txt": "its name does not end in .csv",
        "a" * 997 + ".csv": "the name is too long",
        "a" * 996 + ".csv": "the name is too long",
    } == {
        name: refused(door, name)
        for name in (
            *("big.csv", "none.csv", "just.csv/x.csv", "folder.csv", "loop.csv", "", "a\x1f.csv", "a\x7f.csv"),
            *("/a.csv", "C:\\a.csv", "a.txt", "a" * 997 + ".csv", "a" * 996 + ".csv"),
        )
    }
    assert "its name does not end in .md or .markdown" == refused(door, "a.csv", CHAPTER)
    assert "this text came from no file, and was given no folder (root) to open files in" == refused(SHUT, "a.csv")
    assert b"a" == Door(str(tmp_path / "in" / "x"), str(tmp_path)).read("../just.csv", TABLE)[:1]
    assert "that is no file that can be read" == refused(
        Door(str(tmp_path / "in" / "x"), str(tmp_path / "in")), "../just.csv"
    )
    assert Door(str(tmp_path / "in/b.toml"), "r", True) == Door(str(tmp_path / "jug.toml"), "r", True).behind(
        "in/b.toml"
    )


def test_kinds_of_files() -> None:
    assert (
        Kind("a problem file", (".toml",), 1_000_000),
        Kind("a course file", (".toml",), 1_000_000),
        Kind("a Markdown file", (".md", ".markdown"), 10_000_000),
        Kind("a CSV file", (".csv",), 1_000_000),
    ) == (PROBLEM, COURSE, CHAPTER, TABLE)


def test_a_root_is_a_folder_by_its_real_path(tmp_path: Path) -> None:
    (tmp_path / "link").symlink_to(tmp_path)
    assert ["", str(tmp_path.resolve())] == [real_root(None), real_root(tmp_path / "link")]
    for root in (tmp_path / "none", "a\0b"):
        with pytest.raises(Fault) as caught:
            real_root(root)
        assert "--root ." == caught.value.example


def test_a_file_of_a_person_is_read_to_one_byte_more(tmp_path: Path) -> None:
    (tmp_path / "a").write_bytes(b"12345")
    assert [b"1234", b"12345"] == [given(tmp_path / "a", 3), given(tmp_path / "a", 5)]
    with pytest.raises(IsADirectoryError):
        given(tmp_path, 3)
    os.mkfifo(tmp_path / "pipe")
    with pytest.raises(OSError, match="a pipe or a device"):
        given(tmp_path / "pipe", 3)


@pytest.mark.parametrize(
    ("data", "text"),
    [
        ("Zë".encode(), "Zë"),
        (b"\xef\xbb\xbfZ", "Z"),
        ("Zë".encode("utf-16"), "Zë"),
        (b"\xfe\xff\x00Z", "Z"),
        (b"Z\xeb", "Zë"),
        (b"\x81", "\ufffd"),
    ],
)
def test_bytes_are_text_in_any_usual_encoding(data: bytes, text: str) -> None:
    assert text == text_of(data)


# ---------------------------------------------------------------------- tables
ROWS = Table("class list", 2_000_000, "names", "name\nAda")


def test_a_table_is_read_by_the_mark_it_has_most_of() -> None:
    assert [(1, ["a", "b,c", ""]), (3, ["d", "e\nf"]), (5, ["g"])] == table_lines(
        'a;"b,c";\n\nd;"e\nf"\ng\n', "f", ROWS
    )
    assert [(1, ["a", "b"])] == table_lines("a\tb", "f", ROWS)
    assert [(1, ["a\tb"])] == table_lines("a\tb", "f", ROWS, ",")
    assert [] == table_lines(" , \n", "f", ROWS)


def test_a_table_that_cannot_be_read_is_told(tmp_path: Path) -> None:
    file = tmp_path / "a.csv"

    def told(data: bytes) -> tuple[str, str, str, str]:
        file.write_bytes(data)
        with pytest.raises(Fault) as caught:
            table_text(file, ROWS)
        return caught.value.found, caught.value.expected, caught.value.example, caught.value.advice

    assert ("more than 2 MB", "names", "name\nAda", "") == told(b"a" * 2_000_001)
    assert "a" * 2_000_000 == (file.write_bytes(b"a" * 2_000_000), table_text(file, ROWS))[1]
    advice = "A spreadsheet has to be saved as .csv first; UTF-8 is best."
    assert ("bytes that are no text", "names", "name\nAda", advice) == told(b"a\0b")
    with pytest.raises(Fault) as caught:
        table_text(tmp_path, ROWS)
    assert "no class list that can be read (is a directory)" == caught.value.found
    with pytest.raises(Fault) as caught:
        table_lines('a,"b', "f.csv", ROWS, strict=True)
    assert ("f.csv", 1) == (caught.value.file, caught.value.line)


@pytest.mark.parametrize(
    ("encoding", "data"),
    [
        ("Mac Roman", b"Z\x91"),
        ("DOS (code page 850)", b"Z\x89"),
        ("UTF-8 that was read as Latin and saved again", "ZÃ«".encode()),
        ("UTF-8 that was read as Latin and saved again", "ZÃ«\x81".encode()),
    ],
)
def test_a_table_in_another_encoding_is_read_when_it_is_said(encoding: str, data: bytes, tmp_path: Path) -> None:
    (tmp_path / "a.csv").write_bytes(data)
    assert "Zë" == table_text(tmp_path / "a.csv", ROWS, encoding)[:2]


@pytest.mark.parametrize(
    ("text", "cell"),
    [
        ("=1+1", "'=1+1"),
        (" +x", "' +x"),
        ("-x", "'-x"),
        ("@x", "'@x"),
        ("|x", "'|x"),
        ("%x", "'%x"),
        ("＝x", "'＝x"),
        ("-1.5e-3", "-1.5e-3"),
        ("+2", "+2"),
        ("a=b", "a=b"),
        ("\tx", "'\\tx"),
    ],
)
def test_a_cell_is_no_formula(text: str, cell: str) -> None:
    assert (cell, text) == (safe(text), unguarded(safe(text)) if "\\" not in cell else text)
    assert f"\ufeff{cell},b\r\n\r\n".encode() == csv_file([[text, "b"], []])


def test_an_apostrophe_of_ones_own_stays() -> None:
    assert ["'a", "=a"] == [unguarded("'a"), unguarded("'=a")]


# ---------------------------------------------------------------------- files that come out
def test_a_suffix_says_the_format() -> None:
    assert {
        ".md": "markdown",
        ".markdown": "markdown",
        ".html": "html",
        ".HTM": "html",
        ".pdf": "pdf",
        ".tex": "latex",
        ".txt": "text",
        ".json": "json",
        ".jsonl": "json",
    } == {
        suffix: form_of(Path(f"a{suffix}"))
        for suffix in (".md", ".markdown", ".html", ".HTM", ".pdf", ".tex", ".txt", ".json", ".jsonl")
    }
    assert [".md", ".html", ".pdf", ".tex", ".txt", ".json"] == [SUFFIXES[form] for form in FORMATS]
    drawing_only(Path("a")), drawing_only(Path("a.SVG"))


def test_files_are_written_whole_or_not_at_all(tmp_path: Path) -> None:
    one, two = tmp_path / "one", tmp_path / "two"
    put_whole(one, b"1")
    os.chmod(one, 0o600)
    put_all([(one, b"2"), (two, b"3")])
    assert [b"2", b"3", 0o600, 0o644] == [
        *(each.read_bytes() for each in (one, two)),
        *(each.stat().st_mode & 0o777 for each in (one, two)),
    ]
    with pytest.raises(Fault) as caught:
        put_all([(one, b"4"), (tmp_path / "none" / "x", b"5")])
    assert (b"2", ["one", "two"]) == (one.read_bytes(), sorted(os.listdir(tmp_path)))
    assert (str(tmp_path / "none" / "x"), "-o page.md") == (caught.value.file, caught.value.example)
    with pytest.raises(Fault, match="Is a directory"):
        fit(tmp_path)
    fit(tmp_path / "new")


def test_new_files_are_all_written_or_none(tmp_path: Path) -> None:
    put_new([(tmp_path / "a.toml", b"1"), (tmp_path / "b.toml", b"2")])
    with pytest.raises(Fault) as caught:
        put_new([(tmp_path / "c.toml", b"3"), (tmp_path / "a.toml", b"4")])
    assert ["a.toml", "b.toml", b"1"] == [*sorted(os.listdir(tmp_path)), (tmp_path / "a.toml").read_bytes()]
    assert (str(tmp_path / "a.toml"), "explain new c-2") == (caught.value.file, caught.value.example)
    with pytest.raises(Fault, match="a place that cannot be written"):
        put_new([(tmp_path / "c.toml", b"3"), (tmp_path / "none" / "a.toml", b"4")])
    assert ["a.toml", "b.toml"] == sorted(os.listdir(tmp_path))


def test_places_that_are_one_and_places_that_are_none(tmp_path: Path) -> None:
    (tmp_path / "a").write_text("")
    assert [True, False, False] == [
        same(tmp_path / "a", tmp_path / each) for each in ("../" + tmp_path.name + "/a", "b", "a\0")
    ]
    make_folder(tmp_path / "x" / "y"), make_folder(tmp_path / "x" / "y")
    with pytest.raises(Fault) as caught:
        make_folder(tmp_path / "a")
    assert ("a place where no folder can be made (File exists)", "-o pages") == (
        caught.value.found,
        caught.value.example,
    )
    assert "a place that cannot be written (full)" == no_room("p", OSError(errno.ENOSPC, "full")).found
    assert "a place that cannot be written (odd)" == no_room("p", OSError("odd")).found
