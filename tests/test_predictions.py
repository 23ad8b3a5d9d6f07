"""What a change must do to an answer is told from signs before it is worked: over random problems and random changes
it is never wrong.
"""

from __future__ import annotations

import copy
from collections import Counter
from collections.abc import Mapping
from typing import Any

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from random_problems import Draw, angles, problems

from explain import Fault, NoWay, work
from explain.solve.outcome import Outcome
from explain.series.balance import balance_of
from explain.series.comparison import Comparison, compare, followed, si
from explain.series.effects import effects
from explain.series.joint_force import NAMES
from explain.solve.engine import Broken

KINDS = (
    "force",
    "force",
    "share",
    "mass",
    "weight",
    "at",
    "pull at",
    "moment arm",
    "moment",
    "two supports",
    "segment angle",
)
SCALED = ("mass", "weight", "at", "com", "moment_arm", "force", "moment", "count")
Tables = dict[str, Any]
UNWORKED = (Fault, NoWay, Broken)  # whether a problem can be worked is for other tests to judge

JUG: Tables = {
    "title": "Jug",
    "pivot": {"name": "elbow"},
    "ask": ["biceps"],
    "segment": [{"name": "forearm", "mass": "1.6 kg", "com": "15 cm", "length": "40 cm"}],
    "load": [{"name": "jug", "mass": "3.0 kg", "at": "33 cm"}],
    "muscle": [{"name": "biceps", "at": "4.0 cm", "direction": "up"}],
}
ROPE = {"name": "rope", "at": "20 cm", "direction": "up", "force": "10 N"}


def outcome(tables: Mapping[str, Any]) -> Outcome:
    found = work(tables).outcome
    _ = found.answers
    return found


def changed(change: Mapping[str, Any], base: Mapping[str, Any] = JUG) -> Tables:
    """The base with keys of named things changed ("jug.mass"), None taking a key or a whole thing away, and with
    tables added ("+force").
    """
    tables: Tables = copy.deepcopy(dict(base))
    for key, value in change.items():
        if key.startswith("+"):
            tables.setdefault(key[1:], []).append(value)
            continue
        owner, _, what = key.partition(".")
        kind, table = next(
            (kind, each)
            for kind, listed in tables.items()
            if isinstance(listed, list)
            for each in listed
            if isinstance(each, dict) and each["name"] == owner
        )
        if not what:
            tables[kind].remove(table)
        elif value is None:
            del table[what]
        else:
            table[what] = value
    return tables


def beside(
    old: Mapping[str, Any], new: Mapping[str, Any], touched: frozenset[str] = frozenset(), question: bool = False
) -> Comparison:
    one, other = outcome(old), outcome(new)
    return compare(one, followed(one), other, followed(other), touched, question)


@st.composite
def steps(draw: Draw) -> tuple[Tables, Tables]:
    """A random problem, and the same with one to three things changed."""
    before: Tables = draw(problems(KINDS))
    after = copy.deepcopy(before)
    for _ in range(draw(st.integers(1, 3))):
        _change(draw, after)
    return before, after


def _change(draw: Draw, tables: Tables) -> None:
    listed = [
        (kind, each) for kind in ("segment", "load", "muscle", "force", "couple") for each in tables.get(kind, [])
    ]
    kind, table = draw(st.sampled_from(listed))
    match draw(st.integers(0, 5)):
        case 0 if kind in ("load", "force") and len(tables[kind]) > 1:
            tables[kind].remove(table)
        case 1:
            tables.setdefault("load", []).append(
                {
                    "name": f"bag {len(listed)}",
                    "mass": "1.3 kg",
                    "point": [draw(st.sampled_from(("-7 cm", "0 cm", "12 cm"))), "0 cm"],
                }
            )
        case 2 if str(table.get("direction", "?"))[:1] in "0123456789":
            table["direction"] = f"{draw(angles())} {table['direction'].partition(' ')[2]}"
        case _:
            keys = [key for key in SCALED if str(table.get(key, "?"))[:1] in "0123456789"]
            for key in keys[: draw(st.integers(1, 2))]:
                _scale(draw, table, key)


def _scale(draw: Draw, table: Tables, key: str) -> None:
    if key == "count":
        table[key] += 1
        return
    number, _, unit = str(table[key]).partition(" ")
    table[key] = f"{float(number) * draw(st.sampled_from((0.5, 0.8, 1.25, 2.0))):.6g} {unit}"


TALLY: Counter[tuple[str, str]] = Counter()


