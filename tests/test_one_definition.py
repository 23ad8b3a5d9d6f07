"""One letter has one definition: arms about two points have two letters, in every notation, and no line may define a
letter again.

The pulls that are looked for come from numpy, from balances set up here point by point, and never from the program.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from math import cos, radians, sin
from typing import Any

import numpy as np
import pytest
from cheating import at, one

import rules
from explain import work
from explain.mechanics.body import UP
from explain.check.checker import Checker, Refused
from explain.check.claim import Arm, Balance, Between, Moment, Pythagoras
from explain.equation import key as keys
from explain.equation.terms import Equation, Letter, Quantity, Quotient, Term, Trig, term
from explain.problem.reader import read_problem
from explain.mechanics.free_body import cut_free
from explain.exact.interval import sign
from explain.solve.engine import Working, work_through
from explain.mechanics.truth import Truth
from explain.formula.latex import latex
from explain.formula.mathml import mathml
from explain.formula.plain import plain
from explain.formula.speech import speech

G = 9.81
SLOPED: Mapping[str, Any] = {
    "title": "A plank carried up the steps",
    "ask": ["porter in front", "porter behind"],
    "pivot": {"name": "lower end", "reaction": False},
    "segment": [
        {"name": "plank", "length": "3.0 m", "direction": "25 deg above right", "mass": "18 kg", "com": "50 %"}
    ],
    "load": [{"name": "paint bucket", "mass": "6.0 kg", "at": "1.0 m"}],
    "force": [
        {"name": "porter behind", "at": "40 cm", "direction": "up", "force": "?"},
        {"name": "porter in front", "at": "2.6 m", "direction": "up", "force": "?"},
    ],
}
ROPES: Mapping[str, Any] = {
    "title": "Two lifting ropes and friction",
    "pivot": {"name": "left post", "reaction": False},
    "segment": [{"name": "plank", "length": "6.0 m", "weight": "170 N", "com": "50 %"}],
    "load": [{"name": "crate", "mass": "70 kg", "at": "2.5 m"}],
    "force": [
        {"name": "bow rope", "at": "1.0 m", "direction": "up", "force": "?"},
        {"name": "stern rope", "at": "6.0 m", "direction": "48 deg right of up", "force": "?"},
        {"name": "friction", "at": "1.0 m", "direction": "left", "force": "?"},
    ],
}
QUAY: Mapping[str, Any] = {
    "title": "On the quay",
    "pivot": {"name": "left post", "reaction": False},
    "segment": [{"name": "plank", "length": "6.56 m", "weight": "170 N", "com": "50 %"}],
    "load": [
        {"name": "toolbox", "mass": "11.35 kg", "at": "1.96 m"},
        {"name": "sack", "mass": "10 kg", "at": "5.05 m"},
        {"name": "crate", "mass": "70 kg", "at": "2.58 m"},
    ],
    "force": [
        {"name": "bow rope", "at": "1.31 m", "direction": "up", "force": "?"},
        {"name": "stern rope", "at": "6.56 m", "direction": "48 deg right of up", "force": "?", "count": 2},
        {"name": "friction", "at": "1.31 m", "direction": "right", "force": "?"},
    ],
}
LEAN = (sin(radians(48)), cos(radians(48)))
# Each force: how far along the body, and its direction as (right, up); the last column is what the weights ask for.
CASES = {
    "sloped": (
        SLOPED,
        25,
        [("porter behind", 0.4, (0, 1)), ("porter in front", 2.6, (0, 1))],
        [(18 * G, 1.5), (6 * G, 1.0)],
    ),
    "ropes": (
        ROPES,
        0,
        [("bow rope", 1.0, (0, 1)), ("stern rope", 6.0, LEAN), ("friction", 1.0, (-1, 0))],
        [(170, 3.0), (70 * G, 2.5)],
    ),
    "quay": (
        QUAY,
        0,
        [("bow rope", 1.31, (0, 1)), ("stern rope", 6.56, (2 * LEAN[0], 2 * LEAN[1])), ("friction", 1.31, (1, 0))],
        [(170, 3.28), (11.35 * G, 1.96), (10 * G, 5.05), (70 * G, 2.58)],
    ),
}


def by_numpy(name: str) -> dict[str, float]:
    """The sizes from level, upright and turning balances about the pivot."""
    _, slope, forces, weights = CASES[name]
    run, rise = cos(radians(slope)), sin(radians(slope))
    rows = np.array(
        [
            [way[0] for _, _, way in forces],
            [way[1] for _, _, way in forces],
            [at * (run * way[1] - rise * way[0]) for _, at, way in forces],
        ]
    )
    wanted = np.array([0.0, sum(size for size, _ in weights), sum(size * at * run for size, at in weights)])
    found, rest, rank, _ = np.linalg.lstsq(rows, wanted, rcond=None)
    assert rank == len(forces) and np.allclose(rows @ found, wanted)
    return {each: float(size) for (each, _, _), size in zip(forces, found, strict=True)}


def working(problem: Mapping[str, Any]) -> Working:
    return work_through(cut_free(read_problem(problem)), rules.MOVES)


@pytest.mark.parametrize("name", CASES)
def test_pulls_found_about_two_points_are_those_of_an_independent_solution(name: str) -> None:
    answers = work(CASES[name][0]).answers
    assert {each: answers[each].value for each in by_numpy(name)} == pytest.approx(by_numpy(name), rel=1e-9)


def test_the_porters_carry_what_they_should() -> None:
    assert by_numpy("sloped") == pytest.approx({"porter behind": 131.1, "porter in front": 104.3}, abs=0.05)


@pytest.mark.parametrize("name", CASES)
def test_no_letter_is_defined_by_two_lines(name: str) -> None:
    """Of the lines that begin a goal no two have one letter alone on the left and different right sides."""
    found: dict[str, set[str]] = {}
    for move in working(CASES[name][0]).moves:
        if isinstance(move.line.claim, Arm):
            found.setdefault(plain(move.line.equation.left), set()).add(plain(move.line.equation.right))
    assert [] == [letter for letter, rights in found.items() if len(rights) > 1]
    assert len(found) > 2


@pytest.mark.parametrize("notation", ("plain", "LaTeX", "MathML", "speech"))
def test_an_arm_about_another_point_is_written_with_that_point_below(notation: str) -> None:
    letter = (term(working(SLOPED).body.letters(keys.arm("porter in front", "porter behind"))),)
    assert {
        "plain": "d_PF,PB⊥",
        "LaTeX": r"d_{\mathrm{PF}{,}\mathrm{PB}\perp}",
        "speech": "d sub PF PB perpendicular",
        "MathML": "<msub><mi>d</mi><mrow><mtext>PF</mtext><mtext>,</mtext><mtext>PB</mtext><mtext>⊥</mtext></mrow>"
        "</msub>",
    }[notation] == {"plain": plain, "LaTeX": latex, "speech": speech, "MathML": lambda of: _msub(mathml(of))}[notation](
        letter
    )


def _msub(written: str) -> str:
    found = re.search(r"<msub>.*</msub>", written)
    return found.group() if found else written


def test_the_page_says_from_where_such_an_arm_is_measured_and_says_it_once() -> None:
    page = " ".join(work(SLOPED).text(500).split())
    assert 1 == page.count(
        "These arms are measured from the point where the porter behind acts, and a second letter below says so."
    )


@pytest.mark.parametrize("form", ("html", "pdf"))
def test_a_page_with_such_an_arm_can_be_made(form: str) -> None:
    page = work(SLOPED).written(form)
    assert page.startswith(b"%PDF" if form == "pdf" else b"<!DOCTYPE html>")


def test_the_key_of_an_arm_about_a_point_is_no_key_of_another_arm() -> None:
    """A star stands in no name, so no force called "A about B" can be taken for A about B."""
    assert (
        len(
            {
                keys.arm("A about B"),
                keys.arm("A", "B"),
                keys.arm("A"),
                keys.arm("A about B", "C"),
                keys.arm("A", "B about C"),
            }
        )
        == 5
    )


# ---------------------------------------------------------------------- attacks
def arms(letter_about: str, claimed_about: str) -> tuple[Checker, Equation, Arm]:
    """The arm of the porter in front, written with one letter and measured from one point."""
    body = cut_free(read_problem(SLOPED))
    right = next(
        move.line.equation.right
        for move in working(SLOPED).moves
        if move.line.claim == Arm("porter in front", 1, claimed_about)
    )
    return (
        Checker(Truth(body)),
        Equation(one(body.letters(keys.arm("porter in front", letter_about))), right),
        Arm("porter in front", 1, claimed_about),
    )


@pytest.mark.parametrize(
    ("letter", "point", "stands"),
    (
        ("", "", True),
        ("porter behind", "porter behind", True),
        ("", "porter behind", False),
        ("porter behind", "", False),
        ("paint bucket", "porter behind", False),
    ),
)
def test_the_letter_of_an_arm_says_about_which_point_it_is(letter: str, point: str, stands: bool) -> None:
    checker, line, claim = arms(letter, point)
    if stands:
        assert checker.certify(line, claim).equation == line
        return
    with pytest.raises(Refused):
        checker.certify(line, claim)


def test_an_angle_keeps_the_line_to_which_it_was_measured_first() -> None:
    """The deltoid leans 35° from the level and 55° from the upright; the letter cannot be both."""
    checker, line, claim, _ = at("25-lantern", Between)
    assert isinstance(claim, Between)
    upright, steep = Between("deltoid", claim.first, UP), Equation(line.left, one(Quantity.of("55", "deg")))
    checker.certify(line, claim)
    with pytest.raises(Refused, match="defined before"):
        checker.certify(steep, upright)
    other, _, _, _ = at("25-lantern", Between)
    assert other.certify(steep, upright).equation == steep


def test_a_definition_may_be_written_again() -> None:
    checker, line, claim, _ = at("25-lantern", Between)
    assert checker.certify(line, claim).equation == checker.certify(line, claim).equation


def test_a_line_that_was_refused_defines_nothing() -> None:
    checker, line, claim, _ = at("25-lantern", Between)
    assert isinstance(claim, Between)
    with pytest.raises(Refused):
        checker.certify(line, Between("deltoid", claim.first, UP))
    assert checker.certify(line, claim).equation == line


@pytest.mark.parametrize(
    ("name", "parts", "stands"),
    (
        ("rock-oblique", ("reaction.right", "reaction.up"), True),
        ("rock-oblique", ("reaction.along", "reaction.across"), False),
        ("leg-raise", ("reaction.along", "reaction.across"), True),
        ("leg-raise", ("reaction.right", "reaction.up"), False),
    ),
)
def test_the_angle_of_the_joint_force_is_the_one_to_the_axes_of_the_class(
    name: str, parts: tuple[str, str], stands: bool
) -> None:
    checker, line, _, _ = at(name, Pythagoras, 1)
    angle, (first, second) = line.left[0].factors[0], (checker.truth.body.letters(each) for each in parts)
    assert isinstance(angle, Trig) and isinstance(angle.angle, Letter)
    signs = [checker.sizes.factor(each) for each in (first, second)] if stands else [1, 1]
    sense = 1 if _sign(signs[0]) == _sign(signs[1]) else -1
    new = Equation(line.left, one(Quotient(one(second, sign=sense), one(first))))
    if stands:
        assert checker.certify(new, Pythagoras(parts)).equation == new
        return
    with pytest.raises(Refused):
        checker.certify(new, Pythagoras(parts))


def _sign(value: Any) -> int:
    return sign(value) if not isinstance(value, int) else value


BEHIND: Mapping[str, Any] = {
    "title": "A board with a rope",
    "course": {"positive": "up"},
    "pivot": {"name": "hinge"},
    "segment": [{"name": "board", "direction": "left"}],
    "load": [{"name": "jar", "weight": "10 N", "point": ["0 cm", "0 cm"]}],
    "force": [{"name": "rope", "at": "?", "direction": "up", "force": "10 N"}],
}


@pytest.mark.parametrize("sense", (1, -1))
def test_no_moment_has_a_sign_while_no_place_tells_what_up_means(sense: int) -> None:
    """With "up" as positive the sense hangs on the side where the forces are; here the one place is still sought."""
    body = cut_free(read_problem(BEHIND))
    terms = (term(body.letters("rope.force"), body.letters("rope.at"), sign=-sense),)
    with pytest.raises(Refused):
        Checker(Truth(body)).certify(Equation(one(body.letters("*moment rope")), terms), Moment("rope", sense))


@pytest.mark.parametrize("sense", (1, -1))
def test_a_balance_may_be_counted_either_way_while_no_place_tells_what_up_means(sense: int) -> None:
    body = cut_free(read_problem(BEHIND))
    line = Equation((Term(-sense, (body.letters("rope.force"), body.letters("rope.at")), "rope"),), ())
    assert Checker(Truth(body)).certify(line, Balance(None, sense=sense)).equation == line
