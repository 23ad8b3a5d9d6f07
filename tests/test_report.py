"""The report on a working: what a student sees, what a tutor sees, that no answer gets out, and that typed text
stays text in every format.
"""

from __future__ import annotations

import json
import re
from collections.abc import Iterator
from dataclasses import replace
from io import BytesIO

import pikepdf
import pytest
from lxml import html as reader
from markdown_it import MarkdownIt
from markings import ALL_RIGHT, ARM_LEFT_OUT, LEFT_OUT, ROCK, TIN, line, slip, worked
from pdf_words import everything

from explain import work
from explain.marking.report.without_numbers import discreet, numbers
from explain.document.passage import Judged, JudgedLine, Page
from explain.marking.report.page import report
from explain.marking.report.files import json_lines, written
from explain.marking.slips.verdict import Marking
from explain.write.markdown.pages import markdown
from explain.write.text.pages import text

FORMS = ("markdown", "html", "pdf", "text", "json")
HOSTILE = (
    "<script>alert(1)</script>",
    "</code></td></tr></table><h1>x</h1>",
    "![x](http://evil.invalid/x.png)",
    "[a](javascript:alert(1))",
    "`",
    "``` a ` b ```",
    "a | b | c",
    "\\| x",
    "$\\input{/etc/passwd}$",
    "$$x$$",
    "\\write18{id}",
    "# F = 302",
    "~~F~~",
    "\x1b[31mred",
    "\u202eabc",
    "\x00",
    "a\x85b\u2028c",
    "\ud800",
    "腱の力 = 5",
    "عضلة",
    "F = 3" + " + 1" * 3000,
    "y" * 10_000,
    "   F = 3   ",
    "=" * 50,
    "|---|---|",
    "<!--",
    "]]>",
    "&lt;b&gt;",
)


def shown(marking: Marking, audience: str = "student", hints: int = 3, form: str = "text") -> str:
    """A report as text; a PDF as the text, titles and alternative texts in it."""
    walkthrough = worked(TIN)
    if form == "json":
        return json_lines(walkthrough, [marking], audience, hints).decode()
    page = report(marking, walkthrough, "tutor" if audience == "tutor" else "student", hints)
    content = written([page], form, walkthrough.title)
    return _pdf_words(content) if form == "pdf" else content.decode()


def _pdf_words(content: bytes) -> str:
    with pikepdf.open(BytesIO(content)) as document:
        return everything(document)


# ---------------------------------------------------------------------- for a student
def test_the_box_names_the_first_line_that_does_not_hold() -> None:
    assert "Line 1 holds. Line 3 is the first that does not hold" in shown(ARM_LEFT_OUT)


def test_lines_behind_it_are_named_and_not_judged() -> None:
    table = shown(ARM_LEFT_OUT)
    assert "→ follows from line 3" in table and "… not looked at yet" in table
    assert "wrong sense" not in table


def test_every_verdict_has_a_sign_and_a_word() -> None:
    judged = next(each for each in report(ARM_LEFT_OUT, worked(TIN)).passages if isinstance(each, Judged))
    assert [(each.sign, each.word) for each in judged.lines] == [
        ("✓", "holds"),
        ("·", "words"),
        ("✗", "does not hold"),
        ("→", "follows from line 3"),
        ("…", "not looked at yet"),
    ]
    assert [each.number for each in judged.lines if each.marked] == [3]


@pytest.mark.parametrize("level", range(4))
def test_hints_come_up_to_the_level_asked(level: int) -> None:
    told = " ".join(shown(ARM_LEFT_OUT, hints=level).split())
    assert [hint in told for hint in LEFT_OUT.hints] == [place < level for place in range(3)]
    assert (LEFT_OUT.title in told) == (level == 3)
    assert "Look at the balance of moments, term by term." in told


def test_what_is_right_already_is_named() -> None:
    assert "The weight of the tin is right." in shown(ARM_LEFT_OUT)
    assert "Both weights are there." in shown(ALL_RIGHT)


