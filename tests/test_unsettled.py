"""Problems that the conditions cannot settle: each is refused with what was found, what is expected and an example,
or worked out and explained.
"""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from click.testing import CliRunner, Result
from worked import EXTRA

from explain import Fault, work
from explain.cli.main import main
from explain.errors import NoWay
from explain.problem.reader import read_problem
from explain.mechanics.free_body import cut_free
from explain.mechanics.settlement import Settled, Settling, Stage, settle
from explain.mechanics.truth import Truth

ARM = """
title = "A lantern on the jetty"
[pivot]
name = "elbow"
[[segment]]
name = "forearm"
length = "30 cm"
mass = "1.5 kg"
com = "14 cm"
[[load]]
name = "lantern"
mass = "3 kg"
at = "28 cm"
"""
BICEPS = '[[muscle]]\nname = "biceps"\nat = "4 cm"\ndirection = "up"\n'
BRACHIALIS = '[[muscle]]\nname = "brachialis"\nat = "3 cm"\ndirection = "up"\n'
PLANK = """
title = "A plank on the jetty"
[pivot]
name = "near end"
reaction = false
[[segment]]
name = "plank"
length = "3 m"
[[load]]
name = "keg"
weight = "300 N"
at = "1 m"
"""
SHANK = """
title = "A cuff on a raised shank"
[pivot]
name = "knee"
[[segment]]
name = "shank"
direction = "? right of down"
"""
CUFF = '[[load]]\nname = "cuff"\nweight = "80 N"\nat = "10 cm"\n'
STRAIGHT = '[[muscle]]\nname = "quadriceps"\nat = "4 cm"\ndirection = "up"\nforce = "{}"\n'


def pull(name: str, force: str, turns: str = "counter-clockwise", arm: str = "4 cm") -> str:
    return f'[[muscle]]\nname = "{name}"\nmoment_arm = "{arm}"\nturns = "{turns}"\nforce = "{force}"\n'


def support(name: str, at: str, direction: str = "up", force: str = "?") -> str:
    return f'[[force]]\nname = "{name}"\nat = "{at}"\ndirection = "{direction}"\nforce = "{force}"\n'


def fault(problem: str) -> Fault:
    return pytest.raises(Fault, work, problem).value


def run(problem: str, folder: Path, *more: str) -> Result:
    (folder / "problem.toml").write_text(problem, encoding="utf-8")
    return CliRunner().invoke(main, ["work", str(folder / "problem.toml"), *more])


