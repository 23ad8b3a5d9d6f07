"""What a process of the desk does: texts in, elements out. The only module here that works problems.

Each task is of a closed set, and an address leads to one of them: none hands a student what another task makes. Nothing
that comes out for a student holds an answer, or a path of the machine.
"""

from __future__ import annotations

import re
from collections import OrderedDict
from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from functools import cached_property
from hashlib import sha256
from pathlib import Path
from typing import Any

from ..api import Walkthrough, read, slips, work
from ..document.passage import Answer, Caution, Heading, Judged, Page, Paragraph, Passage, Text
from ..errors import Fault, NoWay
from ..marking.judging.reading import Reader
from ..marking.report.page import ROUTE, open_questions, report
from ..marking.report.without_numbers import discreet
from ..marking.slips.verdict import LineVerdict, Marking
from ..problem.named_files import named_files
from ..walkthrough.exercise_sheet import student_sheet
from ..walkthrough.page import CAUTION
from ..write.html.elements import text as escaped
from ..write.html.pages import passages_html
from ..wording.statement import compose as statement
from .shelf import read_text
from .typed import echo

MOST_PROBLEMS = 24  # worked problems that a process keeps
HINTS = 3
_BARE = LineVerdict(
    0,
    "",
    "",
    "unclear",
    "Nothing in the lines above leads to this answer yet.",
    question="Which equation does it come from? Write that first.",
)
_LAST = re.compile(r"(?<=[.?!])\s+")
_reader = Reader()


@dataclass(eq=False)
class _Bench:
    """One problem, worked when it is first asked for; `stamp` is what its files were then."""

    path: Path
    root: str
    stamp: str

    @cached_property
    def walkthrough(self) -> Walkthrough:
        return work(self.path, root=self.root or None)


_benches: OrderedDict[tuple[str, str], _Bench] = OrderedDict()


def answer(asked: Mapping[str, Any]) -> dict[str, Any]:
    """The answer to a request; `op` is a task."""
    task = TASKS[asked["op"]]
    try:
        return task(asked)
    except Fault as fault:
        return {"fault": told_fault(fault)}
    except NoWay as stuck:
        return {"fault": {"found": stuck.message}}
    except BaseException:  # time or memory ran out: what was half made is not kept
        _benches.pop((str(asked.get("path", "")), str(asked.get("root", ""))), None)
        raise


def told_fault(fault: Fault) -> dict[str, Any]:
    """A fault by its parts, without the file it was met in."""
    return {
        name: value
        for name in ("line", "key", "found", "expected", "example", "advice")
        if (value := getattr(fault, name))
    }


def _bench(asked: Mapping[str, Any]) -> _Bench:
    path, root = Path(asked["path"]), str(asked.get("root", ""))
    key, stamp = (str(path), root), _stamp(path)
    bench = _benches.get(key)
    if bench is None or bench.stamp != stamp:
        bench = _benches[key] = _Bench(path, root, stamp)
    _benches.move_to_end(key)
    while len(_benches) > MOST_PROBLEMS:
        _benches.popitem(last=False)
    return bench


def _stamp(path: Path) -> str:
    """What tells a problem and the files that it names from themselves as they were."""
    mark = sha256()
    for each in (path, *(named_files(path) or ())):
        try:
            found = each.stat()
            mark.update(repr((str(each), found.st_mtime_ns, found.st_size)).encode())
        except OSError:
            mark.update(repr(str(each)).encode())
    return mark.hexdigest()


# ---------------------------------------------------------------------- for a student
def _about(asked: Mapping[str, Any]) -> dict[str, Any]:
    """What a problem asks for, in a few words; its fault where it has one."""
    try:
        read_text(Path(asked["path"]))
    except (OSError, ValueError):
        return {"fault": {"found": "a file that is no text, too large, or cannot be read"}}
    problem = read(Path(asked["path"]), root=asked.get("root") or None)
    return {"title": problem.title, "about": _LAST.split(statement(problem))[-1]}


def _problem(asked: Mapping[str, Any]) -> dict[str, Any]:
    """The statement, what is given, and what to find; no figure but where the problem says so."""
    walkthrough = _bench(asked).walkthrough
    passages: list[Passage] = list(student_sheet(walkthrough.outcome, diagram=0, working=0).passages)
    if walkthrough.problem.figure_shown and not any(each.unknown for each in _bearings(walkthrough)):
        passages.insert(1, walkthrough.picture())
    return {"title": walkthrough.title, "html": passages_html(passages, "figure"), "caution": _caution(walkthrough)}


