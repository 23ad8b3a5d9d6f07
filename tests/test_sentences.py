"""What a page says agrees with what it prints: the function with the angle as stated, sums as printed, the words
with the answer.
"""

from __future__ import annotations

import re
from decimal import Decimal
from pathlib import Path

import pytest

from explain import work
from explain.api import Walkthrough
from explain.solve.outcome import Finding
from explain.problem.model import UNKNOWN, Direction
from explain.walkthrough.closing_sentence import in_a_sentence
from explain.wording.direction_words import turned_words

CASES = Path(__file__).parent / "cases" / "sentences"


def worked(name: str, **course: object) -> Walkthrough:
    return work(CASES / f"{name}.toml", course=course)


def worked_contract(name: str) -> Walkthrough:
    return work(CASES.parent.parent / "contract" / f"{name}.toml")


def lines_of(page: Walkthrough) -> list[str]:
    from explain.formula.plain import plain

    return [plain(move.line.equation) for move in page.moves]


# ---------------------------------------------------------------------- at exactly 45 degrees
def test_an_angle_of_45_degrees_from_the_level_has_a_cosine_along_the_level_and_a_sine_upwards() -> None:
    written = lines_of(worked("jug-at-45"))
    assert (
        "d_B⊥ = d_B sin 45°" in written,
        "J_x − F_B cos 45° = 0" in written,
        "J_y + F_B sin 45° − W_F − W_J = 0" in written,
    ) == (True, True, True)


def test_a_bone_at_45_degrees_from_the_level_has_a_cosine_in_the_arm_of_a_weight() -> None:
    page = worked("knee-at-45")
    assert "d_A⊥ = d_A cos 45°" in lines_of(page)
    assert "here with the cosine of the angle from the horizontal" in page.text(10000)


def test_a_bone_at_45_degrees_from_the_upright_has_a_sine_in_the_arm_of_a_weight() -> None:
    text = (CASES / "knee-at-45.toml").read_text(encoding="utf-8").replace("45 deg below right", "45 deg right of down")
    page = work(text)
    assert "d_A⊥ = d_A sin 45°" in lines_of(page)
    assert "here with the sine of the angle from the vertical" in page.text(10000)


def test_a_pull_at_45_degrees_to_a_bone_at_45_degrees_keeps_the_angle_of_the_pull() -> None:
    text = (CASES / "knee-at-45.toml").read_text(encoding="utf-8").replace("20 deg from back", "45 deg from back")
    assert "d_Q⊥ = d_Q sin 45°" in lines_of(work(text))


# ---------------------------------------------------------------------- numbers side by side
def of_check(page: Walkthrough, name: str) -> Finding:
    (found,) = [finding for key, finding in page.checks if key == name]
    return found


def terms_of_a_sum(said: str) -> list[Decimal]:
    """The signed numbers of a second pivot, the sum behind them as the last one."""
    listed = said.partition("positive: ")[2].replace("\u202f", "").replace("−", "-")
    return [Decimal(each) for each in re.findall(r"(?<!\S)[-+]?\d+(?:\.\d+)?(?=[ ,.])", listed)]


COURSES = [
    {"figures": figures, **more}
    for figures in (1, 2, 3, 5)
    for more in (
        {},
        {"carry": "as shown", "working_figures": figures},
        {"carry": "as shown", "working_figures": figures + 1},
        {"lengths": "metres"},
        {"method": "turning component"},
        {"ties": "even"},
        {"balance": "two sides"},
        {"first": "moments"},
        {"balance": "two sides", "first": "moments", "decimal": "comma"},
        {"balance": "sum is zero", "signs": "with the numbers", "spelling": "American"},
        {"level_words": "level and upright", "decimal": "comma"},
    )
]
CONTRACT = sorted((CASES.parent.parent / "contract").glob("*.toml"))
SAMPLES = sorted((CASES.parents[2] / "samples").glob("[0-4]*.toml"))


