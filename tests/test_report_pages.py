"""Whole reports, word for word: what a tutor and a student read of one working, its record; how workings come in."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from markings import ALL_RIGHT, ARM_LEFT_OUT, ROCK, TIN, line, slip, worked

from explain import Fault
from explain.document.passage import Judged
from explain.marking.marks.scheme import scheme_of
from explain.marking.report.accepting import accepted_line, with_accept
from explain.marking.report.files import json_lines
from explain.marking.report.lines import cut, numbered
from explain.marking.report.page import report
from explain.marking.report.prompts import chief
from explain.marking.report.submissions import Paper, file_name, papers
from explain.marking.report.without_numbers import Discreet, numbers
from explain.marking.slips.verdict import Given, LineVerdict, Marking
from explain.problem.model import Accept
from explain.write.formats import written

KEPT = Path(__file__).with_name("cases") / "reports"
MASS = slip("mass-for-weight", "Mass for a weight", ("tin.weight",), "accuracy", "The tin enters as 2.5 kg.")
# One of everything: a slip with another that is possible, what follows, the slip again, words, a question, a line that
# nothing explains, one that a person accepted.
MIXED = Marking(
    "The same tin, and the arm that holds it",
    (
        line(
            *(1, "Wt = 2.5 kg", "slips", "tin.weight", MASS, slip("unit-missing", "Unit missing")),
            question="Was it weighed in 2.5 kg or in 99 N?",
            says="The two sides differ.",
        ),
        line(2, "Wa = 1.8*9.81 = 17.7 N", "holds", "forearm and hand.weight", checked="claim"),
        line(
            *(3, "F*4.4 = 2.5*31 + 17.7*16.5", "carried", "total, elbow flexors.force"),
            since=1,
            read_as="F × 4.4 = 2.5 × 31 + 17.7 × 16.5",
        ),
        line(4, "F = 84 N", "carried", "elbow flexors.force", since=1),
        line(5, "here I looked", "aside"),
        line(6, "Wt = 2.5 kg, again", "slips", "tin.weight", MASS, again=True),
        line(
            *(7, "Q = 4*7", "unclear", "reaction.up"),
            says="Q is no letter of the problem.",
            question="What is Q?",
            note="Read as a product.",
            read_as="4 × 7",
        ),
        line(8, "R = 100", "slips", "reaction", says="The line is off."),
        line(9, "R = 196.8 N", "holds", "reaction", accepted="R = 196.8 N", checked="claim", since=8),
    ),
    (
        Given("elbow flexors", 84.0, "N", False, True, 4),
        Given("reaction", -100.0, "", False, False, 8, True),
        Given("reaction", 196.8, "N", True, False, 9, False, True),
    ),
)
PAGES = {
    "tutor": (MIXED, "tutor", 1),
    "tutor-of-one": (ARM_LEFT_OUT, "tutor", 1),
    "student": (MIXED, "student", 3),
    "student-with-one-hint": (ARM_LEFT_OUT, "student", 1),
    "all-right": (ALL_RIGHT, "student", 3),
}


def told(name: str) -> str:
    marking, audience, hints = PAGES[name]
    page = report(marking, worked(TIN), "tutor" if audience == "tutor" else "student", hints, "Ann")
    return written([page], "text", page.title).decode()


def record(audience: str) -> str:
    return json_lines(worked(TIN), [MIXED], audience, 3).decode().replace('}, {"', '},\n{"')


@pytest.mark.parametrize("name", PAGES)
def test_a_report_is_the_page_that_was_read(name: str) -> None:
    assert told(name).splitlines() == (KEPT / f"{name}.txt").read_text("utf-8").splitlines()


@pytest.mark.parametrize("audience", ["tutor", "student"])
def test_a_record_is_the_one_that_was_read(audience: str) -> None:
    assert record(audience).splitlines() == (KEPT / f"{audience}.json").read_text("utf-8").splitlines()


# ---------------------------------------------------------------------- what a line is about
ABOUT = {
    "tin.weight": ("how each weight is found", "Write the unit beside each number of the line."),
    "tin.mass": ("how each weight is found", "Write the unit beside each number of the line."),
    "tin.at": ("each distance, and where it begins", "Lay a finger on both ends of each distance in the drawing."),
    "tin.com": ("each distance, and where it begins", "Lay a finger on both ends of each distance in the drawing."),
    "*arm tin": ("how the lever arm is found", "Try the two ends: a force along the bone has no lever arm,"),
    "*reach tin": ("how the lever arm is found", "Try the two ends: a force along the bone has no lever arm,"),
    "*moment tin": ("each product, and its unit", "Read the units of each product."),
    "total": ("the balance of moments, term by term", "Count the arrows in your drawing that do not pass through the"),
    "elbow flexors.force": ("the step from the line before", "Put the number back into the line it was found from."),
    "*turning tin": ("how the force is taken apart", "Sketch the force with its two parts."),
    "*level tin": ("how the force is taken apart", "Sketch the force with its two parts."),
    "reaction.up": ("the balance of forces, term by term", "Count all the arrows in your drawing, the one at the"),
    "level": ("the balance of forces, term by term", "Count all the arrows in your drawing, the one at the"),
    "reaction": ("how the two parts are put together", "Lay the two parts at right angles."),
    "*angle reaction": ("the angle, and the line it is measured from", "Sketch the two parts to scale"),
    "tin.stress": ("the step from the line before", "Read the units: a force over an area."),
    "g": ("the step from the line before", "Work the line out once more from the one before it, a step at a time."),
}


@pytest.mark.parametrize("key", ABOUT)
def test_a_wrong_line_says_where_to_look_and_what_to_check(key: str) -> None:
    page = report(Marking("x", (line(1, "a = 1", "slips", key),), ()), worked(TIN), "student", 0)
    said, (look, check) = " ".join(written([page], "text", "x").decode().split()), ABOUT[key]
    assert f"lines before it. Look at {look}. A check you can do. {check}" in said
    assert "After the change. Go on from there. If you see it otherwise." in said


@pytest.mark.parametrize(
    ("uses", "about"),
    [
        ("tin.weight, *arm tin", "arm"),
        ("total, elbow flexors.force", "moments"),
        ("reaction, reaction.up, *angle reaction", "direction"),
        ("tin.at, tin.weight", "weight"),
        ("*turning tin, *moment tin", "moment"),
        ("elbow flexors.force, reaction.up", "forces"),
    ],
)
def test_a_line_is_about_the_last_thing_that_it_finds(uses: str, about: str) -> None:
    assert about == chief(uses.split(", "), scheme_of(worked(TIN).outcome))


def box(*lines: LineVerdict, answers: tuple[Given, ...] = (), problem: Path = TIN) -> str:
    page = report(Marking("x", lines, answers), worked(problem))
    return " ".join(
        written([page], "text", "x").decode().split("┘")[0].partition("│")[2].replace("│", " ").split()[:-1]
    )


HELD = (line(1, "F = 239 N", "holds", "elbow flexors.force"), line(2, "R = 197 N", "holds", "reaction"))
BOTH = (Given("elbow flexors", 239, "N", True, line=1), Given("reaction", 197, "N", True, line=2))


@pytest.mark.parametrize(
    ("lines", "answers", "said"),
    [
        ((), (), "No line of working was found: words only."),
        ((line(1, "so be it", "aside"),), (), "No line of working was found: words only."),
        (HELD, BOTH, "Every line holds. All that is asked for is there."),
        (HELD, BOTH[:1], "Every line holds. Still asked for: the force at the joint."),
        (HELD, (), "Every line holds. Still asked for: elbow flexors and the force at the joint."),
        (
            HELD,
            (BOTH[0], Given("reaction", 197, "", True, line=2, unit_missing=True)),
            "Every line holds. The answer in line 2 has no unit yet.",
        ),
        (
            HELD,
            (BOTH[0], Given("reaction", 197, "", True, unit_missing=True)),
            "Every line holds. The answer has no unit yet.",
        ),
        (
            (*HELD, line(3, "Q", "unclear"), line(4, "P", "unclear")),
            BOTH,
            "Nothing wrong was found, but lines 3 and 4 could not be followed: see the question there.",
        ),
        (
            (*HELD, line(3, "a", "slips")),
            BOTH,
            "Lines 1 and 2 hold. Line 3 is the first that does not hold: look there.",
        ),
        (
            (HELD[0], line(2, "R = 197", "holds", "reaction", lacks="direction-missing")),
            BOTH,
            "Every line holds. Still asked for: the direction of the force at the joint.",
        ),
        (
            (HELD[0], line(2, "R = 197", "holds", "reaction", lacks="angle-reference-not-stated")),
            BOTH,
            "Every line holds. Still asked for: the line that the angle of the force at the joint starts from.",
        ),
    ],
)
def test_the_box_of_a_student_says_how_it_stands(
    lines: tuple[LineVerdict, ...], answers: tuple[Given, ...], said: str
) -> None:
    assert said == box(*lines, answers=answers)


def test_what_is_behind_a_wrong_line_is_looked_at_again() -> None:
    lines = (line(1, "a", "slips"), line(2, "words", "aside"), line(3, "b", "holds"))
    said = " ".join(written([report(Marking("x", lines, ()), worked(TIN))], "text", "x").decode().split())
    assert "After the change. Go on from there, and have the later lines looked at again." in said


def test_an_oblique_joint_force_is_told_by_its_parts() -> None:
    lines = (
        line(1, "Wr = 58.9 N", "holds", "rock.weight"),
        line(2, "d = .045 sin70", "holds", "*arm biceps"),
        line(3, "M = 20.6", "holds", "*moment rock"),
        line(4, ".045 sin70 F = 23.3", "holds", "total, biceps.force"),
        line(5, "Rx = 188", "holds", "reaction.right"),
    )
    page = report(Marking("x", lines, (Given("reaction.right", 188.0, "N", True, line=5),)), worked(ROCK))
    said = written([page], "text", "x").decode()
    right = [each.removeprefix("- ") for each in said.splitlines() if each.startswith("- ")]
    assert right == [
        "The weight of the rock is right.",
        "The lever arm of the biceps is right.",
        "The torque of the rock is right.",
        "The torques are balanced about the elbow.",
        "The equation for the biceps in line 4 is right.",
        "The value of the horizontal part of the force at the elbow is right.",
    ]


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ("F = 550.3 N", "Still asked for: the force at the joint."),
        (
            "F = 550.3 N\nRx = 188.2 N",
            "Still asked for: the vertical part of the force at the joint and the force at the joint as a whole.",
        ),
        ("Rx = 188.2 N\nRy = -441.6 N", "Still asked for: biceps and the force at the joint as a whole."),
    ],
)
def test_where_parts_and_the_whole_are_asked_for_what_is_missing_is_named(typed: str, said: str) -> None:
    """550.3, 188.2 and 441.6 N: the rock's working in test_marks.py."""
    page = report(worked(ROCK).mark(typed), worked(ROCK))
    assert said in " ".join(written([page], "text", "x").decode().replace("│", " ").split())


