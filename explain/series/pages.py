"""The pages of a series: its first page, the start in full, and each step with what is new in it. Knows passages,
and decides no look.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
import re
from dataclasses import replace
from math import atan2, hypot

from ..equation.terms import term
from ..formula.plain import plain
from ..walkthrough.class_page import class_page
from ..walkthrough.discussion import MARKS, check_list
from ..walkthrough.page import CAUTION, compose
from ..walkthrough.diagram import draw, picture
from ..document.english import sentence
from ..walkthrough.closing_sentence import in_a_sentence
from ..document.passage import Caution, Heading, Line, Page, Paragraph, Passage, Picture, Prose, Strong, Table, Text
from ..walkthrough.sections import sections
from ..walkthrough.general_words import find_line
from ..walkthrough.move_sentences import Told
from .changes import GONE, NOTHING, Row, changes
from .summary_page import closing
from .series_file import Series
from .earlier_results import recalled
from .sweep_page import swept, word_of
from .comparison_words import predicted
from .worked_steps import Worked
from .written_lines import written

_SENTENCES = re.compile(r"(?<=\.) (?=[A-Z])")
_ADDED = "new: "
_FEW = 4  # changes that a sentence tells as well as a table


def pages(series: Series, worked: Sequence[Worked]) -> tuple[Page, ...]:
    """All pages in order: what the series is about, the start, the steps, and what they tell together. A reason is
    given once in all of them.
    """
    reasons = set[str]()
    list(sections(worked[0].outcome, told=Told(worked[0].outcome, reasons)))
    _told_once(picture(worked[0].outcome), reasons)
    return (
        _first(series, worked),
        _start(worked[0]),
        *(_step(worked, each, reasons) for each in worked[1:]),
        closing(series, worked),
    )


def joined(whole: Sequence[Page], title: str) -> Page:
    """All pages as one that runs on, for paper: a step begins where the one before it ends, its diagram first, so that
    words can stand beside it, and the caution stands once, behind all.
    """
    passages = [each for page in whole for each in _figure_first(page.passages)]
    cautions = dict.fromkeys(each for each in passages if isinstance(each, Caution))
    return Page(title, (*(each for each in passages if not isinstance(each, Caution)), *cautions), whole[0].language)


def _figure_first(passages: Sequence[Passage]) -> Iterator[Passage]:
    """The diagram directly behind the heading."""
    figures = [each for each in passages if isinstance(each, Picture)]
    yield from passages[:1]
    yield from figures
    yield from (each for each in passages[1:] if not isinstance(each, Picture))


def ref(number: int) -> str:
    """How another page is spoken of."""
    return f"step {number}" if number else "the start"


def at(number: int) -> str:
    """Where something was so."""
    return f"in step {number}" if number else "at the start"


def named(each: Worked) -> str:
    """The title of a step's page."""
    return f"{f'Step {each.step.number}' if each.step.number else 'Start'}: {each.problem.title}"


def _first(series: Series, worked: Sequence[Worked]) -> Page:
    rows = [
        (
            (Text(str(each.step.number) if each.step.number else "Start"),),
            (Text(each.problem.title),),
            (Text(sentence(each.step.idea) if each.step.idea else ""),),
            (Text(ref(each.step.compare) if each.step.number and not each.step.sweep else ""),),
        )
        for each in worked
    ]
    table = Table(
        "The steps", tuple((Text(word),) for word in ("Step", "What happens", "New idea", "Set beside")), tuple(rows)
    )
    how = (
        "Each step changes one thing. Before you work a step, say which way its answer must move; then work it, "
        "and see whether you were right and why. Only what is new is written out: of an equation that is solved as in "
        "an earlier step, the first lines and the result."
    )
    intro: tuple[Passage, ...] = (Prose(series.intro),) if series.intro else ()
    return class_page(
        worked[0].problem,
        series.title,
        (Heading(1, (Text(series.title),)), *intro, Paragraph((Text(how),)), table, _caution(worked[0])),
    )


def _start(each: Worked) -> Page:
    whole = compose(each.outcome, each.checks)
    idea = _idea(each)
    return class_page(each.problem, named(each), (Heading(1, (Text(named(each)),)), *idea, *whole.passages[1:]))


def _idea(each: Worked) -> Iterator[Passage]:
    if each.step.idea:
        yield Paragraph((Strong("New here: "), Text(sentence(each.step.idea))))


def _step(worked: Sequence[Worked], each: Worked, reasons: set[str]) -> Page:
    problem, old = each.problem, worked[each.step.compare]
    parts: list[Passage] = [Heading(1, (Text(named(each)),))]
    if problem.statement:
        parts.append(Prose(problem.statement))
    parts += _what_is_new(each, old)
    if each.points:
        one = word_of(each)
        lead = f"First one {one} is worked in full, the one told here; then all of them are set beside each other."
        parts.append(Paragraph((Text(lead),)))
    if each.problem.ask != old.problem.ask:
        parts.append(Paragraph((Strong("Find "), *find_line(each.outcome))))
    parts += _figure(worked, each, reasons)
    parts += _before(each, old)
    parts += recalled(each)
    parts += _working(worked, each, reasons)
    parts += _beside(each)
    parts += _checks(each, old)
    meaning = in_a_sentence(each.outcome)
    if meaning:
        parts.append(Paragraph((Text(sentence(meaning)),)))
    parts += swept(each) if each.points else ()
    return class_page(each.problem, named(each), (*parts, _caution(each)))


