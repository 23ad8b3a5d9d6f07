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
from explain.manual import book
from explain.problem.schema import SCHEMAS, schema
from explain.problem.toml_values import assigned

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


def properties(node: Any, place: str = "") -> Iterator[tuple[str, dict[str, Any]]]:
    """Every property at any depth of a schema with its place; what an `if` asks for is none."""
    if isinstance(node, list):
        for number, each in enumerate(node):
            yield from properties(each, f"{place}/{number}")
    if isinstance(node, dict):
        for key, each in node.items():
            if key == "properties":
                yield from ((f"{place}/{name}", one) for name, one in each.items())
            if key != "if":
                yield from properties(each, f"{place}/{key}")


@pytest.mark.parametrize("which", SCHEMAS)
def test_every_property_of_every_schema_is_described(which: str) -> None:
    whole = parsed(which)
    found = dict(properties(whole))
    described = {
        place: each.get("description") or whole["$defs"][each["$ref"].rpartition("/")[2]].get("description")
        for place, each in found.items()
        if "description" in each or "$ref" in each
    }
    assert (True, []) == (len(found) > 10, [place for place in found if not described.get(place)])


BOOK = Path(__file__).parents[1] / "samples" / "book" / "book.toml"


def test_reader_and_schema_know_the_same_keys_of_a_book() -> None:
    assert set(book._KEYS) == set(parsed("book")["properties"])


@pytest.mark.parametrize(
    ("changes", "good"),
    [
        ({}, True),
        ({"index": False, "numbering": "book", "diagram": 0}, True),
        ({"title": None}, False),
        ({"chapters": None}, False),
        ({"chapters": []}, False),
        ({"chapters": ["one-hinge.md", "one-hinge.md"]}, False),
        ({"chapters": ["book.toml"]}, False),
        ({"chapter": ["one-hinge.md"]}, False),
        ({"edition": "teacher"}, False),
        ({"working": 201}, False),
        ({"index": "no"}, False),
    ],
)
def test_reader_and_schema_agree_about_books(changes: dict[str, object], good: bool, tmp_path: Path) -> None:
    keys = {**tomllib.loads(BOOK.read_text("utf-8")), **changes}
    keys = {key: value for key, value in keys.items() if value is not None and key != "course"}
    (tmp_path / "book.toml").write_text("\n".join(assigned(keys)), "utf-8")
    for name in ("one-hinge.md", "slanting-pulls.md", "turned-round.md"):
        (tmp_path / name).write_text("# One\n", "utf-8")
    try:
        book.read_book(tmp_path / "book.toml")
        read = True
    except Fault:
        read = False
    assert (good, good) == (read, checker("book").is_valid(keys))


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