# ---------------------------------------------------------------------- small parts of a page
@pytest.mark.parametrize(
    ("found", "said"),
    [
        ((3,), "line 3"),
        ((3, 4), "lines 3 and 4"),
        ((3, 4, 5), "lines 3 to 5"),
        ((3, 4, 6), "lines 3, 4 and 6"),
        ((1, 9), "lines 1 and 9"),
    ],
)
def test_lines_are_named_by_their_numbers(found: tuple[int, ...], said: str) -> None:
    assert said == numbered(found)


def test_what_is_long_beyond_all_use_is_cut() -> None:
    assert (cut("x" * 2000), cut("x" * 2001)) == ("x" * 2000, f"{'x' * 2000}… (1 characters more)")


@pytest.mark.parametrize(
    ("typed", "read", "shown"),
    [
        ("F*4", "F × 4", False),
        ("F·4 - 3", "F×4−3", False),
        ("F 4", "F × 4", True),
        ("F", "", False),
        ("4.4F", "4.4 × F", True),
    ],
)
def test_a_reading_is_shown_where_it_says_more_than_the_line(typed: str, read: str, shown: bool) -> None:
    page = report(Marking("x", (line(1, typed, read_as=read),), ()), worked(TIN), "tutor")
    (judged,) = (each for each in page.passages if isinstance(each, Judged))
    assert shown == bool(judged.lines[0].notes)


