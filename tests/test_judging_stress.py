"""A stress that is asked for: its units, a wrong one, and what is told while it is missing. The pull of the deltoid is
323.9 N over 18.3 cm², so 17.7 N/cm² (the quotient by hand; 1 N/cm² is 10 kPa, 1.450 lbf/in²: the SI brochure and the
yard and pound agreement of 1959, from memory).
"""

from __future__ import annotations

from pathlib import Path

import pytest

from explain import work
from explain.marking.report.page import open_questions

FLAG = work(Path(__file__).parents[1] / "samples" / "10-regatta-flag.toml")


def judged(*lines: str) -> tuple[list[str], str]:
    """The verdict on each line, and what is said to be asked for still."""
    marking = FLAG.marker.mark("\n".join(lines))
    return [each.verdict for each in marking.lines], open_questions(marking, FLAG.outcome)


@pytest.mark.parametrize(
    "stress",
    (
        "σ = 323.9 / 18.3 = 17.70 N/cm²",
        "sigma = 17.7 N/cm^2",
        "stress = 323.9 N / 18.3 cm² = 177 kPa",
        "stress in the deltoid = 177 000 Pa",
        "σ = 0.177 MPa",
        "σ = 0.177 N/mm²",
        "σ = 25.7 psi",
    ),
)
def test_a_right_stress_holds_in_any_unit(stress: str) -> None:
    verdicts, asked = judged("D = 323.9 N", stress)
    assert (verdicts, asked) == (["holds", "holds"], "Still asked for: the force at the joint.")


@pytest.mark.parametrize(
    "stress", ("σ = 22 N/cm²", "stress = 323.9 N × 18.3 = 5927 N/cm²", "σ = 17.7 kPa", "stress = 1770 kPa")
)
def test_a_wrong_stress_does_not_hold(stress: str) -> None:
    verdicts, _ = judged("D = 323.9 N", stress)
    assert verdicts[0] == "holds" and verdicts[1] in ("slips", "unclear")


def test_a_pull_does_not_stand_for_its_stress() -> None:
    assert judged("D = 323.9 N")[1] == "Still asked for: the stress in the deltoid and the force at the joint."
    assert judged("σ = 17.7 N/cm²")[1] == "Still asked for: deltoid and the force at the joint."
