"""A line of a student's working, read and judged, against sympy.solve on the problem's moment equation in letters
(cache cleared before each).

Two workings of four lines: one that is right, and one whose second line has a slip that the rest carries. The worlds
with slips are made
once for a problem; their cost is shown apart.
"""

from __future__ import annotations

from pathlib import Path
from statistics import median
from time import perf_counter

import sympy as sp

from explain import work

PROBLEM = Path(__file__).parent.parent / "contract" / "rock-oblique.toml"
RIGHT = "W = 6.0*9.81 = 58.86 N\nd = 4.5 sin70 = 4.229 cm\nF*4.229 = 58.86*35 + 16.68*16\nF = 550 N"
WRONG = "W = 6.0*9.81 = 58.86 N\nd = 4.5 cos70 = 1.539 cm\nF*1.539 = 58.86*35 + 16.68*16\nF = 1512 N"
ROUNDS = 40


def once(run: object) -> float:
    start = perf_counter()
    run()  # type: ignore[operator]
    return perf_counter() - start


def main() -> None:
    walkthrough = work(PROBLEM)
    moments = walkthrough.outcome.working.truth.balances()[0]
    unknown = sp.Symbol(walkthrough.outcome.working.settled.stages[0].unknown)

    def solve() -> None:
        sp.core.cache.clear_cache()
        sp.solve(moments, unknown)

    first = once(lambda: walkthrough.mark(WRONG))
    solved, right, wrong = [], [], []
    for _ in range(ROUNDS):
        solved.append(once(solve))
        right.append(once(lambda: walkthrough.mark(RIGHT)) / 4)
        wrong.append(once(lambda: walkthrough.mark(WRONG)) / 4)
    base = median(solved)
    print(
        f"sympy.solve {base * 1e3:.2f} ms; a right line {median(right) * 1e3:.2f} ms, ratio "
        f"{median(right) / base:.2f} (aim 0.33)"
    )
    print(
        f"a line of a working with a slip {median(wrong) * 1e3:.2f} ms, ratio {median(wrong) / base:.2f}; the first "
        f"such working {first * 1e3:.0f} ms"
    )


if __name__ == "__main__":
    main()
