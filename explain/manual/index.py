"""The index of a book: which problems stand behind each joint, muscle and method. Knows topics and places."""

from __future__ import annotations

from collections.abc import Iterable

from ..document.volume import Entry, Place
from .task import HEADINGS, Topic


def index(places: Iterable[tuple[Topic, Place]]) -> tuple[Entry, ...]:
    """The entries, heading by heading and in alphabetical order, each with its places in the order of the book."""
    found: dict[tuple[str, str], list[Place]] = {}
    words: dict[tuple[str, str], str] = {}
    for topic, place in places:
        key = (topic.heading, topic.word.casefold())
        words.setdefault(key, topic.word)
        if place not in found.setdefault(key, []):
            found[key].append(place)
    return tuple(
        Entry(heading, words[key], tuple(found[key]))
        for heading in HEADINGS
        for key in sorted(found)
        if key[0] == heading
    )
