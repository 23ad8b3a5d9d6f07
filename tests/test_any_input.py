"""Whatever people write is read or refused with a reason, never anything else."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from explain.problem.course_file import COURSE_KEYS
from explain.errors import Fault
from explain.problem.reader import read_problem
from explain.problem.problem_tables import KEYS
from explain.problem.model import Problem

TABLES = st.one_of(
    *(st.tuples(st.just(table), st.sampled_from(keys)) for table, keys in (*KEYS.items(), ("course", COURSE_KEYS)))
)
PIECES = st.sampled_from(
    [
        "?",
        "up",
        "biceps",
        "jug",
        "forearm and hand",
        "table",
        "limit",
        "2 * biceps",
        "50 %",
        "3 cm",
        "-3 cm",
        "2 kg",
        "5 N",
        "7 lb",
        "12 N m",
        "30 deg",
        "9 cm^2",
        "30 deg below right",
        "clockwise",
        "reaction",
        "total.moment",
    ]
)
VALUES = st.recursive(
    st.one_of(PIECES, st.text(max_size=20), st.integers(), st.floats(), st.booleans(), st.none()),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=5), inner, max_size=3),
    max_leaves=4,
)


def good() -> dict[str, object]:
    return {
        "title": "x",
        "pivot": {"name": "elbow"},
        "person": {"mass": "70 kg", "table": "winter"},
        "segment": [{"name": "forearm and hand", "length": "30 cm"}],
        "load": [{"name": "jug", "mass": "3 kg", "at": "33 cm"}],
        "muscle": [{"name": "biceps", "at": "4 cm", "direction": "up"}],
        "force": [{"name": "rope", "at": "9 cm", "direction": "up", "force": "3 N"}],
        "couple": [{"name": "brake", "moment": "3 N m", "turns": "clockwise"}],
        "course": {},
    }


@settings(max_examples=150)
@given(st.lists(st.tuples(TABLES, VALUES), min_size=1, max_size=3))
def test_whatever_stands_for_a_key_is_read_or_refused(changes: list[tuple[tuple[str, str], object]]) -> None:
    spoiled = good()
    for (table, key), value in changes:
        place = spoiled.get(table) if table else spoiled
        inner = place[0] if isinstance(place, list) and place else place
        if isinstance(inner, dict):
            inner[key] = value
    try:
        assert isinstance(read_problem(spoiled), Problem)
    except Fault as fault:
        assert (True, True, True) == (bool(fault.found), bool(fault.expected), bool(fault.example))


@settings(max_examples=200)
@given(st.text(max_size=200))
def test_whatever_stands_in_a_file_is_read_or_refused(text: str) -> None:
    with pytest.raises(Fault):
        read_problem(text + "\n")
