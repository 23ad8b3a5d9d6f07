"""A checker that is offered random lines certifies no false one. The whole: python tests/attack.py --lines 1000000."""

from __future__ import annotations

from functools import cache
from random import Random

import pytest
from attack_built import Offer
from attack_offers import KINDS
from attack_problems import random_workings, shipped, working_of, world_of
from attacking import ITS_OWN, Attack, Board, Tally

from explain.check.checker import Checker
from explain.check.claim import AtRest, Balance, Between, Moment, Rounded, Scaled
from explain.equation.terms import Equation, Power, Quantity, Root, Shown, Term
from explain.mechanics.body import RIGHT, UP
from explain.check.roundings import Roundings

EACH, PROBLEMS = 150, 8  # offers at a problem; random problems drawn by one seed
SEEDS = (3, 14, 15)


@cache
def attacked(name: str) -> Tally:
    return Attack(name, working_of(name), Random(name), world_of(name)).own_lines().run(EACH)


@cache
def attacked_at_random(seed: int) -> Tally:
    total = Tally()
    for place, (_, working) in enumerate(random_workings(PROBLEMS, seed)):
        total.add(Attack(f"random {seed}-{place}", working, Random(place)).own_lines().run(EACH))
    return total


def _shown(tally: Tally) -> list[tuple[str, str, str, str]]:
    return [(each.kind, each.fault, each.problem, each.text) for each in tally.found]


# ---------------------------------------------------------------------- the attack
@pytest.mark.parametrize("name", shipped())
def test_no_false_line_is_certified_and_no_line_of_a_rule_is_refused(name: str) -> None:
    tally = attacked(name)
    assert ([], []) == (_shown(tally), tally.odd)


@pytest.mark.parametrize("seed", SEEDS)
def test_no_false_line_of_a_random_problem_is_certified(seed: int) -> None:
    tally = attacked_at_random(seed)
    assert sum(tally.false.values()) > EACH
    assert ([], []) == (_shown(tally), tally.odd)


def test_false_lines_are_offered_on_every_kind_of_ground_and_nearly_all_are_judged() -> None:
    total = Tally()
    for name in shipped():
        total.add(attacked(name))
    assert {each.__name__ for each in KINDS} == {kind for kind, count in total.false.items() if count >= 20}
    assert sum(total.unjudged.values()) <= 0.001 * sum(total.offered.values())


def test_true_lines_that_no_rule_wrote_are_certified_on_many_kinds_of_ground() -> None:
    """The checker that is attacked is not one that refuses everything."""
    total = Tally()
    for name in shipped():
        total.add(attacked(name))
    assert len([kind for kind, count in total.certified.items() if count > 5]) > 8


@pytest.mark.parametrize(("owner", "weak"), [(Checker, "_hold"), (Roundings, "hold")])
def test_a_checker_that_looks_away_is_found_out(owner: type, weak: str, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(owner, weak, lambda *_: None)
    found = Attack("02-treacle-tin-again", working_of("02-treacle-tin-again"), Random(1)).run(400).found
    assert [] != found
    assert {ITS_OWN} & {each.how for each in found} == set()


# ---------------------------------------------------------------------- the judge
def _fault(name: str, place: int, offer: Offer) -> str | None:
    return Board(working_of(name), world_of(name), place).fault(offer)


def _one(name: str, key: str) -> Term:
    return Term(1, (working_of(name).body.letters(key),))


def test_the_judge_finds_a_letter_that_is_not_nothing() -> None:
    offer = Offer(Equation((_one("jug-level", "g"),), ()), AtRest("g"), None)
    assert "not equal" == _fault("jug-level", 3, offer)


def test_the_judge_finds_a_sum_that_vanishes_true() -> None:
    offer = Offer(Equation((_one("jug-level", "total"),), ()), AtRest("total"), None)
    assert "" == _fault("jug-level", 3, offer)


@pytest.mark.parametrize(
    ("number", "fault"),
    [
        ("47.088", ""),
        ("47.0877", ""),
        ("47.08765", ""),
        ("47.09", "rounded too coarsely"),
        ("47", "rounded too coarsely"),
        ("47.087", "wrongly rounded"),
    ],
)
def test_the_judge_looks_at_the_figures_of_a_rounded_number(number: str, fault: str) -> None:
    of = Term(1, (Quantity.of("47.08765", "N"),))
    shown = Shown(Quantity.of(number, "N"), of)
    line = Equation((of,), (Term(1, (shown,)),))
    assert fault == _fault("jug-level", 3, Offer(line, Scaled(), None))


def test_the_judge_takes_a_number_that_is_just_the_value_with_any_figures() -> None:
    of = Term(1, (Quantity.of("0.3", "m"),))
    line = Equation((of,), (Term(1, (Shown(Quantity.of("30", "cm"), of),)),))
    assert "" == _fault("jug-level", 3, Offer(line, Scaled(), None))


def test_the_judge_wants_of_an_answer_the_figures_of_an_answer() -> None:
    of = Term(1, (Quantity.of("47.08765", "N"),))
    line = Equation((of,), (Term(1, (Shown(Quantity.of("47.1", "N"), of),)),), rounded=True)
    assert "" == _fault("jug-level", 3, Offer(line, Rounded(), None))


def test_the_judge_knows_that_a_root_is_not_below_zero() -> None:
    letter = working_of("scale-push").body.letters("reaction.up")
    root = Term(1, (Root((Term(1, (Power(letter, 2),)),)),))
    place = len(working_of("scale-push").moves)
    assert "not equal" == _fault("scale-push", place, Offer(Equation((root,), (Term(1, (letter,)),)), Scaled(), None))


def test_the_judge_finds_another_sense_of_a_balance_not_so() -> None:
    working = working_of("jug-level")
    line = next(move.line for move in working.moves if isinstance(move.line.claim, Balance))
    assert isinstance(line.claim, Balance)
    left = tuple(each.flipped() for each in line.equation.left)
    offer = Offer(Equation(left, ()), Balance(None, "", -line.claim.sense), None)
    assert "true, but its ground is not so" == _fault("jug-level", 3, offer)


def test_the_judge_lets_a_letter_of_an_angle_have_one_meaning() -> None:
    working = working_of("two-flexors")
    letter = working.body.letters("*fold biceps")
    board = Board(working, world_of("two-flexors"), len(working.moves))
    line = Equation((Term(1, (letter,)),), (Term(1, (Quantity.of("90", "deg"),)),))
    claim = Between("biceps", RIGHT, UP)
    assert "" == board.fault(Offer(line, claim, None))
    board.standing.take(line, claim)
    second = Equation(line.left, (Term(1, (Quantity.of("0", "deg"),)),))
    assert "not equal" == board.fault(Offer(second, Between("biceps", RIGHT, RIGHT), None))


def test_the_judge_finds_a_moment_of_no_sense_not_so() -> None:
    letter = working_of("jug-level").body.letters("*moment jug")
    offer = Offer(Equation((Term(1, (letter,)),), ()), Moment("jug", 0), None)
    assert "not equal" == _fault("jug-level", 3, offer)
