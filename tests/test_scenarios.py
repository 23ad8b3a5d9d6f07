"""Our own scenarios, S01 to S20, and the elbow ladder, which changes one thing a rung: every answer, to six figures.

The expected values are those of a numerical balance by numpy (tests/statics.py), which shares nothing with the program
but the file format.
"""

from __future__ import annotations

import math
import tomllib
from collections.abc import Callable, Mapping
from functools import cache
from pathlib import Path
from typing import NamedTuple, Protocol

import pytest
from statics import SIZE, Statics, solved

from explain import work

FOLDER = Path(__file__).with_name("scenarios")


class Found(Protocol):
    """An answer that the program gives."""

    @property
    def value(self) -> float: ...
    @property
    def unit(self) -> str: ...
    @property
    def direction(self) -> float | None: ...


class Expected(NamedTuple):
    """An answer: its value, its unit, and its direction in degrees counter-clockwise from right where it has one to
    compare.
    """

    value: float
    unit: str
    direction: float | None = None


class Derived(NamedTuple):
    """What a scenario asks that is no answer of a problem: it follows from the answers by `of`."""

    what: str
    value: float
    of: Callable[[Mapping[str, Found]], float]


class Case(NamedTuple):
    """A scenario or a part of one: the problem file that states it, its answers, and what follows from them."""

    file: str
    expected: Mapping[str, Expected]
    derived: tuple[Derived, ...] = ()


E = Expected
CASES = (
    Case("S01", {"flexors": E(242.7975, "N", 90)}),
    Case("S02", {"flexors": E(301.6575, "N", 90), "reaction": E(256.5315, "N", 270)}),
    Case("S04-a", {"flexors": E(213.287015, "N")}),
    Case("S04-b", {"flexors": E(203.450870, "N")}),
    Case(
        "S05",
        {
            "biceps": E(550.282069, "N", 110),
            "reaction.right": E(188.207552, "N"),
            "reaction.up": E(-441.559, "N"),
            "reaction": E(479.996285, "N", 360 - 66.914638),
        },
    ),
    Case(
        "S06",
        {"biceps": E(281.535526, "N", 90), "brachialis": E(197.074868, "N", 90), "reaction": E(410.921395, "N", 270)},
    ),
    Case("S07", {"triceps": E(1125.743913, "N", 90), "reaction": E(1207.990913, "N", 270)}),
    Case(
        "S08",
        {
            "patellar tendon": E(821.449575, "N", 108),
            "reaction.along": E(683.479865, "N"),
            "reaction.across": E(-242.140664, "N"),
            "reaction": E(725.104700, "N"),
        },
    ),
    Case(
        "S11",
        {"abductors": E(1050.109759, "N", 251), "reaction": E(1638.037109, "N", 90 - 12.047036)},
        (Derived("body weights", 2.256436, lambda a: a["reaction"].value / (74 * 9.81)),),
    ),
    Case("S14-a", {"tibialis anterior": E(34.22, "lb", 90), "reaction": E(24.42, "lb", 270)}),
    Case("S14-b", {"tibialis anterior": E(152.218144, "N", 90)}),
    Case("S16-a", {"neck extensors": E(26.665364, "N", 270), "reaction": E(71.791364, "N", 90)}),
    Case(
        "S16-b",
        {"neck extensors": E(70.581692, "N", 270)},
        (Derived("times the pull of the level gaze", 2.646943, lambda a: a["neck extensors"].value / 26.665364),),
    ),
    Case("S18", {"bag.at": E(18.085299, "cm")}),
    Case(
        "S19",
        {"shank and foot.direction": E(52.578527, "deg", 270 + 52.578527)},
        (Derived("knee flexion", 37.421473, lambda a: 90 - a["shank and foot.direction"].value),),
    ),
    Case("S20-a", {"elbow flexors": E(10.4967, "N m")}),
    Case("S20-b", {"shoulder flexors": E(18.638658, "N m")}),
    Case("S20-c", {"shoulder flexors": E(621.288589, "N")}),
    Case("rung-00", {"flexors": E(313.92, "N", 90)}),
    Case("rung-01", {"flexors": E(347.7645, "N", 90)}),
    Case("rung-03", {"flexors": E(377.1945, "N", 90), "reaction": E(322.2585, "N", 270)}),
    Case("rung-04", {"flexors": E(534.1545, "N", 90)}),
    Case("rung-05", {"flexors": E(534.1545, "N", 90)}),
    Case("rung-06", {"flexors": E(544.225137, "N")}),
    Case(
        "rung-08",
        {
            "flexors": E(552.997431, "N", 105),
            "reaction.right": E(143.126267, "N"),
            "reaction.up": E(-459.5985, "N"),
            "reaction": E(481.368787, "N", 360 - 72.702583),
        },
    ),
    Case("rung-09", {"first flexor": E(315.600886, "N", 90), "second flexor": E(220.920620, "N", 90)}),
    Case("rung-10", {"bottle.mass": E(6.839010, "kg")}),
    Case("rung-11", {"bottle.at": E(36.474720, "cm")}),
    Case("rung-12", {"forearm.direction": E(56.154526, "deg", 360 - 56.154526)}),
    Case("rung-13", {"flexors": E(82.34375, "lb", 90)}),
    Case("rung-14", {"flexors": E(543.087241, "N", 90)}),
    Case("rung-14-table", {"flexors": E(543.087241, "N", 90)}),
)


