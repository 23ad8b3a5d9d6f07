"""What an item of a package is made of, before it is XML: passages, and fields for the answers."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Union

from ...document.passage import Line, Passage


@dataclass(frozen=True, slots=True)
class Number:
    """A field for a number: what is asked, the unit as it is written behind the field, and the right number.

    A number is right within `share` of the right one, or within `within` where that is not 0.
    """

    label: Line
    unit: str
    value: float
    share: float
    within: float = 0.0


@dataclass(frozen=True, slots=True)
class Option:
    """One number to choose, with what is said to whoever chooses it; nothing of the right one."""

    shown: Line
    hint: Line = ()
    right: bool = False


@dataclass(frozen=True, slots=True)
class Choice:
    """A field in which one of several numbers is chosen."""

    label: Line
    options: tuple[Option, ...]


Field = Union[Number, Choice]


@dataclass(frozen=True, slots=True)
class Item:
    """A question with its answers. `name` is fit for a file and for an identifier; `before` and `after` are what stands
    above and below the fields.
    """

    name: str
    title: str
    before: tuple[Passage, ...]
    fields: tuple[Field, ...]
    after: tuple[Passage, ...] = ()
    language: str = "en"
