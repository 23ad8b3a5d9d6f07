"""The report on a working as a page: for a student one issue and the hints asked for, for a tutor everything. Knows
sentences, and decides no look.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Literal, Protocol

from ...walkthrough.class_page import class_page
from ...walkthrough.general_words import sought_words
from ...walkthrough.page import CAUTION
from .without_numbers import Discreet, discreet
from ...document.english import listed, sentence
from ..marks.award import Marks, awarded
from ...solve.outcome import Outcome
from ...document.passage import (
    Answer,
    Bullets,
    Caution,
    Emphasis,
    Heading,
    Judged,
    Line,
    Page,
    Paragraph,
    Passage,
    Strong,
    Text,
)
from .lines import first_issue, numbered, origin, student_lines, tutor_lines
from .tutor import answers_table, issue, last_word, marks_table
from ..marks.scheme import Scheme, scheme_of
from .prompts import CHECKS, LOOK, PART_OF, chief, rights
from ..slips.verdict import LineVerdict, Marking

Audience = Literal["student", "tutor"]
HINTS = range(4)
ROUTE = (
    "Other ways to the same end are just as right: another point for the moments, another sign rule, other "
    "units, steps in another order."
)


_LACKS = {
    "direction-missing": "the direction of the force at the joint",
    "angle-reference-not-stated": "the line that the angle of the force at the joint starts from",
}


class Worked(Protocol):
    """A problem worked through, with its page."""

    @property
    def outcome(self) -> Outcome: ...

    @property
    def page(self) -> Page: ...


def report(
    marking: Marking, walkthrough: Worked, audience: Audience = "student", hints: int = 1, name: str = ""
) -> Page:
    """The report alone. `hints` is how strong a student's hints may be: 0 none, 3 all; `name` tells a working from
    others of its problem.
    """
    outcome = walkthrough.outcome
    scheme = scheme_of(outcome)
    if audience == "student":
        parts = tuple(_student(marking, outcome, scheme, hints))
        title = f"{outcome.body.problem.title}: your working, line by line"
    else:
        parts = tuple(_tutor(marking, outcome, awarded(scheme, marking)))
        title = f"{outcome.body.problem.title}: a working, for the tutor"
    title += f" ({name})" if name else ""
    model = "plane, rigid and at rest" if outcome.body.problem.balanced else "plane and rigid"
    passages = (Heading(1, (Text(title),)), *parts, Caution((Text(CAUTION.format(model=model)),)))
    return class_page(outcome.body.problem, title, passages)


# ---------------------------------------------------------------------- for a student
def _student(marking: Marking, outcome: Outcome, scheme: Scheme, hints: int) -> Iterator[Passage]:
    mouth = discreet(marking, outcome)
    stop = first_issue(marking)
    yield Answer((Text(_verdict(marking, outcome)),))
    yield Judged("Your lines, as typed", student_lines(marking, mouth.words))
    line = next((each for each in marking.lines if each.number == stop), None)
    if line is not None:
        yield from _look_at(line, marking, outcome, scheme, mouth, hints)
    held = [each for each in marking.lines if each.verdict == "holds" and (stop is None or each.number < stop)]
    answers = [each for each in marking.answers if each.right and (stop is None or 0 < each.line < stop)]
    right = rights(held, answers, outcome, scheme)
    if right:
        yield Heading(2, (Text("What is right already" if stop else "What is right"),))
        yield Bullets(tuple((Text(sentence(each)),) for each in right))
    yield Paragraph((Emphasis(ROUTE),))


def _verdict(marking: Marking, outcome: Outcome) -> str:
    stop = first_issue(marking)
    unclear = [each.number for each in marking.lines if each.verdict == "unclear"]
    if stop is not None:
        before = [each.number for each in marking.lines if each.verdict == "holds" and each.number < stop]
        held = f"{sentence(numbered(before))[:-1]} {'holds' if len(before) == 1 else 'hold'}. " if before else ""
        return f"{held}Line {stop} is the first that does not hold: look there."
    if unclear:
        return f"Nothing wrong was found, but {numbered(unclear)} could not be followed: see the question there."
    if not any(each.verdict == "holds" for each in marking.lines):
        return "No line of working was found: words only."
    bare = next((each for each in marking.answers if each.unit_missing), None)
    if bare is not None:
        return f"Every line holds. The answer{f' in line {bare.line}' if bare.line else ''} has no unit yet."
    return f"Every line holds. {open_questions(marking, outcome)}".strip()


def open_questions(marking: Marking, outcome: Outcome) -> str:
    """What the question asks for and the working does not give."""
    told = {each.name for each in marking.answers}
    told |= {each.partition(".")[0] for each in told if not each.startswith("reaction.") and not _is_stress(each)}
    missing = [
        name
        for name, _ in outcome.working.asked
        if name not in told
        and (name in PART_OF and "reaction" not in told or _is_stress(name) or name.partition(".")[0] not in told)
    ]
    keys = dict(outcome.working.asked)
    missing = [each for each in missing if each not in PART_OF or outcome.answers[each].value]  # nothing to be told
    names = [
        _of_the_joint(each, told)
        if each.startswith("reaction")
        else sought_words(outcome, each, keys[each])
        if "." in each
        else each
        for each in missing
    ]
    names += [_LACKS[each.lacks] for each in marking.lines if each.lacks in _LACKS]
    if not names:
        return "All that is asked for is there."
    return f"Still asked for: {listed(list(dict.fromkeys(names)))}."


def _is_stress(name: str) -> bool:
    """Whether an answer is a stress, which stands beside the pull and not for it."""
    return name.endswith(".stress")


def _of_the_joint(name: str, told: set[str]) -> str:
    """The joint force, or the part of it that is missing beside the other."""
    if name == "reaction.friction":
        return "the coefficient of friction"
    if not told & {*PART_OF}:
        return "the force at the joint"
    return f"the {PART_OF[name]} the force at the joint" if name in PART_OF else "the force at the joint as a whole"


def _look_at(
    line: LineVerdict, marking: Marking, outcome: Outcome, scheme: Scheme, mouth: Discreet, hints: int
) -> Iterator[Passage]:
    about = chief(line.slips[0].keys if line.slips else line.uses, scheme) or chief(line.uses, scheme)
    words = {"pivot": f"the {outcome.pivot}" if outcome.pivot != "pivot" else "the pivot", "word": outcome.word}
    yield Heading(2, (Text(f"Line {line.number}"),))
    said = "" if line.slips else mouth.words(line.says)  # what is said of a slip is as strong as the last hint
    said = said or "The line is not true of this problem, and it does not follow from the lines before it."
    yield Paragraph((Text(f"{sentence(said)} "), Strong("Look at "), Text(f"{LOOK[about].format(**words)}.")))
    question = mouth.words(line.question) if hints > 1 else ""  # it names what it may have been
    if question:
        yield Paragraph((Strong("A question: "), Text(sentence(question))))
    told = tuple(_hints(line, mouth, hints))
    if told:
        yield Bullets(told)
    yield Paragraph((Strong("A check you can do. "), Text(CHECKS[about].format(**words))))
    yield Paragraph((Strong("After the change. "), Text(_afterwards(line, marking))))
    yield Paragraph(
        (
            Strong("If you see it otherwise. "),
            Text(
                f"A program judged this line, and a person has the last word: show line {line.number} to your tutor, "
                "who can accept it."
            ),
        )
    )


def _hints(line: LineVerdict, mouth: Discreet, hints: int) -> Iterator[Line]:
    """Hints up to a level; where two slips lead to one line, both have theirs."""
    for level in range(min(hints, 3)):
        told = list(dict.fromkeys(each for slip in line.slips[:2] if (each := mouth.words(slip.hints[level]))))
        if told:
            yield (Strong(f"Hint {level + 1}. "), Text(" Or: ".join(told)))
    likely = [slip for slip in line.slips[:2] if mouth.may(slip.title)] if hints > 2 else []
    for slip in likely:
        yield (
            Strong(f"{'What it is' if len(likely) == 1 else 'What it may be'}. "),
            Text(sentence(f"{slip.title}: {mouth.words(slip.says)}".strip(": "))),
        )


def _afterwards(line: LineVerdict, marking: Marking) -> str:
    carried = [
        each.number for each in marking.lines if each.verdict == "carried" and origin(each, marking) == line.number
    ]
    if carried:
        one = len(carried) == 1
        return (
            f"{sentence(numbered(carried))[:-1]} {'follows' if one else 'follow'} from line {line.number} and "
            "will change with it."
        )
    later = any(each.number > line.number and each.verdict != "aside" for each in marking.lines)
    return "Go on from there, and have the later lines looked at again." if later else "Go on from there."


# ---------------------------------------------------------------------- for a tutor
def _tutor(marking: Marking, outcome: Outcome, marks: Marks) -> Iterator[Passage]:
    yield Answer((Text(_summary(marking, marks)),))
    yield Judged("The lines, as typed", tutor_lines(marking))
    for each in marking.issues:
        yield from issue(each, marking)
    contested = [each.number for each in marking.lines if each.verdict in ("slips", "unclear")]
    if contested:
        yield last_word(contested)
    if marking.answers:
        yield Heading(2, (Text("Answers"),))
        yield answers_table(marking, outcome)
    yield Heading(2, (Text("Marks"),))
    yield marks_table(marks)
    yield Paragraph(
        (Emphasis("Each slip costs once; what follows from it earns. The walkthrough stands behind this report."),)
    )


def _summary(marking: Marking, marks: Marks) -> str:
    wrong = [each.number for each in marking.issues]
    unclear = [each.number for each in marking.lines if each.verdict == "unclear"]
    said = [
        f"{sentence(numbered(wrong))[:-1]} {'does' if len(wrong) == 1 else 'do'} not hold"
        if wrong
        else "No line is wrong"
    ]
    if unclear:
        said.append(f"{numbered(unclear)} could not be followed")
    upto = f" to {marks.earned + marks.open}" if marks.open else ""
    return f"{'; '.join(said)}. {marks.earned}{upto} of {marks.total} marks."
