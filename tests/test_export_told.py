"""Problems as questions, whole: what stands above the fields, what each asks for, right and wrong numbers, hints."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from pathlib import Path

import pytest
from test_boards import stands, worded

from explain import Walkthrough, work
from explain.errors import Fault
from explain.export.bank import plain, problems, told_apart
from explain.export.question import question, tells
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


def kept() -> dict[str, str]:
    """The questions as they were read and found right, by name."""
    parts = (HERE / "questions_told.txt").read_text("utf-8").split("== ")[1:]
    return {name: text.strip() for name, _, text in (part.partition("\n") for part in parts)}


@pytest.mark.parametrize("name", ASKED)
def test_a_question_holds(name: str) -> None:
    assert kept()[name] == told(name)


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