def test_lines_without_a_word_are_left_out_where_they_say_nothing() -> None:
    lines = (line(1, " "), line(2, "", "aside"), line(3, "", "slips"), line(4, "x"))
    page = report(Marking("x", lines, ()), worked(TIN), "tutor")
    (judged,) = (each for each in page.passages if isinstance(each, Judged))
    assert [3, 4] == [each.number for each in judged.lines]


def test_numbers_are_found_in_words() -> None:
    assert [1234.5, 3.25, 2e-5, 7.0] == list(numbers("1 234.5 N, 3,25 m and 2e-5, F7"))


@pytest.mark.parametrize(
    ("said", "kept"),
    [
        ("Line 9 differs. Take 31 cm.", "Line 9 differs. Take 31 cm."),
        ("It is 12. Is it 31?", "Is it 31?"),
        ("Lines 3, 4 and 12 follow! Take 77.", "Lines 3, 4 and 12 follow! Take 77."),
        ("It comes to 239.9 N. So it is.", "So it is."),
        ("It comes to 241 N.", "It comes to 241 N."),
        ("See lines 3 to 44.", "See lines 3 to 44."),
    ],
)
def test_a_student_is_told_no_number_but_their_own_and_none_that_is_the_answer(said: str, kept: str) -> None:
    known = frozenset((77.0, 239.9, 241.0))
    assert kept == Discreet(known, frozenset((31.0,)), (239.0,)).words(said)


