"""A sought slope where directions are told by two rays, one along the bone and one fixed: every root is found, and none
that is false.

The roots are found a second time by a fine scan of the moments in floats (`statics.py`), with each direction read anew
at each angle.
"""

from __future__ import annotations

import os
import tomllib
from collections.abc import Iterator, Mapping
from dataclasses import replace
from math import nan
from pathlib import Path
from random import Random
from typing import Any

import pytest
import statics

from explain import Fault, work
from explain.mechanics.body import Body
from explain.mechanics.postures import Posture, at_rest
from explain.solve import engine

CASES = Path(__file__).parent / "cases" / "engine"
SEARCH = os.environ.get("HYPOTHESIS_PROFILE") == "search"
BATCHES, EACH = (40, 50) if SEARCH else (4, 12)
FIXED, ALONG = ("up", "down", "left", "right"), ("out", "back")
SLOPES = (
    "? above right",
    "? below right",
    "? above left",
    "? below left",
    "? left of up",
    "? right of up",
    "? left of down",
    "? right of down",
    "? from right toward up",
)
STEP, FIRST = 1.0, 0.0371  # degrees; the scan stays off the angles at which rays lie on one line


def rest(body: statics.Statics, name: str, angle: float) -> float:
    """The moments about the pivot at this angle; nan where a direction has no meaning there."""
    try:
        return float(body.rest({name: angle})[0])
    except ArithmeticError:
        return nan


def scanned(problem: Mapping[str, Any]) -> list[float]:
    """The angles of one turn at which the moments vanish. Raises ArithmeticError where a root cannot be told from a
    near miss.
    """
    body = statics.Statics(problem)
    name = next(each for each in body.unknown if each.endswith(".direction"))
    turn = [FIRST + STEP * k for k in range(round(360 / STEP) + 1)]
    coarse = [rest(body, name, angle) for angle in turn]
    largest = max((abs(each) for each in coarse if each == each), default=0.0)
    if not largest:
        raise ArithmeticError("two rays on one line at every angle")
    jumps = [
        low for low, one, other in zip(turn, coarse, coarse[1:], strict=False) if not abs(other - one) < 0.06 * largest
    ]
    turn = sorted({*turn, *(low + STEP * k / 60 for low in jumps for k in range(60))})
    moments = [rest(body, name, angle) for angle in turn]
    if any(
        abs(each) < 1e-4 * largest and before * after > 0 and abs(before) > abs(each) < abs(after)
        for before, each, after in zip(moments, moments[1:], moments[2:], strict=False)
    ):
        raise ArithmeticError("a root or a near miss")
    out = []
    for low, high, one, other in zip(turn, turn[1:], moments, moments[1:], strict=False):
        if one * other <= 0:
            root = bisected(body, name, low, high)
            if abs(rest(body, name, root)) < 1e-7 * largest:
                out.append(root % 360)
    return sorted(out)


def bisected(body: statics.Statics, name: str, low: float, high: float) -> float:
    at_low = rest(body, name, low)
    for _ in range(60):
        middle = (low + high) / 2
        if at_low * rest(body, name, middle) > 0:
            low = middle
        else:
            high = middle
    return (low + high) / 2


def drawn(draw: Random) -> dict[str, Any]:
    """A bone whose slope is sought, one bone more now and then, and one or two muscles told between a ray along the
    bone and a fixed one.
    """
    bones = [
        {
            "name": "thigh",
            "length": f"{draw.randint(20, 45)} cm",
            "direction": draw.choice(SLOPES),
            "mass": f"{draw.randint(10, 60) / 10} kg",
            "com": f"{draw.randint(8, 20)} cm",
        }
    ]
    if draw.random() < 0.4:
        way = draw.choice(
            ("left", "right", "up", "down", f"{draw.randint(5, 80)} deg from out toward {draw.choice(FIXED)}")
        )
        bones.append(
            {
                "name": "shank",
                "length": f"{draw.randint(20, 45)} cm",
                "direction": way,
                "mass": f"{draw.randint(10, 40) / 10} kg",
                "com": f"{draw.randint(8, 20)} cm",
            }
        )
    muscles = []
    for name in ("psoas", "rectus")[: draw.randint(1, 2)]:
        rays = [draw.choice(FIXED), draw.choice(ALONG)]
        draw.shuffle(rays)
        muscles.append(
            {
                "name": name,
                "on": draw.choice(bones)["name"],
                "at": f"{draw.choice((-3, 2, 4, 6, 9))} cm",
                "force": f"{draw.randint(20, 400)} N",
                "direction": f"{draw.randint(3, 177)} deg from {rays[0]} toward {rays[1]}",
            }
        )
    load = {
        "name": "shoe",
        "mass": f"{draw.randint(2, 50) / 10} kg",
        "on": draw.choice(bones)["name"],
        "at": f"{draw.randint(5, 40)} cm",
    }
    return {"title": "Slopes at rest", "pivot": {"name": "hip"}, "segment": bones, "muscle": muscles, "load": [load]}


