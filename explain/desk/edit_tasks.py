"""What a process does for the page of a tutor: a problem text worked and drawn, or changed in one place and then worked
and drawn. A pool of its own, so that no address of a student's leads here.
"""

from __future__ import annotations

import os
import pickle
import tomllib
from collections.abc import Callable, Mapping
from decimal import Decimal, InvalidOperation
from typing import Any

from ..api import work
from ..document.passage import Heading, Page, Passage, Picture
from ..errors import Fault, NoWay
from ..problem.put_back import NotPut, add_table, cut_table, put
from ..problem.toml_lines import Path
from ..problem.turned import turned
from ..write.figure.free_body import Parted, parted
from ..write.html.pages import passages_html
from .form_fields import LONE, begun, form_of, meant
from .pages import fault as fault_html
from .tasks import told_fault
from .turning import handles

NO_BREAK = "\u00a0"
_OWN = ("", "the problem as given")  # what a fault calls the text itself
_drawn: list[tuple[bytes, Parted]] = []  # the last figure: most changes of a text leave it as it is


def answer(asked: Mapping[str, Any]) -> dict[str, Any]:
    """The answer to a request; `op` is a task. A change that cannot be made is answered with why: `kept`."""
    try:
        text = TASKS[asked["op"]](asked)
    except NotPut as why:
        return {"kept": str(why)}
    changed = {} if asked["op"] == "redraw" else {"text": text}
    return {**changed, **_shown(text, str(asked["root"]))}


# ---------------------------------------------------------------------- changes
def _put(asked: Mapping[str, Any]) -> str:
    text, path = str(asked["text"]), _path(asked)
    return put(text, path, meant(_keys(text), path, str(asked["value"])))


def _turn(asked: Mapping[str, Any]) -> str:
    text, path = str(asked["text"]), _path(asked)
    there: Any = _keys(text)
    try:
        for step in path:
            there = there[step]
        new = turned(there, Decimal(str(asked["degrees"]))) if isinstance(there, str) else None
    except (KeyError, IndexError, TypeError, InvalidOperation):
        new = None
    if new is None:
        raise NotPut("There is no plain angle in this direction.")
    return put(text, path, new)


def _add(asked: Mapping[str, Any]) -> str:
    text, kind = str(asked["text"]), str(asked["kind"])
    table = begun(_keys(text), kind)
    if table is None:
        raise NotPut("There is no such part.")
    return add_table(text, kind, table, many=kind not in LONE)


def _cut(asked: Mapping[str, Any]) -> str:
    return cut_table(str(asked["text"]), _path(asked))


def _path(asked: Mapping[str, Any]) -> Path:
    path = asked["path"]
    if not isinstance(path, list) or not 0 < len(path) < 9:
        raise NotPut("There is no such place in the file.")
    if not all(isinstance(step, str) or (isinstance(step, int) and not isinstance(step, bool)) for step in path):
        raise NotPut("There is no such place in the file.")
    return tuple(path)


def _keys(text: str) -> dict[str, Any]:
    """What a text says. Raises NotPut where it is no TOML."""
    try:
        return tomllib.loads(text)
    except (ValueError, RecursionError):
        raise NotPut("The file is not TOML just now: mend it first.") from None


TASKS: Mapping[str, Callable[[Mapping[str, Any]], str]] = {
    "redraw": lambda asked: str(asked["text"]),
    "put": _put,
    "turn": _turn,
    "add": _add,
    "cut": _cut,
}


# ---------------------------------------------------------------------- what is shown of a text
def _shown(text: str, root: str) -> dict[str, Any]:
    """Fields, figure, handles and walkthrough of a text; or its fault, and the fields where they can be had."""
    try:
        keys: dict[str, Any] | None = _keys(text)
    except NotPut:
        keys = None
    out: dict[str, Any] = {}
    if keys is not None:
        out = form_of(keys)._asdict()
    try:
        walkthrough = work(text + "\n", root=root)  # with a line's end it is a text, never the name of a file
        page = walkthrough.page
    except Fault as fault:
        return {**out, **_faulted(fault)}
    except NoWay as stuck:
        what = {"found": stuck.message.rstrip(".")}
        return {**out, "fault": what, "told": fault_html(what), "said": "No way through to the answers was found."}
    drawn = _figure(walkthrough.picture())
    answers = {name: walkthrough.answers[name].shown for name, _ in walkthrough.outcome.working.asked}
    told = ", ".join(f"{name} {shown.replace(' ', NO_BREAK)}" for name, shown in answers.items())
    needs = " A check needs a look." if walkthrough.needs_a_person else ""
    return {
        **out,
        "title": walkthrough.title,
        "figure": drawn.svg,
        "size": [drawn.width, drawn.height],
        "handles": handles(walkthrough, keys or {}, drawn),
        "html": passages_html(_below_title(page), "worked"),
        "said": f"Drawn as the file stands: {told}.{needs}",
    }


def _below_title(page: Page) -> list[Passage]:
    """The passages of a page without its title and its figure, which stand elsewhere."""
    return [each for each in page.passages if not isinstance(each, Picture | Heading) or getattr(each, "level", 1) > 1]


def _figure(picture: Picture) -> Parted:
    """The figure; the last one where all of the picture is as it was, to each figure of its numbers: 30.0 is not 30."""
    shape = pickle.dumps(picture)
    if not _drawn or _drawn[0][0] != shape:
        _drawn[:] = [(shape, parted(picture, "free-body"))]
    return _drawn[0][1]


def forget() -> None:
    """Draw the next figure anew, whatever it is."""
    _drawn.clear()


def _faulted(fault: Fault) -> dict[str, Any]:
    """A fault by its parts; of a file that the text names, with the name of that and no line to go to."""
    told = told_fault(fault)
    place = f"Line {fault.line}" if fault.line else "The file"
    if fault.file not in _OWN:
        other = os.path.basename(fault.file)
        told["key"] = f"{other}{f', line {fault.line}' if fault.line else ''}{': ' if fault.key else ''}{fault.key}"
        told.pop("line", None)
        place = other
    return {"fault": told, "told": fault_html(told), "said": f"{place} has a fault."}
