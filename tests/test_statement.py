"""A statement composed from the data says the body, the loads, the pulls, what is left out, and the question."""
from __future__ import annotations

import re
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from explain.english import a, is_plural, listed, the, verb
from explain.files import read_problem
from explain.statement import compose

CONTRACT = Path(__file__).with_name("contract")
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


def said(text: str) -> str:
    return compose(read_problem(text))


def contract(name: str) -> str:
    return compose(read_problem(CONTRACT / f"{name}.toml"))


def test_a_jug_is_told_in_four_sentences() -> None:
    assert ("The forearm and hand (mass 1.6 kg, centre of mass 15 cm from the elbow) are at rest, level and pointing right. "
            "A jug of mass 3.0 kg is carried 33 cm from the elbow. "
            "The biceps grips the forearm and hand 4.0 cm from the elbow and pulls straight up. "
            "How hard does the biceps pull on the forearm and hand?") == contract("jug-level")


def test_an_angle_is_told_with_both_lines() -> None:
    assert ("pulls at 22° to the line back along the shank, turned toward the level line to the right.") in contract("leg-raise")


def test_a_posture_is_told_with_both_lines() -> None:
    assert ("The shank (40 cm long, mass 4.4 kg, centre of mass 23 cm from the knee) is at rest, "
            "40° to the right of straight down.") in contract("leg-raise")


def test_the_reaction_is_asked_as_a_push_of_one_bone_on_one_body() -> None:
    assert contract("leg-raise").endswith("and what force does the femur exert on the shank at the knee, and which way?")


def test_the_push_on_the_other_bone_is_asked_where_the_class_tells_that() -> None:
    text = 'ask = ["reaction"]\n' + ARM + BICEPS + '[course]\nreaction_on = "the other bone"'
    assert said(text).endswith("What force do the forearm and hand exert on the humerus at the elbow, and which way?")


def test_parts_of_the_reaction_are_asked_in_one_question() -> None:
    assert contract("rock-oblique").endswith("what force does the humerus exert on the forearm and hand at the elbow "
                                             "(its part to the right, its upward part, its size and its direction)?")


def test_parts_along_a_segment_name_it() -> None:
    course = '[course]\naxes = "along and across the forearm and hand"'
    text = 'ask = ["reaction.along", "reaction.across"]\n' + ARM + BICEPS + course
    assert said(text).endswith("(its part along the forearm and hand and its part across the forearm and hand)?")


def test_several_loads_stand_in_one_sentence() -> None:
    assert ("These loads are carried: the hand (mass 0.4 kg), 31 cm along the forearm from its near end; "
            "a tray (mass 2.5 kg), 33 cm along the forearm from its near end.") in contract("two-links")


def test_a_share_of_the_body_is_told_with_the_body() -> None:
    assert ("The body above the hip (83.9 % of the body mass of 74 kg) is carried 10.0 cm to the right of the hip."
            ) in contract("dancer")


def test_a_negative_distance_is_on_the_other_side() -> None:
    assert ("The triceps grips the forearm and hand 2.3 cm from the elbow, on the other side, and pulls straight up"
            ) in contract("scale-push")


def test_a_share_of_another_force_is_told() -> None:
    assert "pulls straight up with 0.70 times the force of the biceps." in contract("two-flexors")


def test_the_pulls_of_several_muscles_are_asked_together() -> None:
    assert ("What are the pulls of the biceps and the brachialis on the forearm and hand, and what force"
            ) in contract("two-flexors")


def test_more_than_two_things_are_to_be_found() -> None:
    text = ('ask = ["biceps", "total.moment", "jug.weight", "jug.moment"]\n' + ARM + BICEPS
            + '[[load]]\nname = "jug"\nmass = "3 kg"\nat = "33 cm"\n[course]\nword = "torque"')
    assert said(text).endswith("Find the pull of the biceps on the forearm and hand, the total torque about the elbow, "
                               "the weight of the jug and the torque of the jug about the elbow.")


def test_a_distance_that_is_sought_is_asked_for() -> None:
    assert contract("how-far-out").endswith("with 350 N. How far from the elbow is the dumbbell?")


def test_an_angle_that_is_sought_is_asked_for_with_its_line() -> None:
    assert contract("how-steep").endswith("What is the angle of the shank to the right of straight down?")


