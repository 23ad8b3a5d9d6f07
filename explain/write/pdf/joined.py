"""Pieces of a volume joined into one tagged PDF, with its title page, contents, index, page numbers, bookmarks and
links. Knows the objects of a PDF, and no passage.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from io import BytesIO
from itertools import accumulate
from math import ceil
from typing import Any

import pikepdf

from ...document.volume import Volume
from ..html.book_elements import INDEX, back, front
from .book_markup import head
from .page_numbers import Numbers, page_numbers
from .paper_markup import Paper
from .pieces import Laid, Mark
from .set_piece import carried, laid


_LINES = 37  # of a sheet of contents, about


def joined(volume: Volume, middle: Sequence[Laid]) -> bytes:
    """The whole book."""
    counts = 1 + ceil(len(list(volume.listed())) / _LINES), *(each.pages for each in middle)
    while True:  # contents may turn out longer or shorter than they were taken for
        firsts = list(accumulate(counts, initial=0))
        pages = {
            mark.name: first + mark.page + 1
            for first, each in zip(firsts[1:-1], middle, strict=True)
            for mark in each.marks
            if not mark.level
        }
        opening = _front(volume, pages | ({INDEX: firsts[-1] + 1} if volume.index else {}))
        if opening.pages == counts[0]:
            break
        counts = opening.pages, *counts[1:]
    closing = [_back(volume, pages)] if volume.index else []
    return _bound([opening, *middle, *closing], page_numbers(volume.paper))


def _front(volume: Volume, pages: Mapping[str, int]) -> Laid:
    hand = Paper(True, {})
    return laid("".join((head(volume), *front(volume, pages), "</body></html>")), hand, volume.paper)


def _back(volume: Volume, pages: Mapping[str, int]) -> Laid:
    section = back(volume.index, pages, carried("Index", volume.foot))
    markup = f"{head(volume)}<main>{section}</main></body></html>"
    return laid(markup, Paper(True, {}), volume.paper)


def _bound(parts: Sequence[Laid], numbers: Numbers) -> bytes:
    """All pieces behind each other in the document of the first."""
    whole = pikepdf.open(BytesIO(parts[0].data))
    tree = whole.Root.StructTreeRoot
    document = tree.K[0] if isinstance(tree.K, pikepdf.Array) else tree.K
    next_key = _keys(whole)
    for each in parts[1:]:
        with pikepdf.open(BytesIO(each.data)) as piece:
            next_key = _append(whole, document, piece, next_key)
    firsts = list(accumulate((each.pages for each in parts), initial=0))
    _number(whole, firsts, numbers)
    marks = [mark._replace(page=mark.page + first) for first, each in zip(firsts, parts, strict=False)
             for mark in each.marks]  # fmt: skip
    _name(whole, marks)
    _bookmark(whole, marks)
    out = BytesIO()
    whole.save(
        out,
        deterministic_id=True,
        object_stream_mode=pikepdf.ObjectStreamMode.generate,
        fix_metadata_version=False,
    )
    return out.getvalue()


def _keys(document: Any) -> int:
    """The first number that no page and no link of the document has in the list of owners of what is marked."""
    return max(map(int, list(document.Root.StructTreeRoot.ParentTree.Nums)[::2]), default=-1) + 1


def _append(whole: Any, document: Any, piece: Any, first: int) -> int:
    """A piece with its tags, whose numbers begin at `first`; returns the number that the next one begins at."""
    end = first + _keys(piece)
    for page in piece.pages:
        page.StructParents = int(page.StructParents) + first
        for link in page.get("/Annots", ()):
            link.StructParent = int(link.StructParent) + first
    for page in piece.pages:
        whole.pages.append(page)  # names are given to the whole later on
    tree = whole.copy_foreign(piece.make_indirect(piece.Root.StructTreeRoot))
    own = tree.K[0] if isinstance(tree.K, pikepdf.Array) else tree.K
    for kid in own.K:
        kid.P = document
        document.K.append(kid)
    numbers = whole.Root.StructTreeRoot.ParentTree.Nums
    for place, each in enumerate(tree.ParentTree.Nums):
        numbers.append(each if place % 2 else int(each) + first)
    return end


def _number(whole: Any, firsts: Sequence[int], numbers: Numbers) -> None:
    """The number of every page but the first, which is the title page."""
    fonts = numbers.font_in(whole)
    for place, page in enumerate(whole.pages):
        if place:
            page.Resources.Font[numbers.name] = fonts
            page.contents_add(b"q", prepend=True)
            page.contents_add(b"Q " + numbers.drawn(place + 1))
            page.contents_coalesce()


def _name(whole: Any, marks: Sequence[Mark]) -> None:
    """Every anchor by its name, the first of each, in the order of names; where links lead to."""
    places: dict[str, Any] = {}
    for mark in marks:
        if not mark.level and mark.name not in places:
            places[mark.name] = _place(whole, mark)
    names = pikepdf.Array()
    for name in sorted(places, key=lambda name: bytes(pikepdf.String(name))):
        names.append(pikepdf.String(name))
        names.append(places[name])
    whole.Root.Names = pikepdf.Dictionary(Dests=pikepdf.Dictionary(Names=names))


def _place(whole: Any, mark: Mark) -> Any:
    return pikepdf.Array([whole.pages[mark.page].obj, pikepdf.Name.XYZ, mark.x, mark.y, 0])


def _bookmark(whole: Any, marks: Sequence[Mark]) -> None:
    with whole.open_outline() as outline:
        outline.root.clear()
        open_items: list[tuple[int, Any]] = []
        for mark in marks:
            if not mark.level:
                continue
            item = pikepdf.OutlineItem(mark.name, _place(whole, mark))
            while open_items and open_items[-1][0] >= mark.level:
                open_items.pop()
            (open_items[-1][1].children if open_items else outline.root).append(item)
            open_items.append((mark.level, item))
