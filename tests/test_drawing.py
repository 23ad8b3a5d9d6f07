"""What the free-body diagram of a worked problem shows and says: every force on its line, the joint, nothing that is
not used, no answer.
"""

from __future__ import annotations

from functools import lru_cache
from math import cos, hypot, radians, sin
from pathlib import Path
from typing import Any

import pytest
from drawings import mark_touches, touches
from worked import CONTRACT, EXTRA, SAMPLES

from explain import Walkthrough, work
from explain.document.passage import Arrow, Drawing, Picture, Text
from explain.write.figure.frame import framed
from explain.write.figure.free_body import layout
from explain.formula.plain import plain

FILES = {path.stem.split("-", 1)[0] if path.stem[0].isdigit() else path.stem: path for path in (*SAMPLES, *CONTRACT)}


@lru_cache(maxsize=64)
def worked(name: str) -> Walkthrough:
    return work(FILES[name])


def picture(name: str) -> Picture:
    return worked(name).picture()


def drawing(name: str) -> Drawing:
    return picture(name).drawing


def drawn(**tables: Any) -> Picture:
    return work({"title": "A body", "pivot": {"name": "elbow"}, **tables}).picture()


def arrow(of: Drawing, name: str) -> Arrow:
    return next(each for each in of.arrows if each.name == name)


def caption(of: Picture) -> str:
    return "".join(each.text for each in of.caption if isinstance(each, Text))


def joint(of: Drawing) -> list[str]:
    return [plain(each.letter) for each in of.arrows if each.kind == "joint"]


def spans(of: Drawing) -> list[str]:
    return [plain(each.label) for each in of.spans]


@pytest.mark.parametrize("name", FILES)
def test_no_label_of_a_worked_problem_touches_anything(name: str) -> None:
    laid = layout(drawing(name))
    assert touches(laid) + mark_touches(laid) == []


@pytest.mark.parametrize("name", EXTRA)
def test_no_label_of_an_odd_problem_touches_anything(name: str) -> None:
    laid = layout(work(dict(EXTRA[name])).picture().drawing)
    assert touches(laid) + mark_touches(laid) == []


@pytest.mark.parametrize("name", FILES)
def test_every_force_is_drawn_once(name: str) -> None:
    body = worked(name).outcome.body
    shown = [each.name for each in drawing(name).arrows if each.kind != "joint"] + [
        each.name for each in drawing(name).turns
    ]
    assert sorted(shown) == sorted([each.name for each in body.forces] + [each.name for each in body.twists])


@pytest.mark.parametrize("name", FILES)
def test_the_joint_force_is_drawn_where_there_is_a_joint(name: str) -> None:
    problem = worked(name).problem
    assert bool(joint(drawing(name))) == (problem.pivot.reaction and problem.balanced)


@pytest.mark.parametrize(
    ("name", "parts"),
    [
        ("01", ["J_y"]),
        ("14", ["J_x", "J_y"]),
        ("31", ["J_x", "J_y"]),
        ("35", ["J_x", "J_y"]),
        ("beam", ["J_y"]),
        ("15", ["J_along", "J_across"]),
        ("23", []),
        ("03", []),
    ],
)
def test_the_level_part_of_the_joint_force_is_left_out_only_where_every_force_is_upright(
    name: str, parts: list[str]
) -> None:
    assert joint(drawing(name)) == parts


@pytest.mark.parametrize("name", ["17", "20", "21", "22", "34"])
def test_a_muscle_known_by_its_arm_and_direction_acts_on_a_line_so_far_from_the_joint(name: str) -> None:
    outcome = worked(name).outcome
    force = next(each for each in outcome.body.forces if each.arm is not None)
    drawn_force = arrow(drawing(name), force.name)
    (x, y), turn = drawn_force.at, radians(drawn_force.direction)
    moment = x * sin(turn) - y * cos(turn)
    assert force.arm is not None and drawn_force.arm is not None
    assert (round(moment, 9), round(hypot(*drawn_force.arm.foot), 9)) == (
        round(force.turns * outcome.arm(force), 9),
        round(outcome.arm(force), 9),
    )


