"""Sweeps: every angle's pull against closed formulas in numpy, moment arms from pairs and from files, gaps, and
where the pull is greatest.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from decimal import Decimal
from pathlib import Path

import numpy as np
import pytest

from explain import work_series
from explain.equation.terms import Quantity
from explain.series.api import WorkedSeries
from explain.document.passage import Plot, Table
from explain.series.sweep import Arms
from explain.write.text.pages import text

JUG = """\
title = "A jug"
pivot = {name = "elbow", bone = "humerus"}
[[segment]]
name = "forearm"
mass = "1.6 kg"
com = "15 cm"
[[load]]
name = "jug"
mass = "3.0 kg"
at = "33 cm"
[[muscle]]
name = "biceps"
at = "4.0 cm"
direction = "up"
"""
G, HELD = 9.81, 9.81 * (1.6 * 15 + 3.0 * 33)  # N cm with the forearm level
ARM = 'set = { "biceps.moment_arm" = "4.0 cm", "biceps.turns" = "counter-clockwise" }'
PAIRS = ((0, 4.4), (20, 4.1), (60, 3.0), (90, 2.0))


def swept(folder: Path, step: str, sweep: str, base: str = JUG) -> WorkedSeries:
    (folder / "jug.toml").write_text(base, encoding="utf-8")
    path = folder / "series.toml"
    path.write_text(
        f'title = "S"\nbase = "jug.toml"\n[[step]]\ntitle = "Sweep"\n{step}\n[step.sweep]\n{sweep}\n', encoding="utf-8"
    )
    return work_series(path)


def pulls(worked: WorkedSeries, name: str = "biceps") -> tuple[np.ndarray, np.ndarray]:
    points = [
        (float(point.value), point.outcome.answers[name].value)
        for point in worked.steps[1].points
        if point.outcome is not None
    ]
    angles, values = zip(*points, strict=True)
    return np.array(angles), np.array(values)


RANGE = 'of = "forearm.direction"\ndirection = "? below right"\nfrom = "0 deg"\nto = "90 deg"\nstep = "5 deg"'


def test_a_constant_moment_arm_gives_a_cosine(tmp_path: Path) -> None:
    """F = sum(W s) cos(angle) / r, with numpy."""
    angles, found = pulls(swept(tmp_path, ARM, RANGE))
    assert list(range(0, 91, 5)) == list(angles)
    np.testing.assert_allclose(found, HELD * np.cos(np.radians(angles)) / 4.0, rtol=1e-9, atol=1e-9)


@pytest.mark.parametrize("table", ["pairs", "file", "file with units turned"])
def test_moment_arms_from_a_table_are_taken_as_straight_lines_between_its_pairs(table: str, tmp_path: Path) -> None:
    """numpy.interp, to the four figures that an arm in between is given to."""
    (tmp_path / "arms.csv").write_text(
        "Angle (deg),Arm (cm)\n" + "".join(f"{a},{r}\n" for a, r in PAIRS), encoding="utf-8"
    )
    (tmp_path / "turned.csv").write_text(
        "\ufeffAngle (deg),Arm (mm),Source\n\n" + "".join(f"{a},{r * 10:g},x\n" for a, r in PAIRS), encoding="utf-8"
    )
    said = {
        "pairs": str([[f"{a} deg", f"{r} cm"] for a, r in PAIRS]).replace("'", '"'),
        "file": '"arms.csv"',
        "file with units turned": '"turned.csv"',
    }[table]
    angles, found = pulls(swept(tmp_path, ARM, f"{RANGE}\n[step.sweep.arms]\nbiceps = {said}"))
    arms = np.interp(angles, *zip(*PAIRS, strict=True))
    np.testing.assert_allclose(found, HELD * np.cos(np.radians(angles)) / arms, rtol=2e-4, atol=1e-9)
    exact = np.isin(angles, [a for a, _ in PAIRS])
    np.testing.assert_allclose(found[exact], (HELD * np.cos(np.radians(angles)) / arms)[exact], rtol=1e-9, atol=1e-9)


def test_a_sweep_of_a_pull_s_own_angle(tmp_path: Path) -> None:
    """The lever arm is d sin(angle): F = sum(W s) / (d sin(angle)), with numpy; along the bone nothing balances."""
    worked = swept(
        tmp_path,
        "",
        'of = "biceps.direction"\ndirection = "? from back toward up"\nfrom = "0 deg"\nto = "90 deg"\nstep = "15 deg"',
    )
    angles, found = pulls(worked)
    assert [15, 30, 45, 60, 75, 90] == list(angles)
    np.testing.assert_allclose(found, HELD / (4.0 * np.sin(np.radians(angles))), rtol=1e-9)
    assert (None, True) == (
        worked.steps[1].points[0].outcome,
        "passes through the pivot" in worked.steps[1].points[0].why_not,
    )
    table = next(
        each
        for each in worked.pages[2].passages
        if isinstance(each, Table) and each.caption.startswith("Angle by angle")
    )
    assert [0.0, None] == list(
        next(each for each in worked.pages[2].passages if isinstance(each, Plot)).curves[0].points[0]
    )
    assert "no balance" in str(table.rows[0])


def test_two_segments_and_an_oblique_pull_against_the_cross_product(tmp_path: Path) -> None:
    """r x F by numpy for a chain of two segments, the first one turning, with the muscle at 70 degrees to it."""
    base = """\