@pytest.mark.parametrize("path", [*CONTRACT, *SAMPLES], ids=lambda path: path.stem)
def test_the_terms_about_a_second_pivot_add_as_printed_to_the_sum_that_is_told(path: Path) -> None:
    told = [
        finding.says
        for course in COURSES[::3]
        if not (course.get("balance") == "two sides" and path.stem == "03-tiller")  # it asks moments with their signs
        for name, finding in work(path, course=course).checks
        if name == "second_pivot" and finding.says
    ]
    sums = [terms_of_a_sum(each) for each in told]
    assert [] == [each for each, terms in zip(told, sums, strict=True) if sum(terms[:-1]) != terms[-1]]
    assert [] == [
        each
        for each, terms in zip(told, sums, strict=True)
        if len({term.as_tuple().exponent for term in terms[:-1]}) != 1
    ]


@pytest.mark.parametrize("course", COURSES, ids=str)
def test_no_right_answer_fails_a_check_however_few_figures_are_carried(course: dict[str, object]) -> None:
    failing = [
        (path.stem, finding.says)
        for path in CONTRACT
        for _, finding in work(path, course=course).checks
        if finding.result == "fails"
    ]
    assert [] == failing


@pytest.mark.parametrize("course", COURSES, ids=str)
def test_a_triangle_closes_as_printed(course: dict[str, object]) -> None:
    told = [
        finding.says
        for path in (*CONTRACT, CASES / "knee-at-45.toml")
        for name, finding in work(path, course=course).checks
        if name == "triangle"
    ]
    for said in filter(None, told):
        long, short, third = (Decimal(each) for each in re.findall(r"[\d.]+(?= N| lb)", said.replace("\u202f", ""))[:3])
        assert long - short <= third <= long + short, said


@pytest.mark.parametrize(
    ("name", "letter"),
    [
        ("second_pivot", "reaction.up"),
        ("put_back", "biceps.force"),
        ("force_balance", "biceps.force"),
        ("triangle", "reaction.up"),
    ],
)
def test_a_check_can_fail_where_three_figures_are_carried_as_shown(name: str, letter: str) -> None:
    page = work(
        CONTRACT[[path.stem for path in CONTRACT].index("rock-oblique")],
        course={"carry": "as shown", "working_figures": 4},
    )
    page.outcome.__dict__["values"] = {**page.outcome.values, letter: page.outcome.values[letter] * 1.5}
    assert of_check(page, name).result == "fails"


@pytest.mark.parametrize("course", [{"first": "moments"}, {"signs": "with the numbers"}, {"balance": "two sides"}])
def test_an_answer_is_boxed_behind_the_line_that_reaches_it(course: dict[str, str]) -> None:
    """Not behind the balance in letters of moments, which has the unknown in it."""
    text = work(CASES.parent.parent / "contract" / "jug-level.toml", course=course).text(10000)
    before, _, behind = text.partition("The biceps pulls with 302 N")
    assert "≈ 302 N" in before and "≈ 302 N" not in behind


SIGNED = {"positive": "up", "signs": "with the numbers"}
UPRIGHT_ONES = ("beam", "jug-level")  # where each force is vertical, and all that turns is on one side


@pytest.mark.parametrize("name", UPRIGHT_ONES)
@pytest.mark.parametrize("more", [{}, {"first": "moments"}, {"decimal": "comma", "level_words": "level and upright"}])
def test_where_letters_have_signs_the_page_says_the_same_of_the_answers(name: str, more: dict[str, str]) -> None:
    """All but the balances, and the sentence on each sign."""
    plain, signed = (
        work(CASES.parent.parent / "contract" / f"{name}.toml", course=each) for each in ({}, SIGNED | more)
    )
    assert in_a_sentence(plain.outcome) == in_a_sentence(signed.outcome)
    assert [(key, each.result) for key, each in plain.checks] == [(key, each.result) for key, each in signed.checks]
    text = signed.text(10000)
    assert "The plus sign says that" in text and "acts upwards." in text


# ---------------------------------------------------------------------- nothing to pull, nothing left over
def test_a_pull_of_nothing_is_not_called_positive() -> None:
    page = worked("zero-pull")
    assert of_check(page, "pulls").says == "No pull of the biceps is needed here: the other forces balance without it."
    assert "No pull of the biceps is needed: 0 N." in page.text(10000)


