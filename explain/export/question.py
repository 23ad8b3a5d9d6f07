"""A worked problem as a question: statement, figure, given values, a field for each answer, the caution. Nothing but
the fields holds what was worked out.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction
from math import ceil, cos, hypot, log10, radians, sin

from ..api import Walkthrough, slips
from ..document.english import listed, the
from ..document.passage import Caution, Line, Maths, Paragraph, Passage, Text
from ..equation import key as keys
from ..equation.terms import term
from ..exact.interval import in_unit, middle, to_figures
from ..marking.slips.slip import SlipRule, named
from ..mechanics.signed_letters import of_force_down
from ..solve.answers import Answer, unit_of_answer
from ..solve.outcome import Outcome
from ..tally.alternatives import singles
from ..tally.asked import wanted
from ..vary.settle_only import accounted
from ..walkthrough.answer_sentences import pretty
from ..walkthrough.class_page import spelling_of
from ..walkthrough.exercise_sheet import student_sheet
from ..walkthrough.general_words import body_name, joint_pusher, sought_line
from ..walkthrough.page import CAUTION
from ..write.qti.item import Choice, Field, Item, Number, Option
from ..wording.direction_words import counted_words
from ..wording.phrases import what_out_is_along
from .wrong_numbers import Wrong, wrong_numbers

SHARE = 0.01  # a number is right within this share of the right one
_TENTH = 0.1  # of the joint force: a part that is smaller is measured by this
_NONE = 1e-6  # of a direction
_MEDIUM = 1  # the second of a slip's three hints
_PARTS = {  # of the joint force, and which way each counts as positive
    "reaction.right": ("horizontal part", "to the right"),
    "reaction.up": ("vertical part", "upward"),
    "reaction.along": ("part along the {axes}", "away from {pivot}"),
    "reaction.across": ("part across the {axes}", "{across}"),
}


def question(walkthrough: Walkthrough, name: str, title: str, share: float = SHARE, choices: int = 0) -> Item:
    """A problem with its answers. `name` is fit for a file; a number is right within a `share` of the right one. With
    `choices` one of so many numbers is to be chosen, or of fewer where slips lead to fewer.
    """
    problem, outcome = walkthrough.problem, walkthrough.outcome
    spell = spelling_of(problem)
    page = student_sheet(outcome, diagram=0, working=0)
    before = list(page.passages[:-1])  # the fields say what is to be found
    if not tells(walkthrough):
        before.insert(1, walkthrough.picture())
    fields = tuple(_fields(walkthrough, share, choices))
    if any(isinstance(each, Number) for each in fields):
        before.append(_how(share))
    model = "plane, rigid and at rest" if problem.balanced else "plane and rigid"
    after = spell.passages([Caution((Text(CAUTION.format(model=model)),))])
    return Item(name, title, tuple(before), fields, tuple(after), page.language)


def tells(walkthrough: Walkthrough) -> bool:
    """Whether the figure, which is to scale, would show what is sought: an angle or a length."""
    body, asked = walkthrough.outcome.body, [key for _, key in walkthrough.outcome.working.asked]
    bearings = [*body.bearings.values(), *(each.bearing for each in body.forces if each.bearing)]
    sought = [*asked, *(each.letter.name for each in body.sought)]
    return any(each.unknown for each in bearings) or any(
        keys.of(key).is_angle or keys.of(key).what in ("at", "moment_arm", "length", "com", "*arm") for key in sought
    )


def _how(share: float) -> Passage:
    """How a number is to be typed: to so many figures that rounding them costs nothing."""
    figures = max(3, ceil(1 - log10(2 * share)))
    count = {3: "three", 4: "four", 5: "five", 6: "six"}.get(figures, str(figures))
    return Paragraph((Text(f"Give each number to {count} figures or more, with a decimal point."),))


# ---------------------------------------------------------------------- the fields
def _fields(walkthrough: Walkthrough, share: float, choices: int) -> Iterator[Field]:
    chosen = _Chooser(walkthrough) if choices else None
    for answer in _asked(walkthrough):
        label = _spelled(walkthrough, _label(walkthrough, answer))
        options = chosen.options(answer, choices) if chosen else ()
        if options:
            yield Choice(label, options)
        else:
            yield Number(label, _unit(answer), answer.value, share, _within(walkthrough, answer, share))


def _asked(walkthrough: Walkthrough) -> Iterator[Answer]:
    """The answers; of a joint force that was asked for whole no part that is nothing."""
    asked = dict(walkthrough.outcome.working.asked)
    for answer in walkthrough.answers.values():
        if answer.name in asked or answer.name not in _PARTS or answer.value:
            yield answer


def _within(walkthrough: Walkthrough, answer: Answer, share: float) -> float:
    """An absolute tolerance where a share of the answer would be too narrow: for a part of the joint force below a
    tenth of the whole, and for nothing. Else 0.
    """
    working = walkthrough.outcome.working
    if answer.name in _PARTS:
        force = hypot(*(working.settled.values[each] for each in ("reaction.right", "reaction.up")))
        tenth = _TENTH * force * float(middle(in_unit(Fraction(1), unit_of_answer(working, answer.name))))
        return (share * tenth or share) if abs(answer.value) < tenth or not answer.value else 0.0
    return 0.0 if answer.value else share


def _unit(answer: Answer) -> str:
    return {"deg": "degrees"}.get(answer.unit, pretty(replace(answer, shown=f"0 {answer.unit}"))[1:].strip())


def _label(walkthrough: Walkthrough, answer: Answer) -> Line:
    """What a field asks for: its letter and what that stands for, with the sense that counts as positive."""
    outcome = walkthrough.outcome
    key = dict(outcome.working.asked).get(answer.name, answer.name)
    course = outcome.body.problem.course
    if key == "reaction" or key in _PARTS:
        words = _PARTS.get(key, ("size", ""))
        part, way = (each.format(axes=course.axes, pivot=the(outcome.pivot), across=_across(outcome)) for each in words)
        said = f", the {part} of the force of {joint_pusher(outcome)} on {body_name(outcome)}"
        return (Maths((term(outcome.body.letters(key)),)), Text(said + (f", positive {way}" if way else "")))
    line = sought_line(outcome, answer.name, key)
    if keys.of(key).is_angle:
        return (*line, Text(_counted(outcome, keys.of(key).owner)))
    if key == "total" or keys.of(key).what == "*moment":
        sense = "counter-clockwise" if course.sense > 0 else "clockwise"
        return (*line, Text(f", positive {sense}"))
    return (*line, Text(", positive downward")) if key in of_force_down(outcome.body) else line


def _across(outcome: Outcome) -> str:
    """The way across the bone that counts as positive: a quarter turn counter-clockwise from outward along it."""
    bearing = outcome.body.bearings.get(outcome.body.problem.course.axes)
    if bearing is None or bearing.unknown:
        return "a quarter turn counter-clockwise from the way along it"
    turn = radians(float(bearing.degrees) + 90)
    ways = (("upward", sin(turn)), ("downward", -sin(turn)), ("to the right", cos(turn)), ("to the left", -cos(turn)))
    return listed([way for way, share in ways if share > _NONE])


def _counted(outcome: Outcome, owner: str) -> str:
    """From where an angle that is sought is counted."""
    problem = outcome.body.problem
    directions = {each.name: each.direction for each in problem.segments}
    direction = directions.get(owner) or next(each.direction for each in problem.pulls if each.name == owner)
    return f", {counted_words(direction, what_out_is_along(problem, owner))}" if direction else ""


def _spelled(walkthrough: Walkthrough, line: Line) -> Line:
    passage = spelling_of(walkthrough.problem).passage(Paragraph(line))
    assert isinstance(passage, Paragraph)
    return passage.line


# ---------------------------------------------------------------------- numbers to choose from
class _Chooser:
    """What the slips make of the answers of one problem."""

    def __init__(self, walkthrough: Walkthrough) -> None:
        self.walkthrough, self.rules = walkthrough, slips()
        account, _ = accounted(walkthrough.outcome)
        self.wanted = wanted(walkthrough.outcome, account)
        self.made = singles(account, self.rules, self.wanted)

    def options(self, answer: Answer, count: int) -> tuple[Option, ...]:
        """The right number among wrong ones, the least first; none where no slip leads to a wrong one."""
        place = next((at for at, each in enumerate(self.wanted) if each.name == answer.name), None)
        if place is None:
            return ()
        found = wrong_numbers(self.made, self.rules, self.wanted[place], place, self._rounded, count - 1)
        if not found:
            return ()
        right = Option(_spelled(self.walkthrough, (Text(pretty(answer)),)), right=True)  # as its page shows it
        numbers = [(self._rounded(answer.value), right), *((each.number, self._wrong(answer, each)) for each in found)]
        return tuple(option for _, option in sorted(numbers, key=lambda each: each[0]))

    def _wrong(self, answer: Answer, wrong: Wrong) -> Option:
        hint = named(self._rule(wrong.spoilt.slip), wrong.spoilt).hints[_MEDIUM]
        return Option(self._shown(answer, wrong.number), _spelled(self.walkthrough, (Text(hint),)))

    def _rule(self, slip: str) -> SlipRule:
        return next(each for each in self.rules if slip == each.SLIP)

    def _rounded(self, number: float) -> float:
        """As the page rounds an answer."""
        course = self.walkthrough.problem.course
        return float(to_figures(Fraction(number), course.figures, course.ties)) if number else 0.0

    def _shown(self, answer: Answer, number: float) -> Line:
        course = self.walkthrough.problem.course
        digits = f"{to_figures(Fraction(number), course.figures, course.ties):f}" if number else "0"
        shown = pretty(replace(answer, shown=f"{digits} {answer.unit}".strip()))
        return _spelled(self.walkthrough, (Text(shown),))
