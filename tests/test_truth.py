"""The truth of a free body, worked out a second way: in letters (sympy), in the prime field, and to fifty digits
(mpmath).
"""

from __future__ import annotations

import random
from collections.abc import Mapping
from fractions import Fraction
from typing import Any

import pytest
import sympy
from cheating import problem
from fifty_digits import mp, worth
from hypothesis import given, settings
from hypothesis import strategies as st
from random_problems import problems
from true_values import TrueValues
from worked import CONTRACT, EXTRA, SAMPLES, worked

from explain.mechanics.body import RIGHT, UP, Bearing, Body, Force
from explain.equation.terms import Factor, Group, Letter, Quantity, Quotient, Term, Terms, Trig
from explain.errors import Fault
from explain.exact.prime_field import Field
from explain.problem.reader import read_problem
from explain.mechanics.free_body import cut_free
from explain.mechanics.truth import Truth, symbol, walk


class Digits:
    """Arithmetic of fifty digits, for `walk`; angles in degrees."""

    def __init__(self, values: Mapping[str, Any], bearings: Mapping[str, Bearing]) -> None:
        self.values, self.bearings = values, bearings

    def number(self, top: int, bottom: int) -> Any:
        return mp.mpf(top) / bottom

    def letter(self, name: str) -> Any:
        return self.values[name]

    def power(self, a: Any, n: int) -> Any:
        return a**n

    def ratio(self, function: str, name: str) -> Any:
        turned = degrees(self.bearings[name], self.values) * mp.pi / 180
        return mp.cos(turned) if function == "cos" else mp.sin(turned)


def degrees(bearing: Bearing, values: Mapping[str, Any]) -> Any:
    return mp.mpf(bearing.degrees.numerator) / bearing.degrees.denominator + mp.fsum(
        k * values[letter.name] for letter, k in bearing.unknown
    )


def bodies() -> st.SearchStrategy[Body]:
    """Bodies cut free, solvable or not."""

    def body(stated: Mapping[str, Any]) -> Body | None:
        try:
            return cut_free(read_problem(stated))
        except Fault:
            return None

    return problems().map(body).filter(lambda each: each is not None).map(lambda each: each)  # type: ignore[return-value]


def sizes(truth: Truth, seed: int) -> dict[str, Any]:
    """Some value for every letter, also for one that drops out; the length of a line is a letter like all others
    here.
    """
    draw = random.Random(seed)
    everything = [*truth.moment.values(), *truth.level.values(), *truth.upright.values(), *truth.relation.values()]
    names = {
        each.name for expression in everything for each in expression.free_symbols if each.name not in truth.bearings
    }
    angles = {letter.name for bearing in truth.bearings.values() for letter, _ in bearing.unknown}
    steps = {step.distance.name for force in truth.body.forces for step in force.steps}
    return {name: mp.mpf(draw.randrange(1, 10**6)) / 997 for name in sorted(names | angles | steps)}


# ---------------------------------------------------------------------- the same, written by hand
def push(force: Force, axis: Bearing) -> Terms:
    """A force's part along an axis: its size times the cosine of the angle between, or the sides of its line of
    pull.
    """
    head: tuple[Factor, ...] = (Quantity.of(str(force.count)), force.size)
    if force.toward is not None:
        sides = ((force.toward.right, force.toward.across, RIGHT), (force.toward.up, force.toward.rise, UP))
        return tuple(
            Term(
                sign,
                (*head, Quotient((Term(1, (side,)),), (Term(1, (force.toward.line,)),)), ratio("cos", along, axis)),
            )
            for sign, side, along in sides
            if sign
        )
    assert force.bearing is not None
    return (Term(1, (*head, ratio("cos", force.bearing, axis))),)


def turning(force: Force) -> Terms:
    """A force's moment: for each step to it the step times the part of the force a quarter turn on from the step."""
    if force.arm is not None:
        return (Term(force.turns, (Quantity.of(str(force.count)), force.size, force.arm)),)
    return tuple(
        Term(each.sign, (step.distance, *each.factors))
        for step in force.steps
        for each in push(force, step.bearing.turned(90))
    )


def ratio(name: str, one: Bearing, other: Bearing) -> Factor:
    """The cosine of the angle from one direction to another, as written."""
    return Trig(name, Group((*_angle(one, 1), *_angle(other, -1))))


