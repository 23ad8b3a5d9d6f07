"""Problem blocks: the words behind `problem`, and the problem inside the block or in a file of its own. Reads no
problem.
"""

from __future__ import annotations

import re
import shlex
from pathlib import Path
from typing import NamedTuple

from markdown_it.tree import SyntaxTreeNode

from ..input import PROBLEM, Door
from ..errors import Fault, nearest, shown
from ..problem.reader import opened

_KEYS = ("label", "file", "number", "index")
_LABEL = re.compile(r"[a-z0-9](?:[a-z0-9-]{0,78}[a-z0-9])?")
_NUMBER = re.compile(r"[A-Za-z0-9.]{0,11}[0-9]")
_EXAMPLE = "```problem label=treacle-tin"


class Block(NamedTuple):
    """One problem: its label, where it stands (`line` of its chapter), its text (TOML), and the file that messages and
    paths go by.

    `number` is "" where the book counts it itself; `words` are its own words for the index. `trouble` is what a message
    says of a file that cannot be read: the problem keeps its place and its number.
    """

    label: str
    chapter: Path
    line: int
    text: str
    file: Path
    number: str = ""
    words: tuple[str, ...] = ()
    trouble: str = ""


def problem_block(node: SyntaxTreeNode, chapter: Path, door: Door) -> Block:
    """The block of a fence; `door` is the way to its file. Raises Fault where it is not closed, its words are not
    known, or its file cannot be read.
    """
    first, end = node.map or (0, 0)
    line, content = first + 1, node.content.split("\n")[:-1]
    within = next(
        (place for place, each in enumerate(content) if each.lstrip().startswith(("```problem", "~~~problem"))), None
    )
    if len(content) > end - first - 2 or within is not None:
        where = f"line {line + 1 + within}, where the next one begins" if within is not None else "the end of the file"
        raise Fault(
            str(chapter),
            line,
            "",
            f"a problem block that is not closed before {where}",
            "a line of three backticks behind the problem",
            "```",
        )
    said = _words(node.info, chapter, line)
    text, file, trouble = _problem(said.get("file"), node.content, chapter, line, door)
    label = said.get("label") or _label(said, text, chapter, line)
    if not _LABEL.fullmatch(label):
        raise Fault(str(chapter), line, "label", shown(label), "small letters, figures and hyphens", _EXAMPLE)
    number = said.get("number", "")
    if number and not _NUMBER.fullmatch(number):
        raise Fault(str(chapter), line, "number", shown(number), "a number of a problem", '```problem number="2.3"')
    words = tuple(each.strip() for each in said.get("index", "").split(";") if each.strip())
    return Block(label, chapter, line, text, file, number, words, trouble)


def _words(info: str, chapter: Path, line: int) -> dict[str, str]:
    try:
        pieces = [each.partition("=") for each in shlex.split(info)[1:]]
    except ValueError:
        raise Fault(
            str(chapter),
            line,
            "",
            f"quotation marks that are not closed in {shown(info)}",
            "words with = between them",
            '```problem file="01-treacle-tin.toml"',
        ) from None
    for key, mark, _ in pieces:
        if key not in _KEYS or not mark:
            near = nearest(key, _KEYS) or "label"
            raise Fault(
                str(chapter),
                line,
                "",
                shown(key) + " behind the word problem",
                f"one of {', '.join(f'{each}=' for each in _KEYS)}",
                f"{near}=... in place of {key[:60]}",
            )
    return {key: value for key, _, value in pieces}


def _problem(name: str | None, content: str, chapter: Path, line: int, door: Door) -> tuple[str, Path, str]:
    """The text of a problem, the file it counts as, and what hinders to read that: a block keeps its lines, so that
    messages name the line of the chapter.
    """
    if name is None:
        if not content.strip():
            raise Fault(
                str(chapter),
                line,
                "",
                "an empty problem block",
                "a problem (TOML) inside it, or file= with the path of one",
                _EXAMPLE,
            )
        return "\n" * line + content, chapter, ""
    if content.strip():
        raise Fault(
            str(chapter),
            line,
            "file",
            "a file and a problem inside the block",
            "one of the two",
            f'```problem file="{name}"',
        )
    try:
        return door.read(name, PROBLEM).decode("utf-8-sig", "surrogateescape") + "\n", Path(door.path(name)), ""
    except Fault as fault:
        example = '```problem file="01-treacle-tin.toml"'
        return "", chapter, str(Fault(str(chapter), line, "file", fault.found, fault.expected, example))


def _label(said: dict[str, str], text: str, chapter: Path, line: int) -> str:
    """A label for a problem that was given none: the name of its file, or its title, in small letters."""
    title = said.get("file") and Path(said["file"]).stem or _title(text, chapter)
    made = re.sub("[^a-z0-9]+", "-", (title or "").casefold()).strip("-")[:60].strip("-")
    if not made:
        raise Fault(
            str(chapter), line, "label", "nothing, the word is missing", "a label that the book can refer to", _EXAMPLE
        )
    return made


def _title(text: str, chapter: Path) -> str:
    """The title of a problem as far as its text can be read; what is wrong with it is reported when it is worked."""
    try:
        return str(opened(text, str(chapter)).values.get("title", ""))
    except Fault:
        return ""
