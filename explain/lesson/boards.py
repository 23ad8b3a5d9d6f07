"""The passages of a page as boards: words beside the figure as it grows, derivations line by line, each check alone.

Knows passages, and how much a board holds; not how it looks.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Collection, Iterator, Sequence
from dataclasses import dataclass, field, replace

from ..document.author_markdown import prose
from ..document.board import Board, Question
from ..document.figure_parts import parts
from ..document.passage import (
    Answer,
    Bullets,
    Caution,
    Derivation,
    Heading,
    Inline,
    Line,
    Maths,
    Page,
    Paragraph,
    Passage,
    Picture,
    Plot,
    Prose,
    Row,
    Strong,
    Table,
    Text,
)
from ..formula.plain import plain
from .figure_steps import Step
from .room import BESIDE, SMALLER, broad, fits, parted, squeeze, width
from .spoken import row_sentences, sentence, sentences, spoken, spoken_text

_NUMBERED = re.compile(r"^\d+ ")
_LONGEST = 46  # letters of what may head a board
_LABEL = 60  # letters of what a list of pages says of one
_MODEL = "A teaching model"


@dataclass(frozen=True)
class Telling:
    """What a page's boards are told with: how its figure grows, what is asked before an answer, a check and behind a
    part of the figure; the figure that stands beside from the first, where the page draws none; `say` puts what
    is said into the words of the class.
    """

    steps: Callable[[Picture], Sequence[Step]] = lambda picture: ()
    before: Callable[[Answer], Sequence[Question]] = lambda answer: ()
    check: Callable[[Line], Question | None] = lambda line: None
    behind: Callable[[str], Question | None] = lambda part: None
    picture: Picture | None = None
    say: Callable[[str], str] = lambda words: words


@dataclass
class _Maker:
    telling: Telling
    boards: list[Board] = field(default_factory=list)
    part: str = ""
    chapter: str = ""
    picture: Picture | None = None
    lead: list[Passage] = field(default_factory=list)  # words that wait for the line behind them
    rows: list[Row] = field(default_factory=list)  # lines that stand on the board

    def add(
        self, new: Sequence[Passage], label: str = "", part: str = "", old: Sequence[Passage] = (), whole: bool = False
    ) -> None:
        """A board with what is old and what is new, of which alone is spoken."""
        figure = None if whole else self.picture
        standing = (*old, *new)
        said = tuple(each for passage in new for each in sentences(passage))
        self.put(part or self.part, label, standing, figure, None, said)

    def put(
        self,
        part: str,
        label: str,
        standing: tuple[Passage, ...],
        figure: Picture | None,
        shown: tuple[str, ...] | None,
        said: tuple[str, ...],
    ) -> None:
        wide = broad(standing)
        figure = figure if wide <= BESIDE / SMALLER else None  # a long fraction has the whole width
        tight = wide > width(figure is not None) or not fits(standing, figure is not None)
        chapter, self.chapter = self.chapter, ""
        told = (*(sentence(spoken_text(chapter)),) * bool(chapter), *said)
        spoken_first = tuple(map(self.telling.say, told))
        named = _short(label or part)
        self.boards.append(Board(part, named, standing, figure, shown, tight, chapter, squeeze(standing), spoken_first))

    def ask(self, *questions: Question) -> None:
        """Put to the class before the next board."""
        if self.boards and questions:
            self.boards[-1] = replace(self.boards[-1], asks=(*self.boards[-1].asks, *questions))


def boards(page: Page, telling: Telling) -> tuple[Board, ...]:
    """The boards of one page, the first of which begins a chapter."""
    maker = _Maker(telling, picture=telling.picture, chapter=page.title)
    passages = list(_opened(page.passages))
    for place, passage in enumerate(passages):
        if isinstance(passage, Heading) and passage.level > 1:
            maker.ask(*(each for found in _answers(passages[place + 1 :]) for each in telling.before(found)))
        _take(maker, passage)
    _flush(maker)
    return tuple(maker.boards)


def _opened(passages: Sequence[Passage]) -> Iterator[Passage]:
    """Passages with an author's prose read; what stands on one board stays together."""
    for each in passages:
        if isinstance(each, Prose):
            yield from prose(each.markdown)
        else:
            yield each


def _answers(passages: Sequence[Passage]) -> Iterator[Answer]:
    """The answers of a section, whose passages come first."""
    for each in passages:
        if isinstance(each, Heading):
            return
        if isinstance(each, Answer):
            yield each


