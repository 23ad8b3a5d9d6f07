"""Sheets as they were read: pages of a few samples, and the lines of a working with each slip that can be put in it.

    python tests/sheets.py

writes the files of cases/sheets again; read what has changed.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import cache
from pathlib import Path

from explain import Walkthrough, work
from explain.api import slips
from explain.document.passage import Page
from explain.marking.slips.account_of_working import account_of
from explain.sheet.faded import faded, fading
from explain.sheet.problem_alone import problem_alone
from explain.sheet.slip_to_find import candidates, hide, pages, typed
from explain.sheet.written_account import Writer
from explain.write.formats import written

HERE = Path(__file__).parent
KEPT = HERE / "cases" / "sheets"
PROBLEMS = sorted((HERE.parent / "samples").glob("[0-4]*.toml"))
WITH_LINES = (2, 5, 10, 12, 20, 25)


@cache
def sample(number: int) -> Walkthrough:
    return work(PROBLEMS[number - 1])


def _text(*told: Page) -> str:
    return "\n".join(written((each,), "text").decode() for each in told)


def lines() -> str:
    """Of each sample its working, then what each slip puts in the place of its lines: the first two that differ."""
    out = []
    for number in WITH_LINES:
        outcome, seen = sample(number).outcome, set()
        account = account_of(outcome.working)
        right = typed(Writer(outcome, account, account).rows())
        out.append(f"{PROBLEMS[number - 1].stem}\n{right}")
        for each in candidates(sample(number), slips()):
            other = [line for line in typed(each.rows).splitlines() if line not in right.splitlines()]
            if each.spoilt.slip not in seen:
                out.append(f"{each.spoilt.slip}: line {each.line}\n" + "".join(f"    {line}\n" for line in other[:2]))
            seen.add(each.spoilt.slip)
    return "".join(out)


SHEETS: Mapping[str, Callable[[], str]] = {
    "alone.txt": lambda: _text(problem_alone(sample(2).outcome)),
    "last-3.txt": lambda: _text(faded(sample(2).outcome, fading("last:3"))),
    "all-but-1.txt": lambda: _text(faded(sample(14).outcome, fading("all-but:1"))),
    "all-but-9.txt": lambda: _text(faded(sample(10).outcome, fading("all-but:9"))),
    "slip.txt": lambda: _text(*pages(sample(2), hide(sample(2), slips(), "segment-left-out"))),
    "lines.txt": lines,
}


if __name__ == "__main__":
    KEPT.mkdir(exist_ok=True)
    for name, make in SHEETS.items():
        (KEPT / name).write_text(make(), "utf-8")