def test_an_answer_that_is_nothing_is_shown_as_nothing() -> None:
    shown = {
        (course["figures"], path.stem, name): answer.shown
        for course in COURSES[1::4]
        for path in CONTRACT
        for name, answer in work(path, course={**course, "forces": "lb"}).answers.items()
        if answer.value == 0
    }
    assert shown and {each.partition(" ")[0] for each in shown.values()} == {"0"}


# ---------------------------------------------------------------------- angles that are sought
def test_a_pull_whose_angle_is_sought_turns_the_way_it_does_at_the_answer() -> None:
    page = worked("triceps-angle")
    text = page.text(10000)
    assert page.outcome.moments["triceps"] > 0
    assert "decides which way the triceps turns, and at the one found below it is counter-clockwise" in text
    assert "the triceps turns counter-clockwise" not in text and "between straight down and" not in text


def test_a_load_whose_place_is_sought_turns_the_way_it_does_where_it_is_found() -> None:
    """10 N at 30 cm and 15 N on the other side, at 20 cm."""
    page = work(
        {
            "title": "Where to hang the cup",
            "pivot": {"name": "hinge"},
            "segment": [{"name": "beam"}],
            "load": [{"name": "jar", "weight": "10 N", "at": "30 cm"}, {"name": "cup", "weight": "15 N", "at": "?"}],
        }
    )
    assert page.answers["cup.at"].value == pytest.approx(-20.0)
    assert (
        "the jar turns clockwise (−); the place that is sought decides which way the cup turns, "
        "and at the one found below it is counter-clockwise."
    ) in page.text(10000)


def test_an_angle_is_told_once_and_the_other_one_as_a_direction() -> None:
    text = worked("15-angle").text(10000)
    assert "The lower leg is at rest 32.2° below the horizontal, to the right." in text
    assert "32.2° above the horizontal, to the right, balances too" in text
    assert "327.8" not in text


@pytest.mark.parametrize(
    ("start", "toward", "turn", "words"),
    [
        ("right", "down", 32.2, "32.2° below the horizontal, to the right"),
        ("right", "down", 327.8, "32.2° above the horizontal, to the right"),
        ("right", "down", 108, "72° below the horizontal, to the left"),
        ("down", "right", 51.7, "51.7° to the right of straight down"),
        ("down", "right", 128.3, "51.7° to the right of straight up"),
        ("down", "right", -20, "20° to the left of straight down"),
        ("left", "up", 90, "straight up"),
        ("up", "left", 180, "straight down"),
        ("back", "up", 70, "70° from the line back along the bone, toward straight up"),
        ("back", "up", 290, "70° from the line back along the bone, toward straight down"),
    ],
)
def test_a_turn_is_said_as_a_direction(start: str, toward: str, turn: float, words: str) -> None:
    assert turned_words(Direction(start, UNKNOWN, toward), turn) == words


# ---------------------------------------------------------------------- what is held
def test_a_tendon_that_resists_a_couple_holds_out_against_it_and_no_ratio_is_made_of_unlike_things() -> None:
    assert in_a_sentence(worked("13-dynamometer").outcome) == (
        "to hold out against the lower leg and the dynamometer, 16\u202f900 N·cm together, the patellar tendon pulls "
        "with 4030 N."
    )


def test_several_muscles_hold_a_load_together() -> None:
    said = in_a_sentence(worked_contract("two-flexors").outcome)
    assert said == (
        "to hold the forearm and hand and the toolbox, 67.7 N together, the biceps pulls with 282 N and the brachialis "
        "with 197 N, and the elbow carries 411 N."
    )


def test_where_no_muscle_pulls_the_supports_hold_the_loads() -> None:
    said = in_a_sentence(worked_contract("beam").outcome)
    assert said == (
        "to hold the plank and the painter, 746 N together, the far trestle pushes with 303 N, and the near trestle "
        "carries 442 N."
    )


SEESAW = {
    "title": "A seesaw",
    "pivot": {"name": "axle"},
    "segment": [{"name": "seesaw", "length": "4.0 m"}],
    "load": [{"name": "Lena", "mass": "24 kg", "at": "-1.8 m"}, {"name": "Tom", "mass": "36 kg", "at": "?"}],
}


