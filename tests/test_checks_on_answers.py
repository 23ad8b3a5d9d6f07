"""The checks of an expert: each speaks where its condition holds, is silent outside it, and warns or fails where
something is wrong.
"""

from __future__ import annotations

import re
import tomllib
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any

import pytest
from findings import kept, told
from worked import EXTRA

from explain import work
from explain.solve.outcome import Finding, Outcome
from rules.checks import CHECKS

TESTS = Path(__file__).parent
CONTRACT = TESTS / "contract"
BY_NAME = {each.__name__.rpartition(".")[2]: each for each in CHECKS}
Problem = Mapping[str, Any]

FOREARM = {"name": "forearm", "length": "30 cm", "mass": "1.5 kg", "com": "14 cm"}
JUG = {"name": "jug", "mass": "3 kg", "at": "28 cm"}
BICEPS = {"name": "biceps", "at": "4 cm", "direction": "up"}
BRACHIALIS = {"name": "brachialis", "at": "3 cm", "direction": "up", "force": "0.7 * biceps"}
CORD = {"name": "cord", "at": "20 cm", "direction": "left", "force": "10 N"}
SPRING = {"name": "spring", "moment": "1 N m", "turns": "clockwise"}
JOINT = ("biceps", "reaction")
SILENT = "does not apply"
LEANING = {**BICEPS, "direction": "70 deg from back toward up"}
BEHIND = ["-6 cm", "0 cm"]
SHANK = {"name": "shank", "length": "40 cm", "direction": "10 deg right of down"}


def arm(
    *, segment: Problem = FOREARM, load: Sequence[Problem] = (JUG,), muscle: Sequence[Problem] = (BICEPS,), **more: Any
) -> dict[str, Any]:
    """A forearm that holds a jug, with some of its tables changed."""
    return {
        "title": "A jug at the well",
        "pivot": {"name": "elbow", "bone": "humerus"},
        "segment": [segment],
        "load": load,
        "muscle": muscle,
        **more,
    }


def without(table: Problem, *keys: str) -> dict[str, Any]:
    return {key: value for key, value in table.items() if key not in keys}


def look(name: str, outcome: Outcome) -> list[Finding]:
    found = BY_NAME[name].look(outcome)
    return [found] if isinstance(found, Finding) else list(found)


UNBALANCED = arm(balanced=False, ask=["total.moment"], muscle=[{**BICEPS, "force": "200 N"}])
NO_MUSCLE = arm(
    muscle=[], force=[{"name": "rope", "at": "25 cm", "direction": "up", "force": "?"}], ask=["rope", "reaction"]
)
PUSHING = arm(muscle=[{**BICEPS, "direction": "down"}])
SEESAW = {
    "title": "Nodding",
    "pivot": {"name": "neck"},
    "ask": ["neck extensors", "reaction"],
    "load": [{"name": "head", "weight": "45 N", "point": ["2 cm", "0 cm"]}],
    "muscle": [{"name": "neck extensors", "point": ["-5 cm", "0 cm"], "direction": "down"}],
}
TIPTOE = {
    "title": "On tiptoe",
    "pivot": {"name": "ball of the foot"},
    "ask": ["calf", "reaction"],
    "segment": [{"name": "foot", "length": "20 cm"}],
    "load": [{"name": "body", "weight": "600 N", "at": "12 cm"}],
    "muscle": [{"name": "calf", "at": "16 cm", "direction": "up"}],
}
HANGING_OUT = {
    "title": "A heavy boot",
    "pivot": {"name": "knee"},
    "ask": ["quadriceps", "reaction"],
    "segment": [SHANK],
    "load": [{"name": "boot", "weight": "200 N", "at": "38 cm"}],
    "force": [{**CORD, "at": "37 cm", "direction": "right", "force": "30 N"}],
    "muscle": [{"name": "quadriceps", "at": "10 cm", "direction": "20 deg from back toward right"}],
}
SLOPING = arm(segment={**FOREARM, "direction": "30 deg above right"}, ask=list(JOINT))
STEEP = {
    "title": "Raised",
    "pivot": {"name": "knee"},
    "segment": [{"name": "shank", "direction": "? right of down"}],
    "load": [{"name": "cuff", "weight": "80 N", "at": "10 cm"}],
    "muscle": [{"name": "quadriceps", "moment_arm": "4 cm", "turns": "counter-clockwise", "force": "100 N"}],
}
BY_ARM = arm(muscle=[{"name": "biceps", "at": "4 cm", "moment_arm": "4 cm", "turns": "counter-clockwise"}])