def _take(maker: _Maker, passage: Passage) -> None:
    if not isinstance(passage, Paragraph | Derivation | Answer):
        _flush(maker)
    match passage:
        case Heading(level, line):
            _flush(maker)
            maker.rows = []
            maker.part = _NUMBERED.sub("", spoken(line)) if level > 1 else "".join(map(_words, line))
        case Paragraph(line):
            _paragraph(maker, line)
        case Derivation(rows):
            _derive(maker, rows)
        case Answer():
            _answer(maker, passage)
        case Bullets(items):
            for item in items:
                if asked := maker.telling.check(item):
                    maker.ask(asked)
                head, rest = _headed(item)
                for piece in parted(Paragraph(rest), maker.picture is not None):
                    maker.add((piece,), part=head)
        case Table(caption=caption):
            bare = replace(passage, caption="")
            for piece in parted(bare, figure=False):
                maker.add((piece,), part=caption, whole=True)
        case Picture():
            _grow(maker, passage)
        case Plot():
            maker.add((replace(passage, caption=()),), part=passage.title, whole=True)
        case Caution():
            maker.add((Paragraph(passage.line),), part=_MODEL, whole=True)


def _paragraph(maker: _Maker, line: Line) -> None:
    head, rest = _headed(line)
    if head and not maker.chapter:  # the first board of a chapter has its title
        _flush(maker)
        if head.endswith("?"):
            maker.ask(Question(head))
        if maker.rows:  # behind an answer: what is told without a heading belongs to it
            maker.part = head
        for piece in parted(Paragraph(rest), maker.picture is not None):
            maker.add((piece,), part=head)
        return
    for piece in parted(Paragraph(line), maker.picture is not None):
        if maker.lead and not fits((*maker.lead, piece), maker.picture is not None):
            _flush(maker)
        maker.lead.append(piece)


def _flush(maker: _Maker) -> None:
    """Words behind which no line comes stand on a board of their own."""
    if maker.lead:
        lead, maker.lead = tuple(maker.lead), []
        maker.add(lead)


def _derive(maker: _Maker, rows: Sequence[Row]) -> None:
    """One board for each line, under those before it as far as there is room."""
    maker.rows = []
    for row in rows:
        lead, maker.lead = tuple(maker.lead), []
        maker.rows.append(row)
        new: tuple[Passage, ...] = (*lead, Derivation((row,)))
        figure = maker.picture is not None
        if lead and not fits(new, figure):
            maker.add(lead)
            lead = ()
        while len(maker.rows) > 1 and not fits((*lead, Derivation(tuple(_bare(maker.rows)))), figure):
            del maker.rows[0]
        said = (*(each for words in lead for each in sentences(words)), *row_sentences(row))
        label = "".join(map(_words, row.note)) or _first(row)
        standing = (*lead, Derivation(tuple(_bare(maker.rows))))
        maker.put(maker.part, label, standing, maker.picture, None, said)


def _bare(rows: Sequence[Row]) -> Iterator[Row]:
    """Lines of which the newest alone keeps its note."""
    yield from (replace(row, note=()) for row in rows[:-1])
    yield rows[-1]


def _answer(maker: _Maker, answer: Answer) -> None:
    _flush(maker)
    rows = [replace(row, note=()) for row in maker.rows]
    while rows and not fits((Derivation(tuple(rows)), answer), maker.picture is not None):
        del rows[0]
    old = (Derivation(tuple(rows)),) if rows else ()
    maker.add((answer,), label="".join(map(_words, answer.line)), old=old)


def _grow(maker: _Maker, picture: Picture) -> None:
    shown: tuple[str, ...] = ()
    maker.picture = picture
    for step in maker.telling.steps(picture):
        shown += step.new
        told = tuple(Paragraph(line) for line in step.told)
        said = tuple(each for passage in told for each in sentences(passage) if any(map(str.isalpha, each)))
        label = " ".join("".join(map(_words, line)) for line in step.told) or step.part
        maker.put(step.part, label, told, picture, _ordered(picture, shown), said)
        maker.ask(*filter(None, map(maker.telling.behind, step.new)))


def _ordered(picture: Picture, shown: Collection[str]) -> tuple[str, ...]:
    return tuple(each for each in parts(picture.drawing) if each in shown)


def _headed(line: Line) -> tuple[str, Line]:
    """What heads a board, and the rest, where a line begins with a few strong words."""
    if not line or not isinstance(line[0], Strong):
        return "", line
    head, colon, behind = line[0].text.partition(":")
    if colon and behind.strip() and len(head) <= _LONGEST:
        rest = behind.strip()
        return head, (Text(rest[:1].upper() + rest[1:]), *line[1:])
    if len(line) > 1 and len(line[0].text) <= _LONGEST:
        return line[0].text.strip().rstrip(".:"), line[1:]
    return "", line


def _words(piece: Inline) -> str:
    return plain(piece.of) if isinstance(piece, Maths) else piece.text


def _first(row: Row) -> str:
    return " ".join((plain(row.left), *(f"{sign} {plain(terms)}" for sign, terms in row.right[:1])))


def _short(label: str) -> str:
    words = " ".join(label.split())
    return words if len(words) <= _LABEL else words[: _LABEL - 1].rsplit(" ", 1)[0] + "…"
