"""Who makes a certified line, and what a checker believes, keeps and lets go."""

from __future__ import annotations

import copy
import dataclasses
import pickle
from collections.abc import Callable
from typing import Any

import pytest
from cheating import at, one, problem
from worked import replayed

import rules
from explain.solve.board import Board
from explain.check.checker import Certified, Checker, Refused
from explain.check.roundings import Roundings
from explain.check.claim import Arm, Balance, Converted, Follows, Moment, Put, Rounded, Scaled
from explain.equation.terms import (
    Equation,
    Group,
    Inverse,
    Letter,
    Power,
    Quantity,
    Quotient,
    Root,
    Shown,
    Term,
    Terms,
    Trig,
    lone,
    term,
)
from explain.exact.interval import Sizes
from explain.problem.reader import read_problem
from explain.mechanics.free_body import cut_free
from explain.solve.rule import Step
from explain.solve.engine import work_through
from explain.mechanics.truth import Truth

Q = Quantity.of
ELBOW = "jug-level"
F, DB = Letter("biceps.force", "F_B"), Letter("biceps.at", "d_B")


def fresh(name: str = ELBOW, upto: int = 9) -> tuple[Checker, list[Certified]]:
    return replayed(problem(name), upto)


def weighed(mass: str, g: str, ties: str = "up", carry: str = "unrounded") -> tuple[Checker, Certified]:
    """A checker with the line W = (mass)(g) of a jug, in a class that works with four figures and answers with
    three.
    """
    stated = {
        "title": "A weight",
        "pivot": {"name": "elbow"},
        "course": {"g": g, "ties": ties, "carry": carry, "working_figures": 4},
        "load": [{"name": "jug", "mass": mass, "point": ["30 cm", "0 cm"]}],
        "muscle": [{"name": "biceps", "point": ["4 cm", "0 cm"], "direction": "up"}],
    }
    body = cut_free(read_problem(stated))
    checker = Checker(Truth(body))
    weight, heavy, falling = body.letters("jug.weight"), body.letters("jug.mass"), body.letters("g")
    line = checker.certify(Equation(one(weight), one(heavy, falling)), Follows("jug.weight"))
    return checker, checker.certify(Equation(one(weight), _product(checker)), Put(("jug.mass", "g")), line)


def _product(checker: Checker) -> Terms:
    return one(*(checker.ledger[name][0].factors[0] for name in ("jug.mass", "g")))


def shown(number: str, unit: str, line: Certified) -> Equation:
    """The weight written with this number."""
    return Equation(line.equation.left, one(Shown(Q(number, unit), line.equation.right[0])))


# ---------------------------------------------------------------------- certified lines
def test_nobody_makes_a_certified_line_by_asking() -> None:
    with pytest.raises(TypeError):
        Certified(Equation((), ()), Scaled(), object())


def test_a_certified_line_is_not_copied() -> None:
    line = fresh()[1][0]
    for way in (copy.copy, copy.deepcopy, pickle.dumps):
        with pytest.raises(TypeError):
            way(line)


def test_a_certified_line_is_not_replaced() -> None:
    line: Any = fresh()[1][0]
    with pytest.raises(TypeError):
        dataclasses.replace(line, equation=Equation((), ()))
    with pytest.raises((TypeError, AttributeError)):
        copy.replace(line, equation=Equation((), ())) if hasattr(copy, "replace") else line.__replace__(
            equation=Equation((), ())
        )


def test_a_certified_line_is_not_changed() -> None:
    line = fresh()[1][0]
    with pytest.raises(TypeError):
        line.equation = Equation((), ())
    with pytest.raises(TypeError):
        del line.claim


def test_a_line_changed_behind_the_back_is_no_longer_vouched_for() -> None:
    checker, lines = fresh()
    object.__setattr__(lines[3], "equation", Equation((), ()))
    assert [checker.vouches_for(each) for each in (lines[2], lines[3])] == [True, False]


def test_a_forged_line_is_not_vouched_for_and_nothing_follows_from_it() -> None:
    checker, lines = fresh()
    forged = object.__new__(Certified)
    object.__setattr__(forged, "equation", lines[8].equation)
    object.__setattr__(forged, "claim", lines[8].claim)
    assert not checker.vouches_for(forged)
    with pytest.raises(Refused):
        checker.certify(forged.equation, Scaled(), forged)


