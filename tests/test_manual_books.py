"""A small book whole, in each edition, and what is said of a book that is at fault, word for word."""

from __future__ import annotations

import json
import re
import tomllib
from decimal import Decimal
from pathlib import Path

import pytest
from books import BOOK, fenced, problem

from explain import Fault, work
from explain.document.passage import Page, Paragraph, Reference, Text
from explain.equation.terms import Quantity
from explain.input import Door
from explain.manual.blocks import Block
from explain.manual.build import Built
from explain.manual.chapters import read_chapter
from explain.manual.conventions import conventions, differing
from explain.manual.library import manual
from explain.manual.numbering import anchors, numbered
from explain.manual.record_json import packed, read
from explain.manual.topics import topics
from explain.problem.course import Course
from explain.problem.reader import read_problem
from explain.write.formats import written

KEPT = Path(__file__).with_name("cases") / "manual"
OBLIQUE = problem(2, direction="60 deg from back toward up").replace("[pivot]", 'ask = ["biceps", "reaction"]\n[pivot]')
FIRST = f"""# Levers

Before it, see [](#late) and [the jug](#jug-1), and how we [count](#conventions).

{fenced(problem(1), 'label=jug-1 index="jugs; buckets"')}
Between them.

```problem file="jug.toml" label=late number="7"
```
"""
SECOND = f"""# Slanting pulls

## A second part

{fenced('course = {positive = "clockwise", figures = 2}' + chr(10) + OBLIQUE, "label=oblique")}
"""
MORE = 'subtitle = "Of jugs"\ncourse = "class.toml"\ndiagram = 40\nworking = 50\n'


def make(folder: Path, **files: str) -> Path:
    given = {
        "one.md": FIRST,
        "two.md": SECOND,
        "jug.toml": problem(4, "3.5"),
        "class.toml": 'word = "torque"\nletter = "tau"\n',
        "book.toml": BOOK.format(chapters='"one.md", "two.md"', more=MORE),
        **{name.replace("_", "."): text for name, text in files.items()},
    }
    for name, text in given.items():
        (folder / name).write_text(text, "utf-8")
    return folder / "book.toml"


def built(book: Path, edition: str, only: str = "all", **more: str) -> tuple[Built, str]:
    out = book.parent / f"{edition}.md"
    done = manual(book, out, edition=edition, only=only, jobs=1, **more)  # type: ignore[arg-type]
    return done, out.read_text("utf-8")


def shown(text: str) -> str:
    """A book without its walkthroughs, which have tests of their own."""
    return re.sub(r"(?s)\*\*Given\*\*\n\n\| Letter \| Meaning \| As given.*?### Slips to expect", "...", text)


EDITIONS = (("student", "all"), ("instructor", "all"), ("answers", "all"), ("odd", "odd"))


@pytest.mark.parametrize(("edition", "only"), EDITIONS)
def test_a_book_is_the_one_that_was_read(edition: str, only: str, tmp_path: Path) -> None:
    found = shown(built(make(tmp_path), edition, only)[1])
    assert found.splitlines() == (KEPT / f"{edition}.md").read_text("utf-8").splitlines()


def test_a_second_build_tells_what_has_changed(tmp_path: Path) -> None:
    book, cache = make(tmp_path), str(tmp_path / "cache")
    assert not built(book, "answers", cache=cache)[0].errata
    make(tmp_path, jug_toml=problem(4, "2.5"), two_md="# Slanting pulls\n\n" + fenced(problem(3), "label=new"))
    assert list(built(book, "answers", cache=cache)[0].errata or ()) == [
        "7 Jug 4 (late): the problem has changed; biceps is 260 N, straight up, was 343 N, straight up.",
        "2.1 Jug 3 (new): new.",
        "2.1 Jug 2 (oblique): left out.",
    ]


# ---------------------------------------------------------------------- chapters that are at fault
PLAIN = fenced(problem(1), "label=jug")


