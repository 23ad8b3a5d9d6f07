"""Making a manual: growth with its problems, two processes against one, a rebuild after one change against the first
build.

    python tests/bench/bench_manual.py [problems] [formats]

Prints ratios, each from builds in fresh processes, run in turn. Aims: time and memory grow with the number of problems;
two processes at least 1.8 times as fast as one for Markdown and HTML; a rebuild after one change at most a tenth of the
first build. Memory is the most that all processes of a build hold at one time, shared pages counted once; processor
time is that of all of them. Both are looked up four times a second.
"""

from __future__ import annotations

import os
import subprocess
import sys
import tempfile
import time
from pathlib import Path

import psutil

HERE = Path(__file__).resolve().parent
sys.path.insert(0, str(HERE.parent))

from books import book, problem  # noqa: E402 - the path to it is made above

CODE = "from explain.cli.main import main; main()"


def problems(count: int, changed: int = -1) -> list[str]:
    return [
        problem(
            place % 10,
            mass=f"{(20 + place + 200 * (place == changed)) / 10:.1f}",
            direction=f"{40 + place % 120} deg from back toward up",
        )
        for place in range(count)
    ]


def build(folder: Path, form: str, jobs: int) -> dict[str, float]:
    """Build a book in processes of its own: seconds, the most memory in MB, and seconds of processor time."""
    words = ["manual", str(folder / "book.toml"), "-o", str(folder / f"out.{form}"), "--edition", "instructor"]
    start, memory, work = time.perf_counter(), 0.0, dict[int, float]()
    with subprocess.Popen(
        [sys.executable, "-c", CODE, *words, "--jobs", str(jobs)],
        stdout=subprocess.DEVNULL,
        stderr=subprocess.DEVNULL,
        cwd=HERE.parents[1],
        env={**os.environ, "XDG_CACHE_HOME": str(folder / "cache")},
    ) as run:
        while run.poll() is None:
            memory = max(memory, held(psutil.Process(run.pid), work))
            time.sleep(0.25)
    if run.returncode:
        raise SystemExit(f"{' '.join(words)}: exit {run.returncode}")
    return {"seconds": time.perf_counter() - start, "memory": memory / 2**20, "work": sum(work.values())}


def held(first: psutil.Process, work: dict[int, float]) -> float:
    """The bytes that a process and all that came from it hold now; the processor time of each is noted."""
    total = 0.0
    for each in [first, *first.children(recursive=True)]:
        try:
            total += each.memory_full_info().pss
            work[each.pid] = each.cpu_times().user + each.cpu_times().system
        except psutil.NoSuchProcess:  # it has ended meanwhile
            continue
    return total


def compare(form: str, count: int) -> None:
    """First builds of half a book and of a whole one with one process, of the whole with two; then one problem is
    changed.
    """
    with tempfile.TemporaryDirectory() as place:
        folders = {name: Path(place) / name for name in ("half", "one", "two")}
        for name, folder in folders.items():
            book(folder, problems(count // 2 if name == "half" else count), chapters=10)
        half, one, two = build(folders["half"], form, 1), build(folders["one"], form, 1), build(folders["two"], form, 2)
        again = {}
        for name, jobs in (("one", 1), ("two", 2)):
            book(folders[name], problems(count, count // 3), chapters=10)
            again[name] = build(folders[name], form, jobs)
    print(
        f"{form}: {count} problems, one process {one['seconds']:.1f} s, {one['memory']:.0f} MB; "
        f"two {two['seconds']:.1f} s, {two['memory']:.0f} MB in all; "
        f"changed {again['one']['seconds']:.2f} s"
    )
    print(
        f"{form}: whole / half: time {one['seconds'] / half['seconds']:.2f} (processor "
        f"{one['work'] / half['work']:.2f}), "
        f"memory {one['memory'] / half['memory']:.2f}"
    )
    print(
        f"{form}: one process / two: {one['seconds'] / two['seconds']:.2f}; load of the machine "
        f"{os.getloadavg()[0]:.1f}"
    )
    print(
        f"{form}: rebuild after one change / first build: one process {again['one']['seconds'] / one['seconds']:.3f} "
        f"(processor {again['one']['work'] / one['work']:.3f}), two {again['two']['seconds'] / two['seconds']:.3f}",
        flush=True,
    )


if __name__ == "__main__":
    for each in sys.argv[2:] or ("md", "html", "pdf"):
        compare(each, int(sys.argv[1]) if len(sys.argv) > 1 else 250)
