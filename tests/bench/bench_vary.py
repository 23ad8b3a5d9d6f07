"""Variants with sheets and key against sympy.solve on each variant's own moment equation, measured by turns in one run.

    python tests/bench/bench_vary.py [COUNT] [JOBS]

COUNT variants (default 1000) of the sample with an oblique muscle, drawn, screened, written as Markdown with their
files and the key, by JOBS processes
(default 1; sympy has one process, whatever JOBS is). sympy's cache is cleared before each solve; writing nothing down
is all that it does.
"""

from __future__ import annotations

import csv
import re
import sys
from pathlib import Path
from tempfile import TemporaryDirectory
from time import perf_counter, process_time

import sympy as sp
from sympy.core.cache import clear_cache

from explain.vary.handouts import Order, hand_out
from explain.vary.class_list import numbered

FILE = Path(__file__).parents[2] / "samples" / "class-variants" / "bucket-of-mussels.toml"
BLOCKS = 4  # by turns, so that both see the same machine
PULL = sp.Symbol("F_B")


def variants(folder: Path, count: int, jobs: int, seed: int) -> float:
    start = perf_counter()
    hand_out(Order(FILE, folder, numbered(count), seed, jobs=jobs))
    return perf_counter() - start


def solves(folder: Path) -> float:
    """Seconds for one solve after another of the equations of a folder's variants, in their own numbers."""
    with (folder / "key.csv").open(encoding="utf-8-sig", newline="") as file:
        found = [
            {
                name: sp.Rational(re.match(r"[\d.]+", value)[0])
                for name, value in row.items()
                if "." in name and " in " not in name
            }  # type: ignore[index]
            for row in csv.DictReader(file)
        ]
    equations = [
        PULL * row["biceps.at"] / 100 * sp.sin(row["biceps.direction"] * sp.pi / 180)
        - sp.Rational("9.81")
        * (row["bucket.mass"] * row["bucket.at"] + row["forearm and hand.mass"] * row["forearm and hand.com"])
        / 100
        for row in found
    ]
    taken = 0.0
    for equation in equations:
        clear_cache()
        start = perf_counter()
        sp.solve(equation, PULL)
        taken += perf_counter() - start
    return taken


def main() -> None:
    count, jobs = (int(each) for each in (*sys.argv[1:3], *("1000", "1")[len(sys.argv[1:3]) :]))
    block, ours, theirs, own, solved = max(1, count // BLOCKS), 0.0, 0.0, 0.0, 0.0
    with TemporaryDirectory() as folder:
        for turn in range(BLOCKS):
            here = Path(folder) / str(turn)
            begun = process_time()
            ours += variants(here, block, jobs, turn)
            own += process_time() - begun
            begun = process_time()
            theirs += solves(here)
            solved += process_time() - begun
    print(
        f"{block * BLOCKS} variants {ours:.1f} s with {jobs} jobs, sympy.solve {theirs:.1f} s, ratio "
        f"{ours / theirs:.2f} (aim: at most 1)"
        + (f"; in processor time {own:.1f} s against {solved:.1f} s" if jobs == 1 else "")
    )


if __name__ == "__main__":
    main()
