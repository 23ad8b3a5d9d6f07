"""A tutor's page drawn again, as its process does it, against working and composing the same problem, by turns in one
run.

    python tests/bench/bench_redraw.py

Warm: every problem is drawn once before. The processor's time is counted. `turned` is what a change of an angle in the
figure costs, `typed` what a change costs that leaves the figure as it is, `put` a field's change in the text alone.
"""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from statistics import median
from time import process_time

from explain import work
from explain.desk import edit_tasks
from explain.problem.put_back import put

SAMPLES = sorted((Path(__file__).parents[2] / "samples").glob("[0-9]*.toml"))
AIM = 3
ROUNDS = 7


def main() -> None:
    drawn: dict[str, tuple[float, float, float, float]] = {path.stem: against_the_page(path) for path in SAMPLES}
    for what, place in (("turned, all drawn anew", 0), ("typed, the figure as it was", 1), ("put alone", 2)):
        ratios = {name: each[place] / each[3] for name, each in drawn.items()}
        worst = max(ratios, key=lambda name: ratios[name])
        over = [f"{name} {ratio:.1f}" for name, ratio in ratios.items() if ratio > AIM]
        print(
            f"{what}, against working and composing, {len(ratios)} samples: median {median(ratios.values()):.2f}, "
            f"worst {ratios[worst]:.2f} ({worst}: {drawn[worst][place] * 1e3:.0f} ms against "
            f"{drawn[worst][3] * 1e3:.0f} ms; aim: at most {AIM}); over: {', '.join(over) or 'none'}"
        )


def against_the_page(path: Path) -> tuple[float, float, float, float]:
    """The seconds for drawing all anew, for all but the figure, for a change of the text, for working and composing."""
    text, root = path.read_text("utf-8"), str(path.parent)

    def drawn_anew() -> None:
        edit_tasks.forget()
        as_it_was()

    def as_it_was() -> None:
        told = edit_tasks.answer({"op": "redraw", "root": root, "text": text})
        assert "figure" in told

    jobs: list[Callable[[], object]] = [
        drawn_anew,
        as_it_was,
        lambda: put(text, ("title",), "Another"),
        lambda: work(text, root=root).page,
    ]
    one, two, three, four = by_turns(jobs, ROUNDS)
    return one, two, three, four


def by_turns(jobs: list[Callable[[], object]], rounds: int) -> list[float]:
    """The median seconds of each job, done by turns so that all see the same machine; the first turn does not count."""
    times: list[list[float]] = [[] for _ in jobs]
    for _ in range(rounds + 1):
        for job, spent in zip(jobs, times, strict=True):
            start = process_time()
            job()
            spent.append(process_time() - start)
    return [median(spent[1:]) for spent in times]


if __name__ == "__main__":
    main()
