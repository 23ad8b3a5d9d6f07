"""A bar that shows how far a long job has come and how long the rest will take. Knows no work."""

from __future__ import annotations

import sys
from collections.abc import Iterable, Iterator
from time import monotonic
from typing import TypeVar

import click

T = TypeVar("T")
EVERY = 60.0  # seconds between two lines of a log


def watched(items: Iterable[T], length: int, label: str) -> Iterator[T]:
    """The items as they come, with a bar on standard error where that is a terminal; where it is not, a line a
    minute.
    """
    if not length:
        yield from items
        return
    if not sys.stderr.isatty():
        yield from _told_now_and_then(items, length, label)
        return
    with click.progressbar(items, length=length, label=label, file=sys.stderr, show_eta=True, show_pos=True) as bar:
        yield from bar


def _told_now_and_then(items: Iterable[T], length: int, label: str) -> Iterator[T]:
    """The items, and a line on standard error a minute after the last one."""
    begun = told = monotonic()
    for count, item in enumerate(items, 1):
        yield item
        now = monotonic()
        if now - told >= EVERY and count < length:
            told, left = now, (now - begun) / count * (length - count)
            click.echo(f"{label}: {count} of {length}, about {max(1, round(left / 60))} min left", err=True)
