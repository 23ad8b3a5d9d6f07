"""Names get the article, the verb and the owner that a reader expects, whether they are bones, people or things."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from explain.document.english import (
    a,
    counted,
    each_of,
    force_of,
    head_word,
    is_of_the_body,
    is_plural,
    is_proper,
    it,
    its,
    listed,
    mass_of,
    noun_of,
    possessive,
    sentence,
    the,
    verb,
    weight_of,
)
from explain.problem.reader import read_problem
from explain.wording.pivot_words import is_joint, pivot_force, pusher
from explain.mechanics.free_body import cut_free

HERE = Path(__file__).parent
FILES = sorted(
    (
        *(HERE.parent / "samples").glob("[0-9]*.toml"),
        *(path for folder in ("contract", "published", "scenarios") for path in (HERE / folder).glob("*.toml")),
    )
)
PLURAL = frozenset(
    (
        "abductors",
        "back muscles",
        "barrow and earth",
        "both arms",
        "elbow flexors",
        "feet",
        "flexors",
        "foot carriers",
        "forearm and hand",
        "front wheels",
        "hands",
        "head and neck",
        "head carriers",
        "head handles",
        "hinges",
        "hip abductors",
        "hip flexors",
        "hips",
        "horse and rider",
        "inner hamstrings",
        "neck extensors",
        "neck muscles",
        "outer hamstrings",
        "rear wheels",
        "shank and foot",
        "shoulder flexors",
        "shoulder muscles",
        "toes",
        "vertebrae",
        "wet nets",
    )
)
WITHOUT_ARTICLE = frozenset(("A", "P", "Bosun", "Harriet", "Iolo", "Joss", "Leo", "Wren", "both arms"))


def names() -> set[str]:
    """Every name that a problem of the samples and of the tests gives to something."""
    found: set[str] = set()
    for problem in map(read_problem, FILES):
        found |= {each.name for each in (*problem.segments, *problem.loads, *problem.pulls, *problem.couples)}
        found |= {problem.pivot.name, problem.pivot.bone}
    return found - {""}


def meanings(path: Path) -> set[str]:
    body = cut_free(read_problem(path))
    return {each.meaning for each in (*body.givens, *body.sought)}


def test_of_all_names_in_use_these_are_plural() -> None:
    assert PLURAL == {name for name in names() if is_plural(name)}


def test_of_all_names_in_use_these_take_no_article() -> None:
    assert WITHOUT_ARTICLE == {name for name in names() if not the(name).startswith("the ")}


@pytest.mark.parametrize(
    ("name", "introduced"),
    [
        ("jug", "a jug"),
        ("apple", "an apple"),
        ("hour glass", "an hour glass"),
        ("unit weight", "a unit weight"),
        ("one-litre bottle", "a one-litre bottle"),
        ("umbrella", "an umbrella"),
        ("X-ray plate", "an X-ray plate"),
        ("8 kg ball", "an 8 kg ball"),
        ("books", "books"),
        ("hand", "the hand"),
        ("Mira", "Mira"),
        ("the crate", "the crate"),
        ("Mira's bag", "Mira's bag"),
        ("European swallow", "a European swallow"),
        ("uninjured arm", "an uninjured arm"),
        ("box", "a box"),
        ("MRI coil", "an MRI coil"),
        ("both arms", "both arms"),
        ("body above the hip", "the body above the hip"),
        ("ankle weight", "an ankle weight"),
        ("head lamp", "a head lamp"),
        ("flour", "the flour"),
        ("second child", "the second child"),
        ("total leg", "the total leg"),
        ("toes", "the toes"),
        ("block B", "block B"),
    ],
)
def test_articles_go_by_the_sound_and_by_what_is_known_already(name: str, introduced: str) -> None:
    assert introduced == a(name)


@pytest.mark.parametrize(
    ("name", "plural"),
    [
        ("biceps", False),
        ("triceps", False),
        ("tibialis anterior", False),
        ("brachialis", False),
        ("gastrocnemius", False),
        ("teres", False),
        ("iliopsoas", False),
        ("press", False),
        ("atlas", False),
        ("erector spinae", False),
        ("levator scapulae", False),
        ("Joss", False),
        ("Old Mateus", False),
        ("bag of books", False),
        ("body above the hips", False),
        ("vertebrae", True),
        ("Leo and Joss", True),
        ("scapulae", True),
        ("weights on the bar", True),
        ("two people", True),
        ("trunk, head and arms", True),
        ("lower hinge, upward", False),
    ],
)
def test_not_all_that_ends_in_s_is_plural_and_some_that_does_not_is(name: str, plural: bool) -> None:
    assert plural is is_plural(name)


@pytest.mark.parametrize(
    ("name", "proper"),
    [
        ("Leo", True),
        ("Old Mateus", True),
        ("Grandmother Bettine", True),
        ("O'Brien", True),
        ("McLeod", True),
        ("J. Penrose", True),
        ("Leo and Joss", True),
        ("leo", False),
        ("Achilles tendon", False),
        ("Biceps", False),
        ("Upper Arm", False),
        ("MRI", False),
        ("A", False),
        ("", False),
    ],
)
def test_a_persons_name_is_told_by_its_capitals(name: str, proper: bool) -> None:
    assert proper is is_proper(name)


def test_a_name_keeps_its_own_article() -> None:
    assert (
        "the femur",
        "Mira",
        "the Achilles tendon",
        "the Biceps",
        "Mira's bag",
        "both arms",
        "block B",
        "muscle 2",
    ) == tuple(
        map(the, ("femur", "Mira", "Achilles tendon", "Biceps", "Mira's bag", "both arms", "block B", "muscle 2"))
    )


def test_a_verb_goes_with_its_name() -> None:
    assert ("pulls", "pull", "is", "are", "does", "has", "pushes", "carries", "lays") == (
        verb("biceps", "pull"),
        verb("flexors", "pull"),
        verb("shank", "be"),
        verb("shank and foot", "be"),
        verb("femur", "do"),
        verb("Leo", "have"),
        verb("scale", "push"),
        verb("Joss", "carry"),
        verb("Iolo", "lay"),
    )


def test_a_pronoun_goes_with_its_name() -> None:
    assert ("their", "its", "them", "it") == (its("head and neck"), its("trunk"), it("both arms"), it("biceps"))


@pytest.mark.parametrize(
    ("name", "owner"),
    [
        ("Leo", "Leo's"),
        ("Joss", "Joss's"),
        ("Old Mateus", "Old Mateus's"),
        ("jug", "the jug's"),
        ("biceps", "the biceps'"),
        ("hip abductors", "the hip abductors'"),
        ("both arms", "both arms'"),
        ("vertebrae", "the vertebrae's"),
    ],
)
def test_an_owner_has_its_apostrophe(name: str, owner: str) -> None:
    assert owner == possessive(name)


def test_of_people_the_owner_stands_first() -> None:
    assert (
        "Leo's mass",
        "the mass of the jug",
        "the pull of the biceps",
        "the mass of A",
    ) == (mass_of("Leo"), mass_of("jug"), noun_of("pull", "biceps"), mass_of("A"))


def test_a_weight_has_no_weight_of_its_own() -> None:
    assert ("the ankle weight", "the weights on the bar", "the weight of the jug", "Leo's weight") == tuple(
        map(weight_of, ("ankle weight", "weights on the bar", "jug", "Leo"))
    )


@pytest.mark.parametrize(
    ("name", "one"),
    [
        ("hands", "each hand"),
        ("masseter", "each masseter"),
        ("head carriers", "each head carrier"),
        ("biceps", "each biceps"),
        ("feet", "each foot"),
        ("both arms", "each arm"),
        ("boxes", "each box"),
        ("bodies", "each body"),
        ("presses", "each press"),
        ("branches", "each branch"),
        ("forearm and hand", "each of the forearm and hand"),
        ("the hands", "each hand"),
    ],
)
def test_one_of_several_alike(name: str, one: str) -> None:
    assert one == each_of(name)


def test_small_counts_are_words() -> None:
    assert ("two", "twelve", "13", "-1") == (counted(2), counted(12), counted(13), counted(-1))


@pytest.mark.parametrize(
    ("name", "word"),
    [
        ("far trestle", "trestle"),
        ("bag of books", "bag"),
        ("lower hinge, upward", "hinge"),
        ("Body above the hip", "body"),
        ("", ""),
    ],
)
def test_the_head_of_a_name_says_what_it_is(name: str, word: str) -> None:
    assert word == head_word(name)


@pytest.mark.parametrize(
    ("name", "of_the_body"),
    [
        ("forearm and hand", True),
        ("both arms", True),
        ("upper body", True),
        ("trunk, head and arms", True),
        ("ankle weight", False),
        ("head lamp", False),
        ("plank", False),
    ],
)
def test_a_part_of_the_body_is_told_from_what_is_named_after_it(name: str, of_the_body: bool) -> None:
    assert of_the_body is is_of_the_body(name)


def test_a_sentence_begins_with_a_capital_and_has_one_mark_at_its_end() -> None:
    assert ("Both arms hang.", "Who?") == (sentence("both arms hang"), sentence("who?"))


@given(st.lists(st.sampled_from("abc"), max_size=4))
def test_a_list_names_each_of_its_parts_once(parts: list[str]) -> None:
    assert parts == [each for each in re.split(", | and ", listed(parts)) if each]


@given(st.text(st.characters(codec="utf-8", exclude_categories=("Z", "C")), min_size=1, max_size=12))
def test_an_article_leaves_the_name_as_it_was_written(name: str) -> None:
    assert (True, True) == (the(name).endswith(name), a(name).endswith(name))


# ---------------------------------------------------------------------- what the letters mean
@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_no_letters_meaning_has_a_wrong_article_or_an_unknown_side(path: Path) -> None:
    wrong = r"\bthe (?:Leo|Bosun|Joss|Iolo|Harriet|both)\b|weight of the ankle weight|to the side|in height|ors pulls"
    assert [] == [meaning for meaning in meanings(path) if re.search(wrong, meaning)]


@pytest.mark.parametrize(
    ("name", "wanted"),
    [
        ("samples/12-one-leg-on-the-gangway", "hip to hip abductors, to the left"),
        ("samples/12-one-leg-on-the-gangway", "hip to the point the hip abductors pull toward, below"),
        ("samples/08-dog-on-the-plank", "mass of Leo"),
        ("samples/34-over-the-gym-bench", "length of both arms"),
        ("samples/34-over-the-gym-bench", "centre of mass of the head and neck, as a share of their length"),
        ("samples/28-tray-of-loaves", "torque of the shoulder muscles"),
        ("samples/06-flour-barrow", "force of each hand (two alike)"),
        ("samples/18-toffee", "pull of each masseter (two alike)"),
        ("samples/32-painters-plank", "force of the stern rope compared with the force of the bow rope"),
        ("tests/contract/two-flexors", "pull of the brachialis compared with that of the biceps"),
        ("tests/published/UP-EX12.1", "force of the front wheels compared with the weight of the car"),
    ],
)
def test_a_letter_means(name: str, wanted: str) -> None:
    assert {wanted} == meanings(HERE.parent / f"{name}.toml") & {wanted}


@pytest.mark.parametrize(
    ("name", "force"),
    [("floor", "the force of the floor"), ("friction", "the friction"), ("normal force", "the normal force")],
)
def test_what_is_a_force_by_its_name_has_no_other_force(name: str, force: str) -> None:
    assert force == force_of(name)


@pytest.mark.parametrize(
    ("pivot", "joint"),
    [
        ("elbow", True),
        ("shoulder", True),
        ("shoulders", True),
        ("spine", True),
        ("hip joint", True),
        ("L5/S1", True),
        ("C7", True),
        ("A", False),
        ("middle of the seesaw", False),
        ("foot", False),
        ("lower hinge", False),
    ],
)
def test_a_joint_of_the_body_is_told_from_a_support(pivot: str, joint: bool) -> None:
    assert joint is is_joint(pivot)


def test_what_pushes_at_a_pivot_is_a_bone_that_was_named_or_the_joint_or_a_support() -> None:
    def at(pivot: str, **more: str) -> tuple[str, str]:
        problem = read_problem(
            {"title": "-", "pivot": {"name": pivot, **more}, "segment": [{"name": "plank"}], "ask": ["reaction"]}
        )
        return pusher(problem), pivot_force(problem)

    assert ("the femur", "joint force") == at("knee", bone="femur")
    assert ("the knee", "joint force") == at("knee")
    assert ("the support at A", "support force") == at("A")
    assert ("the quay", "support force") == at("near end", bone="quay")
