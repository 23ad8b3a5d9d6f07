"""A person's last word on a line of a working, written into the problem file. Judges nothing, and writes no page."""

from __future__ import annotations

import os
import re
from pathlib import Path

from ...errors import Fault, shown
from ...input import PROBLEM, Door, Root, given, real_root
from ...output import put_whole
from ...problem.model import Accept
from ...problem.reader import opened, problem_of
from ...problem.toml_values import assigned
from ..judging import Marker
from ..slips.verdict import LineVerdict


def accepted_line(marker: Marker, text: str, number: int, because: str = "") -> Accept:
    """The line of a working that is to be accepted, with the lines it rests on. Raises Fault where there is none, or
    none that needs it.
    """
    marking = marker.mark(text)
    open_ = [each.number for each in marking.lines if each.verdict in ("slips", "unclear")]
    line = next((each for each in marking.lines if each.number == number), None)
    why = _why_not(line, number, len(marking.lines))
    if line is None or why:
        raise Fault(
            found=why,
            expected="the number of a line that does not hold or could not be followed",
            example=f"--accept {open_[0]}" if open_ else "",
            advice="" if open_ else "In this working there is none.",
        )
    texts = {each.number: each.text for each in marking.lines}
    after = tuple(" ".join(texts[each].split()) for each in marker.rests_on(text, number))
    return Accept(line.text.strip(), because, after)


def _why_not(line: LineVerdict | None, number: int, count: int) -> str:
    if line is None:
        return f"line {number} of a working of {count} {'line' if count == 1 else 'lines'}"
    if not line.text.strip():
        return f"line {number}, on which nothing is written"
    if line.accepted:
        return f"line {number}, which is accepted already"
    match line.verdict:
        case "aside":
            return f"line {number}, which is words or was replaced: {shown(line.text.strip())}"
        case "holds":
            return f"line {number}, which holds already"
        case "carried":
            return f"line {number}, which follows from {f'line {line.since}' if line.since else 'an earlier line'}"
    return ""


def put_accepted(path: Path, accept: Accept, root: Root = None) -> None:
    """Add an accepted line to a problem file, whole or not at all; all else in it is kept to the byte. Raises Fault."""
    real = Path(os.path.realpath(path))
    try:
        data = given(real, PROBLEM.most)
        writable = os.access(real, os.W_OK) and os.stat(real).st_mode & 0o222
    except (OSError, ValueError) as error:
        raise _unwritten(path, (getattr(error, "strerror", None) or str(error)).lower()) from None
    if not writable:
        raise _unwritten(path, "it may only be read")
    content = with_accept(data, accept)
    door = Door(os.fspath(path), real_root(root))
    before = problem_of(opened(data, os.fspath(path), door)).accepted
    try:
        after = problem_of(opened(content, os.fspath(path), door)).accepted
    except Fault as fault:
        raise _unwritten(path, fault.found, fault.expected) from None
    if after[:-1] != before:
        raise _unwritten(path, "its lines would not be read as they are now")
    try:
        put_whole(real, content)
    except Fault as fault:
        raise _unwritten(path, fault.found) from None


def with_accept(data: bytes, accept: Accept) -> bytes:
    """A problem file with one more table at its end, in its own line ends."""
    table: dict[str, object] = {"line": accept.line}
    table |= {"because": accept.because} if accept.because else {}
    table |= {"after": accept.after} if accept.after else {}
    end = "\r\n" if re.search(rb"\r\n", data) else "\n"
    gap = "" if not data or data.endswith(b"\n") else end
    return data + (gap + end + end.join(("[[accept]]", *assigned(table))) + end).encode()


def _unwritten(path: Path, why: str, expected: str = "") -> Fault:
    return Fault(
        os.fspath(path),
        found=f"a problem file that the line cannot be added to: {why}",
        expected=expected or "a problem file that can be written",
        example='[[accept]] and, below it, line = "F*4*sin70 = 39.24*32"',
        advice="Nothing was changed.",
    )
