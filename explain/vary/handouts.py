"""Variants for a whole class, spread over processes or a cluster, into a folder; what is done is kept, so that a run
can be taken up again.
"""

from __future__ import annotations

import json
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from functools import partial
from hashlib import sha256
from importlib.metadata import PackageNotFoundError, version
from os.path import exists
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any, NamedTuple, cast

from ..jobs.cluster import spread
from ..jobs.pool import Trouble
from ..errors import Fault
from ..problem.toml_table import Fields
from ..problem.reader import problem_of, tables_of
from .one_variant import PRELOAD, Made, Plan, make, trials_of, written
from ..output import SUFFIXES, make_folder, put_whole
from .journal import NAME, Journal
from .key import MOST_ON_A_PAGE, Entry, columns, key_csv, key_page
from .ranges import read_ranges
from .class_list import Student
from .source import whole
from .trial import Trials

Watch = Callable[[Iterable[Made | Trouble], int], Iterable[Made | Trouble]]
SHEETS, VARIANTS, WALKTHROUGHS = "sheets", "variants", "keys"


class Order(NamedTuple):
    """What is wanted: sheets of one problem for these students, in a folder. `cluster` "" is this machine alone;
    `replace` gives up another run there.

    No name in the problem leads out of the folder `root`, "" for none.
    """

    file: Path
    folder: Path
    students: tuple[Student, ...]
    seed: int = 0
    form: str = "markdown"
    pages: bool = False
    jobs: int = 0
    cluster: str = ""
    course: Mapping[str, object] | None = None
    replace: bool = False
    root: str = ""


class Handed(NamedTuple):
    """What became of an order: how many are new, how many were there already, the students in trouble, and those who
    are no longer in the list, by name: their files stay.
    """

    fresh: int
    kept: int
    troubles: tuple[tuple[Student, Trouble], ...]
    gone: tuple[str, ...] = ()

    def __repr__(self) -> str:
        return f"<Handed: {self.fresh} made, {self.kept} there already, {len(self.troubles)} in trouble>"


def hand_out(order: Order, watch: Watch = lambda results, length: results) -> Handed:
    """Make everything that is not there yet. Raises Fault where the problem, its ranges or the folder are at fault;
    nothing is written then.
    """
    with TemporaryDirectory() as scratch:
        plan, trials = _prepared(order, Path(scratch))
        journal = Journal(
            order.folder,
            {"run": plan.key, "seed": order.seed, "problem": order.file.name, "form": order.form, "pages": order.pages},
        )
        before = _before(order, journal)
        done = _kept(order, before)
        here = {student.key for student in order.students}
        gone = {key: entry for key, entry in before.items() if key not in here}
        _folders(order)
        journal.begin((*done.values(), *gone.values()))
        left = [student for student in order.students if student.key not in done]
        troubles = tuple(_made(order, plan, left, done, journal, watch))
        _finish(order, plan, trials, done, journal, gone.values())
        _renamed(order, before, done)
    names = tuple(str(entry.get("name", key)) for key, entry in gone.items())
    return Handed(len(left) - len(troubles), len(order.students) - len(left), troubles, names)


# ---------------------------------------------------------------------- before
def _prepared(order: Order, scratch: Path) -> tuple[Plan, Trials]:
    """The plan, once the problem as written is worked and the first student has numbers. Raises Fault, placed in the
    problem's own file.
    """
    top = tables_of(order.file, order.root)
    problem_of(top, order.course)
    ranges = read_ranges(top)
    tables, beside = whole(top, order.course)
    told = json.dumps(
        [
            tables,
            sorted((name, content.hex()) for name, content in beside.items()),
            order.seed,
            order.form,
            order.pages,
            _version(),
        ],
        default=str,
        sort_keys=True,
    )
    plan = Plan(sha256(told.encode()).hexdigest(), tables, beside, ranges, order.seed, order.form, order.pages)
    try:
        trials = trials_of(plan, scratch)
        if order.students:
            trials.set_for(order.seed, order.students[0])
    except Fault as fault:
        raise _placed(fault, top) from None
    return plan, trials


def _placed(fault: Fault, top: Fields) -> Fault:
    name = fault.key.removeprefix('vary."').rstrip('"')
    line = top.origin.line(("vary", name)) if fault.key.startswith("vary") else fault.line
    return fault.placed(top.origin.told, line, fault.key)


def _version() -> str:
    try:
        return version("worked-moments")
    except PackageNotFoundError:
        return ""


Done = dict[int | str, dict[str, Any]]


