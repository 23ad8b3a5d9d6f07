"""What is said of each bad problem file, word for word, and what people's own words for a key are answered with."""

from __future__ import annotations

import re

import pytest
from bad_inputs import BAD, GOOD
from more_bad_inputs import MORE
from what_is_said import parts

from explain.errors import Fault
from explain.problem.magnitudes import within
from explain.problem.quantity import read
from explain.problem.reader import read_problem

CASES = {**{bad.case: (bad.old, bad.new) for bad in BAD}, **{case: (old, new) for case, old, new in MORE}}
_READERS_OWN = re.compile(r"(not TOML: [^\n]*?) \([^\n]*|(Cannot declare) [^\n]*")  # the words of the TOML library


SAID = parts("bad_inputs_said.txt", "## ")


def message(text: str) -> str:
    with pytest.raises(Fault) as caught:
        read_problem(text, name="jug.toml")
    return _READERS_OWN.sub(lambda found: found[1] or found[2], str(caught.value))


def spoilt(old: str, new: str) -> str:
    assert old in GOOD
    before, _, after = GOOD.rpartition(old)
    return before + new + after


def said_of(case: str) -> str:
    return message(spoilt(*CASES[case]))


def test_every_case_has_what_is_said_and_none_is_there_twice() -> None:
    assert (set(CASES), len(BAD) + len(MORE)) == (set(SAID), len(CASES))


@pytest.mark.parametrize("case", CASES)
def test_a_bad_file_is_answered_word_for_word(case: str) -> None:
    assert SAID[case] == said_of(case)


# ---------------------------------------------------------------------- other words for a key
GRIP = ("the key at", 'at = "{}"', "Where a muscle grips is measured along its segment, from the near end.")
PLACE = ("the key at", 'at = "{}"', "A place is a distance along the segment, from its near end.")
CENTRE = ("the key com", 'com = "{}"', "The centre of mass, as a distance from the segment's near end.")
OPENS = "A direction is said in one text: the angle, where it begins, and the way it opens."
ARM = ("the keys moment_arm and turns", 'moment_arm = "{}"', "Beside it, turns says which way the force turns.")
SIZE = ("the key force", 'force = "{}"', "")
RUBS = (
    "a [[force]] for the friction",
    '[[force]] with name = "friction", a place, direction = "left" and force = "?"',
    "Friction is a force like any other; what is left out of account is listed in neglect.",
)
BAR = (
    "the table [[segment]]",
    '[[segment]] with name = "plank"',
    "A bar, beam or plank is a segment; where it has no mass it is weightless.",
)
SPREAD = (
    "the key spread",
    'spread = ["10 cm", "40 cm"]',
    "A spread load has the two distances between which it lies, in place of at.",
)
COUPLE = (
    "the table [[couple]]",
    '[[couple]] with name = "brake", moment = "12 N m" and turns = "clockwise"',
    "",
)
STRAIGHT_DOWN = (
    "a [[force]], which may have a direction",
    '[[force]] with direction = "30 deg below right" and force = "95 N"',
    "A load pulls straight down.",
)
MEANT = (  # the table, words that people use there, what is typed, what they are answered, the usual value
    ("", "bar beam lever plank rod bone limb body", BAR, ""),
    ("", "friction mu", RUBS, ""),
    ("", "joint hinge fulcrum axis", ("the table [pivot]", '[pivot] with name = "elbow"', ""), ""),
    ("", "find question unknown unknowns", ("the key ask", 'ask = ["biceps"]', ""), ""),
    ("", "gravity acceleration", ("the key g", 'g = "9.81 m/s^2"', ""), ""),
    ("", "moment torque brake", COUPLE, ""),
    ("", "ignore", ("the key neglect", 'neglect = ["the weight of the forearm"]', ""), ""),
    ("", "text", ("the key statement", 'statement = "A jug is held level."', ""), ""),
    ("segment", "centre_of_mass center_of_mass cog cg cm at", CENTRE, "4.0 cm"),
    ("segment", "angle Angle", ("the key direction", 'direction = "{} below right"', OPENS), "30 deg"),
    ("load", "from to over along length width distributed between", SPREAD, ""),
    ("load", "distance position place where com", PLACE, "4.0 cm"),
    ("load", "force", ("the key weight", 'weight = "{}"', "A load pulls straight down with its weight."), "29 N"),
    ("load", "direction angle", STRAIGHT_DOWN, ""),
    ("muscle", "insertion attachment grip inserts", GRIP, "4.0 cm"),
    ("muscle", "distance position place where", PLACE, "4.0 cm"),
    (
        "muscle",
        "angle theta orientation inclination",
        ("the angle inside direction", 'direction = "{} from back toward up"', OPENS),
        "70 deg",
    ),
    ("muscle", 'arm lever_arm lever "moment_arm"', ARM, "4.0 cm"),
    ("force", "size magnitude value newtons", SIZE, "95 N"),
    ("force", "friction mu coefficient", RUBS, ""),
    (
        "muscle",
        "origin",
        (
            "the key toward",
            'toward = ["2.0 cm", "28 cm"]',
            "A muscle pulls toward its origin: how far that is from the pivot, right and up.",
        ),
        "",
    ),
    (
        "force",
        "mass",
        ("a [[load]] for what has a mass", '[[load]] with mass = "{}"', "A load pulls straight down."),
        "3.0 kg",
    ),
    (
        "force",
        "weight",
        ("the key force", 'force = "{}"', "What pulls straight down may be a [[load]] with a weight."),
        "95 N",
    ),
    (
        "pivot",
        "mu coefficient roughness",
        ("the key friction", 'friction = "{}"', "The coefficient at the pivot, or ? for the least."),
        "0.40",
    ),
    (
        "pivot",
        "ground",
        ("the key surface", 'surface = "right"', "The direction along the surface it stands on."),
        "",
    ),
)