def test_a_line_that_repeats_the_slip_is_said_to_be_alike() -> None:
    again = replace(
        ARM_LEFT_OUT,
        lines=(*ARM_LEFT_OUT.lines[:5], line(6, "F*5 - 24.525*31 = 0", "slips", "total", LEFT_OUT, again=True)),
    )
    assert "→ like line 3" in shown(again)


def test_two_slips_of_one_line_both_have_their_hint_and_are_asked_about_from_the_second_level() -> None:
    other = slip("sign", "Sign of a term", ("total",))
    two = replace(
        ARM_LEFT_OUT,
        lines=tuple(
            replace(each, slips=(LEFT_OUT, other), question="Which was it: this; or that?")
            if each.number == 3
            else each
            for each in ARM_LEFT_OUT.lines
        ),
    )
    assert "Or: The light hint." in shown(two, hints=1)
    assert ["Which was it" in shown(two, hints=level) for level in range(4)] == [False, False, True, True]


def test_a_working_that_holds_says_so_and_whether_all_that_is_asked_for_is_there() -> None:
    assert "Every line holds. All that is asked for is there." in shown(ALL_RIGHT)
    half = replace(ALL_RIGHT, lines=ALL_RIGHT.lines[:2], answers=ALL_RIGHT.answers[:1])
    assert "Still asked for: the force at the joint." in shown(half)


@pytest.mark.parametrize(
    ("typed", "asked"),
    (
        ("F = 550.3 N\nR = 480 N", "the direction of the force at the joint"),
        ("F = 550.3 N\nR = 480 N, 66.9 deg", "the line that the angle of the force at the joint starts from"),
    ),
)
def test_a_direction_that_is_not_told_is_still_asked_for(typed: str, asked: str) -> None:
    """550.3 N, 480 N and 66.9° are those of the rock on the palm: the contract's answers."""
    told = text(report(worked(ROCK).mark(typed), worked(ROCK)), 200)
    assert f"Every line holds. Still asked for: {asked}." in told
    assert "All that is asked for is there" not in told


def test_one_part_of_the_joint_force_is_not_the_whole() -> None:
    """By hand: 20 N at 20 cm against 4 cm: 100 N at 30° to the forearm: 100 cos 30 = 86.6 N and 50 − 20."""
    problem = {
        "title": "A cup",
        "pivot": {"name": "elbow", "bone": "humerus"},
        "ask": ["biceps", "reaction.right", "reaction.up"],
        "segment": [{"name": "forearm", "length": "30 cm"}],
        "load": [{"name": "cup", "weight": "20 N", "at": "20 cm"}],
        "muscle": [{"name": "biceps", "at": "8 cm", "direction": "30 deg from back toward up"}],
    }
    asked = work(problem)
    told = text(report(asked.mark("F = 20*20/(8 sin 30) = 100 N\nR_y = -30 N"), asked), 200)
    assert "Every line holds. Still asked for: the horizontal part of the force at the joint." in told
    assert "The value of the vertical part of the force at the elbow is right." in told
    told = text(report(asked.mark("F = 20*20/(8 sin 30) = 100 N\nR_y = -30 N\nR_x = 86.6 N"), asked), 200)
    assert "Every line holds. All that is asked for is there." in told
    assert "The value of the force at the elbow is right." in told


@pytest.mark.parametrize("audience", ("student", "tutor"))
def test_a_line_that_only_computes_and_one_that_is_true_have_one_verdict_and_two_sentences(audience: str) -> None:
    told = report(worked(TIN).mark("3*4 = 12\nF = 239 N"), worked(TIN), audience)  # type: ignore[arg-type]
    lines = next(each for each in told.passages if isinstance(each, Judged)).lines
    assert {each.word for each in lines} == {"holds"}
    said = " ".join(text(told).split())
    assert "The arithmetic of this line holds." in said and "This line is true of the problem." in said


def test_a_missing_unit_is_named() -> None:
    bare = replace(ALL_RIGHT, answers=(replace(ALL_RIGHT.answers[0], unit="", unit_missing=True), ALL_RIGHT.answers[1]))
    assert "The answer in line 2 has no unit yet." in shown(bare)


