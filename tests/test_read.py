"""A problem file in which every key stands is read as it says, and so is a course in every word that it may have."""

from __future__ import annotations

import json
from decimal import Decimal
from fractions import Fraction
from pathlib import Path

import pytest
from bad_inputs import GOOD

from explain.equation.terms import Quantity
from explain.errors import Fault
from explain.problem import answer_names, mark_rows
from explain.problem.course import Course
from explain.problem.course_file import course_from
from explain.problem.directions import bearing, needs_segment
from explain.problem.directions import read as direction
from explain.problem.model import (
    UNKNOWN,
    Accept,
    AtLimit,
    Couple,
    Direction,
    FromTable,
    Hung,
    Load,
    Mark,
    Multiple,
    Percent,
    Person,
    Pivot,
    Place,
    Problem,
    Pull,
    Segment,
    Spread,
)
from explain.problem.named_files import named_files
from explain.problem.new_files import LIKE, new_files
from explain.problem.placeholders import filled, slots
from explain.problem.quantity import usual_unit
from explain.problem.reader import course_keys, read_problem
from explain.problem.schema import schema
from explain.problem.turned import Turnable, turnable, turned

EVERYTHING = """\
title = " {tray.mass} on two links "
statement = "The lower arm is {lower arm.length} long; the sling pulls with {sling.force}."
neglect = ["friction  in the joint"]
ask = ["reaction", "biceps"]
balanced = false
figure = "shown"
burden = "key lines shown"
g = "9.80 m/s^2"

[course]
axes = "along and across the lower arm"
symbols = { biceps = "F_B", reaction = "R" }

[pivot]
name = "shoulder"
support = "ledge"
surface = "30 deg above right"
friction = "0.40"

[person]
mass = "70 kg"
height = "1.75 m"
table = "winter"
sex = "female"

[[segment]]
name = "upper  arm"
length = "30 cm"
direction = "? right of down"
range = ["0 deg", "90 deg"]
mass = "table"
com = "table"

[[segment]]
name = "lower arm"
length = "26 cm"
weight = "2 %"
com = "43 %"
direction = "20 deg from out toward up"

[[segment]]
name = "strut"
from = "upper arm"
direction = "left"

[[load]]
name = "tray"
mass = "2.5 kg"
on = "upper arm"
at = "50 %"

[[load]]
name = "sand"
weight = "1.2 N/cm"
spread = ["2 cm", "20 cm"]
spread_to = "one end"

[[load]]
name = "cup"
weight = "5 N"
point = ["3 cm", "-4 cm"]

[[muscle]]
name = "biceps"
at = "4.0 cm"
direction = "? left of up"
range = ["5 deg", "60 deg"]
area = "9 cm^2"
limit = "900 N"
count = 2

[[muscle]]
name = "deltoid"
moment_arm = "3 cm"
turns = "anticlockwise"
direction = "up"
force = "limit"
limit = "?"

[[muscle]]
name = "triceps"
moment_arm = "?"
turns = "clockwise"
direction = "down"
area = "4 cm^2"
force = "0.50 × biceps"

[[force]]
name = "sling"
point = ["1 cm", "2 cm"]
toward = ["1 cm", "40 cm"]
force = "12 %"

[[force]]
name = "line"
at = "6 cm"
direction = "up"
hung = "6 kg"

[[couple]]
name = "brake"
moment = "?"
turns = "clockwise"

[[mark]]
kind = "method"
for = "torques of the tray and the  biceps"
marks = 3

[[mark]]
kind = "communication"
for = "clear"

[[mark]]
kind = "accuracy"
for = "the sum"
needs = ["total.moment", "biceps.arm"]

[[accept]]
line = "F*4 = 3"
because = "as  in class"
after = ["W = 4*9.81"]
"""


def q(text: str, unit: str = "") -> Quantity:
    return Quantity.of(text, unit)


@pytest.fixture(scope="module")
def everything() -> Problem:
    return read_problem(EVERYTHING)


