"""Random problems of every kind, judged from outside: answers by numpy, lines and sentences by their numbers.

The whole is a command: `python tests/witness/run.py --count 10000 --sentences 2000 --jobs 2`.
"""

from __future__ import annotations

import math
import subprocess
import sys
from collections import Counter
from collections.abc import Iterator
from pathlib import Path

import pytest
from witness.answers import Expected, chosen
from witness.equations import Unread
from witness.kinds import KINDS
from witness.lines import Board, ready_board
from witness.page import Truth
from witness.problems import Case, cases, draw_case, toml
from witness.run import judge
from witness.run_one import Outcome, outcome
from witness.sentences import OF_CHECKS, OF_PAGES, judge as judge_sentence, passages
from witness.solution import Statics
from witness.spoil import spoiled_numbers, spoiled_words

COMMAND = "from explain.cli.main import main; main()"
ANSWERS, PAGES = 8, 3  # problems of each kind


@pytest.mark.parametrize("kind", KINDS)
def test_every_answer_is_that_of_the_independent_solution(kind: str) -> None:
    tally = judge([(kind, seed) for seed in range(ANSWERS)], sentences=False)
    assert ANSWERS == tally.exits.total()
    assert {} == tally.examples


@pytest.mark.parametrize("kind", KINDS)
def test_every_line_and_sentence_agrees_with_its_numbers(kind: str) -> None:
    tally = judge([(kind, seed) for seed in range(ANSWERS, ANSWERS + PAGES)], sentences=True)
    assert tally.read["lines of the page"] and tally.read["lines of the JSON"] and tally.read["claims of the page"]
    assert {} == tally.examples


def test_the_same_seed_draws_the_same_problem() -> None:
    assert toml(draw_case("a seesaw", 3).problem) == toml(draw_case("a seesaw", 3).problem)


def test_the_witness_finds_the_closed_form_of_a_level_forearm() -> None:
    problem = {
        "segment": [{"name": "forearm", "mass": "1.6 kg", "com": "15 cm"}],
        "load": [{"name": "jug", "mass": "3.0 kg", "at": "33 cm"}],
        "muscle": [{"name": "biceps", "at": "4.0 cm", "direction": "up"}],
    }
    assert (1.6 * 0.15 + 3.0 * 0.33) * 9.81 / 0.04 == pytest.approx(
        Statics(problem, {}).solve().roots[0].values["biceps"]
    )


def test_the_witness_finds_both_angles_of_a_shank_held_by_a_steady_pull() -> None:
    problem = {
        "segment": [{"name": "shank", "direction": "? right of down", "mass": "4.0 kg", "com": "22 cm"}],
        "load": [{"name": "cuff", "mass": "3.0 kg", "at": "36 cm"}],
        "muscle": [{"name": "quadriceps", "moment_arm": "4.0 cm", "turns": "counter-clockwise", "force": "400 N"}],
    }
    angle = math.degrees(math.asin(400 * 0.04 / ((4.0 * 0.22 + 3.0 * 0.36) * 9.81)))
    assert [angle, 180 - angle] == pytest.approx([root.unknown for root in Statics(problem, {}).solve().roots])


FOREARM = {
    "title": "A forearm",
    "segment": [{"name": "forearm", "length": "40 cm", "direction": "right", "mass": "1.6 kg", "com": "15 cm"}],
    "muscle": [{"name": "biceps", "at": "4.0 cm", "direction": "up"}],
}


@pytest.mark.parametrize(
    ("change", "exit"),
    [({}, 0), ({"muscle": [{"name": "triceps", "at": "4.0 cm", "direction": "down"}]}, 1), ({"ask": ["nobody"]}, 2)],
)
def test_the_command_exits_as_the_witness_says_it_would(change: dict[str, object], exit: int, tmp_path: Path) -> None:
    problem = FOREARM | change
    path = tmp_path / "problem.toml"
    path.write_text(toml(problem))
    ran = subprocess.run([sys.executable, "-c", COMMAND, "work", str(path), "--as", "json"], capture_output=True)
    case = Case("forearm", "", problem, [], Statics(FOREARM, {}).solve())
    assert exit == ran.returncode == outcome(case).exit


def worked_pages(count: int, start: int) -> Iterator[tuple[Case, Expected, Outcome]]:
    for case in cases(count, start):
        came = outcome(case, pages=True)
        if came.json:
            yield case, Expected(case, chosen(case, came.json)), came


def is_true(board: Board, equation: str) -> bool:
    try:
        return not list(board.judge(equation))
    except Unread:
        return False


def test_a_line_with_one_number_changed_is_noticed() -> None:
    seen: Counter[bool] = Counter()
    for case, expected, came in worked_pages(len(KINDS), 5000):
        board = ready_board(case, expected, came, [line["equation"] for line in came.json["lines"]])
        for line in came.json["lines"]:
            if is_true(board, line["equation"]):
                seen.update(not is_true(board, spoiled) for spoiled in spoiled_numbers(line["equation"]))
    assert seen.total() > 1000
    assert seen[True] > 0.9 * seen.total()


def test_a_sentence_with_one_number_or_word_changed_is_noticed() -> None:
    seen: Counter[bool] = Counter()
    for case, expected, came in worked_pages(len(KINDS), 6000):
        truth = Truth(case, expected, came)
        texts = [(check["says"], OF_CHECKS) for check in came.json["checks"]] + [
            (text, OF_PAGES) for text in passages(came.text)
        ]
        for text, table in texts:
            if any(truth.pattern(pattern).search(text) for pattern, _ in table):
                for spoiled in [*spoiled_numbers(text), *spoiled_words(text)]:
                    read: Counter[str] = Counter()
                    found = list(judge_sentence(truth, spoiled, table, read, "check"))
                    seen[bool(found) or not read["claims of the check"]] += 1
    assert seen.total() > 500
    assert seen[True] > 0.8 * seen.total()