@settings(max_examples=100)
@given(steps())
def test_a_prediction_is_never_wrong(step: tuple[Tables, Tables]) -> None:
    try:
        one, other = outcome(step[0]), outcome(step[1])
    except UNWORKED:
        assume(False)
    first, second = followed(one), followed(other)
    found = compare(one, first, other, second, frozenset(), False)
    TALLY[found.prediction.way, found.way] += 1
    scale = max(abs(si(one, first)), abs(si(other, second)), 1e-9)
    now = (si(other, second) - si(one, first)) / scale
    way = found.prediction.way
    if way == "more":
        assert now > -1e-9
    elif way == "less":
        assert now < 1e-9
    elif way == "same":
        assert abs(now) < 1e-9


JOINT: Counter[tuple[str, str]] = Counter()


@settings(max_examples=100)
@given(steps())
def test_a_prediction_of_the_joint_force_is_never_wrong(step: tuple[Tables, Tables]) -> None:
    """Of each part along its earlier sense, and of the size."""
    try:
        one, other = outcome(step[0]), outcome(step[1])
    except UNWORKED:
        assume(False)
    for name in one.answers.keys() & other.answers.keys() & set(NAMES):
        found = compare(one, name, other, name, frozenset(), False)
        was, now = si(one, name), si(other, name)
        largest = max(one.largest_force, other.largest_force, abs(was), abs(now))
        sense = -1 if was < -1e-9 * largest else 1
        JOINT[found.prediction.way, name.replace("reaction.", "")] += 1
        by = (sense * now - abs(was)) / largest if abs(was) > 1e-9 * largest else abs(now) / largest
        match found.prediction.way:
            case "more":
                assert by > -1e-8
            case "less":
                assert by < 1e-8
            case "same":
                assert abs(by) < 1e-8


def test_many_predictions_of_the_joint_force_tell_a_way() -> None:
    """Run after the one before, as for the answers of one balance."""
    if not JOINT:
        test_a_prediction_of_the_joint_force_is_never_wrong()
    for name in ("up", "reaction"):
        told = sum(count for (way, which), count in JOINT.items() if way in ("more", "less", "same") and which == name)
        assert told > 0.3 * sum(count for (_, which), count in JOINT.items() if which == name) > 5, (name, JOINT)


def test_most_predictions_of_random_steps_tell_a_way() -> None:
    """Run after the one before: signs must tell a good part of all steps, or saying nothing would pass as never
    being wrong.
    """
    if not TALLY:
        test_a_prediction_is_never_wrong()
    told = sum(count for (way, _), count in TALLY.items() if way in ("more", "less", "same"))
    assert told > 0.4 * sum(TALLY.values()) > 20


@settings(max_examples=50)
@given(problems(KINDS))
def test_what_is_sought_is_minus_the_held_moments_over_its_own(problem: Tables) -> None:
    """The sum of moments that predictions rest on gives the certified answer itself, where it has one unknown."""
    try:
        found = outcome(problem)
    except UNWORKED:
        assume(False)
    name = followed(found)
    balance = balance_of(found.body, found.working.truth, name)
    assume(balance is not None)
    assert balance is not None
    largest = max(abs(each.per * si(found, name)) + abs(each.fixed) for each in balance.turners.values())
    assert abs(balance.held + balance.per * si(found, name)) <= 1e-8 * largest


# Each way: signs of r x F, common practice, no source; the rules are checks 7 and 9 of our own list of what an expert
# looks at.
@pytest.mark.parametrize(
    ("change", "way", "causes"),
    [
        ({"jug.mass": "4.0 kg"}, "more", {"larger"}),
        ({"jug.mass": "2.0 kg"}, "less", {"smaller"}),
        ({"jug.at": "36 cm"}, "more", {"farther"}),
        ({"jug.at": "20 cm"}, "less", {"nearer"}),
        ({"biceps.at": "4.5 cm"}, "less", {"longer arm"}),
        ({"biceps.at": "3.5 cm"}, "more", {"shorter arm"}),
        ({"biceps.direction": "70 deg from back toward up"}, "more", {"shorter arm"}),
        ({"biceps.count": 2}, "less", {"larger share"}),
        ({"+force": ROPE}, "less", {"new"}),
        ({"+force": ROPE | {"direction": "down"}}, "more", {"new"}),
        ({"+load": {"name": "bag", "mass": "1 kg", "point": ["-5 cm", "0 cm"]}}, "less", {"new"}),
        ({"+couple": {"name": "brace", "moment": "1 N m", "turns": "counter-clockwise"}}, "less", {"new"}),
        ({"+couple": {"name": "brace", "moment": "1 N m", "turns": "clockwise"}}, "more", {"new"}),
        (
            {"+muscle": {"name": "brachialis", "at": "3 cm", "direction": "up", "force": "0.5 * biceps"}},
            "less",
            {"shares"},
        ),
        ({"forearm.mass": None, "forearm.com": None}, "less", {"gone"}),
        ({"jug.at": "-5 cm"}, "less", {"other side"}),
    ],
)
def test_a_change_moves_the_answer_the_way_its_moment_says(
    change: Mapping[str, Any], way: str, causes: set[str]
) -> None:
    found = beside(JUG, changed(change))
    assert (way, way, causes) == (found.prediction.way, found.way, {each.cause for each in found.prediction.effects})