def rough(friction: str, **keys: str) -> Problem:
    """The ladder of EXTRA with a given friction at its foot."""
    plain = EXTRA["the least friction of a ladder"]
    return {**plain, "ask": ["reaction"], "pivot": {**plain["pivot"], "friction": friction, **keys}}


RING: Problem = EXTRA["two ropes at a ring"]
WITH_JOINT, LEANING_JOINT = arm(ask=list(JOINT)), arm(muscle=[LEANING], ask=list(JOINT))


def reach(force: str, **segment: str) -> dict[str, Any]:
    return arm(segment={**FOREARM, **segment}, load=[{**JUG, "at": "?"}], muscle=[{**BICEPS, "force": force}])


def bite(force: str) -> dict[str, Any]:
    return {
        "title": "A hazelnut",
        "pivot": {"name": "jaw", "bone": "skull"},
        "segment": [{"name": "lower jaw"}],
        "force": [{"name": "hazelnut", "at": "8 cm", "direction": "down", "force": force}],
        "muscle": [{"name": "masseter", "at": "3 cm", "direction": "up"}],
    }


DANCER = tomllib.loads((CONTRACT / "dancer.toml").read_text(encoding="utf-8"))
BENDING = {
    "title": "A sack of meal",
    "pivot": {"name": "lower back", "bone": "sacrum"},
    "ask": ["back extensors", "reaction"],
    "segment": [
        {"name": "trunk", "length": "50 cm", "direction": "30 deg above right", "mass": "40 kg", "com": "25 cm"}
    ],
    "load": [{"name": "sack", "mass": "40 kg", "at": "50 cm"}],
    "muscle": [{"name": "back extensors", "at": "20 cm", "direction": "12 deg from back toward up"}],
}


def com(at: str, name: str = "forearm", **more: Any) -> dict[str, Any]:
    return arm(segment={**FOREARM, "name": name, "com": at}, **more)


