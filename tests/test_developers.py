"""DEVELOPERS.md says what the tree is: its folders in their order, and the way of one problem through them."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from imports import FILES, ROOT
from test_floors import FLOORS, folder
from walk import WALK, first_runs, rests_on

TEXT = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
FOLDER = {module: folder(module) for module in FILES}


def rows(head: str) -> list[list[str]]:
    """The cells of a table under its head."""
    body = re.search(rf"^\| {head}.*\n\|[-|]+\|\n((?:\|.*\n)+)", TEXT, re.MULTILINE)
    assert body is not None
    return [[cell.strip() for cell in line.strip("|").split("|")] for line in body[1].splitlines()]


def test_the_table_of_folders_is_that_of_the_floors() -> None:
    assert list(FLOORS) == [row[0].replace("`", "") for row in rows("from the ground up")]


def test_the_walk_is_in_the_order_in_which_a_problem_runs() -> None:
    told = [row[0].strip("`") for row in rows("stage")]
    assert (list(WALK), told) == (told, first_runs(ROOT / "tests" / "contract" / "jug-level.toml", FOLDER))


@pytest.mark.parametrize("row", rows("stage"), ids=lambda row: row[0])
def test_a_stage_of_the_walk_rests_on_those_it_imports(row: list[str]) -> None:
    assert set(row[2].replace("`", "").split()) == rests_on(row[0].strip("`"), FOLDER)


def test_every_file_that_is_named_exists() -> None:
    named = set(re.findall(r"`((?:tests|explain|rules|samples)/[\w/.-]+)`", TEXT))
    inside = set(re.findall(r"`((?:check|mechanics|equation|problem|marking|document|solve|cli)/[\w/.-]+)`", TEXT))
    paths = {ROOT / each for each in named} | {ROOT / "explain" / each for each in inside}
    missing = [each for each in paths if not (each.exists() or each.with_suffix(".py").exists())]
    assert (True, [ROOT / "rules/slips/name_of_it.py"]) == (len(named) > 10, missing)


def test_every_bench_is_told() -> None:
    assert sorted(path.name for path in Path(ROOT / "tests" / "bench").glob("bench_*.py")) == sorted(
        set(re.findall(r"`(bench_\w+\.py)`", TEXT))
    )
