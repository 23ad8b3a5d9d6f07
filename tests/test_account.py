"""The account of a working against the truth: sympy's moments at the settled values, and the values themselves."""

from __future__ import annotations

from dataclasses import replace
from math import radians, sin

import pytest
from slip_problems import PROBLEMS, account, working
from worked import CONTRACT, EXTRA, HERE, SAMPLES, extra, worked

from explain.marking.slips.account import Impossible
from explain.marking.slips.account_of_working import account_of
from explain.solve.engine import Working

FILES = (
    *SAMPLES,
    *CONTRACT,
    *sorted((HERE / "scenarios").glob("*.toml")),
    *sorted((HERE / "published").glob("*.toml")),
)
GEOMETRY = (
    ".across",
    ".rise",
    ".line",
    ".area",
    ".stress",
    ".limit",
    ".tx",
    ".ty",
)  # what no balance of an account needs


def _gaps(of: Working) -> list[str]:
    """What the account has otherwise than the truth, to a millionth of a thousandth; parts of the joint force
    against the largest force.
    """
    values, settled = account_of(of).values(), of.sizes
    largest = max([abs(value) for key, value in settled.items() if key.endswith((".force", ".weight"))] or [1.0])
    out = []
    for key, true in settled.items():
        if key not in values:
            out += [] if key.endswith(GEOMETRY) or key.startswith(("*fold", "*inclination")) else [f"{key} is missing"]
        elif abs(values[key] - true) > 1e-9 * max(abs(true), largest if "reaction" in key else abs(true), 1e-9):
            out.append(f"{key}: {values[key]}, in truth {true}")
    for name, expression in of.truth.moment.items():
        if name != "reaction" and f"*moment {name}" in values:
            true = of.truth.size(expression, of.settled.values)
            if abs(values[f"*moment {name}"] - true) > 1e-9 * max(abs(true), 1e-9):
                out.append(f"moment of {name}: {values[f'*moment {name}']}, in truth {true}")
        elif name != "reaction":
            out.append(f"the moment of {name} is missing")
    return out


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_the_values_are_those_of_the_truth(path: object) -> None:
    assert _gaps(worked(path)) == []  # type: ignore[arg-type]


@pytest.mark.parametrize("name", EXTRA)
def test_the_values_are_those_of_the_truth_for_odd_problems(name: str) -> None:
    assert _gaps(extra(name)) == []


@pytest.mark.parametrize("name", PROBLEMS)
def test_the_values_are_those_of_the_truth_for_the_problems_of_slips(name: str) -> None:
    assert _gaps(working(name)) == []


def test_a_value_that_is_fixed_carries_through() -> None:
    """F = (W_bag 34 cm + W_forearm 17 cm) cos 25 / (5 cm sin 58), with the arm of the pull left at 5 cm."""
    of = account("REF")
    carried = replace(of, fixed={"*arm biceps": 0.05}).values()
    assert carried["biceps.force"] == pytest.approx(of.values()["biceps.force"] * sin(radians(58)))


def test_one_unknown_can_be_solved_in_another_way_than_the_others() -> None:
    of = account("REF")
    assert replace(of, solves={"biceps.force": lambda others, by: 7.0}).values()["biceps.force"] == 7.0


def test_what_has_no_value_is_impossible() -> None:
    of = account("REF")
    with pytest.raises(Impossible):
        of.with_item("biceps", in_moments=0.0).values()
    with pytest.raises(Impossible):
        of.with_item("bag", powers=400).values()


def test_the_direction_of_the_joint_force_counts_from_right() -> None:
    """S05 of the project's own catalogue, computed: down to the right, 66.91 degrees below level."""
    assert account("S05").values()["*direction reaction"] == pytest.approx(-66.9146382713874)


def test_the_account_knows_the_data_as_written_and_the_other_rows_of_the_table() -> None:
    """Winter's table has forearm and hand with 2.2 per cent of the body, the hand with 0.6."""
    of = account("S03")
    assert of.written["forearm.length"] == ("27", "cm")
    assert {0.022, 0.006} <= {round(each, 9) for each in of.rows["forearm.mass%"]}
    assert of.length == 0.01 and of.lies == 0.0
