"""Judges equations with a letter: solved in the problem and its twins at once, so that the letter's value is a
formula over the data.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

import numpy as np

from .case import Case
from .factors import Factors
from .formula import Expr, has, value, within
from .judge import Judge
from .kinds import kind_of
from .patterns import same
from .noangle import no_angle
from .parts import note_parts
from .relations import relation_of_letters
from .solutions import Solution, Solver
from .state import State
from .two_letters import TwoLetters
from .unexplained import Unexplained, follow_the_student
from .values import Meaning, Value, all_deps
from .ways import Way, choices, in_another_unit, letters_of

_PULLS = "FTBPCAEMDQ"
_A_SOLUTION = 120  # steps
_NOTHING = np.ones(1)  # of a way whose own value is not asked for


class Equations:
    """The equations of one pass."""

    def __init__(self, state: State, judge: Judge) -> None:
        self.state, self.judge, self.trace = state, judge, state.trace
        self.again = ""
        self.solver = Solver(state, judge)
        self.factors, self.unexplained = Factors(state), Unexplained(state)
        self.two = TwoLetters(state, self.solver)

    def equation(self, exprs: list[Expr], unknown: list[str], words: str, name: str) -> None:
        """Judge an equation; with no unknown, the letter that was set aside is solved for again."""
        again, self.again = self.again if not unknown else "", ""
        unknown = unknown or [again]
        if len(exprs) == 1:
            if len(unknown) == 1 and (
                relation_of_letters(self.state, name or words, exprs[0], unknown[0])
                or self.factors.alone(exprs, unknown[0], words, name)
            ):
                return
            self._known_parts(exprs)
            return
        if len(unknown) == 1:
            self._one(exprs, unknown[0], words, again != "")
            return
        self._known_parts(exprs)
        if len(unknown) == 2 and self.two.joint_among_moments(exprs[0], exprs[1], unknown):
            return
        if len(unknown) == 2:
            self.two.solve(exprs[0], exprs[1], (unknown[0], unknown[1]))

    def _known_parts(self, exprs: Sequence[Expr]) -> None:
        """What of a line has a value, noted for the lines after it."""
        for expr in exprs:
            letters = letters_of(self.trace, expr)
            if letters is not None and not expr.lone:
                some = choices(self.trace, [expr], 1)[0]
                note_parts(self.trace, expr, Way(some, letters, _NOTHING, _NOTHING))
        self.state.words_only.add(self.state.line) if not any(each.leaves for each in exprs) else None

    def _one(self, exprs: list[Expr], letter: str, words: str, again: bool) -> None:
        known, with_letter = (
            [each for each in exprs if letter not in each.names],
            [each for each in exprs if letter in each.names],
        )
        if not with_letter:
            return
        if not known:
            if self.factors.alone(with_letter, letter, words):
                return
            known, with_letter = with_letter[-1:], with_letter[:-1]
        wrong = None
        if len(known) > 1:
            _, wrong = self.state.arithmetic.runs([each for each in exprs if letter not in each.names])
        left, right = with_letter[0], next((each for each in known if not each.lone), known[0])
        letters = {
            key: found
            for each in (left, right)
            for key, found in (letters_of(self.trace, each, [letter]) or {}).items()
        }
        meaning = self._meaning(letter, words)
        best = self.solver.best(left, right, letters, letter, meaning)
        for other in in_another_unit(letters) if best is not None and best.rank >= 2 else ():
            second = self.solver.best(left, right, other, letter, meaning)
            if second is not None and second.rank < 2:
                best, letters = second, other
                break
        if best is None:
            if self.solver.no_angle is not None:
                no_angle(self.state, self.solver.no_angle)
            self._note_terms(exprs, letter)
            return
        self._judge(best, left, right, letters, letter, meaning, words, again)
        made = self.state.claims[-1].value
        if wrong is not None and not self.state.dirty:
            if wrong.right.lone:  # first, since what the student made of it is what may be near the truth
                follow_the_student(made, left, wrong.right, best, letters, letter)
            self.unexplained.false(wrong, made, words, "")
        self.trace.note(made, letter)
        self.state.solved.add(letter)
        self._note(best, left, right, letters, letter, made, exprs)

    def _note_terms(self, exprs: Sequence[Expr], letter: str) -> None:
        """What sides that cannot be solved come to without the letter, noted for the lines after them."""
        for expr in exprs:
            letters = letters_of(self.trace, expr, [letter])
            if letters is not None and expr.leaves:
                note_parts(
                    self.trace, expr, Way(choices(self.trace, [expr], 1)[0], letters, _NOTHING, _NOTHING), letter
                )

    def _meaning(self, letter: str, words: str) -> Meaning:
        said = (
            f"{words} {self.state.alias.get(letter, '')}"
            if letter.startswith("§") or letter in self.state.alias
            else words
            if len(words) < 40
            else ""
        )
        meaning = self.state.hints.of(said if letter.startswith("§") else self.state.alias.get(letter, ""), letter, "")
        kinds = (
            frozenset()
            if meaning.kinds == {"moment"} or meaning.kinds == {"length"} and letter[:1] not in tuple("dxrlL§")
            else meaning.kinds
        )
        return Meaning(kinds, meaning.items, meaning.role)

    def _judge(
        self,
        best: Solution,
        left: Expr,
        right: Expr,
        letters: Mapping[str, Value],
        letter: str,
        meaning: Meaning,
        words: str,
        again: bool,
    ) -> None:
        state = self.state
        deps, blames = all_deps((*best.left, *best.right, *letters.values()))
        made = Value(
            best.f,
            best.r,
            best.number,
            abs(best.number) * 1e-3,
            "",
            state.line,
            deps | {state.line},
            blames,
            "",
            best.free,
            spread=abs(best.number) * 4e-3,
        )
        forces = any(kind_of(each) == "force" for each in state.known.unknowns)
        if (
            not meaning.role
            and forces
            and best.rank >= 1.5
            and not meaning.kinds & {"length", "angle", "mass"}
            and letter not in ("x", "y")
        ) and (
            letter[:1] in _PULLS
            or letter.lower() == "f"
            or letter.startswith("§")
            and "force" in meaning.kinds
            and not state.known.true_of(best.f)
        ):
            meaning = Meaning(meaning.kinds, meaning.items, "pull")
        state.solving = letter
        case = Case(made, meaning, words, letter, "", None, None, False)
        before = len(state.suspects)
        claim = self.judge.judge(case)
        if (
            claim.status == "none"
            and again
            and letter in self.trace.names
            and (same(self.trace.names[letter].f, best.f, 1e-7) or same(self.trace.names[letter].r, best.r, 1e-7))
        ):
            claim.status = "carried" if made.blames else "again"
        elif claim.status == "none" and len(state.suspects) == before:
            self.unexplained.look(case, best, left, right, letters, letter)
            claim.status = "suspect" if len(state.suspects) > before else claim.status

    def _note(
        self,
        best: Solution,
        left: Expr,
        right: Expr,
        letters: Mapping[str, Value],
        letter: str,
        made: Value,
        exprs: Sequence[Expr],
    ) -> None:
        """The parts of both sides, what stands before the letter, and numbers that one side comes to."""
        known = {key: each for key, each in letters.items() if key != letter}
        for expr, own in ((left, best.left), (right, best.right)):
            way = Way(own, known, best.f, best.r)
            note_parts(self.trace, expr, way, letter)
            if has(expr.node, letter):
                self.factors.note(expr, own, known, letter)
        other = Way(best.right, known, best.f, best.r)
        if letter in right.names or right.lone:
            return
        for expr in exprs:
            if expr.lone and expr.leaves[0].value and letter not in expr.names:
                f, r = (
                    np.asarray(
                        value(
                            right.node,
                            [getattr(each, which) for each in other.leaves],
                            {key: getattr(each, which) for key, each in known.items()},
                        ),
                        float,
                    )
                    * np.ones(self.state.known.n)
                    for which in ("f", "r")
                )
                deps, blames = other.rests_on(right.node)
                self.trace.before = self.trace.note(
                    Value(
                        f,
                        r if np.any(f != r) else f,
                        expr.number,
                        expr.leaves[0].step,
                        expr.unit,
                        self.state.line,
                        deps | {self.state.line},
                        blames | (made.blames - other.rests_on(right.node)[1] if made.number else frozenset()),
                    )
                )


__all__ = ("Equations", "within")
