"""Problem files and course files become the records that stand for them."""

from __future__ import annotations

import tomllib
from fractions import Fraction
from pathlib import Path

import pytest

from explain.problem.course import Course
from explain.problem.course_file import course_from
from explain.problem.directions import bearing
from explain.equation.terms import Quantity
from explain.problem.reader import read_problem
from explain.problem.model import (
    UNKNOWN,
    AtLimit,
    Direction,
    FromTable,
    Multiple,
    Percent,
    Person,
    Pivot,
    Place,
    Problem,
    Pull,
    Segment,
    Unknown,
)

CONTRACT = Path(__file__).with_name("contract")
FILES = sorted(CONTRACT.glob("*.toml"))
ARM = """
title = "The crate"
[pivot]
name = "elbow"
[[segment]]
name = "forearm"
length = "30 cm"
"""
MUSCLE = (
    ARM
    + """
[[muscle]]
name = "biceps"
at = "4.0 cm"
direction = "up"
"""
)


def of(number: str, unit: str) -> Quantity:
    return Quantity.of(number, unit)


def muscle(lines: str) -> Pull:
    return read_problem(f'{ARM}[[muscle]]\nname = "biceps"\n{lines}').pulls[0]


def segment(lines: str, top: str = "") -> Segment:
    return read_problem(f'title = "x"\nask = ["total.moment"]\n{top}\n[[segment]]\nname = "shank"\n{lines}').segments[0]


def course(lines: str) -> Course:
    return read_problem(f"{MUSCLE}[course]\n{lines}").course


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_a_contract_file_reads_the_same_from_path_text_and_mapping(path: Path) -> None:
    text = path.read_text(encoding="utf-8")
    from_path = read_problem(path)
    assert [from_path] * 3 == [
        read_problem(str(path)),
        read_problem(text, name=str(path)),
        read_problem(tomllib.loads(text), name=str(path)),
    ]


def test_all_contract_files_are_here() -> None:
    assert 11 == len(FILES)


def test_a_whole_problem_is_read() -> None:
    read = read_problem(CONTRACT / "how-steep.toml")
    assert (
        Problem(
            title="How far can the shank be raised?",
            ask=("shank.direction",),
            pivot=Pivot("knee"),
            segments=(
                Segment(
                    "shank",
                    of("42", "cm"),
                    Direction("down", UNKNOWN, "right", "? right of down"),
                    of("4.0", "kg"),
                    None,
                    of("22", "cm"),
                ),
            ),
            loads=read.loads,
            pulls=(
                Pull(
                    "muscle",
                    "quadriceps",
                    Place(of("6.0", "cm")),
                    moment_arm=of("4.0", "cm"),
                    turns=1,
                    force=of("400", "N"),
                ),
            ),
            file=str(CONTRACT / "how-steep.toml"),
        )
        == read
    )


def test_muscles_come_before_other_forces() -> None:
    assert ["triceps", "scale"] == [each.name for each in read_problem(CONTRACT / "scale-push.toml").pulls]


def test_the_top_keys_are_kept_as_written() -> None:
    read = read_problem(
        'statement = "Who lifts?"\nneglect = ["friction"]\nask = ["biceps"]\nbalanced = false\n' + MUSCLE.strip()
    )
    assert ("Who lifts?", ("friction",), ("biceps",), False) == (read.statement, read.neglect, read.ask, read.balanced)


def test_a_person_has_mass_height_table_and_sex() -> None:
    read = read_problem(MUSCLE + '[person]\nmass = "150 lb"\nheight = "1.70 m"\ntable = "de leva"\nsex = "female"')
    assert Person(of("150", "lb"), of("1.70", "m"), "de leva", "female") == read.person


def test_a_byte_order_mark_is_no_matter(tmp_path: Path) -> None:
    (tmp_path / "crate.toml").write_bytes(b"\xef\xbb\xbf" + MUSCLE.encode())
    assert "The crate" == read_problem(tmp_path / "crate.toml").title


@pytest.mark.parametrize(
    ("lines", "force"),
    [
        ('force = "?"', UNKNOWN),
        ("", UNKNOWN),
        ('force = "95 N"', of("95", "N")),
        ('force = "7.5 lb"', of("7.5", "lbf")),
        ('force = "limit"\nlimit = "900 N"', AtLimit()),
        ('force = "50 %"\n[person]\nmass = "70 kg"', Percent(of("50", "%"))),
        (
            'force = "2 * right rope"\n[[force]]\nname = "right rope"\nat = "9 cm"\ndirection = "up"\nforce = "?"',
            Multiple(of("2", ""), "right rope"),
        ),
        (
            'force = "0.70 * crate"\n[[load]]\nname = "crate"\nat = "9 cm"\nmass = "2 kg"',
            Multiple(of("0.70", ""), "crate"),
        ),
    ],
)
def test_a_force_may_be_a_number_sought_a_share_a_percentage_or_the_limit(lines: str, force: object) -> None:
    pull = muscle(
        f'at = "4.0 cm"\ndirection = "up"\n{lines}\n[[couple]]\nname = "brake"\nmoment = "?"\nturns = "clockwise"'
    )
    assert force == pull.force


