"""A built book written out: the file whole or not at all, and the figures of a Markdown book in a folder beside it."""

from __future__ import annotations

import os
import shutil
import tempfile
from collections.abc import Mapping
from pathlib import Path

from ..errors import Fault
from ..output import fit, make_folder, put_out, put_whole, same
from ..document.volume import Volume
from .build import Built, Order
from .kept_pieces import Watch, setter


def publish(built: Built, out: Path | None, order: Order, watch: Watch = lambda results, length: results) -> None:
    """Write the book to a file or to standard output. Raises Fault where that cannot be, and NoPaper for PDF without
    Pango.
    """
    if out is not None:
        _not_onto(built, out)
        fit(out)
    content = written(built.volume, order, watch)
    if out is None:
        put_out(content)
        return
    if built.figures:
        _beside(out.parent, built.figures, f"{built.book.file.stem}-figures")
    put_whole(out, content)


def written(volume: Volume, order: Order, watch: Watch = lambda results, length: results) -> bytes:
    """A volume in the format that was ordered: markdown, html or pdf."""
    if order.form == "pdf":
        from ..write.pdf.book import pdf_of_pieces

        kind = f"{order.edition or 'own'}-{order.only}"
        return pdf_of_pieces(volume, setter(order.folder, kind, order.jobs, watch))
    if order.form == "html":
        from ..write.html.book import html_volume

        return html_volume(volume).encode()
    from ..write.markdown.book import markdown_volume

    return markdown_volume(volume).encode()


def _not_onto(built: Built, out: Path) -> None:
    """Refuse to write the book over one of its own files."""
    for path in (built.book.file, *(path for path, _ in built.book.chapters)):
        if same(out, path):
            raise Fault(
                str(out),
                found="a file of the book itself as the place to write to",
                expected="another name",
                example="-o book.pdf",
            )


def _beside(folder: Path, figures: Mapping[str, str], name: str) -> None:
    """All figures, first where nobody sees them: a disk that is full leaves what was there as it was."""
    try:
        waiting = Path(tempfile.mkdtemp(dir=folder, prefix=f".{name[:40]}."))
    except OSError as error:
        raise Fault(
            str(folder),
            found=f"a place that cannot be written ({error.strerror or error})",
            expected="a folder that exists and may be written to, on a disk with room",
            example="-o book.md",
        ) from error
    try:
        for file, svg in figures.items():
            put_whole(waiting / file, svg.encode())
        make_folder(folder / name)
        for file in figures:
            os.replace(waiting / file, folder / name / file)
    finally:
        shutil.rmtree(waiting, ignore_errors=True)
