"""The JSON Schemas and the reader know the same keys and agree about what may stand there."""

from __future__ import annotations

import json
import tomllib
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any

import jsonschema
import pytest

from explain.equation import unit_spellings
from explain.problem.course_file import COURSE_KEYS
from explain.errors import Fault
from explain.problem.reader import read_problem
from explain.problem.problem_tables import KEYS
from explain.problem.schema import SCHEMAS, schema

CONTRACT = Path(__file__).with_name("contract")
LISTED = ("segment", "load", "muscle", "force", "couple", "mark", "accept")
JUG: Mapping[str, Any] = tomllib.loads((CONTRACT / "jug-level.toml").read_text(encoding="utf-8"))
# Where in a problem file a quantity of each kind stands, without any other way to write it.
KEY_OF_KIND = {
    "length": ("segment", "length"),
    "mass": ("load", "mass"),
    "force": ("load", "weight"),
    "moment": ("couple", "moment"),
    "area": ("muscle", "area"),
}


def parsed(which: str) -> dict[str, Any]:
    found: dict[str, Any] = json.loads(schema(which))
    return found


def checker(which: str) -> jsonschema.Draft202012Validator:
    return jsonschema.Draft202012Validator(parsed(which))


def accepts(problem: Mapping[str, Any]) -> bool:
    return bool(checker("problem").is_valid(problem))


def reads(problem: Mapping[str, Any]) -> bool:
    try:
        read_problem(problem)
    except Fault:
        return False
    return True


def changed(table: str, **keys: object) -> dict[str, Any]:
    """The milk jug with some keys of one table changed; None takes a key away."""
    problem: dict[str, Any] = json.loads(json.dumps(JUG))
    target = problem.setdefault(table, [{}] if table in LISTED else {}) if table else problem
    target = target[0] if isinstance(target, list) else target
    target.update(keys)
    for key in [key for key, value in keys.items() if value is None]:
        del target[key]
    return problem


def tables(problem_schema: dict[str, Any]) -> Iterator[tuple[str, dict[str, Any]]]:
    yield "", problem_schema
    for name in ("pivot", "person"):
        yield name, problem_schema["properties"][name]
    for name in LISTED:
        yield name, problem_schema["properties"][name]["items"]


@pytest.mark.parametrize("which", SCHEMAS)
def test_a_schema_is_a_schema(which: str) -> None:
    jsonschema.Draft202012Validator.check_schema(parsed(which))
    assert "https://json-schema.org/draft/2020-12/schema" == parsed(which)["$schema"]


def test_there_is_no_other_schema() -> None:
    with pytest.raises(Fault, match="one of problem, course"):
        schema("../problem")


@pytest.mark.parametrize("path", sorted(CONTRACT.glob("*.toml")), ids=lambda path: path.stem)
def test_the_contract_files_are_accepted(path: Path) -> None:
    assert [] == [
        error.message for error in checker("problem").iter_errors(tomllib.loads(path.read_text(encoding="utf-8")))
    ]


def test_reader_and_schema_know_the_same_keys_of_a_problem() -> None:
    in_schema = {name: set(each["properties"]) for name, each in tables(parsed("problem"))}
    assert {name: set(keys) for name, keys in KEYS.items()} == in_schema


def test_reader_and_schema_know_the_same_keys_of_a_course() -> None:
    assert set(COURSE_KEYS) == set(parsed("course")["properties"])


def test_a_course_in_a_problem_has_the_keys_of_a_course_file_and_from() -> None:
    inner = dict(parsed("problem")["properties"]["course"]["anyOf"][1]["properties"])
    assert (True, parsed("course")["properties"]) == (inner.pop("from") is not None, inner)


def test_no_table_takes_other_keys() -> None:
    assert {False} == {each["additionalProperties"] for _, each in tables(parsed("problem"))}


def test_every_key_is_described() -> None:
    missing = [
        (name, key)
        for name, table in tables(parsed("problem"))
        for key, each in table["properties"].items()
        if "description" not in each and not each.get("$ref") and key != "course"
    ]
    assert [] == missing


@pytest.mark.parametrize(
    ("kind", "word"), [(kind, word) for kind in KEY_OF_KIND for word in unit_spellings.spellings(kind)]
)
def test_every_spelling_the_reader_takes_is_accepted(kind: str, word: str) -> None:
    table, key = KEY_OF_KIND[kind]
    others = {"name": "brake", "turns": "clockwise"} if table == "couple" else {"mass": None} if key == "weight" else {}
    problem = changed(table, **(dict(JUG["load"][0]) | others if key == "weight" else others) | {key: f"1.5 {word}"})
    assert (True, True) == (reads(problem), accepts(problem))