def test_a_place_on_a_seesaw_is_told_with_its_side() -> None:
    text = work(SEESAW).text(10000)
    assert "Tom is 1.20 m from the axle, to the right." in text
    assert "The seesaw is at rest with Tom 1.20 m from the axle, to the right." in text
    assert "The weight of Lena pulls straight down, 1.8 m to the left of the axle." in text


def test_a_couple_that_is_sought_holds_the_weights() -> None:
    muscles = [{"name": "flexors", "moment": "?", "turns": "counter-clockwise"}]
    page = work({**{key: IMPOSSIBLE[key] for key in ("title", "pivot", "segment")}, "couple": muscles})
    assert in_a_sentence(page.outcome) == "to hold the forearm, 15.7 N, the flexors turn with 235 N·cm."


def test_a_bite_follows_from_the_muscles_that_are_given() -> None:
    assert in_a_sentence(work(SAMPLES[17]).outcome) == (
        "with each masseter pulling 150 N and each temporalis pulling 95.0 N, the force of the toffee is 233 N, and "
        "the jaw joint carries 258 N."
    )


@pytest.mark.parametrize(
    ("area", "note"),
    [
        (
            "4.6 cm^2",
            "A stress of 14.6 lb/cm² in the biceps is within what is reported for human muscle, up to 16 lb/cm² ",
        ),
        (
            "0.7 in^2",
            "A stress of 96.2 lb/in² in the biceps is within what is reported for human muscle, up to 106 lb/in² ",
        ),
    ],
)
def test_a_stress_is_compared_in_the_units_of_its_answer(area: str, note: str) -> None:
    """73 N/cm² are 16.4 lb/cm² and 105.9 lb/in²: 1 lb is 4.448 N, 1 in 2.54 cm exactly.

    The pull is (6.56 lb · 33 cm + 1.6 kg g · 15 cm) / 4.0 cm = 67.35 lb.
    """
    page = work(
        {
            **IMPOSSIBLE,
            "load": [{"name": "jug", "weight": "6.56 lb", "at": "33 cm"}],
            "course": {"forces": "lb"},
            "muscle": [{"name": "biceps", "at": "4.0 cm", "direction": "up", "area": area}],
            "ask": ["biceps", "biceps.stress"],
        }
    )
    text = page.text(10000)
    assert f"{note}(73 N/cm²)." in text
    assert f"how hard each square {'centimetre' if 'cm' in area else 'inch'} pulls" in text


def test_a_support_called_by_a_letter_has_that_letter_for_its_subscript() -> None:
    """Of a bucket beside it more is told, not of B."""
    plank = {
        "title": "Two trestles",
        "pivot": {"name": "A"},
        "segment": [{"name": "plank", "length": "4.0 m"}],
        "load": [{"name": "bucket", "mass": "9 kg", "at": "4.0 m"}],
        "force": [{"name": "B", "at": "3.0 m", "direction": "up", "force": "?"}],
    }
    assert "F_B d_B − W_Bu d_Bu = 0" in lines_of(work(plank))


# ---------------------------------------------------------------------- what cannot be
IMPOSSIBLE = {
    "title": "Too strong for the jug",
    "pivot": {"name": "elbow", "bone": "humerus"},
    "segment": [{"name": "forearm", "mass": "1.6 kg", "com": "15 cm"}],
    "load": [{"name": "jug", "mass": "?", "at": "33 cm"}],
    "muscle": [{"name": "biceps", "at": "4.0 cm", "direction": "up", "force": "50 N"}],
}


def test_of_a_mass_that_cannot_be_no_lesson_is_drawn() -> None:
    page = work(IMPOSSIBLE)
    assert page.answers["jug.mass"].value < 0
    assert "The jug would need a mass of −0.109 kg, which nothing has." in page.text(10000)
    assert in_a_sentence(page.outcome) == ""
    assert [] == [finding.says for _, finding in page.checks if finding.kind == "lesson" and finding.says]