def found(problem: Mapping[str, Any]) -> list[float]:
    """The roots that the page prints: the answer and the others."""
    answer = next(iter(work(problem).answers.values()))
    return sorted(each % 360 for each in (answer.value, *answer.others))


def near(one: list[float], other: list[float]) -> bool:
    return len(one) == len(other) and all(
        min(abs(a - b), 360 - abs(a - b)) < 1e-6 for a, b in zip(one, other, strict=True)
    )


@pytest.mark.parametrize("batch", range(BATCHES))
def test_every_root_is_printed_and_none_that_is_false(batch: int) -> None:
    draw, seen, wrong = Random(f"slopes {batch}"), 0, []
    for _ in range(EACH):
        problem = drawn(draw)
        try:
            wanted = scanned(problem)
        except ArithmeticError:
            continue
        try:
            given = found(problem)
        except Fault:
            given = []
        seen += bool(wanted)
        if not near(given, wanted):
            wrong.append((problem, given, wanted))
    assert wrong == []
    assert seen > EACH / 4


@pytest.mark.parametrize("name", ["b-toward-out", "b2-toward-up-range", "seed-0039-refused", "seed-0247"])
def test_a_slope_that_was_wrong_once_is_found_with_all_its_roots(name: str) -> None:
    for problem in _with_its_table(name):
        assert near(found(CASES / f"{name}.toml"), scanned(problem))  # type: ignore[arg-type]


def _with_its_table(name: str) -> Iterator[dict[str, Any]]:
    """A case with its rows of own.csv written out, and its units in words that statics.py knows."""
    problem = tomllib.loads((CASES / f"{name}.toml").read_text("utf-8"))
    shares = {
        line.split(",")[0]: line.split(",")[1:3] for line in (CASES / "own.csv").read_text("utf-8").splitlines()[1:]
    }
    for segment in problem["segment"]:
        for key, share in zip(("mass", "com"), shares.get(segment["name"], ()), strict=False):
            if segment.get(key) == "table":
                segment[key] = f"{share} %"
    yield problem


def test_at_the_slope_that_was_found_the_pull_that_was_given_is_the_one_that_holds() -> None:
    pull = work(CASES / "b2-check.toml").answers["deltoid"].value
    assert pull == pytest.approx(109.6, abs=0.1)


@pytest.mark.parametrize("name", ["h-toward-slope", "i-toward-at"])
def test_a_pull_towards_a_fixed_point_with_its_grip_sought_is_refused_with_what_to_give(name: str) -> None:
    with pytest.raises(Fault, match="direction"):
        work(CASES / f"{name}.toml")


@pytest.mark.parametrize("off", [0.0, 0.01, -30.0])
def test_a_further_root_is_certified_in_a_working_of_its_own(off: float, monkeypatch: pytest.MonkeyPatch) -> None:
    def spoilt(body: Body) -> Posture:
        posture = at_rest(body)
        (other,) = posture.further
        moved = {key: root + off for key, root in other.angles.items()}
        settled = replace(
            other.settled, values={**other.settled.values, **moved}, roots={key: [root] for key, root in moved.items()}
        )
        return posture._replace(further=(other._replace(settled=settled),))

    monkeypatch.setattr(engine, "at_rest", spoilt)
    if off:
        with pytest.raises(engine.Broken, match="in floats"):
            work(CASES / "b-toward-out.toml")
    else:
        assert [each.others for each in work(CASES / "b-toward-out.toml").answers.values() if each.others]
