"""From blocks to tasks: which conventions go before a problem's own, and what it is made from, as one key. Works
nothing out.
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from hashlib import sha256
from pathlib import Path

from ..input import COURSE, TABLE, Door, Kind
from ..errors import Fault
from ..problem.reader import opened
from .blocks import Block
from .book import Book
from .cache import program
from .editions import Edition
from .task import Task


def task_of(block: Block, book: Book, edition: Edition, form: str, folder: str) -> Task:
    """The task of a block. A text that is no TOML is a task too: its fault is reported when it is worked."""
    values = _values(block)
    own = values.get("course")
    keys = own if isinstance(own, Mapping) else {}
    told = {*keys, *(("g",) if "g" in values else ())}
    overlay = {key: value for key, value in book.course.items() if key not in told}
    figures = f"{book.file.stem}-figures"
    said = json.dumps([overlay, dict(book.course), book.diagram, book.working], sort_keys=True, default=str)
    made_from = (
        program(),
        block.label,
        figures,
        block.text.strip(),
        said,
        *_files(values, Door(str(block.file), book.door.root)),
    )
    key = sha256("\0".join(made_from).encode("utf-8", "surrogateescape")).hexdigest()[:32]
    file = block.file if block.file.is_absolute() else Path.cwd() / block.file
    return Task(
        block.label,
        block.text,
        _shortest(file),
        book.course,
        overlay,
        book.diagram,
        book.working,
        form,
        figures,
        edition.pages,
        key,
        folder,
        book.door.root,
        block.file != block.chapter,
    )


def _shortest(file: Path) -> str:
    """A path that messages can show: from here where it is below."""
    return str(file.relative_to(Path.cwd())) if file.is_relative_to(Path.cwd()) else str(file)


def _values(block: Block) -> Mapping[str, object]:
    try:
        return opened(block.text, str(block.file)).values
    except Fault:
        return {}


def _files(values: Mapping[str, object], door: Door) -> list[str]:
    """Digests of the files that a problem names: its course and its own segment table."""
    course, person = values.get("course"), values.get("person")
    named = ((course if isinstance(course, str) else _text(course, "from"), COURSE), (_text(person, "table"), TABLE))
    return [_digest(door, name, kind) if name else "" for name, kind in named]


def _text(table: object, key: str) -> str:
    found = table.get(key) if isinstance(table, Mapping) else None
    return found if isinstance(found, str) else ""


def _digest(door: Door, name: str, kind: Kind) -> str:
    try:
        return sha256(door.read(name, kind)).hexdigest()
    except Fault:
        return "none"