# what cannot be settled, by what the message has to say: in what was found, in what is expected
UNSETTLED = [
    (
        "a pull along the bone",
        ARM + BICEPS.replace('"up"', '"back"'),
        ["biceps", "passes through the pivot"],
        ["some distance"],
    ),
    (
        "a pull that grips at the pivot",
        ARM + BICEPS.replace('"4 cm"', '"0 cm"'),
        ["biceps", "passes through the pivot"],
        ["some distance"],
    ),
    (
        "a pull towards the pivot",
        ARM + BICEPS.replace('direction = "up"', 'toward = ["0 cm", "0 cm"]'),
        ["biceps", "passes through the pivot"],
        ["some distance"],
    ),
    (
        "two muscles",
        ARM + BICEPS + BRACHIALIS,
        ["2 unknowns", "biceps", "brachialis"],
        ["a value for one of them", "how they share"],
    ),
    (
        "three muscles",
        ARM + BICEPS + BRACHIALIS + BICEPS.replace("biceps", "pronator"),
        ["3 unknowns", "biceps", "brachialis", "pronator"],
        ["how they share"],
    ),
    (
        "a pull and the load it holds",
        ARM.replace('"3 kg"', '"?"') + BICEPS,
        ["2 unknowns", "biceps", "lantern"],
        ["a value for one of them"],
    ),
    (
        "a pull and its distance",
        ARM + BICEPS.replace('"4 cm"', '"?"'),
        ["2 unknowns", "biceps"],
        ["a value for one of them"],
    ),
    (
        "three parallel unknowns without a joint",
        PLANK + support("post", "0 m") + support("rope", "2 m") + support("stay", "3 m"),
        ["3 unknowns", "post", "rope", "stay"],
        ["a value for one of them"],
    ),
    (
        "four unknowns without a joint",
        PLANK
        + support("post", "0 m")
        + support("rope", "2 m")
        + support("stay", "3 m", "30 deg above left")
        + support("hook", "1 m", "30 deg above right"),
        ["4 unknowns", "post", "rope", "stay", "hook"],
        ["a value for one of them"],
    ),
    (
        "numbers that do not balance",
        'ask = ["reaction"]\n' + ARM + BICEPS + 'force = "300 N"\n',
        ["contradict", "moments about the pivot", "N m"],
        ["forces that balance", '"?"'],
    ),
    (
        "vertical forces that do not balance",
        PLANK + support("post", "2 m"),
        ["contradict", "vertical forces", "-150 N"],
        ["forces that balance", '"?"'],
    ),
    (
        "horizontal forces that do not balance",
        PLANK + support("post", "0 m") + support("rope", "2 m") + support("wind", "1 m", "right", "20 N"),
        ["contradict", "horizontal forces", "20 N"],
        ["forces that balance", '"?"'],
    ),
    ("a sine beyond one", SHANK + CUFF + pull("quadriceps", "300 N"), ["sine", "1.5"], ["between -1 and 1"]),
    (
        "a sine below minus one",
        SHANK + CUFF + pull("hamstrings", "300 N", "clockwise"),
        ["sine", "1.5"],
        ["between -1 and 1"],
    ),
    (
        "a balance outside the range",
        SHANK + 'range = ["0 deg", "20 deg"]\n' + CUFF + pull("quadriceps", "100 N"),
        ["30 ", "150 "],
        ["between 0 and 20"],
    ),
    ("every angle", SHANK + CUFF + STRAIGHT.format("200 N"), ["every angle balances"], ["the angle cancels"]),
    (
        "no angle",
        SHANK + pull("quadriceps", "100 N") + pull("hamstrings", "100 N", "clockwise", "3 cm"),
        ["no angle balances"],
        ["the angle cancels"],
    ),
    (
        "every distance",
        PLANK.replace("reaction = false", "reaction = true")
        + support("strut", "?", "out", "50 N")
        + support("post", "1 m", force="300 N"),
        ["every value balances", "strut"],
        [],
    ),
    (
        "no distance",
        PLANK.replace("reaction = false", "reaction = true") + support("strut", "?", "out", "50 N"),
        ["no value balances", "strut"],
        [],
    ),
    (
        "no joint and no direction",
        PLANK + support("post", "2 m") + pull("winch", "?"),
        ["missing"],
        ["winch", "direction"],
    ),
    (
        "the joint asked for and no direction",
        'ask = ["reaction"]\n' + ARM + pull("biceps", "?"),
        ["missing"],
        ["biceps", "direction"],
    ),
]


@pytest.mark.parametrize(
    ("problem", "found", "expected"), [each[1:] for each in UNSETTLED], ids=[each[0] for each in UNSETTLED]
)
def test_what_cannot_be_settled_is_refused_with_the_reason(
    problem: str, found: Sequence[str], expected: Sequence[str]
) -> None:
    told = fault(problem)
    assert ([], []) == (
        [each for each in found if each not in f"{told.key}: {told.found}"],
        [each for each in expected if each not in told.expected],
    )
    assert (2, True) == (told.exit_code, bool(told.example))


@pytest.mark.parametrize("problem", [each[1] for each in UNSETTLED], ids=[each[0] for each in UNSETTLED])
def test_the_message_names_the_file_and_ends_with_what_to_write(problem: str, tmp_path: Path) -> None:
    result = run(problem, tmp_path)
    first, *rest = result.stderr.splitlines()
    assert (2, "", True) == (result.exit_code, result.stdout, first.startswith(f"explain: {tmp_path / 'problem.toml'}"))
    assert (True, True) == ("found " in first, rest[-1].startswith("Write, for example: "))
    assert ("1 unknowns" in first, [each for each in rest if each.startswith("Expected ")]) == (False, rest[:1])


@pytest.mark.parametrize(
    ("problem", "key"),
    [
        (SHANK + CUFF + pull("quadriceps", "300 N"), "shank.direction"),
        (SHANK + CUFF + STRAIGHT.format("200 N"), "shank.direction"),
        (SHANK + 'range = ["0 deg", "20 deg"]\n' + CUFF + pull("quadriceps", "100 N"), "shank.range"),
    ],
)
def test_a_fault_of_an_angle_names_its_key(problem: str, key: str) -> None:
    assert key == fault(problem).key


@pytest.mark.parametrize("force", ("200.0001 N", "201 N", "220 N", "239 N"))
def test_a_sine_a_little_beyond_one_is_beyond_one(force: str) -> None:
    """The cuff turns with 8 N·m at most, the pull with 4 cm times its size: at 200 N the shank is level, and no
    angle is left for more.
    """
    told = fault(SHANK + CUFF + pull("quadriceps", force))
    assert ("shank.direction", True) == (told.key, "an angle whose sine or cosine would be" in told.found)


