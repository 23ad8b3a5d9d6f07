"""A few habits of English that sentences from names need: articles, singular and plural, owners, lists. Knows no
mechanics.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from functools import lru_cache

_SINGULAR_ENDINGS = ("ceps", "us", "is", "ss", "teres", "psoas")
_SINGULARS = frozenset(("atlas", "bias", "canvas", "gas", "lens", "pancreas", "series"))
_PLURALS: Mapping[str, str] = {
    "feet": "foot",
    "teeth": "tooth",
    "people": "person",
    "children": "child",
    "men": "man",
    "women": "woman",
    "vertebrae": "vertebra",
    "scapulae": "scapula",
    "skis": "ski",
    "knives": "knife",
    "halves": "half",
    "calves": "calf",
}
_FORCES = frozenset(("drag", "force", "forces", "friction", "lift", "pull", "push", "tension", "thrust"))
_NUMBERS = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve")
_VOWEL_SOUND = re.compile(
    r"(?i:[ai]|e(?!u|we)|o(?!nce?\b|ne-)|u(?!ni[^nm]|s[eiua]|kul|ten)|8|1[18]\b|hour|honest|heir)"
    r"|[AEFHILMNORSX](?:[A-Z]|\b)"
)
_BODY = frozenset(
    (
        "abdomen",
        "ankle",
        "arm",
        "biceps",
        "body",
        "brachialis",
        "calf",
        "chest",
        "deltoid",
        "elbow",
        "femur",
        "finger",
        "foot",
        "forearm",
        "hand",
        "head",
        "hip",
        "humerus",
        "jaw",
        "knee",
        "leg",
        "limb",
        "neck",
        "pelvis",
        "quadriceps",
        "scapula",
        "shank",
        "shoulder",
        "skull",
        "spine",
        "thigh",
        "thumb",
        "tibia",
        "toe",
        "torso",
        "triceps",
        "trunk",
        "wrist",
    )
)
_STUFF = frozenset(
    (
        "air",
        "earth",
        "equipment",
        "floor",
        "flour",
        "friction",
        "grain",
        "gravel",
        "ground",
        "hay",
        "ice",
        "luggage",
        "milk",
        "rest",
        "sand",
        "snow",
        "soil",
        "sugar",
        "water",
    )
)
_ONE_OF_A_KIND = frozenset(
    (
        "upper",
        "lower",
        "first",
        "second",
        "third",
        "fourth",
        "last",
        "left",
        "right",
        "near",
        "far",
        "inner",
        "outer",
        "front",
        "rear",
        "total",
        "whole",
        "entire",
        "other",
    )
)
_MANY = re.compile(r"(?i:(?:both|two|three|four|five|six|seven|eight|nine|ten|several|many|all)\s)")
_OWN_ARTICLE = re.compile(
    r"(?i:(?:the|an?|his|her|its|their|my|your|our|this|that|these|those|each|every|one|some|no)\s)"
    r"|\S+['’]s?\s"
)
_DETAIL = re.compile(r"\s(?:of|above|below|at|with|in|on|from|to|under|behind|beside|by|for|over)\s")
_NUMBERED = re.compile(r"[A-Z]{1,2}\d{1,3}(?:/[A-Z]{0,2}\d{1,3})?")
_EACH_PART = re.compile(r",\s|\s(?:and|&)\s")
_SEVERAL = re.compile(r"\s(?:and|&)\s")


@lru_cache(maxsize=4096)
def is_plural(name: str) -> bool:
    """Whether a name takes a plural verb: "forearm and hand", "hip abductors"; not "biceps", "bag of books", "Joss"."""
    if _SEVERAL.search(_DETAIL.split(name)[0]) or _MANY.match(name):
        return True
    word = head_word(name)
    if is_proper(name) or word in _SINGULARS or word.endswith(_SINGULAR_ENDINGS) and word not in _PLURALS:
        return False
    if word == "scapulae":
        return _head(name).casefold() == word  # the levator scapulae is one muscle
    return word in _PLURALS or word.endswith("s")


@lru_cache(maxsize=4096)
def is_proper(name: str) -> bool:
    """Whether a name is a person's or an animal's: each word of it has a capital, and it is no part of the body."""
    words = name.replace(" and ", " ").split()
    return (
        bool(words)
        and any(len(word.strip(".")) > 1 for word in words)
        and not any(_is_one(word.casefold(), _BODY) for word in words)
        and all(word[:1].isupper() and (not word.isupper() or len(word.strip(".")) == 1) for word in words)
    )


@lru_cache(maxsize=4096)
def is_of_the_body(name: str) -> bool:
    """Whether a name is of a part of the body: "forearm and hand", "upper body", "both arms"."""
    return any(
        _is_one("".join(part.casefold().split()[-1:]), _BODY) for part in _EACH_PART.split(_DETAIL.split(name)[0])
    )


@lru_cache(maxsize=4096)
def head_word(name: str) -> str:
    """The word that says what a name is of, in small letters: "trestle" of "far trestle", "bag" of "bag of books"."""
    return "".join(_head(name).casefold().split()[-1:])


def the(name: str) -> str:
    """ "the shank"; "both arms", "Mira's bag", a person's name and a lettered one ("A", "block B") stay as they are."""
    return name if _stands_alone(name) else f"the {name}"