# check, case, problem, result, a part of what is said
PORTERS = {
    "title": "Two porters, nearly all on the one",
    "pivot": {"name": "first post", "reaction": False},
    "segment": [{"name": "plank", "length": "315 cm", "direction": "right", "mass": "17.9 kg", "com": "50 %"}],
    "force": [
        {"name": "front porter", "at": "20 cm", "direction": "up", "force": "?"},
        {"name": "back porter", "at": "214 cm", "direction": "up", "force": "?"},
    ],
    "load": [{"name": "kelp", "weight": "470 N", "at": "2.4 m"}],
}
TWO_FIGURES = {"figures": 2, "working_figures": 2, "carry": "as shown", "lengths": "ft", "forces": "lb"}
KELP_ON_A_LEG = {
    "title": "Kelp on a leg",
    "pivot": {"name": "knee"},
    "segment": [
        {"name": "shank", "length": "23.3 cm", "direction": "45 deg right of down", "mass": "2.1 kg", "com": "47 %"},
        {"name": "boot", "length": "0.23 m", "direction": "18 deg left of up", "mass": "4.38 kg", "com": "200 mm"},
        {"name": "skate", "length": "43 cm", "direction": "70 deg right of up", "mass": "2 kg", "com": "42.4 %"},
    ],
    "muscle": [{"name": "quadriceps", "moment_arm": "30.42 mm", "turns": "counter-clockwise", "force": "380 N"}],
    "load": [{"name": "kelp", "on": "shank", "at": "19.1 cm", "mass": "?"}],
}
ROUGHLY = {
    **TWO_FIGURES,
    "g": "10 m/s^2",
    "lengths": "cm",
    "forces": "N",
    "order": "divide first",
    "positive": "clockwise",
}
CASES: list[tuple[str, str, Problem, str, str]] = [
    ("rounded_away", "a small difference", {**PORTERS, "course": TWO_FIGURES}, "warns", "porter is −2.66 lb"),
    ("rounded_away", "all figures kept", {**PORTERS, "course": {"forces": "lb"}}, SILENT, ""),
    ("rounded_away", "nothing lost", arm(course=TWO_FIGURES), SILENT, ""),
    ("rounded_away", "the sign lost", {**KELP_ON_A_LEG, "course": ROUGHLY}, "fails", "came to −"),
    ("possible", "below nothing by roundings", {**KELP_ON_A_LEG, "course": ROUGHLY}, SILENT, ""),
    ("friction", "no rough surface", arm(), SILENT, ""),
    ("friction", "enough of it", rough("0.40"), "holds", "it holds, with 70.2 N to spare"),
    ("friction", "too little", rough("0.20"), "fails", "the body slips"),
    ("friction", "on the wrong side", rough("0.40", surface="left"), "fails", "the body lifts off"),
    ("friction", "all of it used", EXTRA["a ladder about to slip"], "holds", "all of it is used"),
    ("pulls", "a pull", arm(), "holds", "a muscle can only pull"),
    ("pulls", "a push", PUSHING, "fails", "which no muscle can do"),
    ("pulls", "no muscle", NO_MUSCLE, SILENT, ""),
    ("pulls", "nothing at rest", UNBALANCED, SILENT, ""),
    (
        "possible",
        "a mass below nothing",
        arm(load=[{**JUG, "mass": "?"}], muscle=[{**BICEPS, "force": "20 N"}]),
        "fails",
        "below nothing",
    ),
    ("possible", "a mass", arm(load=[{**JUG, "mass": "?"}], muscle=[{**BICEPS, "force": "200 N"}]), SILENT, ""),
    (
        "possible",
        "a weight below nothing",
        arm(load=[{**without(JUG, "mass"), "weight": "?"}], muscle=[{**BICEPS, "force": "20 N"}]),
        "fails",
        "below",
    ),
    (
        "possible",
        "an arm below nothing",
        arm(muscle=[{"name": "biceps", "moment_arm": "?", "turns": "clockwise", "force": "200 N"}]),
        "fails",
        "a distance",
    ),
    ("possible", "a centre of mass on the segment", com("?", muscle=[{**BICEPS, "force": "260 N"}]), SILENT, ""),
    (
        "possible",
        "a centre of mass beyond the end",
        com("?", muscle=[{**BICEPS, "force": "400 N"}]),
        "fails",
        "beyond its end",
    ),
    ("possible", "nothing at rest", UNBALANCED, SILENT, ""),
    ("units", "a pull", arm(), "holds", "newtons"),
    ("units", "an angle", STEEP, "holds", "degrees"),
    ("units", "nothing at rest", UNBALANCED, SILENT, ""),
    ("put_back", "a pull", arm(), "holds", "balance"),
    ("put_back", "no muscle", NO_MUSCLE, "holds", "balance"),
    ("put_back", "nothing at rest", UNBALANCED, SILENT, ""),
    ("second_pivot", "the joint known", WITH_JOINT, "holds", "the jug"),
    ("second_pivot", "the joint not asked", arm(), SILENT, ""),
    ("second_pivot", "beside a couple", arm(ask=list(JOINT), couple=[SPRING]), "holds", ""),
    ("second_pivot", "no direction", BY_ARM, SILENT, ""),
    ("force_balance", "the joint known", WITH_JOINT, "holds", "cancel"),
    ("force_balance", "the joint not asked", arm(), SILENT, ""),
    ("force_balance", "nothing at rest", UNBALANCED, SILENT, ""),
    ("size_against_load", "the shorter arm", arm(), "holds", "more than"),
    ("size_against_load", "the longer arm", SEESAW, "holds", "less than"),
    ("size_against_load", "a helping muscle", arm(muscle=[BICEPS, BRACHIALIS]), SILENT, ""),
    ("size_against_load", "another force", arm(force=[CORD]), SILENT, ""),
    ("size_against_load", "a couple", arm(couple=[SPRING]), SILENT, ""),
    ("size_against_load", "an arm between", com("2 cm", muscle=[{**BICEPS, "at": "10 cm"}]), SILENT, ""),
    ("size_against_load", "a weight that helps", com("-2 cm"), SILENT, ""),
    ("size_against_load", "a push", PUSHING, SILENT, ""),
    ("triangle", "an oblique pull", LEANING_JOINT, "holds", "≤"),
    ("triangle", "parallel forces, of which more can be said", WITH_JOINT, SILENT, ""),
    ("triangle", "no muscle", NO_MUSCLE, SILENT, ""),
    ("triangle", "the joint not asked", arm(muscle=[LEANING]), SILENT, ""),
    ("two_parts", "a ring", RING, "holds", "the long side of that right triangle is 34."),
    ("two_parts", "nothing level", {**RING, "force": RING["force"][1:]}, SILENT, ""),
    ("two_parts", "an angle alone", STEEP, SILENT, ""),
    ("parallel", "against each other", WITH_JOINT, "holds", "difference"),
    ("parallel", "all one way", SEESAW, "holds", "sum, 63.0 N"),
    ("parallel", "an oblique pull", LEANING_JOINT, SILENT, ""),
    ("parallel", "the joint not asked", arm(), SILENT, ""),
    ("oblique_part", "an oblique pull", LEANING_JOINT, "holds", "to the left"),
    ("oblique_part", "an upright pull", WITH_JOINT, SILENT, ""),
    ("oblique_part", "the joint not asked", arm(muscle=[LEANING]), SILENT, ""),
    ("oblique_part", "another level force", arm(muscle=[LEANING], force=[CORD], ask=list(JOINT)), SILENT, ""),
    (
        "pressing",
        "nearly along the bone",
        arm(muscle=[{**BICEPS, "direction": "20 deg from back toward up"}], ask=list(JOINT)),
        "holds",
        "pushes back",
    ),
    ("pressing", "a joint that would have to pull", HANGING_OUT, "warns", "only ligaments pull"),
    ("pressing", "a steep pull", LEANING_JOINT, SILENT, ""),
    ("arm_not_longer", "an oblique pull", arm(muscle=[LEANING]), "holds", "the biceps"),
    ("arm_not_longer", "right angles", arm(), SILENT, ""),
    (
        "arm_not_longer",
        "an arm beyond the grip",
        arm(muscle=[{**BY_ARM["muscle"][0], "moment_arm": "6 cm"}]),
        "warns",
        "check the data",
    ),
    ("arm_not_longer", "an arm as long as the grip is far", BY_ARM, SILENT, ""),
    ("limits", "a slope", SLOPING, "holds", "in between"),
    ("limits", "level", arm(), SILENT, ""),
    ("limits", "nothing at rest", UNBALANCED, SILENT, ""),
    (
        "limits",
        "a load that is not on the bone",
        {**SLOPING, "load": [{**without(JUG, "at"), "point": ["20 cm", "3 cm"]}]},
        SILENT,
        "",
    ),
    (  # beside the segment, where it stays as the segment turns: the other weight alone is no end of both
        "limits",
        "a counterweight behind the joint",
        {**SLOPING, "load": [JUG, {"name": "counterweight", "mass": "2 kg", "point": BEHIND, "on": "forearm"}]},
        SILENT,
        "",
    ),
    ("angle_exists", "two roots", STEEP, "holds", "30° to the right of straight up balances too"),
    ("angle_exists", "no angle asked", arm(), SILENT, ""),
    (
        "angle_exists",
        "a range",
        {**STEEP, "segment": [{**STEEP["segment"][0], "range": ["90 deg", "180 deg"]}]},
        "holds",
        "balances too, but lies",
    ),
    ("distance_on_limb", "on the limb", reach("200 N"), "holds", "within the forearm"),
    ("distance_on_limb", "beyond it", reach("400 N"), "warns", "beyond the end"),
    ("distance_on_limb", "on the other side", reach("20 N"), "warns", "negative"),
    ("distance_on_limb", "not asked", arm(), SILENT, ""),
    (
        "on_the_segment",
        "a load beyond the end",
        arm(load=[{**JUG, "at": "31 cm"}]),
        "warns",
        "31.0 cm along the forearm, which is only 30.0 cm",
    ),
    ("on_the_segment", "a load at the end", arm(load=[{**JUG, "at": "30 cm"}]), SILENT, ""),
    (
        "on_the_segment",
        "a grip on the other side",
        arm(muscle=[{**BICEPS, "at": "-2 cm", "direction": "down"}]),
        SILENT,
        "",
    ),
    ("on_the_segment", "no length", arm(segment=without(FOREARM, "length"), load=[{**JUG, "at": "31 cm"}]), SILENT, ""),
    ("on_the_segment", "a distance that is asked", reach("400 N"), SILENT, ""),
    ("on_the_segment", "a centre of mass at the end", com("27 cm"), "warns", "centre of mass"),
    ("on_the_segment", "a centre of mass at the joint", com("5 cm"), "warns", "centre of mass"),
    ("on_the_segment", "the centre of mass of forearm and hand", com("20.4 cm", "forearm and hand"), SILENT, ""),
    ("on_the_segment", "the centre of mass of an oar", com("27 cm", "oar"), SILENT, ""),
    (
        "on_the_segment",
        "a centre of mass from a table",
        com("table", "forearm and hand", person={"mass": "70 kg", "table": "winter"}),
        SILENT,
        "",
    ),
    ("lever", "third class", arm(), "holds", "third class"),
    ("lever", "second class", TIPTOE, "holds", "second class"),
    ("lever", "first class", SEESAW, "holds", "first class"),
    ("lever", "advantage", SEESAW, "holds", "mechanical advantage 2.5 "),
    ("lever", "equal arms", arm(segment={"name": "forearm"}, load=[{**JUG, "at": "4 cm"}]), SILENT, ""),
    ("lever", "two muscles", arm(muscle=[BICEPS, BRACHIALIS]), SILENT, ""),
    ("lever", "a push", PUSHING, SILENT, ""),
    ("lever", "nothing at rest", UNBALANCED, SILENT, ""),
    ("slope", "upright forces on a sloping limb", SLOPING, "holds", "drops out"),
    ("slope", "level", arm(), SILENT, ""),
    ("slope", "an oblique pull", arm(segment=SLOPING["segment"][0], muscle=[LEANING]), SILENT, ""),
    ("plausible", "an arm like anybody's", arm(), "holds", "A moment arm of 4.00 cm is within"),
    ("plausible", "an arm like nobody's", arm(muscle=[{**BICEPS, "at": "14 cm"}]), "warns", "is the unit right"),
    (
        "plausible",
        "a muscle that is not known",
        arm(pivot={"name": "hinge"}, muscle=[{**BICEPS, "name": "rubber band"}]),
        SILENT,
        "",
    ),
    ("plausible", "a pull beyond anyone", arm(muscle=[{**BICEPS, "at": "0.5 cm"}]), "warns", "statically right"),
    (
        "plausible",
        "a segment too heavy",
        arm(segment={**FOREARM, "mass": "9 %"}, person={"mass": "70 kg"}),
        "warns",
        "outside the 1.2 to 2.2 %",
    ),
    (
        "plausible",
        "a stress beyond any model",
        arm(muscle=[{**BICEPS, "area": "0.5 cm^2"}]),
        "warns",
        "Is the area right?",
    ),
    ("plausible", "a moment beyond anyone", arm(load=[{**JUG, "mass": "60 kg"}]), "warns", "80 N·m"),
    ("plausible", "the hip on one leg", DANCER, "holds", "The hip carries"),
    ("plausible", "a bite", bite("300 N"), "holds", "A bite of 300 N"),
    ("plausible", "a bite beyond anyone", bite("2000 N"), "warns", "A bite of 2000 N is larger"),
    ("plausible", "a back that bends", BENDING, "warns", "limits of a lifting guide"),
    ("plausible", "nothing at rest", UNBALANCED, SILENT, ""),
    (
        "plausible",
        "a stress in square feet",
        arm(muscle=[{**BICEPS, "area": "5 cm^2"}], course={"lengths": "ft", "forces": "lb"}),
        "holds",
        "",
    ),
    (
        "pressing",
        "nearly along a bone that slopes",
        arm(
            segment={**FOREARM, "direction": "40 deg above right"},
            muscle=[{**BICEPS, "direction": "20 deg from back toward up"}],
            ask=list(JOINT),
        ),
        "holds",
        "",
    ),
    ("arm_not_longer", "a slope", {**SLOPING, "course": {"lengths": "m"}}, "holds", ""),
    ("distance_on_limb", "no length", {**reach("200 N"), "segment": [without(FOREARM, "length")]}, "holds", ""),
    (
        "oblique_part",
        "to the right",
        arm(muscle=[{**LEANING, "direction": "70 deg above right"}], ask=list(JOINT)),
        "holds",
        "",
    ),
    ("pulls", "two pulls", arm(muscle=[BICEPS, BRACHIALIS]), "holds", ""),
    ("friction", "about to slip down", EXTRA["a bracket about to slip down a wall"], "holds", ""),
    ("slope", "two muscles", {**SLOPING, "muscle": [BICEPS, BRACHIALIS]}, "holds", ""),
]


