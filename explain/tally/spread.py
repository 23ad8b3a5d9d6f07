"""A class judged by many: tasks go out to processes or a cluster, what comes back is tallied in the order of the
class. Knows no slip and no file.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from itertools import chain
from math import fsum
from typing import NamedTuple

from ..jobs.cluster import spread
from ..jobs.pool import Trouble
from ..errors import BROKEN, Fault
from ..api import Walkthrough
from .api import asked_of
from .variants import EXAMPLE, PRELOAD, Judged, Missed, Taken, Task, judge
from .attempts import LAST
from .counts import count, sorts
from .page import Evidence, Sheetful
from .first_step import Steps

Watch = Callable[[Iterable[Judged | Trouble], int], Iterable[Judged | Trouble]]
FEW = 8  # tasks that one process has done before others have begun
_STRANGE, _BROKEN = "the student's variant could not be worked", "a fault of the program itself"


class Crowd(NamedTuple):
    """How a class is judged: `own` where each student has a variant; by `jobs` processes (0: one a core) or the
    workers of a cluster; `names` in the report; which `attempt` of a student counts.
    """

    own: bool = True
    jobs: int = 0
    cluster: str = ""
    names: bool = False
    attempt: str = LAST


def judged(
    walkthrough: Walkthrough, taken: Taken, how: Crowd, watch: Watch = lambda results, length: results
) -> tuple[Sheetful, tuple[Missed, ...]]:
    """The tally, and what could not be judged. Where a slip shows is told by the problem as written. Raises Fault
    where nothing was judged.
    """
    few = not how.jobs and len(taken.tasks) < FEW
    with spread(judge, taken.tasks, 1 if few else how.jobs, how.cluster, PRELOAD) as results:
        pairs = list(zip(taken.tasks, watch(results, len(taken.tasks)), strict=True))
    missed = (*taken.missed, *chain(*(_missed(task, result) for task, result in pairs if isinstance(result, Trouble))))
    found = [(task, result) for task, result in pairs if not isinstance(result, Trouble)]
    if not found:
        raise Fault(
            found="nothing that could be judged",
            expected="variants of the problem that is named first",
            example=EXAMPLE,
            advice=missed[0].message if missed else "",
        )
    known, outcome, own = (
        walkthrough.marker.rules,
        walkthrough.outcome,
        len({task.variant.name for task, _ in found}) if how.own else 0,
    )
    entries = sorted(
        chain(*(each.entries for _, each in found), (each.entry for each in missed)), key=lambda each: each.place
    )
    tally = count(entries, known, taken.lines, taken.remarks, how.own, how.attempt)
    evidence = Evidence(_mean(each.singles for _, each in found), _mean(each.pairs for _, each in found))
    found_of_all = Sheetful(
        tally, outcome, asked_of(walkthrough), sorts(known), Steps(outcome), evidence, how.names, own, taken.absent
    )
    return found_of_all, missed


def _missed(task: Task, trouble: Trouble) -> Iterator[Missed]:
    said = trouble.message if task.variant.name in trouble.message else f"{task.variant.name}: {trouble.message}"
    for each in task.troubled(_BROKEN if trouble.code == BROKEN else _STRANGE):
        yield Missed(each, said, trouble.code)


def _mean(shares: Iterable[Mapping[str, float]]) -> dict[str, float]:
    """By answer, the mean over those variants that have a share for it."""
    found: dict[str, list[float]] = {}
    for each in shares:
        for name, share in each.items():
            found.setdefault(name, []).append(share)
    return {name: fsum(some) / len(some) for name, some in found.items()}
