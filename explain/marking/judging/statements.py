"""Takes a clause apart and has it judged: an equation with a letter, a formula with its value, or a number alone."""

from __future__ import annotations

import re

import numpy as np

from .case import Case
from .clauses import PREVIOUS, Clause
from .equations import Equations
from .formula import Expr, left_to_right, product_first, readings, within
from .judge import Judge
from .lone import Lone
from .parts import note_parts
from .relations import relation
from .solutions import same_formula, solvable
from .state import State
from .symbols import put_in
from .values import Meaning, Value, all_deps
from .ways import Way, letters_of, ways

_FACTORS = (
    0.01,
    100.0,
    0.001,
    1000.0,
    4.4482216,
    1 / 4.4482216,
    2.2046226,
    1 / 2.2046226,
    0.45359237,
    2.54,
    1 / 2.54,
    12.0,
    1 / 12.0,
    0.0254,
    39.37,
)
_PRONOUN = re.compile(r"\b(it|its|they|their)\b")


class Statements:
    """The clauses of one pass, one after the other."""

    def __init__(self, state: State) -> None:
        self.state, self.trace = state, state.trace
        self.judge = Judge(state)
        self.equations = Equations(state, self.judge)
        self.lone = Lone(state, self.judge)
        self.last_things = ("", -9)

    def clause(self, clause: Clause) -> None:
        """Judge one clause."""
        state = self.state
        state.dirty, state.text, state.solving = clause.dirty, clause.text, ""
        names = [
            side.expr.letter
            for side in clause.sides
            if side.expr is not None and side.expr.letter and side.expr.letter != PREVIOUS
        ]
        exprs = clause.exprs
        words = self._with_things(clause.words)
        _as_angles(exprs, words)
        if not exprs:
            self._no_expression(names)
            return
        if self._tells_g(names, exprs, words) or relation(state, clause, names, exprs):
            return
        exprs = self._without_symbols(exprs, names)
        unknown = list(dict.fromkeys(name for each in exprs for name in self._missing(each)))
        later = {name: state.bound[name] for name in unknown if name in state.bound}
        if later and len(unknown) - len(later) <= 1:
            exprs = [put_in(each, later) for each in exprs]
            unknown = [name for name in unknown if name not in later]
        if len(unknown) > 1:
            exprs = _without_products_of(unknown, exprs)
            unknown = list(dict.fromkeys(name for each in exprs for name in self._missing(each)))
        zero = [each for each in exprs if each.lone and each.number == 0]
        if unknown and self._coefficient_only(exprs, unknown):
            unknown = []
        if unknown or self._known_letters_again(exprs, names, zero):
            self.equations.equation(exprs, unknown, words, names[0] if names else "")
            return
        self._formulas(exprs, words, names, zero)

    def _no_expression(self, names: list[str]) -> None:
        """A letter for a letter."""
        if len(names) == 2:
            for one, other in (names, names[::-1]):
                if one in self.trace.names and other not in self.trace.names:
                    self.trace.names[other] = self.trace.names[one]
        self.state.words_only.add(self.state.line)

    def _with_things(self, words: str) -> str:
        """The words, with the thing that "it" stands for."""
        low = words.lower()
        things = [
            word
            for own in self.state.hints.words.values()
            for word in own
            if len(word) >= 3 and re.search(rf"\b{word}", low)
        ]
        if things:
            self.last_things = (" ".join(things), self.state.line)
        elif self.last_things[1] >= self.state.line - 1 and _PRONOUN.search(low):
            return f"{words} {self.last_things[0]}"
        return words

    def _tells_g(self, names: list[str], exprs: list[Expr], words: str) -> bool:
        first = exprs[0]
        if (
            len(exprs) == 1
            and first.lone
            and 9 < first.number < 11
            and (names[:1] == ["g"] or re.search(r"\bg$", words.strip()))
        ):
            self.trace.g_shown = first.number
            self.state.words_only.add(self.state.line)
            return True
        return False

    def _missing(self, expr: Expr) -> list[str]:
        return [
            name
            for name in dict.fromkeys(expr.names)
            if name not in self.trace.names and name != "g" and not (name == PREVIOUS and self.trace.before is not None)
        ]

    def _without_symbols(self, exprs: list[Expr], names: list[str]) -> list[Expr]:
        """Without the formula in letters, where the same follows in numbers: "W = m g = 3 x 9.81"."""
        numbers = [each for each in exprs if not self._missing(each)]
        if (
            not names
            or len(numbers) == len(exprs)
            or not any(not each.lone for each in numbers)
            or any(each.lone and not each.number for each in exprs)
        ):
            return exprs
        return [each for each in exprs if each in numbers or each.leaves]

    def _coefficient_only(self, exprs: list[Expr], unknown: list[str]) -> bool:
        """ "12.51x" behind 49.07 x 0.255: a coefficient, no equation for x."""
        if len(exprs) != 2 or exprs[0].names or exprs[0].lone or len(unknown) != 1:
            return False
        node = exprs[1].node
        made = self.state.arithmetic.number(exprs[0])
        if node[0] != "i*" or node[1][0] != "n" or node[2] != ("v", unknown[0]) or not made or not made[0]:
            return False
        if abs(exprs[1].leaves[0].value / made[0] - 1) >= 0.006:
            return False
        exprs[1] = Expr(node[1], exprs[1].leaves[:1], [])
        return True

    def _known_letters_again(self, exprs: list[Expr], names: list[str], zero: list[Expr]) -> bool:
        """An equation of letters that all have values: the letter inside is solved for again."""
        balance = [each for each in exprs if not each.lone]
        if not (
            zero
            and len(balance) == 1
            or len(balance) >= 2
            and not names
            and any(set(each.names) - {PREVIOUS} for each in balance)
        ):
            return False
        inner = [name for each in exprs for name in each.names if name not in ("g", PREVIOUS)]
        if not inner or len(balance) >= 2 and same_formula(self.trace, balance[0], balance[1]):
            return False
        letter = inner[-1] if inner[-1] not in inner[:-1] else inner[0]
        if not any(letter not in each.names for each in exprs) and len(exprs) < 2:
            return False
        self.equations.again = letter
        return solvable(exprs, letter)

    def _formulas(self, exprs: list[Expr], words: str, names: list[str], zero: list[Expr]) -> None:
        formulas = [each for each in exprs if not each.lone]
        numbers = [each for each in exprs if each.lone and each not in zero]
        groups, wrong = ([exprs], None) if zero else self.state.arithmetic.runs(exprs)
        unit = next((each.unit for each in reversed(exprs) if each.unit), "")
        if not formulas:
            self.lone.number(numbers or zero, words, names, unit, wrong)
            return
        value = None
        if len(groups) > 1:
            self.state.run_on.add(self.state.line)
        for place, group in enumerate(groups):
            forms = [each for each in group if not each.lone]
            if not forms:
                continue
            last = place == len(groups) - 1
            lone = next((each for each in reversed(group) if each.lone), None)
            own = next((each.unit for each in reversed(group) if each.unit), unit if last else "")
            value = self._claim(
                forms, lone, words if last or not place else "", names[0] if names and last else "", own
            )
            if wrong is not None and any(wrong.left is each for each in group) and value is not None:
                self.equations.unexplained.false(wrong, value, words, unit)
        if value is not None:
            for name in names:
                self.trace.names[name] = value
            self.trace.before = value

    def _claim(self, forms: list[Expr], shown: Expr | None, words: str, name: str, unit: str) -> Value | None:
        """A formula with what it comes to."""
        expr = forms[0]
        letters = letters_of(self.trace, expr)
        if letters is None:
            return None
        meaning = self.meaning(words, name, unit)
        best = self._best(expr, letters, meaning, unit, shown)
        if best is None:
            self.state.unread.add(self.state.line)
            return None
        way, node = best
        value = self._value(Expr(node, expr.leaves, expr.names), way, shown, unit)
        note_parts(self.trace, expr, way)
        for other in forms[1:]:
            known = letters_of(self.trace, other)
            if known is not None and len(other.leaves) > 1:
                for another in ways(self.trace, other, known):
                    note_parts(self.trace, other, another)
                    break
        self.judge.judge(
            Case(value, meaning, words, name, unit, Expr(node, expr.leaves, expr.names), way, shown is not None)
        )
        return self.trace.note(value, name)

    def meaning(self, words: str, name: str, unit: str) -> Meaning:
        """What a value is called; a letter that stood for the pull still does."""
        said = self.state.alias.get(name, "")
        meaning = self.state.hints.of(f"{words} {said}".strip(), name, unit)
        was = self.trace.names.get(name)
        if (
            not meaning.role
            and was is not None
            and not meaning.items
            and any(
                each.key in self.state.known.unknowns and not each.form
                for row in (was.f, was.r)
                for each in self.state.known.true_of(row)
            )
        ):
            return (
                Meaning(meaning.kinds, meaning.items, "pull")
                if "length" not in meaning.kinds and "mass" not in meaning.kinds
                else meaning
            )
        return meaning

    def _best(
        self, expr: Expr, letters: dict[str, Value], meaning: Meaning, unit: str, shown: Expr | None
    ) -> tuple[Way, tuple] | None:  # type: ignore[type-arg]
        """The way to trace a formula that is true, else that follows, else that a slip explains."""
        best: tuple[float, Way, tuple] | None = None  # type: ignore[type-arg]
        for node in self._readings(expr, shown):
            for way in ways(self.trace, expr, letters, node):
                status, keys = self.judge.status(way.f, way.r, meaning, unit)
                rank = {"true": 0.0, "carried": 1.0, "none": 2.0}[status]
                if (
                    status == "none"
                    and (best is None or best[0] > 1.5)
                    and (
                        self.state.known.wrong_of(way.r, unit)
                        or way.r is not way.f
                        and self.state.known.wrong_of(way.f, unit)
                    )
                ):
                    rank = 1.5
                elif status != "none":
                    rank += (1.1 if status == "true" else 0.3) * (
                        bool(meaning.role) and not any(self.state.hints.speaks(each.key, meaning) for each in keys)
                    )
                    rank += 0.4 * (bool(meaning.kinds) and not any(self._of_kind(each.key, meaning) for each in keys))
                rank += 0.01 * way.free
                if best is None or rank < best[0]:
                    best = (rank, way, node)
                if rank == 0:
                    return way, node
        return best[1:] if best else None

    def _of_kind(self, key: str, meaning: Meaning) -> bool:
        from .kinds import kind_of

        return kind_of(key) in meaning.kinds

    def _readings(self, expr: Expr, shown: Expr | None) -> list[tuple]:  # type: ignore[type-arg]
        """The readings of a fraction that give what is shown; as written where none does."""
        all_ = readings(expr.node)
        if len(all_) == 1 or shown is None:
            return all_[:1]
        said = self.state.arithmetic.number(shown)
        fitting = [
            node
            for node in all_
            if node == expr.node
            or node == product_first(expr.node)
            or not (node == left_to_right(expr.node) and any(each[0] == "f" for each in within(node)))
        ]
        good = [
            node
            for node in fitting
            if self.state.arithmetic.equal(self.state.arithmetic.number(expr, node), said, expr, shown)
        ]
        return good[:1] or all_[:1]

    def _value(self, expr: Expr, way: Way, shown: Expr | None, unit: str) -> Value:
        """The value of a formula with the number that is shown for it, in the unit that it is shown in."""
        deps, blames = all_deps(way.used(expr.node))
        made = self.state.arithmetic.number(expr, letters=way.letters) or (0.0, 0.0)
        value = Value(
            way.f,
            way.r,
            made[0],
            0.0,
            unit,
            self.state.line,
            deps | {self.state.line},
            blames,
            "",
            way.free,
            spread=max(made[1], abs(made[0]) * 5e-4),
        )
        if expr.node[0] == "f" and expr.node[1] in ("sin", "cos", "tan"):
            value.source = "trig"
        if shown is None:
            return value
        value.number, value.half, value.spread = shown.number, shown.leaves[0].step, 0.0
        if unit and unit != "%" and made[0] and value.number:
            ratio, near = abs(value.number / made[0]), 0.003 + value.half / abs(value.number)
            factor: float | np.ndarray = 1.0
            for each in _FACTORS:
                factor = each if abs(ratio / each - 1) < near else factor
            g = self.state.known.g_written
            factor = (
                self.state.known.g
                if abs(ratio / g - 1) < near + 0.001
                else 1 / self.state.known.g
                if abs(ratio * g - 1) < near + 0.001
                else factor
            )
            if isinstance(factor, np.ndarray) or factor != 1.0:
                value.f, value.r = value.f * factor, value.r * factor if value.apart else value.f * factor
        return value


def _as_angles(exprs: list[Expr], words: str) -> None:
    """Numbers that are added to an angle are angles."""
    if not (any(each.unit == "deg" for each in exprs) or re.search(r"\bangle\b", words.lower())):
        return
    for expr in exprs:
        if all(each[0] in ("n", "p", "neg", "+", "-") for each in within(expr.node)):
            for token in expr.leaves:
                token.unit = token.unit or "deg"


def _without_products_of(unknown: list[str], exprs: list[Expr]) -> list[Expr]:
    """Without a side that is a product of letters which have no value, as "E r" is: a name for what the others are."""
    named = [each for each in exprs if not each.leaves and len(set(each.names) & set(unknown)) > 1]
    rest = [each for each in exprs if each not in named]
    numbers = rest and all(each.leaves and not set(each.names) & set(unknown) for each in rest)
    return rest if numbers and all(each.node[0] in ("*", "i*") for each in named) else exprs