def _angle(bearing: Bearing, sign: int) -> Terms:
    degrees_ = Quantity.of(str(float(bearing.degrees)), "deg")
    return (
        Term(sign, (degrees_,)),
        *(Term(sign * (1 if k > 0 else -1), (letter,)) for letter, k in bearing.unknown for _ in range(abs(k))),
    )


def sides(body: Body, truth: Truth) -> list[tuple[str, Terms, Any]]:
    """Each moment and each component twice: as written by hand, and from the truth."""
    out = []
    for force in body.forces:
        out.append((f"moment of {force.name}", turning(force), truth.moment[force.name]))
        if force.directed:
            out.append((f"level part of {force.name}", push(force, RIGHT), truth.level[force.name]))
            out.append((f"upright part of {force.name}", push(force, UP), truth.upright[force.name]))
    out += [
        (f"moment of {each.name}", (Term(each.turns, (each.size,)),), truth.moment[each.name]) for each in body.twists
    ]
    return out


@given(bodies())
@settings(max_examples=60)
def test_the_truth_in_the_field_is_what_is_written_by_hand(body: Body) -> None:
    truth, field = Truth(body), Field(random.Random(7))
    assert [
        name for name, written, expression in sides(body, truth) if field.sum(written) != truth.carry(expression, field)
    ] == []


@given(bodies(), st.integers(0, 10**6))
@settings(max_examples=60)
def test_the_truth_to_fifty_digits_is_what_is_written_by_hand(body: Body, seed: int) -> None:
    truth = Truth(body)
    values = sizes(truth, seed)
    ring = Digits(values, truth.bearings)
    far = [
        name
        for name, written, expression in sides(body, truth)
        if abs(worth(written, values) - walk(expression, ring)) > mp.mpf(10) ** -45 * (1 + abs(walk(expression, ring)))
    ]
    assert far == []


@given(bodies())
@settings(max_examples=60)
def test_the_truth_in_letters_is_the_cross_product_in_letters(body: Body) -> None:
    """x Fy − y Fx of each force, multiplied out by sympy from places and components."""
    truth = Truth(body)
    for force in (each for each in body.forces if each.directed and each.arm is None):
        x, y = truth.place[force.name]
        cross = sympy.Matrix([x, y, 0]).cross(sympy.Matrix([truth.level[force.name], truth.upright[force.name], 0]))[2]
        assert sympy.expand(cross - truth.moment[force.name]) == 0


@given(bodies(), st.integers(0, 10**6))
@settings(max_examples=60)
def test_floats_are_near_the_fifty_digits(body: Body, seed: int) -> None:
    truth = Truth(body)
    values = sizes(truth, seed)
    ring, floats = Digits(values, truth.bearings), {name: float(value) for name, value in values.items()}
    for expression in (*truth.moment.values(), *truth.relation.values()):
        assert truth.size(expression, floats) == pytest.approx(float(walk(expression, ring)), rel=1e-9, abs=1e-3)


@given(bodies())
@settings(max_examples=40)
def test_moments_about_another_point_are_moments_less_what_the_sum_of_forces_turns_there(body: Body) -> None:
    """ΣM about P is ΣM about the pivot less r_P × ΣF: in letters, for every point where a force acts."""
    truth = Truth(body)
    if not all(force.directed for force in body.forces):
        return
    moments, level, upright = truth.balances()
    for name, (x, y) in truth.place.items():
        about = sympy.Add(*(truth.moment_about(name, each) for each in truth.moment))
        assert sympy.expand(about - moments + x * upright - y * level) == 0


@pytest.mark.parametrize("name", [path.stem for path in (*CONTRACT, *SAMPLES)] + list(EXTRA))
def test_the_balances_vanish_at_the_values_found_to_fifty_digits(name: str) -> None:
    working = problem(name)
    if not working.body.problem.balanced:
        assert "total" in TrueValues(working).values
        return
    values = TrueValues(working).values
    ring = Digits(values, working.truth.bearings)
    sums = (
        (working.truth.moment, working.truth.level, working.truth.upright)
        if all(f.directed for f in working.body.forces)
        else (working.truth.moment,)
    )
    for balance in sums:
        parts = [walk(each, ring) for each in balance.values()]
        assert abs(mp.fsum(parts)) <= mp.mpf(10) ** -40 * (1 + max(map(abs, parts)))


