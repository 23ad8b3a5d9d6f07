"""Takes a clause apart and has it judged: an equation with a letter, a formula with its value, or a number alone."""

from __future__ import annotations

import re


from .clauses import PREVIOUS, Clause
from .equations import Equations
from .formula import Expr, within
from .formulas import Formulas
from .judge import Judge
from .lone import Lone
from .relations import relation, relation_said
from .solutions import same_formula, solvable
from .state import State
from .symbols import put_in

_PRONOUN = re.compile(r"\b(it|its|they|their)\b")


class Statements:
    """The clauses of one pass, one after the other."""

    def __init__(self, state: State) -> None:
        self.state, self.trace = state, state.trace
        self.judge = Judge(state)
        self.equations = Equations(state, self.judge)
        self.lone = Lone(state, self.judge)
        self.formulas = Formulas(state, self.judge)
        self.last_things = ("", -9)

    def clause(self, clause: Clause) -> None:
        """Judge one clause."""
        state = self.state
        state.dirty, state.text, state.solving, state.lead = clause.dirty, clause.text, "", clause.lead
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
        if not names and relation_said(state, words, exprs, unknown):
            return
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
            value = self.formulas.claim(
                forms, lone, words if last or not place else "", names[0] if names and last else "", own
            )
            if wrong is not None and any(wrong.left is each for each in group) and value is not None:
                self.equations.unexplained.false(wrong, value, words, unit)
        if value is not None:
            for name in names:
                self.trace.names[name] = value
            self.trace.before = value


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
