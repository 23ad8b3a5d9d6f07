"""How a working is judged, rule by rule: true first, evidence before blame, the answer, consequences once,
roundings, reading, the words of a verdict.
"""

from __future__ import annotations

from functools import cache

import pytest

from explain import work
from explain.api import Walkthrough
from explain.marking.slips.verdict import Marking

JUG = {
    "title": "jug",
    "pivot": {"name": "elbow", "bone": "humerus"},
    "ask": ["biceps", "reaction"],
    "segment": [{"name": "forearm", "mass": "1.6 kg", "com": "15 cm", "length": "36 cm"}],
    "muscle": [{"name": "biceps", "at": "4.0 cm", "direction": "up"}],
    "load": [{"name": "jug", "mass": "3.0 kg", "at": "33 cm"}],
}
# By hand: weights 15.696 N and 29.43 N, moments 235.4 and 971.2 N cm, pull 1206.6/4.0 = 301.7 N, joint force 256.5 N
# down.


@cache
def jug() -> Walkthrough:
    return work(JUG)


def marked(*lines: str) -> Marking:
    return jug().mark("\n".join(lines))


def verdicts(*lines: str) -> list[str]:
    return [each.verdict for each in marked(*lines).lines]


# ---------------------------------------------------------------------- true first
@pytest.mark.parametrize(
    "line",
    (
        "q*4 = 15.7*15 + 29.43*33",
        "P*0.04 = 15.7*0.15 + 29.43*0.33",
        "F = (15.7*15 + 29.43*33)/4.0",
        "d_w = 33 - 4 = 29 cm",
    ),
)
def test_a_letter_may_stand_for_any_quantity_of_its_kind(line: str) -> None:
    assert ["holds"] == verdicts(line)


def test_moments_about_another_point_are_right() -> None:
    assert ["holds", "holds"] == verdicts("R*4 = 15.7*11 + 29.43*29", "R = 256.5 N down")


# ---------------------------------------------------------------------- evidence before blame
def test_a_slip_is_named_where_its_formula_enters() -> None:
    found = marked("W = 3.0*9.81 = 29.43 N", "F*4 = 29.43*33", "F = 242.8 N", "R = 242.8 - 29.43 = 213.4 N")
    assert 2 == found.first_wrong and "segment-left-out" == found.issues[0].slips[0].slip


def test_a_line_that_computes_something_of_no_name_is_a_step_whose_arithmetic_holds() -> None:
    first = marked("29.43*7 = 206.0").lines[0]
    assert ("holds", "arithmetic") == (first.verdict, first.checked)


def test_false_arithmetic_is_a_slip_and_a_claim_that_is_true_says_so() -> None:
    wrong, right = marked("15.7*15 = 335.5", "W = 3.0*9.81 = 29.43 N").lines
    assert ("slips", "holds", "claim") == (wrong.verdict, right.verdict, right.checked) and right.says != wrong.says


# ---------------------------------------------------------------------- the answer decides how hard to look
def test_a_wrong_answer_without_a_line_that_explains_it_is_asked_about() -> None:
    found = marked("F = 333 N")
    assert "unclear" == found.lines[0].verdict and found.lines[0].question


def test_no_working_with_a_wrong_answer_leaves_with_every_line_held() -> None:
    assert {"slips", "unclear"} & {
        *verdicts("W = 29.43 N", "M = 29.43*33 + 15.7*19 = 1269.5 N cm", "F = 1269.5/4 = 317.4 N")
    }


# ---------------------------------------------------------------------- consequences once
def test_what_follows_from_a_wrong_line_is_carried_and_a_second_slip_is_named_from_there() -> None:
    found = marked("M = 15.7*15 + 29.43*33 = 1306.7", "F = 1306.7/4 = 326.7 N", "R = 326.7 + 15.7 + 29.43 = 371.8 N")
    assert ["slips", "carried", "slips"] == [each.verdict for each in found.lines]


# ---------------------------------------------------------------------- right in its rounding
@pytest.mark.parametrize("line", ("F = 300 N", "F = 302 N", "F = 301.7 N", "F = 3.0e2 N", "F = 0.302 kN"))
def test_any_correct_rounding_is_right(line: str) -> None:
    assert ["holds"] == verdicts("F*4 = 15.7*15 + 29.43*33", line)[1:]


# ---------------------------------------------------------------------- what is read
@pytest.mark.parametrize(
    "lines",
    (
        ("the jug weighs 29.43 N at 33 cm which makes 971.2 N cm",),
        ("15.7 times 15 plus 29.43 times 33 makes 1206.6", "over 4 that is 301.7 N"),
        ("part | N | cm | N cm", "forearm | 15.7 | 15 | 235.5", "jug | 29.43 | 33 | 971.2", "sum | | | 1206.7"),
        ("- **jug:** $29.43\\cdot 33 = 971.2$", "- **biceps:** $F = \\frac{1206.7}{4.0} = 301.7\\,\\text{N}$"),
        ("F = 301.7 j N, W = -15.7 j - 29.43 j N", "R = -256.5 j N"),
    ),
)
def test_sentences_tables_dress_and_vectors_are_read(lines: tuple[str, ...]) -> None:
    assert {"holds", "aside"} >= {*verdicts(*lines)} and "holds" in verdicts(*lines)


def test_one_clause_that_is_not_understood_loses_none_of_its_line() -> None:
    assert ["slips"] == verdicts("and then as we all saw, blah (see fig 3): 15.7*15 = 335.5, so there")


# ---------------------------------------------------------------------- senses, words, contests
def test_a_joint_force_that_is_right_in_size_must_point_the_right_way() -> None:
    assert (["holds"], ["slips"]) == (verdicts("R = 256.5 N down"), verdicts("R = 256.5 N up"))


def test_a_question_tells_slips_apart_that_give_one_line() -> None:
    first = marked("M_jug = 3.0*33 = 99 N cm", "F = (99 + 235.4)/4 = 83.6 N").issues[0]
    assert first.question
