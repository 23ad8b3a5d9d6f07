"""An equation whose letter comes to nothing known: a small change, a number copied wrongly, false arithmetic."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping

import numpy as np

from .arithmetic import False_
from .case import Case
from .formula import Expr
from .mending import replaced
from .quantities import Row
from .repairs import edits
from .solutions import Solution
from .solving import NoAngle, solved
from .state import State
from .suspicion import scaled
from .values import Meaning, Suspect, Value


class Unexplained:
    """The unexplained equations of one pass."""

    def __init__(self, state: State) -> None:
        self.state = state

    def look(
        self, case: Case, best: Solution, left: Expr, right: Expr, letters: Mapping[str, Value], letter: str
    ) -> None:
        """No slip has this value: a small change, or a number that was copied wrongly."""
        if case.meaning.role and not best.free:
            if scaled(self.state, case.value, case.meaning, ""):
                return
            found = list(self._mended(case, best, left, right, letters, letter))
            if found:
                self.state.suspect(
                    Suspect(
                        self.state.line,
                        list(dict.fromkeys(slip for slip, _ in found)),
                        "",
                        True,
                        "one change makes it true",
                        deps=case.value.deps,
                    ),
                    case.value,
                )
                case.value.r = found[0][1]
            return
        frees = [
            (side, place)
            for side, own in ((0, best.left), (1, best.right))
            for place, each in enumerate(own)
            if each.free and each.source != "earlier"
        ]
        if len(frees) == 1:
            side, place = frees[0]
            token = (left, right)[side].leaves[place]
            role = case.meaning.role or ("pull" if letter[:1] in "FTPB" else "")
            case.meaning = Meaning(case.meaning.kinds, case.meaning.items, role)

            def worked(row: Row) -> tuple[Row, Row] | None:
                numbers = [[each.r for each in best.left], [each.r for each in best.right]]
                numbers[side][place] = row
                try:
                    made = solved(
                        left.node,
                        right.node,
                        (numbers[0], numbers[1]),
                        {key: each.r for key, each in letters.items()},
                        letter,
                        self.state.known.n,
                    )
                except (NoAngle, KeyError):
                    return None
                return None if made is None or not np.all(np.isfinite(made)) else (made, made)

            replaced(self.state, token, worked, case)

    def _mended(
        self, case: Case, best: Solution, left: Expr, right: Expr, letters: Mapping[str, Value], letter: str
    ) -> Iterator[tuple[str, Row]]:
        numbers = ([each.r for each in best.left], [each.r for each in best.right])
        named = {key: each.r for key, each in letters.items()}
        for a, b, slip in (
            *((node, right.node, slip) for node, slip in edits(left.node)),
            *((left.node, node, slip) for node, slip in edits(right.node)),
        ):
            try:
                row = solved(a, b, numbers, named, letter, self.state.known.n)
            except (NoAngle, KeyError):
                continue
            if (
                row is not None
                and np.all(np.isfinite(row))
                and any(self.state.hints.is_answer(each.key, case.meaning) for each in self.state.known.true_of(row))
            ):
                yield slip, row

    def false(self, wrong: False_, made: Value, words: str, unit: str) -> None:
        """Suspect false arithmetic; what is shown is the student's value from then on."""
        state = self.state
        if state.dirty:
            return
        true = state.known.true_of(made.r, unit)
        if true and abs(abs(made.number) - abs(made.r[0])) <= 2 * made.half + 0.003 * abs(made.r[0]) and made.half:
            return
        suspect = Suspect(state.line, state.arithmetic.explained(wrong), "", True, "arithmetic", deps=made.deps)
        ratio = abs(wrong.said[0] / wrong.made[0]) if wrong.made[0] else 0.0
        suspect.doubtful = (
            not 0.2 < ratio < 5 or len(wrong.left.leaves) > 6 or bool(re.search(r"\t|\||\S {3,}\S", state.raw))
        )
        state.suspect(suspect, made)
        state.claims[-1].status = (
            "suspect" if state.claims and state.claims[-1].value is made else state.claims[-1].status
        )


def follow_the_student(
    made: Value, left: Expr, shown: Expr, best: Solution, letters: Mapping[str, Value], letter: str
) -> None:
    row = solved(
        left.node,
        ("n", 0),
        ([each.number for each in best.left], [shown.number]),
        {key: each.number for key, each in letters.items()},
        letter,
        1,
    )
    if row is not None:
        made.number = float(np.ravel(row)[0])