title = "Two"
pivot = {name = "shoulder"}
[[segment]]
name = "upper arm"
length = "30 cm"
mass = "2.1 kg"
com = "13 cm"
[[segment]]
name = "forearm"
direction = "20 deg below right"
mass = "1.6 kg"
com = "17 cm"
[[muscle]]
name = "deltoid"
on = "upper arm"
at = "12 cm"
direction = "25 deg from back toward up"
"""
    angles, found = pulls(
        swept(
            tmp_path,
            "",
            'of = "upper arm.direction"\ndirection = "? above right"\nto = "60 deg"\nstep = "10 deg"',
            base,
        ),
        "deltoid",
    )

    def force(angle: float) -> float:
        a, b = np.radians(angle), np.radians(-20)
        bone, fore = np.array([np.cos(a), np.sin(a)]), np.array([np.cos(b), np.sin(b)])
        held = -9.81 * (2.1 * 13 * bone[0] + 1.6 * (30 * bone + 17 * fore)[0])
        pull = np.radians(angle + 180 - 25)
        per = 12 * (bone[0] * np.sin(pull) - bone[1] * np.cos(pull))
        return float(-held / per)

    np.testing.assert_allclose(found, [force(each) for each in angles], rtol=1e-9)


def test_the_angle_s_own_words_are_kept_where_the_sweep_does_not_tell_any(tmp_path: Path) -> None:
    base = JUG.replace('name = "forearm"\n', 'name = "forearm"\ndirection = "30 deg above right"\n')
    worked = swept(tmp_path, ARM, 'of = "forearm.direction"\nto = "60 deg"\nstep = "20 deg"\nshow = "20 deg"', base)
    assert ("20 deg above right", "20° above the horizontal") == (
        worked.steps[1].tables["segment"][0]["direction"],
        _axis_words(worked),
    )


def _axis_words(worked: WorkedSeries) -> str:
    page = " ".join(text(worked.pages[2]).split())
    return (
        "20° above the horizontal"
        if "20° above the horizontal" in page and "angle of the forearm, above the horizontal" in page
        else page
    )


def test_the_last_angle_is_there_even_where_the_steps_pass_it(tmp_path: Path) -> None:
    assert [0, 40, 80, 90] == list(pulls(swept(tmp_path, ARM, RANGE.replace('"5 deg"', '"40 deg"')))[0])


@pytest.mark.parametrize(
    ("step", "said"),
    [
        (
            ARM,
            "it must be largest where their lever arms are longest, at 0°, and smallest where they are shortest, at "
            "90°",
        ),
        ("", "must be the same at every angle"),
    ],
)
def test_a_sweep_is_foreseen_from_its_lever_arms(step: str, said: str, tmp_path: Path) -> None:
    worked = swept(tmp_path, step, RANGE.replace('"90 deg"', '"80 deg"').replace('"5 deg"', '"20 deg"'))
    page = " ".join(text(worked.pages[2]).split())
    _, values = pulls(worked)
    if step:
        worked = swept(tmp_path, step, RANGE)
        page = " ".join(text(worked.pages[2]).split())
        angles, values = pulls(worked)
        assert (0.0, 90.0) == (angles[values.argmax()], angles[values.argmin()])
    else:
        np.testing.assert_allclose(values, values[0], rtol=1e-9)
    assert said in page


def test_where_lever_arms_work_against_each_other_the_numbers_are_waited_for(tmp_path: Path) -> None:
    worked = swept(tmp_path, ARM, RANGE + '\n[step.sweep.arms]\nbiceps = [["0 deg", "4.0 cm"], ["90 deg", "2.0 cm"]]')
    assert "only the numbers can" in " ".join(text(worked.pages[2]).split())


def test_the_angle_shown_is_worked_in_full(tmp_path: Path) -> None:
    worked = swept(tmp_path, ARM, RANGE + '\nshow = "30 deg"')
    assert worked.steps[1].outcome.answers["biceps"].value == pytest.approx(HELD * np.cos(np.pi / 6) / 4.0)
    assert "cos 30°" in text(worked.pages[2])


def test_the_file_of_values_has_every_angle_unrounded(tmp_path: Path) -> None:
    worked = swept(tmp_path, ARM, RANGE)
    rows = [line.split(",") for line in worked.csv().decode("utf-8-sig").splitlines()]
    assert ["angle (deg)", "biceps (N)"] == rows[0]
    np.testing.assert_allclose(
        [float(row[1]) for row in rows[1:]],
        HELD * np.cos(np.radians([float(row[0]) for row in rows[1:]])) / 4.0,
        rtol=1e-12,
        atol=1e-9,
    )


def test_later_steps_go_on_from_the_angle_that_was_shown(tmp_path: Path) -> None:
    swept(tmp_path, ARM, RANGE + '\nshow = "60 deg"')
    path = tmp_path / "series.toml"
    path.write_text(
        path.read_text("utf-8") + '[[step]]\ntitle = "Heavier"\nset = { "jug.mass" = "6.0 kg" }\n', encoding="utf-8"
    )
    last = work_series(path).steps[2]
    assert pytest.approx(9.81 * (1.6 * 15 + 6 * 33) * 0.5 / 4.0) == last.outcome.answers["biceps"].value


def _arms(pairs: Sequence[tuple[str, str, str]]) -> Callable[[str], Quantity | None]:
    arms = Arms("biceps", tuple((Decimal(angle), Quantity.of(number, unit)) for angle, number, unit in pairs))
    return lambda angle: arms.at(Decimal(angle))


@pytest.mark.parametrize(
    ("angle", "number"), [("0", "2.0"), ("30", "3.0"), ("10", "2.333"), ("45", "3.500"), ("60", "4"), ("61", None)]
)
def test_an_arm_between_two_pairs(angle: str, number: str | None) -> None:
    found = _arms((("0", "2.0", "cm"), ("30", "3.0", "cm"), ("60", "40", "mm")))(angle)
    assert (None if number is None else Decimal(number)) == (found and found.number)


# ---------------------------------------------------------------------- other numbers
@pytest.mark.parametrize(
    ("sweep", "force", "said"),
    [
        (
            'of = "jug.at"\nfrom = "10 cm"\nto = "40 cm"\nstep = "5 cm"',
            lambda at: G * (1.6 * 15 + 3.0 * at) / 4.0,
            "grow in a straight line as the distance of the jug grows",
        ),
        (
            'of = "jug.mass"\nfrom = "0.5 kg"\nto = "5.0 kg"',
            lambda mass: G * (1.6 * 15 + mass * 33) / 4.0,
            "must be smallest at 0.50 kg and largest at 5.00 kg",
        ),
        (
            'of = "biceps.at"\nfrom = "3.0 cm"\nto = "5.0 cm"\nstep = "0.25 cm"',
            lambda at: HELD / at,
            "must be largest at 3.00 cm and smallest at 5.00 cm; twice the arm, half the force",
        ),
        (
            'of = "course.g"\nfrom = "1.6 m/s^2"\nto = "24.8 m/s^2"\nstep = "5.8 m/s^2"',
            lambda g: HELD / G * g / 4.0,
            "grow in a straight line as g grows",
        ),
        (
            'of = "jug.at"\nfrom = "-60 cm"\nto = "40 cm"\nstep = "50 cm"\nshow = "40 cm"',
            lambda at: G * (1.6 * 15 + 3.0 * at) / 4.0,
            "signs alone do not tell",
        ),
    ],
    ids=["distance", "load", "insertion", "g", "through the pivot"],
)
def test_any_given_number_is_swept(tmp_path: Path, sweep: str, force: Callable[[float], float], said: str) -> None:
    """F = (W_F s_F + W_J s_J) / r (moments about the elbow, any textbook of statics), with table, plot and file."""
    worked = swept(tmp_path, "", sweep)
    at, found = pulls(worked)
    np.testing.assert_allclose(found, [force(each) for each in at], rtol=1e-9)
    page = " ".join(text(worked.pages[2]).replace("\u00a0", " ").split())
    assert said in page
    plot = next(each for each in worked.pages[2].passages if isinstance(each, Plot) and each.kind == "lines")
    table = next(each for each in worked.pages[2].passages if isinstance(each, Table) and "by value" in each.caption)
    assert (len(at), len(at)) == (len(plot.curves[0].points), len(table.rows))
    rows = [line.split(",") for line in worked.csv().decode("utf-8-sig").splitlines()]
    of, unit = (line.partition('"')[2].partition('"')[0] for line in sweep.splitlines()[:2])
    assert [f"{of} ({unit.partition(' ')[2]})", "biceps (N)"] == rows[0]
    np.testing.assert_allclose([[float(cell) for cell in row] for row in rows[1:]], np.array([at, found]).T)
