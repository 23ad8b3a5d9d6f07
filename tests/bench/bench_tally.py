"""What ten thousand answers cost against one, start included: each tally in a process of its own, in processor seconds.

python tests/bench/bench_tally.py
"""

from __future__ import annotations

import random
import resource
import subprocess
import sys
import tempfile
from pathlib import Path
from statistics import median

PROBLEM = Path(__file__).parents[2] / "samples" / "02-treacle-tin-again.toml"
START = [sys.executable, "-c", "from explain.cli.main import main; main()", "tally", str(PROBLEM)]
MANY, ROUNDS = 10_000, 3
RIGHT, HEAD = 239.0, "student,elbow flexors\n"


def main() -> None:
    draw = random.Random(1)
    many = "".join(
        f"s{n},{RIGHT * 10 ** draw.uniform(-1, 1):.4g}\n" for n in range(MANY)
    )  # nearly all wrong, nearly all different: all slips, all pairs
    with tempfile.TemporaryDirectory() as folder:
        jobs = {"one right": "a,239\n", "one that fits nothing": "a,987654\n", f"{MANY} at random": many}
        times: dict[str, list[float]] = {name: [] for name in jobs}
        for _ in range(ROUNDS):
            for name, rows in jobs.items():
                times[name].append(_timed(Path(folder), HEAD + rows))
    found = {name: median(each) for name, each in times.items()}
    one, nothing, all_ = found.values()
    print("; ".join(f"{name} {each:.2f} s" for name, each in found.items()))
    print(
        f"ratio to one right {all_ / one:.1f} (aim: at most 20), to one that needs the pairs too {all_ / nothing:.1f}"
    )


def _timed(folder: Path, content: str) -> float:
    table = folder / "answers.csv"
    table.write_text(content, encoding="utf-8")
    start = _spent()
    done = subprocess.run(
        [*START, str(table), "-o", str(folder / "report.md"), "--csv", str(folder / "rows.csv")],
        check=False,
        stderr=subprocess.DEVNULL,
    )
    assert done.returncode in (0, 1)
    return _spent() - start


def _spent() -> float:
    """Processor seconds of all processes that have ended: other work on the machine does not count."""
    used = resource.getrusage(resource.RUSAGE_CHILDREN)
    return used.ru_utime + used.ru_stime


if __name__ == "__main__":
    main()
