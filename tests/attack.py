"""Attacks the checker with random false lines: python tests/attack.py --lines 1000000. Prints what passed."""

from __future__ import annotations

import argparse
import sys
from collections import Counter
from collections.abc import Iterator
from concurrent.futures import ProcessPoolExecutor, as_completed
from pathlib import Path
from random import Random
from time import process_time, time
from typing import Any, NamedTuple

from attack_problems import random_workings, shipped, working_of, world_of
from attacking import ITS_OWN, Attack, Found, Tally, kinds

PORTION, EACH = 1000, 25  # offers at a problem at a time; random problems in a share
HEAD = """import sys; sys.path.insert(0, "tests")
from decimal import Decimal
from fractions import Fraction
from explain.mechanics.body import Bearing
from explain.check.claim import *
from explain.equation.terms import *
from worked import replayed"""
WORK = """import rules
from explain.problem.reader import read_problem
from explain.mechanics.free_body import cut_free
from explain.solve.engine import work_through
working = work_through(cut_free(read_problem({table!r})), rules.MOVES)"""


class Share(NamedTuple):
    """What one process does at a time: offers at one shipped problem, or at so many random ones."""

    name: str
    lines: int
    seed: int
    first: bool = False
    random: int = 0


class Done(NamedTuple):
    """The tally of a share, the tables of the random problems with findings, and the processor time it took."""

    tally: Tally
    tables: dict[str, Any]
    seconds: float


def attacked(share: Share) -> Done:
    """A share, done."""
    start, total, tables = process_time(), Tally(), dict[str, Any]()
    if not share.random:
        attack = Attack(share.name, working_of(share.name), Random(f"{share.name} {share.seed}"), world_of(share.name))
        total = (attack.own_lines() if share.first else attack).run(share.lines)
        return Done(total, {}, process_time() - start)
    for place, (table, working) in enumerate(random_workings(share.random, share.seed)):
        name = f"random {share.seed}-{place}"
        tally = Attack(name, working, Random(name)).own_lines().run(share.lines // share.random)
        tables |= {name: table} if tally.found else {}
        total.add(tally)
    return Done(total, tables, process_time() - start)


def shares(lines: int, seed: int, part: float) -> Iterator[Share]:
    """Most of the offers at the problems that are shipped, a part of them at random ones."""
    names, at_random = list(shipped()), int(lines * part)
    portions = max(1, round((lines - at_random) / (PORTION * len(names))))
    for portion in range(portions):
        for name in names:
            yield Share(name, (lines - at_random) // (portions * len(names)), 1000 * seed + portion, not portion)
        for place in range(max(1, round(at_random / portions / PORTION / 5)) if at_random else 0):
            at = 1000 * (1000 * seed + portion) + place
            yield Share("random", min(5 * PORTION, at_random), at, random=EACH)


def snippet(found: Found, tables: dict[str, Any]) -> str:
    """Python that shows one finding, from the root of the checkout."""
    work = f"from cheating import problem\nworking = problem({found.problem!r})"
    if found.problem in tables:
        work = WORK.format(table=tables[found.problem])
    more = [
        f"lines.append(checker.certify({line!r}, {claim!r}, {_line(before)}))" for line, claim, before in found.extra
    ]
    last = f"checker.certify({found.line!r}, {found.claim!r}, {_line(found.before)})   # {found.text}"
    return "\n".join(
        [
            f"# {found.kind}: {found.fault} ({found.how})",
            HEAD,
            work,
            f"checker, lines = replayed(working, {found.place})",
            *more,
            last,
        ]
    )


def _line(before: int | None) -> str:
    return "None" if before is None else f"lines[{before}]"


def report(total: Tally, took: float, wall: float) -> str:
    """A table by kinds of ground, and what passed."""
    offered, false, unjudged = (sum(each.values()) for each in (total.offered, total.false, total.unjudged))
    passed = Counter(each.kind for each in total.found if each.how != ITS_OWN)
    what = Counter((each.kind, each.fault, each.how == ITS_OWN) for each in total.found)
    rows = [
        f"{offered} lines offered, about {false} of them false, {unjudged} not judged",
        f"{sum(passed.values())} false and certified",
        f"{took:.0f} s of processor time, {offered / took:.0f} lines a second; {wall:.0f} s by the clock",
        "",
        f"{'ground':<12}{'offered':>9}{'false':>9}{'certified':>11}{'of them false':>15}{'per 100,000 false':>19}",
    ]
    for kind in kinds():
        counts = (total.offered[kind], total.false[kind], total.certified[kind], passed[kind])
        rate = f"{100_000 * passed[kind] / total.false[kind]:.0f}" if total.false[kind] else "-"
        rows.append(f"{kind:<12}{counts[0]:>9}{counts[1]:>9}{counts[2]:>11}{counts[3]:>15}{rate:>19}")
    rows += [
        "",
        *(
            f"{count:>7}  {kind}: {fault}{' (a line of a rule)' * own}"
            for (kind, fault, own), count in sorted(what.items())
        ),
    ]
    return "\n".join([*rows, *(f"{count:>7}  {odd}" for odd, count in Counter(total.odd).most_common(20))])


def examples(total: Tally, each: int) -> list[Found]:
    """The shortest findings of every kind."""
    seen, out = Counter[tuple[str, str]](), []
    for found in sorted(total.found, key=lambda found: (len(found.extra), len(repr(found.line)))):
        seen[found.kind, found.fault] += 1
        if seen[found.kind, found.fault] <= each:
            out.append(found)
    return sorted(out, key=lambda found: (found.kind, found.fault))


def main() -> int:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--lines", type=int, default=100_000)
    parser.add_argument(
        "--minutes", type=float, default=float("inf"), help="stop after so long, and report what was done"
    )
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--random", type=float, default=0.25, help="the part of the lines that goes to random problems")
    parser.add_argument("--processes", type=int, default=2)
    parser.add_argument("--examples", type=int, default=3, help="how many findings of each kind are shown")
    parser.add_argument("--save", type=Path, help="a file for these findings, as Python")
    asked = parser.parse_args()
    total, tables, took, start = Tally(), dict[str, Any](), 0.0, time()
    with ProcessPoolExecutor(asked.processes) as pool:
        every = [pool.submit(attacked, share) for share in shares(asked.lines, asked.seed, asked.random)]
        for each in as_completed(every):
            done = each.result()
            total.add(done.tally)
            tables |= done.tables
            took += done.seconds
            if time() - start > asked.minutes * 60:
                pool.shutdown(wait=False, cancel_futures=True)
                break
    print(report(total, took, time() - start))
    shown = examples(total, asked.examples)
    for found in shown:
        where = f"{found.problem}, {found.place} lines, {len(found.extra)} more"
        print(" | ".join((found.kind, found.fault, found.how, where, found.text)))
    if asked.save:
        asked.save.write_text("\n\n".join(snippet(found, tables) for found in shown) + "\n")
    return 1 if total.found or total.odd else 0


if __name__ == "__main__":
    sys.exit(main())
