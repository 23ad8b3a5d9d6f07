"""Answers against independent libraries: numpy's linear algebra, sympy's beams, and the constants of scipy and NIST."""

from __future__ import annotations

import random
import tomllib
from collections.abc import Mapping
from fractions import Fraction
from math import isclose
from typing import Any

import numpy as np
import pytest
import scipy.constants
import statics
import sympy
from hypothesis import assume, given, settings
from random_problems import problems
from sympy.physics.continuum_mechanics.beam import Beam
from worked import HERE

import rules
from explain.solve.answers import Answer, answers
from explain.errors import Fault, NoWay
from explain.exact.prime_field import UNITS
from explain.problem.reader import read_problem
from explain.mechanics.free_body import cut_free
from explain.solve.engine import work_through

INSIDE = ("jug-level", "rock-oblique", "leg-raise", "scale-push", "two-flexors", "dancer", "beam")


def found(stated: Mapping[str, Any]) -> dict[str, Answer]:
    return answers(work_through(cut_free(read_problem(stated)), rules.MOVES))


def three_by_three(stated: Mapping[str, Any]) -> dict[str, float]:
    """The one unknown pull and the two parts of the joint force, from one matrix: rows are moments, level, upright
    forces.
    """
    body = statics.Statics(stated)
    (name,) = body.unknown
    start = body.rest({name: 0.0})
    pull = body.rest({name: 1.0}) - start
    matrix = np.array([[pull[0], 0.0, 0.0], [pull[1], 1.0, 0.0], [pull[2], 0.0, 1.0]])
    return dict(zip((name, "reaction.right", "reaction.up"), map(float, np.linalg.solve(matrix, -start)), strict=True))


def in_si(answer: Answer) -> float:
    """A force, length or moment in N, m, N m."""
    return answer.value * statics.value(f"1 {answer.unit}")


# ---------------------------------------------------------------------- numpy
@pytest.mark.parametrize("name", INSIDE)
def test_the_contract_is_what_numpy_makes_of_it(name: str) -> None:
    stated = {**tomllib.loads((HERE / "contract" / f"{name}.toml").read_text("utf-8")), "ask": []}
    stated["ask"] = [*statics.Statics(stated).unknown, "reaction.right", "reaction.up"]
    stated["course"] = {key: value for key, value in stated.get("course", {}).items() if key != "axes"}
    wanted, given_back = three_by_three(stated), found(stated)
    largest = max(map(abs, wanted.values()))
    assert {key: pytest.approx(value, abs=1e-9 * largest) for key, value in wanted.items()} == {
        key: in_si(given_back[key]) for key in wanted
    }


@given(problems(kinds=("force", "share")))
@settings(max_examples=40)
def test_a_random_pull_is_what_numpy_makes_of_it(stated: dict[str, Any]) -> None:
    stated["ask"] = ["biceps", "reaction.right", "reaction.up"]
    stated["course"].pop("axes", None)
    try:
        wanted = three_by_three(stated)
        given_back = found(stated)
    except (ArithmeticError, np.linalg.LinAlgError, Fault, NoWay):
        assume(False)
    largest = max(map(abs, wanted.values()))
    assume(largest < 1e7)
    assert {key: pytest.approx(value, abs=1e-9 * largest) for key, value in wanted.items()} == {
        key: in_si(given_back[key]) for key in wanted
    }


# ---------------------------------------------------------------------- sympy's beams
def reactions(
    near: Fraction, far: Fraction, length: Fraction, loads: list[tuple[Fraction, Fraction]]
) -> tuple[float, float]:
    """What two supports push a beam up with, in newtons; loads are places in metres and weights in newtons."""
    beam = Beam(sympy.Rational(length), *sympy.symbols("E I"))
    first, second = sympy.symbols("first second")
    for place, force in ((near, first), (far, second), *((place, sympy.Rational(weight)) for place, weight in loads)):
        beam.apply_load(force, sympy.Rational(place), -1)
    beam.bc_deflection = [(sympy.Rational(near), 0), (sympy.Rational(far), 0)]
    beam.solve_for_reaction_loads(first, second)
    return -float(beam.reaction_loads[first]), -float(beam.reaction_loads[second])


