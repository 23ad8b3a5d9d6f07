"""What a desk keeps of workings, where it was asked to: one SQLite file with how far each got, and no name, no address,
no time of day. The lines themselves only where that was asked for too, under a code that the student sees.
"""

from __future__ import annotations

import secrets
import sqlite3
from collections import OrderedDict
from collections.abc import Mapping
from contextlib import closing
from datetime import date, timedelta
from pathlib import Path
from typing import Any, NamedTuple

from ..errors import Fault, shown

DAYS = 30
MOST_VISITS = 10_000  # pages whose attempt is remembered, so that one working is one row
_TABLES = """
create table if not exists attempt(id integer primary key, day text not null, problem text not null,
    variant text not null, lines integer not null, first_wrong integer not null, slip text not null,
    hints integer not null, done integer not null);
create table if not exists typed(code text primary key, attempt integer not null references attempt(id)
    on delete cascade, text text not null);
"""


class Attempt(NamedTuple):
    """How far a working got: how many lines, the first that does not hold (0 for none), the likeliest slip there, the
    hints that were taken, whether it is done.
    """

    lines: int
    first_wrong: int
    slip: str
    hints: int
    done: bool


class Count(NamedTuple):
    """What a class did with one problem: how many tried, how many are done, and of the others at which line they stop
    and by which slip, the commonest first.
    """

    problem: str
    tried: int
    done: int
    lines: tuple[tuple[int, int], ...]
    slips: tuple[tuple[str, int], ...]


class Kept:
    """The file. Used by one thread at a time. Raises sqlite3.Error where the file cannot be written."""

    def __init__(self, path: Path, days: int = DAYS, lines: bool = False) -> None:
        try:
            self._file = sqlite3.connect(path, check_same_thread=False, timeout=5)
            self._file.execute("pragma journal_mode = wal")
            self._file.execute("pragma foreign_keys = on")
            self._file.executescript(_TABLES)
        except sqlite3.Error as error:
            raise Fault(
                found=f"{shown(str(path))}, which cannot be kept in ({error})",
                expected="a new file, or one that a desk has kept in",
                example="--keep class.sqlite",
            ) from None
        self.days, self.with_lines = days, lines
        self._visits: OrderedDict[str, int] = OrderedDict()
        self._tidied = ""

    def close(self) -> None:
        self._file.close()

    def note(self, problem: str, variant: str, visit: str, attempt: Attempt, text: str = "") -> str:
        """Keep how far a working has got. `visit` is a random word of the page, kept in memory alone: what comes again
        with it goes into the same row. Gives the code that the lines are kept under, "" where they are not.
        """
        today = date.today().isoformat()
        with self._file:
            self._tidy(today)
            row = self._visits.get(visit) if visit else None
            values = (*attempt[:4], int(attempt.done))
            if row is not None:
                found = self._file.execute(
                    "update attempt set lines = ?, first_wrong = ?, slip = ?, hints = max(hints, ?), done = ? "
                    "where id = ?",
                    (*values, row),
                )
                row = row if found.rowcount else None
            if row is None:
                found = self._file.execute(
                    "insert into attempt(day, problem, variant, lines, first_wrong, slip, hints, done) "
                    "values (?, ?, ?, ?, ?, ?, ?, ?)",
                    (today, problem, variant, *values),
                )
                row = int(found.lastrowid or 0)
            self._remember(visit, row)
            return self._keep_lines(row, text) if self.with_lines else ""

    def _remember(self, visit: str, row: int) -> None:
        if visit:
            self._visits[visit] = row
            self._visits.move_to_end(visit)
            while len(self._visits) > MOST_VISITS:
                self._visits.popitem(last=False)

    def _keep_lines(self, row: int, text: str) -> str:
        known = self._file.execute("select code from typed where attempt = ?", (row,)).fetchone()
        code = known[0] if known else secrets.token_urlsafe(9)
        self._file.execute("insert or replace into typed(code, attempt, text) values (?, ?, ?)", (code, row, text))
        return str(code)

    def forget(self, code: str) -> bool:
        """Delete the lines that are kept under a code; whether there were any."""
        with self._file:
            return bool(self._file.execute("delete from typed where code = ?", (code,)).rowcount)

    def _tidy(self, today: str) -> None:
        """Once a day, what is older than it may be goes."""
        if self._tidied != today:
            oldest = (date.fromisoformat(today) - timedelta(days=self.days)).isoformat()
            self._file.execute("delete from attempt where day < ?", (oldest,))
            self._tidied = today

    def counts(self) -> list[Count]:
        """By problem, what a class did."""
        rows = self._file.execute("select problem, first_wrong, slip, done, count(*) from attempt group by 1, 2, 3, 4")
        found: dict[str, list[tuple[int, str, bool, int]]] = {}
        for problem, line, slip, done, number in rows:
            found.setdefault(problem, []).append((line, slip, bool(done), number))
        return [_count(problem, each) for problem, each in sorted(found.items())]


def _count(problem: str, rows: list[tuple[int, str, bool, int]]) -> Count:
    lines: dict[int, int] = {}
    slips: dict[str, int] = {}
    for line, slip, _, number in rows:
        if line:
            lines[line] = lines.get(line, 0) + number
        if line and slip:
            slips[slip] = slips.get(slip, 0) + number
    return Count(
        problem,
        sum(number for *_, number in rows),
        sum(number for *_, done, number in rows if done),
        tuple(sorted(lines.items())),
        tuple(sorted(slips.items(), key=lambda each: (-each[1], each[0]))),
    )


def kept_lines(path: Path, problem: str) -> Mapping[str, str]:
    """By code, the lines that were kept of a problem. Raises Fault where the file is none that a desk keeps in, or has
    no lines.
    """
    try:
        with closing(sqlite3.connect(f"{path.resolve().as_uri()}?mode=ro", uri=True)) as file:
            rows: list[Any] = file.execute(
                "select code, text from typed join attempt on attempt.id = typed.attempt where problem = ? "
                "order by attempt.id",
                (problem,),
            ).fetchall()
    except sqlite3.Error:
        raise Fault(
            file=str(path), found="no file that a desk has kept in", expected="what explain desk --keep wrote"
        ) from None
    if not rows:
        raise Fault(
            file=str(path),
            found=f"no lines of {shown(problem)}",
            expected="lines that were kept",
            example="explain desk FOLDER --keep class.sqlite --keep-lines",
            advice="Without --keep-lines a desk keeps counts alone: its page /class shows them.",
        )
    return dict(rows)
