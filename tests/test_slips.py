"""The slips: what each module must have, the catalogue's numbers, what is silent."""

from __future__ import annotations

import ast
import json
import re
import string
from collections.abc import Iterator
from dataclasses import replace
from functools import cache
from math import cos, radians, sin
from pathlib import Path

import pytest
from slip_problems import account
from slips_made import KEPT, made
from slips_numbers import numbers
from worked import HERE, SAMPLES, worked

from explain.marking.slips.account import Account, Impossible, Spoilt, Values
from explain.marking.slips.account_of_working import account_of
from explain.marking.slips.slip import SlipRule, changed, named, spoilt_accounts
from rules.slips import SLIPS

TABLE = json.loads((HERE / "slips_table.json").read_text("utf-8"))["slips"]
BY_NAME = {each.SLIP: each for each in SLIPS}
LAYOUT = {"run-on-equals"}  # right step by step, and loose in layout alone
FORBIDDEN = (
    "silly",
    "careless",
    "obviously",
    "obvious",
    "just",
    "simply",
    "stupid",
    "you",
    "your",
    "student",
    "mistake",
    "of course",
)
POUND = 4.4482216152605
# How common a slip is, as the catalogue has it: common practice of marking, no source.
COMMON = {
    4: (
        "angle-ignored-load angle-reference-not-stated angle-wrong-reference calculator-order direction-missing "
        "divide-one-term figures-overstated force-balance-only horizontal-part-forgotten insertion-used-as-arm "
        "mass-for-weight mixed-length-units reaction-missing reaction-omits-muscle reaction-wrong-sense "
        "rounded-too-early segment-at-tip segment-left-out sign-of-a-term sine-cosine-swap-load "
        "sine-cosine-swap-muscle term-moved-sign-kept unit-label-wrong unit-missing wrong-pivot-distance"
    ),
    3: (
        "adding-arms angle-applied-to-level-distance arctan-upside-down arithmetic-slip arms-swapped bracket-slip "
        "chain-distance-not-added com-at-midpoint com-from-wrong-end decimal-shift digit-transposed "
        "divide-wrong-way g-in-one-term-only g-twice kilogram-answer limb-share-forgotten "
        "loads-merged-at-one-point moment-balance-for-reaction muscle-angle-to-horizontal negative-muscle "
        "percent-of-wrong-base perpendicular-arm-resolved-again pound-as-mass reaction-along-bone "
        "reaction-components-swapped reaction-equals-muscle reaction-on-other-body resultant-by-adding "
        "same-trig-for-all scale-force-direction second-segment-left-out stance-leg-not-removed stopped-at-moment "
        "torque-in-newton-centimetre-mislabelled up-positive-both-sides wrong-datum wrong-quadrant wrong-table-row"
    ),
    2: (
        "axial-part-counted divide-by-trig g-divided gram-kilogram-slip helper-muscle-left-out inch-foot-mix "
        "included-for-flexion inverse-ratio limb-share-twice multiply-for-divide percent-slip pound-kilogram-slip "
        "pythagoras-broken radian-mode reaction-in-moment-equation segment-counted-twice share-rule-reversed "
        "tangent-for-sine torque-by-division unequal-net"
    ),
    1: "grad-mode load-left-out sum-instead-of-product",
}