def test_a_limit_may_be_sought_where_it_is_reached() -> None:
    pull = muscle('at = "4 cm"\ndirection = "up"\nforce = "limit"\nlimit = "?"')
    assert (AtLimit(), UNKNOWN) == (pull.force, pull.limit)


def test_a_muscle_has_an_area_and_a_count() -> None:
    pull = muscle('at = "4 cm"\ndirection = "up"\narea = "9.5 cm^2"\ncount = 2')
    assert (of("9.5", "cm^2"), 2) == (pull.area, pull.count)


def test_a_muscle_may_pull_from_a_point_toward_a_point() -> None:
    pull = muscle('point = ["4 cm", "-1 cm"]\ntoward = ["-2 cm", "30 cm"]')
    assert ((of("4", "cm"), of("-1", "cm")), (of("-2", "cm"), of("30", "cm"))) == (pull.place.point, pull.toward)


def test_a_place_beside_a_moment_arm_is_kept() -> None:
    pull = muscle('on = "forearm"\nat = "4 cm"\nmoment_arm = "?"\nturns = "clockwise"\nforce = "95 N"')
    assert (Place(of("4", "cm"), "forearm"), UNKNOWN, -1) == (pull.place, pull.moment_arm, pull.turns)


def test_an_at_may_be_negative_zero_sought_or_a_percentage() -> None:
    found = [muscle(f'at = "{at}"\ndirection = "up"').place.at for at in ("-2.3 cm", "0 cm", "?", "50 %", "-5 %")]
    assert [of("-2.3", "cm"), of("0", "cm"), UNKNOWN, Percent(of("50", "%")), Percent(of("-5", "%"))] == found


def test_a_range_goes_with_an_angle_that_is_sought() -> None:
    pull = muscle('at = "4 cm"\ndirection = "? above left"\nforce = "95 N"\nrange = ["0 deg", "90 deg"]')
    assert (of("0", "deg"), of("90", "deg")) == pull.range


@pytest.mark.parametrize(
    ("text", "direction"),
    [
        ("up", Direction("up")),
        ("out", Direction("out")),
        ("30 deg below right", Direction("right", of("30", "deg"), "down")),
        ("30° above left", Direction("left", of("30", "deg"), "up")),
        ("20 deg left of up", Direction("up", of("20", "deg"), "left")),
        ("20 deg right of down", Direction("down", of("20", "deg"), "right")),
        ("? below right", Direction("right", UNKNOWN, "down")),
        ("? deg left of up", Direction("up", UNKNOWN, "left")),
        ("70 deg from back towards up", Direction("back", of("70", "deg"), "up")),
        ("110.5 degrees from up toward out", Direction("up", of("110.5", "deg"), "out")),
    ],
)
def test_a_direction_is_read(text: str, direction: Direction) -> None:
    found = muscle(f'at = "4 cm"\ndirection = "{text}"').direction
    assert found is not None
    assert (direction.start, direction.turn, direction.toward, text) == (
        found.start,
        found.turn,
        found.toward,
        found.written,
    )


def test_out_and_back_follow_the_segment_named() -> None:
    two = ARM.replace('"forearm"', '"forearm"\ndirection = "up"') + '[[segment]]\nname = "hand"\n'
    flexors = '[[muscle]]\nname = "flexors"\non = "forearm"\nat = "2 cm"\ndirection = "10 deg from back toward right"'
    read = read_problem(two + flexors)
    assert "forearm" == read.pulls[0].place.on


def test_a_segment_may_follow_the_one_it_starts_from() -> None:
    read = read_problem(
        MUSCLE + '[[segment]]\nname = "hand"\ndirection = "20 deg from out toward up"\nfrom = "forearm"'
    )
    assert ("forearm", Direction("out", of("20", "deg"), "up", "20 deg from out toward up")) == (
        read.segments[1].start,
        read.segments[1].direction,
    )


@pytest.mark.parametrize(
    ("lines", "mass", "com"),
    [
        ('mass = "4.0 kg"\ncom = "-1 cm"', of("4.0", "kg"), of("-1", "cm")),
        ('mass = "4.65 %"\ncom = "43 %"\nlength = "40 cm"', Percent(of("4.65", "%")), Percent(of("43", "%"))),
        ('mass = "table"\ncom = "table"\nlength = "40 cm"', FromTable(), FromTable()),
        ('mass = "?"\ncom = "?"', UNKNOWN, UNKNOWN),
    ],
)
def test_a_segment_has_its_mass_and_its_centre_in_every_form(lines: str, mass: object, com: object) -> None:
    found = segment(lines, '[person]\nmass = "70 kg"\ntable = "winter"')
    assert (mass, com) == (found.mass, found.com)


