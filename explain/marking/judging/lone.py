"""Judges numbers that stand alone, "D = 1026 N": what they are by their letter, their words, or work done in the
head; and conversions in a row.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

import numpy as np

from .arithmetic import False_
from .by_letter import ByLetter
from .case import Case
from .conversions import Conversions
from .figures import Figures
from .formula import Expr
from .judge import Judge
from .kinds import FACTORS, UNIT_KIND, kind_of
from .quantities import Row
from .state import State
from .suspicion import slip_value
from .tokens import Token
from .values import Claim, Meaning, Suspect, Value

_SAME = ({"kg", "lb"}, {"N", "lb"}, {"in", "cm"}, {"m", "cm"}, {"in", "m"}, {"ft", "m"}, {"kg", "N"})
_OF_A_WHOLE = re.compile(r"\b(?:left|rest|out|remains?|remainder|part|share) of$")
_JOINT = re.compile(r"^(?:[RJNAESHKCDOBVPQ]|F_?[jR])")


class Lone:
    """The lone numbers of one pass."""

    def __init__(self, state: State, judge: Judge) -> None:
        self.state, self.judge, self.trace = state, judge, state.trace
        self.figures = Figures(state)
        self.letters, self.conversions = ByLetter(state, judge, self.figures), Conversions(state, self.figures)

    def number(self, numbers: Sequence[Expr], words: str, names: list[str], unit: str, wrong: False_ | None) -> None:
        """A number, or several that are said to be equal."""
        first, name = numbers[0], names[0] if names else ""
        if not first.number:
            self._nothing(words, name)
            return
        if first.number == 1 and len(numbers) == 2 and {first.unit, numbers[1].unit} in _SAME and not names:
            self.state.words_only.add(self.state.line)  # 1 kg = 2.2 lb: a factor
            return
        meaning = self.state.hints.of(
            f"{words} {self.state.alias.get(name, '')}".strip(), name, numbers[-1].unit or first.unit
        )
        if meaning.role and _OF_A_WHOLE.search(words):
            meaning = Meaning(meaning.kinds, meaning.items)  # "what is left of 140": the number is not what is named
        value = self.letters.value(first, words, names, meaning) or self._by_figures(first, words, name, meaning)
        self.trace.note(value, name)
        self.trace.before = value
        for each in names:
            self.trace.names[each] = value
        if len(numbers) > 1:
            self.conversions.note(value, first, numbers[-1], words, names, meaning, wrong)

    def _nothing(self, words: str, name: str) -> None:
        """A joint force, or a part of it, that is said to be nothing."""
        state = self.state
        meaning = state.hints.of(words, name, "")
        axis = (
            "reaction.right"
            if name[-1:] in "xhXH" and len(name) > 1
            else "reaction.up"
            if name[-1:] in "yvYV" and len(name) > 1
            else "reaction"
        )
        row = state.known.truth.get(axis)
        if meaning.role == "joint" and name and _JOINT.match(name) and row is not None and np.all(np.abs(row) > 1e-6):
            value = Value(np.zeros(state.known.n), np.zeros(state.known.n), 0.0, line=state.line)
            names = ["reaction-missing", "reaction-along-bone", "reaction-equals-muscle", "horizontal-part-forgotten"]
            state.suspect(Suspect(state.line, names, axis, True, "a joint force of nothing"), value)
            state.claims.append(Claim(state.line, value, meaning, "", words, name, state.text, "suspect"))
        else:
            state.words_only.add(state.line)

    def _by_figures(self, expr: Expr, words: str, name: str, meaning: Meaning) -> Value:
        """The number by its figures, its unit and its words."""
        token, sign = expr.leaves[0], np.sign(expr.number)
        best = self.figures.best(token, meaning)
        assert best is not None
        if best.free and token.unit and name:
            best = self._in_another_unit(token, words, name) or best
        if best.free and token.unit and self.state.lead == "=":
            best = self._as_above(token) or best
        value = Value(
            best.f * sign,
            best.r * sign if best.apart else best.f * sign,
            expr.number,
            token.step,
            token.unit or best.unit,
            self.state.line,
            best.deps | {self.state.line},
            best.blames,
            best.source,
            best.free,
            best.exact,
        )
        if (
            best.free
            and token.figures >= 2
            and (token.unit or name)
            and self._slip_in_head(value, token, meaning, words, name)
        ):
            return value
        if best.free:
            self.state.claims.append(
                Claim(self.state.line, value, meaning, token.unit, words, name, self.state.text, "none")
            )
        else:
            self.judge.judge(Case(value, meaning, words, name, token.unit))
        return value

    def _as_above(self, token: Token) -> Value | None:
        """What the line above came to, in another unit."""
        above = self.trace.before
        kind = UNIT_KIND.get(token.unit, "")
        if above is None or not above.number or UNIT_KIND.get(above.unit) != kind or not kind:
            return None
        factor = FACTORS[kind][token.unit] / FACTORS[kind][above.unit]
        return above.times(factor) if abs(token.share / (abs(above.number) * factor) - 1) < 0.006 else None

    def _in_another_unit(self, token: Token, words: str, name: str) -> Value | None:
        """The pull or the joint force by its figures, where the unit behind it is another's; or a moment that is
        called so.
        """
        meaning = self.state.hints.of(words, name, "")
        if meaning.role != "pull":
            return None
        for source in self.trace.sources.near(token.share, token.step * 1.25 + 1e-9):
            answer = self.state.hints.is_answer(source.key, meaning) and source.unit != token.unit
            moment = (
                source.kind == "moment"
                and token.unit in ("N", "lb")
                and (
                    source.key == "total"
                    or self.state.hints.item_of(source.key) & self.state.hints.unknown_items
                    and source.key.startswith("*moment")
                )
            )
            if token.figures >= 3 and (answer or moment):
                return Value(
                    source.row,
                    source.row,
                    token.share,
                    token.step,
                    source=source.key,
                    deps=frozenset({self.state.line}),
                )
        return None

    def _slip_in_head(self, value: Value, token: Token, meaning: Meaning, words: str, name: str) -> bool:
        """A value that was worked out in the head and is a slip's: by its figures, its unit and its words."""
        if token.figures < 3 or not (meaning.items or meaning.role) or not meaning.kinds:
            return False
        found: list[tuple[int, str, str, Row, int]] = []
        near = token.step * 1.3 + 0.0006 * token.share
        sizes, figures = self.state.known.wrong_figures
        low, high = np.searchsorted(sizes, (token.share - near, token.share + near))
        for place, key, unit, factor in figures[low:high]:
            slip = self.state.known.slips[place]
            answer = bool(meaning.role) and self.state.hints.is_answer(key, meaning)
            own = key == slip.touched and (not meaning.items or self.state.hints.item_of(key) & meaning.items)
            if kind_of(key) in meaning.kinds and (answer or own) and (not token.unit or unit == token.unit):
                found.append((slip.common, slip.name, key, slip.rows[key] * factor, place))
        if not found:
            return False
        found.sort(key=lambda each: (-each[0], each[4]))
        _, _, key, row, _ = found[0]
        self.state.claims.append(
            Claim(self.state.line, value, meaning, token.unit, words, name, self.state.text, "suspect")
        )
        value.f, value.r, value.free = (
            row,
            self.state.known.truth[key] * abs(row[0] / found[0][3][0]) * FACTORS[kind_of(key)].get(token.unit, 1.0),
            False,
        )
        names = list(dict.fromkeys(each[1] for each in found))
        self.state.suspect(
            Suspect(
                self.state.line,
                names,
                key,
                False,
                "a value worked out in the head",
                frozenset(each[4] for each in found),
                deps=value.deps,
            ),
            value,
        )
        return True


__all__ = ("Lone", "slip_value")
