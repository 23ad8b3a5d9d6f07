"""A tally from a worked problem: answers of a table matched in this process, workings marked one file at a time in
any. Knows no command line.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from functools import lru_cache
from pathlib import Path
from typing import NamedTuple

from ..errors import Fault
from ..marking.report.submissions import SUFFIXES, papers
from ..api import Walkthrough, work
from ..marking.marks.scheme import scheme_of
from .attempts import LAST
from .cells import Cell
from .chance import chances
from .counts import count, sorts
from .entry import Entry
from .from_marking import entry_of
from .explanation import Matcher
from .page import Evidence, Sheetful
from .answer_table import Row, Sheet
from .first_step import Steps
from .asked import Wanted, wanted
from .alternatives import Numbers, Spoiled, own

_UNTOLD = "no answer in its column has a sign or a way"
_ACCEPTED = "by a line that a tutor accepted"
_OTHER_BONE = "the class asks for the force on the other bone, and a number does not say on which of the two it acts"
PRELOAD = ("explain.api", "explain.marking.judging", "rules.slips", "explain.tally.api")


class Paper(NamedTuple):
    """A working to be marked in some process: its number, whose it is, its file, the problem's file, the course's
    keys, the root of its names.
    """

    place: int
    student: str
    file: str
    problem: str
    course: tuple[tuple[str, object], ...] = ()
    root: str = ""


# ---------------------------------------------------------------------- answers
def asked_of(walkthrough: Walkthrough) -> tuple[Wanted, ...]:
    """The answers of a problem as a class gives them."""
    return wanted(walkthrough.outcome, walkthrough.marker.account)


def of_answers(
    walkthrough: Walkthrough,
    sheet: Sheet,
    rows: Callable[[Sequence[Row]], Iterable[Row]] = iter,
    watch: Callable[[Sequence[Spoiled]], Iterator[Spoiled]] = iter,
    names: bool = False,
    attempt: str = LAST,
) -> Sheetful:
    """The tally of a table of answers; `rows` and `watch` show how far the students and the pairs of slips have
    come.
    """
    asked, known = asked_of(walkthrough), walkthrough.marker.rules
    matcher = Matcher(walkthrough.marker.account, known, asked, watch, accepted(walkthrough, asked))
    sizes = sizes_only(walkthrough, sheet)
    entries = [matcher.entry(each, sheet.units, sizes) for each in rows(sheet.rows)]
    given = [(place, each) for place, each in enumerate(asked) if each.name in sheet.columns]
    evidence = Evidence(chances(matcher.single, given), chances(matcher.pair, given) if matcher.paired else {})
    tally = count(entries, known, False, (*sheet.remarks, *unsensed(walkthrough, sizes)), attempt=attempt)
    return Sheetful(tally, walkthrough.outcome, asked, sorts(known), Steps(walkthrough.outcome), evidence, names)


def accepted(walkthrough: Walkthrough, asked: Sequence[Wanted]) -> tuple[tuple[Numbers, str], ...]:
    """The answers that come of each line that a tutor accepted: by its slip, else by the answers that it states."""
    account, marker = walkthrough.marker.account, walkthrough.marker
    found: list[Numbers | None] = []
    for each in marker.accepted:
        if each.values:
            found.append(tuple(one.of({**account.values(), **each.values}) for one in asked))
            continue
        places = {one.name: place for place, one in enumerate(asked)}
        told = marker.mark("\n".join((*each.accept.after, each.accept.line))).answers
        stated = [(places[one.name], one.value) for one in told if one.accepted and one.name in places]
        found.append(own(account, asked, stated) if stated else None)
    return tuple((each, _ACCEPTED) for each in found if each is not None)


def sizes_only(walkthrough: Walkthrough, sheet: Sheet) -> frozenset[str]:
    """The answers of a table that are judged by their sizes alone."""
    return without_sense(sheet, asked_of(walkthrough)) | other_bone(walkthrough) & set(sheet.columns)


def unsensed(walkthrough: Walkthrough, sizes: frozenset[str]) -> tuple[str, ...]:
    """What the report says of these."""
    other = other_bone(walkthrough)
    return tuple(
        f"The sense of {name} is not judged, only its size: {_OTHER_BONE if name in other else _UNTOLD}."
        for name in sorted(sizes)
    )


def other_bone(walkthrough: Walkthrough) -> frozenset[str]:
    """The parts of the joint force, where the class asks for the push on the other bone: each of the two senses is
    told in some column or other.
    """
    if walkthrough.problem.course.reaction_on != "the other bone":
        return frozenset()
    return frozenset(each.name for each in asked_of(walkthrough) if each.signed and each.name.startswith("reaction."))


def without_sense(sheet: Sheet, asked: Sequence[Wanted]) -> frozenset[str]:
    """The answers with a sense in whose column no cell has a sign or a way."""
    told = {name for row in sheet.rows for name, each in row.cells.items() if isinstance(each, Cell) and each.told}
    return frozenset(
        each.name for each in asked if each.signed and each.name in sheet.columns and each.name not in told
    )


# ---------------------------------------------------------------------- workings
def papers_in(
    folder: Path,
    problem: Path,
    course: Mapping[str, object] | None = None,
    besides: Sequence[Path] = (),
    root: str = "",
) -> tuple[Paper, ...]:
    """The workings of a folder in the order of their names, without the problem and other files `besides`. Raises
    Fault where there is none.
    """
    try:
        files = sorted(each for each in folder.iterdir() if _is_working(each, (problem, *besides)))
    except OSError as error:
        raise _fault(
            folder, f"a folder that cannot be read ({(error.strerror or str(error)).lower()})", "a folder of workings"
        ) from None
    if not files:
        raise _fault(
            folder,
            "no working: the folder has no file of text",
            f"a file for each working: {', '.join(filter(None, SUFFIXES))}",
        )
    return tuple(
        Paper(place, each.stem, str(each), str(problem), tuple((course or {}).items()), root)
        for place, each in enumerate(files, 1)
    )


def _is_working(file: Path, besides: Sequence[Path]) -> bool:
    """A link that leads nowhere is one too, and is reported as one that cannot be read."""
    if file.suffix.lower() not in SUFFIXES or file.name.startswith(".") or file.is_dir():
        return False
    return not (file.exists() and any(each.exists() and file.samefile(each) for each in besides))


def no_working(folder: Path) -> Fault:
    """What is said of a folder of which no file can be read."""
    return Fault(
        str(folder),
        found="no working that can be read",
        expected="plain text, a line of working a line",
        example="F*4.0 = 29.43*33",
    )


def _fault(folder: Path, found: str, expected: str) -> Fault:
    return Fault(str(folder), found=found, expected=expected, example="explain tally jug.toml workings")


def mark_file(paper: Paper) -> tuple[Entry, ...]:
    """What is found of one file, which may hold several workings. Raises Fault where it cannot be read."""
    walkthrough = _worked(paper.problem, _stamp(paper.problem), paper.course, paper.root)
    found, scheme = papers(Path(paper.file)), scheme_of(walkthrough.outcome)
    several = len(found) > 1
    return tuple(
        entry_of(
            paper.place,
            f"{paper.student} {each.name}" if several else paper.student,
            walkthrough.mark(each.text),
            scheme,
        )
        for each in found
    )


def _stamp(file: str) -> tuple[int, int]:
    """When a file was written, and its size: it may have changed since it was read."""
    try:
        found = Path(file).stat()
    except OSError:
        return 0, 0
    return found.st_mtime_ns, found.st_size


@lru_cache(maxsize=2)
def _worked(problem: str, stamp: tuple[int, int], course: tuple[tuple[str, object], ...], root: str) -> Walkthrough:
    return work(Path(problem), course=dict(course) or None, root=root or None)


def of_workings(
    walkthrough: Walkthrough, entries: Sequence[Entry], names: bool = False, attempt: str = LAST
) -> Sheetful:
    """The tally of workings that were marked."""
    known = walkthrough.marker.rules
    return Sheetful(
        count(entries, known, True, attempt=attempt),
        walkthrough.outcome,
        asked_of(walkthrough),
        sorts(known),
        Steps(walkthrough.outcome),
        names=names,
    )