# ---------------------------------------------------------------------- workings as they come in
def put(folder: Path, name: str, content: str | bytes) -> Path:
    path = folder / name
    path.write_bytes(content if isinstance(content, bytes) else content.encode())
    return path


MANY = "line,who\nF = 3,Ann\nR = 4,Bo\nF = 5, Ann \n,\n"


@pytest.mark.parametrize(
    ("name", "content", "asked", "found"),
    [
        ("a.txt", "- F = 3\n```\n", {}, [("", "- F = 3\n```\n")]),
        ("a", "F = 3", {}, [("", "F = 3")]),
        ("a.MD", "```txt\n- `F = 3`\n~~~\n$$\n* R = 4\n+ 2\n-3", {}, [("", "\nF = 3\n\n\nR = 4\n2\n-3")]),
        ("a.csv", MANY, {}, [("", "F = 3\nR = 4\nF = 5\n")]),
        ("a.csv", MANY, {"by": "who"}, [("Ann", "F = 3\nF = 5"), ("Bo", "R = 4"), ("without a name", "")]),
        ("a.csv", "who;answer\nAnn;F = 3\n", {}, [("", "F = 3")]),
        ("a.csv", "who\tText \nAnn\tF = 3\n", {}, [("", "F = 3")]),
        ("a.csv", "\ufeffx\nF = 3\n", {}, [("", "F = 3")]),
        ("a.csv", 'working\n"F = 3\nR = 4"\n"  "\nR = 5\n', {}, [("row 2", "F = 3\nR = 4"), ("row 4", "R = 5")]),
        ("a.csv", "a,b\n1,2\n", {"column": "b"}, [("", "2")]),
    ],
)
def test_a_file_is_one_working_or_several(
    name: str, content: str, asked: dict[str, str], found: list[tuple[str, str]], tmp_path: Path
) -> None:
    assert [Paper(*each) for each in found] == [*papers(put(tmp_path, name, content), **asked)]


