"""The pages of a series: its first page, the start in full, and each step with what is new in it. Knows passages,
and decides no look.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import atan2, hypot

from ..walkthrough.class_page import class_page
from ..walkthrough.discussion import MARKS, check_list
from ..walkthrough.page import CAUTION, compose
from ..walkthrough.diagram import draw, picture
from ..document.english import sentence
from ..walkthrough.closing_sentence import in_a_sentence
from ..document.passage import Caution, Heading, Line, Page, Paragraph, Passage, Prose, Strong, Table, Text
from ..walkthrough.sections import sections
from ..wording.statement import compose as compose_statement
from ..walkthrough.general_words import find_line
from .changes import changes
from .summary_page import closing
from .comparison import goal_key
from .series_file import Series
from .earlier_results import recalled
from .sweep_page import swept, word_of
from .comparison_words import predicted
from .worked_steps import Worked


def pages(series: Series, worked: Sequence[Worked]) -> tuple[Page, ...]:
    """All pages in order: what the series is about, the start, the steps, and what they tell together."""
    return (
        _first(series, worked),
        _start(worked[0]),
        *(_step(worked, each) for each in worked[1:]),
        closing(series, worked),
    )


def joined(whole: Sequence[Page], title: str) -> Page:
    """All pages as one that runs on, for paper: a step begins where the one before it ends, and the caution stands
    once, behind all.
    """
    passages = [each for page in whole for each in page.passages]
    cautions = dict.fromkeys(each for each in passages if isinstance(each, Caution))
    return Page(title, (*(each for each in passages if not isinstance(each, Caution)), *cautions), whole[0].language)


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
        "and see whether you were right and why."
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


def _step(worked: Sequence[Worked], each: Worked) -> Page:
    problem, old = each.problem, worked[each.step.compare]
    parts: list[Passage] = [Heading(1, (Text(named(each)),)), *_idea(each)]
    parts.append(Prose(problem.statement) if problem.statement else Paragraph((Text(compose_statement(problem)),)))
    if each.points:
        parts.append(
            Paragraph(
                (
                    Text(
                        f"First one {word_of(each)} is worked in full, the one that the statement tells; then all "
                        "of them are set beside each other."
                    ),
                )
            )
        )
    parts += _what_changes(each, old)
    parts.append(Paragraph((Strong("Find "), *find_line(each.outcome))))
    parts += _figure(worked, each)
    parts += _before(each, old)
    parts += recalled(each)
    parts += _working(each)
    parts += _beside(each)
    parts += _checks(each, old)
    meaning = in_a_sentence(each.outcome)
    if meaning:
        parts.append(Paragraph((Text(sentence(meaning)),)))
    parts += swept(each) if each.points else ()
    return class_page(each.problem, named(each), (*parts, _caution(each)))


def _figure(worked: Sequence[Worked], each: Worked) -> Iterator[Passage]:
    """The diagram, where it is another one than the earlier steps': else where it stands."""
    own, home = _likeness(each), each
    while home.step.number and _likeness(worked[home.step.compare]) == own:
        home = worked[home.step.compare]
    if home is each:
        yield picture(each.outcome)
        return
    words = "The free-body diagram is that of {}: the same forces, in the same directions and order."
    yield Paragraph((Text(words.format(ref(home.step.number))),))


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


def _what_changes(each: Worked, old: Worked) -> Iterator[Passage]:
    rows = changes(old.tables, each.tables)
    if not rows:
        yield Paragraph(
            (
                Text(
                    sentence(
                        f"nothing that acts on the body has changed since {ref(old.step.number)}; only the question "
                        "is new"
                    )
                ),
            )
        )
        return
    cells: list[tuple[Line, ...]] = [((Text(row.what),), (Text(row.was),), (Text(row.now),)) for row in rows]
    yield Table(
        "What changes, all else being equal",
        ((Text("What"),), (Text(at(old.step.number).capitalize()),), (Text("Now"),)),
        tuple(cells),
    )


def _before(each: Worked, old: Worked) -> Iterator[Passage]:
    if each.comparison is None:
        return
    said = predicted(each.outcome.body, each.comparison.name, each.comparison.prediction)
    if said:
        yield Heading(
            2, (Text("Before we work it out" if each.problem.course.person == "we" else "Before you work it out"),)
        )
        yield Paragraph((Strong(f"Larger, smaller or the same as {at(old.step.number)}? "), Text(said)))


def _working(each: Worked) -> Iterator[Passage]:
    """The lines that have changed, in full and with their reasons."""
    for number, section in enumerate(
        sections(each.outcome, lambda move: each.homes[goal_key(move)] == each.step.number), 1
    ):
        yield Heading(2, (Text(f"{number} {section.title}"),))
        yield from section.passages


def _beside(each: Worked) -> Iterator[Passage]:
    found = each.comparison
    if found is None:
        return
    where = ref(each.step.compare)
    yield Heading(2, (Text(f"Beside {where}"),))
    if found.way == "none":
        yield Paragraph(
            (Text(f"This step asks for another quantity than {where}, so there is no answer to set beside it."),)
        )
        return
    line: list[Strong | Text] = [Strong(found.says)]
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
