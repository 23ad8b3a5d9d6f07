"""Making a manual: growth with its problems, two processes against one, a rebuild after one change against the first
build.

    python tests/bench/bench_manual.py [problems] [formats]

Prints ratios, each from builds in fresh processes, run in turn. Aims: time and memory grow with the number of problems;
two
processes at least 1.8 times as fast as one for Markdown and HTML; a rebuild after one change at most a tenth of the
first build.
"""

from __future__ import annotations

import json
import os
import subprocess
import sys
import tempfile
from pathlib import Path

HERE = Path(__file__).resolve().parent
sys.path.insert(0, str(HERE.parent))

from books import book, problem  # noqa: E402 - the path to it is made above

CODE = """
import json, resource, sys, time
start = time.perf_counter()
sys.argv = ["explain", *json.loads(sys.argv[1])]
from explain.cli.main import main
try:
    main()
except SystemExit as end:
    assert end.code == 0, end.code
jobs = int(sys.argv[sys.argv.index("--jobs") + 1])
jobs = jobs if jobs > 1 else 0
own, others = resource.getrusage(resource.RUSAGE_SELF), resource.getrusage(resource.RUSAGE_CHILDREN)
print(json.dumps({"seconds": time.perf_counter() - start, "memory": (own.ru_maxrss + jobs * others.ru_maxrss) / 1024,
                  "work": own.ru_utime + own.ru_stime + others.ru_utime + others.ru_stime}))
"""


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
    words = [
        "manual",
        str(folder / "book.toml"),
        "-o",
        str(folder / f"out.{form}"),
        "--jobs",
        str(jobs),
        "--edition",
        "instructor",
    ]
    run = subprocess.run(
        [sys.executable, "-c", CODE, json.dumps(words)],
        check=True,
        text=True,
        capture_output=True,
        cwd=HERE.parents[1],
        env={**os.environ, "XDG_CACHE_HOME": str(folder / "cache")},
    )
    found: dict[str, float] = json.loads(run.stdout.strip().split("\n")[-1])
    return found


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
