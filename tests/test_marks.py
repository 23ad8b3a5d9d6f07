"""Marks with follow-through: each slip costs once, what follows from it earns, accuracy only from a right method."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Mapping
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from markings import ALL_RIGHT, ARM_LEFT_OUT, ROCK, TIN, line, slip, worked

from explain import Fault, Walkthrough, work
from explain.marking.marks.award import Marks, awarded
from explain.problem.mark_rows import names
from explain.marking.marks.mark_kinds import cost
from explain.marking.marks.scheme import Scheme, scheme_of
from explain.marking.slips.verdict import Given, LineVerdict, Marking

CASES = Path(__file__).with_name("cases") / "marks"
# A scheme of ten marks in public examination vocabulary for a tendon that leans back (common practice, no source).
TEN: tuple[Mapping[str, Any], ...] = (
    {"kind": "method", "for": "moments about the elbow with all three items", "needs": ["moments"]},
    {"kind": "accuracy", "for": "weights in newtons", "needs": ["weights"]},
    {"kind": "method", "for": "turning part of the pull", "needs": ["biceps.arm"]},
    {"kind": "accuracy", "for": "the pull", "needs": ["biceps"]},
    {"kind": "method", "for": "horizontal balance", "needs": ["reaction.right"]},
    {"kind": "method", "for": "vertical balance with four forces", "needs": ["reaction.up"]},
    {"kind": "accuracy", "for": "both parts", "needs": ["reaction.right", "reaction.up"]},
    {"kind": "method", "for": "Pythagoras and arctangent", "needs": ["reaction"]},
    {"kind": "accuracy", "for": "the size", "needs": ["reaction"]},
    {"kind": "accuracy", "for": "the angle, its reference and its sense", "needs": ["reaction.direction"]},
)
IGNORED = slip("insertion-used-as-arm", "Insertion used as lever arm", ("*arm biceps",), "method")
UPSIDE_DOWN = slip("arctan-upside-down", "Arctangent upside down", ("*angle reaction",), "accuracy")


def rock(**more: Any) -> Walkthrough:
    return work({**tomllib.loads(ROCK.read_text(encoding="utf-8")), **more})


def ten(**more: Any) -> Scheme:
    return scheme_of(rock(mark=list(TEN), **more).outcome)


def working(*lines: LineVerdict, answers: tuple[Given, ...] = ()) -> Marking:
    return Marking("A rock on the palm", lines, answers)


ANGLE_IGNORED = working(
    line(1, "τ_rock = (6)(9.81)(.35) = 20.60 N·m", "holds", "rock.weight, *moment rock"),
    line(2, "τ_arm = (1.7)(9.81)(.16) = 2.668 N·m", "holds", "forearm and hand.weight, *moment forearm and hand"),
    line(3, "τ_biceps = F(.045)", "slips", "*moment biceps", IGNORED),
    line(4, ".045F = 20.60 + 2.668", "carried", "total, biceps.force", since=3),
    line(5, "F = 517.1 N", "carried", "biceps.force", since=3),
    line(6, "Rx = 517.1 cos70 = 176.9", "carried", "reaction.right", since=3),
    line(7, "Ry = 517.1 sin70 - 75.5 = 410.4", "carried", "reaction.up", since=3),
    line(8, "R = 446.9 N at 66.7° below the level", "carried", "reaction, *angle reaction", since=3),
    answers=(Given("biceps", 517.1, "N", False, True, 5), Given("reaction", 446.9, "N", False, True, 8)),
)
UPSIDE = working(
    line(1, "Fm = 550.3 N (part a)", "holds", "biceps.force"),
    line(2, "Rx = 550.3 cos70 = 188.2 N", "holds", "reaction.right"),
    line(3, "Ry = 550.3 sin70 - 75.5 = 441.6 N (down)", "holds", "reaction.up"),
    line(4, "R = √(188.2² + 441.6²) = 480 N", "holds", "reaction"),
    line(5, "θ = tan⁻¹(188.2/441.6) = 23.1° below horizontal", "slips", "*angle reaction", UPSIDE_DOWN),
    answers=(Given("biceps", 550.3, "N", True, line=1), Given("reaction", 480.0, "N", True, line=4)),
)


def rows(marks: Marks) -> list[int]:
    return [each.marks for each in marks.awards]


# ---------------------------------------------------------------------- follow-through
def test_an_angle_that_is_ignored_costs_its_method_and_the_value_it_leads_to_and_nothing_after() -> None:
    assert rows(awarded(ten(), ANGLE_IGNORED)) == [1, 1, 0, 0, 1, 1, 1, 1, 1, 1]


def test_an_arctangent_upside_down_costs_the_last_accuracy_mark_alone() -> None:
    assert rows(awarded(ten(), UPSIDE)) == [1, 1, 1, 1, 1, 1, 1, 1, 1, 0]


def test_the_scheme_made_from_the_walkthrough_judges_both_alike_and_adds_a_mark_for_units() -> None:
    made = scheme_of(worked(ROCK).outcome)
    assert (awarded(made, ANGLE_IGNORED).earned, awarded(made, UPSIDE).earned, made.total) == (9, 10, 11)


def test_a_slip_that_comes_again_costs_once() -> None:
    swapped = slip("sine-cosine-swap-load", "Sine and cosine exchanged", ("*arm biceps",), "accuracy")
    once = working(
        line(1, "d = .045 cos70", "slips", "*arm biceps", swapped), line(2, "F = 23.3 / d", "carried", "biceps.force")
    )
    again = replace(once, lines=(*once.lines, line(3, "c", "slips", "reaction.right", swapped, again=True)))
    unmarked = replace(once, lines=(*once.lines, line(3, "c", "slips", "reaction.right", swapped)))
    assert {tuple(rows(awarded(ten(), each))[:4]) for each in (once, again, unmarked)} == {(1, 1, 1, 0)}
    assert rows(awarded(ten(), again))[4] == 1


def test_a_value_that_is_wrong_by_arithmetic_leaves_the_method_its_mark() -> None:
    sums = slip("arithmetic-slip", "Arithmetic slip", ("biceps.force",), "accuracy")
    marking = working(
        line(1, "moments", "holds", "total, biceps.force"),
        line(2, "F = 505 N", "slips", "biceps.force", sums),
        answers=(Given("biceps", 505.0, "N", False),),
    )
    assert rows(awarded(ten(), marking))[:4] == [1, 1, 1, 0]


def test_one_unit_mark_is_lost_once_however_many_answers_lack_it() -> None:
    bare = replace(ALL_RIGHT, answers=tuple(replace(each, unit="", unit_missing=True) for each in ALL_RIGHT.answers))
    scheme = scheme_of(worked(TIN).outcome)
    assert (awarded(scheme, ALL_RIGHT).earned, awarded(scheme, bare).earned) == (scheme.total, scheme.total - 1)


def test_a_slip_that_the_scheme_has_no_place_for_and_one_that_costs_nothing_leave_all_marks() -> None:
    early = slip("rounded-too-early", "Rounded too early", ("reaction.right",))
    marking = replace(UPSIDE, lines=(*UPSIDE.lines[:4], line(5, "θ = 67", "slips", "", early)), answers=UPSIDE.answers)
    assert rows(awarded(ten(), marking)) == [1, 1, 1, 1, 1, 1, 1, 1, 1, 0]  # the last is not shown at all


# ---------------------------------------------------------------------- as a fair examiner
# Workings of a bag of oranges, their sums marked by hand out of 12 (common practice, no source): weights 1, moments 3,
# pull 2, balances 2, parts 2, size 1, unit 1. What each loses, and where:
FAIR: Mapping[str, tuple[int, ...]] = {
    "03-celeste": (1, 2, 1, 2, 2, 1, 1),  # the angle of the pull ignored
    "06-farid": (1, 2, 1, 2, 2, 1, 1),  # the arm left out, among moments and among forces: one slip
    "09-ines": (1, 3, 0, 0, 0, 0, 1),  # the calculator in radians, and no more than the pull
    "12-luca": (0, 0, 2, 0, 0, 1, 1),  # two bare answers, both right
    "20-tove": (1, 3, 2, 2, 0, 1, 1),  # sine and cosine exchanged in the parts
    "21-uma": (1, 3, 2, 1, 1, 1, 1),  # a sense in the upright balance
    "23-wanda": (1, 3, 0, 2, 2, 1, 1),  # one product miscopied, the rest follows
    "25-yusuf": (1, 3, 0, 0, 0, 0, 0),  # nothing is solved
    "arith1": (1, 3, 0, 2, 2, 1, 1),  # one sum wrong, the rest follows
}


@pytest.mark.parametrize("name", FAIR)
def test_a_working_gets_what_a_fair_examiner_gives(name: str) -> None:
    oranges = worked(CASES / "oranges.toml")
    marks = awarded(scheme_of(oranges.outcome), oranges.mark((CASES / f"{name}.txt").read_text(encoding="utf-8")))
    assert (tuple(rows(marks)), marks.open, marks.total) == (FAIR[name], 0, 12)


@pytest.mark.parametrize(("name", "problem"), (("arith1", CASES / "oranges.toml"), ("arith02", TIN)))
def test_a_sum_that_is_wrong_is_one_slip_and_all_after_it_follows(name: str, problem: Path) -> None:
    marking = worked(problem).mark((CASES / f"{name}.txt").read_text(encoding="utf-8"))
    assert [each.verdict for each in marking.lines if each.text] == ["slips"] + ["carried"] * (len(marking.lines) - 1)
    assert marking.lines[0].slips[0].slip == "arithmetic-slip"
    assert not any(each.right for each in marking.answers) and all(each.carried for each in marking.answers)


def test_what_the_marks_are_lost_for_is_told_at_the_row_where_it_happened() -> None:
    oranges = worked(CASES / "oranges.toml")
    marks = awarded(scheme_of(oranges.outcome), oranges.mark((CASES / "03-celeste.txt").read_text(encoding="utf-8")))
    assert [each.why for each in marks.awards if "line 3" in each.why] == [
        "line 3: angle of pull ignored",
        "line 3: angle of pull ignored; accuracy needs a right method",
    ]


def test_a_direction_that_is_not_told_earns_no_mark_for_it() -> None:
    scheme = rock(mark=[{"kind": "communication", "for": "which way it pushes", "needs": ["direction"]}])
    told = "F = 550.3 N\nR = 480 N, 66.9 deg below the horizontal"
    without = "F = 550.3 N\nR = 480 N"
    assert [awarded(scheme_of(scheme.outcome), scheme.mark(each)).earned for each in (told, without)] == [1, 0]


# ---------------------------------------------------------------------- what is not sure
def test_a_wrong_line_without_a_named_slip_leaves_its_method_to_a_person() -> None:
    marks = awarded(ten(), working(line(1, "5F = 9", "slips", "total")))
    assert (marks.awards[0].marks, marks.awards[0].open) == (0, 1)


def test_what_stands_only_in_a_line_that_could_not_be_followed_is_left_to_a_person() -> None:
    marks = awarded(ten(), working(line(1, "Q = ...", "unclear", "*arm biceps")))
    assert (marks.awards[2].marks, marks.awards[2].open) == (0, 1)


def test_a_drawing_is_left_to_a_person() -> None:
    scheme = scheme_of(
        rock(mark=[{"kind": "communication", "for": "a drawing", "marks": 2, "needs": ["diagram"]}]).outcome
    )
    marks = awarded(scheme, UPSIDE)
    assert (marks.earned, marks.open, marks.total) == (0, 2, 2)


def test_an_empty_working_earns_nothing() -> None:
    marks = awarded(ten(), working())
    assert (marks.earned, marks.open) == (0, 0)


# ---------------------------------------------------------------------- the burden of proof
BARE = working(line(1, "550 N", "holds", "biceps.force"), answers=(Given("biceps", 550.0, "N", True, line=1),))


def test_a_bare_answer_earns_its_value_and_no_method() -> None:
    assert rows(awarded(ten(), BARE)) == [0, 0, 0, 1, 0, 0, 0, 0, 0, 0]


def test_in_practice_working_stands_for_the_steps_that_lead_to_it() -> None:
    worked_out = working(
        line(1, "F = 23.27/(.045 sin70) = 550 N", "holds", "biceps.force"),
        line(2, "Rx = 188 N", "holds", "reaction.right"),  # one step in the head
        answers=(Given("biceps", 550.0, "N", True, line=1), Given("reaction.right", 188.0, "N", True, line=2)),
    )
    assert rows(awarded(ten(), worked_out)) == [1, 1, 1, 1, 1, 0, 0, 0, 0, 0]


@pytest.mark.parametrize("text", ("F = 550.3 N", "F = -550.3 N", "F = 5.5e2 N", "R = 480 N/1", "F = 550 N, R = 480 N"))
def test_a_value_with_its_sign_and_unit_is_bare(text: str) -> None:
    bare = working(line(1, text, "holds", "biceps.force"), answers=(Given("biceps", 550.0, "N", True, line=1),))
    assert awarded(ten(), bare).awards[0].marks == 0


@pytest.mark.parametrize("text", ("F = 23 / .04", "F = 2 × 3", "F = 3 − 4", "F = tan 3", "F × 4 = 3", "F = 3(.045)"))
def test_a_value_with_an_operation_is_worked_out(text: str) -> None:
    shown = working(line(1, text, "holds", "biceps.force"), answers=(Given("biceps", 550.0, "N", True, line=1),))
    assert awarded(ten(), shown).awards[0].marks == 1


def test_in_an_examination_key_lines_must_be_shown() -> None:
    assert awarded(ten(burden="key lines shown"), BARE).earned == 0
    assert awarded(ten(burden="key lines shown"), ANGLE_IGNORED).earned == 8


# ---------------------------------------------------------------------- schemes
def test_the_scheme_of_a_problem_with_parallel_forces_has_one_balance_of_forces() -> None:
    scheme = scheme_of(worked(TIN).outcome)
    assert [(each.kind, each.needs) for each in scheme.points] == [
        ("method", ("moments",)),
        ("accuracy", ("forearm and hand.weight", "tin.weight")),
        ("accuracy", ("elbow flexors.force",)),
        ("method", ("upright",)),
        ("accuracy", ("reaction",)),
        ("communication", ("unit",)),
    ]


def test_a_row_of_as_many_marks_as_it_needs_quantities_gives_one_for_each() -> None:
    scheme = scheme_of(
        rock(
            mark=[{"kind": "accuracy", "for": "both parts", "marks": 2, "needs": ["reaction.right", "reaction.up"]}]
        ).outcome
    )
    marking = working(line(1, "Rx = 188 N", "holds", "reaction.right"))
    assert awarded(scheme, marking).earned == 1


def test_the_tin_with_its_arm_left_out_keeps_what_does_not_depend_on_it() -> None:
    assert rows(awarded(scheme_of(worked(TIN).outcome), ARM_LEFT_OUT)) == [0, 1, 0, 0, 0, 1]


@pytest.mark.parametrize(
    ("change", "says"),
    (
        ({"needs": ["bicep"]}, 'needs = ["biceps"]'),
        ({"kind": "methods"}, 'kind = "method"'),
        ({"reason": "x"}, "the key"),
        ({"needs": None}, "needs"),
        ({"marks": 0}, "whole number from 1"),
        ({"for": ""}, "for"),
        ({"for": None}, "for"),
        ({"kind": None}, "kind"),
        ({"marks": "two"}, "whole number"),
    ),
)
def test_a_row_that_cannot_be_is_refused_with_what_is_expected(change: Mapping[str, Any], says: str) -> None:
    row = {key: value for key, value in {**TEN[3], **change}.items() if value is not None}
    with pytest.raises(Fault, match="mark") as caught:
        rock(mark=[row])
    assert says in str(caught.value)
    assert "mark[1]" in caught.value.key


@pytest.mark.parametrize(
    ("words", "needs"),
    (
        ("moments about the elbow with all three terms", ("moments",)),
        ("Torques about the elbow", ("moments",)),
        ("the weights in newtons", ("rock.weight", "forearm and hand.weight")),
        ("the pull of the biceps", ("biceps.force",)),
        ("the level and the upright balance", ("level", "upright")),
        ("weight of the forearm and hand, then of the rock", ("forearm and hand.weight", "rock.weight")),
    ),
)
def test_a_row_without_needs_looks_for_what_its_words_name(words: str, needs: tuple[str, ...]) -> None:
    (point,) = scheme_of(rock(mark=[{"kind": "method", "for": words}]).outcome).points
    assert set(point.needs) == set(needs)


def test_the_scheme_that_is_shown_as_an_example_works() -> None:
    """The one of the page on marking, and the same below a problem of its own."""
    page = (TIN.parent / "marking.md").read_text(encoding="utf-8")
    (example,) = re.findall(r"```toml\n(\[\[mark\]\].*?)```", page, re.DOTALL)
    (row,) = scheme_of(rock(**tomllib.loads(example)).outcome).points
    assert (row.kind, row.marks, row.needs) == ("method", 2, ("moments",))
    assert scheme_of(worked(CASES / "readme-mark.toml").outcome).points == (row,)


def test_a_burden_of_another_name_is_refused() -> None:
    with pytest.raises(Fault, match="key lines shown"):
        rock(burden="exam")


def test_everything_that_may_be_needed_is_accepted() -> None:
    known = names(worked(ROCK).problem)
    scheme = scheme_of(rock(mark=[{"kind": "method", "for": each, "needs": [each]} for each in known]).outcome)
    assert len(scheme.points) == len(known) and all(
        scheme.rank(key) >= 0 for point in scheme.points for key in point.needs
    )


# ---------------------------------------------------------------------- schemes, whole
SAMPLES = sorted(TIN.parent.glob("[0-4]*.toml"))


def told(path: Path) -> list[str]:
    """The rows of a scheme, with what each looks for."""
    points = scheme_of(worked(path).outcome).points
    return [f"{each.kind} {each.marks} {each.what}: {', '.join(each.needs)}" for each in points]


@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_the_scheme_of_a_sample_is_the_one_that_was_read(path: Path) -> None:
    blocks = (CASES / "schemes.txt").read_text("utf-8").split("\n\n")
    kept = {block.splitlines()[0]: block.splitlines()[1:] for block in blocks}
    assert told(path) == kept[path.stem]


ALONG = (
    ("g", "rock.mass"),
    ("rock.weight",),
    ("*arm rock", "*reach rock", "*turning rock", "*level rock", "*upright rock"),
    ("*moment rock",),
    ("moments", "total", "*sum"),
    ("biceps.force",),
    ("reaction.right", "reaction.up", "level", "upright"),
    ("reaction", "*angle reaction"),
    ("biceps.stress", "*friction reaction"),
    ("unit", "direction", "diagram"),
)


def test_quantities_stand_in_the_order_in_which_a_working_finds_them() -> None:
    assert [{ten().rank(key) for key in keys} for keys in ALONG] == [{rank} for rank in range(10)]


# ---------------------------------------------------------------------- what is shown, row by row
def one(
    row: Mapping[str, Any], *lines: LineVerdict, answers: tuple[Given, ...] = (), **more: Any
) -> tuple[int, int, str]:
    """The marks, what is left open, and why, of a scheme of one row."""
    scheme = scheme_of(rock(mark=[{"for": "x", **row}], **more).outcome)
    (award,) = awarded(scheme, working(*lines, answers=answers)).awards
    return award.marks, award.open, award.why


METHOD, ACCURACY = {"kind": "method", "needs": ["moments"]}, {"kind": "accuracy", "needs": ["biceps"]}
FOUND = Given("biceps", 550.0, "N", True, line=1)
BALANCE = "F × 4.5 = 58.9 × 35 + 16.7 × 16"
WEIGHT = {"kind": "accuracy", "needs": ["rock.weight"]}
STRICT = {"burden": "key lines shown"}


@pytest.mark.parametrize(
    ("row", "lines", "answers", "told"),
    [
        (METHOD, (), (), (0, 0, "not shown")),
        (METHOD, (line(3, "ΣM = 0", "holds", "total"),), (), (1, 0, "line 3")),
        (METHOD, (line(3, "ΣM = 0", "carried", "total"),), (), (1, 0, "line 3, followed through")),
        (METHOD, (line(3, "ΣM = 0", "slips", "total", again=True),), (), (1, 0, "line 3, followed through")),
        (METHOD, (line(3, "ΣM = 0", "aside", "total"),), (), (0, 0, "not shown")),
        (METHOD, (line(3, "ΣM = 0", "unclear", "total"),), (), (0, 1, "in a line that could not be followed")),
        (METHOD, (line(2, BALANCE, "holds", "biceps.force"),), (), (1, 0, "line 2")),
        (
            METHOD,
            (line(2, "F × 4.5 = 23", "holds", "rock.weight, biceps.force"),),
            (),
            (1, 0, "line 2 follows from it"),
        ),
        (METHOD, (line(2, "W = 6 × 9.81 × 1", "holds", "rock.weight"),), (), (0, 0, "not shown")),
        (METHOD, (line(2, "a = 2 × 3", "holds", "*moment rock"),), (), (0, 0, "not shown")),
        (METHOD, (line(2, "a, b = 2 × 3", "holds", "*moment rock, *moment biceps"),), (), (1, 0, "line 2")),
        (METHOD, (line(1, "F = 550 N", "holds", "biceps.force"),), (FOUND,), (0, 0, "not shown")),
        (ACCURACY, (line(1, "F = 550 N", "holds", "biceps.force"),), (FOUND,), (1, 0, "line 1")),
        (ACCURACY, (), (replace(FOUND, line=0),), (1, 0, "the answer")),
        (
            ACCURACY,
            (line(1, "F", "holds", "biceps.force"),),
            (replace(FOUND, right=False),),
            (0, 0, "the value does not hold"),
        ),
        (
            ACCURACY,
            (line(1, "F", "holds", "biceps.force"),),
            (replace(FOUND, right=False, carried=True),),
            (1, 0, "line 1, followed through"),
        ),
        (ACCURACY, (line(4, "F 4.5 − 23 = 0", "holds", "biceps.force"),), (), (0, 0, "no value is stated")),
        (ACCURACY, (line(4, "F = 550 × 1", "holds", "biceps.force"),), (), (1, 0, "line 4")),
        (ACCURACY, (), (), (0, 0, "not shown")),
        ({"kind": "communication", "needs": ["unit"]}, (), (), (0, 0, "no answer is given")),
        ({"kind": "communication", "needs": ["unit"]}, (), (FOUND,), (1, 0, "given")),
        (
            {"kind": "communication", "needs": ["unit"]},
            (),
            (FOUND, replace(FOUND, unit_missing=True, line=7)),
            (0, 0, "an answer has no unit (line 7)"),
        ),
        (
            {"kind": "communication", "needs": ["unit"]},
            (),
            (replace(FOUND, unit_missing=True, line=0),),
            (0, 0, "an answer has no unit"),
        ),
        ({"kind": "communication", "needs": ["diagram"]}, (), (FOUND,), (0, 1, "a person looks at the drawing")),
        ({"kind": "communication", "needs": ["direction"]}, (), (FOUND,), (0, 0, "not shown")),
        (
            {"kind": "communication", "needs": ["direction"]},
            (line(1, "R = 480 N down", "holds", "reaction"),),
            (Given("reaction", 480.0, "N", True, line=1),),
            (1, 0, "told"),
        ),
        (
            {"kind": "communication", "needs": ["direction"]},
            (line(1, "R = 480 N", "holds", "reaction", lacks="direction-missing"),),
            (Given("reaction", 480.0, "N", True, line=1),),
            (0, 0, "the direction of a force is not told"),
        ),
    ],
)
def test_a_row_is_earned_by_what_is_shown_for_it(
    row: Mapping[str, Any], lines: tuple[LineVerdict, ...], answers: tuple[Given, ...], told: tuple[int, int, str]
) -> None:
    assert told == one(row, *lines, answers=answers)


@pytest.mark.parametrize(
    ("row", "lines", "told"),
    [
        (METHOD, (line(2, "F = 2 × 3", "holds", "biceps.force"),), (0, 0, "not shown")),
        (METHOD, (line(2, BALANCE, "holds", "biceps.force"),), (1, 0, "line 2")),
        (ACCURACY, (line(2, "F = 2 × 3", "holds", "biceps.force"),), (1, 0, "line 2")),
        ({"kind": "accuracy", "needs": ["rock.weight"]}, (line(2, "F", "holds", "total"),), (1, 0, "line 2")),
        (
            {"kind": "accuracy", "needs": ["rock.weight"]},
            (line(2, "F = 2", "holds", "biceps.force"),),
            (0, 0, "not shown"),
        ),
    ],
)
def test_where_key_lines_must_be_shown_only_they_earn(
    row: Mapping[str, Any], lines: tuple[LineVerdict, ...], told: tuple[int, int, str]
) -> None:
    assert told == one(row, *lines, **STRICT)


@pytest.mark.parametrize(
    ("costs", "rows_lost", "why"),
    [
        ("method", (0, 3), "line 1: a slip"),
        ("accuracy", (3,), "line 1: a slip"),
        ("none", (), ""),
        ("unit", (), ""),
        ("direction", (9,), "line 1: a slip"),
    ],
)
def test_a_slip_costs_what_its_kind_says_where_it_was_made(costs: Any, rows_lost: tuple[int, ...], why: str) -> None:
    lines = [line(n, f"a = {n} × 2", "holds", ", ".join(each)) for n, each in enumerate(ALONG, 1) if n < 9]
    wrong = line(1, "F = 2 × 3", "slips", "biceps.force", slip("some-slip", "A slip", ("biceps.force",), costs))
    marks = awarded(ten(), working(wrong, *lines))
    lost = [place for place, each in enumerate(marks.awards) if each.marks < each.point.marks]
    assert tuple(lost) == rows_lost and all(each.why.startswith(why) for each in marks.awards if not each.marks)


@pytest.mark.parametrize(
    ("name", "kind"),
    [
        ("mass-for-weight", "accuracy"),
        ("insertion-used-as-arm", "method"),
        ("rounded-too-early", "none"),
        ("no-slip", ""),
    ],
)
def test_what_a_slip_costs_is_read_from_the_table(name: str, kind: str) -> None:
    assert kind == cost(slip(name, "x"))


def test_what_a_slip_says_of_its_cost_goes_before_the_table() -> None:
    assert "unit" == cost(slip("mass-for-weight", "x", (), "unit"))
