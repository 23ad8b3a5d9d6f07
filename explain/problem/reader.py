"""Problem files and course files: from a path, a text or a mapping to a Problem or a Course. Knows which table is
which noun.
"""

from __future__ import annotations

import os
import re
import tomllib
from collections.abc import Mapping
from dataclasses import replace
from pathlib import Path

from . import answer_names, consistency, mark_rows, problem_tables
from .course import Course
from .course_file import COURSE_KEYS, course_of
from ..input import COURSE, SHUT, Door, Kind, Root, given, real_root
from ..errors import Fault, nearest
from .other_words import OTHER_WORDS
from .toml_slips import slip_in
from .toml_values import key_text
from .toml_table import Fields, Origin
from .model import BURDENS, Couple, Load, Problem, Pull, Segment
from .source_tables import Sheet, by_name, unknown_name
from .placeholders import filled

MOST_BYTES = 1_000_000
LONGEST_TITLE = 300
Source = str | os.PathLike[str] | Mapping[str, object]
# A dotted key of many parts takes the TOML reader time that grows with its square.
_DEEP_KEY = re.compile(r"""(?<![\w-])(?>(?:[\w-]++|"[^"\n]*+"|'[^'\n]*+')[ \t]*+\.[ \t]*+){30,}""")
_AT_LINE = re.compile(r"\(at line (\d+), column \d+\)")
_TOML = "TOML: [tables], and lines with key = value, texts in quotation marks"
_GIVEN = "the problem as given"
_MAKE_TEXT = "Save it as plain text in UTF-8."


ITEMS = ("person", "segment", "load", "muscle", "force", "couple")  # tables of what has data


def read_problem(
    source: Source, *, name: str = "", course: Mapping[str, object] | None = None, door: Door | None = None
) -> Problem:
    """The problem that a file, a TOML text (a str with a line break or "=") or a mapping states; all else is a path.

    `name` is what messages call a text or a mapping. `course` holds keys of a course file that go before the file's
    own. `door` is the way to the
    files that it names: without one, those of a path lie about that path, and a text or a mapping has none. Raises
    Fault.
    """
    return problem_of(opened(source, name, door), course)


def problem_of(top: Fields, course: Mapping[str, object] | None = None) -> Problem:
    """The problem of a problem file's keys; `course` goes before its own. Raises Fault."""
    top.only(problem_tables.KEYS[""], OTHER_WORDS[""])
    title = top.text("title", "A milk jug, forearm level", LONGEST_TITLE)
    if not title:
        raise top.missing("title", "a title for the page", 'title = "A milk jug, forearm level"')
    top.table("vary")
    problem = Problem(
        filled(title, top.values),
        statement=filled(top.text("statement", "") or "", top.values),
        course=_course(top, course),
        neglect=top.texts("neglect", "friction in the joint") or (),
        ask=top.texts("ask", "biceps") or (),
        balanced=top.flag("balanced") is not False,
        figure_shown=top.choice("figure", {"shown": True, "hidden": False}) is True,
        file=top.origin.file,
        burden=top.choice("burden", {each: each for each in BURDENS}) or BURDENS[0],
        tables=tuple(key for key in top.values if key in ITEMS),
    )
    sheet = _with_tables(problem, top)
    consistency.agree(sheet)
    _course_fits(sheet)
    answer_names.check(sheet)
    return replace(sheet.problem, marks=mark_rows.settled(sheet.problem, top.tables("mark")))


def _course_in(fields: Fields) -> Course:
    for key in fields.values:
        if key in problem_tables.KEYS[""] and key not in COURSE_KEYS:
            raise fields.fault(
                str(key),
                f"{key}, a key of a problem file",
                "a course file: how a class speaks and counts",
                'word = "torque"',
                "Put the problem in a file of its own, with course = and this file's name.",
            )
    return course_of(fields, Course())


def tables_of(path: str | os.PathLike[str], root: str = "") -> Fields:
    """The keys of a TOML file as they stand, none of them read yet. Raises Fault where there is no such file, or
    where it is no TOML.
    """
    return opened(Path(path), "", Door(os.fspath(path), root))


def named_file(fields: Fields, key: str, name: str, kind: Kind, example: str) -> Fields:
    """The keys of the TOML file that a key names. Raises Fault, which quotes nothing of a file that is no TOML."""
    door = fields.origin.door.behind(name)
    data = fields.file(key, name, kind, example)
    return _parsed(data, Origin(door.file, door=door, named=True))


def _with_tables(problem: Problem, top: Fields) -> Sheet:
    tables = {kind: top.tables(kind) for kind in ("segment", "load", "muscle", "force", "couple")}
    pivot, person = top.table("pivot"), top.table("person")
    segments = tuple(map(problem_tables.segment, tables["segment"]))
    loads = tuple(map(problem_tables.load, tables["load"]))
    muscles, forces = (tuple(problem_tables.pull(kind, each) for each in tables[kind]) for kind in ("muscle", "force"))
    couples = tuple(map(problem_tables.couple, tables["couple"]))
    named: Mapping[str, tuple[Segment | Load | Pull | Couple, ...]] = {
        "segment": segments,
        "load": loads,
        "muscle": muscles,
        "force": forces,
        "couple": couples,
    }
    whole = replace(
        problem,
        segments=segments,
        loads=loads,
        pulls=muscles + forces,
        couples=couples,
        marks=tuple(map(problem_tables.mark, top.tables("mark"))),
        accepted=tuple(map(problem_tables.accept, top.tables("accept"))),
        pivot=problem_tables.pivot(pivot) if pivot else problem.pivot,
        person=problem_tables.person(person) if person else None,
    )
    names = {kind: tuple(each.name for each in some) for kind, some in named.items()}
    return Sheet(whole, top, by_name(tables, names))