# ---------------------------------------------------------------------- one file with every key
def test_what_is_said_at_the_top(everything: Problem) -> None:
    assert (
        "2.5 kg on two links",
        "The lower arm is 26 cm long; the sling pulls with 12 %.",
        ("friction in the joint",),
        ("reaction", "biceps"),
        False,
        True,
        "key lines shown",
        "",
    ) == (
        everything.title,
        everything.statement,
        everything.neglect,
        everything.ask,
        everything.balanced,
        everything.figure_shown,
        everything.burden,
        everything.file,
    )
    assert ("person", "segment", "load", "muscle", "force", "couple") == everything.tables
    assert Pivot("shoulder", "", True, "ledge", Fraction(30), q("0.40")) == everything.pivot
    assert Person(q("70", "kg"), q("1.75", "m"), "winter", "female") == everything.person
    assert (q("9.80", "m s^-2"), "lower arm", {"biceps": "F_B", "reaction": "R"}) == (
        everything.course.g,
        everything.course.axes,
        everything.course.symbols,
    )


def test_segments(everything: Problem) -> None:
    assert (
        Segment(
            "upper arm",
            q("30", "cm"),
            Direction("down", UNKNOWN, "right", "? right of down"),
            FromTable(),
            None,
            FromTable(),
            "",
            (q("0", "deg"), q("90", "deg")),
        ),
        Segment(
            "lower arm",
            q("26", "cm"),
            Direction("out", q("20", "deg"), "up", "20 deg from out toward up"),
            None,
            Percent(q("2", "%")),
            Percent(q("43", "%")),
        ),
        Segment("strut", direction=Direction("left", written="left"), start="upper arm"),
    ) == everything.segments


def test_loads(everything: Problem) -> None:
    assert (
        Load("tray", Place(Percent(q("50", "%")), "upper arm"), q("2.5", "kg")),
        Load("sand", Place(), None, q("1.2", "N cm^-1"), Spread((q("2", "cm"), q("20", "cm")), True)),
        Load("cup", Place(point=(q("3", "cm"), q("-4", "cm"))), None, q("5", "N")),
    ) == everything.loads
    assert [False, True, False] == [each.per_length for each in everything.loads]


def test_pulls_and_couples(everything: Problem) -> None:
    up, down = Direction("up", written="up"), Direction("down", written="down")
    sense = {"moment_arm": q("3", "cm"), "turns": 1}
    assert (
        Pull(
            "muscle",
            "biceps",
            Place(q("4.0", "cm")),
            Direction("up", UNKNOWN, "left", "? left of up"),
            limit=q("900", "N"),
            area=q("9", "cm^2"),
            count=2,
            range=(q("5", "deg"), q("60", "deg")),
        ),
        Pull("muscle", "deltoid", Place(), up, force=AtLimit(), limit=UNKNOWN, **sense),  # type: ignore[arg-type]
        Pull(
            "muscle",
            "triceps",
            Place(),
            down,
            moment_arm=UNKNOWN,
            turns=-1,
            force=Multiple(q("0.50"), "biceps"),
            area=q("4", "cm^2"),
        ),
        Pull(
            "force",
            "sling",
            Place(point=(q("1", "cm"), q("2", "cm"))),
            toward=(q("1", "cm"), q("40", "cm")),
            force=Percent(q("12", "%")),
        ),
        Pull("force", "line", Place(q("6", "cm")), up, force=Hung(q("6", "kg"))),
    ) == everything.pulls
    assert (Couple("brake", UNKNOWN, -1),) == everything.couples


def test_marks_and_accepted_lines(everything: Problem) -> None:
    assert (
        Mark("method", "torques of the tray and the biceps", 3, ("moments", "tray", "biceps")),
        Mark("communication", "clear", 1, ("unit",)),
        Mark("accuracy", "the sum", 1, ("total.moment", "biceps.arm")),
    ) == everything.marks
    assert (Accept("F*4 = 3", "as in class", ("W = 4*9.81",)),) == everything.accepted


