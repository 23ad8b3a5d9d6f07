"""A judged working as JSON: the keys that are promised, every line with all of them, one object a line."""

from __future__ import annotations

import json

import pytest
from markings import ALL_RIGHT, ARM_LEFT_OUT, TIN, line, slip, worked

from explain.marking.report.files import json_lines
from explain.marking.slips.verdict import Given, Marking

LINE = {"number", "text", "read_as", "verdict", "slip", "also_possible", "says", "hints"}
VERDICTS = ("holds", "carried", "slips", "unclear", "aside")


def told(*markings: Marking, audience: str = "", hints: int = 1) -> list[dict[str, object]]:
    return [json.loads(each) for each in json_lines(worked(TIN), markings, audience, hints).splitlines()]


def test_a_line_has_all_the_keys_that_are_promised_with_their_values() -> None:
    found = told(ARM_LEFT_OUT)[0]
    assert found["lines"][2] == {  # type: ignore[index]
        "number": 3,
        "text": "F*4.4 - 24.525*31 = 0",
        "read_as": "F × 4.4 − 24.525 × 31 = 0",
        "verdict": "slips",
        "slip": "segment-left-out",
        "also_possible": [],
        "says": "The weight of the forearm and hand has no term in this line.",
        "hints": list(ARM_LEFT_OUT.lines[2].slips[0].hints),
    }
    assert found["first_wrong"] == 3
    assert found["answers"] == {
        "elbow flexors": {"given": 172.8, "right": False},
        "reaction": {"given": 197.3, "right": False},
    }


@pytest.mark.parametrize("audience", ("", "tutor", "student"))
def test_a_line_that_holds_tells_what_was_checked_and_any_other_does_not(audience: str) -> None:
    marking = worked(TIN).mark("3*4 = 12\nF = 239 N\n3*4 = 13\nhow far is it")
    found = told(marking, audience=audience)[0]["lines"]
    assert [(each["verdict"], each.get("checked")) for each in found][:2] == [  # type: ignore[attr-defined]
        ("holds", "arithmetic"),
        ("holds", "claim"),
    ]
    assert all("checked" not in each for each in found if each["verdict"] != "holds")  # type: ignore[attr-defined]
    assert len({each["says"] for each in found[:2]}) == 2  # type: ignore[index]


@pytest.mark.parametrize("audience", ("", "tutor", "student"))
@pytest.mark.parametrize("verdict", VERDICTS)
def test_every_verdict_comes_through_with_every_key(audience: str, verdict: str) -> None:
    marking = Marking("x", (line(1, "a", verdict),), ())  # type: ignore[arg-type]
    found = told(marking, audience=audience)[0]["lines"][0]  # type: ignore[index]
    assert LINE <= set(found) and found["verdict"] == verdict and found["slip"] is None


def test_other_slips_that_explain_a_line_are_named_in_order() -> None:
    marking = Marking("x", (line(1, "a", "slips", "total", slip("a", "A"), slip("b", "B"), slip("c", "C")),), ())
    assert told(marking)[0]["lines"][0]["also_possible"] == ["b", "c"]  # type: ignore[index]


def test_a_working_that_holds_has_no_first_wrong_line() -> None:
    found = told(ALL_RIGHT)[0]
    assert found["first_wrong"] is None and found["answers"]["reaction"] == {"given": 197, "right": True}  # type: ignore[index]


def test_marks_stand_beside_and_add_up() -> None:
    marks = told(ARM_LEFT_OUT)[0]["marks"]
    assert (marks["earned"], marks["of"]) == (2, 6)  # type: ignore[index]
    assert [sum(each[key] for each in marks["rows"]) for key in ("marks", "of")] == [2, 6]  # type: ignore[index]


def test_several_workings_are_an_object_a_line() -> None:
    assert [each["first_wrong"] for each in told(ARM_LEFT_OUT, ALL_RIGHT)] == [3, None]
    assert "marks" not in told(ALL_RIGHT, audience="student")[0]


@pytest.mark.parametrize("typed", ("\ud800", "\u2028 a\nb", '"\\', "\x00", "腱"))
def test_any_text_makes_json_on_one_line(typed: str) -> None:
    found = told(
        Marking(typed, (line(1, typed, "unclear", read_as=typed, question=typed),), (Given("x", 1.0, "N", False),))
    )
    assert len(found) == 1 and "lines" in found[0]