@pytest.mark.parametrize(
    ("name", "content", "asked", "said"),
    [
        (
            "a.pdf",
            "x",
            {},
            ('the suffix ".pdf"', "a working as .txt, .md or .csv", "explain mark jug.toml working.txt"),
        ),
        (
            *("a.txt", "x", {"by": "who"}),
            (
                "a column asked of what is no table",
                "a .csv file for --column and --by",
                "explain mark jug.toml class.csv --column working",
            ),
        ),
        (
            *("a.txt", " \n\t\r\n", {}),
            ("nothing: the working is empty", "a line of working a line", "F*4.0 = 29.43*33"),
        ),
        (
            *("a.txt", b"F = 3" + b"\x01" * 9, {}),
            (
                "bytes that are no text",
                "plain text; a photograph, a PDF or a document has to be typed out",
                "F*4.0 = 29.43*33",
            ),
        ),
        (
            *("a.csv", "line,who\n", {}),
            ("a table without rows", "the names of the columns, then a row for each line", "line,working"),
        ),
        (
            *("a.csv", MANY, {"column": "lin"}),
            ('no column "lin"', 'one of the columns "line", "who"', "--column line"),
        ),
        (*("a.csv", MANY, {"by": "whom"}), ('no column "whom"', 'one of the columns "line", "who"', "--by who")),
        (
            *("a.csv", "a,b\n1,2\n", {}),
            ('the columns "a", "b", and none of them named', "which column holds the working", "--column b"),
        ),
    ],
)
def test_what_is_no_working_is_refused_word_for_word(
    name: str, content: str | bytes, asked: dict[str, str], said: tuple[str, str, str], tmp_path: Path
) -> None:
    path = put(tmp_path, name, content)
    with pytest.raises(Fault) as caught:
        papers(path, **asked)
    assert (str(path), *said) == (caught.value.file, caught.value.found, caught.value.expected, caught.value.example)


def test_a_file_that_is_not_there_and_one_that_is_too_long_are_refused(tmp_path: Path) -> None:
    with pytest.raises(Fault) as missing:
        papers(tmp_path / "none.txt")
    assert "no file that can be read (no such file or directory)" == missing.value.found
    told = []
    for content in ("F = 33\n" * 142_858, "F" * 4_000_001):
        with pytest.raises(Fault) as long:
            papers(put(tmp_path, "long.txt", content))
        told.append((long.value.found, long.value.expected, long.value.example))
    how = ("a working of a few pages at most", "explain mark jug.toml working.txt")
    assert [("more than 1,000,000 characters", *how), ("more than 4 MB", *how)] == told


@pytest.mark.parametrize(
    ("name", "file"),
    [("", "w"), ("Ann B.", "w-Ann-B"), ("../etc/x", "w-etc-x"), ("-_-", "w"), ("a" * 99, f"w-{'a' * 60}")],
)
def test_a_report_of_any_name_has_a_file_to_stand_in(name: str, file: str) -> None:
    assert file == file_name(Paper(name, ""), "w")


@pytest.mark.parametrize(
    ("content", "taken"), [("F" * 99 + "\x01", True), ("F" * 98 + "\x01\x02", True), ("F" * 32 + "\x01", False)]
)
def test_a_few_signs_that_are_no_text_are_let_in(content: str, taken: bool, tmp_path: Path) -> None:
    path = put(tmp_path, "a.txt", content)
    if taken:
        assert len(papers(path)) == 1
    else:
        with pytest.raises(Fault, match="bytes that are no text"):
            papers(path)


@pytest.mark.parametrize("hints", range(4))
def test_a_student_s_record_has_hints_up_to_the_level_and_no_slip_before_the_last(hints: int) -> None:
    line = json.loads(json_lines(worked(TIN), [MIXED], "student", hints))["lines"][0]
    assert line["hints"] == ["The light hint.", "The medium hint.", "The strong hint."][:hints]
    assert (line["slip"], line["says"]) == (
        ("mass-for-weight", "The tin enters as 2.5 kg.") if hints == 3 else (None, "")
    )


