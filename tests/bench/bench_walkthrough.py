"""A warm walkthrough against sympy.solve on the same three equations in letters, measured side by side in one run.

    python tests/bench/bench_walkthrough.py

The walkthrough reads the file, works it, certifies every line, makes all checks and writes Markdown. sympy's cache is
cleared before each solve.
"""

from __future__ import annotations

from pathlib import Path
from statistics import median
from time import perf_counter

import sympy as sp
from sympy.core.cache import clear_cache

from explain import work

FILE = Path(__file__).parents[1] / "contract" / "rock-oblique.toml"
ROUNDS = 41


def walkthrough() -> None:
    work(FILE).markdown()


def solve() -> None:
    clear_cache()
    pull, right, up, grip, turn, arm, mass, g, load, reach = sp.symbols("F_B J_x J_y d_B alpha d_F m_F g m_R d_R")
    moments = pull * grip * sp.sin(turn) - mass * g * arm - load * g * reach
    sp.solve([moments, right - pull * sp.cos(turn), up + pull * sp.sin(turn) - mass * g - load * g], [pull, right, up])


def main() -> None:
    ours, theirs = [], []
    for _ in range(ROUNDS):  # by turns, so that both see the same machine
        for job, times in ((walkthrough, ours), (solve, theirs)):
            start = perf_counter()
            job()
            times.append(perf_counter() - start)
    mine, other = median(ours[3:]), median(theirs[3:])
    print(
        f"walkthrough {mine * 1e3:.1f} ms, sympy.solve {other * 1e3:.1f} ms, ratio {mine / other:.2f} (aim: at most "
        "0.33)"
    )


if __name__ == "__main__":
    main()