@pytest.mark.parametrize(
    ("table", "keys"),
    [
        ("load", {"at": "-2.3 cm"}),
        ("load", {"at": "?"}),
        ("load", {"at": "50 %"}),
        ("load", {"at": None, "point": ["1 cm", "−2 cm"]}),
        ("load", {"mass": "?"}),
        ("load", {"mass": "83.9 %"}),
        ("segment", {"mass": "table", "com": "table"}),
        ("segment", {"direction": "? right of down", "range": ["0 deg", "90 deg"]}),
        ("muscle", {"direction": "70° from back toward up"}),
        ("muscle", {"direction": None, "moment_arm": "?", "turns": "clockwise", "force": "9 N"}),
        ("muscle", {"force": "2 * jug"}),
        ("muscle", {"force": "limit", "limit": "900 N"}),
        ("muscle", {"direction": None, "toward": ["1 cm", "30 cm"]}),
        ("muscle", {"count": 2, "area": "9 cm^2"}),
        ("course", {"word": "torque", "g": "9.8 m/s²", "symbols": {"biceps": "F_B"}}),
        ("course", {"resultant": ["parts", "size and direction"], "axes": "along and across the forearm and hand"}),
        ("", {"neglect": ["friction"], "balanced": False, "ask": ["total.moment"]}),
        ("couple", {"name": "brake", "moment": "500 ft-lb", "turns": "anticlockwise"}),
        ("accept", {"line": "F*4 = 29.43*33"}),
        ("accept", {"line": "F = 243 N", "because": "the arm has no weight here", "after": ["W = 29.43 N"]}),
    ],
)
def test_what_the_reader_takes_is_accepted(table: str, keys: dict[str, object]) -> None:
    problem = changed(table, **keys)
    problem["person"] = {"mass": "70 kg", "table": "winter", "sex": "female"}
    problem["segment"][0]["length"] = "40 cm"
    problem.setdefault("ask", ["total.moment"])
    assert (True, True) == (reads(problem), accepts(problem))


@pytest.mark.parametrize(
    ("table", "keys"),
    [
        ("", {"title": None}),
        ("", {"titel": "x"}),
        ("", {"segment": {"name": "forearm"}}),
        ("pivot", {"reaction": "no"}),
        ("person", {"sex": "m"}),
        ("load", {"mass": "3.0"}),
        ("load", {"mass": 3.0}),
        ("load", {"mass": "3.0 N"}),
        ("load", {"mass": "-3.0 kg"}),
        ("load", {"mass": "1e999999 kg"}),
        ("load", {"mass": "3,5 kg"}),
        ("load", {"mass": "007 kg"}),
        ("load", {"mass": None}),
        ("load", {"at": None}),
        ("load", {"weight": "3 N"}),
        ("load", {"point": ["1 cm", "2 cm"]}),
        ("load", {"name": "reaction"}),
        ("load", {"name": "jug.2"}),
        ("load", {"at": "33 kg"}),
        ("segment", {"com": None}),
        ("segment", {"length": "0x10 cm"}),
        ("muscle", {"name": None}),
        ("muscle", {"direction": "sideways"}),
        ("muscle", {"direction": None}),
        ("muscle", {"turns": "clockwise"}),
        ("muscle", {"toward": ["1 cm", "2 cm"]}),
        ("muscle", {"at": None}),
        ("muscle", {"count": 0}),
        ("muscle", {"count": True}),
        ("muscle", {"force": "strong"}),
        ("muscle", {"forse": "9 N"}),
        ("course", {"word": "momentum"}),
        ("course", {"figures": "3"}),
        ("course", {"symbols": {"biceps": "F B"}}),
        ("course", {"g": "9.81"}),
        ("course", {"lengths": "miles"}),
        ("couple", {"name": "brake", "moment": "12 N"}),
        ("force", {"name": "rope", "at": "9 cm", "direction": "up"}),
        ("accept", {"because": "no line"}),
        ("accept", {"line": ""}),
        ("accept", {"line": "words alone"}),
        ("accept", {"line": "F = 3\nR = 4"}),
        ("accept", {"line": 3}),
        ("accept", {"line": "F = 3", "after": "W = 4"}),
        ("accept", {"line": "F = 3", "why": "no"}),
    ],
)
def test_what_the_reader_refuses_is_refused(table: str, keys: dict[str, object]) -> None:
    problem = changed(table, **keys)
    assert (False, False) == (reads(problem), accepts(problem))