def test_a_file_without_them_has_the_usual() -> None:
    problem = read_problem(
        GOOD + 'share = "area"\narea = "2 cm^2"\n[[muscle]]\nname = "b"\nat = "1 cm"\n'
        'direction = "up"\nshare = "area"\narea = "1 cm^2"\n'
    )
    assert ("", True, False, "next line follows", None, Course()) == (
        problem.statement,
        problem.balanced,
        problem.figure_shown,
        problem.burden,
        problem.person,
        problem.course,
    )
    assert (Pivot("elbow", "humerus"), ["area", "area"]) == (problem.pivot, [each.share for each in problem.pulls])
    assert Direction("right") == problem.segments[0].direction
    assert Pivot() == read_problem(GOOD.replace('[pivot]\nname = "elbow"\nbone = "humerus"\n', "")).pivot


def test_everything_that_could_be_asked(everything: Problem) -> None:
    told = answer_names.answers(everything)
    assert (
        """
        biceps biceps.moment biceps.moment_arm biceps.at biceps.direction biceps.stress
        deltoid deltoid.moment deltoid.moment_arm deltoid.direction
        triceps triceps.moment triceps.moment_arm triceps.direction triceps.stress
        sling sling.moment sling.moment_arm sling.direction
        line line.moment line.moment_arm line.at line.direction line.hung
        tray.mass tray.weight tray.moment tray.at sand.mass sand.weight sand.moment sand.at
        cup.mass cup.weight cup.moment
        upper+arm.mass upper+arm.weight upper+arm.moment upper+arm.com upper+arm.direction
        lower+arm.mass lower+arm.weight lower+arm.moment lower+arm.com lower+arm.direction
        strut.direction brake brake.moment total.moment
        reaction reaction.right reaction.up reaction.direction reaction.along reaction.across
    """.split()
        == [name.replace(" ", "+") for name in told]
    )


def test_everything_that_is_sought(everything: Problem) -> None:
    assert (
        "upper arm.direction",
        "biceps.direction",
        "biceps",
        "deltoid",
        "triceps.moment_arm",
        "brake",
    ) == answer_names.sought(everything)


@pytest.mark.parametrize(
    ("old", "new", "sought"),
    [
        ('mass = "1.6 kg"', 'mass = "?"', ("forearm and hand.mass", "biceps")),
        ('mass = "1.6 kg"', 'weight = "?"', ("forearm and hand.weight", "biceps")),
        ('com = "15 cm"', 'com = "?"', ("forearm and hand.com", "biceps")),
        ('com = "15 cm"', 'com = "15 cm"\ndirection = "? above right"', ("forearm and hand.direction", "biceps")),
        ('mass = "3.0 kg"', 'mass = "?"', ("jug.mass", "biceps")),
        ('mass = "3.0 kg"', 'weight = "?"', ("jug.weight", "biceps")),
        ('at = "33 cm"', 'at = "?"', ("jug.at", "biceps")),
        ('at = "4.0 cm"', 'at = "?"', ("biceps.at", "biceps")),
        ('direction = "up"', 'direction = "? left of up"\nforce = "9 N"', ("biceps.direction",)),
        (
            'direction = "up"\n',
            'direction = "up"\nforce = "9 N"\n[[force]]\nname = "r"\nat = "1 m"\ndirection = "up"\nhung = "?"\n',
            ("r.hung",),
        ),
        ('bone = "humerus"', 'friction = "?"', ("biceps", "reaction.friction")),
    ],
)
def test_a_question_mark_is_a_question(old: str, new: str, sought: tuple[str, ...]) -> None:
    problem = read_problem(GOOD.replace(old, new))
    assert (sought, set()) == (answer_names.sought(problem), set(sought) - set(answer_names.answers(problem)))


