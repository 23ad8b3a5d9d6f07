"""The last page of a series: all answers beside each other in a table, and a plot of those that are of one kind.
Decides no look.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import groupby

from ..walkthrough.class_page import class_page
from ..walkthrough.page import CAUTION
from ..document.english import sentence
from ..document.passage import Axis, Caution, Curve, Heading, Line, Page, Paragraph, Passage, Plot, Table, Text
from ..walkthrough.answer_sentences import pretty
from .comparison import per_cent
from .series_file import Series
from .comparison_words import called
from .worked_steps import Worked


def closing(series: Series, worked: Sequence[Worked]) -> Page:
    """The table and the plots."""
    title = f"{series.title}: all the answers"
    caution = Caution((Text(CAUTION.format(model="plane, rigid and at rest")),))
    parts = (Heading(1, (Text(title),)), _table(worked), *_plots(worked), *_still(worked), caution)
    return class_page(worked[0].problem, title, parts)


def _number(each: Worked) -> str:
    return str(each.step.number) if each.step.number else "Start"


def _table(worked: Sequence[Worked]) -> Table:
    """One row a step; where all answers are of one quantity, that heads their column."""
    nouns = {_noun(each) for each in worked if each.follow}
    head = nouns.pop() if len(nouns) == 1 else ""
    rows = [
        tuple(
            (Text(cell),) for cell in (_number(each), each.problem.title, _answer(each, named=not head), *_change(each))
        )
        for each in worked
    ]
    header: tuple[Line, ...] = tuple(
        (Text(word),) for word in ("Step", "What happens", head or "Answer", "Change", "Set beside")
    )
    return Table("The series at a glance", header, tuple(rows), frozenset((2, 3)) if head else frozenset((3,)))


def _noun(each: Worked) -> str:
    return sentence(called(each.outcome.body, each.follow)).rstrip(".")


def _answer(each: Worked, named: bool) -> str:
    if not each.follow:
        return ""
    lead = f"{_noun(each)}: " if named else ""
    if each.points:
        known = [point.outcome.answers[each.follow] for point in each.points if point.outcome is not None]
        most, least = (_glued(pretty(pick(known, key=lambda answer: answer.value))) for pick in (max, min))
        return f"{lead}{least} to {most}" if most != least else f"{lead}{most} throughout"
    return lead + _glued(pretty(each.outcome.answers[each.follow]))


def _glued(shown: str) -> str:
    """A number that is not parted from its unit."""
    return shown.replace(" ", "\u00a0")


def _change(each: Worked) -> tuple[str, str]:
    found = each.comparison
    where = f"step {each.step.compare}" if each.step.compare else "the start"
    if found is None or found.way == "none":
        return "", ""
    if found.way == "same":
        return "none", where
    if found.per_cent is None:
        return "more" if found.way == "more" else "less", where
    return ("+" if found.per_cent > 0 else "") + per_cent(found.per_cent), where


def _kind(each: Worked) -> tuple[str, str]:
    """What may stand on one axis: the unit, and the kind of quantity."""
    owner, _, part = each.follow.rpartition(".")
    return each.outcome.answers[each.follow].unit, part if owner else "force"


def _plots(worked: Sequence[Worked]) -> Iterator[Passage]:
    """One bar for each step, a plot for every kind of answer that two steps have."""
    single = [each for each in worked if each.follow and not each.points]
    for (unit, kind), group in groupby(sorted(single, key=_kind), key=_kind):
        steps = sorted(group, key=lambda each: each.step.number)
        if len(steps) > 1:
            yield _bars(steps, unit, kind)


def _bars(steps: Sequence[Worked], unit: str, kind: str) -> Plot:
    nouns = {called(each.outcome.body, each.follow) for each in steps}
    noun = nouns.pop().removeprefix("the ") if len(nouns) == 1 else {"force": "pull"}.get(kind, kind.replace("_", " "))
    curve = Curve(
        "", tuple((float(place), each.outcome.answers[each.follow].value) for place, each in enumerate(steps))
    )
    told = "; ".join(f"{_number(each)}: {pretty(each.outcome.answers[each.follow])}" for each in steps)
    return Plot(
        "bars",
        f"{sentence(noun).rstrip('.')}, step by step",
        sentence(told),
        Axis("step"),
        Axis(noun, "°" if unit == "deg" else unit),
        (curve,),
        tuple(f"{_number(each)}  {each.problem.title}" for each in steps),
        (Text(sentence(f"{noun}, step by step")),),
        tabled=True,
        figures=steps[0].problem.course.figures,
    )


def _still(worked: Sequence[Worked]) -> Iterator[Passage]:
    """Which steps change something and yet not the answer, and why."""
    for each in worked:
        found = each.comparison
        if found is not None and found.way == "same" and found.why and found.prediction.ground != "question":
            yield Paragraph((Text(f"Step {each.step.number} leaves the answer as it was. {found.why}"),))
