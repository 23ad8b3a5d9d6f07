"""A working that has grown, or was changed in the middle, gets the verdicts of the whole, and nothing that stands as it
stood is read or traced again.
"""

from __future__ import annotations

import json
from functools import cache
from pathlib import Path
from random import Random

import pytest

from explain import work
from explain.marking.judging import Marker
from explain.marking.judging.clauses import Clause
from explain.marking.judging.passes import Passes
from explain.marking.judging.reading import Reader
from explain.marking.judging.statements import Statements

HERE = Path(__file__).parent
BATCHES = ("3", "4")
WORKINGS = [
    (batch, each)
    for batch in BATCHES
    for each in json.loads((HERE / f"workings/batches/{batch}/workings.json").read_text("utf-8"))["workings"][::4]
]


@cache
def marker(batch: str, problem: str) -> Marker:
    home = HERE.parent if problem.startswith("samples/") else HERE / f"workings/batches/{batch}"
    return work(home / problem).marker


def forget(one: Marker) -> None:
    """As if no working had been judged."""
    one.passes, one.reader = Passes(one.known, one.hints, one.passes.sources), Reader()


def versions(lines: list[str], seed: str) -> list[str]:
    """A working as it is typed, line by line, then with edits in the middle."""
    random = Random(seed)
    place = random.randrange(len(lines))
    grown = [lines[:count] for count in range(1, len(lines) + 1)]
    changed = [*lines[:place], "W = 2*9.81 = 19.62 N", *lines[place + 1 :]]
    between = [*lines[:place], "so we go on", *lines[place:]]
    without = [*lines[:place], *lines[place + 1 :]]
    return ["\n".join(each) for each in (*grown, changed, lines, between, without, lines[::-1])]


@pytest.mark.parametrize(("batch", "working"), WORKINGS, ids=[each["id"] for _, each in WORKINGS])
def test_a_working_that_grew_gets_the_verdicts_of_the_whole(batch: str, working: dict[str, object]) -> None:
    one = marker(batch, str(working["problem"]))
    lines = [str(each["text"]) for each in working["lines"]]  # type: ignore[attr-defined]
    texts = versions(lines, str(working["id"]))
    forget(one)
    grown = [one.mark(text) for text in texts]
    for text, found in zip(texts, grown, strict=True):
        forget(one)
        assert one.mark(text) == found


def test_only_what_is_new_is_read_and_traced(monkeypatch: pytest.MonkeyPatch) -> None:
    one = marker("4", "samples/02-treacle-tin-again.toml")
    lines = ["tin 2.5*9.8 = 24.5 N", "forearm 1.8*9.8 = 17.64 N", "F*4.4 = 24.5*31 + 17.64*16.5", "F = 238.8 N"]
    traced: list[str] = []
    clause = Statements.clause

    def counted(self: Statements, each: Clause) -> None:
        traced.append(self.state.lines[self.state.line - 1].text)
        clause(self, each)

    monkeypatch.setattr(Statements, "clause", counted)
    forget(one)
    one.mark("\n".join(lines))
    assert lines == traced
    first = one.reader.read("\n".join(lines), inches=False)
    one.mark("\n".join([*lines, "R = 196.7 N down"]))
    assert ["R = 196.7 N down"] == traced[4:]
    again = one.reader.read("\n".join([*lines, "R = 196.7 N down"]), inches=False)
    assert all(one_.clauses is other.clauses for one_, other in zip(first, again, strict=False))
    one.mark("\n".join([*lines[:2], "F*4.4 = 24.5*31 - 17.64*16.5", lines[3]]))
    assert lines[0] not in traced[4:] and lines[1] not in traced[4:]
