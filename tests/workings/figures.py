"""Measures the reader of workings: slips found and named, false alarms on right workings, two slips at once. Prints the
figures as Markdown.

A whole run keeps them in figures.md beside this file.

python tests/workings/figures.py [--quick] [--slip NAME] [--show N] [--only right|slips|two] [--case ID]
"""

from __future__ import annotations

import argparse
import sys
from collections import Counter
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, field
from functools import lru_cache
from pathlib import Path
from random import Random
from time import perf_counter

if __name__ == "__main__":
    sys.path[:0] = [str(Path(__file__).resolve().parents[1]), str(Path(__file__).resolve().parents[2])]

from explain.marking.slips.account import Impossible
from explain.marking.slips.slip import SlipRule
from explain.marking.slips.verdict import Marking
from workings.problems import Worked, random_problem
from workings.spoil import Case, base, double_case, spoilt_case, written
from workings.style import random_style

Mark = Callable[[str], Marking]
Make = Callable[[Worked], Mark]
KEPT = Path(__file__).with_name("figures.md")
HEAD = """# How well workings are read

Written by `python tests/workings/figures.py`: workings that a program writes, not students' workings.

"""
PROBLEMS = 240  # different problems in all


@dataclass(slots=True)
class Tally:
    """How many cases, and what became of them."""

    cases: int = 0
    found: int = 0
    named: int = 0
    failures: list[str] = field(default_factory=list)

    def share(self, count: int) -> str:
        return f"{100 * count / self.cases:.1f} %" if self.cases else "-"


@lru_cache(maxsize=PROBLEMS)
def problem(number: int) -> Worked:
    return random_problem(Random(f"problem {number}"))


def told(case: Case, marking: Marking, name: str, worked: Worked) -> str:
    """A failure, to be read: the working with what was said of each line."""
    expected = dict(case.expected)
    rows = [
        f"### {name}   ({worked.kind}; {case.about})",
        "expected: " + "; ".join(f"line {line} {slip}" for line, slip in case.expected),
    ]
    verdicts = {each.number: each for each in marking.lines}
    for number, line in enumerate(case.working.lines, 1):
        said = verdicts.get(number)
        mark = ">>" if number in expected else "  "
        slips = ",".join(each.slip for each in said.slips) if said else ""
        why = f" {said.says[:90]}" if said and said.verdict in ("slips", "unclear") else ""
        rows.append(f"{mark}{number:3} {line.text:<78.150} | {said.verdict if said else 'gone'} {slips}{why}")
    return "\n".join(rows) + "\n"


# ---------------------------------------------------------------------- the three measurements
def single(rule: SlipRule, make: Make, count: int) -> Tally:
    """One slip in so many problems where it applies and shows."""
    tally = Tally()
    for name, worked, case in _cases(
        lambda worked, seed: spoilt_case(worked, rule, random_style(Random(seed), right=False), seed),
        rule.SLIP,
        count,
        3 * PROBLEMS,
    ):
        marking = make(worked)(case.working.text)
        _count(tally, case, marking, name, worked)
    return tally


def _count(tally: Tally, case: Case, marking: Marking, name: str, worked: Worked) -> None:
    tally.cases += 1
    line, slip = case.expected[0]
    said = next((each for each in marking.lines if each.number == line), None)
    found = marking.first_wrong == line
    named = found and said is not None and slip in [each.slip for each in said.slips]
    tally.found += found
    tally.named += named
    if not named:
        tally.failures.append(told(case, marking, name, worked))


def double(rules: Sequence[SlipRule], make: Make, count: int) -> Tally:
    tally = Tally()
    for name, worked, case in _cases(
        lambda worked, seed: double_case(worked, rules, random_style(Random(seed), right=False), seed),
        "two",
        count,
        60 * count,
    ):
        marking = make(worked)(case.working.text)
        tally.cases += 1
        wrong = {each.number for each in marking.lines if each.verdict == "slips"}
        found = all(line in wrong for line, _ in case.expected)
        tally.found += found
        tally.named += found and all(
            any(slip == each.slip for said in marking.lines if said.number == line for each in said.slips)
            for line, slip in case.expected
        )
        if not found:
            tally.failures.append(told(case, marking, name, worked))
    return tally


@dataclass(slots=True)
class Rights:
    workings: int = 0
    lines: int = 0
    verdicts: Counter[str] = field(default_factory=Counter)
    alarmed: int = 0
    failures: list[str] = field(default_factory=list)


def rights(make: Make, count: int) -> Rights:
    """Right workings in many styles: what is said of their lines."""
    tally = Rights()
    for name, worked, case in right_cases(count):
        marking = make(worked)(case.working.text)
        tally.workings += 1
        verdicts = Counter(each.verdict for each in marking.lines if each.text.strip())
        tally.lines += sum(verdicts.values())
        tally.verdicts.update(verdicts)
        tally.alarmed += bool(verdicts["slips"])
        if verdicts["slips"] or verdicts["unclear"]:
            tally.failures.append(told(case, marking, name, worked))
    return tally


def right_cases(count: int) -> Iterator[tuple[str, Worked, Case]]:
    """So many right workings, with their names and problems."""
    yield from _cases(right_case, "right", count, 2 * count)


