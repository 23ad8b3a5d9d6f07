"""The table of given values goes by item, in the order of the problem file."""

from __future__ import annotations

from typing import Any

from test_conventions import data, work

from explain.walkthrough.given_order import in_order

SEGMENT = {"name": "forearm", "length": "40 cm", "mass": "2.2 %", "com": "40 %"}
MUSCLE = {"name": "biceps", "at": "4.0 cm", "direction": "up"}
LOAD = {"name": "jug", "mass": "3.0 kg", "at": "33 cm"}


def keys(**tables: Any) -> list[str]:
    problem = {"title": "-", "pivot": {"name": "elbow"}, **tables, "ask": ["biceps"]}
    return [each.letter.name for each in in_order(work(problem).outcome)]


def test_the_data_of_an_item_stand_together_in_the_order_of_the_file() -> None:
    person, forearm = ["*person.mass"], ["forearm.length", "forearm.mass%", "forearm.com%"]
    jug, biceps = ["jug.mass", "jug.at"], ["biceps.at"]
    given = {"person": {"mass": "70 kg"}, "segment": [SEGMENT], "load": [LOAD], "muscle": [MUSCLE]}
    assert [*person, *forearm, *jug, *biceps, "g"] == keys(**given)
    assert [*biceps, *jug, *forearm, *person, "g"] == keys(**dict(reversed(given.items())))


def test_nothing_is_lost_or_told_twice() -> None:
    for name in ("leg-raise", "two-links", "shopping-us", "beam"):
        outcome = work(data(name)).outcome
        assert sorted(map(str, in_order(outcome))) == sorted(map(str, outcome.body.givens))
