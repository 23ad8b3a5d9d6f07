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


OBLIQUE = {
    "title": "jug",
    "pivot": {"name": "elbow"},
    "segment": [{"name": "forearm"}],
    "load": [{"name": "jug", "mass": "3.0 kg", "at": "33 cm"}],
    "muscle": [{"name": "biceps", "at": "4.0 cm", "direction": "70 deg from back toward up"}],
    "ask": ["biceps", "reaction"],
}


@pytest.mark.parametrize(
    "line",
    [
        "right = left: J_x = F_B cos70 = 88.37 N",
        "up = down: J_y + F_B sin70 = 29.43",
        "forces up = forces down: J_y + 242.8 = 29.43",
        "clockwise moments = anticlockwise moments: 29.43*33 = F_B*4.0*sin70",
        "sum of upward forces = sum of downward forces: J_y + 242.8 = 29.43",
    ],
)
def test_two_sides_may_be_named_before_the_balance(line: str) -> None:
    """29.43 N at 33 cm need 971.2 N cm / (4.0 cm sin 70°) = 258.4 N; 88.4 N of it are horizontal, 242.8 N vertical."""
    text = "F_B*4.0*sin70 = 29.43*33\nF_B = 258.4 N\n"
    assert [each.verdict for each in work(OBLIQUE).mark(text + line).lines] == ["holds"] * 3
    wrong = line.replace("29.43", "39.43").replace("88.37", "98.37")
    assert work(OBLIQUE).mark(text + wrong).lines[-1].verdict == "slips"


def test_one_clause_that_is_not_understood_loses_none_of_its_line() -> None:
    assert ["slips"] == verdicts("and then as we all saw, blah (see fig 3): 15.7*15 = 335.5, so there")


# ---------------------------------------------------------------------- senses, words, contests
def test_a_joint_force_that_is_right_in_size_must_point_the_right_way() -> None:
    assert (["holds"], ["slips"]) == (verdicts("R = 256.5 N down"), verdicts("R = 256.5 N up"))


def test_a_question_tells_slips_apart_that_give_one_line() -> None:
    first = marked("M_jug = 3.0*33 = 99 N cm", "F = (99 + 235.4)/4 = 83.6 N").issues[0]
    assert first.question


# ---------------------------------------------------------------------- weak evidence is asked about
LEG = {
    "title": "leg",
    "pivot": {"name": "hip", "bone": "pelvis"},
    "ask": ["hip flexors"],
    "segment": [
        {"name": "thigh", "mass": "7.5 kg", "com": "18 cm", "length": "42 cm"},
        {"name": "shank", "mass": "3.5 kg", "com": "19 cm", "length": "43 cm"},
    ],
    "muscle": [{"name": "hip flexors", "on": "thigh", "at": "4.5 cm", "direction": "up"}],
}
# By hand: weights 73.575 N and 34.335 N, distances 18 and 61 cm, moments 1324.35 and 2094.4 N cm, pull 3418.8/4.5 =
# 759.7 N.


SACKS = (("A", 3.1, 0.4), ("B", 2.3, 0.7), ("C", 1.9, 1.1), ("D", 4.2, 1.3), ("E", 1.7, 1.9))


def leg(*lines: str) -> Marking:
    return work(LEG).mark("\n".join(lines))


def test_a_list_of_distances_from_the_hip_is_none_of_the_hip_flexors() -> None:
    found = leg("distances from hip: 18 cm, 61 cm, 4.5 cm", "F = (73.58*18 + 34.34*61)/4.5 = 759.7 N")
    assert ["holds", "holds"] == [each.verdict for each in found.lines]


def test_one_moment_that_is_called_the_total_is_where_the_other_was_left_out() -> None:
    found = leg("W = 73.58 N", "total clockwise moment = 73.58*18 = 1324 N cm", "F = 1324/4.5 = 294.3 N")
    assert 2 == found.first_wrong and found.issues[0].slips[0].slip.endswith("left-out")


def test_one_moment_without_a_name_is_asked_about_where_the_other_is_left_out() -> None:
    found = leg("M = 73.58*18 = 1324 N cm", "F = 1324/4.5 = 294.3 N")
    assert ["unclear", "slips"] == [each.verdict for each in found.lines] and found.lines[0].question


