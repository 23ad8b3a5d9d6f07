"""What only an instructor's page holds besides the walkthrough: slips to expect with the wrong answers they lead to,
and marks.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from ..marking.slips.account import Impossible, Spoilt, Values
from ..marking.slips.account_of_working import account_of
from ..solve.answers import unit_of_answer
from ..document.english import sentence
from ..exact.prime_field import scale
from ..solve.outcome import Outcome, number
from ..document.passage import Heading, Line, Passage, Table, Text
from ..walkthrough.answer_sentences import pretty
from ..marking.marks.scheme import scheme_of
from ..marking.slips.slip import SlipRule, changed, named, spoilt_accounts

_MOST = 6  # slips told of one problem, the commonest


def notes(outcome: Outcome, slips: Sequence[SlipRule]) -> tuple[Passage, ...]:
    """The passages behind a walkthrough; no table of slips where none changes an answer."""
    expected = tuple(_expected(outcome, slips))
    scheme = scheme_of(outcome)
    marks = tuple(_cells(sentence(each.kind).rstrip("."), each.what, str(each.marks)) for each in scheme.points)
    found: list[Passage] = []
    if expected:
        found += [_headed("Slips to expect"), Table("", _cells("Slip", "What is done", "Leads to"), expected)]
    if marks:
        found += [
            _headed(f"Marks: {scheme.total} in all"),
            Table("", _cells("Kind", "For", "Marks"), marks, frozenset({2})),
        ]
    return tuple(found)


def _expected(outcome: Outcome, slips: Sequence[SlipRule]) -> Iterator[tuple[Line, ...]]:
    """The commonest slips that change an answer that was asked for, each kind once, with the first answer it
    changes.
    """
    rules = {rule.SLIP: rule for rule in slips}
    try:
        account = account_of(outcome.working)
        true, spoilings = account.values(), spoilt_accounts(account, slips)
    except Impossible:
        return
    told: set[str] = set()
    for spoilt, values in spoilings:
        wrong = _wrong(outcome, true, values)
        if wrong and spoilt.slip not in told and len(told) < _MOST:
            told.add(spoilt.slip)
            yield _row(rules[spoilt.slip], spoilt, wrong)


def _row(rule: SlipRule, spoilt: Spoilt, wrong: str) -> tuple[Line, ...]:
    said = named(rule, spoilt)
    title = said.title if said.title[1:2] == " " else sentence(said.title).rstrip(".")  # a letter such as g stays small
    return _cells(title, sentence(said.says), wrong)


def _wrong(outcome: Outcome, true: Values, values: Values) -> str:
    """The first answer asked for that a slip changes: "biceps 24.4 N in place of 239 N"; "" for none."""
    moved = changed(true, values)
    for name, key in outcome.working.asked:
        if key in moved and name in outcome.answers:
            unit = unit_of_answer(outcome.working, key)
            angle = key.startswith("*angle ")
            size = number(
                values[key] if angle else values[key] / float(scale(unit)), outcome.working.body.problem.course.figures
            )
            right = pretty(outcome.answers[name])
            return f"{name}: {_whole(size + ('°' if angle else _unit(right)))} in place of {_whole(right)}"
    return ""


def _unit(shown: str) -> str:
    """The unit of a value as it is printed, with the space before it."""
    return " " + shown.partition(" ")[2] if " " in shown else ""


def _whole(value: str) -> str:
    """A value that no line end parts from its unit."""
    return value.replace(" ", "\u00a0")


def _headed(words: str) -> Heading:
    return Heading(2, (Text(words),))


def _cells(*words: str) -> tuple[Line, ...]:
    return tuple((Text(each),) for each in words)
