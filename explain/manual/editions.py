"""Who a book is for: which pages of a problem stand in each edition, and whose answers at the back. Knows no
problem.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import NamedTuple

ONLY: Mapping[str, Callable[[int], bool]] = {
    "all": lambda number: True,
    "odd": lambda number: number % 2 == 1,
    "even": lambda number: number % 2 == 0,
}


class Edition(NamedTuple):
    """`page` is the page of each problem: its sheet, its walkthrough, or "" for none; `back` whose answers stand at
    the back.
    """

    name: str
    words: str
    page: str
    back: str = ""

    @property
    def pages(self) -> tuple[str, ...]:
        """The pages that have to be written."""
        return (*((self.page,) if self.page else ()), *(("answers",) if self.back else ()))

    def answers(self, running: int) -> bool:
        """Whether the answers of the problem with that number stand at the back."""
        return bool(self.back) and ONLY[self.back](running)


EDITIONS: Mapping[str, Edition] = {
    "student": Edition("student", "Problems", "sheet"),
    "odd": Edition("odd", "Problems, with answers to the odd-numbered", "sheet", "odd"),
    "answers": Edition("answers", "Answers", "", "all"),
    "instructor": Edition("instructor", "Instructor’s edition", "walk", "all"),
}
