"""What is said to a request that no page of the desk makes."""

from __future__ import annotations


class Refused(Exception):
    """The status, and a sentence."""

    def __init__(self, status: int, says: str) -> None:
        super().__init__(status, says)
        self.status, self.says = status, says