def right_case(worked: Worked, seed: str) -> Case | None:
    style = random_style(Random(seed))
    try:
        return Case(written(worked, base(worked, style), style, seed), ())
    except Impossible:
        return None


def _cases(
    make: Callable[[Worked, str], Case | None], what: str, count: int, tries: int
) -> Iterator[tuple[str, Worked, Case]]:
    """So many cases, each with a name that makes it again: what, the problem and the seed."""
    made, order = 0, Random(what)
    for number in range(tries):
        if made == count:
            return
        place = order.randrange(PROBLEMS)
        name = f"{what}:{place}:{number}"
        case = make(problem(place), name)
        if case is not None:
            made += 1
            yield name, problem(place), case


# ---------------------------------------------------------------------- the command
def marker() -> tuple[Make, tuple[SlipRule, ...]]:
    """The marking under test, one marker a problem."""
    from explain.marking.judging import Marker
    from rules.slips import SLIPS

    @lru_cache(maxsize=PROBLEMS)
    def made(kind: str, title: str, key: int) -> Mark:
        return Marker(_WORKED[key].walkthrough.outcome.working, SLIPS).mark

    def make(worked: Worked) -> Mark:
        _WORKED[id(worked)] = worked
        return made(worked.kind, worked.table["title"], id(worked))

    return make, SLIPS


_WORKED: dict[int, Worked] = {}


def again(name: str, rules: Sequence[SlipRule]) -> tuple[Worked, Case | None]:
    """A case by its name."""
    what, place, _ = name.rsplit(":", 2)
    worked = problem(int(place))
    if what == "right":
        return worked, right_case(worked, name)
    style = random_style(Random(name), right=False)
    if what == "two":
        return worked, double_case(worked, rules, style, name)
    return worked, spoilt_case(worked, next(each for each in rules if what == each.SLIP), style, name)


def main(arguments: Sequence[str] | None = None) -> None:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--quick", action="store_true", help="a fifth of the cases")
    parser.add_argument("--slip", default="", help="only this slip")
    parser.add_argument("--only", choices=("right", "slips", "two"), help="only this measurement")
    parser.add_argument("--show", type=int, default=0, help="so many failures of each measurement")
    parser.add_argument("--case", default="", help="one case by its name, with what is said of it")
    given = parser.parse_args(arguments)
    make, rules = marker()
    if given.case:
        worked, case = again(given.case, rules)
        print(
            worked.table,
            "\n",
            told(case, make(worked)(case.working.text), given.case, worked) if case else "no such case",
        )
        return
    started, part, said = perf_counter(), 5 if given.quick else 1, list[str]()
    if given.only in (None, "slips") or given.slip:
        said += shown(_slips(given, make, rules, 50 // part))
    if given.only in (None, "right") and not given.slip:
        said += shown(_rights(make, 2000 // part, given.show))
    if given.only in (None, "two") and not given.slip:
        said += shown(_two(make, rules, 300 // part, given.show))
    print(f"\n{perf_counter() - started:.0f} s")
    if not (given.slip or given.quick or given.only or given.show):
        KEPT.write_text(HEAD + "\n".join(said).rstrip() + "\n", encoding="utf-8")


def shown(lines: Iterable[str]) -> list[str]:
    """The lines, each printed as it comes."""
    said = list[str]()
    for line in lines:
        print(line, flush=True)
        said.append(line)
    return said


def _slips(given: argparse.Namespace, make: Make, rules: Sequence[SlipRule], count: int) -> Iterator[str]:
    yield "| slip | problems | line found | slip named |\n|---|---|---|---|"
    whole, failures, silent = Tally(), list[str](), list[str]()
    for rule in rules:
        if given.slip and rule.SLIP != given.slip:
            continue
        tally = single(rule, make, count)
        if not tally.cases:
            silent.append(rule.SLIP)
            continue
        yield f"| {rule.SLIP} | {tally.cases} | {tally.share(tally.found)} | {tally.share(tally.named)} |"
        whole.cases, whole.found, whole.named = (
            whole.cases + tally.cases,
            whole.found + tally.found,
            whole.named + tally.named,
        )
        failures += tally.failures[: given.show]
    yield f"| all | {whole.cases} | {whole.share(whole.found)} | {whole.share(whole.named)} |\n"
    if silent:
        yield f"No wrong line was made for: {', '.join(silent)}.\n"
    yield from failures


def _rights(make: Make, count: int, show: int) -> Iterator[str]:
    tally = rights(make, count)
    unclear = 100 * tally.verdicts["unclear"] / max(tally.lines, 1)
    yield "\n| right workings | lines | lines called slips | workings with one | unclear |\n|---|---|---|---|---|"
    yield f"| {tally.workings} | {tally.lines} | {tally.verdicts['slips']} | {tally.alarmed} | {unclear:.2f} % |\n"
    yield from tally.failures[:show]


def _two(make: Make, rules: Sequence[SlipRule], count: int, show: int) -> Iterator[str]:
    tally = double(rules, make, count)
    yield "\n| two slips | both lines found | both named |\n|---|---|---|"
    yield f"| {tally.cases} | {tally.share(tally.found)} | {tally.share(tally.named)} |\n"
    yield from tally.failures[:show]


if __name__ == "__main__":
    main()
