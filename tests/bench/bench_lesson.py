"""A lesson of 30 pages against the walkthrough of the same problem, as PDF and as HTML, by turns in one run.

    python tests/bench/bench_lesson.py

Warm: both are written once before, so that the outlines of letters and formulas are known. The processor's time is
counted, without working the problem, which both share.
"""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from statistics import median
from time import process_time

from explain import work
from explain.lesson.api import lesson

SAMPLES = sorted((Path(__file__).parents[2] / "samples").glob("[0-9]*.toml"))
PAGES = 30
ROUNDS = 5


def main() -> None:
    path = min(SAMPLES, key=lambda each: abs(len(lesson(each).boards) - PAGES))
    told, walkthrough = lesson(path), work(path)
    for form, mine, other in (
        ("PDF", told.pdf, walkthrough.pdf),
        ("HTML", told.html, walkthrough.html),
        ("handout as PDF", lambda: told.pdf(handout=True), walkthrough.pdf),
    ):
        one, two = by_turns([mine, other])
        print(
            f"{form}: a lesson of {len(told.boards)} pages ({path.stem}) {one / two:.1f} times the walkthrough "
            f"({one * 1e3:.0f} ms against {two * 1e3:.0f} ms), {one * 1e3 / len(told.boards):.0f} ms a page"
        )


def by_turns(jobs: list[Callable[[], object]]) -> list[float]:
    """The median seconds of each job, done by turns so that all see the same machine; the first turn does not count."""
    times: list[list[float]] = [[] for _ in jobs]
    for _ in range(ROUNDS + 1):
        for job, spent in zip(jobs, times, strict=True):
            start = process_time()
            job()
            spent.append(process_time() - start)
    return [median(spent[1:]) for spent in times]


if __name__ == "__main__":
    main()
