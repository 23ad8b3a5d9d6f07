"""Problem files and course files: from a path, a text or a mapping to a Problem or a Course. Knows which table is which noun."""
from __future__ import annotations

import os
import re
import tomllib
from collections.abc import Mapping
from dataclasses import replace
from pathlib import Path

from . import agreement, asked, needs, nouns
from .convention import Course
from .courses import COURSE_KEYS, course_of
from .faults import Fault, shown
from .fields import Fields, Origin
from .problem import BURDENS, Couple, Load, Problem, Pull, Segment
from .sheet import Sheet, by_name, unknown_name
from .slots import filled

MOST_BYTES = 1_000_000
LONGEST_TITLE = 300
# A dotted key of many parts takes the TOML reader time that grows with its square.
_DEEP_KEY = re.compile(r"""(?<![\w-])(?>(?:[\w-]++|"[^"\n]*+"|'[^'\n]*+')[ \t]*+\.[ \t]*+){30,}""")
_AT_LINE = re.compile(r"\(at line (\d+), column \d+\)")
_MAKE_TEXT = "Save it as plain text in UTF-8."


def read_problem(source: str | os.PathLike[str] | Mapping[str, object], *, name: str = "",
                 course: Mapping[str, object] | None = None) -> Problem:
    """The problem that a file, a TOML text (a str with a line break or "=") or a mapping states; all else is a path.

    `name` is what messages call a text or a mapping, and the place its paths are relative to. `course` holds keys of a
    course file that go before the file's own. Raises Fault.
    """
    top = opened(source, name)
    top.only(nouns.KEYS[""])
    title = top.text("title", "A milk jug, forearm level", LONGEST_TITLE)
    if not title:
        raise top.missing("title", "a title for the page", 'title = "A milk jug, forearm level"')
    top.table("vary")
    problem = Problem(filled(title, top.values), statement=filled(top.text("statement", "") or "", top.values), course=_course(top, course),
                      neglect=top.texts("neglect", "friction in the joint") or (), ask=top.texts("ask", "biceps") or (),
                      balanced=top.flag("balanced") is not False, file=top.origin.file,
                      burden=top.choice("burden", {each: each for each in BURDENS}) or BURDENS[0])
    sheet = _with_tables(problem, top)
    agreement.agree(sheet)
    _course_fits(sheet)
    asked.check(sheet)
    needs.check(sheet.problem, top.tables("mark"))
    return sheet.problem


def read_course(path: str | os.PathLike[str]) -> Course:
    """The course of a course file. Raises Fault."""
    fields = opened(Path(path), "")
    for key in fields.values:
        if key in nouns.KEYS[""] and key not in COURSE_KEYS:
            raise fields.fault(str(key), f"{key}, a key of a problem file", "a course file: how a class speaks and counts",
                               'word = "torque"', "Put the problem in a file of its own, with course = and this file's name.")
    return course_of(fields, Course())


def tables_of(path: str | os.PathLike[str]) -> Fields:
    """The keys of a TOML file as they stand, none of them read yet. Raises Fault where there is no such file, or where it is no TOML."""
    return opened(Path(path), "")


def _with_tables(problem: Problem, top: Fields) -> Sheet:
    tables = {kind: top.tables(kind) for kind in ("segment", "load", "muscle", "force", "couple")}
    pivot, person = top.table("pivot"), top.table("person")
    segments = tuple(map(nouns.segment, tables["segment"]))
    loads = tuple(map(nouns.load, tables["load"]))
    muscles, forces = (tuple(nouns.pull(kind, each) for each in tables[kind]) for kind in ("muscle", "force"))
    couples = tuple(map(nouns.couple, tables["couple"]))
    named: Mapping[str, tuple[Segment | Load | Pull | Couple, ...]] = {
        "segment": segments, "load": loads, "muscle": muscles, "force": forces, "couple": couples}
    whole = replace(
        problem, segments=segments, loads=loads, pulls=muscles + forces, couples=couples,
        marks=tuple(map(nouns.mark, top.tables("mark"))), pivot=nouns.pivot(pivot) if pivot else problem.pivot, person=nouns.person(person) if person else None)
    names = {kind: tuple(each.name for each in some) for kind, some in named.items()}
    return Sheet(whole, top, by_name(tables, names))