def test_what_a_row_of_marks_may_name(everything: Problem) -> None:
    parts = ("arm", "moment", "turning", "level", "upright")
    pulls = ("biceps", "deltoid", "triceps", "sling", "line")
    heavy = ("upper arm", "lower arm", "tray", "sand", "cup")
    assert (
        *("moments", "level", "upright", "unit", "direction", "diagram", "weights"),
        *("reaction", "reaction.right", "reaction.up", "reaction.along", "reaction.across", "reaction.direction"),
        *(*pulls, *heavy, "brake", "total.moment"),
        *(f"{name}.{part}" for name in (*pulls, *heavy) for part in parts),
        *(f"{name}.{part}" for name in heavy for part in ("mass", "weight")),
        *(f"{name}.{part}" for name in pulls for part in ("force", "stress")),
        *(f"{name}.{part}" for name in ("upper arm", "lower arm", "strut") for part in ("direction", "com")),
        *(f"{name}.at" for name in (*pulls, "tray", "sand", "cup")),
    ) == mark_rows.names(everything)


@pytest.mark.parametrize(
    ("need", "keys"),
    [
        ("weights", tuple(f"{name}.weight" for name in ("upper arm", "lower arm", "tray", "sand", "cup"))),
        ("tray", ("tray.weight",)),
        ("lower arm", ("lower arm.weight",)),
        ("sling", ("sling.force",)),
        ("brake", ("brake.moment",)),
        ("total.moment", ("total",)),
        ("biceps.arm", ("*arm biceps",)),
        ("biceps.moment", ("*moment biceps",)),
        ("biceps.turning", ("*turning biceps",)),
        ("biceps.level", ("*level biceps",)),
        ("biceps.upright", ("*upright biceps",)),
        ("reaction.direction", ("*angle reaction",)),
        ("level", ("level",)),
        ("biceps.stress", ("biceps.stress",)),
    ],
)
def test_a_need_is_a_key_of_the_working(everything: Problem, need: str, keys: tuple[str, ...]) -> None:
    assert keys == mark_rows.keys(Mark("method", "x", 1, (need,)), everything)


@pytest.mark.parametrize(
    ("words", "needs"),
    [
        ("Moments about the elbow", ("moments",)),
        ("the weights, then the torques", ("weights", "moments")),
        ("level and upright parts of the reaction", ("level", "upright", "reaction")),
        ("the JUG and the forearm and hand and the jug", ("jug", "forearm and hand")),
        ("jugs and the biceps", ("biceps",)),
    ],
)
def test_a_row_looks_for_what_its_words_name(words: str, needs: tuple[str, ...]) -> None:
    problem = read_problem(f'{GOOD}[[mark]]\nkind = "method"\nfor = "{words}"\n')
    assert needs == problem.marks[0].needs


# ---------------------------------------------------------------------- the words of a course
SAME = {
    "word": ("moment", "torque"),
    "letter": ("M", "tau", "T"),
    "positive": ("counter-clockwise", "clockwise", "up"),
    "lengths": ("as given", "m", "cm", "mm", "in", "ft"),
    "method": ("perpendicular distance", "turning component"),
    "order": ("multiply first", "divide first", "letters first"),
    "ties": ("up", "even"),
    "carry": ("unrounded", "as shown"),
    "reaction_on": ("the body cut free", "the other bone"),
    "detail": ("full", "brief"),
    "person": ("we", "you"),
    "balance": ("sum is zero", "two sides"),
    "first": ("products", "moments"),
    "signs": ("in the equation", "with the numbers"),
    "level_words": ("horizontal and vertical", "level and upright"),
    "spelling": ("British", "American"),
    "decimal": ("point", "comma"),
    "paper": ("A4", "letter"),
    "force_letter": ("P",),
    "distance_letter": ("r",),
}
OTHERWISE = {
    "letter": {"τ": "tau"},
    "positive": {
        "counterclockwise": "counter-clockwise",
        "anticlockwise": "counter-clockwise",
        "anti-clockwise": "counter-clockwise",
    },
    "lengths": {
        "metres": "m",
        "centimetres": "cm",
        "millimetres": "mm",
        "inches": "in",
        "feet": "ft",
        "meters": "m",
        "centimeters": "cm",
        "millimeters": "mm",
    },
    "forces": {"N": "N", "newtons": "N", "lb": "lbf", "lbf": "lbf", "pounds": "lbf"},
    "axes": {"level and upright": "", "along and across the shank": "shank", "along and across shank ": "shank"},
    "resultant": {
        "size and direction": ("size and direction",),
        "parts": ("parts",),
        "both": ("size and direction", "parts"),
    },
}