LEFT_OVER = {
    "title": "A tug of war",
    "pivot": {"name": "elbow", "bone": "humerus"},
    "ask": ["biceps", "reaction.right", "reaction.up"],
    "segment": [{"name": "forearm"}],
    "load": [{"name": "jug", "weight": "20 N", "at": "30 cm"}],
    "muscle": [{"name": "biceps", "at": "4.0 cm", "direction": "up"}],
    "force": [
        {"name": "big cord", "at": "10 cm", "direction": "left", "force": "100 N"},
        {"name": "red cord", "at": "10 cm", "direction": "right", "force": "50 N"},
        {"name": "blue cord", "at": "10 cm", "direction": "right", "force": "50 N"},
    ],
    "course": {"forces": "lb", "carry": "as shown"},
}


def test_what_rounding_leaves_of_nothing_is_called_so() -> None:
    page = work(LEFT_OVER)
    assert (page.answers["reaction.right"].value, page.answers["reaction.right"].shown) == (0.0, "0 lb")
    assert page.outcome.values["reaction.right"] != 0
    assert "That is no more than rounding leaves: there is nothing this way." in page.text(10000)


# ---------------------------------------------------------------------- who pushes, and where
def test_several_bones_push_and_what_is_no_joint_is_held_by_a_support() -> None:
    bones = work(
        {
            **IMPOSSIBLE,
            "load": [{"name": "jug", "mass": "2 kg", "at": "33 cm"}],
            "ask": ["biceps", "reaction"],
            "pivot": {"name": "L5/S1", "bone": "vertebrae"},
            "muscle": [{"name": "biceps", "at": "4.0 cm", "direction": "up"}],
        }
    ).text(10000)
    assert "The vertebrae push on the forearm" in bones and "moments about L5/S1" in bones and "the L5/S1" not in bones
    plank = work(
        {
            "title": "A plank",
            "pivot": {"name": "A"},
            "segment": [{"name": "plank", "length": "4 m", "weight": "90 N", "com": "2 m"}],
            "force": [{"name": "B", "at": "3 m", "direction": "up", "force": "?"}],
            "ask": ["B", "reaction"],
        }
    ).text(10000)
    assert "The support at A pushes on the plank" in plank


def test_a_muscle_is_not_said_to_hold_alone_what_a_cord_helps_to_hold() -> None:
    text = worked("zero-pull").text(10000)
    assert "of the muscles only the biceps pulls" in text and "alone" not in text


def test_what_is_held_is_named_whole() -> None:
    small = {
        **IMPOSSIBLE,
        "segment": [{"name": "forearm", "mass": "0.1 kg", "com": "15 cm"}],
        "load": [{"name": "jug", "mass": "2 kg", "at": "33 cm"}],
        "muscle": [{"name": "biceps", "at": "4.0 cm", "direction": "up"}],
    }
    assert (
        in_a_sentence(work(small).outcome)
        == "to hold the forearm and the jug, 20.6 N together, the biceps pulls with 166 N, 8.0 times that."
    )


def test_a_weight_called_weight_is_not_the_weight_of_a_weight() -> None:
    page = work(
        {
            **IMPOSSIBLE,
            "segment": [{"name": "forearm"}],
            "load": [{"name": "weight", "mass": "2 kg", "at": "32 cm"}],
            "muscle": [{"name": "biceps", "at": "4.0 cm", "direction": "up"}],
        }
    )
    assert of_check(page, "size_against_load").says.endswith("So the pull must be as many times the weight, and it is.")


def test_a_note_has_pounds_where_the_forces_do_and_keeps_the_newtons_of_its_source() -> None:
    page = work(
        {
            **IMPOSSIBLE,
            "load": [{"name": "jug", "weight": "5 lb", "at": "33 cm"}],
            "course": {"forces": "lb"},
            "muscle": [{"name": "biceps", "at": "4.0 cm", "direction": "up"}],
        }
    )
    assert (
        "A pull of 54.5 lb is within what models of the biceps brachii (both heads) allow, at most 189 to 238 lb "
        in (page.text(10000))
    )


def test_each_of_several_pushes() -> None:
    text = work(CASES.parents[2] / "samples" / "06-flour-barrow.toml").text(10000)
    assert "Each hand pushes up with 24.0 lb." in text