@pytest.mark.parametrize(
    ("text", "line", "key", "found", "expected", "example"),
    [
        ("No title.\n", 1, "", "no title", "a heading of the first level: the title of the chapter", "# The elbow"),
        (
            "# A\n\n```problem label=Jug\ntitle = 1\n```\n",
            *(3, "label", '"Jug"', "small letters, figures and hyphens", "```problem label=treacle-tin"),
        ),
        (
            '# A\n\n```problem label=jug number="x"\ntitle = 1\n```\n',
            *(3, "number", '"x"', "a number of a problem", '```problem number="2.3"'),
        ),
        (
            "# A\n\n```problem lable=jug\ntitle = 1\n```\n",
            *(3, "", '"lable" behind the word problem', "one of label=, file=, number=, index="),
            "label=... in place of lable",
        ),
        (
            '# A\n\n```problem label="jug\ntitle = 1\n```\n',
            *(3, "", 'quotation marks that are not closed in "problem label="jug"', "words with = between them"),
            '```problem file="01-treacle-tin.toml"',
        ),
        (
            "# A\n\n```problem label=jug\n\n```\n",
            *(3, "", "an empty problem block", "a problem (TOML) inside it, or file= with the path of one"),
            "```problem label=treacle-tin",
        ),
        (
            '# A\n\n```problem file="jug.toml"\ntitle = 1\n```\n',
            *(3, "file", "a file and a problem inside the block", "one of the two", '```problem file="jug.toml"'),
        ),
        (
            "# A\n\n```problem\n[pivot]\n```\n",
            *(3, "label", "nothing, the word is missing", "a label that the book can refer to"),
            "```problem label=treacle-tin",
        ),
        (
            f"# A\n\n```problem label=one\n{problem(1)}",
            *(3, "", "a problem block that is not closed before the end of the file"),
            *("a line of three backticks behind the problem", "```"),
        ),
        (
            f"# A\n\n```problem label=one\ntitle = 1\n{PLAIN}",
            *(3, "", "a problem block that is not closed before line 5, where the next one begins"),
            *("a line of three backticks behind the problem", "```"),
        ),
    ],
)
def test_a_chapter_that_cannot_be_is_refused_word_for_word(
    text: str, line: int, key: str, found: str, expected: str, example: str
) -> None:
    with pytest.raises(Fault) as caught:
        read_chapter(Path("a.md"), text.encode(), Door("a.md", None))
    fault = caught.value
    told = (fault.file, fault.line, fault.key, fault.found, fault.expected, fault.example)
    assert told == ("a.md", line, key, found, expected, example)


def test_a_byte_that_is_no_text_is_told_with_its_line() -> None:
    with pytest.raises(Fault) as caught:
        read_chapter(Path("a.md"), b"# A\n\nx\xff", Door("a.md", None))
    assert (3, "a byte that is not UTF-8", "text in UTF-8") == (
        caught.value.line,
        caught.value.found,
        caught.value.expected,
    )


@pytest.mark.parametrize(
    ("one", "two", "said"),
    [
        (PLAIN + "\n" + PLAIN, "", ("label", "the label jug a second time (first in one.md, line 3)")),
        (
            fenced(problem(1), 'label=a number="3"') + "\n" + fenced(problem(2), 'label=b number="3"'),
            "",
            ("number", "the number 3 a second time (first in one.md, line 3)"),
        ),
        (PLAIN, fenced(problem(1), "label=one"), ("", '"#one" as the name of this chapter and of something else')),
        (
            PLAIN,
            "See [](#jog).\n",
            ("", 'a cross reference to "#jog", which nothing has as its label'),
        ),
    ],
)
def test_labels_that_clash_or_lead_nowhere_are_refused(one: str, two: str, said: tuple[str, str]) -> None:
    chapters = [
        read_chapter(Path(name), f"# T\n\n{text}".encode(), Door(name, None))
        for name, text in (("one.md", one), ("two.md", two))
    ]
    with pytest.raises(Fault) as caught:
        anchors(chapters, numbered(chapters, "chapter"))
    assert said == (caught.value.key, caught.value.found)


def test_running_numbers_are_the_last_that_is_printed() -> None:
    blocks = "\n".join(fenced(problem(n), f'label=j-{n} number="{said}"') for n, said in ((1, "A.7"), (2, "12.b4")))
    one = read_chapter(Path("one.md"), f"# T\n\n{blocks}\n{PLAIN}".encode(), Door("one.md", None))
    told = {label: tuple(each) for label, each in numbered([one], "chapter").items()}
    assert told == {"j-1": ("A.7", 7), "j-2": ("12.b4", 4), "jug": ("1.3", 3)}
    assert {label: each.printed for label, each in numbered([one, one._replace(content=())], "book").items()} == {
        **{"j-1": "A.7", "j-2": "12.b4"},
        "jug": "3",
    }
    assert {"one": "Chapter 1", "jug": "Problem 1.3", "conventions": "Conventions"}.items() <= anchors(
        [one], numbered([one], "chapter")
    ).items()


