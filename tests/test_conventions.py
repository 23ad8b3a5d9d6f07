"""How a class speaks and counts: every key of a course file changes the page as a teacher expects, and changes no
answer.
"""

from __future__ import annotations

import json
import random
import re
import tomllib
from collections.abc import Mapping, Sequence
from functools import cache
from math import cos, radians, sin
from pathlib import Path
from typing import Any

import pytest

from explain import Fault, Walkthrough, work
from explain.problem.course_file import COURSE_KEYS
from explain.formula.plain import plain

CONTRACT = Path(__file__).with_name("contract")
JUG, ROCK, LEG, TWO, SCALE = "jug-level", "rock-oblique", "leg-raise", "two-flexors", "scale-push"
VALUES: Mapping[str, Sequence[object]] = {
    "word": ("moment", "torque"),
    "letter": ("M", "tau", "T"),
    "positive": ("counter-clockwise", "clockwise"),
    "g": ("9.81 m/s^2", "9.8 m/s^2", "10 m/s^2", "32.2 ft/s^2"),
    "lengths": ("as given", "metres", "cm", "in"),
    "forces": ("N", "lb"),
    "method": ("perpendicular distance", "turning component"),
    "order": ("multiply first", "divide first", "letters first"),
    "figures": (2, 3, 4),
    "working_figures": (5, 6, 8),
    "ties": ("up", "even"),
    "carry": ("unrounded", "as shown"),
    "force_letter": ("F", "P"),
    "distance_letter": ("d", "r"),
    "symbols": ({}, {"reaction": "R"}),
    "balance": ("sum is zero", "two sides"),
    "first": ("products", "moments"),
    "signs": ("in the equation",),
    "resultant": ("size and direction", "parts", ("parts", "size and direction")),
    "axes": (),
    "reaction_on": ("the body cut free", "the other bone"),
    "detail": ("full", "brief"),
    "person": ("we", "you"),
    "level_words": ("horizontal and vertical", "level and upright"),
    "spelling": ("British", "American"),
    "decimal": ("point", "comma"),
    "paper": ("A4", "letter"),
}
# one pound-force and one inch, exact by definition: NIST SP 811, appendix B
SIZES = {"N": 1.0, "lb": 4.4482216152605, "deg": 1.0}
G = {"9.81 m/s^2": 9.81, "9.8 m/s^2": 9.8, "10 m/s^2": 10.0, "32.2 ft/s^2": 32.2 * 0.3048}


def data(name: str, **course: object) -> dict[str, Any]:
    problem = tomllib.loads((CONTRACT / f"{name}.toml").read_text(encoding="utf-8"))
    return {**problem, "course": {**problem.get("course", {}), **course}}


@cache
def _kept(name: str, course: str) -> Walkthrough:
    return work(data(name, **json.loads(course)))


def worked(name: str, **course: object) -> Walkthrough:
    return _kept(name, json.dumps(course))


def lines(name: str, **course: object) -> list[str]:
    return [plain(move.line.equation) for move in worked(name, **course).moves]


def page(name: str, **course: object) -> str:
    return " ".join(worked(name, **course).text(200).split())


def values(walkthrough: Walkthrough) -> dict[str, float]:
    """All answers in newtons."""
    return {name: each.value * SIZES[each.unit] for name, each in walkthrough.answers.items()}


def all_certified(walkthrough: Walkthrough) -> bool:
    return {True} == {walkthrough.outcome.working.checker.vouches_for(move.line) for move in walkthrough.moves}


def refused(problem: dict[str, Any]) -> Fault:
    return pytest.raises(Fault, work, problem).value


def test_no_key_of_a_course_is_left_out_here() -> None:
    assert set(COURSE_KEYS) == set(VALUES)


@pytest.mark.parametrize("name", [ROCK, LEG, TWO, SCALE])
@pytest.mark.parametrize(
    ("key", "value"), [(key, value) for key, each in VALUES.items() for value in each if key != "g"]
)
def test_no_convention_changes_an_answer_or_costs_a_certificate(name: str, key: str, value: object) -> None:
    found = worked(name, **{key: value})
    assert (True, pytest.approx(values(worked(name)), rel=1e-9, abs=1e-9)) == (all_certified(found), values(found))


