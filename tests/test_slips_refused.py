"""The checker refuses every number that a slip gives for a letter, on the ground on which it takes the true one."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

import pytest
from worked import EXTRA, HERE, SAMPLES, extra, replayed, worked

from explain.marking.slips.account_of_working import account_of
from explain.check.checker import Checker, Refused
from explain.check.claim import Scaled
from explain.equation.terms import Equation, Letter, Quantity, Shown
from explain.marking.slips.slip import changed, spoilt_accounts
from explain.solve.engine import Working
from rules.slips import SLIPS


def _stated(working: Working) -> dict[str, int]:
    """The places of the lines that say what a letter is worth: "W = 29.43 N", unrounded."""
    out = {}
    for place, move in enumerate(working.moves):
        line = move.line.equation
        lone = len(line.left) == len(line.right) == 1 and len(line.left[0].factors) == len(line.right[0].factors) == 1
        letter, number = (line.left[0].factors[0], line.right[0].factors[0]) if lone else (None, None)
        if (
            isinstance(move.line.claim, Scaled)
            and isinstance(letter, Letter)
            and isinstance(number, (Shown, Quantity))
            and line.left[0].sign == 1
        ):
            out[letter.name] = place
    return out


def _spoil(line: Equation, ratio: float) -> Equation | None:
    """The line with its number so many times as large, written to the same figures; None where that is the same
    number.
    """
    side = line.right[0]
    factor = side.factors[0]
    written = factor.value if isinstance(factor, Shown) else factor
    assert isinstance(written, Quantity)
    number = Decimal(repr(ratio)) * written.number
    number = number.quantize(Decimal((0, (1,), number.adjusted() - 4))) if number else number
    if abs(number - written.number) <= abs(written.number) * Decimal("0.001"):
        return None
    spoilt = Quantity(abs(number), written.unit)
    sign = side.sign if number * written.number > 0 or not number else -side.sign
    return replace(
        line,
        right=(replace(side, sign=sign, factors=(Shown(spoilt, factor.of) if isinstance(factor, Shown) else spoilt,)),),
    )


def _tried(working: Working, key: str, place: int, ratios: set[float]) -> tuple[int, list[str]]:
    """How many spoilt numbers for a letter, so many times the true one, were refused, and which were certified."""
    move = working.moves[place]
    checker, lines = replayed(working, place)
    before = next((new for new, old in zip(lines, working.moves, strict=False) if old.line is move.before), None)
    refused, certified = 0, []
    for ratio in ratios:
        line = _spoil(move.line.equation, ratio)
        if line is not None and _refuses(checker, line, move.line.claim, before):
            refused += 1
        elif line is not None:
            certified.append(f"{key} times {ratio}")
    assert checker.certify(move.line.equation, move.line.claim, before).equation == move.line.equation
    return refused, certified


def _refuses(checker: Checker, line: Equation, claim: object, before: object) -> bool:
    try:
        checker.certify(line, claim, before)  # type: ignore[arg-type]
    except Refused:
        return True
    return False


PROBLEMS = (*(path.stem for path in SAMPLES), "a turning part", "two ropes")


@pytest.mark.parametrize("name", PROBLEMS)
def test_the_checker_refuses_every_number_that_a_slip_gives_and_takes_the_true_one(name: str) -> None:
    working = extra(name) if name in EXTRA else worked(HERE.parent / "samples" / f"{name}.toml")
    true = account_of(working).values()
    spoilt = [(values, set(changed(true, values))) for _, values in spoilt_accounts(account_of(working), SLIPS)]
    found = {
        key: _tried(
            working, key, place, {round(values[key] / true[key], 12) for values, wrong in spoilt if key in wrong}
        )
        for key, place in _stated(working).items()
        if true.get(key)
    }
    assert [line for _, certified in found.values() for line in certified] == []
    assert sum(refused for refused, _ in found.values()) > 10
