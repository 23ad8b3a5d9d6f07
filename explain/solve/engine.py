"""The engine: takes up one goal after another and lets the rules make lines until it is reached. Every line is
certified before it is kept.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass, field
from types import MappingProxyType
from typing import Any, NamedTuple

from . import goal as goals
from .board import Board, Units
from .goal import Goal
from ..mechanics.body import Body
from ..check.checker import Certified, Checker, Refused
from ..equation import key as keys
from ..equation.terms import Equation, Letter, letters, lone
from ..exact.bounds import Undefined, sign
from ..errors import Fault, NoWay
from .plan import Asked, asked, plan
from ..mechanics.postures import Posture, as_given, at_rest
from .rule import Rule, acting
from .second_opinion import SecondOpinion
from ..mechanics.settlement import Settled
from ..mechanics.signed_letters import along_each
from .true_letters import TrueLetters
from ..mechanics.truth import Truth

LEFT_OF_FLOATS = 1e-10  # of how far out any force acts
LONGEST = 60  # moves for one goal; the longest working of all samples needs 14


class Broken(Exception):
    """A rule made a line that the checker refused: a fault of the program, never of the input."""

    exit_code = 70


class Move(NamedTuple):
    """One certified line: the goal it serves, the rule that made it, what the rule saw, and the line before."""

    goal: Goal
    rule: Rule
    sight: Any
    line: Certified
    before: Certified | None

    def __repr__(self) -> str:
        return f"<Move {self.rule.__name__.rpartition('.')[2]}: {line_text(self.line)}>"


@dataclass(frozen=True, slots=True)
class Working:
    """A problem worked through: its certified moves, the checker that vouches for them, and the values as found in
    advance; `slack` is how far roundings may have moved each value that was written, in kg, m, s or degrees.
    """

    body: Body
    truth: Truth
    settled: Settled
    asked: tuple[Asked, ...]
    checker: Checker
    moves: tuple[Move, ...]
    slack: Mapping[str, float] = field(default_factory=dict)

    @property
    def sizes(self) -> Mapping[str, float]:
        """The values as found in advance, of each force along its own direction, whichever its letter stands for."""
        return along_each(self.body, self.settled.values)

    def __repr__(self) -> str:
        return f"<Working of {self.body.problem.title!r}: {len(self.moves)} lines>"


def work_through(body: Body, rules: Mapping[str, tuple[Rule, ...]]) -> Working:
    """All lines of a working. Raises Fault where the problem cannot be settled, NoWay where the rules find no way."""
    posture = at_rest(body) if body.problem.balanced else as_given(body)
    working = _worked(posture, rules[body.problem.course.order])
    _certify_further(posture.further, rules[body.problem.course.order])
    return working


def _worked(posture: Posture, rules: tuple[Rule, ...], enough: Collection[str] = ()) -> Working:
    """The lines of one posture, each certified and held against the floats; with `enough`, only until these keys
    have their values.
    """
    body, truth, found, _ = posture
    checker, moves = Checker(truth, angles=posture.angles), list[Move]()
    sought = [each.letter.name for each in body.sought]
    places = {key: found.values[key] for key in sought if keys.of(key).what == "at"}
    for goal in plan(body, truth, found):
        force_unit = "N" if isinstance(goal, goals.Relation) and goal.newtons else body.force_unit
        units = Units(body.length_unit, force_unit, body.mass_unit)
        board = Board(
            None,
            goal.sought,
            MappingProxyType(checker.ledger),
            body.problem.course,
            units,
            goal,
            body,
            {**posture.angles, **places},
            checker.sizes,
        )
        try:
            if isinstance(goal, goals.Arm) and sign(checker.sizes.sum(goal.lever.terms)) <= 0:
                _see_that_nothing_is_there(goal, TrueLetters(body, truth, found.values, 1))
            reach(board, checker, rules, moves)
        except Undefined as lost:
            raise _lost_in_rounding(body, lost) from lost
        if enough and checker.ledger.keys() >= set(enough):
            break
    slack = hold_against_floats(body, truth, found, checker, moves)
    return Working(body, truth, found, asked(body), checker, tuple(moves), slack)


def _see_that_nothing_is_there(goal: goals.Arm, letters: TrueLetters) -> None:
    """Raises Undefined where an arm that comes to nothing, or less, has a length but for the roundings on the way."""
    if letters.of(goal)[goal.sought] > LEFT_OF_FLOATS * letters.wholes[goal.sought]:
        raise Undefined("a lever arm of nothing, or less,")


def _lost_in_rounding(body: Body, lost: Undefined) -> Exception:
    """What is told where the numbers that a class carries as shown leave a sine or a root without a value; where none
    is rounded on the way, the fault is the program's.
    """
    course = body.problem.course
    if course.carry != "as shown":
        return lost
    figures = f"{course.working_figures} working figure{'s' * (course.working_figures > 1)}"
    return Fault(
        file=body.problem.file,
        key="course.working_figures",
        found=f"{figures}, carried as shown, and with these roundings {lost} comes out",
        expected="more figures in the working, or every figure carried",
        example=f"working_figures = {max(4, course.working_figures + 2)}",
    )


def _certify_further(postures: Sequence[Posture], rules: tuple[Rule, ...]) -> None:
    """See that each further angle at which the body can be at rest is what certified lines of its own come to.
    Raises Broken where one is not.
    """
    for posture in postures:
        working = _worked(posture, rules, posture.angles)
        for key, root in posture.angles.items():
            if key not in working.checker.ledger:
                raise Broken(f"{root!r} degrees for {key} is not what a certified line comes to")


def hold_against_floats(
    body: Body, truth: Truth, found: Settled, checker: Checker, moves: Sequence[Move]
) -> Mapping[str, float]:
    """How far roundings may have moved each value, once every certified line is seen to be as near to the independent
    solution as its roundings allow. Raises Broken with the last line that is.
    """
    letters = TrueLetters(body, truth, found.values, checker.premises.sense() or 1)
    opinion, last = SecondOpinion(letters, body.problem.course), None
    for move in moves:
        if not opinion.agrees(move):
            raise Broken(
                f"a certified line is not what the balances give in floats: {line_text(move.line)}\n"
                f"the last line that agreed: {line_text(last) or 'none'}"
            )
        last = move.line
    return opinion.slack


def reach(board: Board, checker: Checker, rules: tuple[Rule, ...], moves: list[Move]) -> None:
    """Make moves until no rule sees anything to do, then see that the goal is reached."""
    line = _taken_up(board, checker, moves)
    for _ in range(LONGEST):
        for rule in acting(rules, board.kinds):
            sight = rule.when(board, board.stands)
            if sight is not None:
                break
        else:
            break
        after, claim = rule.do(board, sight)
        try:
            new = checker.certify(after, claim, line)
        except Refused as refusal:
            raise Broken(
                f"{rule.__name__} made a line that was refused: {refusal}\nbefore: {line_text(line)}\nafter: "
                f"{_plain(after)}"
            ) from refusal
        moves.append(Move(board.goal, rule, sight, new, line))
        line, board.equation = new, _in_hand(after, checker)
        if isinstance(board.goal, goals.MomentLetters):  # what its letters are comes after it
            break
    if not _reached(board, line):
        raise NoWay(f"No way through to {board.sought} was found.", line_text(line))


def _taken_up(board: Board, checker: Checker, moves: Sequence[Move]) -> Certified | None:
    """The line a goal goes on from: none, but where an unknown that was left open is taken up again, or two parts of
    a force are divided.
    """
    match board.goal:
        case goals.Back(key=key, sought=sought):
            line = _last(moves, key, sought)
        case goals.Ratio(key=key, size=size, cosine=cosine):
            line, beside = (_last(moves, each, size) for each in (key, cosine))
            line, beside = (line, beside) if beside.equation.right else (beside, line)
            board.beside = _in_hand(beside.equation, checker)
        case _:
            return None
    board.equation = _in_hand(line.equation, checker)
    return line


def _last(moves: Sequence[Move], key: str, sought: str) -> Certified:
    """The last line about a balance and what was sought from it."""
    line: Certified = next(move.line for move in reversed(moves) if move.goal.key == key and move.goal.sought == sought)
    return line


def _in_hand(equation: Equation, checker: Checker) -> Equation:
    """The line as it is gone on with."""
    return equation.as_shown if checker.carry_shown else equation


def _reached(board: Board, line: Certified | None) -> bool:
    if line is None:
        return False
    if isinstance(board.goal, goals.AtRest | goals.Pivot | goals.MomentLetters):
        return True
    if board.goal.until == "part":
        return len(line.equation.left) == 1 and not letters(line.equation.right)
    alone = lone(line.equation.left)
    found = isinstance(alone, Letter) and alone.name == board.sought
    open_end = isinstance(board.goal, goals.Relation) or board.goal.until == "open"
    return found and (open_end or not letters(line.equation.right))


def line_text(line: Certified | None) -> str:
    """A certified line in plain text."""
    return _plain(line.equation) if line is not None else ""


def _plain(equation: Equation) -> str:
    from ..formula.plain import plain

    return plain(equation)


Certified.show = _plain