def test_a_line_of_another_checker_is_not_vouched_for_and_nothing_follows_from_it() -> None:
    (checker, lines), (_, others) = fresh(), fresh()
    assert others[8].equation == lines[8].equation
    assert not checker.vouches_for(others[8])
    with pytest.raises(Refused):
        checker.certify(others[8].equation, Scaled(), others[8])


def test_a_step_needs_a_line_before_it() -> None:
    checker, lines = fresh()
    with pytest.raises(Refused):
        checker.certify(lines[8].equation, Scaled())


def test_what_merely_looks_like_a_line_is_not_vouched_for() -> None:
    checker, lines = fresh()
    assert not any(checker.vouches_for(each) for each in (lines[0].equation, None, (lines[0].equation, lines[0].claim)))


# ---------------------------------------------------------------------- roundings
@pytest.mark.parametrize(("ties", "right", "wrong"), (("up", "24.53", "24.52"), ("even", "24.52", "24.53")))
def test_an_exact_half_is_rounded_as_the_class_does_it_and_not_the_other_way(ties: str, right: str, wrong: str) -> None:
    """2.5 kg times 9.81 m/s² is 24.525 N to the last digit."""
    checker, line = weighed("2.5 kg", "9.81 m/s^2", ties)
    assert checker.certify(shown(right, "N", line), Scaled(), line)
    with pytest.raises(Refused):
        checker.certify(shown(wrong, "N", line), Scaled(), line)


@pytest.mark.parametrize("number", ("24.52", "24.54", "24.5250001", "24", "24.6", "20"))
def test_a_number_that_is_not_the_rounded_one_is_refused(number: str) -> None:
    checker, line = weighed("2.5 kg", "9.81 m/s^2")
    with pytest.raises(Refused):
        checker.certify(shown(number, "N", line), Scaled(), line)


@pytest.mark.parametrize("number", ("24.525", "24.53"))
def test_the_figures_of_the_working_or_more_may_be_shown(number: str) -> None:
    checker, line = weighed("2.5 kg", "9.81 m/s^2")
    assert checker.certify(shown(number, "N", line), Scaled(), line)


@pytest.mark.parametrize(
    ("number", "unit"),
    (("24.5", "N"), ("25", "N"), ("2E+1", "N"), ("0", "kN"), ("0.02", "kN"), ("0.0245", "kN"), ("0.00000", "kN")),
)
def test_fewer_figures_than_the_working_has_are_refused(number: str, unit: str) -> None:
    checker, line = weighed("2.5 kg", "9.81 m/s^2")
    with pytest.raises(Refused):
        checker.certify(shown(number, unit, line), Scaled(), line)


def test_fewer_figures_do_where_they_say_it_exactly() -> None:
    checker, line = weighed("2.5 kg", "10 m/s^2")
    assert checker.certify(shown("25", "N", line), Scaled(), line)


def rounded(number: str, unit: str, line: Certified) -> Equation:
    """The weight rounded to this number, as an answer."""
    return dataclasses.replace(shown(number, unit, line), rounded=True)


def test_an_answer_may_have_the_figures_of_answers_and_no_fewer() -> None:
    """2.5 kg times 9.81 m/s² is 24.525 N: 24.5 N with the three figures of an answer."""
    stands = {}
    for number, unit in (
        ("24.53", "N"),
        ("24.5", "N"),
        ("25", "N"),
        ("2E+1", "N"),
        ("0", "kN"),
        ("0.0245", "kN"),
        ("0.025", "kN"),
    ):
        checker, line = weighed("2.5 kg", "9.81 m/s^2")
        found = checker.certify(shown("24.53", "N", line), Scaled(), line)
        try:
            checker.certify(rounded(number, unit, line), Rounded(), found)
            stands[number] = True
        except Refused:
            stands[number] = False
    assert stands == {
        "24.53": True,
        "24.5": True,
        "25": False,
        "2E+1": False,
        "0": False,
        "0.0245": True,
        "0.025": False,
    }


def test_the_few_figures_of_an_answer_do_not_pass_in_another_line_afterwards() -> None:
    checker, line = weighed("2.5 kg", "9.81 m/s^2")
    found = checker.certify(shown("24.53", "N", line), Scaled(), line)
    answer = checker.certify(rounded("24.5", "N", line), Rounded(), found)
    with pytest.raises(Refused):
        checker.certify(Equation(line.equation.left, answer.equation.right), Scaled(), found)


