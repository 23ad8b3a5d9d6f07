"""Working out, rounding and converting: what is seen in a line, and in which words it is said."""

from __future__ import annotations

from dataclasses import replace

import pytest

from explain.equation.terms import Equation, Inverse, Letter, Quantity, Quotient, Root, Shown, Term, term
from explain.formula.plain import plain
from explain.problem.course import Course
from explain.solve import goal as goals
from explain.solve.board import Board
from explain.solve.goal import Goal
from rules.example_boards import level_elbow
from rules.numbers import round_answer, work_out
from rules.units import convert

F = Letter("F", "F")


def line(*right: Term) -> Board:
    return Board(Equation((term(F),), right), "F")


def over(top: str, bottom: str) -> Term:
    one, other = (each.split(" ", 1) for each in (top, bottom))
    return term(Quotient((term(Quantity.of(*one)),), (term(Quantity.of(*other)),)))


# ---------------------------------------------------------------------- working out
@pytest.mark.parametrize(
    ("top", "bottom", "said", "after"),
    [
        ("12 N cm", "4 cm", "the centimetres cancel and newtons remain", "F = 3 N"),
        ("12 N m", "4 m", "the metres cancel and newtons remain", "F = 3 N"),
        ("12 N mm", "4 mm", "the millimetres cancel and newtons remain", "F = 3 N"),
        ("12 lbf in", "4 in", "the inches cancel and pounds remain", "F = 3 lb"),
        ("12 lbf ft", "4 ft", "the feet cancel and pounds remain", "F = 3 lb"),
        ("12 kg cm", "4 cm", "the centimetres cancel and kilograms remain", "F = 3 kg"),
        ("12 N", "4 N", "the newtons cancel: a number without a unit remains", "F = 3"),
        ("12 N cm", "4 N cm", "the newtons and centimetres cancel: a number without a unit remains", "F = 3"),
        ("12 N", "4 cm", "work out the quotient", "F = 3 N/cm"),
    ],
)
def test_a_quotient_tells_what_cancels_and_what_remains(top: str, bottom: str, said: str, after: str) -> None:
    board = line(over(top, bottom))
    sight = work_out.when(board, board.eq)
    assert sight == work_out.Sight(said)
    assert plain(work_out.do(board, sight).after) == after


def test_a_root_and_an_angle_have_words_of_their_own() -> None:
    root, angle = term(Root((term(Quantity.of("9", "N^2")),))), term(Inverse("sin", (term(Quantity.of("0.5", "")),)))
    told = []
    for each in (root, angle):
        board = line(each)
        sight = work_out.when(board, board.eq)
        assert sight is not None
        told.append((sight.what, plain(work_out.do(board, sight).after)))
    assert told == [("work out the root", "F = 3 N"), ("read off the angle", "F = 30°")]


def test_every_lone_quotient_of_a_line_is_worked_out_at_once_and_an_empty_one_is_gone() -> None:
    nothing = term(Quotient((), (term(Quantity.of("4", "cm")),)))
    board = line(over("12 N cm", "4 cm"), nothing, term(Quantity.of("5", "N")), over("8 N cm", "2 cm"))
    sight = work_out.when(board, board.eq)
    assert sight == work_out.Sight("the centimetres cancel and newtons remain")
    assert plain(work_out.do(board, sight).after) == "F = 3 N + 5 N + 4 N"


# ---------------------------------------------------------------------- rounding
def asked(value: str, **course: object) -> Board:
    board = Board(Equation((term(F),), (term(Quantity.of(value, "N")),)), "F", goal=Goal("", "F", asked=True))
    return replace(board, course=replace(Course(), **course))  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("figures", "said", "after"),
    [
        (1, "one figure", "F ≈ 600 N"),
        (2, "two figures", "F ≈ 560 N"),
        (3, "three figures", "F ≈ 556 N"),
        (4, "four figures", "F ≈ 555.5 N"),
        (5, "five figures", "F ≈ 555.50 N"),
        (6, "six figures", "F ≈ 555.505 N"),
        (7, "7 figures", "F ≈ 555.5049 N"),
    ],
)
def test_an_answer_is_rounded_to_the_figures_of_the_class(figures: int, said: str, after: str) -> None:
    board = asked("555.50494", figures=figures)
    sight = round_answer.when(board, board.eq)
    assert sight is not None and sight.figures == said
    step = round_answer.do(board, sight)
    assert (plain(step.after), step.after.rounded) == (after, True)


@pytest.mark.parametrize(("ties", "after"), [("up", "F ≈ 2.35 N"), ("even", "F ≈ 2.34 N")])
def test_a_lone_five_is_rounded_as_the_class_does(ties: str, after: str) -> None:
    board = asked("2.345", ties=ties)
    sight = round_answer.when(board, board.eq)
    assert sight is not None and plain(round_answer.do(board, sight).after) == after


@pytest.mark.parametrize("value", ["550", "55", "0.550", "0", "0.0000"])
def test_what_has_no_more_figures_than_an_answer_is_left(value: str) -> None:
    board = asked(value)
    assert round_answer.when(board, board.eq) is None


def test_a_value_as_shown_is_rounded_from_what_is_behind_it() -> None:
    """2.3449 N is written 2.345; to three figures it is 2.34, and 2.345 would be 2.35."""
    shown = term(Shown(Quantity.of("2.345", "N"), term(Quantity.of("2.3449", "N"))))
    board = replace(asked("1"), equation=Equation((term(F),), (shown,)))
    sight = round_answer.when(board, board.eq)
    assert sight is not None and plain(round_answer.do(board, sight).after) == "F ≈ 2.34 N"


# ---------------------------------------------------------------------- converting
def test_a_converted_value_has_its_factor_with_one_on_the_greater_unit() -> None:
    board = level_elbow(goals.Convert, "jug.at")
    sight = convert.when(board, board.goal)  # type: ignore[arg-type]
    assert sight is not None and sight.sign == 1
    assert plain(convert.do(board, sight).after) == "d_J = (33 cm)(1 m / 100 cm)"
    inches = replace(board, goal=replace(board.goal, unit=(("in", 1),)))  # type: ignore[call-arg]
    seen = convert.when(inches, inches.goal)  # type: ignore[arg-type]
    assert seen is not None and plain(convert.do(inches, seen).after) == "d_J = (33 cm)(1 in / 2.54 cm)"
    small = replace(board, goal=replace(board.goal, unit=(("mm", 1),)))  # type: ignore[call-arg]
    seen = convert.when(small, small.goal)  # type: ignore[arg-type]
    assert seen is not None and plain(convert.do(small, seen).after) == "d_J = (33 cm)(10 mm / 1 cm)"
    assert seen.reason == "the factor is one, written in two units: it changes the number and not the quantity"