@pytest.mark.parametrize("name", [LEG, TWO, SCALE])
def test_parts_along_a_bone_are_the_level_and_upright_ones_turned(name: str) -> None:
    turn = radians({LEG: -50, TWO: 0, SCALE: 0}[name])
    level, along = (
        worked(name, axes=each)
        for each in ("level and upright", f"along and across the {data(name)['segment'][0]['name']}")
    )
    right, up = (level.answers[each].value for each in ("reaction.right", "reaction.up"))
    turned = {
        "reaction.along": right * cos(turn) + up * sin(turn),
        "reaction.across": up * cos(turn) - right * sin(turn),
    }
    expected = turned | {key: each for key, each in values(level).items() if "." not in key}
    assert (True, pytest.approx(expected, rel=1e-9, abs=1e-9)) == (all_certified(along), values(along))


@pytest.mark.parametrize("name", [ROCK, LEG, TWO])
@pytest.mark.parametrize("g", VALUES["g"])
def test_forces_that_come_from_masses_alone_grow_with_g(name: str, g: str) -> None:
    grown = {key: value * G[g] / 9.81 for key, value in values(worked(name)).items()}
    assert (True, pytest.approx(grown, rel=1e-9)) == (all_certified(worked(name, g=g)), values(worked(name, g=g)))


@pytest.mark.parametrize("seed", range(40))
def test_any_conventions_go_together(seed: int) -> None:
    choose = random.Random(seed)
    name = choose.choice((ROCK, LEG, TWO, SCALE, JUG))
    keys = choose.sample([key for key in VALUES if key not in ("g", "symbols", "axes")], 6)
    found = worked(
        name,
        working_figures=choose.choice((5, 6)),
        **{key: choose.choice(VALUES[key]) for key in keys if key != "working_figures"},
    )
    assert (True, pytest.approx(values(worked(name)), rel=1e-9, abs=1e-9)) == (all_certified(found), values(found))
    assert [True] * 4 == [len(found.written(form)) > 2000 for form in ("markdown", "html", "text", "json")]


class TestWordsAndLetters:
    @pytest.mark.parametrize(("word", "other", "letter"), [("moment", "torque", "M"), ("torque", "moment", "τ")])
    def test_the_word_is_used_throughout_and_brings_its_letter(self, word: str, other: str, letter: str) -> None:
        said = page(LEG, word=word).replace("moment arm", "arm").replace("Moment arm", "arm")
        assert [True, False, True] == [
            f"Take {word}s".lower() in said.lower(),
            other in said.lower(),
            f"Σ{letter} = 0" in lines(LEG, word=word),
        ]

    @pytest.mark.parametrize(
        ("course", "line"),
        [
            ({"letter": "M"}, "ΣM = 0"),
            ({"letter": "tau"}, "Στ = 0"),
            ({"letter": "T"}, "ΣT = 0"),
            ({"force_letter": "P"}, "P_B d_B − W_F d_F − W_J d_J = 0"),
            ({"distance_letter": "r"}, "F_B r_B − W_F r_F − W_J r_J = 0"),
            ({"symbols": {"biceps": "B", "forearm and hand": "G_1"}}, "B d_B − G_1 d_F − W_J d_J = 0"),
        ],
    )
    def test_letters_are_those_of_the_class(self, course: dict[str, Any], line: str) -> None:
        assert (True, values(worked(JUG))) == (line in lines(JUG, **course), values(worked(JUG, **course)))

    def test_a_symbol_for_the_joint_force(self) -> None:
        found = lines(ROCK, symbols={"reaction": "R"})
        assert (True, False) == ("R² = R_x² + R_y²" in found, any("J" in each for each in found))

    @pytest.mark.parametrize(
        "symbols", [{"biceps": "W_J"}, {"biceps": "X", "jug": "X"}, {"biceps": "d_B"}, {"jug": "g"}]
    )
    def test_a_letter_for_two_quantities_is_refused_and_named(self, symbols: dict[str, str]) -> None:
        fault = refused(data(JUG, symbols=symbols))
        assert ("course.symbols", True) == (fault.key, next(iter(symbols.values())) in fault.found)

    @pytest.mark.parametrize(("person", "others"), [("we", ()), ("you", ("we", "us", "our"))])
    def test_who_speaks(self, person: str, others: Sequence[str]) -> None:
        said = page(ROCK, person=person)
        assert ("We take torques" in said, []) == (
            person == "we",
            [each for each in others if re.search(rf"(?i)\b{each}\b", said)],
        )

    def test_brief_says_the_same_lines_with_fewer_words(self) -> None:
        assert lines(LEG) == lines(LEG, detail="brief")
        assert len(page(LEG, detail="brief")) < 0.8 * len(page(LEG))
        assert [True, False] == ["passes through it" in page(LEG, detail=each) for each in ("full", "brief")]