def test_a_segment_may_weigh_nothing() -> None:
    assert (None, None, None) == (segment("").mass, segment("").weight, segment("").com)


def test_a_weight_in_pounds_is_a_force() -> None:
    assert of("2.3", "lbf") == segment('weight = "2.3 lb"\ncom = "2.1 in"').weight


@pytest.mark.parametrize("word", ["counter-clockwise", "counterclockwise", "anticlockwise", "anti-clockwise"])
def test_a_couple_turns_the_way_it_says(word: str) -> None:
    read = read_problem(f'{MUSCLE}[[couple]]\nname = "brake"\nmoment = "500 ft lb"\nturns = "{word}"')
    assert (1, Quantity.of("500", "lbf ft")) == (read.couples[0].turns, read.couples[0].moment)


def test_a_moment_centre_has_no_reaction() -> None:
    assert not read_problem(MUSCLE.replace('name = "elbow"', 'name = "elbow"\nreaction = false')).pivot.reaction


def test_moments_can_be_asked_alone() -> None:
    read = read_problem('balanced = false\nask = ["total.moment", "biceps.moment"]\n' + MUSCLE.strip())
    assert ("total.moment", "biceps.moment") == read.ask


@pytest.mark.parametrize(
    ("lines", "key", "value"),
    [
        ('word = "torque"', "letter", "tau"),
        ('word = "torque"\nletter = "T"', "letter", "T"),
        ('letter = "τ"', "letter", "tau"),
        ('positive = "up"', "positive", "up"),
        ('positive = "anticlockwise"', "positive", "counter-clockwise"),
        ('g = "9.8 m/s^2"', "g", of("9.8", "m s^-2")),
        ('lengths = "metres"', "lengths", "m"),
        ('lengths = "inches"', "lengths", "in"),
        ('lengths = "as given"', "lengths", "as given"),
        ('lengths = "cm"', "lengths", "cm"),
        ('forces = "lb"', "forces", "lbf"),
        ('method = "turning component"', "method", "turning component"),
        ('order = "letters first"', "order", "letters first"),
        ("figures = 4", "figures", 4),
        ("figures = 6", "working_figures", 8),
        ("working_figures = 4", "working_figures", 4),
        ('ties = "even"', "ties", "even"),
        ('carry = "as shown"', "carry", "as shown"),
        ('force_letter = "P"', "force_letter", "P"),
        ('symbols = { biceps = "F_B" }', "symbols", {"biceps": "F_B"}),
        ('resultant = "both"', "resultant", ("size and direction", "parts")),
        ('resultant = ["parts", "size and direction"]', "resultant", ("parts", "size and direction")),
        ('axes = "along and across the forearm"', "axes", "forearm"),
        ('axes = "level and upright"', "axes", ""),
        ('reaction_on = "the other bone"', "reaction_on", "the other bone"),
        ('detail = "brief"', "detail", "brief"),
        ('person = "you"', "person", "you"),
        ('distance_letter = "r"', "distance_letter", "r"),
    ],
)
def test_a_course_key_is_read(lines: str, key: str, value: object) -> None:
    assert value == getattr(course(lines), key)


def test_a_course_file_stands_beside_the_problem_file_that_names_it(tmp_path: Path) -> None:
    (tmp_path / "course.toml").write_text('word = "torque"\nfigures = 4\n', encoding="utf-8")
    (tmp_path / "crate.toml").write_text('course = "course.toml"\n' + MUSCLE.strip(), encoding="utf-8")
    found = read_problem(tmp_path / "crate.toml").course
    assert ("torque", 4) == (found.word, found.figures)


def test_a_problem_may_change_a_few_things_of_a_course_file(tmp_path: Path) -> None:
    (tmp_path / "course.toml").write_text('word = "torque"\nletter = "T"\nfigures = 4\n', encoding="utf-8")
    (tmp_path / "crate.toml").write_text(MUSCLE + '[course]\nfrom = "course.toml"\nfigures = 2\n', encoding="utf-8")
    found = read_problem(tmp_path / "crate.toml").course
    assert ("torque", "T", 2) == (found.word, found.letter, found.figures)


def test_a_course_given_beside_the_file_goes_before_the_files_own() -> None:
    found = read_problem(MUSCLE + '[course]\nword = "torque"\ndetail = "brief"', course={"detail": "full"}).course
    assert ("torque", "full") == (found.word, found.detail)


def test_a_change_of_word_brings_its_own_letter_back() -> None:
    assert "M" == course_from({"word": "moment"}, Course(word="torque", letter="tau")).letter


def test_an_unknown_is_one_value() -> None:
    assert Unknown() == muscle('at = "?"\ndirection = "up"\nforce = "9 N"').place.at


def test_the_bearing_of_an_angle_follows_the_segments_posture() -> None:
    read = read_problem(CONTRACT / "leg-raise.toml")
    out = bearing(read.segments[0].direction, None)
    assert [Fraction(310), Fraction(108)] == [out, bearing(read.pulls[0].direction or Direction("up"), out)]