# Where the catalogue's quantities stand in an account, and what SI is divided by.
WHERE = {
    ("REF", "F_m"): ("biceps.force", 1),
    ("REF", "R"): ("reaction", 1),
    ("S01", "F_m"): ("flexors.force", 1),
    ("S02", "R"): ("reaction", 1),
    ("S03", "forearm mass"): ("forearm.mass", 1),
    ("S03", "F_m"): ("flexors.force", 1),
    ("S03", "forearm centre of mass"): ("forearm.com", 0.01),
    ("S03", "hand distance"): ("*arm hand", 0.01),
    ("S04", "F_a"): ("flexors.force", 1),
    ("S05", "R"): ("reaction", 1),
    ("S05", "beta"): ("*angle reaction", 1),
    ("S05", "direction from +x"): ("*direction reaction", 1),
    ("S06", "F_1"): ("biceps.force", 1),
    ("S07", "F_m"): ("triceps.force", 1),
    ("S07", "F_m (signed, up +)"): ("triceps.force", 1),
    ("S11", "F_m"): ("abductors.force", 1),
    ("S13", "F_m"): ("calf.force", 1),
    ("S14", "F_m"): ("tibialis anterior.force", POUND),
    ("S14", "F_m in N"): ("tibialis anterior.force", 1),
    ("S17", "B_a"): ("masseter.force", 1),
    ("S18", "x"): ("bag.at", 0.01),
}
NOT_AS_A_NUMBER = {
    "kilogram-answer": "the unit of the answer",
    "unit-label-wrong": "the unit of the answer",
    "stopped-at-moment": "which value is given as the answer",
    "torque-in-newton-centimetre-mislabelled": "the unit of a moment",
    "inverse-ratio": "a sine above one, which no angle has",
    "included-for-flexion": "the example is silent: the arm there is written with a sine",
}
SEEN_IN_A_LINE = {  # they show in how a line is written, and not, or not always, in an account
    "angle-reference-not-stated",
    "arithmetic-slip",
    "digit-transposed",
    "direction-missing",
    "figures-overstated",
    "inverse-ratio",
    "kilogram-answer",
    "moment-balance-for-reaction",
    "negative-muscle",
    "percent-of-wrong-base",
    "radian-mode",
    "reaction-in-moment-equation",
    "reaction-missing",
    "rounded-too-early",
    "stopped-at-moment",
    "torque-in-newton-centimetre-mislabelled",
    "unit-label-wrong",
    "unit-missing",
}
EXAMPLES = [each for each in TABLE if "wrong" in each and each["id"] not in NOT_AS_A_NUMBER]


def _problem(row: dict[str, str]) -> str:
    return "REF with a hand" if row["id"] == "segment-counted-twice" else row["scenario"]


def _values(slip: str, of: Account) -> Iterator[tuple[Spoilt, Values]]:
    for spoilt in BY_NAME[slip].do(of):
        try:
            yield spoilt, spoilt.account.values()
        except Impossible:
            continue


@pytest.mark.parametrize("row", EXAMPLES, ids=[each["id"] for each in EXAMPLES])
def test_a_slip_gives_the_number_of_the_catalogue(row: dict[str, str]) -> None:
    """Source of both numbers: the project's own catalogue, computed (tests/slips_numbers.py)."""
    of, (key, unit) = account(_problem(row)), WHERE[row["scenario"], row["quantity"]]
    assert of.values()[key] / unit == pytest.approx(float(row["true"]), rel=1e-3)
    assert [
        key
        for _, values in _values(row["id"], of)
        if values[key] / unit == pytest.approx(float(row["wrong"]), rel=1e-3)
    ] != []


def test_the_numbers_of_the_catalogue_are_those_of_hand_formulas() -> None:
    rows, made = {row["id"]: row for row in TABLE if "wrong" in row}, numbers()
    assert len(rows) > 60 and rows.keys() == made.keys()
    for slip, row in rows.items():
        assert made[slip] == pytest.approx(float(row["wrong"]), rel=5e-5), slip


def test_every_example_is_reproduced_or_its_reason_is_told() -> None:
    assert {each["id"] for each in TABLE if "wrong" in each} == {each["id"] for each in EXAMPLES} | set(NOT_AS_A_NUMBER)
    assert set() == {slip for slip, why in NOT_AS_A_NUMBER.items() if "example" not in why} - SEEN_IN_A_LINE


def test_one_function_for_all_forces_by_hand() -> None:
    weight, level, angle = 3.2 * 9.81 * 0.20 * cos(radians(35)), 60 * 0.38, radians(35)
    of = account("a level cord")
    assert of.values()["quadriceps.force"] == pytest.approx((weight + level * sin(angle)) / 0.042)
    assert [values["quadriceps.force"] for _, values in _values("same-trig-for-all", of)] == pytest.approx(
        [(weight + level * cos(angle)) / 0.042]
    )


def test_an_angle_applied_to_a_level_distance_by_hand() -> None:
    trunk, crate, angle = 38 * 9.81 * 0.26 * cos(radians(40)), 15 * 9.81 * 0.45, radians(40)
    found = [
        values["back muscles.force"]
        for _, values in _values("angle-applied-to-level-distance", account("a leaning trunk"))
    ]
    assert sorted(found) == pytest.approx(
        sorted(((trunk + crate * sin(angle)) / 0.055, (trunk + crate * cos(angle)) / 0.055))
    )


