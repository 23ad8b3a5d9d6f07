"""Tries small changes that would make a claim true: another datum in place of a number, one sign or function
exchanged.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence

import numpy as np
from numpy.typing import NDArray

from .arithmetic import transposed
from .case import Case
from .formula import Node, value
from .kinds import UNIT_KIND, kind_of
from .quantities import Row
from .repairs import added, edits
from .sources import Source
from .state import State
from .suspicion import slip_value
from .tokens import Token
from .values import Meaning, Suspect, Value

Worked = Callable[[Row], tuple[Row, Row] | None]
_KNOWN_WELL = ("g", "earlier", "angle", "constant", "in the head", "conversion")
_A_TRIAL = 100  # steps
_SHIFTS = (10.0, 0.1, 1e3, 1e-3, 100.0, 0.01)
_ONE_DIGIT = [digit * 10.0**power for digit in range(1, 10) for power in range(8)]


def copied_wrongly(state: State, case: Case) -> bool:
    """Suspect a number that is a datum but for its digits or its point, where the datum would make the claim true."""
    if case.expr is None or case.way is None or not (case.free or case.meaning.items or case.meaning.role):
        return False
    for place, leaf in enumerate(case.way.leaves):
        doubtful = leaf.free or leaf.source == "constant" and leaf.number < 1
        named = (case.meaning.items or case.meaning.role) and not leaf.exact and leaf.source not in _KNOWN_WELL
        if (
            leaf.source != "earlier"
            and (doubtful or named)
            and _replaced(state, case, case.expr.leaves[place], _with(state, case, place))
        ):
            return True
    return False


def _with(state: State, case: Case, place: int) -> Worked:
    expr, way = case.expr, case.way
    assert expr is not None and way is not None

    def worked(row: Row) -> tuple[Row, Row] | None:
        made = []
        for which in ("f", "r"):
            numbers = [getattr(each, which) for each in way.leaves]
            numbers[place] = row
            made.append(
                np.asarray(
                    value(expr.node, numbers, {key: getattr(each, which) for key, each in way.letters.items()}), float
                )
                * np.ones(state.known.n)
            )
        return (made[0], made[1]) if np.all(np.isfinite(made)) else None

    return worked


def replaced(state: State, token: Token, worked: Worked, case: Case) -> bool:
    """The same for a number of an equation."""
    return _replaced(state, case, token, worked)


def _replaced(state: State, case: Case, token: Token, worked: Worked) -> bool:
    if not token.value:
        return False
    every = _candidates(state, token)
    needs_a_miss = not case.meaning.role and not (case.meaning.items and case.meaning.kinds)
    misses = _misses(token, np.array([each.number for each in every]))
    for place, source in enumerate(every):
        if needs_a_miss and not misses[place]:
            continue
        ratio = token.value / abs(source.number) if source.number else 0.0
        shift = any(abs(ratio / each - 1) < 1e-6 for each in _SHIFTS)
        swap = bool(misses[place]) and source.rank == 0 and transposed(f"{abs(source.number):.10g}", token.text)
        digit = bool(misses[place]) and source.rank < 2 and one_digit(source.number, token.text)
        pound = any(abs(ratio / 2.204622622**k - 1) < 0.003 for k in (1, 2, -1, -2))
        if needs_a_miss and not (shift or swap or digit):
            continue
        state.trace.effort.spend(_A_TRIAL)
        made = worked(source.row * (np.sign(source.number) if source.number else 1.0))
        if made is None or not _makes_true(state, case, made[1], shift or swap or digit, shift):
            continue
        if ratio and abs(ratio - 1) < 0.006:
            case.value.f, case.value.r, case.value.free = made[0], made[1], False
            state.claims[-1].status, state.claims[-1].keys = "true", state.known.true_of(made[1], case.unit)
            return True
        other = any(
            each.key != source.key and each.kind == source.kind for each in state.trace.sources.exact(token.value)
        )
        if (
            not (shift or swap or digit or pound or other or source.key == "nothing")
            or not (shift or swap or digit or pound)
            and ratio
            and abs(ratio - 1) < 0.04
        ):
            continue
        names = _names(ratio, shift, swap, digit, pound, other, source.key)
        state.suspect(
            Suspect(state.line, names, source.key, True, f"a number that must be {source.key}", deps=case.value.deps),
            case.value,
        )
        case.value.r = made[1]
        return True
    return False


def one_digit(good: float, typed: str) -> bool:
    """Whether a number of four figures or more differs in one of them."""
    one = f"{abs(good):.{len(typed.partition('.')[2])}f}"
    figures = [(a, b) for a, b in zip(one, typed, strict=False)]
    return len(one) == len(typed) and sum(each.isdigit() for each in typed) > 3 and sum(a != b for a, b in figures) == 1


def _misses(token: Token, numbers: Row) -> NDArray[np.bool_]:
    """Which numbers may be the one that was typed but for its point, two digits exchanged, or one digit: a first look
    by their difference, which in the last two cases is nine times, or one digit times, a power of ten.
    """
    sizes, unit = np.abs(numbers), 2 * token.half
    with np.errstate(all="ignore"):
        shifted = np.any(np.abs(token.value / sizes / np.array(_SHIFTS)[:, None] - 1) < 1e-6, axis=0)
    steps = np.round(np.abs(sizes / unit - token.value / unit))
    digits = np.isin(steps, _ONE_DIGIT)
    fits: NDArray[np.bool_] = shifted | digits | (steps % 9 == 0) | (np.abs(np.round(sizes, 10) / unit % 1) > 1e-9)
    return fits


def _candidates(state: State, token: Token) -> list[Source]:
    """What the number may have been meant for."""
    earlier = [
        Source(each.number, each.f, "", "", 0, "earlier")
        for each in reversed(state.trace.results[-12:])
        if each.number and not each.free
    ]
    ones = np.ones(state.known.n)
    kind = UNIT_KIND.get(token.unit)
    return [
        *earlier,
        Source(1.0, ones, "", "", 0, "one"),
        Source(0.0, 0 * ones, "", "", 0, "nothing"),
        *(
            each
            for each in state.trace.sources.meant
            if not token.unit or not each.unit or kind in (UNIT_KIND.get(each.unit), None)
        ),
    ]


def _makes_true(state: State, case: Case, row: Row, likely: bool, shift: bool) -> bool:
    keys = [each.key for each in state.known.true_of(row, case.unit) if not each.form or kind_of(each.key) == "mass"]
    if case.meaning.role:
        if any(state.hints.is_answer(key, case.meaning) for key in keys):
            return True
    elif any(state.hints.item_of(key) & case.meaning.items and kind_of(key) in case.meaning.kinds for key in keys):
        return True
    if keys and likely:
        return True
    wrong = (
        [each for each in state.known.wrong_of(row, case.unit) if state.hints.is_answer(each.key, case.meaning)]
        if shift and case.meaning.role
        else []
    )
    return bool(wrong) and slip_value(
        state, Value(row, row, case.value.number, line=state.line, deps=case.value.deps), wrong, case.meaning, case.unit
    )


def _names(ratio: float, shift: bool, swap: bool, digit: bool, pound: bool, other: bool, key: str) -> list[str]:
    if ratio and any(abs(ratio / each - 1) < 1e-6 for each in (12.0, 1 / 12.0)):
        return ["inch-foot-mix", "mixed-length-units"]
    if key.endswith("%") and any(abs(ratio / each - 1) < 1e-6 for each in (100.0, 0.01)):
        return ["percent-slip", "decimal-shift"]
    if shift:
        return ["decimal-shift", "mixed-length-units", "percent-slip", "gram-kilogram-slip", "inch-foot-mix"]
    if swap:
        return ["digit-transposed", "arithmetic-slip", "wrong-datum"]
    if digit:
        return ["digit-transposed", "arithmetic-slip", "wrong-datum"]
    if pound:
        return ["pound-kilogram-slip", "pound-as-mass"]
    if key == "nothing":
        return ["unequal-net", "sign-of-a-term"]
    return (
        ["wrong-datum", "arithmetic-slip", "wrong-table-row"]
        if other
        else ["arithmetic-slip", "wrong-datum", "wrong-table-row", "inch-foot-mix"]
    )


def _edited(state: State, case: Case, changes: Iterator[tuple[Node, str]]) -> Iterator[tuple[str, Row, list[str]]]:
    """What small changes of the expression make true: the slip that each undoes, the values, the keys."""
    assert case.way is not None
    numbers, letters = [each.r for each in case.way.leaves], {key: each.r for key, each in case.way.letters.items()}
    for node, slip in changes:
        state.trace.effort.spend(_A_TRIAL)
        row = np.asarray(value(node, numbers, letters), float) * np.ones(state.known.n)
        if np.all(np.isfinite(row)):
            yield slip, row, [each.key for each in state.known.true_of(row, case.unit)]


def mended(state: State, case: Case, meaning: Meaning) -> bool:
    """Suspect a claim of the pull or the joint force that one small change makes true."""
    if case.expr is None or case.way is None:
        return False
    node = case.expr.node
    found = [
        (slip, row)
        for slip, row, keys in _edited(state, case, iter([*edits(node), *added(node)]))
        if any(state.hints.is_answer(key, meaning) for key in keys)
    ]
    if not found:
        return False
    names = list(dict.fromkeys(name for slip, _ in found for name in _said(slip, meaning.role)))
    state.suspect(Suspect(state.line, names, "", True, "one change makes it true", deps=case.value.deps), case.value)
    case.value.r = found[0][1]
    return True


def _said(slip: str, role: str) -> Sequence[str]:
    if role == "joint" and slip.startswith("sine"):
        return "reaction-components-swapped", slip, "sine-cosine-swap-muscle", "angle-wrong-reference"
    return ("reaction-wrong-sense", slip) if role == "joint" and slip.startswith("sign") else (slip,)


def more_names(state: State, case: Case) -> None:
    """Other names for what the last suspicion found in a part of the joint force."""
    if case.expr is None or case.way is None:
        return
    suspect = state.suspects[-1]
    for slip, _, keys in _edited(state, case, edits(case.expr.node)):
        if any(state.hints.speaks(key, case.meaning) or key.startswith(("*level", "*upright")) for key in keys):
            suspect.slips += [name for name in _said(slip, "joint") if name not in suspect.slips]


def undone(state: State, case: object) -> list[str]:
    """The slips whose undoing makes a formula true of what is asked, of an unknown, or of the thing that it is named
    for.
    """
    if not isinstance(case, Case) or case.expr is None or case.way is None:
        return []
    goals = state.hints.asked | state.known.unknowns
    return list(
        dict.fromkeys(
            slip
            for slip, _, keys in _edited(state, case, edits(case.expr.node))
            if any(key in goals or state.hints.item_of(key) & case.meaning.items for key in keys)
        )
    )
