"""Small books to try the making of a manual on: chapters of prose with problems whose numbers differ."""

from __future__ import annotations

import signal
from collections.abc import Sequence
from pathlib import Path

PROBLEM = """title = "Jug {place}"
[pivot]
name = "elbow"
bone = "humerus"
[[segment]]
name = "forearm"
length = "35 cm"
mass = "1.{place} kg"
com = "15 cm"
[[load]]
name = "jug"
mass = "{mass} kg"
at = "3{place} cm"
[[muscle]]
name = "biceps"
at = "4.0 cm"
direction = "{direction}"
"""
BOOK = """title = "A small book"
authors = ["Ilva Marsk"]
chapters = [{chapters}]
{more}
"""


def problem(place: int, mass: str = "2.5", direction: str = "up") -> str:
    return PROBLEM.format(place=place, mass=mass, direction=direction)


def fenced(text: str, words: str) -> str:
    return f"```problem {words}\n{text}```\n"


def book(folder: Path, problems: Sequence[str], chapters: int = 1, more: str = "") -> Path:
    """A book file in a folder, its problems labelled jug-0, jug-1 ... and dealt out to chapters in order."""
    folder.mkdir(parents=True, exist_ok=True)
    names = []
    share = -(-len(problems) // chapters)
    for number in range(chapters):
        blocks = [fenced(text, f"label=jug-{place}") for place, text in enumerate(problems) if place // share == number]
        names.append(f'"chapter-{number}.md"')
        text = f"# Chapter {number}\n\nProse of chapter {number}.\n\n" + "\nBetween.\n\n".join(blocks) + "\nThe end.\n"
        (folder / f"chapter-{number}.md").write_text(text, "utf-8")
    path = folder / "book.toml"
    path.write_text(BOOK.format(chapters=", ".join(names), more=more), "utf-8")
    return path


def chapter(folder: Path, text: str, more: str = "") -> Path:
    """A book of one chapter with this text."""
    folder.mkdir(parents=True, exist_ok=True)
    (folder / "chapter.md").write_text(text, "utf-8")
    path = folder / "book.toml"
    path.write_text(BOOK.format(chapters='"chapter.md"', more=more), "utf-8")
    return path


def hears_ctrl_c() -> None:
    """In a process that begins: take Ctrl-C as usual, also where whoever started the tests ignores it, as shells do
    behind an "&".
    """
    signal.signal(signal.SIGINT, signal.SIG_DFL)