@pytest.mark.parametrize(
    ("name", "problem", "result", "says"),
    [(each[0], *each[2:]) for each in CASES],
    ids=["-".join(each[:2]) for each in CASES],
)
def test_a_check_speaks_where_it_may_and_only_there(name: str, problem: Problem, result: str, says: str) -> None:
    found = [(each.result, each.says) for each in look(name, work(problem).outcome)]
    assert (True, found) == (any(each == result and says in said for each, said in found), found)
    assert (result == "does not apply") == (found == [(SILENT, "")])


READ = kept()


@pytest.mark.parametrize(
    ("name", "case", "problem"), [each[:3] for each in CASES], ids=["-".join(e[:2]) for e in CASES]
)
def test_what_a_check_finds_is_what_was_read(name: str, case: str, problem: Problem) -> None:
    assert [each.strip() for each in told(look(name, work(problem).outcome))] == READ[f"{name}: {case}"]


ALARMS = {"possible": "fails"}  # what speaks only where something is wrong


def test_every_check_is_tried_in_and_outside_its_condition() -> None:
    tried = {name: {each[3] for each in CASES if each[0] == name} for name in BY_NAME}
    assert {} == {
        name: results
        for name, results in tried.items()
        if SILENT not in results or not {"holds", "warns", ALARMS.get(name, "holds")} & results
    }