# ---------------------------------------------------------------------- no arm, no share, no noise
UPRIGHT = {
    "title": "The rope locker",
    "pivot": {"name": "hip", "bone": "pelvis"},
    "segment": [{"name": "thigh", "direction": "up", "mass": "8 kg", "com": "18 cm"}],
    "muscle": [{"name": "iliopsoas", "moment_arm": "4 cm", "turns": "clockwise"}],
    "ask": ["iliopsoas", "iliopsoas.moment"],
}


def test_a_limb_that_comes_to_rest_straight_down_leaves_no_noise_of_rounding() -> None:
    hanging = {
        "title": "A net let down",
        "pivot": {"name": "shoulder"},
        "segment": [{"name": "upper arm", "direction": "? below right"}],
        "muscle": [{"name": "deltoid", "at": "66 mm", "direction": "up", "force": "690 N"}],
        "load": [{"name": "net", "mass": "7.2 kg", "at": "358 mm"}],
    }
    page = work(hanging)
    assert [] == [finding.says for _, finding in page.checks if re.search(r"0\.0{6}", finding.says)]
    assert ("does not apply", "does not apply") == (of_check(page, "limits").result, of_check(page, "lever").result)


def test_what_has_no_moment_is_said_not_to_turn() -> None:
    assert "The iliopsoas does not turn the body: 0 N·cm." in work(UPRIGHT).text(10000)


def test_a_share_of_nothing_stands_among_the_given_where_a_line_has_its_letter() -> None:
    page = work(
        {
            "title": "A swinging sign",
            "pivot": {"name": "post"},
            "force": [{"name": "wind", "at": "1 m", "direction": "up", "force": "?"}],
            "segment": [{"name": "beam", "length": "2 m", "mass": "12 kg", "com": "0 %"}],
            "load": [{"name": "sign", "mass": "5 kg", "at": "1.5 m"}],
        }
    )
    text = page.text(10000)
    assert ("q_B L_B" in text, "q_B" in text.partition("Given")[2].partition("Find")[0]) == (True, True)


def test_a_triangle_has_the_joint_force_of_the_answer() -> None:
    page = work(
        {
            "title": "Stirring the glue",
            "pivot": {"name": "elbow"},
            "segment": [{"name": "forearm", "mass": "1.6 kg", "com": "15 cm"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "60 deg from back toward up"}],
            "load": [{"name": "pot", "mass": "9 kg", "at": "33 cm"}],
            "ask": ["biceps", "reaction"],
        }
    )
    shown = page.outcome.answers["reaction"].shown
    assert f"≤ {shown} ≤" in of_check(page, "triangle").says


def test_angles_alike_in_what_they_decide_are_told_in_one_sentence() -> None:
    page = work(
        {
            **UPRIGHT,
            "segment": [{"name": "thigh", "direction": "? below right", "mass": "8 kg", "com": "18 cm"}],
            "ask": ["thigh.direction"],
            "muscle": [{"name": "iliopsoas", "at": "6 cm", "direction": "up", "force": "300 N"}],
        }
    )
    assert "decides which way the iliopsoas and the thigh turn, and at the one found below it is neither." in page.text(
        10000
    )


def test_few_figures_are_counted_in_words() -> None:
    assert "Intermediate results are written to two figures but carried on unrounded" in worked(
        "jug-at-45", figures=2, working_figures=2
    ).text(10000)


def test_muscles_that_turn_against_each_other_leave_no_joint_moment_to_compare() -> None:
    page = work(
        {
            **UPRIGHT,
            "ask": ["iliopsoas"],
            "segment": [{"name": "thigh", "direction": "up"}],
            "load": [{"name": "sack", "weight": "23 N", "at": "15 cm"}],
            "muscle": [
                {"name": "gluteus maximus", "at": "8.504 cm", "direction": "21.2 deg left of up", "force": "52 N"},
                {"name": "iliopsoas", "moment_arm": "3.3 cm", "turns": "clockwise"},
            ],
            "course": {"carry": "as shown", "working_figures": 3, "forces": "lb"},
        }
    )
    assert [] == [finding.says for name, finding in page.checks if name == "plausible" and "moment of" in finding.says]