# ---------------------------------------------------------------------- conventions in words
def course_of(keys: dict[str, object]) -> Course:
    text = problem(1).replace("[pivot]", "ask = ['reaction']\n[pivot]") if keys.get("resultant") else problem(1)
    return read_problem({**tomllib.loads(text), "course": keys}).course


def said(course: Course) -> dict[str, str]:
    text = written([Page("x", (conventions(course),))], "markdown").decode()
    items = [" ".join(each.split()) for each in text.split("\n- ") if "**" in each]
    return {each.split("**")[1].rstrip(". "): each.split("**")[2].strip() for each in items}


def test_the_conventions_of_a_plain_course_are_told_in_order() -> None:
    assert said(course_of({})) == {
        "Turning": "We speak of moments (M), and take each force times its perpendicular distance from the pivot.",
        "Signs": "Counter-clockwise moments, and forces to the right and up, are positive.",
        "Balances": "What acts on a body at rest adds to zero.",
        "Weight": "The weight of a mass is the mass times g = $`9.81\\,\\mathrm{m/s^{2}}`$.",
        "Units": "Lengths stay in the unit they are given in; forces are worked in newtons, or in pounds where all are "
        "given in pounds.",
        "Order of algebra": "Products are multiplied out first, then the unknown is set free.",
        "Figures": "Answers have 3 figures and workings 5; a lone 5 rounds up; each line goes on with unrounded "
        "values.",
        "Joint force": "Of the force at a joint we find its size and direction, as it acts on the body cut free.",
    }


@pytest.mark.parametrize(
    ("keys", "name", "words"),
    [
        ({"positive": "up", "signs": "with the numbers"}, "Signs", "Up is positive, for forces and moments alike."),
        ({"positive": "clockwise"}, "Signs", "Clockwise moments, and forces to the right and up, are positive."),
        ({"lengths": "metres"}, "Units", "Lengths are worked in "),
        ({"forces": "lb"}, "Units", "forces are worked in pounds."),
        ({"forces": "N"}, "Units", "forces are worked in N."),
        ({"order": "divide first"}, "Order of algebra", "What stands beside the unknown is divided away first."),
        ({"order": "letters first"}, "Order of algebra", "Letters are kept to the end, and numbers put in last."),
        ({"ties": "even"}, "Figures", "a lone 5 rounds to the even figure;"),
        ({"carry": "as shown"}, "Figures", "each line goes on with the values as shown."),
        ({"figures": 2, "working_figures": 4}, "Figures", "Answers have 2 figures and workings 4;"),
        (
            {"method": "turning component"},
            "Turning",
            "take the part of each force across its distance from the pivot, ",
        ),
        ({"letter": "tau", "word": "torque"}, "Turning", "We speak of torques (τ),"),
        (
            {"balance": "two sides"},
            "Balances",
            "What turns clockwise is set equal to what turns counter-clockwise, what pushes up to what pushes down, "
            "and what pushes right to what pushes left; every term has plus.",
        ),
        ({"first": "moments"}, "Balances", "zero; the letters of the moments are written first, then their products."),
        (
            {"signs": "with the numbers"},
            "Balances",
            "zero; the sign of a moment comes in with its product; the letters of the moments are written first, then "
            "their products.",
        ),
        (
            {"positive": "up", "signs": "with the numbers"},
            "Balances",
            "zero; each force's letter has its sign in it, and the sign comes in with the number.",
        ),
        (
            {"resultant": ["parts"]},
            "Joint force",
            "we find its parts, as it acts on the body cut free. Parts are horizontal and vertical.",
        ),
        (
            {"resultant": ["parts", "size and direction"]},
            "Joint force",
            "find its parts and its size and direction, as",
        ),
        ({"axes": "along and across the forearm"}, "Joint force", "Parts are taken along the forearm and across it."),
    ],
)
def test_a_convention_is_told_as_the_course_has_it(keys: dict[str, object], name: str, words: str) -> None:
    assert words in said(course_of(keys))[name]


def test_at_a_problem_only_what_differs_is_told() -> None:
    assert differing(course_of({}), course_of({})) == ()
    (told,) = differing(course_of({"positive": "clockwise", "figures": 2}), course_of({}))
    assert isinstance(told, Paragraph)
    assert "".join(getattr(each, "text", "") for each in told.line) == (
        "In this problem. Signs: Clockwise moments, and forces to the right and up, are positive. Figures: Answers "
        "have 2 figures and workings 5; a lone 5 rounds up; each line goes on with unrounded values."
    )


