"""A figure drawn again against working and composing the same problem, and a hundred loads against fifty, by turns in
one run.

    python tests/bench/bench_figure.py

Warm: every problem is worked and drawn once before, so that the outlines of its letters are known. The processor's time
is counted. Memory is what
the layout holds at most while it is made, as Python counts its own objects.
"""

from __future__ import annotations

import tracemalloc
from collections.abc import Callable, Mapping
from pathlib import Path
from statistics import median
from time import process_time
from typing import Any

from explain import work
from explain.document.passage import Picture
from explain.write.figure.free_body import figure

SAMPLES = sorted((Path(__file__).parents[2] / "samples").glob("[0-9]*.toml"))
AIM = 2  # of every sample
ROUNDS = 7
CROWD_ROUNDS = 3


def main() -> None:
    ratios = {path.stem: against_the_page(path) for path in SAMPLES}
    name, (mine, other) = max(ratios.items(), key=lambda each: each[1][0] / each[1][1])
    middle = median(mine / other for mine, other in ratios.values())
    print(
        f"figure against working and composing, {len(ratios)} samples: median {middle:.2f}, worst {mine / other:.2f} "
        f"({name}: {mine * 1e3:.0f} ms against {other * 1e3:.0f} ms; aim: at most {AIM})"
    )
    for over, (mine, other) in sorted(ratios.items()):
        if mine > AIM * other:
            print(f"  over {AIM}: {over}, {mine / other:.2f} ({mine * 1e3:.0f} ms against {other * 1e3:.0f} ms)")
    pictures = {count: work(crowd(count)).picture() for count in (50, 100)}
    fifty, hundred = by_turns([lambda: figure(pictures[50]), lambda: figure(pictures[100])], CROWD_ROUNDS)
    print(f"100 loads against 50: {hundred / fifty:.2f} times the time (aim: about 2, what grows by the square has 4)")
    print(f"100 loads: {hundred:.2f} s (aim: under 2), {memory(pictures[100]) / 1e6:.1f} MB at most")


def against_the_page(path: Path) -> tuple[float, float]:
    """The seconds for the figure, and for working and composing."""
    picture = work(path).picture()
    mine, other = by_turns([lambda: figure(picture), lambda: work(path).page], ROUNDS)
    return mine, other


def by_turns(jobs: list[Callable[[], object]], rounds: int) -> list[float]:
    """The median seconds of each job, done by turns so that all see the same machine; the first turn does not count."""
    times: list[list[float]] = [[] for _ in jobs]
    for _ in range(rounds + 1):
        for job, spent in zip(jobs, times, strict=True):
            start = process_time()
            job()
            spent.append(process_time() - start)
    return [median(spent[1:]) for spent in times]


def memory(picture: Picture) -> int:
    tracemalloc.start()
    figure(picture)
    most = tracemalloc.get_traced_memory()[1]
    tracemalloc.stop()
    return most


def crowd(count: int) -> Mapping[str, Any]:
    """A forearm that is hung with so many weights, all at places of their own."""
    loads = [
        {"name": f"s{number}", "mass": f"{1 + number % 7}.5 kg", "at": f"{number * 30 / count:.2f} cm"}
        for number in range(1, count + 1)
    ]
    return {
        "title": f"{count} weights",
        "pivot": {"name": "elbow"},
        "segment": [
            {"name": "forearm", "length": "30 cm", "direction": "20 deg above right", "mass": "2 kg", "com": "15 cm"}
        ],
        "muscle": [{"name": "biceps", "at": "4.0 cm", "direction": "70 deg from back toward up"}],
        "load": loads,
    }


if __name__ == "__main__":
    main()
