"""A problem settled in floats, without a line of working: answers, values and what a sheet shows, in a hundredth of
a walkthrough's time.
"""

from __future__ import annotations

from collections.abc import Mapping
from math import isclose
from os.path import dirname
from typing import Any

from ..marking.slips.account import Account, Values
from ..marking.slips.account_of_working import account_of
from ..check.checker import Checker
from ..input import Door, real_root
from ..problem.reader import opened, problem_of
from ..mechanics.free_body import cut_free
from ..solve.outcome import Outcome
from ..solve.plan import asked
from ..mechanics.postures import as_given, at_rest
from ..solve.engine import Working

CLOSE = 1e-9


class Apart(Exception):
    """Two ways of working a problem out disagree: a fault of the program, never of the input."""

    exit_code = 70


def settled(tables: Mapping[str, Any], name: str, course: Mapping[str, object] | None = None) -> Outcome:
    """The outcome of a problem given as tables; `name` is what messages call it: the path of a file, and it names no
    file but what lies beside it.

    Raises Fault and NoWay.
    """
    body = cut_free(problem_of(opened(tables, name, Door(name, real_root(dirname(name) or ".")), named=True), course))
    posture = at_rest(body) if body.problem.balanced else as_given(body)
    checker = Checker(posture.truth, angles=posture.angles)
    return Outcome(Working(posture.body, posture.truth, posture.settled, asked(body), checker, ()))


def accounted(outcome: Outcome) -> tuple[Account, Values]:
    """The account of an outcome and its values, once these are seen to be those of the balances. Raises Apart where
    they are not.
    """
    account = account_of(outcome.working)
    own, true = account.values(), outcome.working.sizes
    largest = max(map(abs, true.values()), default=1.0)
    for key in (*account.unknowns, *(key for key in ("reaction.right", "reaction.up") if key in true)):
        if not isclose(own.get(key, true[key]), true[key], rel_tol=CLOSE, abs_tol=CLOSE * largest):
            raise Apart(
                f"the account of {outcome.body.problem.title} has {own[key]:g} for {key}, the balances have "
                f"{true[key]:g}"
            )
    return account, own
