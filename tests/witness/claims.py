"""Knows how a sentence is bound to the judge of what it claims."""

from __future__ import annotations

from collections.abc import Callable

from .page import Judge

Sentences = list[tuple[str, Judge]]


def binder(sentences: Sentences) -> Callable[[str], Callable[[Judge], Judge]]:
    """A decorator that puts a judge into a table, under the pattern of the sentences it judges."""

    def says(pattern: str) -> Callable[[Judge], Judge]:
        def keep(judge: Judge) -> Judge:
            sentences.append((pattern, judge))
            return judge

        return keep

    return says
