"""What a line of a working comes apart into: chains of equal sides, words, and what could not be read. Judges
nothing.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal, Union

from .tree import Expr, Number

Relation = Literal["=", "≈"]


@dataclass(frozen=True, slots=True)
class Remark:
    """What stands behind a side in words: "up", "below horizontal", "(part a)".

    `directions` are those named, in order: up, down, left, right, clockwise, counter-clockwise, below horizontal, above
    horizontal,
    from vertical, from horizontal, left of vertical, right of vertical, toward X, away from X. `angle` is one that is
    named ("at 66.9°"), in degrees.
    """

    text: str
    directions: tuple[str, ...] = ()
    angle: Number | None = None


@dataclass(frozen=True, slots=True)
class Chain:
    """Sides joined by relations, one fewer than sides: a lone value has none. `remarks` has one place a side.

    `label` is what stands before a colon, or a side in words ("level distance of cuff = ..."). `leads` is a relation
    that the piece begins
    with (it goes on from the piece before), `trails` one that it ends with. `otherwise` holds other ways to read the
    same text, each with the
    `choice` it makes: slash, root, unit, letter, split, times, angle, comma, dash, tag. `start` and `end` are places in
    the line as typed.
    """

    sides: tuple[Expr, ...]
    relations: tuple[Relation, ...]
    remarks: tuple[Remark | None, ...]
    text: str
    start: int
    end: int
    label: str = ""
    leads: Relation | None = None
    trails: Relation | None = None
    otherwise: tuple[Chain, ...] = ()
    choice: str = ""


@dataclass(frozen=True, slots=True)
class Words:
    """A heading, a sentence, an equation of words. `subject` is the letter that words are given for ("V = vertical
    part of the pull").
    """

    text: str
    start: int
    end: int
    subject: Expr | None = None


@dataclass(frozen=True, slots=True)
class Unread:
    """What could not be read: the place in the line as typed (0 for the first character), why, and what to ask."""

    text: str
    position: int
    why: str
    ask: str
    start: int
    end: int


Piece = Union[Chain, Words, Unread]


@dataclass(frozen=True, slots=True)
class Reading:
    """One line as it was read. `changed` says which signs were taken for which; `part` is the part that the line opens
    ("b").

    `replaced`: the student crossed the line out or replaced it. `replaces`: it takes the place of the line before ("no
    - need weight: ...").
    """

    number: int
    text: str
    pieces: tuple[Piece, ...]
    changed: tuple[str, ...] = ()
    part: str = ""
    replaced: bool = False
    replaces: bool = False
