"""What a step takes over from earlier ones without writing it out again: which results, and where their lines stand
in full.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from ..equation.terms import letters
from ..document.passage import Inline, Line, Maths, Paragraph, Passage, Strong, Text
from ..walkthrough.answer_sentences import answer_line
from ..walkthrough.sections import SHORT
from ..solve.engine import Move
from .comparison import GoalKey, goal_key, result
from .worked_steps import Worked


def recalled(each: Worked) -> Iterator[Passage]:
    """One paragraph: for each earlier step that lines are taken over from, what they led to."""
    homes = {key: home for key, home in each.homes.items() if home != each.step.number}
    out: list[Inline] = []
    for home in sorted(set(homes.values())):
        line = _line(each, [key for key, where in homes.items() if where == home])
        if line:
            out += [Text(f" As {f'in step {home}' if home else 'at the start'}: "), *line]
    if out:
        yield Paragraph((Strong("Not written out again."), *out))


def _line(each: Worked, keys: Sequence[GoalKey]) -> Line:
    pieces: list[Inline] = [Maths(result(each.outcome, key)) for key in keys if key[0] in SHORT]
    if any(key[0] == "pivot" for key in keys):
        pieces.append(Text(f"where {each.outcome.word}s are taken, and which way is positive"))
    out: list[Inline] = []
    for place, piece in enumerate(pieces):
        out += [Text("; ")] * bool(place) + [piece]
    out += [Text(".")] * bool(pieces)
    for place, name in enumerate(_answers(each, keys)):
        out += [*([Text(" ")] if pieces or place else []), *answer_line(each.outcome, name)]
    return tuple(out)


def _answers(each: Worked, keys: Sequence[GoalKey]) -> list[str]:
    """The answers that the lines of these goals reach; the whole joint force where both of its parts are among them."""
    sought = {key[2] for key in keys}
    moves: tuple[Move, ...] = each.outcome.working.moves
    reached = {move.goal.sought for move in moves if goal_key(move) in keys and not letters(move.line.equation.right)}
    return [
        name
        for name, key in each.outcome.working.asked
        if key in reached and key in sought and name in each.outcome.answers
    ]