def test_the_foot_of_an_arm_lies_on_the_line_of_its_force() -> None:
    for name in ("12", "13", "17", "21", "31"):
        for each in drawing(name).arrows:
            if each.arm:
                (x, y), turn = (each.at[0] - each.arm.foot[0], each.at[1] - each.arm.foot[1]), radians(each.direction)
                assert abs(x * sin(turn) - y * cos(turn)) < 1e-12, name


def test_an_arm_carries_the_letter_that_the_page_works_with() -> None:
    letters = [plain(each.arm.label) for name in ("12", "21", "30") for each in drawing(name).arrows if each.arm]
    assert letters == ["d_H⊥", "d_E⊥", "d_T⊥", "d_C⊥", "r_B⊥", "r_F⊥", "r_T⊥"]


def test_a_muscle_known_only_by_its_arm_is_an_arc_with_the_product() -> None:
    turns = [(each.kind, plain(each.letter), each.sense) for each in drawing("14").turns]
    assert turns == [("muscle", "F_Q d_Q⊥", 1)]


def test_a_couple_is_told_from_a_muscle_known_only_by_its_arm() -> None:
    assert [(each.kind, plain(each.letter)) for each in drawing("26").turns] == [
        ("muscle", "P_SF r_SF⊥"),
        ("couple", "τ_SV"),
    ]


def test_a_distance_that_the_working_does_not_use_is_left_out() -> None:
    assert (spans(drawing("shopping-us")), spans(drawing("two-links")), spans(drawing("04"))) == (
        ["d_F", "d_B"],
        ["d_U", "L_U", "d_F", "d_H", "d_T"],
        ["x_N", "x_He", "x_Hel", "x_L"],
    )


def test_two_alike_stand_at_one_arrow() -> None:
    assert [
        plain(arrow(drawing(name), force).letter)
        for name, force in (("06", "hands"), ("18", "masseter"), ("23", "foot carriers"))
    ] == ["2 F_H", "2 F_M", "2 F_F"]


def test_a_pull_between_two_points_is_thought_on_to_the_second() -> None:
    aim = arrow(drawing("12"), "hip abductors").toward
    assert aim is not None and [round(each, 6) for each in aim] == [-0.065, -0.025]


def test_a_bone_reaches_back_to_what_acts_behind_its_joint() -> None:
    assert [round(each, 6) for each in drawing("scale-push").bones[0].start] == [-0.023, 0.0]


def test_an_angle_from_the_bone_before_is_opened_from_that_bone() -> None:
    of = drawn(
        segment=[
            {"name": "upper arm", "length": "30 cm", "direction": "40 deg right of down"},
            {"name": "forearm", "length": "25 cm", "direction": "70 deg from out toward up"},
        ],
        load=[{"name": "jug", "weight": "40 N", "at": "25 cm"}],
        couple=[{"name": "muscles", "moment": "?", "turns": "counter-clockwise"}],
    )
    assert [(each.first, round(each.second, 6)) for each in of.drawing.openings] == [(270.0, 310.0), (310.0, 20.0)]


def test_the_angle_of_a_pull_to_the_level_is_marked_where_it_is_worked_out() -> None:
    marks = [(each.first, round(each.second, 6)) for each in drawing("25").openings if plain(each.label) == "α_D"]
    assert marks == [(180.0, 145.0)]


def test_a_tall_weight_is_drawn_lower_on_its_line_and_a_grip_is_not() -> None:
    weight, grip = (arrow(drawing("12"), name).at for name in ("body above the hip", "hip abductors"))
    assert (round(weight[0], 6), weight[1] < 0.2, [round(each, 6) for each in grip]) == (0.105, True, [-0.035, 0.09])


def test_heights_that_are_low_enough_are_kept() -> None:
    assert (
        [round(each, 6) for each in arrow(drawing("04"), "lamp").at],
        "heights" in caption(picture("04")),
        "heights" in caption(picture("12")),
    ) == ([0.11, 0.08], False, True)


@pytest.mark.parametrize(
    ("name", "sense", "axes"),
    [
        ("01", 1, []),
        ("rock-oblique", 1, ["x", "y"]),
        ("10", -1, ["x", "y"]),
        ("07", 0, ["y"]),
        ("15", 1, ["along", "across"]),
        ("28", -1, []),
    ],
)
def test_the_mark_says_what_counts_as_positive(name: str, sense: int, axes: list[str]) -> None:
    assert (drawing(name).sense, [each for each, _ in drawing(name).axes]) == (sense, axes)


