"""A warm walkthrough against sympy.solve on the same three equations in letters, measured side by side in one run.

    python tests/bench/bench_walkthrough.py

The working is the certified moves of a problem that was read; the walkthrough reads the file too, makes all checks and
writes Markdown. sympy's cache is cleared before each solve. Time of this process, so that others do not count.
"""

from __future__ import annotations

from pathlib import Path
from statistics import median
from time import process_time

import sympy as sp
from sympy.core.cache import clear_cache

import rules
from explain import read, work
from explain.mechanics.free_body import cut_free
from explain.solve.engine import work_through

FILE = Path(__file__).parents[1] / "contract" / "rock-oblique.toml"
PROBLEM = read(FILE)
ROUNDS = 41


def working() -> None:
    work_through(cut_free(PROBLEM), rules.MOVES)


def walkthrough() -> None:
    work(FILE).markdown()


def solve() -> None:
    clear_cache()
    pull, right, up, grip, turn, arm, mass, g, load, reach = sp.symbols("F_B J_x J_y d_B alpha d_F m_F g m_R d_R")
    moments = pull * grip * sp.sin(turn) - mass * g * arm - load * g * reach
    sp.solve([moments, right - pull * sp.cos(turn), up + pull * sp.sin(turn) - mass * g - load * g], [pull, right, up])


def main() -> None:
    times: dict[str, list[float]] = {each.__name__: [] for each in (working, walkthrough, solve)}
    for _ in range(ROUNDS):  # by turns, so that all see the same machine
        for job in (working, walkthrough, solve):
            start = process_time()
            job()
            times[job.__name__].append(process_time() - start)
    found = {name: median(each[3:]) for name, each in times.items()}
    for name, aim in (("working", 0.2), ("walkthrough", 0.2)):
        print(
            f"{name} {found[name] * 1e3:.1f} ms, sympy.solve {found['solve'] * 1e3:.1f} ms, ratio "
            f"{found[name] / found['solve']:.2f} (aim: at most {aim})"
        )


if __name__ == "__main__":
    main()