class TestTurningSense:
    @pytest.mark.parametrize(
        ("sense", "balance", "said"),
        [
            (
                "counter-clockwise",
                "F_B d_B − W_F d_F − W_J d_J = 0",
                "Counter-clockwise counts as positive: the biceps turns counter-clockwise (+)",
            ),
            (
                "clockwise",
                "−F_B d_B + W_F d_F + W_J d_J = 0",
                "Clockwise counts as positive: the biceps turns counter-clockwise (−)",
            ),
            ("up", "F_B d_B − W_F d_F − W_J d_J = 0", "Up counts as positive"),
        ],
    )
    def test_the_signs_follow_the_sense(self, sense: str, balance: str, said: str) -> None:
        assert (True, True) == (balance in lines(JUG, positive=sense), said in page(JUG, positive=sense))
        assert (True, values(worked(JUG))) == (
            all_certified(worked(JUG, positive=sense)),
            values(worked(JUG, positive=sense)),
        )

    def test_up_takes_the_sign_of_the_force_behind_the_pivot_too(self) -> None:
        (behind := data(JUG, positive="up"))["segment"][0]["direction"] = "left"
        assert "F_B d_B − W_F d_F − W_J d_J = 0" in [plain(move.line.equation) for move in work(behind).moves]

    @pytest.mark.parametrize(
        ("name", "why"),
        [(SCALE, "both sides"), (LEG, "quadriceps"), ("two-links", "shoulder flexors"), ("shopping-us", "tibialis")],
    )
    def test_up_is_refused_with_its_reason_where_it_does_not_hold(self, name: str, why: str) -> None:
        fault = refused(data(name, positive="up"))
        assert ("course.positive", True, True) == (fault.key, fault.found.startswith('"up"'), why in fault.found)
        assert (True, True) == (
            "one side of the pivot" in fault.expected,
            'positive = "counter-clockwise"' in fault.example,
        )

    def test_up_is_refused_beside_a_couple(self) -> None:
        couple = {"name": "spring", "moment": "1 N m", "turns": "clockwise"}
        assert "the couple spring" in refused({**data(JUG, positive="up"), "couple": [couple]}).found

    @pytest.mark.parametrize(
        ("name", "more"),
        [
            (JUG, {"load": {"name": "ring", "mass": "1 kg", "at": "0 cm"}}),
            (ROCK, {}),
            (JUG, {"force": {"name": "rope", "at": "20 cm", "direction": "right", "force": "10 N"}}),
        ],
    )
    def test_up_holds_where_each_turning_part_is_upright_and_on_one_side(self, name: str, more: dict[str, Any]) -> None:
        problem = data(name, positive="up")
        for table, each in more.items():
            problem[table] = [*problem.get(table, []), each]
        assert pytest.approx(values(worked(name))["biceps"]) == values(work(problem))["biceps"]