KINDS = {
    "muscle": "Thick red arrow: muscle.",
    "force": "Brown arrow",
    "joint": "Dashed green arrow",
    "weight": "Blue arrow",
    "load": "Blue arrow",
    "muscle arc": "Thick red arc",
    "couple arc": "Purple arc",
    "force arc": "Brown arc",
}


@pytest.mark.parametrize("name", FILES)
def test_a_caption_explains_what_is_drawn_and_nothing_else(name: str) -> None:
    of, said = drawing(name), caption(picture(name))
    kinds = {each.kind for each in of.arrows} | {f"{each.kind} arc" for each in of.turns}
    assert {words for words in KINDS.values() if words in said} == {KINDS[kind] for kind in kinds}


def test_a_hollow_head_is_explained_where_both_kinds_of_weight_are_drawn() -> None:
    said = [caption(picture(name)).partition("Blue arrow")[2].partition(".")[0] for name in ("01", "10", "07")]
    assert said == [
        ", solid head: weight",
        ": weight (hollow head: of a segment; solid: of a load)",
        ", hollow head: weight",
    ]


@pytest.mark.parametrize(
    ("name", "sentence"),
    [
        (
            "21",
            "The erector spinae pulls back along the trunk, 35° below the horizontal, to the left, on a line 5.3 cm "
            "from "
            "the lowest disc.",
        ),
        ("26", "The sprung vest turns the body counter-clockwise."),
        ("14", "The quadriceps pulls on a line 3.9 cm from the knee and turns the body counter-clockwise."),
        (
            "35",
            "The quadriceps pulls on a line whose distance from the knee is sought and turns the body "
            "counter-clockwise.",
        ),
        (
            "12",
            "The hip abductors pull from a point 3.5 cm to the left of the hip and 9.0 cm above the hip toward one "
            "6.5 cm to the left of the hip "
            "and 2.5 cm below the hip.",
        ),
        ("04", "The weight of the lamp pulls straight down, 11 cm to the right of the top of the neck."),
        ("11", "The calf pulls straight up, 4.8 cm from the ankle, on the other side."),
        ("14", "The shank and foot point at an angle that is sought, counted from straight down, toward the right."),
        ("19", "The hazelnut acts straight down, at a distance that is sought."),
        ("15", "The ankle weight pulls straight down, 36 cm from the knee."),
        ("15", "The force of the femur acts at the knee, drawn in two parts, along the shank and across it."),
        ("01", "The force of the humerus acts at the elbow, drawn upwards."),
        ("10", "Clockwise counts as positive."),
    ],
)
def test_the_description_says_what_is_drawn(name: str, sentence: str) -> None:
    assert sentence in picture(name).description


def test_the_description_says_nothing_of_a_joint_force_that_is_not_drawn() -> None:
    assert [name for name in FILES if (", drawn " in picture(name).description) != bool(joint(drawing(name)))] == []


@pytest.mark.parametrize("name", FILES)
def test_the_description_gives_no_answer_away(name: str) -> None:
    numbers = {each.shown.partition(" ")[0].lstrip("-") for each in worked(name).answers.values()} - {"0"}
    said = picture(name).description.replace("°", " ").replace(",", " ").split()
    assert sorted(numbers & {word.rstrip(".") for word in said}) == []


def test_a_pull_that_passes_near_the_joint_is_drawn_far_enough_from_it_to_be_seen() -> None:
    of = drawn(
        segment=[{"name": "forearm", "length": "30 cm"}],
        load=[{"name": "jug", "weight": "40 N", "at": "30 cm"}],
        muscle=[{"name": "triceps", "moment_arm": "0.4 cm", "turns": "counter-clockwise", "direction": "back"}],
    )
    foot = framed(of.drawing, 400, 280).foot(arrow(of.drawing, "triceps"))
    assert round(hypot(*foot)) == 34


def test_the_same_problem_gives_the_same_figure() -> None:
    assert work(Path(FILES["25"])).figure() == work(Path(FILES["25"])).figure()