@pytest.mark.parametrize("key", list(dict.fromkeys((*SAME, *OTHERWISE))))
def test_a_word_of_a_course_is_taken_as_it_is_meant(key: str) -> None:
    meant: dict[str, object] = {**{word: word for word in SAME.get(key, ())}, **OTHERWISE.get(key, {})}
    assert meant == {word: getattr(course_from({key: word}), key) for word in meant}


def test_a_course_keeps_what_it_is_not_told() -> None:
    base = course_from({"symbols": {"biceps": "F_B"}, "axes": "along and across the shank", "g": "9.8 m/s^2"})
    assert base == course_from({}, base)
    assert ("", {}) == ((other := course_from({"symbols": {}, "axes": "level and upright"}, base)).axes, other.symbols)
    assert ("tau", "M", "T") == tuple(
        course_from(each).letter for each in ({"word": "torque"}, {"word": "moment"}, {"word": "torque", "letter": "T"})
    )
    assert ("parts", "size and direction") == course_from({"resultant": ["parts", "size and direction"]}).resultant
    assert {"biceps": "F_B1", "total": "a"} == course_from({"symbols": {" biceps": "F_B1", "total": "a"}}).symbols


@pytest.mark.parametrize(
    ("typed", "figures"),
    [
        ({}, (3, 5)),
        ({"figures": 5}, (5, 5)),
        ({"figures": 6}, (6, 8)),
        ({"figures": 1, "working_figures": 1}, (1, 1)),
        ({"figures": 12, "working_figures": 14}, (12, 14)),
        ({"working_figures": 3}, (3, 3)),
    ],
)
def test_a_working_has_the_figures_of_its_answer_and_more(typed: dict[str, object], figures: tuple[int, int]) -> None:
    assert figures == ((course := course_from(typed)).figures, course.working_figures)


@pytest.mark.parametrize(
    ("typed", "first", "letters"),
    [
        ({}, "products", False),
        ({"signs": "with the numbers"}, "moments", False),
        ({"signs": "with the numbers", "positive": "up"}, "products", True),
        ({"positive": "up"}, "products", False),
        ({"balance": "two sides"}, "products", False),
    ],
)
def test_signs_with_the_numbers_have_moments_first_but_for_up(
    typed: dict[str, object], first: str, letters: bool
) -> None:
    assert (first, letters) == ((course := course_from(typed)).first, course.letters_have_signs)


def test_clockwise_is_the_other_sense() -> None:
    assert [1, -1, 1] == [course_from({"positive": each}).sense for each in ("anticlockwise", "clockwise", "up")]


def test_a_problem_takes_its_course_from_a_file_and_says_more(tmp_path: Path) -> None:
    (tmp_path / "ours.toml").write_text('word = "torque"\nfigures = 4\n', "utf-8")
    file = tmp_path / "jug.toml"

    def course(head: str) -> Course:
        file.write_text(f"{head}\n{GOOD}", "utf-8")
        return read_problem(file).course

    assert Course(word="torque", letter="tau", figures=4) == course('course = "ours.toml"')
    assert Course(word="torque", letter="tau", figures=2, g=q("10", "m s^-2")) == course(
        'course = { from = "ours.toml", figures = 2, g = "10 m/s^2" }'
    )
    assert {"word": "torque", "figures": 4} == course_keys(tmp_path / "ours.toml")
    assert (file, 1) == (Path(read_problem(file).file), read_problem(file, course={"figures": 1}).course.figures)
    with pytest.raises(Fault) as caught:
        read_problem(file, course={"figures": 0})
    assert ("the course given beside the file", "figures") == (caught.value.file, caught.value.key)