@pytest.mark.parametrize(
    ("change", "senses"),
    [
        ({"jug.mass": "4.0 kg", "jug.at": "20 cm"}, {1, -1}),
        ({"jug.mass": "4.0 kg", "biceps.at": "5.0 cm"}, {1, -1}),
        ({"jug.mass": "4.0 kg", "+force": ROPE}, {1, -1}),
    ],
)
def test_opposite_effects_are_left_to_the_numbers(change: Mapping[str, Any], senses: set[int]) -> None:
    found = beside(JUG, changed(change))
    assert ("open", "opposite", senses) == (
        found.prediction.way,
        found.prediction.ground,
        {each.sense for each in found.prediction.effects},
    )


def test_a_pull_that_would_turn_the_other_way_is_left_to_the_numbers() -> None:
    found = beside(JUG, changed({"biceps.at": "-4.0 cm"}))
    assert ("open", "turned over", "less") == (found.prediction.way, found.prediction.ground, found.way)


SLOPE = {"forearm.direction": "30 deg below right"}


@pytest.mark.parametrize(
    ("base", "change", "touched", "ground"),
    [
        ({}, SLOPE, {"forearm"}, "slope"),
        ({}, {"forearm.direction": "80 deg above right"}, {"forearm"}, "slope"),
        (
            {
                "biceps.direction": "60 deg above left",
                "jug": None,
                "forearm.mass": None,
                "forearm.com": None,
                "+force": ROPE | {"direction": "60 deg below right"},
            },
            {"forearm.direction": "20 deg above right"},
            {"forearm"},
            "slope",
        ),
        (
            {},
            {"jug.at": "66 cm", "forearm.com": "30 cm", "biceps.at": "8.0 cm"},
            {"jug", "forearm", "biceps"},
            "factor",
        ),
        ({}, {"+load": {"name": "pad", "mass": "2 kg", "point": ["0 cm", "0 cm"]}}, {"pad"}, "no arm"),
        ({}, {"+force": ROPE | {"direction": "out"}}, {"rope"}, "no arm"),
        ({}, {"forearm.length": "45 cm"}, {"forearm"}, "not in it"),
    ],
)
def test_an_answer_that_stays_has_the_reason_that_is_true_of_it(
    base: Mapping[str, Any], change: Mapping[str, Any], touched: set[str], ground: str
) -> None:
    old = changed(base)
    found = beside(old, changed(change, old), frozenset(touched))
    assert ("same", ground, "same") == (found.prediction.way, found.prediction.ground, found.way)
    assert found.why


def test_a_slope_with_a_given_moment_arm_is_no_factor_of_every_term() -> None:
    old = changed({"biceps.moment_arm": "4.0 cm", "biceps.turns": "counter-clockwise"})
    found = beside(old, changed(SLOPE, old), frozenset(("forearm",)))
    assert ("less", "effects", "less") == (found.prediction.way, found.prediction.ground, found.way)


def test_a_slope_with_a_pull_across_the_bone_is_no_factor_either() -> None:
    old = changed({"biceps.direction": "70 deg from back toward up"})
    assert ("less", "less") == ((found := beside(old, changed(SLOPE, old))).prediction.way, found.way)


def test_opposite_effects_that_make_up_for_each_other_are_told_after_the_numbers() -> None:
    found = beside(JUG, changed({"jug.mass": "6.0 kg", "jug.at": "16.5 cm"}))
    assert ("open", "opposite", "same") == (found.prediction.way, found.prediction.ground, found.way)
    assert "equally large" in found.why