def test_what_is_neglected_and_what_weighs_nothing_is_left_out() -> None:
    text = 'neglect = ["friction in the joint"]\n' + ARM.replace('mass = "1.7 kg"\ncom = "16 cm"\n', "") + BICEPS
    assert "Leave out of account friction in the joint and the weight of the forearm and hand." in said(text)


def test_a_couple_a_rope_and_a_limit_are_told() -> None:
    text = (ARM + BICEPS + 'force = "limit"\nlimit = "900 N"\narea = "9 cm^2"\n'
            '[[couple]]\nname = "brake"\nmoment = "?"\nturns = "clockwise"\n'
            '[[force]]\nname = "rope"\npoint = ["3 cm", "-4 cm"]\ntoward = ["0 cm", "5 cm"]\nforce = "20 N"')
    assert ("The biceps (cross-section 9 cm², at most 900 N) grips the forearm and hand 4.5 cm from the elbow and pulls straight "
            "up as hard as it can; the rope acts on the forearm and hand 3 cm to the right of and 4 cm below the elbow, "
            "toward the point 5 cm above the elbow with 20 N; the brake turns the body clockwise with an unknown moment."
            ) in said(text)


@pytest.mark.parametrize("path", sorted(CONTRACT.glob("*.toml")), ids=lambda path: path.stem)
def test_every_statement_has_two_to_five_sentences(path: Path) -> None:
    assert 2 <= len(re.findall(r"[.?](?= [A-Z]|$)", compose(read_problem(path)))) <= 5


@pytest.mark.parametrize("path", sorted(CONTRACT.glob("*.toml")), ids=lambda path: path.stem)
def test_every_quantity_of_the_file_is_in_the_statement_as_written(path: Path) -> None:
    problem_alone = re.sub(r"\[course\](.|\n)*?\n\n", "", path.read_text(encoding="utf-8"))
    numbers = re.findall(r'"-?([0-9.]+) (?:cm|m|in|kg|lb|N)"', problem_alone)
    statement = compose(read_problem(path))
    assert [] == [number for number in numbers if float(number) and not re.search(rf"(?<![\d.]){re.escape(number)} ", statement)]


@pytest.mark.parametrize(("name", "introduced"), [
    ("jug", "a jug"), ("apple", "an apple"), ("hour glass", "an hour glass"), ("unit weight", "a unit weight"),
    ("one-litre bottle", "a one-litre bottle"), ("umbrella", "an umbrella"), ("X-ray plate", "an X-ray plate"),
    ("8 kg ball", "an 8 kg ball"), ("books", "books"), ("hand", "the hand"), ("Mira", "Mira"), ("the crate", "the crate"),
    ("Mira's bag", "Mira's bag"), ("European swallow", "a European swallow"), ("uninjured arm", "an uninjured arm"),
    ("box", "a box"), ("MRI coil", "an MRI coil")])
def test_articles_go_by_the_sound(name: str, introduced: str) -> None:
    assert introduced == a(name)


@pytest.mark.parametrize(("name", "plural"), [
    ("forearm and hand", True), ("hip abductors", True), ("hamstrings", True), ("feet", True), ("biceps", False),
    ("triceps", False),
    ("tibialis anterior", False), ("brachialis", False), ("gastrocnemius", False), ("teres", False), ("press", False),
    ("shank", False)])
def test_muscles_that_end_in_s_are_not_all_plural(name: str, plural: bool) -> None:
    assert plural is is_plural(name)


def test_a_verb_goes_with_its_name() -> None:
    assert ("pulls", "pull", "is", "are", "does") == (
        verb("biceps", "pull"), verb("flexors", "pull"), verb("shank", "be"), verb("shank and foot", "be"), verb("femur", "do"))


def test_a_name_keeps_its_own_article() -> None:
    assert ("the femur", "Mira", "the Achilles tendon") == (the("femur"), the("Mira"), the("Achilles tendon"))


@given(st.lists(st.sampled_from("abc"), max_size=4))
def test_a_list_names_each_of_its_parts_once(parts: list[str]) -> None:
    assert parts == [each for each in re.split(", | and ", listed(parts)) if each]