@pytest.mark.parametrize("carry", ("unrounded", "as shown"))
def test_nothing_follows_from_an_answer_that_was_rounded(carry: str) -> None:
    checker, line = weighed("2.5 kg", "9.81 m/s^2", carry=carry)
    found = checker.certify(shown("24.53", "N", line), Scaled(), line)
    right = one(Shown(Q("24.5", "N"), term(Q("24.53", "N")))) if carry == "as shown" else shown("24.5", "N", line).right
    answer = checker.certify(Equation(line.equation.left, right, rounded=True), Rounded(), found)
    with pytest.raises(Refused, match="rounded one"):
        checker.certify(Equation(line.equation.left, one(Q("24.5", "N"))), Scaled(), answer)
    with pytest.raises(Refused):
        checker.certify(found.equation, Scaled(), answer)


def test_a_wavy_sign_is_for_rounded_answers_and_they_have_no_other() -> None:
    checker, line = weighed("2.5 kg", "9.81 m/s^2")
    with pytest.raises(Refused):
        checker.certify(rounded("24.53", "N", line), Scaled(), line)
    found = checker.certify(shown("24.53", "N", line), Scaled(), line)
    with pytest.raises(Refused):
        checker.certify(shown("24.5", "N", line), Rounded(), found)


@pytest.mark.parametrize(
    ("number", "stands"),
    (("0.000011", True), ("0.0000115", True), ("0.00001", False), ("0.000012", False)),
)
def test_an_angle_needs_no_figures_beyond_a_millionth_of_a_degree(number: str, stands: bool) -> None:
    """sin⁻¹(0.0000002) is 0.0000002 · 180°/π = 0.00001145916°."""
    angle = Shown(Q(number, "deg"), term(Inverse("sin", one(Q("0.0000002")))))
    roundings = Roundings(Sizes({}), "up")
    if stands:
        roundings.hold(angle, 5)
    else:
        with pytest.raises(Refused):
            roundings.hold(angle, 5)


@pytest.mark.parametrize(("number", "unit"), (("0.000011", "m"), ("0.000011", "")))
def test_what_is_no_angle_has_its_figures_however_small_it_is(number: str, unit: str) -> None:
    with pytest.raises(Refused, match="fewer than 5 figures"):
        Roundings(Sizes({}), "up").hold(Shown(Q(number, unit), term(Q("0.00001145916", unit))), 5)


def test_a_rounded_number_is_looked_at_once_however_often_it_stands_in_others() -> None:
    """Each of twelve sums has the one before twice: looked at each time they would be 4,095."""
    looked: list[Shown] = []

    class Counting(Roundings):
        def _is_rounded(self, shown: Shown) -> None:
            looked.append(shown)
            super()._is_rounded(shown)

    number = Shown(Q("1.0000"), term(Q("1.00000")))
    for k in range(1, 12):
        number = Shown(Q(f"{2**k}.0000"), term(Group((term(number), term(number)))))
    Counting(Sizes({}), "up").hold(number, 5)
    assert len(looked) == len({id(each) for each in looked}) == 12


# ---------------------------------------------------------------------- what is written is what is read
ILL_FORMED: dict[str, Callable[[Certified], Terms]] = {
    "a sign that counts twice": lambda line: (Term(2, line.equation.right[0].factors),),
    "a sign of nothing": lambda line: (Term(0, line.equation.right[0].factors), *line.equation.right),
    "a sign that counts twice in a bracket": lambda line: one(
        Group((Term(2, (Q("2.5", "kg"),)), Term(-1, (Q("2.5", "kg"),)))), Q("9.81", "m s^-2")
    ),
    "a sign that counts twice in a rounded number": lambda line: (
        Term(1, (Shown(Q("24.53", "N"), Term(2, (Q("12.2625", "N"),))),)),
    ),
    "a sign that counts twice in a number within a rounded number": lambda line: one(
        Shown(Q("24.53", "N"), term(Shown(Q("24.53", "N"), Term(2, (Q("12.2625", "N"),)))))
    ),
    "a function that is none": lambda line: (
        *line.equation.right,
        term(Q("2", "N"), Trig("sec", Q("90", "deg"))),
    ),  # counts as a cosine
    "an angle that is none": lambda line: (
        *line.equation.right,
        term(Q("2", "N"), Trig("sin", Group(one(Inverse("cot", one(Q("0"))))))),
    ),
    "an exponent that is no whole number": lambda line: one(Power(Group(line.equation.right), 1.0)),  # type: ignore[arg-type]
}


