"""The floors of the building, read from the imports: a folder rests on those below it, never on those above."""

from __future__ import annotations

import ast
import subprocess
import sys

import pytest
from imports import FILES, ROOT, below, importers, imports, own

# From the ground up: a folder of `explain` (or a module that lies beside the folders) a word, and those of `rules` by
# their whole names. A folder may rest on those of its own line only where it is named behind them.
FLOORS = (
    "errors equation",
    "input output exact table document jobs",
    "formula reference marking/reading",
    "problem",
    "wording mechanics",
    "check",
    "solve",
    "rules/example_boards rules/units rules/numbers rules/algebra rules/setup rules/checks",
    "walkthrough",
    "marking/slips",
    "rules/slips rules",
    "marking/judging marking/marks",
    "write write/figure write/html write/markdown write/text write/latex write/pdf write/formats write/qti",
    "marking/report",
    "api",
    "series vary manual sheet",
    "tally lesson",
    "export",
    "desk",
    "cli",
)
FOLDERS = [word for line in FLOORS for word in line.split()]
# What runs when a line is certified, and so what must be right for a false line to be refused. Everything else may be
# wrong without a false line's being certified: how a problem is read and cut free decides what is asked, and the rules
# only offer lines.
TRUSTED = {
    f"explain.{name}"
    for name in (
        "check check.angle_branch check.checker check.claim check.comparison check.premise check.roundings "
        "check.trials equation equation.key equation.terms equation.substitution exact exact.bounds exact.dimensions "
        "exact.interval exact.prime_field mechanics mechanics.body mechanics.truth"
    ).split()
}


def folder(module: str) -> str:
    """The word of the table that a module belongs to, "" for the face of the package and of the marking."""
    package, _, rest = module.partition(".")
    parts = [package, *rest.split(".")] if package == "rules" else rest.split(".")
    words = ["/".join(parts[:length]) for length in range(len(parts), 0, -1)]
    return next((word for word in words if word in FOLDERS), "")


PLACED = [module for module in FILES if module not in ("explain", "explain.marking")]


def test_every_module_lies_in_a_folder_of_the_table() -> None:
    assert [] == [module for module in PLACED if not folder(module)]


def test_every_word_of_the_table_is_a_folder_or_a_module() -> None:
    assert set(FOLDERS) == {folder(module) for module in PLACED}
    assert len(set(FOLDERS)) == len(FOLDERS)


def test_a_folder_rests_on_those_below_it() -> None:
    floor = {word: level for level, line in enumerate(FLOORS) for word in line.split()}
    place = {word: number for number, word in enumerate(FOLDERS)}
    above = {
        (module, other)
        for module in PLACED
        for other in own(module)
        if folder(other) != folder(module)
        and (floor[folder(other)] > floor[folder(module)] or place[folder(other)] > place[folder(module)])
    }
    assert above == set()


def test_no_two_modules_rest_on_each_other() -> None:
    assert sorted(module for module in FILES if module in below(module)) == []


def test_few_modules_lie_flat() -> None:
    assert {path.stem for path in (ROOT / "explain").glob("*.py")} == {
        "__init__",
        "api",
        "errors",
        "input",
        "output",
        "table",
    }


def test_every_folder_says_what_it_is() -> None:
    said = {
        path: ast.get_docstring(ast.parse(path.read_text("utf-8")))
        for package in ("explain", "rules")
        for path in (ROOT / package).rglob("__init__.py")
    }
    assert [] == [path for path, text in said.items() if not text or not text.split("\n")[0].endswith(".")]


def test_reading_rests_on_the_ground_alone() -> None:
    """It knows letters and units, no problem that is worked: what a student meant is for others to judge."""
    rests = {folder(each) for module in FILES if folder(module) == "marking/reading" for each in own(module)}
    assert rests <= {"marking/reading", "equation", "exact", "errors"}


def test_writers_know_no_mechanics_no_marking_and_no_course() -> None:
    rests = {folder(each) for module in FILES if folder(module).startswith("write") for each in own(module)}
    allowed = {word for word in FOLDERS if word.startswith("write")} | {"equation", "document", "formula", "errors"}
    assert rests <= allowed


def test_the_desk_alone_serves() -> None:
    """What it is served by is an extra: nothing else may rest on it."""
    served = {"starlette", "uvicorn", "anyio"}
    assert {"desk"} == {folder(module) for module in FILES if served & {each.split(".")[0] for each in imports(module)}}


def test_one_module_imports_the_rules() -> None:
    joined = {
        module
        for module in FILES
        if module.startswith("explain")
        for each in imports(module)
        if each.split(".")[0] == "rules"
    }
    assert joined == {"explain.api"}


@pytest.mark.parametrize("module", ("explain.check.checker", "explain.check.premise", "explain.exact.prime_field"))
def test_what_is_trusted_rests_on_no_rule_no_wording_and_no_units_library(module: str) -> None:
    read_only = {
        "explain.mechanics.letters",
        "explain.problem.model",
        "explain.problem.course",
        "explain.errors",
        "explain.problem",
    }
    assert below(module) - TRUSTED - read_only - {"explain"} == set()


def test_the_checker_runs_the_modules_that_are_trusted_and_no_others() -> None:
    asked = (
        "import sys, explain.check.checker; print(*(each for each in sys.modules if "
        "each.startswith(('explain.', 'rules'))))"
    )
    found = subprocess.run(
        [sys.executable, "-c", asked], capture_output=True, text=True, check=True, cwd=ROOT
    ).stdout.split()
    assert set(found) == TRUSTED


def test_what_is_trusted_stays_small() -> None:
    """Statements, docstrings among them, so that it does not matter how lines are broken."""
    assert sum(_statements(FILES[module].read_text("utf-8")) for module in TRUSTED) < 1500


def _statements(source: str) -> int:
    return sum(isinstance(node, ast.stmt) for node in ast.walk(ast.parse(source)))


def test_one_module_knows_the_units_library() -> None:
    assert importers("pint") == {"explain.problem.quantity"}


def test_one_folder_knows_the_libraries_that_set_pages() -> None:
    users = importers("weasyprint") | importers("ziamath") | importers("pydyf") | importers("ziafont")
    # Labels of a figure are placed by their outlines, so one module of the figures asks the library for these.
    assert {module for module in users if folder(module) != "write/pdf"} == {"explain.write.figure.outlines"}


def test_the_algebra_library_is_known_to_the_truth_and_for_its_number_theory_to_the_field() -> None:
    assert importers("sympy") == {"explain.mechanics.truth", "explain.exact.prime_field"}
    theory = {each for each in imports("explain.exact.prime_field") if each.startswith("sympy")}
    assert theory <= {"sympy.ntheory", "sympy.ntheory.residue_ntheory"}


def test_the_command_line_library_is_known_to_the_command_line_alone() -> None:
    assert {folder(module) for module in importers("click")} <= {"cli", "jobs"}


def test_no_other_module_can_make_a_certified_line() -> None:
    """The seal is named in one file, and no other file calls the class."""
    calls = {
        module: [node for node in ast.walk(ast.parse(path.read_text("utf-8"))) if _makes(node)]
        for module, path in FILES.items()
    }
    assert {module for module, path in FILES.items() if "_SEAL" in path.read_text("utf-8")} == {"explain.check.checker"}
    assert {module for module, found in calls.items() if found} == {"explain.check.checker"}
    assert len(calls["explain.check.checker"]) == 1


def _makes(node: ast.AST) -> bool:
    return (
        isinstance(node, ast.Call) and (getattr(node.func, "id", "") or getattr(node.func, "attr", "")) == "Certified"
    )