def course_keys(path: str | os.PathLike[str]) -> Mapping[str, object]:
    """The keys of a course file as they stand, after they have been read once: to go before a problem's own. Raises Fault that names the file."""
    fields = opened(Path(path), "")
    course_of(fields, Course())
    return fields.values


def _course(top: Fields, overlay: Mapping[str, object] | None) -> Course:
    base = Course()
    if isinstance(top.values.get("course"), str):
        base = _course_file(top, "course")
    elif (table := top.table("course")) is not None:
        if table.has("from"):
            base = _course_file(table, "from")
        own = {key: value for key, value in table.values.items() if key != "from"}
        base = course_of(replace(table, values=own), base)
    return course_of(Fields(overlay, Origin("the course given beside the file")), base) if overlay else base


def _course_file(fields: Fields, key: str) -> Course:
    said = fields.text(key, "course.toml") or ""
    path = Path(fields.origin.file).parent / said
    if not said or not _is_there(path):
        raise fields.fault(key, f'{shown(said)}, but there is no such file', "the path of a course file, from where this file is",
                           f'{key} = "course.toml"')
    return read_course(path)


def _is_there(path: Path) -> bool:
    """Whether there is such a file; a name that the system does not take names none."""
    try:
        return path.is_file()
    except (OSError, ValueError):
        return False


def _course_fits(sheet: Sheet) -> None:
    """Refuse axes along a segment that the problem does not have, and letters for names that nothing has."""
    course = sheet.top.table("course") if isinstance(sheet.top.values.get("course"), Mapping) else None
    where = course or sheet.top
    axes = sheet.problem.course.axes
    if axes and axes not in sheet.segments:
        key = "axes" if where.has("axes") else "course"
        raise unknown_name(where, key, axes, list(sheet.segments), "axes along and across one of the segments")
    names = {*sheet.tables, "reaction", "total"}
    own = course.table("symbols") if course else None
    for name in own.values if own else ():
        if name.strip().partition(".")[0] not in names and own:
            raise unknown_name(own, name, name, sorted(names), "a name of this problem")


def opened(source: str | os.PathLike[str] | Mapping[str, object], name: str) -> Fields:
    """The keys of a TOML file, a TOML text or a mapping, as they stand; `name` is what messages call it. Raises Fault."""
    if isinstance(source, Mapping):
        return Fields(source, Origin(name))
    if isinstance(source, str) and ("\n" in source or "=" in source):
        return _parsed(source.encode("utf-8", "surrogatepass"), name)
    file = os.fspath(source)
    try:
        with open(file, "rb") as stream:
            return _parsed(stream.read(MOST_BYTES + 1), name or file)
    except (OSError, ValueError) as error:
        why = getattr(error, "strerror", None) or "no path"
        raise _no_file(file, f"no file that can be read ({why.lower()})", "the path of a problem file") from None


def _parsed(data: bytes, file: str) -> Fields:
    if len(data) > MOST_BYTES:
        raise _no_file(file, f"more than {MOST_BYTES // 1_000_000} MB", "a problem of a few hundred lines at most")
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = data.count(b"\n", 0, error.start) + 1
        raise _no_file(file, f"a byte that is not UTF-8 ({data[error.start]:#04x})", "text in UTF-8", line, _MAKE_TEXT) from None
    return Fields(_toml(text, file), Origin(file, text))


def _toml(text: str, file: str) -> dict[str, object]:
    if deep := _DEEP_KEY.search(text):
        before = text.count("\n", 0, deep.start())
        raise _no_file(file, "a key of more than thirty parts", "keys of one or two parts", before + 1)
    try:
        return tomllib.loads(text)
    except RecursionError:
        raise _no_file(file, "lists or tables nested without end", "lists and tables nested two deep at most") from None
    except ValueError as error:
        at = _AT_LINE.search(str(error))
        line = int(at[1]) if at else len(text.splitlines()) if "end of document" in str(error) else None
        is_toml = not isinstance(error, tomllib.TOMLDecodeError)
        said = "a number of thousands of figures" if is_toml else _AT_LINE.sub("", str(error)).strip()
        raise _no_file(file, f"text that is not TOML: {said[:80]}",
                       "TOML: [tables], and lines with key = value, texts in quotation marks", line) from None


def _no_file(file: str, found: str, expected: str, line: int | None = None, advice: str = "") -> Fault:
    return Fault(file or "the problem as given", line, "", found, expected, 'title = "A milk jug, forearm level"', advice)
