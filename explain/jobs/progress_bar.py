"""A bar that shows how far a long job has come and how long the rest will take. Knows no work."""

from __future__ import annotations

import sys
from collections.abc import Iterable, Iterator
from typing import TypeVar

import click

T = TypeVar("T")


def watched(items: Iterable[T], length: int, label: str) -> Iterator[T]:
    """The items as they come, with a bar on standard error where that is a terminal, and one line where it is not."""
    if not length:
        yield from items
        return
    with click.progressbar(items, length=length, label=label, file=sys.stderr, show_eta=True, show_pos=True) as bar:
        yield from bar
