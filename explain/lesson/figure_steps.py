"""The free-body diagram as it grows on the board: the body, each force, the arms, what counts as positive, with what is
told of each.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence
from typing import NamedTuple

from ..document.english import listed, sentence, the, weight_of
from ..document.figure_parts import ARMS, BODY, JOINT, SIGNS, part_of, parts
from ..document.passage import Arrow, Drawing, Line, Maths, Text, Turn
from ..equation.terms import Terms
from ..solve.outcome import Outcome
from ..walkthrough.diagram_words import described
from ..wording.pivot_words import pivot_force


class Step(NamedTuple):
    """One step: the parts that are new with it, what heads it, and what is told of it."""

    new: tuple[str, ...]
    part: str
    told: tuple[Line, ...]


def steps(outcome: Outcome, drawing: Drawing, known: Collection[str]) -> Iterator[Step]:
    """All steps in order; parts that are `known` are there from the first on."""
    told: dict[str, list[str]] = {}
    for part, said in described(outcome, drawing):
        told.setdefault(part, []).append(said)
    there = tuple(each for each in parts(drawing) if each in known)
    if BODY in there:
        gone = [the(each.removeprefix("*")) for each in known if each.startswith("*") and each not in there]
        more = any(each.startswith("*") and each not in known for each in parts(drawing))
        yield Step(there, "The same body", ((Text(_as_before(gone, more)),),))
    for part in parts(drawing):
        if part not in there:
            yield Step((part,), _heading(outcome, part), tuple(_lines(outcome, drawing, part, told.get(part, []))))


def _as_before(gone: Sequence[str], more: bool) -> str:
    """What is told of a body that was drawn before, as something falls away or comes."""
    if gone:
        return f"No longer there: {listed(gone)}.{' The others are, and something more.' if more else ''}"
    if more:
        return "Everything that was there before is there still, and something more."
    return "The same forces act on it as before."


def _heading(outcome: Outcome, part: str) -> str:
    pivot = pivot_force(outcome.body.problem)
    ours = {BODY: "The body cut free", ARMS: "Distances", SIGNS: "What counts as positive", JOINT: f"The {pivot}"}
    return ours.get(part) or sentence(_named(outcome, part.removeprefix("*"))).rstrip(".")


def _named(outcome: Outcome, name: str) -> str:
    """A force as it is spoken of: the weight of a thing, or the name of a pull."""
    heavy = any(each.name == name and each.kind in ("weight", "load") for each in outcome.body.forces)
    return weight_of(name) if heavy else the(name)


def _lines(outcome: Outcome, drawing: Drawing, part: str, told: list[str]) -> Iterator[Line]:
    if part == ARMS:
        yield from _arms(outcome, drawing)
        return
    letters = _letters(drawing, part)
    if letters:
        yield _row(letters)
    yield from ((Text(each),) for each in told)
    if part == SIGNS and drawing.axes:
        yield (Text("The small arrows point the ways that count as positive for forces."),)


def _letters(drawing: Drawing, part: str) -> list[Terms]:
    forces: tuple[Arrow | Turn, ...] = (*drawing.arrows, *drawing.turns)
    return [each.letter for each in forces if part_of(each) == part and each.letter]


def _arms(outcome: Outcome, drawing: Drawing) -> Iterator[Line]:
    lengths = [each.label for each in drawing.spans]
    levers = [each.arm.label for each in drawing.arrows if each.arm]
    angles = [each.label for each in drawing.openings]
    for words, letters in (("Distances: ", lengths), ("Lever arms: ", levers), ("Angles: ", angles)):
        if letters:
            yield (Text(words), *_row(letters))
    if levers:
        yield (
            Text(
                "A line with a right-angle mark is a lever arm, the perpendicular distance from "
                f"{the(outcome.pivot)} to the line of a force."
            ),
        )


def _row(letters: list[Terms]) -> Line:
    """Letters, each once."""
    line: list[Text | Maths] = []
    for each in dict.fromkeys(letters):
        line += [*([Text(", ")] if line else []), Maths(each)]
    return tuple(line)