# ---------------------------------------------------------------------- the index
SAMPLES = sorted((Path(__file__).parent.parent / "samples").glob("[0-4]*.toml"))


@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_the_topics_of_a_sample_are_those_that_were_read(path: Path) -> None:
    rows = dict(line.split(": ", 1) for line in (KEPT / "topics.txt").read_text("utf-8").splitlines())
    assert "; ".join(f"{each.heading[0]} {each.word}" for each in topics(work(path).outcome)) == rows[path.stem]


@pytest.mark.parametrize(
    ("asked", "found", "expected"),
    [
        ({"form": "word"}, 'the format "word"', "one of markdown, html, pdf"),
        ({"edition": "teacher"}, 'the edition "teacher"', "one of student, odd, answers, instructor"),
        ({"only": "third"}, 'the part "third"', "one of all, odd, even"),
    ],
)
def test_a_book_that_cannot_be_asked_for_is_refused(
    asked: dict[str, str], found: str, expected: str, tmp_path: Path
) -> None:
    with pytest.raises(Fault) as caught:
        manual(make(tmp_path), tmp_path / "out.md", jobs=1, **asked)  # type: ignore[arg-type]
    example = 'manual("book.toml", "book.html", edition="student")'
    assert (found, expected, example) == (caught.value.found, caught.value.expected, caught.value.example)


# ---------------------------------------------------------------------- what a cache keeps
def test_what_is_kept_is_not_worked_again_and_makes_the_same_book(tmp_path: Path) -> None:
    book, cache = make(tmp_path), str(tmp_path / "cache")
    first, text = built(book, "instructor", cache=cache)
    second, again = built(book, "instructor", cache=cache)
    assert ((3, 0), (0, 3), text) == ((first.fresh, first.kept), (second.fresh, second.kept), again)
    make(tmp_path, jug_toml=problem(4, "3.6"))
    changed, _ = built(book, "instructor", cache=cache)
    assert (1, 2, "<Built 'A small book': 3 problems, 0 in trouble>") == (changed.fresh, changed.kept, repr(changed))
    make(tmp_path, class_toml='word = "torque"\n')
    assert (3, 0) == built(book, "instructor", cache=cache)[0][3:5]


@pytest.mark.parametrize(
    "value",
    [Decimal("3.50"), (1, ("a",)), frozenset({2, 1}), None, Text("a & ü"), Quantity.of("2.50", "N cm")],
)
def test_a_record_is_written_whole(value: object) -> None:
    """What is printed is JSON that another program could read: objects with the kind, arrays, plain values."""
    told = json.loads(packed(value))
    expected: dict[str, object] = {
        "Decimal": {"is": "Decimal", "of": "3.50"},
        "tuple": [1, ["a"]],
        "frozenset": {"is": "frozenset", "of": [1, 2]},
        "NoneType": None,
        "Text": {"is": "Text", "text": "a & ü"},
        "Quantity": {"is": "Quantity", "number": {"is": "Decimal", "of": "2.50"}, "unit": [["N", 1], ["cm", 1]]},
    }
    assert told == expected[type(value).__name__]


@pytest.mark.parametrize("data", [b"3", b'{"is": "Text", "text": "x"}', b'{"is": "Nobody"}', b'{"a": 1}', b"[", b"{"])
def test_what_is_no_record_is_refused(data: bytes) -> None:
    with pytest.raises(ValueError, match="no record|no worked problem|Expecting"):
        read(data)


def test_a_problem_is_called_by_its_file_or_its_title_where_it_has_no_label(tmp_path: Path) -> None:
    (tmp_path / "A Jug.toml").write_text(problem(1))
    text = f'# T\n\n```problem file="A Jug.toml"\n```\n\n{fenced(problem(2), "")}\nSee [a\njug](#a-jug).\n'
    path = tmp_path / "one.md"
    chapter = read_chapter(path, text.encode(), Door(str(path), None))
    assert ["a-jug", "jug-2"] == [each.label for each in chapter.content if isinstance(each, Block)]
    (said,) = (each for each in chapter.content if isinstance(each, Paragraph))
    assert [(each.text, each.anchor) for each in said.line if isinstance(each, Reference)] == [("a jug", "a-jug")]
