"""Passages in spoken words, a sentence each: formulas, numbers with their units, signs. Knows no mechanics."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence

from ..document.author_markdown import prose
from ..document.english import sentence as _sentence
from ..document.passage import Answer, Bullets, Caution, Derivation, Heading, Line, Maths, Paragraph, Passage, Plot
from ..document.passage import Prose, Row, Table
from ..document.untrusted_text import one_line
from ..formula.speech import UNIT_WORDS, speech, speech_row

_ENDS = re.compile(r"(?:(?<=[.?!])|(?<=[.?!][\"\u201d)]))\s+(?=\S)")
_LEFT_OUT = re.compile(r"\s*[✓✗]|(?<=\d)[\u202f\u00a0](?=\d{3})")
_LETTER = re.compile(r"\w(?: sub\b|[,. ]|$)(?<!a )(?<!A )(?<!I )")  # one letter alone: "m sub F", "g"
_SPACES = re.compile(r"\s+")
_NAMES = "|".join(sorted(map(re.escape, UNIT_WORDS), key=len, reverse=True))
_UNIT = re.compile(rf"(?<![\w.])([−-]?\d[\d.,]*) ?((?:{_NAMES})[²³]?(?:[·/](?:{_NAMES})[²³]?)*)(?![\w])")
_ONE = re.compile(rf"({_NAMES})([²³]?)")
_POWER: Mapping[str, str] = {"": "", "²": " squared", "³": " cubed"}
_DEGREES = re.compile(r"(?<=\d) ?°")
_SIGNS: Mapping[str, str] = {
    "(+)": "(plus)",
    "(−)": "(minus)",
    "ΣM": "the sum of M",
    "Σ": "the sum of ",
    " = ": " equals ",
    " ≈ ": " is about ",
    " × ": " times ",
    " / ": " over ",
    " + ": " plus ",
    " − ": " minus ",
    "−": "minus ",
    "%": " per cent",
}


def sentences(passage: Passage) -> Iterator[str]:
    """What is said of a passage; of a derivation its rows, each with its note."""
    match passage:
        case Paragraph(line) | Answer(line) | Caution(line):
            yield from parted(spoken(line))
        case Heading():
            return
        case Prose(markdown):
            for each in prose(markdown):
                yield from sentences(each)
        case Bullets(items):
            for item in items:
                yield from parted(spoken(item))
        case Derivation(rows):
            for row in rows:
                yield from row_sentences(row)
        case Table(header=header, rows=rows):
            for cells in rows:
                yield _row(header, cells)
        case Plot(title=title, description=description):
            yield from parted(spoken_text(f"{title}. {description}"))


def sentence(text: str) -> str:
    """A sentence that begins with a capital, unless a quantity's letter begins it."""
    if text[-1:] in ('"', "\u201d", ")") and text[-2:-1] in (".", "?", "!"):
        return sentence(text[:-1])[:-1] + text[-2:]
    return (text[:1] + _sentence(text)[1:]) if _LETTER.match(text) else _sentence(text)


def row_sentences(row: Row) -> Iterator[str]:
    """What was done, and then the line."""
    if row.note:
        yield from parted(sentence(spoken(row.note)))
    lead = f"{spoken(row.label)}: " if row.label else ""
    yield sentence(lead + one_line(speech_row(row)))


def spoken(line: Line) -> str:
    """A line in words."""
    return _SPACES.sub(
        " ", "".join(one_line(speech(each.of)) if isinstance(each, Maths) else spoken_text(each.text) for each in line)
    ).strip()


def spoken_text(text: str) -> str:
    """Written words as they are read aloud."""
    told = _LEFT_OUT.sub("", one_line(text))
    told = _UNIT.sub(lambda found: f"{found[1].replace('−', 'minus ')} {_unit(found[2], found[1] == '1')}", told)
    told = _DEGREES.sub(" degrees", told)
    for sign, words in _SIGNS.items():
        told = told.replace(sign, words)
    return told


def parted(text: str) -> Iterator[str]:
    """A text sentence by sentence."""
    for each in _ENDS.split(text):
        if each.strip():
            yield sentence(each.strip())


def _unit(written: str, one: bool) -> str:
    above, *below = written.split("/")
    parts = _ONE.findall(above)
    words = [_named(name, power, one or place < len(parts) - 1) for place, (name, power) in enumerate(parts)]
    for each in below:
        words += ["per", *(_named(name, power, True) for name, power in _ONE.findall(each))]
    return " ".join(words)


def _named(name: str, power: str, one: bool) -> str:
    return UNIT_WORDS[name][not one] + _POWER[power]


def _row(header: Sequence[Line], cells: Sequence[Line]) -> str:
    """A row of a table: what stands in it, one after the other. The same value is told once, another one with the head
    of its column.
    """
    told = [spoken(cell).rstrip(".") for cell in cells]
    said = told[:3]
    for head, before, words in zip(header[3:], told[2:], told[3:], strict=False):
        if words and words != before:
            said.append(f"{spoken(head).lower()} {words}".strip())
    return sentence(", ".join(each for each in said if each) or "A blank row")