def test_the_plank_of_the_contract_is_what_the_beam_says() -> None:
    g = Fraction("9.81")
    near, far = reactions(
        Fraction(0), Fraction("2.9"), Fraction("3.2"), [(Fraction("1.6"), 12 * g), (Fraction("1.1"), 64 * g)]
    )
    given_back = answers(work_through(cut_free(read_problem(HERE / "contract" / "beam.toml")), rules.MOVES))
    assert [given_back[name].value for name in ("reaction.up", "far trestle")] == [
        pytest.approx(near, rel=1e-12),
        pytest.approx(far, rel=1e-12),
    ]


@pytest.mark.parametrize("seed", range(8))
def test_a_random_plank_is_what_the_beam_says(seed: int) -> None:
    draw = random.Random(seed)
    length, g = draw.randrange(200, 400), Fraction("9.8")
    near, far = draw.randrange(0, 60), draw.randrange(120, length)
    loads = [(draw.randrange(0, length), draw.randrange(50, 900)) for _ in range(3)]
    stated = {
        "title": "A plank",
        "pivot": {"name": "near end", "reaction": False},
        "course": {"g": "9.8 m/s^2"},
        "segment": [{"name": "plank", "length": f"{length} cm", "mass": "12.5 kg", "com": "50 %"}],
        "load": [
            {"name": f"box {index}", "weight": f"{weight} N", "at": f"{place} cm"}
            for index, (place, weight) in enumerate(loads)
        ],
        "force": [
            {"name": name, "at": f"{place} cm", "direction": "up", "force": "?"}
            for name, place in (("near trestle", near), ("far trestle", far))
        ],
    }
    centred = [(Fraction(length, 200), Fraction("12.5") * g)]
    wanted = reactions(
        Fraction(near, 100),
        Fraction(far, 100),
        Fraction(length, 100),
        centred + [(Fraction(p, 100), Fraction(w)) for p, w in loads],
    )
    given_back = found(stated)
    assert [given_back[name].value for name in ("near trestle", "far trestle")] == [
        pytest.approx(each, abs=1e-9 * max(map(abs, wanted))) for each in wanted
    ]


# ---------------------------------------------------------------------- constants
SCIPY = {
    "in": scipy.constants.inch,
    "ft": scipy.constants.foot,
    "lb": scipy.constants.pound,
    "lbf": scipy.constants.pound_force,
    "g": scipy.constants.gram,
    "cm": scipy.constants.centi,
    "mm": scipy.constants.milli,
    "kN": scipy.constants.kilo,
    "%": scipy.constants.centi,
    "kg": 1.0,
    "m": 1.0,
    "s": 1.0,
    "N": 1.0,
}
# NIST Special Publication 811 (2008), Appendix B.8 with its footnotes 22 (pound) and 23 (pound-force); all exact.
NIST = {"in": "0.0254", "ft": "0.3048", "lb": "0.45359237", "lbf": "4.4482216152605"}
KINDS = {
    "kg": (1, 0, 0),
    "g": (1, 0, 0),
    "lb": (1, 0, 0),
    "m": (0, 1, 0),
    "cm": (0, 1, 0),
    "mm": (0, 1, 0),
    "in": (0, 1, 0),
    "ft": (0, 1, 0),
    "s": (0, 0, 1),
    "N": (1, 1, -2),
    "kN": (1, 1, -2),
    "lbf": (1, 1, -2),
    "%": (0, 0, 0),
}


def test_the_units_of_the_checker_are_those_of_scipy() -> None:
    assert set(UNITS) == set(SCIPY)
    assert [name for name, (size, _) in UNITS.items() if not isclose(float(size), SCIPY[name], rel_tol=1e-15)] == []


def test_the_units_of_the_checker_are_exactly_those_of_nist() -> None:
    assert {name: UNITS[name][0] for name in NIST} == {name: Fraction(size) for name, size in NIST.items()}


def test_the_kinds_of_the_units_are_right() -> None:
    assert {name: kind for name, (_, kind) in UNITS.items()} == KINDS


def test_a_pound_force_is_a_pound_at_the_standard_acceleration() -> None:
    assert float(UNITS["lbf"][0]) == pytest.approx(scipy.constants.pound * scipy.constants.g, rel=1e-15)


def test_the_converter_and_the_checker_agree_though_they_have_tables_of_their_own() -> None:
    from explain.equation.terms import Quantity
    from explain.problem.quantity import convert

    for name, (size, kind) in UNITS.items():
        base = tuple((unit, power) for unit, power in zip(("kg", "m", "s"), kind, strict=True) if power)
        if base and name != "s":
            assert Fraction(convert(Quantity.of("1", name), base).number) == size