def course_keys(path: str | os.PathLike[str]) -> Mapping[str, object]:
    """The keys of a course file as they stand, after they have been read once: to go before a problem's own. Raises
    Fault that names the file.
    """
    return checked(opened(Path(path), ""))


def named_course(fields: Fields, key: str = "course") -> Mapping[str, object]:
    """The keys of the course file that a key names, after they have been read once. Raises Fault."""
    return checked(named_file(fields, key, fields.text(key, "course.toml") or "", COURSE, f'{key} = "course.toml"'))


def checked(fields: Fields) -> Mapping[str, object]:
    course_of(fields, Course())
    return fields.values


def _course(top: Fields, overlay: Mapping[str, object] | None) -> Course:
    base = Course()
    if isinstance(top.values.get("course"), str):
        base = _course_file(top, "course")
    elif (table := top.table("course")) is not None:
        if table.has("from"):
            base = _course_file(table, "from")
        if table.has("g") and top.has("g"):
            raise top.fault("g", "g here and in [course] too", "g in one of the two", 'g = "9.81 m/s^2"')
        own = {key: value for key, value in table.values.items() if key != "from"}
        base = course_of(replace(table, values=own), base)
    base = replace(base, g=top.quantity("g", "acceleration") or base.g)
    return course_of(Fields(overlay, Origin("the course given beside the file")), base) if overlay else base


def _course_file(fields: Fields, key: str) -> Course:
    return _course_in(named_file(fields, key, fields.text(key, "course.toml") or "", COURSE, f'{key} = "course.toml"'))


def _course_fits(sheet: Sheet) -> None:
    """Refuse axes along a segment that the problem does not have, and letters for names that nothing has."""
    course = sheet.top.table("course") if isinstance(sheet.top.values.get("course"), Mapping) else None
    where = course or sheet.top
    axes = sheet.problem.course.axes
    if axes and axes not in sheet.segments:
        key = "axes" if where.has("axes") else "course"
        fault = unknown_name(where, key, axes, list(sheet.segments), "axes along and across one of the segments")
        example = fault.example.replace(f'{key} = "', 'axes = "along and across the ')
        raise fault.placed(fault.file, fault.line, fault.key, example)
    names = {*sheet.tables, "reaction", "total"}
    own = course.table("symbols") if course else None
    for name in own.values if own else ():
        if name.strip().partition(".")[0] not in names and own:
            fault = unknown_name(own, name, name, sorted(names), "a name of this problem")
            example = f'{key_text(nearest(name, names) or min(names))} = "{own.values[name]}"'
            raise fault.placed(fault.file, fault.line, fault.key, example)


def _is_text(source: Source) -> bool:
    return isinstance(source, str) and ("\n" in source or "=" in source)


def door_of(source: Source, root: Root) -> Door:
    """The door of a path, or of a text or mapping: that leads nowhere without a root, and on from the root where
    there is one. Raises Fault.
    """
    folder = real_root(root)
    if isinstance(source, str | os.PathLike) and not _is_text(source):
        return Door(os.fspath(source), folder)
    return Door(os.path.join(folder, ""), folder) if folder else SHUT


def opened(source: Source | bytes, name: str, door: Door | None = None, named: bool = False) -> Fields:
    """The keys of a TOML file, a TOML text or a mapping, as they stand; `name` is what messages call it. Raises Fault.

    Of a text that another file `named`, nothing is quoted before it is known to be what was expected.
    """
    if isinstance(source, Mapping):
        return Fields(source, Origin(name, door=door or SHUT, named=named))
    if isinstance(source, str) and _is_text(source):
        source = source.encode("utf-8", "surrogatepass")
    if isinstance(source, bytes):
        return _parsed(source, Origin(name, door=door or SHUT, named=named))
    file = os.fspath(source)
    try:
        data = given(file, MOST_BYTES)
    except (OSError, ValueError) as error:
        why = getattr(error, "strerror", None) or "no path"
        found = f"no file that can be read ({why.lower()})"
        raise Fault(file, found=found, expected="the path of a problem file", example="jug.toml") from None
    return _parsed(data, Origin(name or file, door=door or Door(file)))


def _parsed(data: bytes, origin: Origin) -> Fields:
    if len(data) > MOST_BYTES:
        raise _no_file(
            origin.file, f"more than {MOST_BYTES // 1_000_000} MB", "a problem of a few hundred lines at most"
        )
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = data.count(b"\n", 0, error.start) + 1
        which = "" if origin.named else f" ({data[error.start]:#04x})"
        raise _no_file(origin.file, f"a byte that is not UTF-8{which}", "text in UTF-8", line, _MAKE_TEXT) from None
    return Fields(_toml(text, origin), replace(origin, text=text))


def _toml(text: str, origin: Origin) -> dict[str, object]:
    file = origin.file
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
        slip = None if is_toml or origin.named or line is None else slip_in(text, line)
        if slip is not None:
            told = f"text that is not TOML: {slip.found} ({said[:80]})"
            raise Fault(file or _GIVEN, line, slip.key, told, _TOML, slip.example, slip.advice) from None
        raise _no_file(
            file,
            "text that is not TOML" if origin.named else f"text that is not TOML: {said[:80]}",
            _TOML,
            line,
        ) from None


def _no_file(file: str, found: str, expected: str, line: int | None = None, advice: str = "") -> Fault:
    return Fault(file or _GIVEN, line, "", found, expected, 'title = "A milk jug, forearm level"', advice)
