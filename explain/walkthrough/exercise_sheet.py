"""A worked problem as a sheet for those who are to work it: data, question, room, and what a diagram must show. No
answer stands in it.

A printed free-body diagram is left out on purpose: drawing it is part of the work (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Iterator

from ..mechanics.body import Bearing, Force, Given
from ..document.english import each_of, force_of, noun_of, sentence, the, weight_of
from ..equation.terms import term
from ..solve.outcome import Outcome
from ..document.passage import Line, Maths, Page, Paragraph, Passage, Prose, Space, Strong, Table, Text
from ..wording.statement import compose as compose_statement
from .given_order import in_order
from .class_page import class_page
from .general_words import body_name, find_line, joint_pusher

DIAGRAM, WORKING = 62, 60  # millimetres, at least


def student_sheet(outcome: Outcome, diagram: int = DIAGRAM, working: int = WORKING) -> Page:
    """The sheet of a problem, with room for a diagram and for the working, in mm; 0 leaves that room out.

    It tells nothing that was worked out: values as they were given, forces by name, no directions and no figure.
    """
    problem = outcome.body.problem
    statement = Prose(problem.statement) if problem.statement else Paragraph((Text(compose_statement(problem)),))
    passages: list[Passage] = [statement, given(outcome), Paragraph((Strong("Find "), *find_line(outcome)))]
    if diagram:
        passages.append(Space("Your free-body diagram", diagram, tuple((Text(each),) for each in checklist(outcome))))
    if working:
        passages.append(Space("Your working", working))
    return class_page(problem, problem.title, passages)


def given(outcome: Outcome) -> Table:
    """What was given: letter, meaning, and the value as its author wrote it."""
    rows = tuple(_row(each) for each in in_order(outcome) if each.value.number)
    return Table("Given", ((Text("Letter"),), (Text("Meaning"),), (Text("Value"),)), rows, frozenset({2}))


def _row(found: Given) -> tuple[Line, ...]:
    source = f" ({found.source.partition(';')[0]})" if found.source else ""
    return (
        (Maths((term(found.letter),)),),
        (Text(sentence(found.meaning).rstrip(".") + source),),
        (Maths((term(found.value),)),),
    )


def checklist(outcome: Outcome) -> Iterator[str]:
    """What belongs on the diagram, in words: every force by name, no sizes, no directions."""
    body, pivot = outcome.body, the(outcome.pivot)
    yield f"{body_name(outcome)}, cut free at {pivot}"
    yield from map(_named, body.forces)
    yield from (f"the {outcome.word} of {the(each.name)}, as an arc arrow" for each in body.twists)
    if body.problem.pivot.reaction and body.problem.balanced:
        yield f"the force of {joint_pusher(outcome)} on it, at {pivot}"
    yield "each distance that you use, both its ends marked"
    slanting = any(force.toward or (force.bearing and not _is_square(force.bearing)) for force in body.forces)
    if slanting or not all(map(_is_square, body.bearings.values())):
        yield "each angle, between two named lines"
    yield f"which way counts as positive for {outcome.word}s"


def _named(force: Force) -> str:
    match force.kind:
        case "weight":
            return f"{weight_of(force.name)}, at the centre of mass"
        case "load":
            return weight_of(force.name)
        case "muscle":
            return f"the pull of {each_of(force.name)}" if force.count > 1 else noun_of("pull", force.name)
    return f"the force of {each_of(force.name)}" if force.count > 1 else force_of(force.name)


def _is_square(bearing: Bearing) -> bool:
    """Whether a direction is level or upright."""
    return not bearing.unknown and bearing.degrees % 90 == 0
