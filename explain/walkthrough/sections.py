"""The numbered sections of a page: which certified lines stand together, with the reason for each, said in full only
once.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, field
from itertools import groupby

from ..equation import key as keys
from ..document.english import counted, sentence, the
from ..equation.terms import Inverse, Root, Terms, Trig, leaves, letters
from ..formula.plain import plain
from ..solve.outcome import Outcome
from ..document.passage import Answer as Boxed
from ..document.passage import Derivation, Line, Maths, Paragraph, Passage, Row, Text
from .answer_sentences import answer_line, minus_line, parts_line, sign_line
from ..solve.engine import Move
from .move_sentences import Told, filled, said_plainly
from ..wording.pivot_words import has_joint

SHORT = ("relation", "convert", "fold", "arm", "turning", "moment", "stress")  # goals whose lines make one row
LENGTHS = "Lengths and arms"


@dataclass(slots=True)
class Section:
    title: str
    passages: list[Passage] = field(default_factory=list)


def sections(
    outcome: Outcome, shows: Callable[[Move], bool] = lambda move: True, told: Told | None = None
) -> Iterator[Section]:
    """All sections in order; of moves that are not to be shown nothing is written, and no reason that was told."""
    told = told or Told(outcome)
    answered: set[str] = set()
    titled = tuple(pair for pair in _titled(outcome) if shows(pair[1]))
    for title, group in groupby(titled, key=lambda pair: pair[0]):
        section = Section(title)
        _fill(section, tuple(move for _, move in group), told, answered)
        yield section


def _titled(outcome: Outcome) -> Iterator[tuple[str, Move]]:
    """Each move with the title of the section it belongs to."""
    word, brief = outcome.word, outcome.body.problem.course.detail == "brief"
    arms = "Turning parts and arms" if outcome.body.problem.course.method == "turning component" else LENGTHS
    balanced = False
    for move in outcome.working.moves:
        kind, key = move.goal.kind, move.goal.key
        balanced = balanced or kind == "moments"
        if kind == "convert":
            if not brief:
                yield "Units", move
        elif kind == "pivot":
            sided = outcome.body.problem.course.balance == "two sides"
            way = "each force turns" if sided else "is positive"
            yield f"Where to take {word}s, and which way {way}" if brief else f"Which way {way}", move
        elif kind == "relation" and keys.of(key).is_joint:
            yield _joint_title(outcome), move
        elif kind == "relation" and not balanced:
            yield arms if key.endswith((".com", ".at", ".across", ".rise", ".line")) else _sharing(outcome, key), move
        elif kind in ("arm", "turning") or (kind == "fold" and not balanced):
            yield arms, move
        elif kind in ("relation", "moment", "moments", "moment letters") or (kind == "at rest" and key == "total"):
            yield f"The {word}s", move
        else:
            yield _stress_title(outcome) if kind == "stress" else _joint_title(outcome), move


def _stress_title(outcome: Outcome) -> str:
    many = sum(pull.area is not None for pull in outcome.body.problem.pulls) > 1
    return "Stress in the muscles" if many else "Stress in the muscle"


def _joint_title(outcome: Outcome) -> str:
    if not outcome.body.problem.pivot.reaction:
        return "The forces"
    return "The joint force" if has_joint(outcome.body.problem) else f"The force at {the(outcome.pivot)}"


def _sharing(outcome: Outcome, key: str) -> str:
    multiple = any(each.kind in ("multiple", "ratio") and each.letter.name == key for each in outcome.body.relations)
    if not multiple:
        return "Weights"
    shared = keys.of(key).owner in {muscle.name for muscle in outcome.muscles}
    return "How the load is shared" if shared else "The ratio of the forces"


def _fill(section: Section, moves: Sequence[Move], told: Told, answered: set[str]) -> None:
    for short, group in groupby(moves, key=lambda move: move.goal.kind in SHORT):
        if short:
            _short(section, tuple(group), told, answered)
            continue
        for _, goal in groupby(group, key=lambda move: id(move.goal)):
            _long(section, tuple(goal), told, answered)


# ---------------------------------------------------------------------- short workings: one row a goal
def _short(section: Section, moves: Sequence[Move], told: Told, answered: set[str]) -> None:
    says = [
        (say, move.sight) for move in moves if move.before is None for say in (move.rule.say.watch, move.rule.say.why)
    ]
    reasons = [told.once(said_plainly(say, sight)) for say, sight in says]
    said = " ".join(sentence(each) for each in reasons if each)
    if said:
        section.passages.append(Paragraph((Text(said),)))
    rows = []
    for _, group in groupby(moves, key=lambda move: id(move.goal)):
        lines = tuple(group)
        rows += list(_chained(lines))
    section.passages.append(Derivation(tuple(rows)))
    for _, group in groupby(moves, key=lambda move: id(move.goal)):
        _answers(section, tuple(group), told, answered)


def _chained(moves: Sequence[Move]) -> Iterator[Row]:
    """Lines with one left side run on in one row."""
    left: Terms = ()
    chain: list[tuple[str, Terms]] = []
    for move in moves:
        equation = move.line.equation
        if chain and equation.left != left:
            yield Row(left, tuple(chain))
            chain = []
        left = equation.left
        chain.append(("≈" if equation.rounded else "=", equation.right))
    yield Row(left, tuple(chain))


# ---------------------------------------------------------------------- balances: one row a move
def _long(section: Section, moves: Sequence[Move], told: Told, answered: set[str]) -> None:
    first = moves[0]
    if first.goal.kind == "pivot":
        if told.brief:
            section.passages.append(Paragraph((Text(_spoken(told, first)),)))
        balance = next(
            (move for move in told.outcome.working.moves if move.goal.kind == "moments" and move.before is None), None
        )
        if balance is not None:
            section.passages.append(Paragraph((Text(_senses(told, balance)),)))
        return
    if first.goal.kind == "at rest":
        section.passages.append(Paragraph(_principle(first, told)))
        return
    if first.goal.kind == "moments":
        if not any(move.goal.kind == "pivot" for move in told.outcome.working.moves):
            section.passages.append(Paragraph((Text(_senses(told, first)),)))
        section.passages += [
            Paragraph((Text(sentence(each)),))
            for each in (told.once(getattr(first.sight, "reason", "")), _figures(told))
            if each
        ]
    section.passages += [Paragraph(each) for each in (_towards(first, told),) if each]
    rows: list[Row] = []
    for move in moves:
        _append(rows, move, told)
    section.passages.append(Derivation(tuple(rows)))
    _signs(section, first, told)
    _answers(section, moves, told, answered)


def _towards(first: Move, told: Told) -> Line:
    """What is done with two parts of one force, and then with the angle that they give."""
    if (
        told.brief
        or first.before is None
        or not any(isinstance(leaf, Trig) for leaf in leaves(first.before.equation.left))
    ):
        return ()
    if first.goal.kind == "ratio":
        return (
            Text(
                "Both lines hold the size and the angle of the force; together they give first the angle, then the "
                "size."
            ),
        )
    return (Text("The angle goes back into "), Maths(first.before.equation), Text(" and gives the size."))


def _signs(section: Section, first: Move, told: Told) -> None:
    """What the minus sign of a part says, and where the joint force points."""
    outcome, key = told.outcome, first.goal.sought
    if told.brief:
        return
    if said := sign_line(outcome, key):
        section.passages.append(Paragraph((Text(said),)))
    if first.goal.kind == "forces" and key in outcome.answers and (said := minus_line(outcome, key)):
        section.passages.append(Paragraph((Text(said),)))


def _figures(told: Told) -> str:
    """That more figures are carried than written; said once."""
    course = told.outcome.body.problem.course
    if course.carry != "unrounded":
        return ""
    figures = "one figure" if course.working_figures == 1 else f"{counted(course.working_figures)} figures"
    return told.once(
        f"Intermediate results are written to {figures} but carried on unrounded, so the last figure may seem off by "
        "one."
    )


def _spoken(told: Told, move: Move) -> str:
    what, why = said_plainly(move.rule.say.what, move.sight), told.once(said_plainly(move.rule.say.why, move.sight))
    lead = "We " + what if told.outcome.body.problem.course.person == "we" else what
    return sentence(f"{lead}: {why}" if why else lead)


def _principle(move: Move, told: Told) -> Line:
    what, why = said_plainly(move.rule.say.what, move.sight), told.once(said_plainly(move.rule.say.why, move.sight))
    return (Text(sentence(what).rstrip(".") + ", "), Maths(move.line.equation), Text(f": {why}." if why else "."))


def _senses(told: Told, move: Move) -> str:
    """The sign convention in words, and how each force turns."""
    course = told.outcome.body.problem.course
    turning = getattr(move.sight, "turning", "")
    if course.balance == "two sides":
        return f"{sentence(turning)} At rest what turns one way equals what turns the other."
    if course.positive == "up":
        signs = "each force's letter has its sign in it: what acts down is below nothing"
        return sentence(
            f"up counts as positive for {course.word}s too, which is allowed here: only upward and downward parts "
            "turn, all on one side of the "
            f"{told.outcome.pivot}. {sentence(signs if course.letters_have_signs else turning)}"
        )
    return sentence(f"{course.positive} counts as positive: {turning}")


def _append(rows: list[Row], move: Move, told: Told) -> None:
    equation = move.line.equation
    sign = "≈" if equation.rounded else "="
    if rows and _goes_on(rows[-1], move, told):
        last = rows[-1]
        note = () if last.note and _says_what_follows(last) and not equation.rounded else _note(told, move)
        rows[-1] = Row(last.left, (*last.right, (sign, equation.right)), last.label, _joined(last.note, note))
        return
    rows.append(Row(equation.left, ((sign, equation.right),), (), _note(told, move)))


def _goes_on(row: Row, move: Move, told: Told) -> bool:
    """Whether a line stands in the row before it; of a working that is known all lines with one left side do."""
    left = move.line.equation.left
    if told.known(move) and left and len(left) == 1 and row.left:
        return plain(row.left) == plain(left)
    return row.left == left and (move.line.equation.rounded or _lonely(row, move))


def _lonely(row: Row, move: Move) -> bool:
    """A sum or quotient just written, and now worked out: they may share a row."""
    return len(row.right) == 1 and move.rule.say.runs_on


def _says_what_follows(row: Row) -> bool:
    """Whether a row ends with a root or an inverse function, whose note has said already what is worked out."""
    return any(isinstance(factor, Root | Inverse) for each in row.right[-1][1] for factor in each.factors)


def _joined(first: Line, second: Line) -> Line:
    return (*first, Text("; "), *second) if first and second else first or second


def _note(told: Told, move: Move) -> Line:
    if told.brief or told.known(move) or (move.before is None and move.goal.kind == "moments"):
        return ()
    say = move.rule.say
    line = list(filled(say.what, move.sight))
    for more in (say.why, say.watch):
        text = told.once(said_plainly(more, move.sight))
        if text:
            line.append(Text(f"; {text}"))
    return tuple(line)


def _answers(section: Section, moves: Sequence[Move], told: Told, answered: set[str]) -> None:
    """The answers that these lines reached."""
    outcome, last = told.outcome, moves[-1]
    reached = {
        move.goal.sought
        for move in moves
        if move.goal.until == "found"
        and not letters(move.line.equation.right)
        and letters(move.line.equation.left) == {move.goal.sought}
    }
    asked_parts = [name for name, key in outcome.working.asked if key.startswith("reaction.")]
    parts_only = outcome.body.problem.course.resultant == ("parts",) and last.goal.sought in (
        "reaction.up",
        "reaction.across",
    )
    for name, key in outcome.working.asked:
        whole = key == "reaction" and (_joint_done(moves) or parts_only)
        if name in answered or name not in outcome.answers or not (whole or (key in reached and key != "reaction")):
            continue
        answered.add(name)
        if whole and parts_only:
            section.passages.append(Boxed(parts_line(outcome)))
            continue
        if key.startswith("reaction."):
            alone = "reaction" not in outcome.answers and all(each in answered for each in asked_parts)
            section.passages += [Boxed(parts_line(outcome))] if alone else []
            continue
        section.passages.append(Boxed(answer_line(outcome, name)))
    if last.goal.kind == "stress" and last.goal.sought in outcome.answers and last.goal.sought not in answered:
        answered.add(last.goal.sought)
        section.passages.append(Boxed(answer_line(outcome, last.goal.sought)))


def _joint_done(moves: Sequence[Move]) -> bool:
    """Whether these lines end with the whole joint force: with its angle, or with a size that has one part only."""
    last = moves[-1]
    if last.goal.kind == "resultant angle":
        return True
    return last.goal.kind == "resultant" and moves[0].line.equation.left == last.line.equation.left
