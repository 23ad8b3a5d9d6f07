"""Small commented files to begin with, each of which works as it stands: problems, a course, a series, a book. Knows
what they are called, and writes none.
"""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

# What a new problem may be like, and where one load more would hang in it.
LIKE: Mapping[str, str] = {
    "elbow": 'at = "25 cm"',
    "knee": 'at = "30 cm"',
    "shoulder": 'at = "30 cm"',
    "hip": 'point = ["12 cm", "10 cm"]',
    "ankle": 'at = "10 cm"',
    "back": 'at = "40 cm"',
    "neck": 'at = "18 cm"',
    "jaw": 'at = "8.0 cm"',
    "lever": 'at = "0.50 m"',
    "beam": 'at = "1.5 m"',
}


def new_files(kind: str, stem: str, like: str = "elbow") -> Mapping[str, str]:
    """The files of a new "problem", "course", "series" or "book", by name, the one to work with first; names begin with
    `stem`. `like` is one of LIKE.
    """
    file = f"{stem}.toml"
    match kind:
        case "course":
            return {file: _starter("course.toml", file=file)}
        case "series":
            base = f"{stem}-base.toml"
            return {
                file: _starter("series.toml", file=file, base=base, place=LIKE[like]),
                base: _starter(f"{like}.toml", file=base),
            }
        case "book":
            chapter = f"{stem}-1.md"
            problem = _starter(f"{like}.toml").partition("\n\n")[2]
            return {
                file: _starter("book.toml", file=file, stem=stem, chapter=chapter),
                chapter: _starter("chapter.md", problem=problem),
            }
    return {file: _starter(f"{like}.toml", file=file)}


def _starter(name: str, **slots: str) -> str:
    text = (Path(__file__).with_name("starters") / name).read_text(encoding="utf-8")
    for slot, value in slots.items():
        text = text.replace(f"{{{slot}}}", value)
    return text