def test_one_term_divided_by_hand_in_both_units_of_length() -> None:
    bag, forearm, arm = (m * 9.81 * s * cos(radians(25)) for m, s in ((5.0, 0.34), (1.6, 0.17), (1.0, 1.0)))
    arm = 0.05 * sin(radians(58))
    found = [values["biceps.force"] for _, values in _values("divide-one-term", account("REF"))]
    expected = [one / arm + other * unit for one, other in ((bag, forearm), (forearm, bag)) for unit in (1, 100)]
    assert [each for each in expected if not any(number == pytest.approx(each) for number in found)] == []


def test_every_account_that_a_slip_makes_is_the_one_that_was_read() -> None:
    """The values for which slips_table.json has none were worked out by hand where one term or arm is another."""
    assert made().splitlines() == KEPT.read_text("utf-8").splitlines()


# ---------------------------------------------------------------------- what is silent
@cache
def _all(name: str) -> tuple[tuple[Spoilt, Values], ...]:
    return spoilt_accounts(account(name), SLIPS)


def _slips(name: str) -> set[str]:
    return {one.slip for spoilt, _ in _all(name) for one in (spoilt, *spoilt.also)}


def test_no_account_that_agrees_with_the_truth_is_reported() -> None:
    for name in ("REF", "S03", "S05", "S07", "S18", "S19"):
        true = account(name).values()
        assert [spoilt.slip for spoilt, values in _all(name) if spoilt.touched not in changed(true, values)] == []


@pytest.mark.parametrize(
    ("problem", "silent"),
    (
        (
            "S01",
            {
                "insertion-used-as-arm",
                "sine-cosine-swap-muscle",
                "calculator-order",
                "muscle-angle-to-horizontal",
                "angle-ignored-load",
                "radian-mode",
            },
        ),
        ("S05", {"muscle-angle-to-horizontal", "angle-ignored-load", "bracket-slip"}),  # the bone is level
        (
            "S02",
            {"horizontal-part-forgotten", "resultant-by-adding", "reaction-components-swapped"},
        ),  # every force is upright
        ("S02", {"up-positive-both-sides", "share-rule-reversed", "percent-slip", "pound-as-mass", "inch-foot-mix"}),
        ("S19", {"divide-wrong-way", "divide-one-term", "term-moved-sign-kept"}),
    ),
)  # an angle is sought
def test_a_slip_without_effect_is_not_reported(problem: str, silent: set[str]) -> None:
    assert _slips(problem) & silent == set()


def test_at_forty_five_degrees_sine_and_cosine_are_the_same() -> None:
    at_45 = {"sine-cosine-swap-load", "angle-wrong-reference", "same-trig-for-all"}
    of = account("a level cord")
    legs = {
        each.name: tuple(replace(leg, turned=replace(leg.turned, degrees=45.0)) for leg in each.legs)
        for each in of.items
    }
    even = replace(of, items=tuple(replace(each, legs=legs[each.name]) for each in of.items))
    found = [
        {one.slip for spoilt, _ in spoilt_accounts(each, SLIPS) for one in (spoilt, *spoilt.also)} & at_45
        for each in (of, even)
    ]
    assert found == [at_45, set()]


def test_a_slip_that_makes_the_problem_impossible_is_dropped() -> None:
    of = account("S19")
    light = [spoilt.account for spoilt in BY_NAME["mass-for-weight"].do(of)]
    with pytest.raises(Impossible):
        light[0].values()
    assert "mass-for-weight" not in _slips("S19")


def test_slips_with_the_very_same_values_are_one_with_all_their_names() -> None:
    same = [{spoilt.slip, *(each.slip for each in spoilt.also)} for spoilt, _ in _all("REF")]
    assert [each for each in same if {"sine-cosine-swap-load", "angle-wrong-reference"} <= each] != []
    assert [each for each in same if {"angle-ignored-load", "bracket-slip"} <= each] != []
    assert [each for each in same if {"horizontal-part-forgotten"} < each] == []


# ---------------------------------------------------------------------- what a module must have
@pytest.mark.parametrize("rule", SLIPS, ids=[each.SLIP for each in SLIPS])
def test_a_slip_has_all_its_parts(rule: SlipRule) -> None:
    says, path = rule.SAYS, Path(str(getattr(rule, "__file__", "")))
    first = " ".join((ast.get_docstring(ast.parse(path.read_text("utf-8"))) or "").partition("\n\n")[0].split())
    assert path.stem == rule.SLIP.replace("-", "_")
    assert first.endswith(".")
    assert rule.COMMON in (1, 2, 3, 4) and rule.FAMILY
    assert (rule.do.__doc__ or "").rstrip().endswith(".")
    assert "" == says.question or says.question.endswith("?")