def test_a_line_that_could_not_be_followed_has_its_question() -> None:
    unclear = Marking(
        "x",
        (
            line(
                1,
                "Q = 3",
                "unclear",
                says="It uses Q, which stands for nothing yet.",
                question="What does this letter stand for?",
            ),
        ),
        (),
    )
    told = shown(unclear, hints=0)
    assert "could not be followed" in told and "What does this letter stand for?" in told


def test_a_working_of_words_alone_is_no_working() -> None:
    assert "words only" in shown(Marking("x", (line(1, "I do not know", "aside"),), ()))


def test_the_tone_is_about_the_line_and_never_about_the_person() -> None:
    for marking in (ARM_LEFT_OUT, ALL_RIGHT):
        for audience in ("student", "tutor"):
            assert not re.search(
                r"(?i)\b(mistake|silly|stupid|careless|error|you (?:failed|forgot|should|are)|the student)\b",
                shown(marking, audience),
            )


# ---------------------------------------------------------------------- for a tutor
def test_a_tutor_sees_every_issue_with_its_slip_its_hints_and_the_marks() -> None:
    told = " ".join(shown(ARM_LEFT_OUT, "tutor").split())
    for each in (
        "Lines 3 and 6 do not hold. 2 of 6 marks.",
        "Line 3: Segment weight left out",
        "Line 6: Joint force with the wrong sense",
        *LEFT_OUT.hints,
        "Line 5 follows from it.",
        "239 N",
    ):
        assert each in told


def test_a_line_that_no_slip_explains_says_so() -> None:
    assert "no slip is known that explains it" in shown(
        Marking("x", (line(1, "F = 3", "slips", "elbow flexors.force"),), ()), "tutor"
    )


# ---------------------------------------------------------------------- nothing gets out
def secrets() -> Iterator[str]:
    """True answers and corrected numbers of the tin with its arm, in several roundings; those that the working or
    the problem has are none.
    """
    for value in (239.0062, 196.8232, 17.658, 291.357, 1051.632, 23_900.62 / 100, 42.183):
        for figures in range(3, 7):
            yield f"{value:.{figures}g}".rstrip(".")
        for places in range(3):
            yield f"{value:.{places}f}"


@pytest.mark.parametrize("form", FORMS)
@pytest.mark.parametrize("hints", (0, 3))
def test_no_format_for_a_student_holds_an_answer_or_a_corrected_number(form: str, hints: int) -> None:
    told = re.sub(r"(?s)<style>.*?</style>", "", shown(ARM_LEFT_OUT, hints=hints, form=form))
    assert form == "json" or "Line 3" in told
    allowed = " ".join(each.text for each in ARM_LEFT_OUT.lines)
    for secret in {*secrets(), *(each.replace(".", ",") for each in secrets())}:
        if secret not in allowed:
            assert not re.search(rf"(?<![\d.,]){re.escape(secret)}(?![\d])", told), secret


@pytest.mark.parametrize("form", ("markdown", "html", "pdf", "text"))
def test_the_search_for_leaks_finds_them_in_what_a_tutor_sees(form: str) -> None:
    told = shown(ARM_LEFT_OUT, "tutor", form=form)
    assert any(re.search(rf"(?<![\d.,]){re.escape(each)}(?!\d)", told) for each in secrets() if len(each) > 2)


def test_an_engine_that_tells_too_much_is_not_passed_on() -> None:
    loud = replace(
        LEFT_OUT, hints=("It should be 239 N.", "Then the weight is 17.7 N. Look at line 3.", "Use 1.8 kg too.")
    )
    spoken = replace(ARM_LEFT_OUT.lines[2], slips=(loud,), says="The true sum is 1051.6.", note="239.0 is right.")
    marking = replace(ARM_LEFT_OUT, lines=(*ARM_LEFT_OUT.lines[:2], spoken, *ARM_LEFT_OUT.lines[3:]))
    for form in ("text", "json"):
        told = shown(marking, hints=3, form=form)
        assert not re.search(r"239|17\.7|1051", told)
        assert "Look at line 3." in told and "Use 1.8 kg too." in told