class TestUnits:
    @pytest.mark.parametrize("g", VALUES["g"])
    def test_g_is_the_one_of_the_class(self, g: str) -> None:
        assert f"W_J = 3.0 kg × {g.replace('^2', '²')}" in lines(JUG, g=g)

    @pytest.mark.parametrize(
        ("unit", "factor", "arm"),
        [
            ("metres", "(33 cm)(1 m / 100 cm)", "0.33 m"),
            ("in", "(33 cm)(1 in / 2.54 cm)", "12.992 in"),
            ("mm", "(33 cm)(10 mm / 1 cm)", "330 mm"),
        ],
    )
    def test_lengths_are_converted_with_the_factor_shown(self, unit: str, factor: str, arm: str) -> None:
        found = lines(JUG, lengths=unit)
        assert [True, True] == [f"d_J = {each}" in found for each in (factor, arm)]
        assert [] == [each for each in found if "cm" in each and not each.startswith("d_")]

    @pytest.mark.parametrize("unit", ["as given", "cm"])
    def test_lengths_that_match_are_kept_and_cancel(self, unit: str) -> None:
        kinds = {move.goal.kind for move in worked(JUG, lengths=unit).moves}
        assert (True, False) == (
            "the centimetres cancel and newtons remain" in page(JUG, lengths=unit),
            "convert" in kinds,
        )

    @pytest.mark.parametrize(("name", "letter"), [(SCALE, "F_S"), (JUG, "W_J")])
    def test_pounds_are_converted_with_the_factor_shown(self, name: str, letter: str) -> None:
        shown = [each for each in lines(name, forces="lb") if letter in each and "(1 lb / 4.4482 N)" in each]
        assert (1, {"lb"}) == (len(shown), {each.unit for each in worked(name, forces="lb").answers.values()})


class TestWaysOfWorking:
    @pytest.mark.parametrize(
        ("method", "geometry", "balance"),
        [
            ("perpendicular distance", "d_S⊥ = d_S sin 40°", "F_Q d_Q⊥ − W_S d_S⊥ − W_C d_C⊥ = 0"),
            ("turning component", "W_S⊥ = W_S sin 40°", "F_Q d_Q sin 22° − W_S⊥ d_S − W_C⊥ d_C = 0"),
        ],
    )
    def test_the_method_shapes_the_balance(self, method: str, geometry: str, balance: str) -> None:
        assert [True, True] == [each in lines(LEG, method=method) for each in (geometry, balance)]

    @pytest.mark.parametrize(
        ("order", "moves"),
        [
            ("multiply first", ["put", "multiply_out", "add", "carry", "divide"]),
            ("divide first", ["put", "carry", "divide", "multiply_out", "add"]),
            ("letters first", ["carry", "divide", "put", "multiply_out", "add"]),
        ],
    )
    def test_the_order_of_the_algebra(self, order: str, moves: list[str]) -> None:
        found = [
            move.rule.__name__.rpartition(".")[2]
            for move in worked(JUG, order=order).moves
            if move.goal.kind == "moments"
        ]
        assert ["moments", *moves, "work_out", "round_answer"] == found
        assert ("F_B = (W_F d_F + W_J d_J) / d_B" in lines(JUG, order=order)) == (order == "letters first")

    @pytest.mark.parametrize(("figures", "shown"), [(1, "300 N"), (2, "300 N"), (3, "302 N"), (4, "301.7 N")])
    def test_figures_of_the_answer(self, figures: int, shown: str) -> None:
        said = f"The biceps pulls with {shown}, straight up."
        assert (shown, True) == (
            worked(JUG, figures=figures).answers["biceps"].shown,
            said in page(JUG, figures=figures),
        )

    @pytest.mark.parametrize("name", [ROCK, LEG, TWO, SCALE])
    def test_no_answer_shows_more_figures_than_the_class_wants(self, name: str) -> None:
        many = [
            each.shown
            for each in worked(name).answers.values()
            if len(re.sub(r"[^0-9]|^-?[0.]+", "", each.shown.split()[0]).rstrip("0")) > 3
        ]
        assert [] == many

    @pytest.mark.parametrize(
        ("figures", "line"),
        [(4, "F_B = 301.7 N"), (5, "F_B = 301.66 N"), (6, "F_B = 301.658 N"), (8, "F_B = 301.6575 N")],
    )
    def test_figures_of_the_working(self, figures: int, line: str) -> None:
        assert line in lines(JUG, working_figures=figures)

    @pytest.mark.parametrize(
        ("ties", "force", "shown"),
        [("up", "2.5 N", "3 N"), ("even", "2.5 N", "2 N"), ("up", "3.5 N", "4 N"), ("even", "3.5 N", "4 N")],
    )
    def test_a_number_half_way_is_rounded_as_the_class_does(self, ties: str, force: str, shown: str) -> None:
        tie = {
            "title": "Half way",
            "pivot": {"name": "elbow"},
            "segment": [{"name": "forearm"}],
            "course": {"ties": ties, "figures": 1},
            "load": [{"name": "cup", "weight": force, "at": "4 cm"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "up"}],
        }
        assert (shown, float(force[:3])) == ((found := work(tie).answers["biceps"]).shown, found.value)

    @pytest.mark.parametrize(("carry", "shown"), [("unrounded", "302 N"), ("as shown", "303 N")])
    def test_what_is_carried_changes_what_is_shown_on_the_whole_page(self, carry: str, shown: str) -> None:
        course = {"carry": carry, "working_figures": 3}
        assert (shown, pytest.approx(301.6575, rel=1e-12)) == (
            (found := worked(JUG, **course).answers["biceps"]).shown,
            found.value,
        )
        assert {shown} == set(re.findall(r"30[23] N\b(?!·)", page(JUG, **course)))