def test_a_sine_of_just_one_is_a_right_angle() -> None:
    assert (
        pytest.approx(90.0, abs=1e-4)
        == work(SHANK + CUFF + pull("quadriceps", "200 N")).answers["shank.direction"].value
    )


def test_a_balance_that_does_not_grow_evenly_with_its_unknown_is_not_worked_as_if_it_did() -> None:
    """No problem file makes such a balance; whoever adds one must not get a false number from it."""
    body = cut_free(read_problem(ARM + BICEPS))
    settling = Settling(body, Truth(body))
    settling.conditions["moments"] = lambda values: values["biceps.force"] ** 2 - 400.0
    with pytest.raises(NoWay, match="do not depend evenly"):
        settling.settle()


def settled(problem: Mapping[str, Any] | str) -> Settled:
    body = cut_free(read_problem(problem))
    return settle(body, Truth(body))


def see_saw(one: str, at: str, other: str, far: str) -> str:
    """Two loads to both sides of the elbow, and a biceps at 4 cm."""
    loads = "".join(
        f'[[load]]\nname = "{name}"\nweight = "{weight}"\nat = "{place}"\n'
        for name, weight, place in (("jug", one, at), ("cup", other, far))
    )
    return 'title = "A beam"\n[pivot]\nname = "elbow"\n[[segment]]\nname = "beam"\n' + loads + BICEPS


def test_what_floats_lose_of_large_loads_is_no_pull() -> None:
    """21,000 kN at 0.7 m balance 7,000 kN at 2.1 m, and in floats they do not quite."""
    assert 0.7 * 21e6 - 2.1 * 7e6 != 0
    assert settled(see_saw("21000000 N", "0.7 m", "7000000 N", "-2.1 m")).values["biceps.force"] == 0


def test_a_small_pull_of_small_loads_is_not_taken_for_nothing() -> None:
    """Two loads of 0.00001 N, at 0.3 m and at 0.1 m to the other side: 0.000002 N·m over 0.04 m."""
    found = settled(see_saw("0.00001 N", "0.3 m", "0.00001 N", "-0.1 m"))
    assert found.values["biceps.force"] == pytest.approx(0.00005, rel=1e-9)


def test_the_largest_force_is_told_without_its_sign_and_lengths_and_angles_are_none() -> None:
    values = {"biceps.force": -30.0, "jug.weight": 20.0, "jug.at": 500.0, "*angle shank": 90.0, "jug.mass": 70.0}
    assert 30.0 == Settled(values).largest_force()
    assert (0.0, 1.0) == (Settled({"jug.at": 5.0}).largest_force(), Settled({}).largest_force(default=1.0))


@pytest.mark.parametrize(
    ("name", "stages"),
    (
        ("two ropes", [Stage("level", "left rope.force", (("upright", "right rope.force"),))]),
        ("two ropes at a ring", [Stage("level", "right rope.force", (("upright", "*angle right rope"),))]),
    ),
)
def test_level_and_upright_forces_settle_two_unknowns_together(name: str, stages: list[Stage]) -> None:
    found = settled(EXTRA[name])
    assert (stages, "angle" in stages[0].partners[0][1]) == (list(found.stages), found.stages[0].polar)


def test_an_angle_found_with_its_force_is_told_among_the_roots() -> None:
    """25 N at 30° leave 25 cos 30° = 21.651 N level and 4 · 9.81 − 12.5 = 26.74 N upright: an angle of 51.0039°."""
    assert settled(EXTRA["two ropes at a ring"]).roots == {"*angle right rope": [pytest.approx(51.0039, abs=1e-4)]}


@pytest.mark.parametrize("sought", ("at", "moment_arm"))
def test_a_small_distance_beside_large_forces_is_not_taken_for_nothing(sought: str) -> None:
    """500 N at 1 m hold 1,000 kN at 0.0005 m."""
    keg = {"at": support("keg", "?", "down", "1000000 N"), "moment_arm": pull("keg", "1000000 N", "clockwise", "?")}
    rope = support("rope", "1 m", "up", "500 N")
    found = settled('title = "A keg"\n[pivot]\nname = "hinge"\n[[segment]]\nname = "board"\n' + keg[sought] + rope)
    assert found.values[f"keg.{sought}"] == pytest.approx(0.0005, rel=1e-9)


def test_the_moments_about_the_pivot_are_tried_first_and_those_about_other_points_last() -> None:
    body = cut_free(read_problem(PLANK + support("post", "0 m") + support("rope", "3 m")))
    assert ["moments", "level", "upright", "moments about post", "moments about rope"] == list(
        Settling(body, Truth(body)).conditions
    )


