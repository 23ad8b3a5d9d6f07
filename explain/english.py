"""A few habits of English that sentences from names need: articles, singular and plural, lists. Knows no mechanics."""
from __future__ import annotations

import re
from collections.abc import Sequence

_SINGULAR_ENDINGS = ("ceps", "us", "is", "ss", "teres")
_VOWEL_SOUND = re.compile(r"(?i:[ai]|e(?!u|we)|o(?!nce?\b|ne-)|u(?!ni[^nm]|s[eiua]|kul|ten)|8|1[18]\b|hour|honest|heir)"
                          r"|[AEFHILMNORSX](?:[A-Z]|\b)")
_KNOWN_ALREADY = frozenset((
    "hand", "arm", "forearm", "foot", "head", "neck", "trunk", "torso", "body", "leg", "thigh", "shank", "upper", "lower", "rest",
    "limb", "water", "milk", "sand", "luggage", "equipment", "ground", "floor", "friction", "air"))
_DETERMINED = re.compile(r"(?i:(?:the|an?|his|her|its|their|my|your|our|this|that|each|one|two|three|four|both)\s)|\S+['’]s?\s")


def is_plural(name: str) -> bool:
    """Whether a name takes a plural verb: "forearm and hand", "hip abductors"; not "biceps", "tibialis"."""
    word = name.split()[-1].casefold()
    return " and " in name or word in ("feet", "people") or (word.endswith("s") and not word.endswith(_SINGULAR_ENDINGS))


def the(name: str) -> str:
    """"the shank"; a name that brings its own article, or a person's, stays as it is."""
    return name if _DETERMINED.match(name) or _is_proper(name) else f"the {name}"


def a(name: str) -> str:
    """"a jug", "an apple", "books", "the hand": as the name is brought in for the first time."""
    if _DETERMINED.match(name) or _is_proper(name):
        return name
    if name.split()[0].casefold() in _KNOWN_ALREADY:
        return f"the {name}"
    if is_plural(name):
        return name
    return f"{'an' if _VOWEL_SOUND.match(name) else 'a'} {name}"


def verb(name: str, stem: str) -> str:
    """The verb that goes with a name: "biceps" pulls, "hip abductors" pull; "be" and "do" too."""
    singular = {"be": "is", "do": "does", "have": "has", "push": "pushes"}.get(stem, f"{stem}s")
    return {"be": "are"}.get(stem, stem) if is_plural(name) else singular


def its(name: str) -> str:
    return "their" if is_plural(name) else "its"


def listed(parts: Sequence[str]) -> str:
    """"x", "x and y", "x, y and z"."""
    return " and ".join(part for part in (", ".join(parts[:-1]), parts[-1]) if part) if parts else ""


def sentence(text: str) -> str:
    """With a capital letter in front and a full stop behind, where it has no mark of its own."""
    return text[:1].upper() + text[1:] + ("" if text[-1:] in (".", "?", "!") else ".")


def _is_proper(name: str) -> bool:
    return all(word[:1].isupper() and word[1:].islower() for word in name.split())
