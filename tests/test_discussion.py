"""The discussion leads with what the answer means, then tells the checks that told something, the rest in one line."""

from __future__ import annotations

from pathlib import Path

import pytest
from test_conventions import data, work

from explain.document.passage import Bullets, Paragraph, Passage
from explain.solve.outcome import Finding
from explain.walkthrough.discussion import check_list, discussion

HOLDS = Finding("holds", "It balances.", "Put back")


def told(passage: Passage) -> list[str]:
    assert isinstance(passage, Bullets | Paragraph)
    lines = passage.items if isinstance(passage, Bullets) else (passage.line,)
    return ["".join(getattr(each, "text", "") for each in line) for line in lines]


def of(name: str, **more: object) -> list[list[str]]:
    walkthrough = work({**data(name), **more})
    return [told(each) for each in discussion(walkthrough.outcome, walkthrough.checks)]


def test_it_leads_with_how_many_times_the_load_and_why() -> None:
    (lead,), checks, (rest,) = of("rock-oblique")
    assert lead.startswith(
        "To hold the forearm and hand and the rock, 75.5 N together, the biceps pulls with 550 N, 7.3 times"
    )
    assert "The lever arm of the biceps is 0.0423 m, that of the rock 0.350 m: 8.3 times as long." in lead
    assert checks[0].startswith("A second pivot.")
    assert not any(each.startswith(("Size.", "Sign.")) for each in checks)
    assert rest.startswith("Signs, ") and rest.endswith("balance, the triangle of forces and units were checked too.")


def test_a_mark_is_never_alone_on_a_line_and_a_question_has_none() -> None:
    asks = Finding("warns", "Is the unit right?", "Place", "a book")
    (bullets,) = check_list([("put_back", HOLDS), ("on_the_segment", asks)], "full")
    assert ["Place. Is the unit right? (Source: a book.)", "Put back. It balances.\u00a0✓"] == told(bullets)


def test_what_is_wrong_comes_first_and_notes_last() -> None:
    note = Finding("warns", "A pull of 9 N is small.", "Pull of the biceps", "a book", kind="note")
    fails, warns = Finding("fails", "It does not.", "Forces"), Finding("warns", "Look again.", "On the segment")
    findings = [("plausible", note), ("put_back", HOLDS), ("on_the_segment", warns), ("force_balance", fails)]
    (bullets,) = check_list(findings, "full")
    assert [each.partition(".")[0] for each in told(bullets)] == [
        "Forces",
        "On the segment",
        "Put back",
        "Pull of the biceps",
    ]


def test_a_source_is_told_once() -> None:
    notes = [("plausible", Finding("holds", f"{each}.", each, "a book", kind="note")) for each in ("One", "Two")]
    (bullets,) = check_list(notes, "full")
    assert ["One. One. (Source: a book.)", "Two. Two. (Source as above.)"] == told(bullets)


def test_checks_with_nothing_to_tell_stand_in_one_line() -> None:
    quiet = [(name, HOLDS._replace(quiet=True)) for name in ("units", "force_balance", "put_back", "pulls")]
    (rest,) = check_list(quiet, "full")
    assert ["Signs, balance and units were checked."] == told(rest)


def test_muscles_with_one_stress_have_one_note() -> None:
    muscles = [
        {"name": "biceps", "at": "4.2 cm", "direction": "up", "area": "4.6 cm^2"},
        {"name": "brachialis", "at": "2.4 cm", "direction": "up", "area": "7.0 cm^2", "force": "1.5217 * biceps"},
    ]
    said = work({**data("jug-level"), "muscle": muscles, "ask": ["biceps", "brachialis"]}).text(10000)
    assert 1 == said.count("A stress of 33.4 N/cm² in the biceps and the brachialis is within")
    assert "- Stress in the biceps." in said and "Stress in the brachialis." not in said


@pytest.mark.parametrize("name", ["beam", "32-painters-plank", "33-lighthouse-ladder", "36-kelp-on-the-seesaw"])
def test_where_no_muscle_pulls_there_is_no_class_of_lever_no_bone_and_no_joint(name: str) -> None:
    samples = Path(__file__).parents[1] / "samples"
    path = samples / f"{name}.toml"
    walkthrough = work(path) if path.exists() else work(data(name))
    said = walkthrough.text(10000).replace("Real joints differ", "")
    assert [] == [word for word in ("class about", " bone", "joint", "muscle") if word in said]