@pytest.mark.parametrize(
    "lines",
    (
        ("N × 4 = 15.70 × 15 + 29.43 × 33", "N = 301.7 N (up)", "R = 301.7 − 15.70 − 29.43 = 256.6 N (down)"),
        ("moment of the pull: N·4 cos0 = 4 N", "4 N = 235.4 + 971.2", "N = 301.7 N"),
        ("m = 3.0 kg, r = 0.66 * 0.5 = 0.33 m, M = 3.0 * 9.81 * 0.33 = 9.712", "m = 1.6 kg, r = 0.15 m"),
    ),
)
def test_a_letter_that_is_also_a_unit_is_what_the_numbers_bear_out(lines: tuple[str, ...]) -> None:
    assert {"holds"} == {*verdicts(*lines)}


def test_a_length_in_two_units_that_disagree_is_a_slip() -> None:
    assert ["slips"] == verdicts("the muscle has 4.0 cm, in metres that's 0.4")


def test_the_number_of_an_earlier_line_is_that_line_and_no_truth_near_it() -> None:
    found = marked("M = 15.7*15 + 29.43*33 = 1306.7", "F = 1306.7/4 = 326.7 N")
    assert ["slips", "carried"] == [each.verdict for each in found.lines]


def test_a_sum_of_five_terms_is_found_in_the_head() -> None:
    rack = {
        "title": "rack",
        "pivot": {"name": "hinge"},
        "ask": ["rope"],
        "segment": [{"name": "beam"}],
        "force": [{"name": "rope", "at": "2.0 m", "direction": "up", "force": "?"}],
        "load": [{"name": f"sack {name}", "mass": f"{mass} kg", "at": f"{at} m"} for name, mass, at in SACKS],
    }
    lines = [f"sack {name}: {mass * 9.81:.1f} N at {at} m = {mass * 9.81 * at:.2f} N m" for name, mass, at in SACKS]
    lines[2] = "sack C: 18.6 N at 1.1 m = 25.50 N m"  # it is 20.50 N m
    found = work(rack).mark("\n".join([*lines, "sum = 138.71 N m", "rope = 138.71/2.0 = 69.4 N"]))
    assert "holds holds slips holds holds carried carried".split() == [each.verdict for each in found.lines]


def test_a_part_of_the_joint_force_is_not_the_whole() -> None:
    lantern = work("samples/25-lantern.toml")
    found = lantern.mark("D = 310 N\nlevel part of D = 310 cos20 = 291 N\nRx = 291 N\nR = 299 N")
    assert found.needs_a_person and "holds" != found.lines[3].verdict


def test_distances_from_another_point_excuse_nothing() -> None:
    """The jug 29 cm from the biceps, the forearm 11 cm: the arms of the joint force's moment, used for the pull."""
    found = marked("arms: jug 29 cm, forearm 11 cm, biceps 4 cm", "biceps = (29.43*29 + 15.7*11)/4 = 256.5 N")
    assert 1 == found.first_wrong


def test_a_datum_copied_wrongly_is_found_by_what_it_does_to_the_answer() -> None:
    found = marked(
        "the jug weighs 29.43 N and the forearm 15.7 N",
        "the moments are 971.2 + 235.4 = 1206.6",
        "biceps at 5.0 cm",
        "biceps = 241.3 N",
    )
    assert 3 == found.first_wrong and "wrong-datum" in [each.slip for each in found.issues[0].slips]


def test_a_formula_in_letters_is_judged_by_the_numbers_that_are_put_into_it() -> None:
    right = ("F d = m g x + M g b", "F = (m g x + M g b)/d", "F = (1.6*9.81*15 + 3.0*9.81*33)/4.0 = 301.7 N")
    assert "slips" not in verdicts(*right)
    found = marked("F d = M g b", "F = M g b / d", "F = 3.0*9.81*33/4.0 = 242.8 N")
    assert found.first_wrong in (1, 2) and "segment-left-out" in [each.slip for each in found.issues[0].slips]


def test_a_letter_stands_for_its_length_in_any_unit() -> None:
    assert "slips" not in verdicts("d = 4.0 cm", "F d = 15.7*0.15 + 29.43*0.33", "F = 12.07/0.04 = 301.7 N")
