"""A book whose pieces are laid out apart and joined is the book laid out at once: its text and its sheets, its tags and
who owns what is marked, bookmarks, links, destinations and numbers of pages. pikepdf reads both.
"""

from __future__ import annotations

import os
from collections.abc import Mapping
from functools import cache
from io import BytesIO
from pathlib import Path
from typing import Any

import pikepdf
import pytest
from books import book, problem
from click.testing import CliRunner
from pdf_words import words

from explain.cli.main import main
from explain.document.volume import Volume
from explain.manual.build import Order, build
from explain.manual.kept_pieces import setter
from explain.write.pdf.book import pdf_of_pieces, pdf_volume
from explain.write.pdf.pieces import pieces
from explain.write.pdf.set_piece import set_piece

SAMPLE = Path(__file__).parent.parent / "samples" / "book" / "book.toml"
EDITIONS = ("student", "odd", "answers", "instructor")


@cache
def volume(edition: str) -> Volume:
    return build(Order(SAMPLE, "pdf", edition, jobs=1)).volume


@cache
def whole(edition: str) -> pikepdf.Pdf:
    return pikepdf.open(BytesIO(pdf_volume(volume(edition))))


@cache
def joined(edition: str) -> pikepdf.Pdf:
    """In pieces as small as there can be, but where a whole chapter of prose leads up to problems."""
    return pikepdf.open(BytesIO(pdf_of_pieces(volume(edition), lambda found: map(set_piece, found), most=1)))


def pages(document: pikepdf.Pdf) -> Mapping[tuple[int, int], int]:
    return {page.objgen: place for place, page in enumerate(document.pages)}


def kids(element: Any) -> list[Any]:
    found = element.get("/K", [])
    return list(found) if isinstance(found, pikepdf.Array) else [found]


def tree(element: Any, places: Mapping[tuple[int, int], int]) -> object:
    """An element of the structure with all below it: kind, page, words for it, scope, what it marks."""
    below: list[object] = []
    for kid in kids(element):
        if not isinstance(kid, pikepdf.Dictionary):
            below.append(int(kid))
        elif kid.get("/Type") == "/OBJR":
            below.append(str(kid.Obj.Dest))
        else:
            assert kid.P.objgen == element.objgen
            below.append(tree(kid, places))
    page = element.get("/Pg")
    about = element.get("/A")
    scope = str(about.get("/Scope", "")) if isinstance(about, pikepdf.Dictionary) else ""
    return str(element.S), page is not None and places[page.objgen], str(element.get("/Alt", "")), scope, below


def tags(document: pikepdf.Pdf) -> object:
    return [tree(each, pages(document)) for each in kids(document.Root.StructTreeRoot)]


def outline(document: pikepdf.Pdf) -> object:
    places = pages(document)

    def told(item: Any) -> object:
        page, _, x, y, _ = item.destination
        return item.title, places[page.objgen], round(float(x), 2), round(float(y), 2), [*map(told, item.children)]

    with document.open_outline() as found:
        return [told(each) for each in found.root]


def destinations(document: pikepdf.Pdf) -> dict[str, object]:
    names, places = list(document.Root.Names.Dests.Names), pages(document)
    assert names[::2] == sorted(names[::2], key=bytes)
    return {
        str(name): (places[to[0].objgen], round(float(to[2]), 2), round(float(to[3]), 2))
        for name, to in zip(names[::2], names[1::2], strict=True)
    }


def links(document: pikepdf.Pdf) -> list[list[tuple[str, str, list[float]]]]:
    return [
        [
            (str(each.Dest), str(each.Contents), [round(float(x), 2) for x in each.Rect])
            for each in page.get("/Annots", ())
        ]
        for page in document.pages
    ]


def owners(document: pikepdf.Pdf) -> object:
    """What owns each marked piece of every page, and every link; behind the last there may be what owns nothing."""
    numbers = list(document.Root.StructTreeRoot.ParentTree.Nums)
    keys = [int(each) for each in numbers[::2]]
    assert keys == sorted(set(keys))
    found = dict(zip(keys, numbers[1::2], strict=True))
    told: list[object] = []
    for page in document.pages:
        marked = [
            str(each.S) if isinstance(each, pikepdf.Dictionary) else "" for each in found[int(page.StructParents)]
        ]
        while marked and not marked[-1]:
            marked.pop()
        told.append((marked, [str(found[int(each.StructParent)].S) for each in page.get("/Annots", ())]))
    return told