@pytest.mark.parametrize("what", ILL_FORMED)
def test_what_would_be_read_otherwise_than_it_counts_is_refused(what: str) -> None:
    checker, line = weighed("2.5 kg", "9.81 m/s^2")
    with pytest.raises(Refused):
        checker.certify(Equation(line.equation.left, ILL_FORMED[what](line)), Scaled(), line)


@pytest.mark.parametrize("deep", (False, True))
def test_a_letter_may_not_hide_in_a_rounded_number_even_when_its_value_is_known(deep: bool) -> None:
    """sin θ = 0.83214 is a line of this working, and θ is found in the end: 0.83214 still stands for no letter."""
    working = problem("how-steep")
    checker, lines = replayed(working, len(working.moves))
    line = next(
        each
        for each in lines
        if isinstance(lone(each.equation.left), Trig)
        and len(each.equation.right) == 1
        and isinstance(each.equation.right[0].factors[0], Shown)
    )
    value = line.equation.right[0].factors[0]
    assert isinstance(value, Shown)
    hidden = Shown(value.value, line.equation.left[0])
    written = Shown(value.value, term(hidden)) if deep else hidden
    with pytest.raises(Refused, match="numbers only"):
        checker.certify(Equation(one(written), line.equation.right), Scaled(), line)


@pytest.mark.parametrize("unit", ("kN", "lbf", "kg", "N cm", "N m^-1", "", "m", "deg", "%"))
def test_a_number_shown_with_another_unit_is_refused(unit: str) -> None:
    checker, line = weighed("2.5 kg", "9.81 m/s^2")
    with pytest.raises(Refused):
        checker.certify(shown("24.53", unit, line), Scaled(), line)


def test_one_newton_may_be_written_in_kilograms_metres_and_seconds() -> None:
    checker, line = weighed("2.5 kg", "9.81 m/s^2")
    assert checker.certify(shown("24.53", "kg m s^-2", line), Scaled(), line)


def test_a_rounded_number_stands_for_numbers_only() -> None:
    checker, line = weighed("2.5 kg", "9.81 m/s^2")
    weight = line.equation.left[0].factors[0]
    with pytest.raises(Refused):
        checker.certify(Equation(line.equation.left, one(Shown(Q("24.53", "N"), term(weight)))), Scaled(), line)


def test_who_carries_what_is_shown_goes_on_from_it_and_who_does_not_does_not() -> None:
    outcomes = {}
    for carry in ("unrounded", "as shown"):
        checker, line = weighed("2.5 kg", "9.81 m/s^2", carry=carry)
        found = checker.certify(shown("24.53", "N", line), Scaled(), line)
        try:
            checker.certify(Equation(found.equation.left, one(Q("24.53", "N"))), Scaled(), found)
            outcomes[carry] = "goes on from 24.53 N"
        except Refused:
            outcomes[carry] = "goes on from 24.525 N"
    assert outcomes == {"unrounded": "goes on from 24.525 N", "as shown": "goes on from 24.53 N"}


# ---------------------------------------------------------------------- letters
def test_a_letter_does_not_stand_for_two_quantities() -> None:
    checker, line, claim, _ = at(ELBOW, Balance)
    spoilt = (Term(1, (Letter("triceps.force", "F_B"), DB), "biceps"), *line.left[1:])
    with pytest.raises(Refused):
        checker.certify(Equation(spoilt, ()), claim)


def test_a_quantity_is_not_written_with_two_letters() -> None:
    checker, line, claim, _ = at(ELBOW, Balance)
    spoilt = (Term(1, (Letter("biceps.force", "F_X"), DB), "biceps"), *line.left[1:])
    with pytest.raises(Refused):
        checker.certify(Equation(spoilt, ()), claim)


@pytest.mark.parametrize("name", ("unit kg", "unit m", "unit s", "nobody.force", "", "biceps"))
def test_a_letter_of_nothing_is_refused(name: str) -> None:
    checker, line, claim, _ = at(ELBOW, Balance)
    with pytest.raises(Refused):
        checker.certify(Equation((*line.left, Term(1, (Letter(name, "x"), Q("0")), "jug")), ()), claim)