class TestTheJoint:
    @pytest.mark.parametrize(
        ("resultant", "size", "parts"),
        [("size and direction", True, False), ("parts", False, True), (("parts", "size and direction"), True, True)],
    )
    def test_the_joint_force_as_size_or_parts_or_both(self, resultant: object, size: bool, parts: bool) -> None:
        found, answer = (
            lines(LEG, resultant=resultant),
            page(LEG, resultant=resultant).partition("Discussion")[0].rpartition("┌")[2],
        )
        assert (size, parts) == ("J ≈ 725 N" in found, "J_along ≈ 683 N" in found)
        assert (True, size, parts) == ("femur" in answer, "725 N" in answer, "683 N along the shank" in answer)

    def test_an_answer_is_boxed_only_after_the_line_that_finds_it(self) -> None:
        assert page(TWO).index("F_Br = k_Br F_Bi = 0.70 × 281.54 N") < page(TWO).index(
            "The brachialis pulls with 197 N"
        )

    def test_axes_along_a_bone(self) -> None:
        along, level = (lines(LEG, axes=each) for each in ("along and across the shank", "level and upright"))
        assert (True, True) == (
            "J_along − F_Q cos 22° + W_S cos 40° + W_C cos 40° = 0" in along,
            "ΣF_across = 0" in along,
        )
        assert (True, False) == ("ΣF_x = 0" in level, any("along" in each for each in level))

    def test_the_other_bone_gets_the_reverse_and_is_what_is_asked_for(self) -> None:
        said = page(LEG, reaction_on="the other bone")
        assert worked(LEG).answers["reaction"] == worked(LEG, reaction_on="the other bone").answers["reaction"]
        reverse = "shank pushes on the femur with 725 N, 69.5° above the horizontal, to the left"
        assert (True, True) == ("the shank push on the femur" in said, reverse in said)
        assert "on the femur" in re.findall(r"Find F_Q.*?\.", said)[0]


FIRMLY = {  # what must come out for the milk jug, in this order
    "two sides": (
        {"balance": "two sides"},
        ("F_B d_B = W_F d_F + W_J d_J", "F_B (4.0 cm) = (15.696 N)(15 cm) + (29.43 N)(33 cm)"),
    ),
    "two sides, clockwise positive: the unknown still comes first": (
        {"balance": "two sides", "positive": "clockwise"},
        ("F_B d_B = W_F d_F + W_J d_J", "F_B (4.0 cm) = (15.696 N)(15 cm) + (29.43 N)(33 cm)"),
    ),
    "few figures, and an inch is 2.54 cm all the same": (
        {"lengths": "in", "figures": 2, "working_figures": 2},
        ("d_J = (33 cm)(1 in / 2.54 cm)", "d_J = 13 in"),
    ),
    "moments first": ({"first": "moments"}, ("M_B + M_F + M_J = 0", "F_B d_B − W_F d_F − W_J d_J = 0")),
    "signs with the numbers": (
        {"signs": "with the numbers"},
        ("M_B + M_F + M_J = 0", "M_F = −(15.696 N)(15 cm)", "M_J = −(29.43 N)(33 cm)"),
    ),
    "up is positive, and each letter has its sign": (
        {"positive": "up", "signs": "with the numbers"},
        (
            "W_F = −m_F g",
            "F_B d_B + W_F d_F + W_J d_J = 0",
            "F_B (4.0 cm) + (−15.696 N)(15 cm) + (−29.43 N)(33 cm) = 0",
        ),
    ),
    "moments on two sides": (
        {"balance": "two sides", "first": "moments"},
        ("M_B = M_F + M_J", "F_B d_B = W_F d_F + W_J d_J"),
    ),
}
ANY_WAY = {name: course for name, (course, _) in FIRMLY.items() if course.get("positive") != "up"}