def _before(order: Order, journal: Journal) -> Done:
    """What earlier runs of the same problem, seed and options have done, for whatever students. Raises Fault for a
    folder that holds something else.
    """
    before = journal.before()
    if before is None:
        taken = [name for name in (SHEETS, VARIANTS, WALKTHROUGHS, "key.csv") if exists(order.folder / name)]
        if taken:
            raise _other(
                order, f"a folder that has {taken[0]} in it, and not from this command", "an empty folder, or a new one"
            )
        return {}
    if before != journal.run:
        if not order.replace:
            raise _other(
                order,
                f"variants of another run (seed {before.get('seed')}, {before.get('problem')})",
                "another folder, or the very same problem, seed and options",
                "To give up what is there, add --replace.",
            )
        _clear(order, journal, before)
        return {}
    return journal.done()


def _kept(order: Order, before: Done) -> Done:
    """What need not be made again: a student's files that are still there, under the same name."""
    return {
        student.key: entry
        for student in order.students
        if (entry := before.get(student.key))
        and (entry.get("name"), entry.get("file")) == (student.name, student.file)
        and all(exists(path) for path, _ in _files(order, student))
    }


def _renamed(order: Order, before: Done, done: Done) -> None:
    """Take away the files that a student had under another name, once there are new ones."""
    files = {student.file for student in order.students}
    for key, entry in before.items():
        if key in done and entry.get("file") not in files:
            for path, _ in _files(order, _of(entry)):
                path.unlink(missing_ok=True)


def _of(entry: Mapping[str, Any]) -> Student:
    """A student as recorded: a file name, which leads nowhere else."""
    return Student(0, "", Path(str(entry.get("file", "?"))).name)


def _other(order: Order, found: str, expected: str, advice: str = "") -> Fault:
    return Fault(file=str(order.folder), found=found, expected=expected, example="-o class-5b-seed-8", advice=advice)


def _clear(order: Order, journal: Journal, before: Mapping[str, Any]) -> None:
    """Take away what another run wrote, and nothing else."""
    old = order._replace(form=before.get("form", order.form), pages=True)
    for entry in journal.done().values():
        for path, _ in _files(old, _of(entry)):
            path.unlink(missing_ok=True)
    for name in ("key.csv", f"key{SUFFIXES.get(old.form, '.md')}", NAME):
        (order.folder / name).unlink(missing_ok=True)


def _folders(order: Order) -> None:
    for name in (SHEETS, VARIANTS, *((WALKTHROUGHS,) if order.pages else ())):
        make_folder(order.folder / name)


# ---------------------------------------------------------------------- the work
def _made(
    order: Order, plan: Plan, left: Sequence[Student], done: Done, journal: Journal, watch: Watch
) -> Iterator[tuple[Student, Trouble]]:
    """Write each student's files as they come, then record them; what is in trouble is passed over."""
    for name, content in plan.beside.items():
        put_whole(order.folder / VARIANTS / name, content)
    with spread(partial(make, plan), left, order.jobs, order.cluster, PRELOAD) as results:
        for student, result in zip(left, watch(results, len(left)), strict=True):
            if isinstance(result, Trouble):
                yield student, result
                continue
            for path, part in _files(order, student):
                put_whole(path, cast(bytes, getattr(result, part)))
            done[student.key] = {
                "student": student.key,
                "name": student.name,
                "file": student.file,
                "entry": list(result.entry),
            }
            journal.add((done[student.key],))


def _files(order: Order, student: Student) -> Iterator[tuple[Path, str]]:
    """Every file of a student, with what of `Made` stands in it."""
    suffix = SUFFIXES[order.form]
    yield order.folder / SHEETS / f"{student.file}{suffix}", "sheet"
    yield order.folder / VARIANTS / f"{student.file}.toml", "variant"
    if order.pages:
        yield order.folder / WALKTHROUGHS / f"{student.file}{suffix}", "walkthrough"


# ---------------------------------------------------------------------- behind
def _finish(
    order: Order,
    plan: Plan,
    trials: Trials,
    done: Done,
    journal: Journal,
    gone: Iterable[Mapping[str, Any]],
) -> None:
    """The key of all that is done, and the record in order: the same bytes however often the run was stopped."""
    students = [student for student in order.students if student.key in done]
    entries = [Entry(*(tuple(part) for part in done[student.key]["entry"])) for student in students]
    put_whole(
        order.folder / "key.csv",
        key_csv(columns(plan.ranges, trials.base, any(each.id for each in students)), students, entries),
    )
    if len(students) <= MOST_ON_A_PAGE:
        page = key_page(
            trials.base.body.problem.title, plan.ranges, trials.base, students, entries, trials.like, plan.seed
        )
        put_whole(order.folder / f"key{SUFFIXES[order.form]}", written(page, order.form))
    journal.begin((*(done[student.key] for student in students), *gone))