def answer_to(table: str, word: str, value: str) -> tuple[str, str, str]:
    """What is expected, the example and the advice for a word in a table."""
    head = {"": "", "pivot": "[pivot]\n"}.get(table, f"[[{table}]]\n")
    with pytest.raises(Fault) as caught:
        read_problem(
            {"": f"{word} = {value}\n{GOOD}", "pivot": GOOD.replace(head, f"{head}{word} = {value}\n")}.get(
                table, f'{GOOD}\n{head}name = "it"\n{word} = {value}\n'
            )
        )
    assert caught.value.found.startswith(f'the key "{word.strip(chr(34))}"')
    return caught.value.expected, caught.value.example, caught.value.advice


@pytest.mark.parametrize(
    ("table", "word", "meant", "usual"),
    [
        (table, word.replace('"moment_arm"', '"moment arm"'), meant, usual)
        for table, words, meant, usual in MEANT
        for word in words.split()
    ],
)
def test_a_word_that_people_use_is_answered_with_the_key_and_their_own_value(
    table: str, word: str, meant: tuple[str, str, str], usual: str
) -> None:
    expected, example, advice = meant
    assert (expected, example.replace("{}", "12 x"), advice) == answer_to(table, word, '"12 x"')
    assert (expected, example.replace("{}", usual), advice) == answer_to(table, word, "12")


@pytest.mark.parametrize(
    ("value", "told"),
    [
        (f'"{"1" * 40}"', "1" * 40),
        (f'"{"1" * 41}"', "4.0 cm"),
        ('""', "4.0 cm"),
        ('"1\\n2"', "4.0 cm"),
        ("'4 \"cm\"'", "4.0 cm"),
    ],
)
def test_what_could_not_be_copied_is_not_put_into_an_example(value: str, told: str) -> None:
    assert f'at = "{told}"' == answer_to("muscle", "grip", value)[1]


# ---------------------------------------------------------------------- sizes
@pytest.mark.parametrize(
    ("kind", "least", "below", "most", "above"),
    [
        ("length", "0.001 mm", "0.00099 mm", "1000000 m", "1000001 m"),
        ("mass", "0.001 g", "0.00099 g", "1000000000 kg", "1000000001 kg"),
        ("force", "0.00001 N", "0.0000099 N", "10000000 kN", "10000001 kN"),
        ("moment", "0.001 N mm", "0.00099 N mm", "1000000000 kN m", "1000000001 kN m"),
        ("area", "0.0001 mm^2", "0.000099 mm^2", "10000 m^2", "10001 m^2"),
        ("acceleration", "0.0001 m/s^2", "0.000099 m/s^2", "10000 m/s^2", "10001 m/s^2"),
        ("force per length", "0.00001 N/m", "0.0000099 N/m", "10000000000 N/m", "10000000001 N/m"),
        ("number", "0.000001", "0.00000099", "1000000", "1000001"),
        ("percent", "0.000001 %", "0.00000099 %", "1000000 %", "1000001 %"),
    ],
)
def test_a_size_is_bounded_on_both_sides_and_the_message_says_where(
    kind: str, least: str, below: str, most: str, above: str
) -> None:
    assert [least.split()[0], most.split()[0]] == [f"{read(each, kind).number:f}" for each in (least, most)]
    assert read(f"-{least}", kind) == within(read(f"-{least}", kind), kind, "")
    article = "an" if kind in ("area", "acceleration") else "a"
    for outside, word in ((below, "below"), (above, "above"), (f"-{above}", "above")):
        with pytest.raises(Fault) as caught:
            read(outside, kind)
        assert caught.value.found.endswith(f", {word} what can be worked with")
        assert caught.value.expected == f"{article} {kind} from {least} to {most}"


def test_a_size_outside_is_told_in_the_unit_it_was_typed_in() -> None:
    for text, told in {
        "1e9 in": "1e+9 in",
        "1e20 lb": "1e+20 lb",
        "1e-20 in^2": "1e-20 in^2",
    }.items():
        kind = {"in": "length", "lb": "force", "in^2": "area"}[text.partition(" ")[2]]
        with pytest.raises(Fault) as caught:
            read(text, kind)
        assert f"{told}, {'above' if '+' in told else 'below'} what can be worked with" == caught.value.found


def test_nothing_at_all_is_a_length_of_any_size() -> None:
    assert "0" == str(read("0 mm", "length").number)
