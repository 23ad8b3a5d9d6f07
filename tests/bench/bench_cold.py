"""Cold starts, each in a process of its own, against the imports they cannot do without.

python tests/bench/bench_cold.py
"""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path
from statistics import median
from time import perf_counter

FILE = Path(__file__).parents[1] / "contract" / "jug-level.toml"
START = [sys.executable, "-c", "from explain.cli.main import main; main()"]
JOBS = {
    "click": [sys.executable, "-c", "import click"],
    "help": [*START, "--help"],
    "imports": [sys.executable, "-c", "import sympy, markdown_it, click, pint"],
    "work": [*START, "work", str(FILE)],
}
ROUNDS = 9


def main() -> None:
    times: dict[str, list[float]] = {name: [] for name in JOBS}
    for _ in range(ROUNDS):
        for name, command in JOBS.items():
            start = perf_counter()
            subprocess.run(command, check=True, stdout=subprocess.DEVNULL)
            times[name].append(perf_counter() - start)
    found = {name: median(each) for name, each in times.items()}
    print(
        f"--help {found['help'] * 1e3:.0f} ms, import click {found['click'] * 1e3:.0f} ms, ratio "
        f"{found['help'] / found['click']:.2f} (aim: at most 1.2)"
    )
    print(
        f"work {found['work'] * 1e3:.0f} ms, imports {found['imports'] * 1e3:.0f} ms, ratio "
        f"{found['work'] / found['imports']:.2f} (aim: at most 1.5)"
    )


if __name__ == "__main__":
    main()