@cache
def answers(file: str) -> Mapping[str, Found]:
    return work((FOLDER / f"{file}.toml").read_text(encoding="utf-8")).answers


def by_numpy(file: str) -> Mapping[str, float]:
    """Every unknown, every pull and the joint force in SI and degrees; a table's rows are those of rung-14."""
    problem = tomllib.loads((FOLDER / f"{file.removesuffix('-table')}.toml").read_text(encoding="utf-8"))
    for each in problem.get("muscle", ()):
        if each.get("force") == "limit":
            each["force"] = each["limit"]
    statics, found = Statics(problem), solved(problem)
    statics.values = found
    return found | {each["name"]: statics.size(each["name"]) for each in statics.pulls()}


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.file)
def test_the_values_expected_of_a_scenario_are_those_that_numpy_finds(case: Case) -> None:
    sizes = {**SIZE, "lb": SIZE["lbf"], "N m": 1.0}
    found = by_numpy(case.file)
    assert {name: each.value for name, each in case.expected.items()} == {
        name: pytest.approx(found[name] / sizes[each.unit], rel=1e-6) for name, each in case.expected.items()
    }


@pytest.mark.parametrize("case", [case for case in CASES if "reaction" in case.expected], ids=lambda case: case.file)
def test_the_way_expected_of_a_joint_force_is_the_one_that_numpy_finds(case: Case) -> None:
    told = case.expected["reaction"].direction
    assert told is None or told == pytest.approx(by_numpy(case.file)["reaction.direction"], abs=1e-4)


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.file)
def test_a_scenario_has_its_answers(case: Case) -> None:
    found = {name: answers(case.file)[name].value for name in case.expected}
    assert found == {name: pytest.approx(expected.value, rel=1e-6) for name, expected in case.expected.items()}


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.file)
def test_a_scenario_s_answers_are_in_its_units(case: Case) -> None:
    found = {name: answers(case.file)[name].unit.replace("·", " ") for name in case.expected}
    assert found == {name: expected.unit for name, expected in case.expected.items()}


@pytest.mark.parametrize(
    "case",
    [case for case in CASES if any(each.direction for each in case.expected.values())],
    ids=lambda case: case.file,
)
def test_a_scenario_s_forces_point_where_they_should(case: Case) -> None:
    told = {name: expected.direction for name, expected in case.expected.items() if expected.direction is not None}
    assert {name: answers(case.file)[name].direction for name in told} == {
        name: pytest.approx(degrees, abs=1e-4) for name, degrees in told.items()
    }


@pytest.mark.parametrize("case", [case for case in CASES if case.derived], ids=lambda case: case.file)
def test_what_else_a_scenario_asks_follows_from_its_answers(case: Case) -> None:
    found = {each.what: each.of(answers(case.file)) for each in case.derived}
    assert found == {each.what: pytest.approx(each.value, rel=1e-6) for each in case.derived}


def test_a_slope_changes_no_answer_where_every_force_is_upright() -> None:
    level, sloping = answers("rung-04")["flexors"].value, answers("rung-05")["flexors"].value
    assert sloping == pytest.approx(level, rel=1e-12)


def test_the_moment_at_the_shoulder_is_the_pull_s_moment() -> None:
    moment, pull = answers("S20-b")["shoulder flexors"].value, answers("S20-c")["shoulder flexors"].value
    assert pull * 0.030 == pytest.approx(moment, rel=1e-9)


def test_the_parts_of_a_joint_s_force_make_up_its_size() -> None:
    along, across = (answers("S08")[f"reaction.{part}"].value for part in ("along", "across"))
    assert math.hypot(along, across) == pytest.approx(answers("S08")["reaction"].value, rel=1e-9)


def test_every_problem_file_is_worked_once() -> None:
    assert sorted(f"{case.file}.toml" for case in CASES) == sorted(path.name for path in FOLDER.iterdir())
