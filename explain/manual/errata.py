"""What changed between two builds of a book: which problems and which answers. Knows labels, numbers and printed
values.
"""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping
from contextlib import suppress
from pathlib import Path
from typing import NamedTuple

from ..errors import Fault
from ..output import put_whole

_FILE, _VERSION = "last-build-{}.json", 1


class Known(NamedTuple):
    """A problem as a build left it: its printed number, its title, a digest of its text, and its answers as printed."""

    number: str
    title: str
    text: str
    answers: Mapping[str, str]


def errata(before: Mapping[str, Known], now: Mapping[str, Known]) -> Iterator[str]:
    """One line for every problem that is new, gone, renumbered or changed, in the order of the book."""
    for label, known in now.items():
        old = before.get(label)
        if old is None:
            yield f"{_named(label, known)}: new."
            continue
        said = list(_changes(old, known))
        if said:
            yield f"{_named(label, known)}: {'; '.join(said)}."
    for label, known in before.items():
        if label not in now:
            yield f"{_named(label, known)}: left out."


def _named(label: str, known: Known) -> str:
    return f"{known.number} {known.title} ({label})"


def _changes(old: Known, new: Known) -> Iterator[str]:
    if old.number != new.number:
        yield f"was {old.number}"
    if old.title != new.title:
        yield f"was called {old.title}"
    if old.text != new.text:
        yield "the problem has changed"
    for name, value in new.answers.items():
        if name not in old.answers:
            yield f"{name} is asked now: {value}"
        elif old.answers[name] != value:
            yield f"{name} is {value}, was {old.answers[name]}"
    for name in old.answers:
        if name not in new.answers:
            yield f"{name} is not asked any more"


def last_build(folder: str, made_as: str) -> Mapping[str, Known] | None:
    """What the last whole build of an edition in a format left, or None where there was none that can be read."""
    try:
        found = json.loads((Path(folder) / _FILE.format(made_as)).read_text("utf-8")) if folder else None
        if not isinstance(found, dict) or found.get("version") != _VERSION:
            return None
        return {
            str(label): Known(
                str(number), str(title), str(text), {str(name): str(value) for name, value in answers.items()}
            )
            for label, (number, title, text, answers) in found["problems"].items()
        }
    except (OSError, ValueError, KeyError, TypeError, AttributeError, RecursionError):
        return None


def keep_build(folder: str, made_as: str, now: Mapping[str, Known]) -> None:
    """Remember this build for the next one's errata of the same edition and format."""
    if folder:
        record = {"version": _VERSION, "problems": {label: list(known) for label, known in now.items()}}
        with suppress(Fault):
            put_whole(
                Path(folder) / _FILE.format(made_as),
                json.dumps(record, ensure_ascii=False, indent=1).encode("utf-8", "replace"),
            )