def test_forces_that_are_balanced_are_told_where_the_joint_force_is_not() -> None:
    lines = (
        line(1, "Jy + F − 24.5 − 17.7 = 0", "holds", "upright"),
        line(2, "d = 0.31", "holds", "tin.at, *moment tin"),
    )
    said = written([report(Marking("x", lines, ()), worked(TIN))], "text", "x").decode()
    assert [each for each in said.splitlines() if each.startswith("- ")] == [
        "- The moment of the tin is right.",
        "- The forces are balanced, the one at the pivot with them.",
    ]


# ---------------------------------------------------------------------- a person's last word
@pytest.mark.parametrize(
    ("before", "accept", "after"),
    [
        (b"", Accept("F = 3"), b'\n[[accept]]\nline = "F = 3"\n'),
        (b"a = 1\n", Accept("F = 3", "so"), b'a = 1\n\n[[accept]]\nline = "F = 3"\nbecause = "so"\n'),
        (b"a = 1", Accept("F", after=("x",)), b'a = 1\n\n[[accept]]\nline = "F"\nafter = ["x"]\n'),
        (b"a = 1\r\n", Accept("F"), b'a = 1\r\n\r\n[[accept]]\r\nline = "F"\r\n'),
        (b"a = 1\r\nb = 2", Accept("F"), b'a = 1\r\nb = 2\r\n\r\n[[accept]]\r\nline = "F"\r\n'),
    ],
)
def test_an_accepted_line_stands_at_the_end_in_the_file_s_own_line_ends(
    before: bytes, accept: Accept, after: bytes
) -> None:
    assert with_accept(before, accept) == after


class Judge:
    """Gives one marking, whatever is typed; a line rests on the first."""

    def __init__(self, *lines: LineVerdict) -> None:
        self.lines = lines

    def mark(self, _: str) -> Marking:
        return Marking("x", self.lines, ())

    def rests_on(self, _: str, number: int) -> tuple[int, ...]:
        return (1,) if number > 1 else ()


LINES = (
    line(1, " a  =  1 "),
    line(2, "b = 2", "carried", since=1),
    line(3, "c = 3", "carried"),
    line(4, "words", "aside"),
    line(5, " "),
    line(6, "d = 4", "holds", accepted="d = 4"),
    line(7, " e = 5 ", "slips"),
    line(8, "f = 6", "unclear"),
)


@pytest.mark.parametrize(
    ("number", "found"),
    [
        (1, "line 1, which holds already"),
        (2, "line 2, which follows from line 1"),
        (3, "line 3, which follows from an earlier line"),
        (4, 'line 4, which is words or was replaced: "words"'),
        (5, "line 5, on which nothing is written"),
        (6, "line 6, which is accepted already"),
        (9, "line 9 of a working of 8 lines"),
    ],
)
def test_only_a_line_that_does_not_hold_can_be_accepted(number: int, found: str) -> None:
    with pytest.raises(Fault) as caught:
        accepted_line(Judge(*LINES), "", number)  # type: ignore[arg-type]
    how = "the number of a line that does not hold or could not be followed"
    told = (caught.value.found, caught.value.expected, caught.value.example, caught.value.advice)
    assert told == (found, how, "--accept 7", "")


def test_a_line_is_accepted_behind_what_it_rests_on() -> None:
    accepts = [accepted_line(Judge(*LINES), "", number, "so") for number in (7, 8)]  # type: ignore[arg-type]
    assert accepts == [Accept("e = 5", "so", ("a = 1",)), Accept("f = 6", "so", ("a = 1",))]
    with pytest.raises(Fault) as caught:
        accepted_line(Judge(LINES[0]), "", 2)  # type: ignore[arg-type]
    assert ("line 2 of a working of 1 line", "", "In this working there is none.") == (
        caught.value.found,
        caught.value.example,
        caught.value.advice,
    )