@pytest.mark.parametrize(("course", "lines"), FIRMLY.values(), ids=FIRMLY)
def test_a_class_finds_its_own_lines_in_their_order(course: dict[str, str], lines: tuple[str, ...]) -> None:
    told = [line["equation"] for line in json.loads(work(data(JUG, **course)).json())["lines"]]
    places = [told.index(line) for line in lines]
    assert places == sorted(places)


@pytest.mark.parametrize("course", ANY_WAY.values(), ids=ANY_WAY)
@pytest.mark.parametrize("name", (JUG, ROCK, LEG, TWO, SCALE))
def test_no_answer_depends_on_where_signs_and_sides_are_written(name: str, course: dict[str, str]) -> None:
    plainly, here = work(data(name)), work(data(name, **course))
    assert {key: each.value for key, each in here.answers.items()} == pytest.approx(
        {key: each.value for key, each in plainly.answers.items()}
    )
    if course.get("balance") == "two sides":
        balances = [
            move.line.equation for move in here.outcome.working.moves if type(move.line.claim).__name__ == "Balance"
        ]
        assert balances and all(each.sign == 1 for line in balances for each in (*line.left, *line.right))
        assert "add to zero" not in here.markdown() and "is positive" not in here.markdown()


@pytest.mark.parametrize(
    ("course", "key"),
    (
        ({"balance": "two sides", "signs": "with the numbers"}, "course.signs"),
        ({"balance": "both"}, "course.balance"),
    ),
)
def test_what_does_not_go_together_is_refused_with_what_would(course: dict[str, str], key: str) -> None:
    with pytest.raises(Fault) as refusal:
        work(data(JUG, **course))
    assert refusal.value.key == key and refusal.value.example


def test_the_letter_of_a_moment_that_is_a_size_is_not_asked_with_a_sign() -> None:
    with pytest.raises(Fault, match="sizes on two sides"):
        work({**data(JUG, balance="two sides", first="moments"), "ask": ["biceps", "jug.moment"]})


@pytest.mark.parametrize(
    ("given", "lengths", "figures", "line"),
    (
        ("0.33 m", "cm", 5, "d_J = (0.33 m)(100 cm / 1 m)"),
        ("33 cm", "metres", 5, "d_J = (33 cm)(1 m / 100 cm)"),
        ("1.5 ft", "in", 5, "d_J = (1.5 ft)(12 in / 1 ft)"),
        ("1.5 ft", "metres", 5, "d_J = (1.5 ft)(1 m / 3.2808 ft)"),
        ("1.5 ft", "metres", 2, "d_J = (1.5 ft)(1 m / 3.28 ft)"),  # a foot is 0.3048 m: NIST SP 811, appendix B
        ("13 in", "cm", 2, "d_J = (13 in)(2.54 cm / 1 in)"),
    ),
)
def test_a_factor_has_one_of_the_larger_unit_and_three_figures_at_least(
    given: str, lengths: str, figures: int, line: str
) -> None:
    problem = data(JUG, lengths=lengths, figures=2, working_figures=figures)
    problem["load"] = [{**problem["load"][0], "at": given}]
    assert line in [plain(move.line.equation) for move in work(problem).moves]
