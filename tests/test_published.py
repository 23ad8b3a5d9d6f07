"""Worked examples and answered problems that others have published: figures only, each source in its file in
`published/`.

An answer is right where it rounds to what is printed: it lies within half of the last printed place.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from decimal import Decimal
from functools import cache
from pathlib import Path
from typing import NamedTuple, Protocol

import pytest

from explain import work

FOLDER = Path(__file__).with_name("published")


class Found(Protocol):
    """An answer that the program gives."""

    @property
    def value(self) -> float: ...
    @property
    def unit(self) -> str: ...
    @property
    def direction(self) -> float | None: ...


class Printed(NamedTuple):
    """A printed figure; `slack`, in its last place, is more than a half only where the print went on from rounded
    figures.
    """

    figure: str
    unit: str = ""
    slack: float = 0.5

    @property
    def value(self) -> float:
        return float(self.figure)

    @property
    def tolerance(self) -> float:
        """Absolute; a tie is inside."""
        place = Decimal(self.figure).as_tuple().exponent
        return float(Decimal(self.slack) * Decimal(10) ** int(place)) * (1 + 1e-9)


class Derived(NamedTuple):
    """What is printed but is no answer of a problem: it follows from the answers by `of`."""

    what: str
    printed: Printed
    of: Callable[[Mapping[str, Found]], float]


class Case(NamedTuple):
    """A published case, or one of its parts: its id, the problem file that states it, and what is printed."""

    id: str
    file: str
    expected: Mapping[str, Printed]
    derived: tuple[Derived, ...] = ()


def direction(answer: Found) -> float:
    assert answer.direction is not None
    return answer.direction


P = Printed
UP, DOWN = (Derived("direction", P(f"{degrees}.00"), lambda a: direction(a["reaction"])) for degrees in (90, 270))

CASES = (
    Case("CP-EX9.1", "CP-EX9.1", {"second child.at": P("1.30", "m"), "reaction": P("568", "N")}, (UP,)),
    Case("CP-P9.1", "CP-P9.1", {"push.moment": P("46.8", "N m")}),
    Case("CP-P9.3", "CP-P9.3", {"second push": P("23.3", "N")}),
    Case("CP-EX9.2", "CP-EX9.2", {"right hand": P("32.7", "N"), "reaction": P("16.3", "N")}, (UP,)),
    Case("CP-AP9.4", "CP-AP9.4", {"right pier": P("2450", "N"), "reaction": P("7350", "N")}, (UP,)),
    Case(
        "CP-EX9.3",
        "CP-EX9.3",
        {"hands": P("32.4", "N"), "reaction": P("409", "N")},
        (UP, Derived("mechanical advantage", P("13.6"), lambda a: 45 * 9.8 / a["hands"].value)),
    ),
    Case(
        "CP-P9.21",
        "CP-P9.21",
        {"hands": P("29.1", "N"), "reaction": P("510", "N")},
        (UP, Derived("mechanical advantage", P("18.5"), lambda a: 55 * 9.8 / a["hands"].value)),
    ),
    Case(
        "CP-P9.19",
        "CP-P9.19",
        {"hand": P("50", "N")},
        (Derived("mechanical advantage", P("25"), lambda a: 1250 / a["hand"].value),),
    ),
    Case("CP-P9.23", "CP-P9.23", {"hand": P("50", "N"), "reaction": P("1.3e3", "N")}, (UP,)),
    Case(
        "CP-EX9.4",
        "CP-EX9.4",
        {"biceps": P("470", "N"), "reaction": P("407", "N")},
        (
            DOWN,
            Derived("biceps, in weights held", P("7.38"), lambda a: a["biceps"].value / (6.5 * 9.8)),
            Derived("elbow, in weights held", P("6.38"), lambda a: a["reaction"].value / (6.5 * 9.8)),
        ),
    ),
    Case("CP-P9.26", "CP-P9.26", {"humerus": P("407", "N")}),
    Case(
        "CP-EX9.5",
        "CP-EX9.5",
        {
            "back muscles": P("4.20e3", "N"),
            "reaction": P("4.66e3", "N"),
            "reaction.right": P("3.67e3", "N"),
            "reaction.up": P("2.87e3", "N"),
        },
        (
            Derived("direction", P("38.0"), lambda a: direction(a["reaction"])),
            Derived("muscles, in weights held", P("5.04"), lambda a: a["back muscles"].value / (85 * 9.8)),
            Derived("hips, in weights held", P("5.59"), lambda a: a["reaction"].value / (85 * 9.8)),
        ),
    ),
    Case(
        "CP-P9.28",
        "CP-P9.28",
        {"reaction": P("1.1e3", "N")},
        (Derived("direction, on the femur", P("190"), lambda a: direction(a["reaction"]) + 180),),
    ),
    Case(
        "CP-P9.30",
        "CP-P9.30",
        {"reaction": P("97", "N")},
        (Derived("direction, above left", P("59"), lambda a: 180 - direction(a["reaction"])),),
    ),
    Case("CP-P9.37", "CP-P9.37-a", {"hands": P("147", "N")}),
    Case(
        "CP-P9.37",
        "CP-P9.37-b",
        {"triceps": P("1.68e3", "N")},
        (Derived("triceps, in body weights", P("3.4"), lambda a: a["triceps"].value / (50 * 9.8)),),
    ),
    Case("CP-P9.6", "CP-P9.6", {"wall": P("1.43e3", "N")}),
    Case(
        "CP-P9.8",
        "CP-P9.8",
        {},
        (
            Derived("force on each of two feet", P("2.55e3"), lambda a: a["reaction"].value / 2),
            Derived("direction, from upright", P("16.3"), lambda a: 90 - direction(a["reaction"])),
            Derived("friction coefficient", P("0.292"), lambda a: a["reaction.right"].value / a["reaction.up"].value),
        ),
    ),
    Case(
        "CP-P9.12",
        "CP-P9.12",
        {"reaction": P("2.0e4", "N")},
        (UP, Derived("share on the far shore", P("0.167"), lambda a: a["far shore"].value / (2500 * 9.8))),
    ),
    Case("UP-EX12.1", "UP-EX12.1", {"car.at": P("1.3", "m")}),
    Case(
        "UP-EX12.5",
        "UP-EX12.5",
        {"wall": P("150.7", "N"), "reaction": P("427.4", "N", 1), "reaction.up": P("400.0", "N")},
        (
            Derived("direction", P("69.3", slack=1), lambda a: direction(a["reaction"])),
            Derived("friction coefficient", P("0.377"), lambda a: a["reaction.right"].value / a["reaction.up"].value),
        ),
    ),
    Case(
        "UP-EX12.6",
        "UP-EX12.6",
        {"lower hinge": P("100.0", "N"), "reaction.right": P("-100.0", "N"), "reaction.up": P("200.0", "N")},
    ),
    Case(
        "UP-P12.27",
        "UP-P12.27",
        {"level pull": P("4000", "N"), "reaction": P("4472", "N")},
        (Derived("direction", P("153.4"), lambda a: direction(a["reaction"])),),
    ),
    Case("UP-P12.31", "UP-P12.31", {"friend.mass": P("80.0", "kg")}),
    Case("UP-P12.33", "UP-P12.33", {"board.mass": P("40", "kg")}),
    Case(
        "UP-EX10.6a",
        "UP-EX10.6a",
        {
            "first.moment": P("160", "N m"),
            "second.moment": P("-60", "N m"),
            "third.moment": P("120", "N m"),
            "fourth.moment": P("10", "N m"),
            "total.moment": P("230", "N m"),
        },
    ),
    Case(
        "UP-P10.75",
        "UP-P10.75-a",
        {},
        (Derived("torque at a radius of 0.20 m", P("4.9"), lambda a: a["rope"].value * 0.20),),
    ),
    Case("UP-P10.75", "UP-P10.75-b", {"hanging block.mass": P("1.67", "kg"), "rope.moment": P("4.9", "N m")}),
    Case(
        "UP-P10.77",
        "UP-P10.77",
        {
            "first.moment": P("-9.0", "N m"),
            "second.moment": P("3.46", "N m"),
            "fourth.moment": P("-3.38", "N m"),
            "total.moment": P("-8.92", "N m"),
        },
    ),
    Case("UP-P10.81", "UP-P10.81", {"total.moment": P("-57.82", "N m")}),
    Case("HS-6.3", "HS-6.3", {"push.moment": P("375", "N m")}),
    Case(
        "ES-4.3a",
        "ES-4.3a-a",
        {"lift.moment": P("1224", "in lb")},
        (Derived("component across the handle", P("27.19"), lambda a: a["lift.moment"].value / 45),),
    ),
    Case("ES-4.3a", "ES-4.3a-b", {"reaction.across": P("-27.19", "lb"), "reaction.along": P("-12.68", "lb")}),
    Case("ES-4.3b", "ES-4.3b", {"pull.moment": P("-174", "ft lb")}),
    Case(
        "ES-4.1b",
        "ES-4.1b",
        {"pull.moment": P("-2596", "N m")},
        (Derived("perpendicular distance", P("6.49"), lambda a: -a["pull.moment"].value / 400),),
    ),
    Case("LM-ladder", "LM-ladder", {}, (Derived("direction", P("63.43"), lambda a: direction(a["reaction"])),)),
    Case("BM-FBD", "BM-FBD", {"pull.moment": P("-2610", "N m")}),
    Case("SP-forearm", "SP-forearm", {"biceps": P("140", "N")}),
    Case("YF-11.6", "YF-11.6", {"second.at": P("2.4", "m")}),
    Case("YF-11.12", "YF-11.12-a", {"walker.at": P("1.25", "m")}),
    Case("YF-11.12", "YF-11.12-b", {"support.at": P("1.5", "m")}),
    Case("OZ-5.1", "OZ-5.1", {"biceps": P("775", "N"), "reaction": P("675", "N")}, (DOWN,)),
    Case(
        "OZ-5.2",
        "OZ-5.2",
        {
            "deltoid": P("1236", "N"),
            "reaction": P("1214", "N"),
            "reaction.right": P("1194", "N"),
            "reaction.up": P("-220", "N"),
        },
        (Derived("direction, below right", P("10"), lambda a: 360 - direction(a["reaction"])),),
    ),
    Case("HA-biceps", "HA-biceps", {"biceps": P("480", "N")}),
)
NOT_EXPRESSED = (
    (
        "KN-3.1",
        "its text does not tell from which line the leg's 30 degrees count, so there is no one problem to state",
    ),
)
PUBLISHED = (
    "CP-EX9.1",
    "CP-P9.1",
    "CP-P9.3",
    "CP-EX9.2",
    "CP-AP9.4",
    "CP-EX9.3",
    "CP-P9.21",
    "CP-P9.19",
    "CP-P9.23",
    "CP-EX9.4",
    "CP-P9.26",
    "CP-EX9.5",
    "CP-P9.28",
    "CP-P9.30",
    "CP-P9.37",
    "CP-P9.6",
    "CP-P9.8",
    "CP-P9.12",
    "UP-EX12.1",
    "UP-EX12.5",
    "UP-EX12.6",
    "UP-P12.27",
    "UP-P12.31",
    "UP-P12.33",
    "UP-EX10.6a",
    "UP-P10.75",
    "UP-P10.77",
    "UP-P10.81",
    "HS-6.3",
    "ES-4.3a",
    "ES-4.3b",
    "ES-4.1b",
    "LM-ladder",
    "BM-FBD",
    "SP-forearm",
    "KN-3.1",
    "YF-11.6",
    "YF-11.12",
    "OZ-5.1",
    "OZ-5.2",
    "HA-biceps",
)


@cache
def answers(file: str) -> Mapping[str, Found]:
    return work((FOLDER / f"{file}.toml").read_text(encoding="utf-8")).answers


@pytest.mark.parametrize("case", [case for case in CASES if case.expected], ids=lambda case: case.file)
def test_a_published_answer_comes_out_as_it_is_printed(case: Case) -> None:
    found = {name: answers(case.file)[name].value for name in case.expected}
    assert found == {
        name: pytest.approx(printed.value, abs=printed.tolerance) for name, printed in case.expected.items()
    }


@pytest.mark.parametrize("case", [case for case in CASES if case.expected], ids=lambda case: case.file)
def test_a_published_answer_comes_out_in_its_unit(case: Case) -> None:
    found = {name: sorted(re.split(r"[ ·.]+", answers(case.file)[name].unit)) for name in case.expected}
    assert found == {name: sorted(printed.unit.split()) for name, printed in case.expected.items()}


@pytest.mark.parametrize("case", [case for case in CASES if case.derived], ids=lambda case: case.file)
def test_what_is_printed_beside_the_answers_follows_from_them(case: Case) -> None:
    found = {each.what: each.of(answers(case.file)) for each in case.derived}
    assert found == {each.what: pytest.approx(each.printed.value, abs=each.printed.tolerance) for each in case.derived}


def test_every_published_case_is_expressed_or_said_why_not() -> None:
    assert sorted({case.id for case in CASES} | {name for name, _ in NOT_EXPRESSED}) == sorted(PUBLISHED)


def test_every_problem_file_is_worked_once() -> None:
    assert sorted(f"{case.file}.toml" for case in CASES) == sorted(path.name for path in FOLDER.iterdir())


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.file)
def test_every_case_says_where_it_is_from_and_whether_it_was_read(case: Case) -> None:
    source, access, *_ = (FOLDER / f"{case.file}.toml").read_text(encoding="utf-8").splitlines()
    assert (source[:10], access.startswith(("# Access: read", "# Access: from memory"))) == ("# Source: ", True)
