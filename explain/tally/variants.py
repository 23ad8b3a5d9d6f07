"""A class in which every student has a variant: each judged with the student's own account, anywhere. What a process
or a worker of a cluster does.
"""

from __future__ import annotations

import tempfile
import threading
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from functools import cached_property
from itertools import chain
from pathlib import Path
from typing import NamedTuple, TypeVar

from ..marking.judging import Marker
from ..equation.terms import Unit
from ..errors import A_PERSON, AT_FAULT, Fault, shown
from ..marking.marks.scheme import Scheme, scheme_of
from ..table import OTHERS
from ..marking.report.submissions import papers
from ..api import Walkthrough, slips
from .api import Paper, asked_of, no_working, papers_in, sizes_only, unsensed
from ..solve.outcome import Outcome
from .chance import chances
from .entry import Entry
from .key import ALIKE, Key, Variant
from .from_marking import entry_of
from .explanation import Matcher
from .answer_table import Row, Sheet, read_sheet
from .asked import Wanted, in_unit_of, wanted
from ..vary.settle_only import accounted, settled

Given = TypeVar("Given")
PRELOAD = ("explain.api", "explain.marking.judging", "rules.slips", "explain.tally.variants")
EXAMPLE = "explain tally jug.toml answers.csv --variants monday/key.csv"
UNREAD, GONE = "the file could not be read", "the file of the student's variant could not be read"
UNKNOWN, SEVERAL = "no student of this name in the key of the variants", ALIKE
_SAID = {UNKNOWN: "no students of these names", SEVERAL: "names that several students of the key have"}
_NAMED = 10  # names in one message


class Script(NamedTuple):
    """A working: its number, whose it is, its text."""

    place: int
    student: str
    text: str


class Task(NamedTuple):
    """What one student handed in, with the student's variant: rows of a table with the units of their headers and the
    answers without a sense, or workings.

    `whose` tells the student from others, however the name is written. `asked` are the answers of the problem as
    written: a variant has the same, and is judged in their units.
    """

    variant: Variant
    asked: tuple[Wanted, ...]
    rows: tuple[Row, ...] = ()
    scripts: tuple[Script, ...] = ()
    units: tuple[tuple[str, Unit], ...] = ()
    sizes: frozenset[str] = frozenset()
    whose: str = ""

    def troubled(self, why: str) -> tuple[Entry, ...]:
        """The entries where nothing could be judged."""
        return (
            *(Entry(each.line, each.student, trouble=why, whose=self.whose) for each in self.rows),
            *(Entry(each.place, each.student, trouble=why, whose=self.whose) for each in self.scripts),
        )


class Judged(NamedTuple):
    """What was found of a task, and how often chance alone fits a slip, or a pair where pairs were needed."""

    entries: tuple[Entry, ...]
    singles: Mapping[str, float] = {}
    pairs: Mapping[str, float] = {}


class Missed(NamedTuple):
    """An entry that cannot be judged, what is said of it, and the exit code that it asks for."""

    entry: Entry
    message: str
    code: int


class Taken(NamedTuple):
    """A class's answers or workings, ready to be judged; `absent` are the students of the key with neither."""

    tasks: tuple[Task, ...]
    missed: tuple[Missed, ...]
    lines: bool
    remarks: tuple[str, ...] = ()
    absent: tuple[str, ...] = ()


# ---------------------------------------------------------------------- before
def answers_taken(
    walkthrough: Walkthrough, sheet: Sheet, key: Key, course: Mapping[str, object] | None = None
) -> Taken:
    """The rows of a table by student. Raises Fault where no student has a variant that can be read."""
    asked, sizes = asked_of(walkthrough), sizes_only(walkthrough, sheet)
    found, missed = _with_variants(
        [(each.student, Entry(each.line, each.student), each) for each in sheet.rows], key.file, key, course
    )
    units = tuple(sheet.units.items())
    tasks = tuple(Task(variant, asked, tuple(rows), (), units, sizes, file) for file, variant, rows in found)
    return Taken(tasks, missed, False, (*sheet.remarks, *unsensed(walkthrough, sizes)), _absent(key, tasks, missed))


