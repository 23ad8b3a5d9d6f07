"""Attacks the checker with random false lines: python tests/attack.py --lines 1000000. Prints what was offered and whatever passed."""
from __future__ import annotations

import argparse
import json
import sys
from collections import Counter
from collections.abc import Iterator
from concurrent.futures import ProcessPoolExecutor, as_completed
from pathlib import Path
from random import Random
from time import process_time, time
from typing import Any, NamedTuple

from attacking import Attack, Found, Tally, kinds, random_workings, shipped, working_of, world_of

PORTION = 1000                                    # offers made at one problem before the next one comes
LOADED = """import sys; sys.path.insert(0, "tests")
from decimal import Decimal
from fractions import Fraction
from explain.body import Bearing
from explain.check import Checker
from explain.claim import *
from explain.equation import *"""


class Share(NamedTuple):
    """What one process does: offers at one shipped problem, or at random ones."""

    name: str
    lines: int
    seed: int
    problems: int = 0
    first: bool = False


def attacked(share: Share) -> tuple[Tally, dict[str, Any], float]:
    """The tally of a share, the tables of the random problems in it, and the processor time it took."""
    start, total, tables = process_time(), Tally(), dict[str, Any]()
    if not share.problems:
        working = working_of(share.name)
        attack = Attack(share.name, working, Random(f"{share.name} {share.seed}"), world_of(share.name))
        if share.first:
            attack.real_lines()
        return attack.run(share.lines), {}, process_time() - start
    for table, working in random_workings(share.problems, share.seed):
        name = f"random {share.seed}-{len(tables)}"
        tables[name] = table
        total.add(Attack(name, working, Random(name)).real_lines().run(share.lines // share.problems))
    return total, tables, process_time() - start


def shares(lines: int, seed: int, rest: float) -> Iterator[Share]:
    """Most of the offers at the problems that are shipped, `rest` of them at random ones."""
    names, at_random = list(shipped()), int(lines * rest)
    portions = max(1, round((lines - at_random) / (PORTION * len(names))))
    each = max(1, (lines - at_random) // (portions * len(names)))
    for portion in range(portions):
        for name in names:
            yield Share(name, each, seed * 1000 + portion, first=not portion)
        for place in range(at_random // portions // 5000 or bool(at_random)):
            yield Share("random", min(5000, at_random), (seed * 1000 + portion) * 1000 + place, 25)


def snippet(found: Found, tables: dict[str, Any]) -> str:
    """Python that shows one finding, from the root of the checkout."""
    if found.problem in tables:
        work = ["import rules", "from explain.files import read_problem", "from explain.free import cut_free", "from explain.solve import work_through",
                f"working = work_through(cut_free(read_problem({tables[found.problem]!r})), rules.MOVES)", "from worked import replayed"]
    else:
        work = ["from cheating import problem", "from worked import replayed", f"working = problem({found.problem!r})"]
    more = [f"lines.append(checker.certify({line!r}, {claim!r}, {_line(before)}))" for line, claim, before in found.extra]
    return "\n".join([LOADED, *work, f"checker, lines = replayed(working, {found.place})", *more,
                      f"checker.certify({found.line!r}, {found.claim!r}, {_line(found.before)})   # {found.text}"])


def _line(before: int | None) -> str:
    return "None" if before is None else f"lines[{before}]"


def report(total: Tally, took: float, wall: float) -> str:
    """A table by kinds of ground, and what passed."""
    offered, false = sum(total.offered.values()), sum(total.false.values())
    rows = [f"{offered} lines offered, {false} of them false, {sum(total.unjudged.values())} not judged; {took:.0f} s of processor time "
            f"({offered / took:.0f} lines a second), {wall:.0f} s in all", "",
            f"{'ground':<12}{'offered':>9}{'false':>9}{'certified':>11}{'false and certified':>21}{'of 100,000 false':>18}"]
    for kind in kinds():
        passed = sum(count for (ground, fault), count in total.passed.items() if ground == kind and "a rule's" not in fault)
        rate = f"{100000 * passed / total.false[kind]:.0f}" if total.false[kind] else "-"
        rows.append(f"{kind:<12}{total.offered[kind]:>9}{total.false[kind]:>9}{total.certified[kind]:>11}{passed:>21}{rate:>18}")
    rows += ["", *(f"{count:>7}  {kind}: {fault}" for (kind, fault), count in sorted(total.passed.items()))]
    return "\n".join([*rows, *(f"fault: {each}" for each in list(dict.fromkeys(total.odd))[:20])])


def examples(total: Tally, each: int) -> list[Found]:
    """The shortest findings of every kind."""
    seen, out = Counter[tuple[str, str]](), []
    for found in sorted(total.found, key=lambda found: (len(found.extra), len(found.text), len(repr(found.line)))):
        seen[found.kind, found.fault] += 1
        if seen[found.kind, found.fault] <= each:
            out.append(found)
    return sorted(out, key=lambda found: (found.kind, found.fault))


def main() -> int:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--lines", type=int, default=100_000)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--random", type=float, default=0.25, help="the part of the lines that goes to random problems")
    parser.add_argument("--processes", type=int, default=2)
    parser.add_argument("--examples", type=int, default=3, help="how many findings of each kind are shown")
    parser.add_argument("--save", type=Path, help="a file for the findings, as snippets")
    asked = parser.parse_args()
    total, tables, took, start = Tally(), dict[str, Any](), 0.0, time()
    with ProcessPoolExecutor(asked.processes) as pool:
        for done in as_completed([pool.submit(attacked, share) for share in shares(asked.lines, asked.seed, asked.random)]):
            tally, more, seconds = done.result()
            total.add(tally)
            tables |= {name: json.loads(json.dumps(table)) for name, table in more.items()}
            took += seconds
    print(report(total, took, time() - start))
    shown = examples(total, asked.examples)
    for found in shown:
        print(f"{found.kind} | {found.fault} | {found.how} | {found.problem}, {found.place} lines and {len(found.extra)} more | {found.text}")
    if asked.save:
        asked.save.write_text("\n\n".join(f"# {found.kind}: {found.fault} ({found.how})\n{snippet(found, tables)}" for found in shown) + "\n")
    return 1 if total.passed or total.odd else 0


if __name__ == "__main__":
    sys.exit(main())