@pytest.mark.parametrize("rule", SLIPS, ids=[each.SLIP for each in SLIPS])
def test_three_hints_of_rising_strength_without_a_number_or_a_word_about_a_person(rule: SlipRule) -> None:
    says = rule.SAYS
    hints = (says.light, says.medium, says.strong)
    texts = (says.title, says.says, *hints, says.question, says.item, says.angle)
    assert (3, []) == (len(set(hints)), [each for each in hints if not each.endswith((".", "?"))])
    assert [each for each in texts if re.search(r"\d", each)] == []
    assert [word for word in FORBIDDEN for each in texts if re.search(rf"\b{word}\b", each, re.IGNORECASE)] == []
    assert {slot for each in texts for _, slot, *_ in string.Formatter().parse(each) if slot is not None} <= {
        "item",
        "angle",
    }


@pytest.mark.parametrize("rule", SLIPS, ids=[each.SLIP for each in SLIPS])
def test_what_is_said_of_a_slip_is_written_as_it_is_printed(rule: SlipRule) -> None:
    says, line = rule.SAYS, r"[a-z][A-Za-z ,'-]*[a-z]"
    assert re.fullmatch(line, says.title) and re.fullmatch(r"[A-Z{].*[a-z}]\.", says.says)
    assert re.fullmatch(line, says.item) and re.fullmatch(line, says.angle)
    hints = f"{says.says} {says.light} {says.medium} {says.strong} {says.question}"
    assert re.fullmatch(r"[\w {},.:;?'()/×−-]+", hints) and not re.search(r"  |[.?] [a-z]|\w[.?]\w", hints)


def test_every_slip_of_the_catalogue_has_a_module_or_a_reason() -> None:
    modules = (path.stem for path in (HERE.parent / "rules" / "slips").glob("[a-z]*.py"))
    files = {name.replace("_", "-") for name in modules if name != "changes"}
    assert sorted(each.SLIP for each in SLIPS) == sorted(files)
    assert {each["id"] for each in TABLE} == files | LAYOUT and files & LAYOUT == set()


def test_every_slip_is_as_common_as_the_catalogue_says() -> None:
    assert {slip: weight for weight, names in COMMON.items() for slip in names.split()} == {
        each.SLIP: each.COMMON for each in SLIPS
    }


def test_of_slips_with_the_same_values_the_commonest_is_named_first() -> None:
    common = {each.SLIP: each.COMMON for each in SLIPS}
    shared = [(spoilt.slip, [each.slip for each in spoilt.also]) for spoilt, _ in _all("REF") if spoilt.also]
    assert shared != []
    assert [each for each in shared if common[each[0]] < max(common[slip] for slip in each[1])] == []


def test_no_two_slips_say_the_same() -> None:
    for part in ("title", "says", "medium"):
        texts = [getattr(each.SAYS, part) for each in SLIPS]
        assert [each for each in texts if texts.count(each) > 1] == []


def test_only_what_shows_in_a_line_gives_no_account() -> None:
    files = (*SAMPLES, *sorted((HERE / "scenarios").glob("*.toml")))
    given = {one.slip for path in files for spoilt, _ in _of(path) for one in (spoilt, *spoilt.also)}
    given |= {
        slip
        for name in ("REF", "S03", "S13", "S17", "a level cord", "in grams", "two in pounds")
        for slip in _slips(name)
    }
    assert set() == {each.SLIP for each in SLIPS} - SEEN_IN_A_LINE - given


@cache
def _of(path: Path) -> tuple[tuple[Spoilt, Values], ...]:
    return spoilt_accounts(account_of(worked(path)), SLIPS)


@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_nothing_that_is_said_of_a_slip_holds_a_number(path: Path) -> None:
    for spoilt, _ in _of(path):
        for one in (spoilt, *spoilt.also):
            told = named(BY_NAME[one.slip], one)
            said = (told.title, told.says, *told.hints)
            assert [each for each in said if re.search(r"\d", each.replace(one.item, "")) or "{" in each] == []
