"""A page with one slip put in and carried on, for a class to find, and its key. Knows what a slip is, not which there
are; a page is given only where the judge of workings finds that slip in it.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import NamedTuple, Protocol

from ..document.english import sentence
from ..document.passage import Bullets, Caution, Derivation, Page, Paragraph, Passage, Prose, Row, Space, Strong, Text
from ..errors import Fault, nearest, shown
from ..formula.plain import plain_rows
from ..marking.slips.account import Impossible, Spoilt
from ..marking.slips.account_of_working import account_of
from ..marking.slips.slip import SlipRule, named, spoilt_accounts
from ..marking.slips.verdict import Marking, Named
from ..solve.outcome import Outcome
from ..walkthrough.answer_sentences import answer_line
from ..walkthrough.class_page import class_page
from ..walkthrough.exercise_sheet import given
from ..walkthrough.general_words import find_line
from ..walkthrough.page import CAUTION
from ..wording.statement import compose
from .written_account import Unwritten, Writer

MOST_TRIED = 60
_LETTER_TIMES = re.compile(r"(_\S+) \(")
_ROOM = 62  # millimetres for the class's own words


class Worked(Protocol):
    """A problem worked through, that marks workings."""

    @property
    def outcome(self) -> Outcome: ...

    def mark(self, text: str) -> Marking: ...


class Hidden(NamedTuple):
    """A working with a slip in it: its lines, the number of the first that does not hold, and the slip."""

    rows: tuple[Row, ...]
    line: int
    slip: Named

    @property
    def text(self) -> str:
        """The lines as they would be typed."""
        return typed(self.rows)


def typed(rows: Sequence[Row]) -> str:
    """Rows as the lines of a working, typed with a sign for every product."""
    return "".join(f"{_crossed(left)} {_crossed(right)}\n" for left, right in plain_rows(rows))


def _crossed(text: str) -> str:
    return _LETTER_TIMES.sub(r"\1 × (", text.replace(")(", ") × ("))


def hide(worked: Worked, slips: Sequence[SlipRule], wanted: str = "any", seed: int = 0) -> Hidden:
    """A working with the slip that is wanted, or with any, in which the judge finds it; `seed` picks among several.
    Raises Fault where there is none.
    """
    names = [rule.SLIP for rule in slips]
    if wanted != "any" and wanted not in names:
        raise Fault(
            found=f"the slip {shown(wanted)}, which is not in the catalogue",
            expected="the name of a slip, or any",
            example=f"--find-the-slip {nearest(wanted, names) or 'any'}",
        )
    chosen = [rule for rule in slips if wanted in ("any", rule.SLIP)]
    tried = list(candidates(worked, chosen))[:MOST_TRIED]
    start = seed % len(tried) if tried else 0
    for each in (*tried[start:], *tried[:start]):
        found = found_in(worked, each, slips)
        if found is not None:
            return found
    what = "no slip" if wanted == "any" else f"no {wanted}"
    raise Fault(
        found=f"{what} that can be put into {shown(worked.outcome.body.problem.title)} and be found in it",
        expected="another slip, or a problem with one unknown pull",
        example="--find-the-slip any",
        advice="A page is printed only where explain mark finds the slip in it.",
    )


class Candidate(NamedTuple):
    """A spoilt account as lines, and the number of the first that the true account does not have."""

    spoilt: Spoilt
    rows: tuple[Row, ...]
    line: int


def candidates(worked: Worked, slips: Sequence[SlipRule]) -> Iterator[Candidate]:
    """Spoilt accounts as lines that differ from those of the true one; the commonest slips first."""
    outcome = worked.outcome
    true = account_of(outcome.working)
    try:
        right = Writer(outcome, true, true).rows()
        spoilt_ones = spoilt_accounts(true, slips)
    except (Unwritten, Impossible):
        return
    for spoilt, _ in spoilt_ones:
        try:
            rows = Writer(outcome, spoilt.account, true).rows()
        except (Unwritten, Impossible, KeyError):
            continue
        line = next((number for number, row in enumerate(rows, 1) if row not in right), 0)
        if line:
            yield Candidate(spoilt, rows, line)


def found_in(worked: Worked, tried: Candidate, slips: Sequence[SlipRule]) -> Hidden | None:
    """The working, where the judge finds the slip in the very line that has it, and nothing else; else None."""
    spoilt, rows, line = tried
    marking = worked.mark(typed(rows))
    first = next((each for each in marking.lines if each.number == marking.first_wrong), None)
    if first is None or first.number != line or spoilt.slip not in {each.slip for each in first.slips}:
        return None
    unread = [each for each in marking.lines if each.verdict in ("unclear", "aside")]
    again = [each for each in marking.issues if each.number != first.number and not each.again]
    if unread or again:
        return None
    rule = next(each for each in slips if spoilt.slip == each.SLIP)
    return Hidden(rows, first.number, named(rule, spoilt))


def pages(worked: Worked, hidden: Hidden) -> tuple[Page, Page]:
    """The page for the class, and the key on a page of its own."""
    outcome = worked.outcome
    problem = outcome.body.problem
    numbered = (replace(row, label=(Text(f"{number}"),)) for number, row in enumerate(hidden.rows, 1))
    statement: Passage = Prose(problem.statement) if problem.statement else Paragraph((Text(compose(problem)),))
    model = "plane, rigid and at rest" if problem.balanced else "plane and rigid"
    lead = "Somebody worked the problem in these lines. One of them has a slip; every line after it goes on from there."
    ask = ("Which line is it?", "What should it say, and why?", "What do the lines after it become?")
    sheet = (
        statement,
        given(outcome),
        Paragraph((Strong("Find "), *find_line(outcome))),
        Paragraph((Text(lead),)),
        Derivation(tuple(numbered)),
        Space("Find the slip", _ROOM, tuple((Text(each),) for each in ask)),
        Caution((Text(CAUTION.format(model=model)),)),
    )
    title = f"{problem.title}: find the slip"
    return class_page(problem, title, sheet), class_page(problem, f"{title} (key)", _key(outcome, hidden))


def _key(outcome: Outcome, hidden: Hidden) -> Iterator[Passage]:
    slip = hidden.slip
    yield Paragraph((Strong(f"Line {hidden.line}: "), Text(sentence(f"{slip.title}. {slip.says}"))))
    row = hidden.rows[hidden.line - 1]
    yield Derivation((replace(row, label=(Text(f"{hidden.line}"),)),))
    yield Paragraph((Text("What may be said, a little more each time:"),))
    yield Bullets(tuple((Text(each),) for each in slip.hints))
    yield Paragraph((Text("Without the slip:"),))
    yield Bullets(tuple(answer_line(outcome, name) for name, _ in outcome.working.asked if name in outcome.answers))
    yield Paragraph((Text("The walkthrough of the problem has every line as it should be."),))
