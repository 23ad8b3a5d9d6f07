"""A problem settled in floats, without a line of working: answers, values and what a sheet shows, in a hundredth of a walkthrough's time."""
from __future__ import annotations

from collections.abc import Mapping
from math import isclose
from typing import Any

from ..account import Account, Values
from ..accounting import account_of
from ..check import Checker
from ..files import read_problem
from ..free import cut_free
from ..outcome import Outcome
from ..plan import asked
from ..postures import as_given, at_rest
from ..solve import Working

CLOSE = 1e-9


class Apart(Exception):
    """Two ways of working a problem out disagree: a fault of the program, never of the input."""

    exit_code = 70


def settled(tables: Mapping[str, Any], name: str, course: Mapping[str, object] | None = None) -> Outcome:
    """The outcome of a problem given as tables; `name` is what messages call it, and where its paths begin. Raises Fault and NoWay."""
    body = cut_free(read_problem(tables, name=name, course=course))
    body, truth, found = at_rest(body) if body.problem.balanced else as_given(body)
    angles = {key: roots[0] for key, roots in found.roots.items()}
    checker = Checker(truth, angles=angles)
    return Outcome(Working(body, truth, found, asked(body), checker, ()))


def accounted(outcome: Outcome) -> tuple[Account, Values]:
    """The account of an outcome and its values, once these are seen to be those of the balances. Raises Apart where they are not."""
    account = account_of(outcome.working)
    own, true = account.values(), outcome.working.settled.values
    largest = max(map(abs, true.values()), default=1.0)
    for key in (*account.unknowns, *(key for key in ("reaction.right", "reaction.up") if key in true)):
        if not isclose(own.get(key, true[key]), true[key], rel_tol=CLOSE, abs_tol=CLOSE * largest):
            raise Apart(f"the account of {outcome.body.problem.title} has {own[key]:g} for {key}, the balances have {true[key]:g}")
    return account, own
