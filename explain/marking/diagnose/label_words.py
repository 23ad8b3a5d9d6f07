"""The words of a problem for the reader, and what a label or a letter of the student's own may mean. Knows no line."""

from __future__ import annotations

import re
from collections.abc import Mapping

from ..slips.account import Account
from ...mechanics.letters import Letters
from ..reading import Vocabulary, vocabulary_of
from ..reading.vocabulary import fold
from .quantity_names import spellings


def vocabulary(account: Account, letters: Letters, pivot: str, bone: str) -> Vocabulary:
    """The vocabulary of a problem for the reader."""
    return vocabulary_of(spellings(account, letters, pivot, bone))


_KINDS: Mapping[str, tuple[str, ...]] = {
    "distance": ("*arm ", ".at", ".com", ".moment_arm", ".length"),
    "arm": ("*arm ", ".at", ".com", ".moment_arm"),
    "lever": ("*arm ",),
    "length": (".length", ".at", ".com"),
    "moment": ("*moment ",),
    "torque": ("*moment ",),
    "weight": (".weight",),
    "force": (".force", ".weight"),
    "pull": (".force",),
    "mass": (".mass",),
    "component": ("*turning ", "*level ", "*upright "),
    "part": ("*turning ", "*level ", "*upright "),
}


def label_keys(label: str, account: Account, values: Mapping[str, float]) -> tuple[str, ...]:
    """What a label may speak of: the quantities of the item it names, of the kinds it names."""
    words = set(re.findall(r"[^\W_]+", label.casefold()))
    if words & {"angle", "direction"} and not words & {"arm", "force", "weight"}:
        return tuple(key for key in values if key.startswith("*angle "))
    named = [
        each.name
        for each in account.items
        if words & {w for w in re.findall(r"[^\W_]+", each.name.casefold()) if w not in ("and", "of", "the")}
    ]
    kinds = [ends for word, ends in _KINDS.items() if word in words or f"{word}s" in words]
    if len(named) != 1:
        return ()
    item = account.item(named[0])
    own = [
        item.key,
        item.mass,
        f"*arm {item.name}",
        f"*moment {item.name}",
        f"*turning {item.name}",
        f"*level {item.name}",
        f"*upright {item.name}",
        *(leg.key for leg in item.legs),
        item.arm,
    ]
    keys = [key for key in dict.fromkeys(own) if key in values]
    if not kinds:
        return tuple(keys)
    return tuple(
        key
        for key in keys
        if any(key.startswith(end) if end.startswith("*") else key.endswith(end) for ends in kinds for end in ends)
    )


_HEADS: Mapping[str, str] = {
    "f": "",
    "w": "",
    "fg": "",
    "f_g": "",
    "p": "",
    "m": "*moment ",
    "t": "*moment ",
    "tau": "*moment ",
    "τ": "*moment ",
    "d": "*arm ",
    "r": "*arm ",
    "x": "*arm ",
    "l": "*arm ",
}


def key_of(text: str, account: Account) -> str:
    """What a letter stands for whose subscript is a part of just one item's name: Fg(bag) for the sandbag; "" where
    it is not.
    """
    found = re.fullmatch(r"(Fg|F_g|tau|τ|[A-Za-z])[_({]+([A-Za-z]{3,})[)}]*", text)
    if found is None or found[1].casefold() not in _HEADS:
        return ""
    items = [each for each in account.items if found[2].casefold() in each.name.casefold()]
    if len(items) != 1:
        return ""
    head = _HEADS[found[1].casefold()]
    if found[1] == "m" and items[0].mass:
        return items[0].mass
    return f"{head}{items[0].name}" if head else items[0].key


def without(known: Vocabulary, texts: frozenset[str]) -> Vocabulary:
    """A vocabulary that does not know some letters."""
    folded = {fold(each) for each in texts}
    return vocabulary_of(
        {key: tuple(each for each in spelled if fold(each) not in folded) for key, spelled in known.given.items()}
    )