# ---------------------------------------------------------------------- what cannot be read
UNREADABLE: dict[str, tuple[Equation, Any]] = {
    "an angle without its unit": (Equation(one(F), one(Trig("sin", Q("30")))), Scaled()),
    "a length with degrees": (Equation(one(F), one(Q("3", "m"), Q("30", "deg"))), Scaled()),
    "an unknown unit": (Equation(one(F), one(Q("3", "furlong"))), Scaled()),
    "a division by nothing": (Equation(one(F), one(Quotient(one(Q("3", "N")), one(Q("0"))))), Scaled()),
    "a division by an empty sum": (Equation(one(F), one(Quotient(one(Q("3", "N")), ()))), Scaled()),
    "the root of a negative number": (Equation(one(F), one(Root((term(Q("3", "N^2"), sign=-1),)))), Scaled()),
    "no number": (Equation(one(F), one(Q("NaN", "N"))), Scaled()),
    "an endless number": (Equation(one(F), one(Q("Infinity", "N"))), Scaled()),
    "an angle finer than there is": (Equation(one(F), one(Trig("sin", Q("30.00000001", "deg")))), Scaled()),
    "the moment of nobody": (Equation(one(Letter("*moment jug", "M_J")), ()), Moment("nobody", 1)),
    "the arm of nobody": (Equation(one(Letter("*arm jug", "d_J⊥")), ()), Arm("nobody", 1)),
    "an arm about nobody": (Equation(one(Letter("*arm jug", "d_J⊥")), ()), Arm("jug", 1, "nobody")),
    "what nobody follows from": (Equation(one(F), ()), Follows("nobody")),
    "a value of nobody converted": (Equation(one(F), ()), Converted("nobody")),
    "nothing rounded": (Equation((), (), rounded=True), Rounded()),
    "moments about nobody": (Equation((), ()), Balance(about="nobody")),
    "nothing at all": (Equation((), ()), Put(("nobody",))),
    "a ground that is none": (Equation(one(F), one(F)), object()),
}


@pytest.mark.parametrize("what", UNREADABLE)
def test_what_cannot_be_read_is_refused_and_nothing_else_happens(what: str) -> None:
    checker, lines = fresh()
    with pytest.raises(Refused):
        checker.certify(*UNREADABLE[what], lines[8])


@pytest.mark.parametrize("what", UNREADABLE)
def test_a_refused_line_changes_nothing(what: str) -> None:
    checker, lines = fresh()
    ledger, made = dict(checker.ledger), list(checker.lines)
    with pytest.raises(Refused):
        checker.certify(*UNREADABLE[what], lines[8])
    assert (dict(checker.ledger), list(checker.lines)) == (ledger, made)


def test_a_conversion_that_is_refused_leaves_the_given_value_where_it_was() -> None:
    checker, line, claim, _ = at("rock-oblique", Converted)
    wrong = Equation(line.left, one(Shown(Q("0.17", "m"), line.right[0])))
    before = dict(checker.ledger)
    with pytest.raises(Refused):
        checker.certify(wrong, claim)
    assert dict(checker.ledger) == before


def test_a_converted_value_stands_in_the_ledger_as_it_is_now_written() -> None:
    working = problem("rock-oblique")
    checker, _ = replayed(working, 2)
    assert checker.ledger["forearm and hand.com"] == one(Q("0.16", "m"))


# ---------------------------------------------------------------------- rules
class Forger:
    """A rule that looks at the board and writes in the ledger."""

    __name__ = "rules.forger"
    on, say, shows, leaves = frozenset({Letter}), None, (), ()

    @staticmethod
    def when(board: Board, stands: object) -> None:
        board.values["jug.mass"] = one(Q("9.0", "kg"))  # type: ignore[index]

    @staticmethod
    def do(board: Board, sight: Any) -> Step:
        return Step(Equation((), ()), Scaled())


def test_a_rule_cannot_write_in_the_ledger() -> None:
    moves: Any = {order: (Forger(), *listed) for order, listed in rules.MOVES.items()}
    with pytest.raises(TypeError):
        work_through(problem(ELBOW).body, moves)


def test_a_group_is_worth_what_stands_in_it() -> None:
    checker, line, claim, _ = at(ELBOW, Balance)
    grouped = tuple(Term(1, (Group((Term(each.sign, each.factors),)),), each.source) for each in line.left)
    assert checker.certify(Equation(grouped, ()), claim)