def a(name: str) -> str:
    """ "a jug", "an apple", "books", "the hand": as the name is brought in for the first time."""
    if _stands_alone(name):
        return name
    first = name.split()[0].casefold()
    if (
        first in _ONE_OF_A_KIND
        or head_word(name) in _STUFF
        or _is_one(first, _BODY)
        and _is_one(head_word(name), _BODY)
    ):
        return f"the {name}"
    if is_plural(name):
        return name
    return f"{'an' if _VOWEL_SOUND.match(name) else 'a'} {name}"


def each_of(name: str) -> str:
    """One of several alike: "each hand" of "hands", "each masseter" of "masseter"."""
    bare = _MANY.sub("", name, count=1).removeprefix("the ")
    if _SEVERAL.search(bare):
        return f"each of {the(bare)}"
    *first, last = bare.split()
    return " ".join(("each", *first, _singular(last) if is_plural(bare) else last))


def counted(count: int) -> str:
    """A small count as a word: "two"."""
    return _NUMBERS[count] if 0 <= count < len(_NUMBERS) else str(count)


def verb(name: str, stem: str) -> str:
    """The verb that goes with a name: "biceps" pulls, "hip abductors" pull, "scale" pushes; "be" and "have" too."""
    if is_plural(name):
        return {"be": "are"}.get(stem, stem)
    if stem.endswith(("s", "sh", "ch", "x", "z", "o")):
        return f"{stem}es"
    if stem.endswith("y") and stem[-2:-1] not in "aeiou":
        return f"{stem[:-1]}ies"
    return {"be": "is", "have": "has"}.get(stem, f"{stem}s")


def its(name: str) -> str:
    return "their" if is_plural(name) else "its"


def it(name: str) -> str:
    """ "it" or "them", as the object of a sentence."""
    return "them" if is_plural(name) else "it"


def possessive(name: str) -> str:
    """ "Leo's", "Joss's", "the jug's", "the biceps'", "both arms'"."""
    owner = the(name)
    bare = owner.endswith("s") and not owner.endswith("ss") and not is_proper(name)
    return f"{owner}'" if bare else f"{owner}'s"


def noun_of(noun: str, name: str) -> str:
    """ "the length of both arms"; of a person "Leo's length"."""
    return f"{possessive(name)} {noun}" if is_proper(name) and not is_plural(name) else f"the {noun} of {the(name)}"


def weight_of(name: str) -> str:
    """ "the weight of the jug", "Leo's weight", "the ankle weight"."""
    return the(name) if is_a_weight(name) else noun_of("weight", name)


def force_of(name: str) -> str:
    """ "the force of the floor"; "the friction", "the normal force": what is a force by its name has no other one."""
    return the(name) if head_word(name) in _FORCES else noun_of("force", name)


def is_a_weight(name: str) -> bool:
    """Whether a name says by itself that it is a weight: "ankle weight"."""
    return head_word(name) in ("weight", "weights")


def mass_of(name: str) -> str:
    """ "the mass of the jug", "Leo's mass"."""
    return noun_of("mass", name)


def listed(parts: Sequence[str]) -> str:
    """ "x", "x and y", "x, y and z"."""
    return " and ".join(part for part in (", ".join(parts[:-1]), parts[-1]) if part) if parts else ""


def sentence(text: str) -> str:
    """With a capital letter in front and a full stop behind, where it has no mark of its own."""
    return text[:1].upper() + text[1:] + ("" if text[-1:] in (".", "?", "!") else ".")


def _head(name: str) -> str:
    """What a name is about: "bag" of "bag of books", "lower hinge" of "lower hinge, upward"."""
    return _DETAIL.split(name)[0].partition(",")[0].strip()


def _is_one(word: str, words: frozenset[str]) -> bool:
    """Whether a word or its singular is among them."""
    return word in words or _singular(word) in words


@lru_cache(maxsize=4096)
def _stands_alone(name: str) -> bool:
    """Whether a name takes no article. Lettered and numbered names are known by what is capital or a digit at their
    end: "block B", "L5/S1".
    """
    last = name.split()[-1:]
    lettered = bool(last) and (
        last[0].isdecimal() or len(last[0]) == 1 and last[0].isupper() or bool(_NUMBERED.fullmatch(last[0]))
    )
    return bool(_OWN_ARTICLE.match(name) or _MANY.match(name)) or is_proper(name) or lettered


@lru_cache(maxsize=4096)
def _singular(word: str) -> str:
    """One of a plural: "hand" of "hands", "box" of "boxes", "foot" of "feet"."""
    if word in _PLURALS:
        return _PLURALS[word]
    for ending, one in (("ies", "y"), ("sses", "ss"), ("xes", "x"), ("ches", "ch"), ("shes", "sh"), ("s", "")):
        if word.endswith(ending):
            return word.removesuffix(ending) + one
    return word
