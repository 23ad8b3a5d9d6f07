"""Judges equations with a letter: solved in the problem and its twins at once, so that the letter's value is a
formula over the data.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import permutations

import numpy as np

from .arithmetic import False_
from .case import Case
from .clauses import Clause
from .formula import Expr, has, value, within
from .judge import Judge
from .kinds import kind_of
from .known import pattern, same
from .mending import replaced
from .noangle import no_angle
from .parts import note_parts
from .quantities import Row
from .relations import relation, relation_of_letters
from .repairs import edits
from .solving import NoAngle, factor_of, solved
from .state import State
from .suspicion import scaled, slip_value
from .values import Claim, Meaning, Suspect, Value, all_deps
from .ways import Way, choices, in_another_unit, letters_of

_PULLS = "FTBPCAEMDQ"
_A_SOLUTION = 120  # steps
_NOTHING = np.ones(1)  # of a way whose own value is not asked for


@dataclass(slots=True, eq=False)
class Solution:
    """One way to solve an equation: the values taken on both sides, and what comes out."""

    left: tuple[Value, ...]
    right: tuple[Value, ...]
    f: Row
    r: Row
    number: float
    rank: float = 9.0

    @property
    def free(self) -> bool:
        return any(each.free for each in (*self.left, *self.right))


class Equations:
    """The equations of one pass."""

    def __init__(self, state: State, judge: Judge) -> None:
        self.state, self.judge, self.trace = state, judge, state.trace
        self.again = ""
        self.no_angle: Row | None = None

    def relation_in_words(self, clause: Clause, names: list[str], exprs: list[Expr]) -> bool:
        """ "biceps = 0.8 brachialis", one muscle as so many times another, in words."""
        return relation(self.state, clause, names, exprs)

    def same_formula(self, one: Expr, other: Expr) -> bool:
        """Whether two sides are one formula."""
        letters = {**(letters_of(self.trace, one) or {}), **(letters_of(self.trace, other) or {})}
        for some in choices(self.trace, [one, other], 60):
            a, b = some[: len(one.leaves)], some[len(one.leaves) :]
            left, right = (
                np.asarray(
                    value(e.node, [each.f for each in own], {key: each.f for key, each in letters.items()}), float
                )
                * np.ones(self.state.known.n)
                for e, own in ((one, a), (other, b))
            )
            if same(left, right, 1e-8):
                return True
        return False

    def solvable(self, exprs: Sequence[Expr], letter: str) -> bool:
        return (
            len(exprs) > 1
            and any(letter not in each.names for each in exprs)
            or len(exprs) > 1
            and exprs[0].names != exprs[-1].names
        )

    def equation(self, exprs: list[Expr], unknown: list[str], words: str, name: str) -> None:
        """Judge an equation; with no unknown, the letter that was set aside is solved for again."""
        again, self.again = self.again if not unknown else "", ""
        unknown = unknown or [again]
        if len(exprs) == 1:
            if len(unknown) == 1 and (
                relation_of_letters(self.state, name or words, exprs[0], unknown[0])
                or self._factors_alone(exprs, unknown[0], words, name)
            ):
                return
            self._known_parts(exprs)
            return
        if len(unknown) == 1:
            self._one(exprs, unknown[0], words, again != "")
            return
        self._known_parts(exprs)
        if len(unknown) == 2 and self._joint_among_moments(exprs[0], exprs[1], unknown):
            return
        if len(unknown) == 2:
            self._two(exprs[0], exprs[1], (unknown[0], unknown[1]))

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
            if self._factors_alone(with_letter, letter, words):
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
        best = self._best(left, right, letters, letter, meaning)
        for other in in_another_unit(letters) if best is not None and best.rank >= 2 else ():
            second = self._best(left, right, other, letter, meaning)
            if second is not None and second.rank < 2:
                best, letters = second, other
                break
        if best is None:
            if self.no_angle is not None:
                no_angle(self.state, self.no_angle)
            self._note_terms(exprs, letter)
            return
        self._judge(best, left, right, letters, letter, meaning, words, again)
        made = self.state.claims[-1].value
        if wrong is not None and not self.state.dirty:
            self.false(wrong, made, words, "")
            if wrong.right.lone:
                self._follow_the_student(made, left, wrong.right, best, letters, letter)
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

    def _factors_alone(self, exprs: Sequence[Expr], letter: str, words: str, name: str = "") -> bool:
        """ "F x 0.40 sin 18", or sides that all have the letter as a factor: what stands before it is judged as an
        arm.
        """
        factors = [self._factor(expr, letter) for expr in exprs]
        if any(each is None for each in factors):
            return False
        for each in factors:
            assert each is not None
            if abs(each.f[0] - 1) > 1e-9:
                self._arm(each, letter, self.state.hints.of(words, name, ""))
                self.trace.note(each, result=False)
        return True

    def _factor(self, expr: Expr, letter: str) -> Value | None:
        """What stands before a letter on a side that has it as a factor, traced."""
        letters = letters_of(self.trace, expr, [letter])
        if letters is None or letter not in expr.names:
            return None
        best: Value | None = None
        for some in choices(self.trace, [expr], 60):
            rows = [
                factor_of(
                    expr,
                    [getattr(each, which) for each in some],
                    {key: getattr(each, which) for key, each in letters.items()},
                    letter,
                    self.state.known.n,
                )
                for which in ("f", "r", "number")
            ]
            nothing = value(
                expr.node,
                [each.number for each in some],
                {**{key: each.number for key, each in letters.items()}, letter: 0.0},
            )
            if any(each is None for each in rows) or abs(float(nothing)) > 1e-9:
                return None
            f, r, number = rows
            assert f is not None and r is not None and number is not None
            deps, blames = all_deps((*some, *letters.values()))
            size = float(np.ravel(number)[0])
            made = Value(
                f,
                r if np.any(f != r) else f,
                size,
                abs(size) * 2e-3,
                line=self.state.line,
                deps=deps | {self.state.line},
                blames=blames,
                free=any(each.free for each in some),
                spread=abs(size) * 2e-4,
            )
            if any(kind_of(each.key) == "length" for each in self.state.known.true_of(f)):
                return made
            best = best or made
        return best

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

    def _best(
        self, left: Expr, right: Expr, letters: Mapping[str, Value], letter: str, meaning: Meaning
    ) -> Solution | None:
        self.no_angle = None
        best: Solution | None = None
        for way in self._solutions(left, right, letters, letter):
            status, keys = self.judge.status(way.f, way.r, meaning, "")
            way.rank = {"true": 0.0, "carried": 1.0, "none": 2.0}[status]
            if status == "none" and (best is None or best.rank > 1.5) and self.state.known.wrong_of(way.r):
                way.rank = 1.5
            if best is None or way.rank < best.rank:
                best = way
            if way.rank == 0:
                break
        return best

    def _solutions(self, left: Expr, right: Expr, letters: Mapping[str, Value], letter: str) -> Iterator[Solution]:
        n, count = self.state.known.n, len(left.leaves)
        for some in choices(self.trace, [left, right]):
            rows: list[Row] = []
            for which in ("f", "r", "number"):
                if which == "r" and not any(each.apart for each in (*some, *letters.values())):
                    rows.append(rows[0])
                    continue
                numbers = [getattr(each, which) for each in some]
                self.trace.effort.spend(_A_SOLUTION)
                try:
                    row = solved(
                        left.node,
                        right.node,
                        (numbers[:count], numbers[count:]),
                        {key: getattr(each, which) for key, each in letters.items()},
                        letter,
                        n,
                    )
                except NoAngle as fault:
                    self.no_angle = fault.ratio if self.no_angle is None else self.no_angle
                    row = None
                except KeyError:
                    row = None
                if row is None or not np.all(np.isfinite(row)):
                    break
                rows.append(row)
            if len(rows) == 3:
                yield Solution(some[:count], some[count:], rows[0], rows[1], float(np.ravel(rows[2])[0]))

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
            self._unexplained(case, best, left, right, letters, letter)
            claim.status = "suspect" if len(state.suspects) > before else claim.status

    def _unexplained(
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

    def _follow_the_student(
        self, made: Value, left: Expr, shown: Expr, best: Solution, letters: Mapping[str, Value], letter: str
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
                self._note_factor(expr, own, known, letter)
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

    def _note_factor(self, expr: Expr, own: tuple[Value, ...], known: Mapping[str, Value], letter: str) -> None:
        rows = [
            factor_of(
                expr,
                [getattr(each, which) for each in own],
                {key: getattr(each, which) for key, each in known.items()},
                letter,
                self.state.known.n,
            )
            for which in ("f", "r")
        ]
        f, r = rows
        if f is None or r is None or pattern(f) is None or any(each.free or same(f, each.f) for each in own):
            return
        deps, blames = all_deps((*own, *known.values()))
        self.trace.note(
            Value(
                f,
                r if np.any(f != r) else f,
                float(f[0]),
                abs(float(f[0])) * 2e-3,
                line=self.state.line,
                deps=deps | {self.state.line},
                blames=blames,
                spread=abs(float(f[0])) * 2e-4,
            ),
            result=False,
        )

    def _arm(self, made: Value, letter: str, called: Meaning) -> None:
        """A factor that is no arm, but a slip's arm of the pull."""
        lengths = [each for each in self.state.known.true_of(made.f) if kind_of(each.key) == "length"]
        hits = [each for each in self.state.known.wrong_of(made.r) if each.key.startswith("*arm") and not each.form]
        items = called.items or self.state.hints.of("", letter, "").items & self.state.hints.pulls
        arms = [each for each in lengths if each.key.startswith(("*arm", "*leg"))]
        claim = Claim(
            self.state.line,
            made,
            Meaning(frozenset({"length"}), items),
            "",
            "",
            "",
            self.state.text,
            "true" if lengths else "factor",
            lengths,
            shown=False,
        )
        self.state.claims.append(claim)
        moment = "moment" in called.kinds and bool(called.items) and called.items <= self.state.hints.pulls
        if (
            not arms
            and not made.free
            and hits
            and slip_value(self.state, made, hits, claim.meaning, "", force=moment, soft=bool(lengths) and not moment)
        ):
            claim.status = "suspect" if moment or not lengths else claim.status

    def _joint_among_moments(self, left: Expr, right: Expr, unknown: list[str]) -> bool:
        """A letter of the joint force in a balance that is right without it: at the pivot it has no arm."""
        for joint, pull in permutations(unknown):
            if self.state.hints.of("", joint, "").role != "joint" or self.state.hints.of("", pull, "").role == "joint":
                continue
            nothing = {joint: Value(np.zeros(self.state.known.n), np.zeros(self.state.known.n), 0.0)}
            base = {
                key: each
                for expr in (left, right)
                for key, each in (letters_of(self.trace, expr, unknown) or {}).items()
            }
            best = self._best(left, right, {**base, **nothing}, pull, Meaning())
            if (
                best is not None
                and best.rank == 0
                and any(each.key in self.state.known.unknowns for each in self.state.known.true_of(best.f))
            ):
                value = Value(best.f, best.f, best.number, line=self.state.line, deps=frozenset({self.state.line}))
                self.state.claims.append(
                    Claim(self.state.line, value, Meaning(), "", "", pull, self.state.text, "suspect")
                )
                self.state.suspect(
                    Suspect(
                        self.state.line,
                        ["reaction-in-moment-equation"],
                        "",
                        True,
                        "the joint force among moments",
                        sticky=True,
                    ),
                    value,
                )
                return True
        return False

    def _two(self, left: Expr, right: Expr, unknown: tuple[str, str]) -> None:
        """Two letters: true quantities that satisfy the equation together."""
        known = self.state.known
        rows = [
            (key, row * sign)
            for key, row in known.truth.items()
            for sign in (1, -1)
            if kind_of(key) == "force"
            and (
                key in known.unknowns
                or key.startswith(("reaction", "*level", "*upright", "*sumpull"))
                or key.endswith(".force")
            )
        ][:26]
        base = {
            key: each for expr in (left, right) for key, each in (letters_of(self.trace, expr, unknown) or {}).items()
        }
        for some in choices(self.trace, [left, right], 12):
            a, b = [each.f for each in some[: len(left.leaves)]], [each.f for each in some[len(left.leaves) :]]
            for (one_key, one), (_, other) in permutations(rows, 2):
                named = {**{key: each.f for key, each in base.items()}, unknown[0]: one, unknown[1]: other}
                try:
                    gap = (
                        np.asarray(value(left.node, a, named), float) * np.ones(known.n),
                        np.asarray(value(right.node, b, named), float) * np.ones(known.n),
                    )
                except KeyError:
                    return
                if same(gap[0], gap[1], 1e-8):
                    for letter, row in zip(unknown, (one, other), strict=True):
                        self.trace.names[letter] = Value(
                            row, row, float(row[0]), abs(float(row[0])) * 0.01, line=self.state.line
                        )
                    self.state.made.add(one_key)
                    return


__all__ = ("Equations", "within")