@pytest.mark.parametrize("path", (*CONTRACT, *SAMPLES), ids=lambda path: str(path.stem))
def test_every_quantity_that_follows_from_others_has_its_relation(path: Any) -> None:
    working = worked(path)
    assert set(working.truth.relation) == {each.letter.name for each in working.body.relations}
    field = Field(random.Random(1))
    for each in (each for each in working.body.relations if each.kind in ("weight", "share", "multiple")):
        assert working.truth.carry(working.truth.relation[each.letter.name], field) == field.product(Term(1, each.of))


def test_the_joint_force_has_no_moment_and_its_own_letters() -> None:
    truth = problem("leg-raise").truth
    assert (truth.moment["reaction"], truth.level["reaction"], truth.upright["reaction"]) == (
        0,
        symbol("reaction.right"),
        symbol("reaction.up"),
    )
    for slope in (20, 45, -45):
        with pytest.raises(KeyError):
            truth.component("reaction", Bearing(Fraction(slope)))


@pytest.mark.parametrize(
    ("back", "com", "through"),
    (("40 cm", "75 %", True), ("40 cm", "74 %", False), ("40 cm", "30 cm", True), ("40 cm", "300.001 mm", False)),
)
def test_the_line_of_a_weight_passes_through_the_pivot_by_the_lengths_and_shares_that_are_given(
    back: str, com: str, through: bool
) -> None:
    """Folded straight back over a thigh of 30 cm: 75 % of a shank of 40 cm are 30 cm."""
    shank = {"name": "shank", "length": back, "direction": "left", "mass": "3 kg", "com": com}
    stated = {
        "title": "A folded leg",
        "pivot": {"name": "hip"},
        "segment": [{"name": "thigh", "length": "30 cm", "direction": "right"}, shank],
        "force": [{"name": "cord", "on": "thigh", "at": "10 cm", "direction": "up", "force": "?"}],
    }
    truth = Truth(cut_free(read_problem(stated)))
    assert truth.through_pivot("shank", Field(random.Random(5))) is through
    assert not truth.through_pivot("cord", Field(random.Random(5)))


@pytest.mark.parametrize(
    ("ends", "to", "through"),
    (
        (["-30 cm", "30 cm"], "", True),
        (["-30 cm", "31 cm"], "", False),
        (["-60 cm", "30 cm"], "one end", True),  # it acts a third of the way from its heavy end
        (["-60 cm", "31 cm"], "one end", False),
    ),
)
def test_the_line_of_a_spread_load_passes_through_the_pivot_where_its_middle_or_its_third_is_there(
    ends: list[str], to: str, through: bool
) -> None:
    sand = {"name": "sand", "weight": "20 N", "spread": ends, **({"spread_to": to} if to else {})}
    stated = {
        "title": "A plank",
        "pivot": {"name": "trestle"},
        "segment": [{"name": "plank", "length": "90 cm"}],
        "load": [sand, {"name": "jug", "weight": "40 N", "at": "30 cm"}],
        "force": [{"name": "rope", "at": "60 cm", "direction": "up", "force": "?"}],
    }
    truth = Truth(cut_free(read_problem(stated)))
    assert truth.through_pivot("sand", Field(random.Random(5))) is through


@pytest.mark.parametrize(("place", "through"), ((["0 cm", "0 cm"], True), (["-7 cm", "0 cm"], False)))
def test_the_line_to_a_fixed_point_passes_through_the_pivot_where_that_is_the_point(
    place: list[str], through: bool
) -> None:
    stated = {
        "title": "A band",
        "pivot": {"name": "elbow"},
        "segment": [{"name": "forearm", "direction": "30 deg above right"}],
        "load": [{"name": "jug", "weight": "40 N", "at": "30 cm"}],
        "force": [{"name": "band", "at": "20 cm", "toward": place, "force": "5 N"}],
        "muscle": [{"name": "biceps", "at": "4 cm", "direction": "up"}],
    }
    truth = Truth(cut_free(read_problem(stated)))
    assert truth.through_pivot("band", Field(random.Random(5))) is through


def test_a_letter_is_a_symbol_of_its_name() -> None:
    assert symbol(Letter("biceps.force", "F_B").name) == sympy.Symbol("biceps.force")
