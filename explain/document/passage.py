"""What a page is made of, before anyone decides how it looks. Knows no mechanics; text from people is plain text
here.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Union

from ..equation.terms import Equation, Terms


@dataclass(frozen=True, slots=True)
class Text:
    """Plain text: never markup."""

    text: str


@dataclass(frozen=True, slots=True)
class Strong:
    text: str


@dataclass(frozen=True, slots=True)
class Emphasis:
    text: str


@dataclass(frozen=True, slots=True)
class Maths:
    """A formula inside a sentence: a sum of terms, or an equation."""

    of: Terms | Equation


@dataclass(frozen=True, slots=True)
class Reference:
    """Words that lead to another place of the same book, by its anchor."""

    text: str
    anchor: str


Inline = Union[Text, Strong, Emphasis, Maths, Reference]
Line = tuple[Inline, ...]


@dataclass(frozen=True, slots=True)
class Heading:
    level: int
    line: Line


@dataclass(frozen=True, slots=True)
class Paragraph:
    line: Line


@dataclass(frozen=True, slots=True)
class Prose:
    """Markdown that the author of the problem wrote (a statement, a chapter): read with images and raw HTML refused."""

    markdown: str


@dataclass(frozen=True, slots=True)
class Row:
    """One row of a derivation: left side, then (relation, side) pairs, `=` or `≈`; an empty side is 0. `label`
    stands before, `note` behind.
    """

    left: Terms
    right: tuple[tuple[str, Terms], ...]
    label: Line = ()
    note: Line = ()


@dataclass(frozen=True, slots=True)
class Derivation:
    """Rows of formulas under each other, aligned at the equals sign."""

    rows: tuple[Row, ...]


@dataclass(frozen=True, slots=True)
class Answer:
    """An answer to be set off (boxed): one sentence."""

    line: Line


@dataclass(frozen=True, slots=True)
class Bullets:
    items: tuple[Line, ...]


@dataclass(frozen=True, slots=True)
class Table:
    """`header` and `rows` of cells; the first cell of a row heads it. `right` holds the columns set flush right."""

    caption: str
    header: tuple[Line, ...]
    rows: tuple[tuple[Line, ...], ...]
    right: frozenset[int] = frozenset()


@dataclass(frozen=True, slots=True)
class Caution:
    """What must be said where advice could hurt."""

    line: Line


@dataclass(frozen=True, slots=True)
class Picture:
    """A drawing to be made by the figure writer, with its title, its description for those who cannot see it, and a
    caption.
    """

    drawing: Drawing
    title: str
    description: str
    caption: Line = ()


@dataclass(frozen=True, slots=True)
class Curve:
    """One line of a plot, or one set of its bars: (x, y) pairs, y None where there is no value. Of bars x counts the
    names from 0.
    """

    name: str
    points: tuple[tuple[float, float | None], ...]


@dataclass(frozen=True, slots=True)
class Axis:
    """What is shown along one axis of a plot, and in what unit."""

    title: str
    unit: str = ""


@dataclass(frozen=True, slots=True)
class Plot:
    """Values to be seen together. `kind` "lines": curves over x; "bars": one bar for each of `names`, with `x` the axis
    of the names.

    `tabled` says that the page has the same values in a table, so that text need not tell them again; `figures` are
    those of its numbers,
    0 for counts, which are shown as they are; `comma` writes them with a comma.
    """

    kind: str
    title: str
    description: str
    x: Axis
    y: Axis
    curves: tuple[Curve, ...]
    names: tuple[str, ...] = ()
    caption: Line = ()
    tabled: bool = False
    figures: int = 3
    comma: bool = False


@dataclass(frozen=True, slots=True)
class Space:
    """Room left blank for the reader's own drawing or working, so many millimetres high, and what to check it by."""

    title: str
    height: int
    checklist: tuple[Line, ...] = ()


@dataclass(frozen=True, slots=True)
class Blanks:
    """Lines of a derivation left for the reader to write, each with the reason that stands beside it."""

    reasons: tuple[Line, ...]


@dataclass(frozen=True, slots=True)
class JudgedLine:
    """A line that somebody typed, word for word, with a sign and a word for its verdict. `notes` stand below it;
    `marked`: the one to look at.
    """

    number: int
    typed: str
    sign: str
    word: str
    notes: tuple[Line, ...] = ()
    marked: bool = False


@dataclass(frozen=True, slots=True)
class Judged:
    """A working, line under line, with a verdict beside each."""

    caption: str
    lines: tuple[JudgedLine, ...]


Passage = Union[
    Heading, Paragraph, Prose, Derivation, Blanks, Answer, Bullets, Table, Caution, Picture, Plot, Space, Judged
]

# --- what a free-body diagram shows; lengths in metres, right and up positive, angles in degrees counter-clockwise from
# right

Point = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Bone:
    """A segment, from its near end to its far end."""

    name: str
    start: Point
    end: Point


@dataclass(frozen=True, slots=True)
class Arm:
    """A lever arm: the shortest way from the pivot to the line of a force, which it meets at `foot` at a right angle.

    One that is not `needed` is left out where there is no room for it.
    """

    foot: Point
    label: Terms
    needed: bool = True


@dataclass(frozen=True, slots=True)
class Arrow:
    """A force at its point of action. `kind`: muscle, weight, load, force, joint. `toward` is a point that its line
    is thought on to.
    """

    name: str
    kind: str
    letter: Terms
    at: Point
    direction: float
    arm: Arm | None = None
    toward: Point | None = None


@dataclass(frozen=True, slots=True)
class Turn:
    """A couple (`kind` couple), or a force (`kind` as of an arrow) of which only the moment arm is known.

    An arc arrow about `at`; counter-clockwise is +1.
    """

    name: str
    letter: Terms
    at: Point
    sense: int
    kind: str = "couple"


@dataclass(frozen=True, slots=True)
class Opening:
    """An angle between two named lines through `at`, from direction `first` to direction `second`; a line that is
    not drawn yet is drawn thin.
    """

    at: Point
    first: float
    second: float
    label: Terms


@dataclass(frozen=True, slots=True)
class Span:
    """A distance between two points with its letter, drawn as a dimension line parallel to them."""

    start: Point
    end: Point
    label: Terms


@dataclass(frozen=True, slots=True)
class Band:
    """A load spread between two points of a bone, evenly or `growing` from nothing at the start."""

    start: Point
    end: Point
    growing: bool = False


@dataclass(frozen=True, slots=True)
class Drawing:
    """`axes` are the ways that count as positive, with their names; `sense` is the turning sense that does, 0 where
    none is told.
    """

    pivot: Point
    pivot_name: str
    bones: tuple[Bone, ...] = ()
    arrows: tuple[Arrow, ...] = ()
    turns: tuple[Turn, ...] = ()
    openings: tuple[Opening, ...] = ()
    spans: tuple[Span, ...] = ()
    points: tuple[Point, ...] = ()
    axes: tuple[tuple[str, float], ...] = field(default=())
    sense: int = 0
    bands: tuple[Band, ...] = ()
    surface: float | None = None  # the direction along a rough surface at the pivot, the body a quarter turn on


@dataclass(frozen=True, slots=True)
class Page:
    """A whole page: its title, language, its passages in order, and the paper it is printed on ("A4" or "letter")."""

    title: str
    passages: tuple[Passage, ...]
    language: str = "en"
    paper: str = "A4"
