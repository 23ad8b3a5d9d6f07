"""Problems with ranges, the command that makes their variants, and what a folder of variants holds: for the tests of
variants.
"""

from __future__ import annotations

import csv
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from explain.vary.handouts import Handed, Order, hand_out
from explain.vary.class_list import Student, numbered

CREEL = """
title = "A creel of crabs"
statement = \"\"\"
The forearm and hand, **{forearm and hand.mass}** with the centre of mass **{forearm and hand.com}** from the elbow,
are level. A creel of **{creel.mass}** hangs **{creel.at}** from the elbow. The biceps meets the forearm
**{biceps.at}** from it, at **{biceps.direction}** to the bone.
\"\"\"
ask = ["biceps", "reaction"]

[pivot]
name = "elbow"
bone = "humerus"

[[segment]]
name = "forearm and hand"
length = "37 cm"
mass = "1.5 kg"
com = "16 cm"

[[load]]
name = "creel"
mass = "5.2 kg"
at = "33 cm"

[[muscle]]
name = "biceps"
at = "4.2 cm"
direction = "72 deg from back toward up"

[vary]
"creel.mass" = { from = "3.0 kg", to = "8.0 kg", step = "0.1 kg" }
"creel.at" = { from = "30 cm", to = "36 cm", step = "0.5 cm" }
"forearm and hand.mass" = { from = "1.3 kg", to = "2.1 kg", step = "0.1 kg" }
"forearm and hand.com" = ["15 cm", "15.5 cm", "16 cm", "16.5 cm", "17 cm"]
"biceps.at" = { from = "3.6 cm", to = "4.8 cm", step = "0.1 cm" }
"biceps.direction" = { from = "62 deg", to = "80 deg", step = "1 deg" }
"""
JUG = """
title = "A jug of cider"
ask = ["elbow flexors", "reaction"]

[pivot]
name = "elbow"
bone = "humerus"

[[segment]]
name = "forearm and hand"
length = "36 cm"
mass = "1.7 kg"
com = "16 cm"

[[load]]
name = "jug"
mass = "2.6 kg"
at = "31 cm"

[[muscle]]
name = "elbow flexors"
at = "3.5 cm"
direction = "up"

[vary]
jug.mass = { from = "1.2 kg", to = "6.0 kg", step = "0.1 kg" }
jug.at = { from = "28 cm", to = "34 cm", step = "0.5 cm" }
"forearm and hand".mass = { from = "1.3 kg", to = "2.2 kg", step = "0.1 kg" }
"elbow flexors".at = { from = "2.6 cm", to = "5.0 cm", step = "0.1 cm" }
"""
BARROW = """
title = "Sand for the slip"
ask = ["hands", "reaction"]

[pivot]
name = "axle"
bone = "wheel"

[[segment]]
name = "barrow"
length = "56 in"
weight = "30 lb"
com = "24 in"

[[load]]
name = "sand"
weight = "110 lb"
at = "17 in"

[[force]]
name = "hands"
at = "54 in"
direction = "up"
force = "?"
count = 2

[vary]
"sand.weight" = { from = "60 lb", to = "160 lb", step = "1 lb" }
"sand.at" = { from = "13 in", to = "22 in", step = "0.5 in" }
"barrow.weight" = { from = "24 lb", to = "42 lb", step = "1 lb" }
"hands.at" = { from = "48 in", to = "56 in", step = "0.5 in" }
"""


def problem(folder: Path, text: str = CREEL, name: str = "problem.toml") -> Path:
    path = folder / name
    path.write_text(text, "utf-8")
    return path


def made(file: Path, folder: Path, count: int | tuple[Student, ...], **wanted: Any) -> Handed:
    """Hand out in this process, unless `jobs` or a cluster says otherwise."""
    students = numbered(count) if isinstance(count, int) else count
    return hand_out(Order(file, folder, students, **{"seed": 7, "jobs": 1, **wanted}))


def command(*words: object) -> list[str]:
    return [sys.executable, "-c", "from explain.cli.main import main; main()", "vary", *map(str, words)]


def explain(*words: object) -> subprocess.CompletedProcess[str]:
    return subprocess.run(command(*words), capture_output=True, text=True, timeout=300)


def contents(folder: Path) -> dict[str, bytes]:
    """Every file under a folder by its path."""
    return {str(path.relative_to(folder)): path.read_bytes() for path in sorted(folder.rglob("*")) if path.is_file()}


def rows(folder: Path) -> list[dict[str, str]]:
    with (folder / "key.csv").open(encoding="utf-8-sig", newline="") as file:
        return list(csv.DictReader(file))


def children(pid: int) -> Iterator[int]:
    """All processes that a process has begun, and those begun by these."""
    parents: dict[int, list[int]] = {}
    for path in Path("/proc").glob("[0-9]*/stat"):
        try:
            text = path.read_text()
        except OSError:
            continue
        parents.setdefault(int(text.rpartition(")")[2].split()[1]), []).append(int(text.split()[0]))
    left = list(parents.get(pid, ()))
    while left:
        each = left.pop()
        yield each
        left += parents.get(each, ())
