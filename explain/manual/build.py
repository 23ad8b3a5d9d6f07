"""A book from its files: reads, numbers, works what is not kept yet, binds. Writes nothing but the cache."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from hashlib import sha256
from pathlib import Path
from typing import NamedTuple

from ..errors import AT_FAULT
from ..jobs.pool import Trouble, each
from ..input import Door
from ..document.volume import Volume
from .binding import Sheets, bind
from .blocks import Block
from .book import Book, read_book
from .cache import Cache
from .chapters import missing_chapter, read_chapter
from .editions import EDITIONS
from .errata import Known, errata, keep_build, last_build
from .numbering import Number, anchors, numbered
from .task import Task, Worked
from .tasks import task_of
from .worker import PRELOAD, work_one

_FEW = 3  # so many problems are worked sooner than a second process begins
Watch = Callable[[Iterable[Worked | Trouble], int], Iterable[Worked | Trouble]]


class Order(NamedTuple):
    """What is wanted of a book. `edition` "" is the one that the book names; `folder` keeps worked problems, "" keeps
    none.

    No name leads out of the folder `root`, "" for none.
    """

    file: Path
    form: str
    edition: str = ""
    only: str = "all"
    jobs: int = 0
    folder: str = ""
    root: str = ""


class Built(NamedTuple):
    """A bound book and what is to be reported of its making. `figures` are the files for the folder beside a Markdown
    book.
    """

    book: Book
    volume: Volume
    figures: Mapping[str, str]
    fresh: int
    kept: int
    troubles: tuple[tuple[str, Trouble], ...]
    failing: tuple[str, ...]
    known: Mapping[str, Known]
    errata: tuple[str, ...] | None
    keys: frozenset[str]

    def __repr__(self) -> str:
        count = f"{self.fresh + self.kept} problems, {len(self.troubles)} in trouble"
        return f"<Built {self.volume.title!r}: {count}>"


def build(order: Order, watch: Watch = lambda results, length: results) -> Built:
    """Make a book. Raises Fault for a fault of the book or a chapter; one of a problem is among the `troubles`."""
    book = read_book(order.file, order.root)
    edition = EDITIONS[order.edition or book.edition]
    chapters = [
        missing_chapter(path) if path in book.missing else read_chapter(path, data, Door(str(path), order.root))
        for path, data in book.chapters
    ]
    numbers = numbered(chapters, book.numbering)
    named = anchors(chapters, numbers)
    blocks = [piece for chapter in chapters for piece in chapter.content if isinstance(piece, Block)]
    unread = {block.label: Trouble(block.trouble, AT_FAULT) for block in blocks if block.trouble}
    tasks = [task_of(block, book, edition, order.form, order.folder) for block in blocks if not block.trouble]
    found, fresh = _worked(tasks, order, watch)
    worked = {block.label: unread.get(block.label) or found[block.label] for block in blocks}
    before = last_build(order.folder, _made_as(order, book))
    known = dict(_known(blocks, worked, numbers, before or {}))
    volume = bind(Sheets(book, chapters, numbers, named, worked, edition, order.only))
    labels = {part.anchor for part in volume.parts if part.kind == "problem"}
    figures = {
        name: svg
        for label, found in worked.items()
        if isinstance(found, Worked) and label in labels
        for name, svg in found.figures
    }
    troubles = tuple((label, found) for label, found in worked.items() if isinstance(found, Trouble))
    failing = tuple(label for label, found in worked.items() if isinstance(found, Worked) and found.facts.failing)
    return Built(
        book,
        volume,
        figures,
        fresh,
        len(tasks) - fresh,
        troubles,
        failing,
        known,
        None if before is None else tuple(errata(before, known)),
        frozenset(task.key for task in tasks),
    )


def _worked(tasks: Sequence[Task], order: Order, watch: Watch) -> tuple[dict[str, Worked | Trouble], int]:
    """Every problem by its label, in order, and how many of them were not kept."""
    cache = Cache(order.folder)
    found: dict[str, Worked | Trouble | None] = {task.label: cache.read(task.written_key) for task in tasks}
    missing = [task for task in tasks if found[task.label] is None]
    jobs = 1 if len(missing) <= _FEW else order.jobs
    results = each(work_one, missing, jobs, preload=PRELOAD)
    for task, result in zip(missing, watch(results, len(missing)), strict=True):
        found[task.label] = result
    return {label: result for label, result in found.items() if result is not None}, len(missing)


def _known(
    blocks: Sequence[Block],
    worked: Mapping[str, Worked | Trouble],
    numbers: Mapping[str, Number],
    before: Mapping[str, Known],
) -> Iterator[tuple[str, Known]]:
    """What the next build will be compared with; of a problem in trouble, what was known before."""
    for block in blocks:
        found = worked[block.label]
        if isinstance(found, Worked):
            digest = sha256(block.text.strip().encode("utf-8", "surrogateescape")).hexdigest()[:16]
            yield block.label, Known(numbers[block.label].printed, found.facts.title, digest, dict(found.facts.answers))
        elif block.label in before:
            yield block.label, before[block.label]


def _made_as(order: Order, book: Book) -> str:
    """The edition and the format: errata are what readers of that one would miss."""
    return "-".join((order.edition or book.edition, order.only, order.form))


def remember(order: Order, built: Built) -> None:
    """After a book has been written: keep what the next build needs, and forget the rest."""
    keep_build(order.folder, _made_as(order, built.book), built.known)
    Cache(order.folder).only(set(built.keys))