# The signs are those of forces at rest (any textbook of statics): with parallel forces, moments about the insertion of
# the muscle settle the joint force.
@pytest.mark.parametrize(
    ("ask", "change", "way", "ground", "causes"),
    [
        ("reaction", {"jug.mass": "4.0 kg"}, "more", "joint", {"larger"}),
        ("reaction.up", {"jug.mass": "4.0 kg"}, "more", "joint", {"larger"}),
        ("reaction", {"jug.at": "20 cm"}, "less", "joint", {"nearer"}),
        ("reaction", {"biceps.at": "5.0 cm"}, "less", "pull", {"longer arm"}),
        (
            "reaction.up",
            {"+load": {"name": "pad", "mass": "2 kg", "point": ["0 cm", "0 cm"]}},
            "less",
            "joint",
            {"new"},
        ),
        ("reaction.right", {"biceps.direction": "70 deg from back toward up"}, "more", "pull", {"shorter arm"}),
        ("reaction", {"jug.mass": "4.0 kg", "jug.at": "20 cm"}, "open", "opposite", None),
    ],
)
def test_the_joint_force_moves_as_what_it_holds_against_says(
    ask: str, change: Mapping[str, Any], way: str, ground: str, causes: set[str] | None
) -> None:
    base = JUG | {"ask": [ask]}
    found = beside(base, changed(change, base))
    if causes is None:
        assert found.prediction.way == way
    else:
        assert (way, ground, way, causes) == (
            found.prediction.way,
            found.prediction.ground,
            found.way,
            {each.cause for each in found.prediction.effects},
        )


@pytest.mark.parametrize("ask", ["biceps", "reaction", "reaction.up"])
@pytest.mark.parametrize(("g", "way"), [("3.7 m/s^2", "less"), ("24.8 m/s^2", "more")])
def test_another_g_scales_every_weight_alike(ask: str, g: str, way: str) -> None:
    """A counterweight turns the other way and still nothing is open; with a force that is no weight it may be."""
    base = changed({"+load": {"name": "bag", "mass": "1 kg", "point": ["-5 cm", "0 cm"]}}) | {"ask": [ask]}
    found = beside(base, base | {"course": {"g": g}})
    assert (way, "weights", way) == (found.prediction.way, found.prediction.ground, found.way)
    assert found.prediction.factor == pytest.approx(float(g.split()[0]) / 9.81)
    roped = changed({"+force": ROPE}, base)
    assert beside(roped, roped | {"course": {"g": g}}).prediction.ground != "weights"


def test_that_the_joint_force_stays_has_its_reason() -> None:
    """What has changed is where a muscle is drawn, not its lever arm."""
    old = changed({"biceps.moment_arm": "4.0 cm", "biceps.turns": "counter-clockwise"}) | {"ask": ["reaction"]}
    old["muscle"][0] |= {"direction": "up"}
    new = changed({"biceps.at": "9.0 cm"}, old)
    found = beside(old, new)
    assert ("same", "forces kept", "same") == (found.prediction.way, found.prediction.ground, found.way)
    assert "no force on the body has changed" in found.why.casefold()


def test_only_a_new_question_changes_nothing() -> None:
    found = beside(JUG, JUG | {"ask": ["biceps", "reaction"]}, question=True)
    assert ("same", "question", "same") == (found.prediction.way, found.prediction.ground, found.way)


def test_answers_of_two_kinds_are_not_set_beside_each_other() -> None:
    new = changed({"jug.mass": "?", "biceps.force": "300 N"}) | {"ask": ["jug.mass"]}
    assert ("none", "none") == ((found := beside(JUG, new)).prediction.way, found.way)


@pytest.mark.parametrize(
    ("mass", "said", "share"),
    [
        ("3.3 kg", "grows from 302 N to 326 N: 8.0 % more", 8.0488),
        ("2.0 kg", "falls from 302 N to 221 N: 26.8 % less", -26.829),
        ("3.0001 kg", "changes so little", 0.0027),
    ],
)
def test_a_change_is_told_in_words_and_per_cent(mass: str, said: str, share: float) -> None:
    found = beside(JUG, changed({"jug.mass": mass}))
    assert said in found.says
    assert share == pytest.approx(found.per_cent, rel=1e-2)


def test_an_answer_that_does_not_grow_in_proportion_is_told_to() -> None:
    found = beside(JUG, changed({"jug.mass": "6.0 kg"}))
    assert (
        "2.00 times what it was, but the pull of the biceps only 1.80 times: the other moments have not changed"
        in found.why
    )


def test_an_answer_in_proportion_is_told_to() -> None:
    alone = changed({"forearm.mass": None, "forearm.com": None})
    assert "in proportion: nothing else turns the body" in beside(alone, changed({"jug.mass": "6.0 kg"}, alone)).why


def test_every_effect_has_words() -> None:
    from explain.series.comparison_words import _CAUSES, _SIZES

    one, other = (outcome(changed(each)) for each in ({}, {"jug.mass": "4.0 kg", "+force": ROPE, "biceps.at": "5 cm"}))
    old, new = (balance_of(each.body, each.working.truth, "biceps") for each in (one, other))
    assert old is not None and new is not None
    found = effects(old, new)
    assert all(each.cause in _CAUSES or each.cause in _SIZES[each.kind] for each in found) and len(found) == 3