def class_sheet(path: Path, wanted: Sequence[Wanted], columns: Sequence[str], by: str, key: Key) -> Sheet:
    """The answers of a table, in the encoding in which most of its names stand in the key: names tell encodings
    apart whose bytes look alike. Raises Fault.
    """
    best = read_sheet(path, wanted, columns, by)
    lost = _unknown(best, key)
    if all(name.isascii() for name in lost):
        return best
    for encoding in OTHERS:
        try:
            other = read_sheet(path, wanted, columns, by, encoding)
        except (Fault, UnicodeError):
            continue
        if len(_unknown(other, key)) < len(_unknown(best, key)):
            said = f"The table is no UTF-8: by the names of the key its encoding is {encoding}, and it was read so."
            best = other._replace(remarks=(said, *other.remarks))
    return best


def _unknown(sheet: Sheet, key: Key) -> list[str]:
    return [each.student for each in sheet.rows if not key.has(each.student)]


def _absent(key: Key, tasks: Iterable[Task], missed: Iterable[Missed]) -> tuple[str, ...]:
    """The students of the key who handed in nothing."""
    here = {each.whose for each in tasks} | {each.entry.whose for each in missed}
    return tuple(name for name, file in key.rows if file not in here)


def workings_taken(
    walkthrough: Walkthrough, folder: Path, problem: Path, of: Key | Variant, course: Mapping[str, object] | None = None
) -> Taken:
    """The workings of a folder with the variant of each student, or with one problem for all. Raises Fault where
    none can be judged.
    """
    asked, read, unread = asked_of(walkthrough), list[tuple[str, Entry, tuple[Script, ...]]](), list[Missed]()
    for each in papers_in(folder, problem, besides=() if isinstance(of, Variant) else (of.path,)):
        try:
            read.append((each.student, Entry(each.place, each.student), _scripts(each)))
        except Fault as fault:
            whose = of.file_of_stem(each.student) if isinstance(of, Key) and of.has(each.student, True) else ""
            unread.append(Missed(Entry(each.place, each.student, trouble=UNREAD, whose=whose), str(fault), AT_FAULT))
    if not read:
        raise no_working(folder)
    if isinstance(of, Variant):
        return Taken(tuple(Task(of, asked, scripts=each) for _, _, each in read), tuple(unread), True)
    found, missed = _with_variants(read, of.file_of_stem, of, course)
    tasks = tuple(Task(variant, asked, scripts=tuple(chain(*some)), whose=file) for file, variant, some in found)
    return Taken(tasks, (*unread, *missed), True, (), _absent(of, tasks, (*unread, *missed)))


def _scripts(paper: Paper) -> tuple[Script, ...]:
    found = papers(Path(paper.file))
    return tuple(
        Script(paper.place, f"{paper.student} {each.name}" if len(found) > 1 else paper.student, each.text)
        for each in found
    )


def _with_variants(
    handed: Iterable[tuple[str, Entry, Given]],
    find: Callable[[str], str],
    key: Key,
    course: Mapping[str, object] | None,
) -> tuple[list[tuple[str, Variant, list[Given]]], tuple[Missed, ...]]:
    """What each student handed in with the student's file and variant, and what is nobody's or has no variant."""
    files, strangers = dict[str, list[tuple[Entry, Given]]](), list[tuple[Entry, Fault]]()
    for name, entry, given in handed:
        try:
            files.setdefault(find(name), []).append((entry, given))
        except Fault as fault:
            strangers.append((entry._replace(stranger=True, trouble=_why(fault)), fault))
    missed, found = list(_strangers(strangers, key)), list[tuple[str, Variant, list[Given]]]()
    for file, some in files.items():
        try:
            found.append((file, key.variant(file, course), [given for _, given in some]))
        except Fault as fault:
            missed += [Missed(entry._replace(trouble=GONE, whose=file), str(fault), AT_FAULT) for entry, _ in some]
    if not found:
        raise Fault(
            str(key.path),
            found="no variant that can be read of any student who handed something in",
            expected="the names of the class list, in a column of the table (--by) or as the names of the files",
            example="birk-tallow.txt",
            advice=missed[0].message.partition("\n")[0] if missed else "",
        )
    return found, tuple(missed)


