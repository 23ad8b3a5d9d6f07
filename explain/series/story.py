"""An author's story, kept from step to step: its slots ({cuff.mass}) have each step's numbers, and what it has no slot
for is told behind it. Where it would tell something untrue, there is none. Works nothing out.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any, NamedTuple

from ..document.english import listed, sentence
from ..problem.placeholders import owners, slots
from .changes import NOTHING, changes
from .steps import KINDS, Tables

SOUGHT = "sought"


class Story(NamedTuple):
    """A statement as its author wrote it, and the tables that it was written for."""

    text: str
    tables: Mapping[str, Any]


def story_of(tables: Mapping[str, Any]) -> Story:
    return Story(str(tables.get("statement") or ""), tables)


def told(story: Story, tables: Tables) -> Tables:
    """The tables with the story, and with what differs from it behind it; without a statement where the story cannot
    be told of them.
    """
    without: Tables = {key: value for key, value in tables.items() if key != "statement"}
    used = set(slots(story.text))
    if not used or not _same_things(story.tables, tables) or story.tables.get("ask") != tables.get("ask"):
        return without
    known = {name: table for name, _, table in owners(tables)}
    if any("?" in str(known.get(owner, {}).get(key, "?")) for owner, key in used):
        return without
    rows = changes(_plain(story.tables, used), _plain(tables, used))
    if any(NOTHING in (row.was, row.now) or SOUGHT in (row.was, row.now) for row in rows):
        return without
    more = listed([f"{row.what} is {row.now}, not {row.was}" for row in rows])
    return {**without, "statement": _before_the_question(story.text, sentence(f"here {more}")) if rows else story.text}


def _before_the_question(text: str, more: str) -> str:
    """The text with a paragraph more, which stands before a last one that asks."""
    paragraphs = [each for each in re.split(r"\n\s*\n", text.strip()) if each]
    place = len(paragraphs) - 1 if len(paragraphs) > 1 and "?" in paragraphs[-1] else len(paragraphs)
    return "\n\n".join((*paragraphs[:place], more, *paragraphs[place:])) + "\n"


def _same_things(one: Mapping[str, Any], other: Mapping[str, Any]) -> bool:
    """Whether the same named things are there, and all else that a story may rest on."""
    return all(_names(one, kind) == _names(other, kind) for kind in KINDS) and all(
        one.get(key) == other.get(key) for key in ("pivot", "neglect", "balanced")
    )


def _names(tables: Mapping[str, Any], kind: str) -> list[str]:
    return [" ".join(str(table.get("name", "")).split()) for table in tables.get(kind, [])]


def _plain(tables: Mapping[str, Any], used: set[tuple[str, str]]) -> Tables:
    """The tables without what has a slot, and without the class's ways, which no story tells."""
    out: Tables = {key: value for key, value in tables.items() if key != "course"}
    for kind in KINDS:
        if kind in out:
            out[kind] = [
                {key: value for key, value in table.items() if (name, key) not in used}
                for name, table in zip(_names(tables, kind), tables[kind], strict=True)
            ]
    return out