@pytest.mark.parametrize(
    ("name", "letter", "by", "result"),
    [
        ("put_back", "biceps.force", 1.02, "fails"),
        ("second_pivot", "reaction.up", 1.02, "fails"),
        ("second_pivot", "biceps.force", 1.02, "fails"),
        ("force_balance", "reaction.up", 1.02, "fails"),
        ("force_balance", "biceps.force", 0.98, "fails"),
        ("triangle", "reaction.up", 5.0, "fails"),
        ("parallel", "reaction.up", 1.02, "fails"),
        ("size_against_load", "biceps.force", 0.1, "fails"),
        ("oblique_part", "reaction.right", 1.02, "fails"),
        ("put_back", "biceps.force", 1.002, "fails"),
        ("second_pivot", "reaction.up", 1.002, "fails"),
        ("force_balance", "biceps.force", 1.00001, "fails"),
        ("put_back", "biceps.force", 1 + 1e-12, "holds"),
        ("second_pivot", "reaction.up", 1 + 1e-12, "holds"),
    ],
)
def test_a_value_that_is_off_is_noticed_where_all_figures_are_carried(
    name: str, letter: str, by: float, result: str
) -> None:
    outcome = work(LEANING_JOINT if name in ("oblique_part", "triangle") else WITH_JOINT).outcome
    outcome.__dict__["values"] = {**outcome.values, letter: outcome.values[letter] * by}
    assert [result] == [each.result for each in look(name, outcome)]