def _why(fault: Fault) -> str:
    return SEVERAL if ALIKE in fault.found else UNKNOWN


def _strangers(found: Sequence[tuple[Entry, Fault]], key: Key) -> Iterator[Missed]:
    """What is nobody's that is known: one message for all of a kind."""
    for why in (UNKNOWN, SEVERAL):
        some = [(entry, fault) for entry, fault in found if entry.trouble == why]
        names = list(dict.fromkeys(shown(entry.student) if entry.student else "no name" for entry, _ in some))
        more = f" and {len(names) - _NAMED:,} more" if len(names) > _NAMED else ""
        said = f"{key.path}: {_SAID[why]}: {', '.join(names[:_NAMED])}{more}."
        for entry, fault in some:
            yield Missed(entry, said if len(names) > 1 else str(fault), A_PERSON)


# ---------------------------------------------------------------------- the work
class _Bench:
    """One variant, ready to judge."""

    def __init__(self, variant: Variant, asked: Sequence[Wanted]) -> None:
        with tempfile.TemporaryDirectory() as folder:
            for name, content in variant.beside.items():
                (Path(folder) / name).write_bytes(content)
            try:
                self.outcome: Outcome = settled(variant.tables, str(Path(folder) / "variant.toml"))
            except Fault as fault:
                raise fault.placed(variant.name, None, fault.key) from None
        self.account, _ = accounted(self.outcome)
        own = {each.name: each for each in wanted(self.outcome, self.account)}
        if {each.name for each in asked} != set(own):
            raise Fault(
                variant.name,
                found=f"a problem that asks for {', '.join(own) or 'nothing'}",
                expected="a variant of the problem that the class was given, which asks for "
                f"{', '.join(each.name for each in asked)}",
                example=EXAMPLE,
            )
        self.wanted = tuple(in_unit_of(own[each.name], each) for each in asked)

    @cached_property
    def matcher(self) -> Matcher:
        return Matcher(self.account, slips(), self.wanted)

    @cached_property
    def scheme(self) -> Scheme:
        return scheme_of(self.outcome)

    @cached_property
    def marker(self) -> Marker:
        return Marker(self.outcome.working, slips())


_BENCHES: dict[tuple[str, str], _Bench] = {}
_ONE = threading.Lock()  # a worker of a cluster may have several threads, and nothing here was made for that


def judge(task: Task) -> Judged:
    """What is found of one student. Raises Fault and NoWay where the variant cannot be worked."""
    with _ONE:
        bench = _bench(task)
        if not task.rows:
            marks = ((each, bench.marker.mark(each.text)) for each in task.scripts)
            return Judged(
                tuple(
                    entry_of(each.place, each.student, mark, bench.scheme)._replace(whose=task.whose)
                    for each, mark in marks
                )
            )
        entries = tuple(
            bench.matcher.entry(each, dict(task.units), task.sizes)._replace(whose=task.whose) for each in task.rows
        )
        given = [
            (place, each) for place, each in enumerate(bench.wanted) if any(each.name in row.cells for row in task.rows)
        ]
        return Judged(
            entries,
            chances(bench.matcher.single, given),
            chances(bench.matcher.pair, given) if bench.matcher.paired else {},
        )


def _bench(task: Task) -> _Bench:
    which = task.variant.name, task.variant.digest
    if which not in _BENCHES:
        _BENCHES.clear()
        _BENCHES[which] = _Bench(task.variant, task.asked)
    return _BENCHES[which]