# ---------------------------------------------------------------------- directions
@pytest.mark.parametrize(
    ("words", "degrees"),
    [
        ("right", 0),
        ("up", 90),
        ("left", 180),
        ("down", 270),
        ("out", 20),
        ("back", 200),
        ("30 deg above right", 30),
        ("30 degrees below right", 330),
        ("30° above left", 150),
        ("30 deg below left", 210),
        ("20 deg left of up", 110),
        ("20 deg right of up", 70),
        ("20 deg left of down", 250),
        ("20 deg right of down", 290),
        ("70 deg from back toward up", 130),
        ("70 deg from out towards down", 310),
        ("0 deg above right", 0),
        ("180 deg above right", 180),
        ("? above right", None),
        ("? deg from out toward up", None),
        ("?° left of up", None),
        ("? degrees below left", None),
    ],
)
def test_a_direction_is_a_bearing(words: str, degrees: int | None) -> None:
    found = direction(f" {words} ")
    assert (degrees, words) == (bearing(found, Fraction(20)), found.written)
    assert needs_segment(found) == ("out" in words.split() or "back" in words.split())


@pytest.mark.parametrize("words", ["out", "back", "20 deg from up toward out", "20 deg from out toward up"])
def test_out_of_a_segment_whose_way_is_not_known_is_none(words: str) -> None:
    assert bearing(direction(words), None) is None


@pytest.mark.parametrize(
    ("surface", "slips", "way"),
    [
        ("right", "right", 1),
        ("right", "left", -1),
        ("left", "left", 1),
        ("up", "down", -1),
        ("right", "30 deg above right", 1),
        ("right", "30 deg below right", 1),
        ("right", "30 deg below left", -1),
    ],
)
def test_slips_is_told_along_the_surface(surface: str, slips: str, way: int) -> None:
    pivot = f'friction = "0.3"\nsurface = "{surface}"\nslips = "{slips}"'
    assert way == read_problem(GOOD.replace('bone = "humerus"', pivot)).pivot.slips


@pytest.mark.parametrize(
    ("words", "degrees", "new"),
    [
        ("30 deg above right", "45", "45 deg above right"),
        ("45.00 deg above right", "44", "44.00 deg above right"),
        ("45.5 deg above right", "44", "44 deg above right"),
        ("30 deg above right", "12.34", "12.3 deg above right"),
        ("30 deg above right", "12.25", "12.2 deg above right"),
        ("90 deg from out toward up", "91", "90 deg from out toward up"),
        ("91 deg from out toward up", "181", "180 deg from out toward up"),
        ("30° above right", "-1", "0° above right"),
        ("up", "3", None),
        ("? above right", "3", None),
        ("3e1 deg above right", "3", None),
        ("sideways", "3", None),
        ("30 deg above right", "NaN", None),
    ],
)
def test_an_angle_is_turned_in_its_own_words(words: str, degrees: str, new: str | None) -> None:
    assert new == turned(words, Decimal(degrees))


def test_how_far_an_angle_can_be_turned() -> None:
    assert Turnable(Decimal(90), 90, "out", "up") == turnable("90 deg from out toward up")
    assert Turnable(Decimal("90.1"), 180, "right", "down") == turnable("90.1 deg below right")


# ---------------------------------------------------------------------- slots, units, files
RUG = {"name": "rug", "at": "+3 N/cm at x"}
TABLES = {
    "segment": [{"name": "fore  arm", "com": "-15 cm", "direction": "30 degrees below right"}, "no table"],
    "load": [
        {"name": "jug", "mass": 3, "point": ["3 cm", "-4 cm"], "weight": "2 N m^-1", "at": "3 m s^-2"},
        {"name": "rug", "at": "+3 N/cm at x"},
    ],
    "muscle": [{"name": "biceps", "force": "0.80 * jug", "area": "9.5 cm^2", "direction": "up"}],
    "couple": ({"name": "brake", "moment": "12 N m"},),
    "force": {"name": "rope"},
    "pivot": {"friction": "0.40", "name": "elbow"},
    "person": {"mass": "70 kg", "table": ".5 %"},
}


