"""Problems as questions, whole: what stands above the fields, what each asks for, right and wrong numbers, hints."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from pathlib import Path
from types import SimpleNamespace

import pytest
from test_boards import stands, worded
from what_is_said import parts

from explain import Walkthrough, work
from explain.errors import Fault
from explain.export.bank import plain, problems, told_apart
from explain.export.question import question, tells
from explain.export.wrong_numbers import wrong_numbers
from explain.write.qti.item import Choice, Item, Number

HERE = Path(__file__).parent
ARM = """title = "x"
[pivot]
name = "elbow"
bone = "humerus"
[[segment]]
name = "forearm"
length = "40 cm"
mass = "1.6 kg"
com = "15 cm"
direction = "{way}"
[[load]]
name = "jug"
mass = "3.0 kg"
at = "33 cm"
[[muscle]]
name = "biceps"
at = "4.0 cm"
direction = "{pull}"
"""
ALONG = """[course]
axes = "along and across the forearm"
resultant = "parts"
"""
ASKED = {
    "oblique": ("", "right", "70 deg from back toward up", ""),
    "parts along": (
        'ask = ["biceps", "reaction.along", "reaction.across"]\n',
        "30 deg below right",
        "80 deg from back toward up",
        ALONG,
    ),
    "moments": (
        'ask = ["jug.moment", "total.moment", "biceps.moment"]\nbalanced = false\n',
        "right",
        "up",
        '[course]\npositive = "clockwise"\nword = "torque"\nfigures = 2\n',
    ),
    "an angle": ("", "right", "? left of up", ""),
    "an unknown slope": (
        'ask = ["forearm.direction", "reaction.along", "reaction.across"]\n',
        "? right of down",
        "40 deg from back toward up",
        ALONG,
    ),
    "straight up": ('ask = ["reaction"]\n', "right", "up", '[course]\ndecimal = "comma"\n'),
}


@cache
def worked(name: str) -> Walkthrough:
    ask, way, pull, course = ASKED[name]
    force = 'force = "400 N"\n' if "?" in pull + way or "balanced" in ask else ""
    return work(ask + ARM.format(way=way, pull=pull) + force + course)


def item_text(item: Item) -> Iterator[str]:
    yield f"{item.name} | {item.title} | {item.language}"
    for passage in item.before:
        yield from stands(passage)
    for field in item.fields:
        yield f"ASKS {worded(field.label)}"
        if isinstance(field, Number):
            yield f"{field.value:.4f} {field.unit}, within {field.share:g} of it or {field.within:.4f}"
        if isinstance(field, Choice):
            for option in field.options:
                yield f"- {worded(option.shown)}: {'right' if option.right else worded(option.hint)}"
    for passage in item.after:
        yield from stands(passage)


def told(name: str) -> str:
    made = worked(name)
    numbers = "\n".join(item_text(question(made, "one", "A title", 0.02)))
    chosen = "\n".join(item_text(question(made, "two", "To choose", choices=4)))
    return f"{numbers}\n\n{chosen}"


KEPT = parts("questions_told.txt", "== ")


@pytest.mark.parametrize("name", ASKED)
def test_a_question_holds(name: str) -> None:
    assert KEPT[name] == told(name)


@pytest.mark.parametrize(
    ("share", "count"),
    [(0.01, "three"), (0.005, "three"), (0.001, "four"), (0.0001, "five"), (0.00001, "six"), (1e-6, "7")],
)
def test_a_number_is_asked_for_to_more_figures_than_it_is_held_to(share: float, count: str) -> None:
    before = question(worked("straight up"), "one", "x", share).before
    assert (
        f"paragraph Give each number to {count} figures or more, with a decimal point." == list(stands(before[-1]))[0]
    )


def test_a_figure_that_would_tell_is_left_out() -> None:
    assert [False, False, True] == [tells(worked(name)) for name in ("oblique", "moments", "an angle")]


@pytest.mark.parametrize(
    ("old", "new", "told"),
    [
        ('at = "33 cm"', 'at = "?"', True),
        ('com = "15 cm"', 'com = "?"', True),
        ('direction = "up"', 'moment_arm = "?"\nturns = "anticlockwise"', True),
        ('title = "x"', 'title = "x"\nask = ["biceps.moment_arm"]', True),
        ('mass = "3.0 kg"', 'mass = "?"', False),
    ],
)
def test_a_length_that_is_sought_would_be_told_by_the_figure(old: str, new: str, told: bool) -> None:
    text = ARM.format(way="right", pull="up").replace(old, new)
    assert told is tells(work(text if "ask" in new else text + 'force = "400 N"\n'))


def test_a_number_is_right_within_one_per_cent_where_nothing_else_is_said() -> None:
    (field,) = question(worked("oblique"), "one", "x").fields
    assert isinstance(field, Number) and 0.01 == field.share


# ---------------------------------------------------------------------- wrong numbers
def wrong(right: float, signed: bool, made: list[tuple[str, float | None]], most: int = 9) -> list[tuple[str, float]]:
    """The wrong numbers for an answer by what each slip makes of it; "b" is the commonest slip, "c" the rarest."""
    spoiled = [
        SimpleNamespace(world=SimpleNamespace(numbers=(None, number)), spoilt=SimpleNamespace(slip=slip))
        for slip, number in made
    ]
    rules = [SimpleNamespace(SLIP=slip, COMMON=common) for slip, common in (("a", 2), ("b", 4), ("c", 1))]
    asked = SimpleNamespace(value=right, signed=signed)
    found = wrong_numbers(spoiled, rules, asked, 1, lambda number: round(number, 2), most)  # type: ignore[arg-type]
    return [(each.spoilt.slip, each.number) for each in found]  # type: ignore[attr-defined]


def test_wrong_numbers_are_of_the_commonest_slips_each_once_and_apart() -> None:
    made: list[tuple[str, float | None]] = [("c", 5.0), ("a", 3.0), ("a", 4.0), ("b", 2.0), ("b", 1.01), ("a", None)]
    assert [("b", 2.0), ("a", 3.0), ("c", 5.0)] == wrong(1.0, False, made)
    assert [("b", 2.0), ("a", 3.0)] == wrong(1.0, False, made, 2)
    assert [("a", 1.03)] == wrong(1.0, False, [("b", 1.015), ("a", 1.03), ("c", 1.02)])
    assert [("b", 8.0)] == wrong(1.0, False, [("b", 8.0), ("a", 8.1), ("c", 0.0000001)])
    assert [] == wrong(1.0, False, [("b", None)])


def test_a_sign_counts_only_where_an_answer_has_a_sense() -> None:
    assert [] == wrong(0.5, False, [("b", -0.5)])
    assert [("b", 0.8)] == wrong(0.5, False, [("b", -0.8)])
    assert [("b", -0.5)] == wrong(0.5, True, [("b", -0.5)])
    assert [("b", -0.8)] == wrong(-0.5, False, [("b", -0.8)])


# ---------------------------------------------------------------------- names in a package
@pytest.mark.parametrize(
    ("name", "fit"),
    [
        ("week 3: jug.v2", "week-3-jug-v2"),
        ("3-jugs", "problem-3-jugs"),
        ("--", "problem"),
        ("é", "problem"),
        ("_jug_", "jug"),
        ("a" * 61, "a" * 60),
    ],
)
def test_a_name_is_made_fit(name: str, fit: str) -> None:
    assert fit == plain(name)


def test_problems_are_named_by_their_files() -> None:
    found = problems([Path("a/jug 1.toml"), Path("b/tin.toml")])
    assert [("jug-1", 0, False), ("tin", 0, False)] == [(each.name, each.variant, each.fit()) for each in found]
    assert told_apart(found) == found


def test_two_of_one_name_are_refused_with_both() -> None:
    with pytest.raises(Fault) as caught:
        told_apart(problems([Path("a/Jug.toml"), Path("tin.toml"), Path("b/jug.toml")]))
    assert "a/Jug.toml and b/jug.toml, which would have one name in the package" == caught.value.found