@pytest.mark.parametrize(("by", "result"), ((1.002, "fails"), (1 + 1e-12, "holds")))
def test_a_size_that_does_not_go_with_its_two_parts_is_noticed(by: float, result: str) -> None:
    outcome = work(RING).outcome
    outcome.__dict__["values"] = {**outcome.values, "right rope.force": outcome.values["right rope.force"] * by}
    assert [result] == [each.result for each in look("two_parts", outcome)]


FILES = sorted((*CONTRACT.glob("*.toml"), *(TESTS.parent / "samples").glob("[0-9]*.toml")))


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_a_file_that_can_be_held_fails_no_check_and_every_word_is_in_its_place(path: Path) -> None:
    walkthrough = work(path)
    found = walkthrough.checks
    pushes = any(
        answer.value < 0
        for name, answer in walkthrough.answers.items()
        if name in {each.name for each in walkthrough.outcome.muscles}
    )
    assert (["pulls"] if pushes else []) == [name for name, finding in found if finding.result == "fails"]
    assert [] == [name for name, finding in found if (finding.result == SILENT) != (finding.says == "")]
    assert [] == [
        finding.says
        for _, finding in found
        if finding.says and not re.fullmatch(r"[A-Z0-9\u0391-\u03c9].*[.?]", finding.says)
    ]
    assert [] == [name for name, finding in found if name == "plausible" and finding.says and not finding.source]
