"""The report on a class as a page: what to teach again, a chart, slips, answers that several things explain or
nothing does. Decides no look.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from types import MappingProxyType
from typing import NamedTuple

from ..walkthrough.class_page import class_page
from ..walkthrough.page import CAUTION
from ..document.english import listed
from ..solve.outcome import Outcome
from ..document.passage import (
    Answer,
    Axis,
    Bullets,
    Caution,
    Curve,
    Emphasis,
    Heading,
    Line,
    Page,
    Paragraph,
    Passage,
    Plot,
    Strong,
    Table,
    Text,
)
from .counts import Group, Sort, Tally
from .entry import Entry, Verdict
from .short_words import causes, covered, hidden, names_in, number, several, titled
from .first_step import Steps
from .teaching_points import Lesson, MOST, lessons, step_of, too_little
from .asked import Wanted

CHART = 8  # slips that a chart shows
ROWS = 40  # rows of a list on the page
_VERDICTS: tuple[Verdict, ...] = ("right", "carried", "wrong", "no number", "blank")
SCARCE = "A number says little about its cause. "


class Evidence(NamedTuple):
    """By answer, how often chance alone fits a single slip and a pair of slips (empty where pairs were not needed)."""

    singles: Mapping[str, float] = MappingProxyType({})
    pairs: Mapping[str, float] = MappingProxyType({})


@dataclass(frozen=True)
class Sheetful:
    """All that a page is made of. `variants` is how many problems were judged where each student has one, 0 where all
    have the same; `absent` are those of the key who handed in nothing.
    """

    tally: Tally
    outcome: Outcome
    wanted: tuple[Wanted, ...]
    known: Mapping[str, Sort]
    steps: Steps
    evidence: Evidence = Evidence()
    names: bool = False
    variants: int = 0
    absent: tuple[str, ...] = ()

    @cached_property
    def lessons(self) -> tuple[Lesson, ...]:
        return lessons(self.tally, self.steps)

    def typed(self, text: str) -> str:
        """A text that somebody typed, with names taken out unless they are asked for."""
        return hidden(text, frozenset() if self.names else self._names)

    @cached_property
    def _names(self) -> frozenset[str]:
        tally = self.tally
        return names_in(each.student for each in (*tally.entries, *tally.further, *tally.strangers))

    @cached_property
    def answers(self) -> tuple[str, ...]:
        """The answers that anybody gave, or left blank, in order."""
        given = {said.name for entry in self.tally.entries for said in entry.said}
        return tuple(each.name for each in self.wanted if each.name in given)


def page(of: Sheetful) -> Page:
    """The whole report."""
    problem = of.outcome.body.problem
    title = f"{problem.title}: what the class's {'workings' if of.tally.lines else 'answers'} show"
    model = "plane, rigid and at rest" if problem.balanced else "plane and rigid"
    parts = (
        *_summary(of),
        *_again(of),
        *_slips(of),
        *_several(of),
        *_nothing(of),
        *_students(of),
        *_unread(of),
        *_evidence(of),
    )
    return class_page(
        problem, title, (Heading(1, (Text(title),)), *parts, Caution((Text(CAUTION.format(model=model)),)))
    )


def _headed(title: str) -> Heading:
    return Heading(2, (Text(title),))


def _cells(*texts: str) -> tuple[Line, ...]:
    return tuple((Text(each),) for each in texts)


# ---------------------------------------------------------------------- how it went
def _summary(of: Sheetful) -> Iterator[Passage]:
    yield Answer((Text(summary(of.tally)),))
    rows = [_answer_row(each, of) for each in of.wanted if each.name in of.answers]
    if rows:
        head = _cells(
            "Answer",
            *(() if of.variants else ("True value",)),
            "Right",
            "Follow from a wrong one",
            "Wrong",
            "No number",
            *(() if of.tally.lines else ("Blank",)),
        )
        yield Table("Answers given", head, tuple(rows), frozenset(range(1, len(head))))
    if of.variants:
        yield Paragraph(
            (
                Text(
                    f"Each was judged with the student's own variant, {several(of.variants, 'variant')} in all: no "
                    "answer has one true value."
                ),
            )
        )


def summary(tally: Tally) -> str:
    """The class in a sentence."""
    if not tally.lines:
        verdicts = [each.verdict for entry in tally.entries for each in entry.said]
        right, blank = verdicts.count("right"), verdicts.count("blank")
        given = len(verdicts) - blank
        tail = f"; {several(len(tally.unread), 'student')} not judged" if tally.unread else ""
        tail = (f", and {several(blank, 'cell')} left blank" if blank else "") + tail + _nobodys(tally, "row")
        return (
            f"{several(len(tally.entries), 'student')}, {several(given, 'answer')}: {right:,} right, "
            f"{given - right:,} not{tail}."
        )
    wrong = sum(bool(each.wrongs) for each in tally.entries)
    unclear = sum(bool(each.unclear) for each in tally.entries)
    tail = f", {unclear} with a line that could not be followed" if unclear else ""
    return (
        f"{several(len(tally.entries), 'working')}: {tally.right} right throughout, {wrong} with a wrong "
        f"line{tail}, {len(tally.unread)} not read{_nobodys(tally, 'working')}."
    )


def _nobodys(tally: Tally, what: str) -> str:
    return f"; {several(len(tally.strangers), what)} of nobody in the key, not counted" if tally.strangers else ""


def _answer_row(asked: Wanted, of: Sheetful) -> tuple[Line, ...]:
    verdicts = [said.verdict for entry in of.tally.entries for said in entry.said if said.name == asked.name]
    shown = (
        of.outcome.answers[asked.name].shown
        if asked.value >= 0 or not asked.signed
        else f"{number(asked.value)} {asked.spelled}"
    )
    true = () if of.variants else (shown.replace("-", "−"),)
    return _cells(asked.name, *true, *(f"{verdicts.count(each):,}" for each in _VERDICTS[: 4 if of.tally.lines else 5]))


# ---------------------------------------------------------------------- what to do about it
def _again(of: Sheetful) -> Iterator[Passage]:
    found = of.lessons
    yield _headed("Worth teaching again")
    for each in found:
        step = f" (walkthrough, {each.step})" if each.step else ""
        yield Paragraph(
            (
                Strong(f"{each.family.capitalize()}. "),
                Text(f"{each.idea} {each.exercise}{step} "),
                Emphasis(f"Seen in {each.evidence}."),
            )
        )
    if len(found) < MOST:
        wrong = any(each.wrongs for each in of.tally.entries)
        yield Paragraph(
            (Text(too_little(of.tally) if wrong else "Nothing wrong was found that could be taught again."),)
        )


def chart(of: Sheetful) -> Plot:
    """The commonest slips as bars."""
    shown = of.tally.slips[:CHART]
    names = tuple(each.sort.title for each in shown) or ("no slip was found",)
    curves = (
        Curve(
            "nothing else explains it",
            tuple((float(place), float(each.alone)) for place, each in enumerate(shown)) or ((0.0, 0.0),),
        ),
        Curve(
            "one of several explanations",
            tuple((float(place), float(each.among)) for place, each in enumerate(shown)) or ((0.0, 0.0),),
        ),
    )
    told = (
        f"The first is: {shown[0].sort.title}, {shown[0].alone} and {shown[0].among}. The table has all numbers"
        if shown
        else "No slip was found"
    )
    more = f" The {len(shown)} commonest of {len(of.tally.slips)} are shown." if len(of.tally.slips) > CHART else ""
    return Plot(
        "bars",
        "Slips by number of students",
        "Students in whom a slip alone explains what was found, and in whom it is one of several explanations. "
        f"{told}.",
        Axis("slip"),
        Axis("students"),
        curves,
        names,
        (Text(f"Each student counts once for a slip.{more}"),),
        tabled=True,
        figures=0,
    )


# ---------------------------------------------------------------------- the lists
def _slips(of: Sheetful) -> Iterator[Passage]:
    if not of.tally.slips:
        return
    yield _headed("Slips")
    yield chart(of)
    head = ["Slip", "Alone", "Among others", "Where it first shows"]
    if of.tally.lines:
        head.insert(3, "First wrong line")
    rows = []
    for each in of.tally.slips:
        cells = [titled(each.sort.title), str(each.alone), str(each.among), step_of((each,), of.steps)]
        rows.append(_cells(*(cells[:3] + [str(each.first)] + cells[3:] if of.tally.lines else cells)))
    caption = (
        "Students by slip: alone, where nothing else explains what was found; among others, where it is one "
        "of several explanations"
    )
    yield Table(caption, _cells(*head), tuple(rows), frozenset(range(1, len(head) - 1)))


def _several(of: Sheetful) -> Iterator[Passage]:
    if not of.tally.several:
        return
    yield _headed("Several explanations")
    yield Paragraph(
        (
            Text(
                "Each of these has more than one explanation, and none is named as the cause: ask how the number "
                "was found."
            ),
        )
    )
    rows = [
        _cells(of.typed(covered(each.wrong)), f"{each.students:,}", causes(each.wrong, of.known))
        for each in of.tally.several[:ROWS]
    ]
    yield Table(
        "Explanations that fit equally well",
        _cells("As given", "Students", "What may lead to it"),
        tuple(rows),
        frozenset((1,)),
    )
    yield from _more(of.tally.several)


def _nothing(of: Sheetful) -> Iterator[Passage]:
    if not of.tally.unexplained:
        return
    yield _headed("Nothing explains")
    yield Paragraph(
        (
            Text(
                "No single slip that is known here leads to these. They are worth a look at the working, the "
                "frequent ones first."
            ),
        )
    )
    rows = [
        _cells(
            of.typed(covered(each.wrong)),
            f"{each.students:,}",
            _pairs(each.wrong.pairs, bool(of.variants) and each.students > 1),
        )
        for each in of.tally.unexplained[:ROWS]
    ]
    yield Table(
        "Without an explanation", _cells("As given", "Students", "Pairs of slips"), tuple(rows), frozenset((1,))
    )
    yield from _more(of.tally.unexplained)


def _pairs(count: int, most: bool) -> str:
    return (
        f"{'up to ' if most else ''}{several(count, 'pair')} would fit; none is named from one number" if count else "–"
    )


def _more(groups: Sequence[Group]) -> Iterator[Passage]:
    rest = groups[ROWS:]
    if rest:
        students = several(sum(each.students for each in rest), "student")
        yield Paragraph(
            (
                Emphasis(
                    f"{len(rest):,} more of {students} are not shown here; the table of rows (--csv) and JSON have "
                    "them all."
                ),
            )
        )


def _students(of: Sheetful) -> Iterator[Passage]:
    """By name, only where that was asked for."""
    if not of.names:
        return
    rows = [
        _cells(
            of.typed(each.student) or f"row {each.place}",
            _state(each.wrongs, each.trouble),
            "; ".join(causes(wrong, of.known, 4) or "nothing explains it" for wrong in each.wrongs),
        )
        for each in of.tally.entries
        if not each.right
    ]
    if rows:
        yield _headed("By name")
        yield Table("Students with something to look at", _cells("Student", "What", "Explanations"), tuple(rows))


def _state(wrongs: Sequence[object], trouble: str) -> str:
    return trouble or (f"{len(wrongs)} to look at" if wrongs else "could not be followed, no number, or left blank")


def _named(each: Entry, of: Sheetful) -> str:
    return f" ({of.typed(each.student)})" if of.names and each.student else ""


# ---------------------------------------------------------------------- what could not be read, and how far to trust
# the rest
def _unread(of: Sheetful) -> Iterator[Passage]:
    word = "Working" if of.tally.lines else "Line"
    items = [f"{word} {each.place}: {each.trouble}{_named(each, of)}; not counted." for each in of.tally.strangers]
    items += [f"{word} {each.place}: {each.trouble}." for each in of.tally.unread]
    items += [
        f"{word} {each.place}, {said.name}: {said.note}{f' ({of.typed(said.typed)})' if of.names else ''}."
        for each in of.tally.entries
        for said in each.said
        if said.verdict == "no number"
    ]
    items += [
        f"{word} {each.place}: {several(each.unclear, 'line')} could not be followed."
        for each in of.tally.entries
        if each.unclear
    ]
    absent = [f"{several(len(of.absent), 'student')} of the key handed in nothing."] if of.absent else []
    shown = [
        *of.tally.remarks,
        *absent,
        *items[:ROWS],
        *([f"And {len(items) - ROWS:,} more."] if len(items) > ROWS else []),
    ]
    if shown:
        yield _headed("What could not be read, or was not counted")
        yield Bullets(tuple((Text(each),) for each in shown))


def _evidence(of: Sheetful) -> Iterator[Passage]:
    if of.tally.lines or not of.evidence.singles:
        return
    one = [f"{share * 100:.0f} % ({each})" for each, share in of.evidence.singles.items()]
    pair = [f"{share * 100:.0f} %" for share in of.evidence.pairs.values()]
    said = (
        f"{SCARCE}One drawn at random between a tenth and ten times the true value fits some single slip in "
        f"{listed(one)} of cases"
    )
    said += f", and some pair of slips in {listed(pair)}." if pair else "."
    rules = (
        "So one slip is taken before two, all that fit are listed, a pair is never named from one number, and "
        "lines of working tell more than answers."
    )
    yield Paragraph((Strong("How far to trust this. "), Text(f"{said} {rules}")))
