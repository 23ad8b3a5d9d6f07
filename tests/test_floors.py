"""The floors of the building, read from the imports: a module rests on its own floor and on those below."""
from __future__ import annotations

import ast

import pytest
from imports import FILES, below, importers, imports, own

# From the ground up. A new module is a new word in this table.
FLOORS: tuple[tuple[str, str], ...] = (
    ("explain", "equation convention quantity spellings field interval kinds replace faults problem passage english"),
    ("explain.write", "clean notation setting plain"),        # how one line is written: the crash of a rule is written too
    ("explain", "locate fields tables amounts directions nouns courses sheet agreement asked schema files phrases questions statement plausible"),
    ("explain", "letters body free geometry truth claim settle"),
    ("explain", "premise check board rule plan"),
    ("rules", "example setup algebra units numbers setup.arm setup.at_rest setup.fold_angle setup.forces setup.moment setup.moments setup.pivot "
              "setup.relation setup.resultant setup.stress setup.turning algebra.add algebra.carry algebra.divide algebra.expand algebra.gather "
              "algebra.invert algebra.multiply_out algebra.one_sine algebra.put algebra.put_share algebra.split algebra.take_root algebra.tangent "
              "units.convert numbers.round_answer numbers.work_out"),
    ("", "rules"),
    ("explain", "solve answers outcome"),
    ("rules", "checks checks.angle_exists checks.arm_not_longer checks.distance_on_limb checks.force_balance checks.lever checks.limits "
              "checks.oblique_part checks.on_the_segment checks.parallel checks.plausible checks.pressing checks.pulls checks.put_back "
              "checks.second_pivot checks.size_against_load checks.slope checks.triangle checks.units"),
    ("explain", "wording saying sections legend places drawing compose"),
    ("explain.write", "columns equation_image fig_angles fig_arms fig_axes fig_body fig_forces fig_frame fig_outlines fig_rows fig_shapes fig_spans fig_svg "
                      "figure html ink json labels latex lines markdown markdown_line markup mathml paper pdf press prose sheets shelf spacing speech text text_rows ua"),
    ("", "explain.write"),
    ("explain", "output join"),
    ("explain", "cli"),
    ("", "explain"),
)
FLOOR = {".".join(filter(None, (package, name))): level for level, (package, names) in enumerate(FLOORS) for name in names.split()}
BELIEVED = {"explain." + name for name in "body claim convention equation faults field interval kinds letters premise problem replace truth".split()}


def test_every_module_stands_on_one_floor() -> None:
    listed = [".".join(filter(None, (package, name))) for package, names in FLOORS for name in names.split()]
    assert sorted(listed) == sorted(FILES)


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


def test_one_module_knows_the_units_library() -> None:
    assert importers("pint") == {"explain.quantity"}


def test_the_algebra_library_is_known_to_the_truth_and_for_its_number_theory_to_the_field() -> None:
    assert importers("sympy") == {"explain.truth", "explain.field"}
    assert {each for each in imports("explain.field") if each.startswith("sympy")} <= {"sympy.ntheory", "sympy.ntheory.residue_ntheory"}


def test_the_command_line_library_is_known_to_the_command_line_alone() -> None:
    assert importers("click") == {"explain.cli"}


def test_no_other_module_can_make_a_certified_line() -> None:
    """The seal is named in one file, and no other file calls the class."""
    calls = {module: [node for node in ast.walk(ast.parse(path.read_text("utf-8"))) if _makes(node)] for module, path in FILES.items()}
    assert {module for module, path in FILES.items() if "_SEAL" in path.read_text("utf-8")} == {"explain.check"}
    assert {module for module, found in calls.items() if found} == {"explain.check"}
    assert len(calls["explain.check"]) == 1


def _makes(node: ast.AST) -> bool:
    return isinstance(node, ast.Call) and (getattr(node.func, "id", "") or getattr(node.func, "attr", "")) == "Certified"


def test_a_writer_knows_no_mechanics() -> None:
    """Only JSON, which is the answers themselves, looks at a worked problem."""
    allowed = {"equation", "passage", "english"}
    writers = [module for module in FILES if module.startswith("explain.write.") and module != "explain.write.json"]
    found = {module: sorted(each for each in own(module) if not each.startswith("explain.write") and each.removeprefix("explain.") not in allowed)
             for module in writers}
    assert {module: each for module, each in found.items() if each} == {}
