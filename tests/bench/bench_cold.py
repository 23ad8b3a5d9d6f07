"""Cold starts, each in a process of its own, against the imports they cannot do without; with bytecode, as installed.

python tests/bench/bench_cold.py
"""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path
from statistics import median
from tempfile import TemporaryDirectory
from time import perf_counter

FILE = Path(__file__).parents[1] / "contract" / "jug-level.toml"
START = [sys.executable, "-c", "from explain.cli.main import main; main()"]
JOBS = {
    "click": [sys.executable, "-c", "import click"],
    "help": [*START, "--help"],
    "imports": [sys.executable, "-c", "import sympy, markdown_it, click, pint"],
    "work": [*START, "work", str(FILE)],
}
ROUNDS = 15


def timed(bytecode: str) -> dict[str, float]:
    """Medians in seconds; the first round writes the bytecode and does not count."""
    own = {key: value for key, value in os.environ.items() if key != "PYTHONDONTWRITEBYTECODE"}
    times: dict[str, list[float]] = {name: [] for name in JOBS}
    for _ in range(1 + ROUNDS):
        for name, command in JOBS.items():
            start = perf_counter()
            subprocess.run(command, check=True, stdout=subprocess.DEVNULL, env={**own, "PYTHONPYCACHEPREFIX": bytecode})
            times[name].append(perf_counter() - start)
    return {name: median(each[1:]) for name, each in times.items()}


def main() -> None:
    with TemporaryDirectory() as bytecode:
        found = timed(bytecode)
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