@pytest.mark.parametrize(
    ("slot", "said"),
    [
        ("fore arm.com", "15 cm"),
        ("fore  arm.direction", "30°"),
        ("jug.mass", "3"),
        ("jug.point", "(3 cm, 4 cm)"),
        ("jug.weight", "2 N·m⁻¹"),
        ("jug.at", "3 m·s⁻²"),
        ("rug.at", "3 N/cm"),
        ("biceps.force", "0.80"),
        ("biceps.area", "9.5 cm²"),
        ("biceps.direction", "up"),
        ("brake.moment", "12 N·m"),
        ("pivot.friction", "0.40"),
        ("pivot.name", "elbow"),
        ("person.mass", "70 kg"),
        ("person.table", ".5 %"),
        ("rope.name", "{rope.name}"),
        ("jug.nothing", "{jug.nothing}"),
        ("jug.Mass", "{jug.Mass}"),
    ],
)
def test_a_slot_is_filled_with_what_is_said_of_a_value(slot: str, said: str) -> None:
    assert f"It is {said}." == filled(f"It is {{{slot}}}.", TABLES)


def test_slots_are_found_in_their_order() -> None:
    assert (("fore arm", "com"), ("jug", "mass")) == slots("{fore  arm.com} and {jug.mass}, {no} {a.b.c} {x.Y}")


@pytest.mark.parametrize(
    ("text", "kind", "unit"),
    [
        ('a = "3 in" b = "4 in" c = "3 cm"', "length", "in"),
        ('a = "3 in" b = "4cm"', "length", "cm"),
        ('a = "3 lbf" b = "4 kg"', "force", "lbf"),
        ('a = "3 kg"', "length", ""),
    ],
)
def test_the_usual_unit_of_a_file_is_the_one_it_has_most_often(text: str, kind: str, unit: str) -> None:
    assert unit == usual_unit(text, kind)


def test_a_problem_names_its_course_and_its_table(tmp_path: Path) -> None:
    file = tmp_path / "jug.toml"

    def named(text: str) -> list[str] | None:
        file.write_text(text, "utf-8")
        found = named_files(file)
        return None if found is None else [str(each.relative_to(tmp_path)) for each in found]

    assert ["ours.toml", "t.CSV"] == named('course = "ours.toml"\n[person]\ntable = "t.CSV"\n')
    assert ["a.toml"] == named('[course]\nfrom = "a.toml"\n[person]\ntable = "winter"\n')
    assert ["a.toml"] == named('course = { from = "a.toml" }\n[person]\ntable = "a.toml"\n')
    assert [] == named('course = "a\\u0000.toml"\nperson = 3\ntable = "b.csv"\nfrom = "c.toml"\n')
    assert [[], None] == [named("course = 3\n"), named("course = \n")]
    assert named_files(tmp_path / "none.toml") is None


@pytest.mark.parametrize("like", LIKE)
def test_a_new_problem_can_be_read_and_has_no_slot_left(like: str) -> None:
    ((name, text),) = new_files("problem", "mine", like).items()
    assert ("mine.toml", False, True) == (name, "{" in text, f"explain work {name}" in text)
    assert read_problem(text).title


@pytest.mark.parametrize(
    ("kind", "names"),
    [
        ("course", ["mine.toml"]),
        ("series", ["mine.toml", "mine-base.toml"]),
        ("book", ["mine.toml", "mine-1.md"]),
    ],
)
def test_new_files_name_each_other(kind: str, names: list[str]) -> None:
    found = new_files(kind, "mine", "lever")
    assert names == list(found)
    first, second = names[0], names[-1]
    assert second in found[first]
    assert not any(f"{{{slot}}}" in text for text in found.values() for slot in ("file", "base", "place", "stem"))
    if kind == "series":
        assert 'at = "0.50 m"' in found[first]
    if kind == "book":
        assert "[pivot]" in found[second] and "explain work" not in found[second]


@pytest.mark.parametrize("which", ["problem", "course", "series", "book"])
def test_a_schema_is_that_of_its_file(which: str) -> None:
    read = json.loads(schema(which))
    assert (True, "object") == ("2020-12" in read["$schema"], read["type"])


def test_a_schema_of_nothing_is_refused() -> None:
    with pytest.raises(Fault, match='found a schema called "books"'):
        schema("books")