def test_numbers_are_found_as_they_are_written() -> None:
    assert list(numbers("3,5 N and 1 410 N, 12.5 cm; 4e3")) == [3.5, 1410.0, 12.5, 4000.0]


def test_a_number_that_the_student_typed_may_be_said_again_but_not_where_it_is_the_answer() -> None:
    marking = Marking("x", (line(1, "F = 172.8"), line(2, "or 239")), ())
    mouth = discreet(marking, worked(TIN).outcome)
    assert [mouth.may(each) for each in ("172.8 N", "31 cm", "239 N", "in line 239", "77.5")] == [
        True,
        True,
        False,
        True,
        False,
    ]


# ---------------------------------------------------------------------- typed text stays text
@pytest.mark.parametrize("typed", HOSTILE)
def test_what_a_student_types_is_never_markup(typed: str) -> None:
    lines = (
        line(1, typed, "slips", "total", LEFT_OUT),
        line(2, typed, "unclear", says=typed, question=typed, note=typed),
    )
    page = report(Marking("x", lines, ()), worked(ROCK), "tutor")
    tree = reader.fromstring(written([page], "html", "x"))
    plain = MarkdownIt("commonmark", {"html": True}).enable("table").render(markdown(page))
    assert not tree.xpath("//script | //img | //a[not(starts-with(@href, '#'))]") and len(tree.xpath("//h1")) == 1
    assert len(tree.xpath("//table[@class='judged']/tbody/tr")) == 2
    inside = reader.fromstring(f"<div>{plain}</div>")
    assert not inside.xpath("//script | //img | //a") and len(inside.xpath("//h1")) == 1
    assert [len(row) for row in inside.xpath("(//table)[1]/tbody/tr")] == [3, 3]
    assert "\x1b" not in text(page) and max(map(len, text(page, 100).splitlines())) <= 100


@pytest.mark.parametrize("typed", ("<script>", "`a` | \\| b", "F*4.4 - 24.5*31 = 0", "$x$ _y_ **z**", "  two  spaces"))
def test_a_typed_line_comes_through_letter_for_letter(typed: str) -> None:
    page = Page("x", (Judged("Lines", (JudgedLine(1, typed, "✓", "holds"),)),))
    assert reader.fromstring(written([page], "html", "x")).xpath("//code")[0].text == typed
    code = reader.fromstring(MarkdownIt("commonmark").enable("table").render(markdown(page))).xpath("//code")[0].text
    assert code.strip() == typed.strip()
    assert typed in text(page)


def test_a_long_working_with_a_line_longer_than_a_sheet_becomes_a_pdf() -> None:
    lines = tuple(line(number, each, "holds") for number, each in enumerate(HOSTILE, 1))
    with pikepdf.open(BytesIO(written([report(Marking("x", lines, ()), worked(TIN))], "pdf", "x"))) as document:
        assert len(document.pages) > 1


def test_a_verdict_is_read_aloud_by_its_word_and_rows_have_headers() -> None:
    tree = reader.fromstring(shown(ARM_LEFT_OUT, form="html"))
    assert {each.get("aria-hidden") for each in tree.xpath("//td[@class='verdict']/span")} == {"true"}
    assert [each.text for each in tree.xpath("//table[@class='judged']//th[@scope='row']")] == ["1", "2", "3", "5", "6"]
    assert tree.xpath("//table[@class='judged']/caption")[0].text == "Your lines, as typed"


@pytest.mark.parametrize("width", (24, 40, 63, 64, 100))
def test_text_keeps_within_its_width(width: int) -> None:
    assert max(map(len, text(report(ARM_LEFT_OUT, worked(TIN)), width).splitlines())) <= width


def test_json_for_a_student_has_no_verdict_behind_the_first_issue() -> None:
    told = json.loads(shown(ARM_LEFT_OUT, hints=1, form="json"))
    assert [each["verdict"] for each in told["lines"]] == ["holds", "aside", "slips", None, "carried", None]
    assert told["answers"] == {
        "elbow flexors": {"given": 172.8, "right": None},
        "reaction": {"given": 197.3, "right": None},
    }
