"""Draws many problems, judges what the program makes of them, and prints each sort of fault with an example.

    python tests/witness/run.py --count 10000 --jobs 2
    python tests/witness/run.py --sentences 2000 --jobs 2

Exits with 1 where anything was found. `--save DIR` writes the first problem of each sort, as a problem file.
"""

from __future__ import annotations

import argparse
import re
import sys
from collections import Counter
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass, field
from pathlib import Path

if __name__ == "__main__":
    sys.path.insert(0, str(Path(__file__).resolve().parent.parent))
from witness.answers import Expected, chosen
from witness.judge import findings
from witness.lines import false_lines
from witness.problems import Case, draw_case, numbered, toml
from witness.run_one import Outcome, outcome
from witness.sentences import false_sentences

CHUNK = 34


@dataclass
class Tally:
    """What was found in some problems: how often each exit and each sort, and examples."""

    exits: Counter[int] = field(default_factory=Counter)
    sorts: Counter[str] = field(default_factory=Counter)
    spoiled: Counter[str] = field(default_factory=Counter)  # problems with at least one finding of a sort
    read: Counter[str] = field(default_factory=Counter)  # lines and sentences judged, or not understood
    examples: dict[str, list[tuple[str, str, str]]] = field(default_factory=dict)

    def add(self, case: Case, sort: str, says: str) -> None:
        self.sorts[sort] += 1
        known = self.examples.setdefault(sort, [])
        if len(known) < 3 and all(name != case.name for name, *_ in known):
            known.append((case.name, says, toml(case.problem)))

    def merge(self, other: Tally) -> None:
        for mine, theirs in (
            (self.exits, other.exits),
            (self.sorts, other.sorts),
            (self.spoiled, other.spoiled),
            (self.read, other.read),
        ):
            mine.update(theirs)  # type: ignore[arg-type]
        for sort, examples in other.examples.items():
            self.examples[sort] = (self.examples.get(sort, []) + examples)[:3]


def judge(problems: list[tuple[str, int]], sentences: bool) -> Tally:
    """Judge problems, each told by its kind and its seed."""
    tally = Tally()
    for kind, seed in problems:
        case = draw_case(kind, seed)
        came = outcome(case, pages=sentences)
        tally.exits[came.exit] += 1
        found = list(findings(case, came))
        if sentences:
            found = [(sort, says) for sort, says in found if sort.startswith("exit")] + false_pages(case, came, tally)
        for sort, says in found:
            tally.add(case, sort, says)
        tally.spoiled.update({sort for sort, _ in found} | ({"any"} if found else set()))
    return tally


def false_pages(case: Case, came: Outcome, tally: Tally) -> list[tuple[str, str]]:
    """What is false on the page, judged by the root whose answers are told; without answers there is no page."""
    if not came.json:
        return []
    expected = Expected(case, chosen(case, came.json))
    return [*false_lines(case, expected, came, tally.read), *false_sentences(case, expected, came, tally.read)]


def report(tally: Tally) -> str:
    lines = [
        f"problems: {tally.exits.total()}; exits: "
        + ", ".join(f"{exit}: {many}" for exit, many in sorted(tally.exits.items())),
        f"problems with a finding: {tally.spoiled.pop('any', 0)}",
    ]
    lines += [f"judged: {what} {many}" for what, many in sorted(tally.read.items())]
    for sort, many in tally.sorts.most_common():
        lines.append(f"{many:6} in {tally.spoiled[sort]:5} problems: {sort}")
        lines += [f"         {name}: {says[:300]}" for name, says, _ in tally.examples[sort]]
    return "\n".join(lines)


def save(tally: Tally, folder: Path) -> None:
    folder.mkdir(parents=True, exist_ok=True)
    for sort, examples in tally.examples.items():
        name, says, text = examples[0]
        told = "".join(f"# {line}\n" for line in f"{sort}: {says}".splitlines())
        (folder / f"{re.sub(r'[^a-z0-9]+', '-', sort.lower()).strip('-')[:60]}.toml").write_text(told + text)


def main() -> int:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--count", type=int, default=0, help="problems whose answers are judged")
    parser.add_argument("--sentences", type=int, default=0, help="problems whose pages are read line by line")
    parser.add_argument("--start", type=int, default=0, help="where in the endless list of problems to begin")
    parser.add_argument("--jobs", type=int, default=1)
    parser.add_argument("--save", type=Path)
    options = parser.parse_args()
    total = Tally()
    with ProcessPoolExecutor(options.jobs) as pool:
        waiting = [
            pool.submit(judge, numbered(options.start + at, min(CHUNK, many - at)), sentences)
            for many, sentences in ((options.count, False), (options.sentences, True))
            for at in range(0, many, CHUNK)
        ]
        for each in waiting:
            total.merge(each.result())
    if options.save:
        save(total, options.save)
    print(report(total))
    return int(bool(total.sorts))


if __name__ == "__main__":
    sys.exit(main())