def _figure(worked: Sequence[Worked], each: Worked, reasons: set[str]) -> Iterator[Passage]:
    """The diagram, where it is another one than the earlier steps': else where it stands."""
    own, home = _likeness(each), each
    while home.step.number and _likeness(worked[home.step.compare]) == own:
        home = worked[home.step.compare]
    if home is each:
        yield _told_once(picture(each.outcome), reasons)
        return
    words = "The free-body diagram is that of {}: the same forces, in the same directions and order."
    yield Paragraph((Text(words.format(ref(home.step.number))),))


def _told_once(figure: Picture, reasons: set[str]) -> Picture:
    """The diagram; what its caption says of arrows and lines is said once in a series."""
    first, *legend = _SENTENCES.split("".join(each.text for each in figure.caption if isinstance(each, Text)))
    new = [each for each in legend if each not in reasons]
    reasons.update(legend)
    return replace(figure, caption=(Text(" ".join((first, *new))),))


def _likeness(each: Worked) -> object:
    """What makes two diagrams one but for their measures: the bones and forces with their directions, the order in
    which these act, what is drawn as positive.
    """
    drawn = draw(each.outcome)
    x, y = drawn.pivot
    places = [(round(hypot(arrow.at[0] - x, arrow.at[1] - y), 9), arrow.name) for arrow in drawn.arrows]
    return (
        tuple(
            (bone.name, round(atan2(bone.end[1] - bone.start[1], bone.end[0] - bone.start[0]), 6))
            for bone in drawn.bones
        ),
        tuple((arrow.name, arrow.kind, round(arrow.direction, 6)) for arrow in drawn.arrows),
        tuple(name for _, name in sorted(places)),
        tuple((turn.name, turn.sense, turn.kind) for turn in drawn.turns),
        drawn.axes,
        drawn.sense,
    )


def _caution(each: Worked) -> Caution:
    return Caution(
        (Text(CAUTION.format(model="plane, rigid and at rest" if each.problem.balanced else "plane and rigid")),)
    )


def _what_is_new(each: Worked, old: Worked) -> Iterator[Passage]:
    """The idea, and what changes: in a sentence where that is one thing or two."""
    lead: Line = (Strong("New here: "), Text(sentence(each.step.idea))) if each.step.idea else ()
    rows = [
        row._replace(was=plain((term(old.problem.course.g),))) if (row.what, row.was) == ("g", NOTHING) else row
        for row in changes(old.tables, each.tables)
    ]
    where = at(old.step.number)
    if not rows:
        same = f"Nothing that acts on the body has changed since {ref(old.step.number)}; only the question is new."
        yield Paragraph((*lead, Text(" " * bool(lead) + same)))
    elif len(rows) <= _FEW:
        said = "; ".join(_in_words(rows, where))
        word = "Added" if said.startswith(_ADDED) else "Changed"
        yield Paragraph((*lead, Text(" " * bool(lead)), Strong(f"{word}: "), Text(f"{said.removeprefix(_ADDED)}.")))
    else:
        if lead:
            yield Paragraph(lead)
        cells: list[tuple[Line, ...]] = [((Text(row.what),), (Text(row.was),), (Text(row.now),)) for row in rows]
        heads: tuple[Line, ...] = ((Text("What"),), (Text(where.capitalize()),), (Text("Now"),))
        yield Table("What changes, all else being equal", heads, tuple(cells))


def _in_words(rows: Sequence[Row], where: str) -> Iterator[str]:
    """What has changed, then what is gone, then what is new."""
    yield from (f"{row.what}, {row.now} ({row.was} {where})" for row in rows if not {NOTHING, GONE} & {*row})
    yield from (f"{row.what} is taken away" for row in rows if row.now == GONE)
    yield from (f"no longer {row.what}: {row.was}" for row in rows if row.now == NOTHING)
    new = [f"{row.what}, {row.now}" for row in rows if row.was == NOTHING and row.now != GONE]
    yield from ([f"{_ADDED}{'; '.join(new)}"] if new else [])


def _before(each: Worked, old: Worked) -> Iterator[Passage]:
    if each.comparison is None:
        return
    said = predicted(each.outcome.body, each.comparison.name, each.comparison.prediction)
    if said:
        yield Paragraph((Strong(f"Larger, smaller or the same as {at(old.step.number)}? "), Text(said)))


def _working(worked: Sequence[Worked], each: Worked, reasons: set[str]) -> Iterator[Passage]:
    """The lines that have changed: those of a new kind in full and with their reasons."""
    lines = written(worked, each)
    told = Told(each.outcome, reasons, lines.knows)
    for number, section in enumerate(sections(each.outcome, lines.shows, told), 1):
        yield Heading(2, (Text(f"{number} {section.title}"),))
        yield from section.passages


def _beside(each: Worked) -> Iterator[Passage]:
    found = each.comparison
    if found is None:
        return
    where = ref(each.step.compare)
    if found.way == "none":
        yield Paragraph(
            (Text(f"This step asks for another quantity than {where}, so there is no answer to set beside it."),)
        )
        return
    line: list[Strong | Text] = [Strong(f"Beside {where}: {found.says[:1].lower()}{found.says[1:]}")]
    if found.prediction.way == found.way:
        line.append(Text(" As predicted."))
    if found.why and found.prediction.way != "same":
        line.append(Text(f" {found.why}"))
    yield Paragraph(tuple(line))


def _checks(each: Worked, old: Worked) -> Iterator[Passage]:
    """What the checks found that they did not find before, of another kind or about something else: not what holds
    again with other numbers.
    """
    known = {(name, finding.result, finding.of) for name, finding in old.checks if finding.result == "holds"}
    fresh = tuple((name, finding) for name, finding in each.checks if (name, finding.result, finding.of) not in known)
    if any(finding.result in MARKS and not (finding.quiet and finding.result == "holds") for _, finding in fresh):
        yield Heading(2, (Text("Discussion"),))
        yield from check_list(fresh, each.problem.course.detail)