@pytest.mark.parametrize("edition", EDITIONS)
def test_the_joined_book_is_the_whole_one(edition: str) -> None:
    one, other = whole(edition), joined(edition)
    assert len(pieces(volume(edition), 1)) >= (2 if edition == "answers" else 8)
    assert [len(one.pages), destinations(one), outline(one), links(one)] == [
        len(other.pages),
        destinations(other),
        outline(other),
        links(other),
    ]
    assert tags(one) == tags(other)
    assert owners(one) == owners(other)


@pytest.mark.parametrize("edition", ["student", "instructor"])
def test_every_sheet_says_the_same(edition: str) -> None:
    """The heads, the feet and the number of the page among it."""
    one, other = whole(edition), joined(edition)
    for place, (page, same) in enumerate(zip(one.pages, other.pages, strict=True)):
        assert sorted(words(page).split()) == sorted(words(same).split()), place


@pytest.mark.parametrize("edition", EDITIONS)
def test_no_link_of_a_joined_book_leads_nowhere(edition: str) -> None:
    there = set(destinations(joined(edition)))
    assert {name for page in links(joined(edition)) for name, *_ in page} <= there
    assert "/URI" not in str([each.keys() for page in joined(edition).pages for each in page.get("/Annots", ())])


def test_the_catalogue_says_what_that_of_the_whole_says() -> None:
    one, other = whole("instructor"), joined("instructor")
    assert one.Root.keys() == other.Root.keys()
    assert [str(one.Root.Lang), bool(one.Root.MarkInfo.Marked), dict(one.docinfo)] == [
        str(other.Root.Lang),
        bool(other.Root.MarkInfo.Marked),
        dict(other.docinfo),
    ]
    assert one.Root.Metadata.read_bytes() == other.Root.Metadata.read_bytes()


def test_a_joined_book_is_sound_and_the_same_again() -> None:
    data = [pdf_of_pieces(volume("student"), lambda found: map(set_piece, found), most=3) for _ in range(2)]
    assert data[0] == data[1]
    with pikepdf.open(BytesIO(data[0])) as document:
        assert document.check_pdf_syntax() == []


# ---------------------------------------------------------------------- pieces kept, and other processes
def made(path: Path, out: Path, *more: str) -> bytes:
    result = CliRunner().invoke(main, ["manual", str(path), "-o", str(out), *more])
    assert result.exit_code == 0, result.output
    return out.read_bytes()


def test_two_processes_make_the_bytes_that_one_makes(tmp_path: Path) -> None:
    path = book(tmp_path, [problem(place % 10) for place in range(14)], chapters=2)
    one = made(path, tmp_path / "one.pdf", "--no-cache", "--jobs", "1", "--edition", "student")
    assert one == made(path, tmp_path / "two.pdf", "--no-cache", "--jobs", "2", "--edition", "student")


def test_only_the_piece_that_changed_is_laid_out_again(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    texts = [problem(place % 10) for place in range(14)]
    path, kept = book(tmp_path, texts, chapters=2), tmp_path / "kept"
    words = ("--cache", str(kept), "--jobs", "1", "--edition", "student")
    first = made(path, tmp_path / "a.pdf", *words)
    before = {each.name: os.stat(each).st_mtime_ns for each in kept.glob("*.piece")}
    assert first == made(path, tmp_path / "b.pdf", *words)
    assert before == {each.name: os.stat(each).st_mtime_ns for each in kept.glob("*.piece")}
    book(tmp_path, [*texts[:-1], problem(5, mass="7.7")], chapters=2)
    changed = made(path, tmp_path / "c.pdf", *words)
    after = {each.name: os.stat(each).st_mtime_ns for each in kept.glob("*.piece")}
    assert (len(before) - 1, len(before)) == (len(before.items() & after.items()), len(after))
    assert changed == made(path, tmp_path / "d.pdf", "--no-cache", "--jobs", "1", "--edition", "student")


@pytest.mark.parametrize("spoil", [lambda data: data[:-9], lambda data: b"x" + data, lambda data: b""])
def test_a_kept_piece_that_is_not_whole_is_laid_out_again(tmp_path: Path, spoil: Any) -> None:
    path, kept = book(tmp_path, [problem(place) for place in range(3)], chapters=3), tmp_path / "kept"
    kept.mkdir()
    order = Order(path, "pdf", "student", jobs=1, folder=str(kept))
    bound = build(order).volume

    def laid() -> bytes:
        return pdf_of_pieces(bound, setter(str(kept), "student-all", 1, lambda results, length: results), most=1)

    first = laid()
    for each in kept.glob("*.piece"):
        each.write_bytes(spoil(each.read_bytes()))
    assert first == laid()
