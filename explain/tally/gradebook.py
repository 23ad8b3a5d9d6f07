"""Marks for each student, as a table for the class's records. Decides no mark of a working: these come from the scheme;
an answer in a table earns one, what follows from an earlier wrong one too.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from ..errors import legible
from ..table import csv_file
from .attempts import who
from .entry import EARNS, Entry
from .page import Sheetful


def gradebook(of: Sheetful) -> bytes:
    """A row for each student by name, then those of the key who handed in nothing, then what is nobody's that is
    known. "open" are marks that a person decides about.
    """
    answers = () if of.tally.lines else of.answers
    head = ["student", "marks", "out of", *([] if answers else ["open"]), *answers, "attempts", "remark"]
    attempts: dict[object, int] = {}
    for each in (*of.tally.entries, *of.tally.further):
        attempts[who(each)] = attempts.get(who(each), 0) + 1
    rows = [_row(each, answers, str(attempts[who(each)])) for each in of.tally.entries]
    none = ["", "", *([""] if not answers else [""] * len(answers))]
    rows += [[name, *none, "0", "nothing handed in"] for name in of.absent]
    rows += [[_name(each), *none, "", each.trouble] for each in of.tally.strangers]
    return csv_file([head, *rows])


def _row(entry: Entry, answers: Sequence[str], attempts: str) -> list[str]:
    if entry.score is None or entry.trouble:
        return [_name(entry), "", "", *([""] if not answers else [""] * len(answers)), attempts, entry.trouble]
    score = entry.score
    parts = list(_parts(entry, answers)) if answers else [str(score.open or "")]
    return [_name(entry), str(score.earned), str(score.total), *parts, attempts, _remark(entry)]


def _parts(entry: Entry, answers: Sequence[str]) -> Iterator[str]:
    verdicts = {each.name: each.verdict for each in entry.said}
    yield from (str(int(verdicts[name] in EARNS)) if name in verdicts else "" for name in answers)


def _remark(entry: Entry) -> str:
    blank = [each.name for each in entry.said if each.verdict == "blank"]
    lines = f"{entry.unclear} lines not followed" if entry.unclear > 1 else "1 line not followed" * entry.unclear
    return "; ".join(filter(None, (f"blank: {', '.join(blank)}" if blank else "", lines)))


def _name(entry: Entry) -> str:
    return legible(entry.student) or f"place {entry.place}"
