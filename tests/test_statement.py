"""A statement composed from the data says the loads, the body, the pulls, what is left out, and the question."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from explain.problem.reader import read_problem
from explain.wording.phrases import left_out
from explain.wording.statement import compose

HERE = Path(__file__).parent
CONTRACT = HERE / "contract"
FILES = sorted(
    (
        *(HERE.parent / "samples").glob("[0-9]*.toml"),
        *CONTRACT.glob("*.toml"),
        *(HERE / "published").glob("*.toml"),
        *(HERE / "scenarios").glob("*.toml"),
    )
)
ARM = """title = "x"
[pivot]
name = "elbow"
bone = "humerus"
[[segment]]
name = "forearm and hand"
mass = "1.7 kg"
com = "16 cm"
"""
BICEPS = '[[muscle]]\nname = "biceps"\nat = "4.5 cm"\ndirection = "up"\n'
ROPE = '[[force]]\nname = "rope"\nat = "2 m"\ndirection = "up"\nforce = "?"\n'
PLANK = 'title = "x"\n[pivot]\nname = "log"\n[[segment]]\nname = "plank"\n'


def said(text: str) -> str:
    return compose(read_problem(text))


def contract(name: str) -> str:
    return compose(read_problem(CONTRACT / f"{name}.toml"))


def sample(name: str) -> str:
    return compose(read_problem(HERE.parent / "samples" / f"{name}.toml"))


# ---------------------------------------------------------------------- the whole
def test_a_rock_on_an_arm_is_told_in_four_sentences() -> None:
    assert (
        "A rock of 6.0 kg rests 35 cm from the elbow. "
        "The forearm and hand (1.7 kg, centre of mass 16 cm from the elbow) are horizontal and at rest. "
        "The biceps meets them 4.5 cm from the elbow and pulls at 70° to the bone, back and up. "
        "How hard does the biceps pull, and with what force does the humerus push on the forearm and hand "
        "(its part to the right, its upward part, its size and its direction)?"
    ) == contract("rock-oblique")


def test_a_painter_on_a_plank_stands_and_comes_after_it() -> None:
    assert (
        "A plank (3.2 m long, 12 kg, centre of mass in the middle) is horizontal and at rest. "
        "A painter of 64 kg stands 1.1 m from the near trestle. "
        "The far trestle pushes straight up, 2.9 m from the near trestle. "
        "How hard does the far trestle push on the plank, and with what force does the near trestle push on the plank "
        "(its upward part)?"
    ) == contract("beam")


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_every_statement_has_at_most_five_sentences_and_ends_with_what_is_asked(path: Path) -> None:
    statement = compose(read_problem(path))
    sentences = re.split(r"(?<=[.?]) (?=[A-Z])", statement)
    assert (True, True) == (2 <= len(sentences) <= 5, statement.endswith("?") or sentences[-1].startswith("Find "))


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_no_statement_says_a_word_twice_or_carries_anyone(path: Path) -> None:
    assert [] == re.findall(
        r"\b(\w+) \1\b|  | ,|,,|\bcarried\b|weight of the ankle weight|the (?=Leo|Joss|Iolo|both)",
        compose(read_problem(path)),
    )


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_every_quantity_of_the_file_is_in_the_statement_as_written(path: Path) -> None:
    elsewhere = r"\[course\](.|\n)*?\n\n|^(?:statement = \"\"\"(.|\n)*?\"\"\"|(?:course|range|height) = .*)$"
    problem_alone = re.sub(elsewhere, "", path.read_text(encoding="utf-8"), flags=re.MULTILINE)
    numbers = re.findall(r'"-?([0-9.]+) (?:cm|mm|m|in|ft|kg|lb|N|kN)"', problem_alone)
    statement = compose(read_problem(path))
    assert [] == [
        number for number in numbers if float(number) and not re.search(rf"(?<![\d.]){re.escape(number)} ", statement)
    ]


# ---------------------------------------------------------------------- the body and its loads
def test_a_posture_is_told_with_both_lines() -> None:
    assert (
        "The shank (40 cm long, 4.4 kg, centre of mass 23 cm from the knee) is at rest, 40° to the right of "
        "straight down."
    ) in contract("leg-raise")


def test_a_segment_begins_at_the_far_end_of_the_one_before() -> None:
    assert (
        "35° to the right of straight down; at its far end, the forearm (25 cm long, 1.1 kg, centre of mass 11 cm "
        "along it) "
        "is horizontal."
    ) in contract("two-links")


def test_two_segments_may_begin_at_one_end() -> None:
    assert (
        "; also at the far end of the trunk, both arms (64 cm long, 10 % of the body mass, centre of mass at 42 % "
        "of their "
        "length) are hanging straight down."
    ) in sample("34-over-the-gym-bench")


@pytest.mark.parametrize(
    ("direction", "posture"),
    [
        ("out", "the hand (10 cm long) is in line with the arm."),
        ("back", "the hand (10 cm long) is folded back along the arm."),
        ("30 deg from out toward up", "the hand (10 cm long) is at 30° to the arm, outward and up."),
        ("90 deg from out toward up", "the hand (10 cm long) is at 90° to the arm, up."),
        ("120 deg from out toward up", "is at 120° to the line out along the arm, turned toward straight up."),
        ("left", "the hand (10 cm long) is horizontal, pointing left."),
    ],
)
def test_a_segment_may_be_turned_from_the_one_before(direction: str, posture: str) -> None:
    text = (
        'title = "x"\n[pivot]\nname = "shoulder"\n[[segment]]\nname = "arm"\nlength = "50 cm"\n'
        f'[[segment]]\nname = "hand"\nlength = "10 cm"\ndirection = "{direction}"\n'
    )
    assert posture in said(text + BICEPS.replace("at", 'on = "arm"\nat'))


def test_several_loads_stand_in_one_sentence() -> None:
    assert (
        "The hand (0.4 kg) acts 31 cm along the forearm and a tray of 2.5 kg rests 33 cm along the forearm."
    ) in contract("two-links")


@pytest.mark.parametrize(
    ("load", "told"),
    [
        ('name = "lantern"\nmass = "1.1 kg"', "A lantern of 1.1 kg hangs 1 m from the log."),
        ('name = "hanging block"\nmass = "?"', "A hanging block of unknown mass hangs 1 m from the log."),
        ('name = "crate"\nweight = "41 N"', "A crate weighing 41 N rests 1 m from the log."),
        ('name = "weight"\nweight = "40 N"', "A weight of 40 N acts 1 m from the log."),
        ('name = "sack"\nmass = "7.5 lb"', "A sack of mass 7.5 lb rests 1 m from the log."),
        ('name = "flour"\nweight = "110 lb"', "The flour (weighing 110 lb) rests 1 m from the log."),
        ('name = "second child"\nmass = "32.0 kg"', "The second child (32.0 kg) is 1 m from the log."),
        ('name = "two books"\nmass = "2 kg"', "Two books (2 kg) rest 1 m from the log."),
    ],
)
def test_a_load_does_what_can_be_known_of_it(load: str, told: str) -> None:
    assert told in said(f'{PLANK}[[load]]\n{load}\nat = "1 m"\n{ROPE}')


def test_on_a_sloping_limb_a_thing_does_not_rest() -> None:
    assert contract("leg-raise").startswith("A cuff of 6.0 kg acts 36 cm from the knee. ")


def test_a_share_of_the_body_is_told_with_the_body() -> None:
    assert contract("dancer").startswith(
        "The body above the hip (83.9 % of the body mass of 74 kg) acts 10.0 cm to the right of the hip. "
    )


def test_the_bodys_mass_is_told_once() -> None:
    assert 1 == sample("34-over-the-gym-bench").count("94 kg")


@pytest.mark.parametrize(
    ("file", "told"),
    [
        (
            "08-dog-on-the-plank",
            "Leo (47 kg) is 1.20 m to the left of the log; a plank of 15 kg acts 0.20 m to the right",
        ),
        ("07-push-up", "The body (1.70 m long, 71 kg, centre of mass 0.98 m from the toes) is horizontal and at rest."),
        (
            "11-top-shelf",
            "the floor pushes straight up with 50 % of the body weight (body mass 58 kg), 12.5 cm from the ankle.",
        ),
        ("20-netting", "(24 cm long, mass and centre of mass from Plagenhoef's table for a woman of 61 kg)"),
        ("25-lantern", "the hand (8.0 cm long, mass and centre of mass from the same table)"),
    ],
)
def test_what_is_heavy_is_told_with_where_its_mass_comes_from(file: str, told: str) -> None:
    assert told in sample(file)


# ---------------------------------------------------------------------- what pulls
@pytest.mark.parametrize(
    ("file", "told"),
    [
        (
            "leg-raise",
            "The quadriceps meets it 6.5 cm from the knee and pulls at 22° to the bone, back and to the right.",
        ),
        ("scale-push", "The triceps meets them 2.3 cm from the elbow, on the other side, and pulls straight up"),
        ("scale-push", "the scale pushes straight up with 95 N, 29 cm from the elbow."),
        ("two-flexors", "pulls straight up with 0.70 times the pull of the biceps."),
        (
            "how-steep",
            "and pulls with 400 N at a moment arm of 4.0 cm about the knee, turning the shank counter-clockwise.",
        ),
    ],
)
def test_a_force_is_told_by_its_place_its_way_and_its_size(file: str, told: str) -> None:
    assert told in contract(file)


@pytest.mark.parametrize(
    ("file", "told"),
    [
        (
            "29-anchor-line",
            "the anchor line pulls on the foot 14 cm from the ankle with 32 N, 70° below the horizontal, to the right.",
        ),
        (
            "18-toffee",
            "meets it 3.4 cm from the jaw joint and pulls with 150 N, 75° above the horizontal, to the right;",
        ),
        ("31-goal-kick", "with 28 N toward the point 70 cm to the left of and 75 cm below the hip."),
        (
            "22-crate-at-the-mark",
            "pulls back along the trunk as hard as it can at a moment arm of 5.3 cm about the lowest disc",
        ),
        ("26-sanding-the-hull", "the sprung vest turns the whole limb counter-clockwise with a torque of 5.0 N·m."),
    ],
)
def test_an_oblique_force_has_its_long_direction_last(file: str, told: str) -> None:
    assert told in sample(file)


def test_two_hands_alike_are_told_as_each() -> None:
    assert (
        "Each hand (two alike) lifts straight up, 54 in from the axle. How hard does each hand lift the barrow"
    ) in sample("06-flour-barrow")


def test_a_couple_a_rope_and_a_limit_are_told() -> None:
    text = (
        ARM + BICEPS + 'force = "limit"\nlimit = "900 N"\narea = "9 cm^2"\n'
        '[[couple]]\nname = "brake"\nmoment = "?"\nturns = "clockwise"\n'
        '[[force]]\nname = "rope"\npoint = ["3 cm", "-4 cm"]\ntoward = ["0 cm", "5 cm"]\nforce = "20 N"'
    )
    assert (
        "The biceps (cross-section 9 cm², at most 900 N) meets them 4.5 cm from the elbow and pulls straight "
        "up as hard as it can; the rope pulls on the forearm and hand 3 cm to the right of and 4 cm below the elbow "
        "with 20 N toward the point 5 cm above the elbow; the brake turns the forearm and hand clockwise."
    ) in said(text)


# ---------------------------------------------------------------------- what is left out
def test_what_is_neglected_and_what_weighs_nothing_is_left_out() -> None:
    text = 'neglect = ["friction in the joint"]\n' + ARM.replace('mass = "1.7 kg"\ncom = "16 cm"\n', "") + BICEPS
    assert "Leave out friction in the joint and the weight of the forearm and hand." in said(text)


def test_a_weight_that_the_author_leaves_out_is_left_out_once() -> None:
    assert ("the weight of the forearm and hand",) == left_out(
        read_problem(HERE.parent / "samples" / "01-treacle-tin.toml")
    )


def test_a_name_inside_another_word_is_no_neglect() -> None:
    text = 'neglect = ["the weight of the forearm"]\n' + PLANK.replace("plank", "arm") + BICEPS
    assert ("the weight of the forearm", "the weight of the arm") == left_out(read_problem(text))


# ---------------------------------------------------------------------- the question
@pytest.mark.parametrize(
    ("file", "asked"),
    [
        ("jug-level", " How hard does the biceps pull on the forearm and hand?"),
        ("how-far-out", " How far from the elbow is the dumbbell?"),
        ("how-steep", " At what angle to the right of straight down is the shank?"),
        (
            "two-flexors",
            " How hard do the biceps and the brachialis pull, and how hard and which way does the humerus push on the "
            "forearm and hand?",
        ),
    ],
)
def test_one_thing_sought_is_asked_in_a_question_of_its_own(file: str, asked: str) -> None:
    assert contract(file).endswith(asked)


@pytest.mark.parametrize(
    ("file", "asked"),
    [
        ("19-hazelnut", " How far from the jaw joint does the hazelnut act?"),
        ("08-dog-on-the-plank", " What is Bosun's mass, and how hard"),
        ("24-raising-the-mast", " At what angle below the horizontal, to the left, does the rope pull, and how hard"),
    ],
)
def test_a_place_a_mass_and_a_direction_are_asked_for(file: str, asked: str) -> None:
    assert asked in sample(file)


def test_the_reaction_is_asked_as_a_push_of_one_bone_on_one_body() -> None:
    assert contract("leg-raise").endswith("and how hard and which way does the femur push on the shank?")


def test_the_push_on_the_other_bone_is_asked_where_the_class_tells_that() -> None:
    text = 'ask = ["reaction"]\n' + ARM + BICEPS + '[course]\nreaction_on = "the other bone"'
    assert said(text).endswith("How hard and which way do the forearm and hand push on the humerus?")


def test_a_reaction_of_no_named_bone_is_asked_at_the_joint() -> None:
    text = 'ask = ["reaction"]\n' + ARM.replace('bone = "humerus"\n', "") + BICEPS
    assert said(text).endswith("How hard and which way are the forearm and hand pushed at the elbow?")


def test_parts_along_a_segment_name_it() -> None:
    course = '[course]\naxes = "along and across the forearm and hand"'
    text = 'ask = ["reaction.along", "reaction.across"]\n' + ARM + BICEPS + course
    assert said(text).endswith("(its part along the forearm and hand and its part across the forearm and hand)?")


def test_a_bone_of_several_takes_a_plural_verb() -> None:
    text = 'ask = ["reaction"]\n' + ARM.replace("humerus", "vertebrae") + BICEPS
    assert said(text).endswith("How hard and which way do the vertebrae push on the forearm and hand?")


def test_the_moments_of_several_forces_are_asked_together() -> None:
    assert sample("03-tiller").endswith(
        "What are the moments of the hand and the stream about the rudder post, "
        "and what is the total moment about the rudder post?"
    )


def test_more_than_two_things_are_to_be_found() -> None:
    text = (
        'ask = ["biceps", "total.moment", "jug.weight", "jug.moment"]\n'
        + ARM
        + BICEPS
        + '[[load]]\nname = "jug"\nmass = "3 kg"\nat = "33 cm"\n[course]\nword = "torque"'
    )
    assert said(text).endswith(
        "Find the pull of the biceps on the forearm and hand, the total torque about the elbow, "
        "the weight of the jug and the torque of the jug about the elbow."
    )
