"""The floors of the building, read from the imports: a module rests on its own floor and on those below."""
from __future__ import annotations

import ast
import subprocess
import sys
from fnmatch import fnmatchcase

import pytest
from imports import FILES, ROOT, below, importers, imports, own

# From the ground up. A new module is a new word in this table; a word with * stands for a family, those that it has now and those to come.
FLOORS: tuple[tuple[str, str], ...] = (
    ("explain", "equation convention quantity spellings field bounds interval kinds replace faults problem passage volume english linear slots magnitudes"),
    ("explain.write", "clean notation setting plain prose"),  # how one line is written: the crash of a rule is written too
    ("explain", "ways locate fields tables amounts directions nouns courses sheet agreement asked schema files "
                "phrases questions statement plausible output needs"),
    ("explain.reading", "*"),                                 # what students type, read to a tree: it rests on the ground alone
    ("", "explain.reading"),
    ("explain", "letters body laying free geometry truth claim conditions unsettled sine_roots settle postures"),
    ("explain", "branches compared roundings premise check"),
    ("explain", "board wanted turning plan rule float_sizes true_letters second_opinion"),
    ("rules", "example setup algebra units numbers setup.* algebra.* units.* numbers.*"),
    ("", "rules"),
    ("explain", "solve answers side_by_side drift outcome"),
    ("rules", "checks checks.*"),
    ("explain", "wording saying meaning legend places drawing"),
    ("explain", "telling sections compose"),
    # The engines: what is made of worked problems and of students' lines. One word for each, before it is there or after.
    ("explain", "account* entry* verdict* slip* diagnose* marks* scheme* charges* costs* discreet* handed_in* sights* subjects* "
                "report* tally* series* vary* sheet_page*"),
    ("rules", "slips slips.*"),                               # what students get wrong, each played on an account
    ("explain.write", "*"),                                   # all other writers
    ("", "explain.write"),
    ("explain", "progress report_files join join_*"),
    ("explain", "crew* manual* cluster handing_out"),                             # what works whole files, many at a time
    ("explain", "cli cli_*"),
    ("", "explain"),
)
GROUND = {f"explain.{name}" for name in ["bounds", "convention", "equation", "field", "interval", "kinds", "problem", "replace", "spellings"]}


def floors_of(module: str) -> list[int]:
    """The floors whose words name a module; its own name goes before a family's."""
    words = [(level, ".".join(filter(None, (package, name)))) for level, (package, names) in enumerate(FLOORS) for name in names.split()]
    exact = [level for level, name in words if name == module]
    return exact or sorted({level for level, name in words if fnmatchcase(module, name)})


FLOOR = {module: min(floors_of(module), default=-1) for module in FILES}
BELIEVED = GROUND - {"explain.spellings"} | {f"explain.{name}" for name in (
    "body branches claim compared faults letters premise roundings truth".split())}


def test_every_module_stands_on_one_floor() -> None:
    assert {} == {module: floors_of(module) for module in FILES if len(floors_of(module)) != 1}


def test_every_name_in_the_table_is_a_module_or_a_family() -> None:
    named = [".".join(filter(None, (package, name))) for package, names in FLOORS for name in names.split()]
    assert [] == [name for name in named if "*" not in name and name not in FILES]
    assert len(named) == len(set(named))


@pytest.mark.parametrize("module", [each for each in FILES if each.startswith("explain.reading")])
def test_reading_rests_on_the_ground_alone(module: str) -> None:
    """It knows letters and units, no problem that is worked: what a student meant is for others to judge."""
    assert [] == sorted(each for each in own(module) if not each.startswith("explain.reading") and each not in GROUND)


@pytest.mark.parametrize("module", FILES)
def test_a_module_rests_on_its_own_floor_and_on_those_below(module: str) -> None:
    assert sorted(each for each in own(module) if FLOOR[each] > FLOOR[module]) == []


def test_no_two_modules_rest_on_each_other() -> None:
    assert sorted(module for module in FILES if module in below(module)) == []


def test_only_the_joint_imports_the_rules() -> None:
    assert {module for module in FILES if module.startswith("explain") and any(each.split(".")[0] == "rules" for each in imports(module))} \
        == {"explain.join"}


@pytest.mark.parametrize("module", ("explain.check", "explain.premise", "explain.field"))
def test_what_is_believed_rests_on_no_rule_no_wording_and_no_units_library(module: str) -> None:
    assert below(module) - BELIEVED == set()


# What runs when a line is certified, and so what must be right for a false line to be refused. Everything else may be wrong without a false
# line's being certified: how a problem is read and cut free decides what is asked, and the rules only offer lines.
TRUSTED = {f"explain.{name}" for name in (
    "body bounds branches check claim compared equation field interval kinds premise replace roundings truth".split())}


def test_the_checker_runs_the_modules_that_are_trusted_and_no_others() -> None:
    asked = "import sys, explain.check; print(*(each for each in sys.modules if each.startswith(('explain.', 'rules'))))"
    found = subprocess.run([sys.executable, "-c", asked], capture_output=True, text=True, check=True, cwd=ROOT).stdout.split()
    assert set(found) == TRUSTED


def test_what_is_trusted_stays_small() -> None:
    """Lines of code without blank lines, comments and docstrings; with them it is half as much again."""
    assert sum(_lines_of_code(FILES[module].read_text("utf-8")) for module in TRUSTED) < 1400


def _lines_of_code(source: str) -> int:
    said = {line for node in ast.walk(ast.parse(source)) if isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant)
            for line in range(node.lineno, (node.end_lineno or node.lineno) + 1)}
    return sum(1 for number, line in enumerate(source.splitlines(), 1) if line.split("#")[0].strip() and number not in said)


def test_one_module_knows_the_units_library() -> None:
    assert importers("pint") == {"explain.quantity"}


def test_the_algebra_library_is_known_to_the_truth_and_for_its_number_theory_to_the_field() -> None:
    assert importers("sympy") == {"explain.truth", "explain.field"}
    assert {each for each in imports("explain.field") if each.startswith("sympy")} <= {"sympy.ntheory", "sympy.ntheory.residue_ntheory"}


def test_the_command_line_library_is_known_to_the_command_line_alone() -> None:
    commands = {module for module in FILES if module.startswith("explain.cli")}
    assert {"explain.cli"} <= importers("click") <= {*commands, "explain.progress"}


def test_no_other_module_can_make_a_certified_line() -> None:
    """The seal is named in one file, and no other file calls the class."""
    calls = {module: [node for node in ast.walk(ast.parse(path.read_text("utf-8"))) if _makes(node)] for module, path in FILES.items()}
    assert {module for module, path in FILES.items() if "_SEAL" in path.read_text("utf-8")} == {"explain.check"}
    assert {module for module, found in calls.items() if found} == {"explain.check"}
    assert len(calls["explain.check"]) == 1


def _makes(node: ast.AST) -> bool:
    return isinstance(node, ast.Call) and (getattr(node.func, "id", "") or getattr(node.func, "attr", "")) == "Certified"


def test_a_writer_knows_no_mechanics() -> None:
    """Only JSON, which is the answers themselves, looks at a worked problem or a marked working."""
    allowed = {"equation", "passage", "volume", "english"}
    writers = [module for module in FILES if module.startswith("explain.write.") and not module.endswith("json")]
    found = {module: sorted(each for each in own(module) if not each.startswith("explain.write") and each.removeprefix("explain.") not in allowed)
             for module in writers}
    assert {module: each for module, each in found.items() if each} == {}