def test_a_share_settles_what_two_muscles_left_open() -> None:
    answers = work(ARM + BICEPS + BRACHIALIS + 'force = "0.70 * biceps"\n').answers
    assert pytest.approx((1.5 * 14 + 3 * 28) * 9.81 / (4 + 0.7 * 3)) == answers["biceps"].value


def test_a_condition_that_reads_nothing_is_nothing_does_not_count() -> None:
    assert (200.0, 100.0) == tuple(
        each.value for each in work(PLANK + support("post", "0 m") + support("rope", "3 m")).answers.values()
    )


def test_three_unknowns_that_three_conditions_settle_are_worked() -> None:
    placed = {"stay": (0.04, 30.0), "rope": (0.14, 140.0), "hand": (0.24, 100.0)}
    words = ("30 deg above right", "40 deg above left", "80 deg above left")
    answers = work(
        PLANK
        + "".join(support(name, f"{at} m", way) for (name, (at, _)), way in zip(placed.items(), words, strict=True))
    ).answers
    at, turn = np.array([each for each in placed.values()]).T
    turn = np.radians(turn)
    expected = np.linalg.solve([np.cos(turn), np.sin(turn), at * np.sin(turn)], [0.0, 300.0, 300.0 * 1.0])
    assert pytest.approx(list(expected)) == [answers[name].value for name in placed]


def test_everything_in_one_line_is_at_rest_and_no_check_fails(tmp_path: Path) -> None:
    result = run(SHANK + CUFF + STRAIGHT.format("150 N"), tmp_path, "--as", "json")
    found = json.loads(result.stdout)
    assert (0, 0.0, [180.0]) == (
        result.exit_code,
        found["answers"]["shank.direction"]["value"],
        found["answers"]["shank.direction"]["others"],
    )


class TestAPullThatWouldHaveToPush:
    PUSHED = ARM + BICEPS.replace('"up"', '"down"')

    def test_it_is_worked_out_and_exits_with_1(self, tmp_path: Path) -> None:
        result = run(self.PUSHED, tmp_path, "--as", "json")
        assert (1, pytest.approx(-(1.5 * 14 + 3 * 28) * 9.81 / 4)) == (
            result.exit_code,
            json.loads(result.stdout)["answers"]["biceps"]["value"],
        )

    def test_its_direction_stays_as_stated(self) -> None:
        assert 270.0 == work(self.PUSHED).answers["biceps"].direction

    def test_every_line_is_certified(self) -> None:
        walkthrough = work(self.PUSHED)
        assert {True} == {walkthrough.outcome.working.checker.vouches_for(move.line) for move in walkthrough.moves}

    def test_the_page_says_what_the_sign_means_and_what_to_think_of(self) -> None:
        said = " ".join(work(self.PUSHED).text().replace("│", "").split())
        assert [True] * 3 == [
            each in said
            for each in ("would have to push", "a muscle cannot", "another muscle, one that turns the opposite way")
        ]

    def test_a_force_that_is_no_muscle_may_point_the_other_way(self, tmp_path: Path) -> None:
        result = run(PLANK + support("post", "2 m", "down") + support("rope", "0 m"), tmp_path)
        assert (0, True) == (
            result.exit_code,
            "The post acts with 150 N against the stated direction: straight up." in " ".join(result.stdout.split()),
        )


@pytest.mark.parametrize(
    ("bone", "direction", "angle"),
    [
        ("up", "? above right", 90),
        ("up", "? left of up", 0),
        ("down", "? above left", 90),
        ("right", "? below right", 270),
        ("left", "? below right", 270),
        ("right", "? left of up", 0),
        ("30 deg above right", "? above right", 90),
        ("30 deg above right", "? left of up", 0),
    ],
)
def test_a_pull_found_to_be_upright_leaves_the_joint_one_part(bone: str, direction: str, angle: float) -> None:
    """A pull of 300 N at 4 cm holds 40 N at 30 cm on any straight bone if it points up; then the joint pushes down
    with 260 N, and not sideways.
    """
    muscle = {"name": "biceps", "at": "4 cm", "direction": direction, "force": "300 N"}
    found = work(
        {
            "title": "A pull straight up",
            "ask": ["biceps.direction", "reaction"],
            "pivot": {"name": "elbow"},
            "muscle": [muscle],
            "segment": [{"name": "forearm", "direction": bone}],
            "load": [{"name": "jug", "weight": "40 N", "at": "30 cm"}],
        }
    )
    assert angle == pytest.approx(found.answers["biceps.direction"].value, abs=1e-9)
    assert ("260 N", 270, 0.0, "0 N") == (
        found.answers["reaction"].shown,
        found.answers["reaction"].direction,
        found.answers["reaction.right"].value,
        found.answers["reaction.right"].shown,
    )
    assert "260 N" in found.markdown()
