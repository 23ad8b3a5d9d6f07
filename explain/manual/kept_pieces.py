"""Pieces of a book on paper, laid out or kept from the last build. Trusts no file: what is not whole, or not made from
the same passages by this version, is not there.
"""

from __future__ import annotations

import json
from collections.abc import Callable, Iterable, Iterator, Sequence
from contextlib import suppress
from hashlib import sha256
from importlib.metadata import version
from pathlib import Path
from typing import NamedTuple

from ..errors import BROKEN, Fault
from ..jobs.pool import Trouble, each
from ..output import put_whole
from ..write.pdf.pieces import Laid, Mark, Piece
from . import record_json
from .cache import PIECE, program

PRELOAD = ("explain.manual.kept_pieces", "explain.write.pdf.set_piece")
Watch = Callable[[Iterable[Laid | Trouble], int], Iterable[Laid | Trouble]]
_SETTERS = ("weasyprint", "pydyf", "ziamath")  # another release of these sets pages otherwise
_MARK = b"piece of a book 1\n"


class PieceTask(NamedTuple):
    """A piece to be laid out and kept: in the file `name` of a folder, "" for nowhere."""

    piece: Piece
    folder: str
    name: str


def setter(folder: str, kind: str, jobs: int, watch: Watch) -> Callable[[Sequence[Piece]], Iterator[Laid]]:
    """Lays out all pieces, as many at a time as there are processes; `kind` tells the books of one folder apart, and
    of each only the last is kept.
    """

    def set_all(pieces: Sequence[Piece]) -> Iterator[Laid]:
        tasks = [PieceTask(each, folder, f"{_digest(each)}-{kind}{PIECE}" if folder else "") for each in pieces]
        found: dict[int, Laid | Trouble | None] = {place: _kept(task) for place, task in enumerate(tasks)}
        missing = [place for place, laid in found.items() if laid is None]
        results = each(set_one, [tasks[place] for place in missing], jobs, chunk=1, preload=PRELOAD)
        found.update(zip(missing, watch(results, len(missing)) if missing else (), strict=True))
        _forget(folder, kind, {task.name for task in tasks})
        for laid in found.values():
            if isinstance(laid, Trouble):
                raise (Fault(found=laid.message) if laid.code != BROKEN else RuntimeError(laid.message))
            assert laid is not None
            yield laid

    return set_all


def set_one(task: PieceTask) -> Laid:
    """A piece laid out, and kept on disk: what a process of the crew does."""
    from ..write.pdf.set_piece import set_piece

    laid = set_piece(task.piece)
    if task.name:
        marks = json.dumps([laid.pages, laid.marks], separators=(",", ":")).encode()
        body = marks + b"\n" + laid.data
        with suppress(Fault):
            put_whole(Path(task.folder) / task.name, _MARK + sha256(task.name.encode() + body).digest() + body)
    return laid


def _digest(piece: Piece) -> str:
    said = json.dumps([program(), *map(version, _SETTERS), *piece[2:]]).encode()
    parts = (*piece.parts, *((piece.behind,) if piece.behind else ()))
    return sha256(said + b"".join(b"\0" + record_json.packed(part) for part in parts)).hexdigest()[:32]


def _kept(task: PieceTask) -> Laid | None:
    if not task.name:
        return None
    try:
        data = (Path(task.folder) / task.name).read_bytes()
    except OSError:
        return None
    body = data[len(_MARK) + 32 :]
    if not data.startswith(_MARK) or data[len(_MARK) : len(_MARK) + 32] != sha256(task.name.encode() + body).digest():
        return None
    said, _, content = body.partition(b"\n")
    pages, marks = json.loads(said)
    return Laid(content, pages, tuple(Mark(*mark) for mark in marks))


def _forget(folder: str, kind: str, names: set[str]) -> None:
    """Take away the pieces of the last build that are of no use to the next."""
    if folder:
        for path in Path(folder).glob(f"*-{kind}{PIECE}"):
            if path.name not in names:
                with suppress(OSError):
                    path.unlink()