def _bearings(walkthrough: Walkthrough) -> list[Any]:
    body = walkthrough.outcome.body
    return [*body.bearings.values(), *(each.bearing for each in body.forces if each.bearing)]


def _caution(walkthrough: Walkthrough) -> str:
    model = "plane, rigid and at rest" if walkthrough.problem.balanced else "plane and rigid"
    return escaped(CAUTION.format(model=model))


def _judge(asked: Mapping[str, Any]) -> dict[str, Any]:
    """The verdict on a working, for a student: one issue, the hints asked for, no answer.

    `slip` is for what a lecturer counts, and goes to no student. `for` is the line that the hints were asked for: of
    another first line that does not hold there are none yet.
    """
    walkthrough, text = _bench(asked).walkthrough, str(asked["text"])
    if not text.strip():
        return {"state": "empty", "said": "", "line": 0, "hints": 0, "html": "", "slip": ""}
    marking = without_bare(walkthrough.mark(text), walkthrough.marker.bare_answers(text))
    line = marking.first_wrong or 0
    hints = min(int(asked.get("hints", 0)), HINTS) if line and asked.get("for", line) in (0, line) else 0
    state, said = _state(marking, walkthrough)
    page = report(marking, walkthrough, "student", hints)
    html = passages_html(list(_shown(page, hints)), "judged")
    wrong = next((each for each in marking.lines if each.number == line and each.slips), None)
    slip = wrong.slips[0].slip if wrong is not None else ""
    return {"state": state, "said": said, "line": line, "hints": hints, "html": html, "slip": slip}


def without_bare(marking: Marking, bare: frozenset[int]) -> Marking:
    """The verdicts, where an answer that nothing leads to is neither right nor wrong: up to the first line that does
    not hold, behind which nothing is looked at.
    """
    stop = next((each.number for each in marking.lines if each.verdict == "slips" and each.number not in bare), 0)
    bare = frozenset(each for each in bare if not stop or each < stop)
    lines = tuple(
        replace(_BARE, number=each.number, text=each.text, read_as=each.read_as, part=each.part)
        if each.number in bare
        else each
        for each in marking.lines
    )
    return replace(marking, lines=lines, answers=tuple(each for each in marking.answers if each.line not in bare))


def _state(marking: Marking, walkthrough: Walkthrough) -> tuple[str, str]:
    """How the working stands, in a word and in a sentence."""
    if marking.first_wrong is not None:
        return "wrong", f"Line {marking.first_wrong} is the first that does not hold: look there."
    unclear = next((each for each in marking.lines if each.verdict == "unclear"), None)
    if unclear is not None:
        question = discreet(marking, walkthrough.outcome).words(f"{unclear.says} {unclear.question}".strip())
        return "unclear", f"Line {unclear.number} could not be followed. {question}".strip()
    if not any(each.verdict == "holds" for each in marking.lines):
        return "words", "No line of working was found yet: words only."
    bare = next((each for each in marking.answers if each.unit_missing), None)
    if bare is not None:
        return "going", f"Nothing wrong found so far. The answer in line {bare.line} has no unit yet."
    left = open_questions(marking, walkthrough.outcome)
    if left.startswith("All"):
        return "done", "Done: every line holds, and all that is asked for is there."
    return "going", f"Nothing wrong found so far. {left}"


def _shown(page: Page, hints: int) -> list[Passage]:
    """Of the report what a desk shows: the lines, with hints what to look at, and what is right already. The sentence
    above them is said by the page itself.
    """
    out: list[Passage] = []
    quiet = False
    for each in page.passages:
        match each:
            case Heading(level=1) | Answer() | Caution():
                continue
            case Paragraph(words) if any(getattr(piece, "text", "") == ROUTE for piece in words):
                continue
            case Heading(2, (Text(said),)):
                quiet = not hints and said.startswith("Line ")
        if not quiet or isinstance(each, Judged):
            out.append(each)
    return out


def _read(asked: Mapping[str, Any]) -> dict[str, Any]:
    """How each line of a working is read, as elements, by number."""
    lines = _reader.read(str(asked["text"]), bool(asked.get("inches")))
    return {"echo": [[each.number, echo(each)] for each in lines]}


def _slips(_: Mapping[str, Any]) -> dict[str, Any]:
    """What each slip is called."""
    return {"titles": {each.SLIP: each.SAYS.title for each in slips()}}


TASKS: Mapping[str, Callable[[Mapping[str, Any]], dict[str, Any]]] = {
    "about": _about,
    "problem": _problem,
    "judge": _judge,
    "read": _read,
    "slips": _slips,
}
