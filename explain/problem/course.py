"""How one class speaks and counts: one frozen record, passed along and never imported as state."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from ..equation.terms import Quantity


@dataclass(frozen=True, slots=True)
class Course:
    """Every key of a course file with its default. Closed sets of words are checked where the file is read."""

    word: str = "moment"  # moment | torque
    letter: str = "M"  # M | tau | T
    positive: str = "counter-clockwise"  # counter-clockwise | clockwise | up
    g: Quantity = Quantity.of("9.81", "m s^-2")
    lengths: str = "as given"  # as given | m | cm | mm | in | ft
    forces: str = ""  # N | lbf | "" (lbf where every force of the file is in pounds, else N)
    method: str = "perpendicular distance"  # perpendicular distance | turning component
    order: str = "multiply first"  # multiply first | divide first | letters first
    figures: int = 3
    working_figures: int = 5
    ties: str = "up"  # up | even
    carry: str = "unrounded"  # unrounded | as shown
    force_letter: str = "F"
    distance_letter: str = "d"
    symbols: Mapping[str, str] = field(default_factory=dict)
    resultant: tuple[str, ...] = ("size and direction",)  # parts, too
    axes: str = ""  # the name of a segment, or "" for level and upright
    reaction_on: str = "the body cut free"  # the body cut free | the other bone
    detail: str = "full"  # full | brief
    person: str = "we"  # we | you
    balance: str = "sum is zero"  # sum is zero | two sides
    first: str = "products"  # products | moments
    signs: str = "in the equation"  # in the equation | with the numbers
    level_words: str = "horizontal and vertical"  # horizontal and vertical | level and upright
    spelling: str = "British"  # British | American
    decimal: str = "point"  # point | comma
    paper: str = "A4"  # A4 | letter

    @property
    def letters_have_signs(self) -> bool:
        """Whether a force's letter stands for its vertical part, below nothing where it acts down."""
        return (self.positive, self.signs) == ("up", "with the numbers")

    @property
    def sense(self) -> int:
        """+1 where counter-clockwise counts as positive, -1 where clockwise does; `up` is settled with the body."""
        return -1 if self.positive == "clockwise" else 1
