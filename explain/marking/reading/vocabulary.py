"""The letters and words of one problem, and every spelling of them: the only names that a line can mean. Knows no
mechanics.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field

from .limits import WORD
from .normal import normal
from .words import FUNCTIONS, GREEK, NOUNS, SHORT, SMALL

_HEAD = re.compile(r"(" + "|".join(GREEK) + r")(?=_|[0-9'(]|$)", re.IGNORECASE)
_JOINTS = re.compile(r"[\s_{}(),\\]+")
_LETTER = re.compile(
    r"(?:[A-Za-zα-ωΓΔΘΛΞΠΦΨΩ](?:[A-Za-z0-9]|[A-Za-z]?[0-9A-Z][0-9A-Za-z]{0,3})?|[A-Z][a-z][xyz])'{0,3}"
)
_SUBSCRIPTED = re.compile(
    r"(?:Δ?[A-Za-zα-ω]|Δ|[A-Z][a-z])(?:_\{?[^\s_{}]{1,24}\}?|\([^()]{1,24}\))+'{0,3}|[A-Za-zα-ωΔ]{1,2}⊥"
)
Names = Mapping[str, tuple[str, ...]]


@dataclass(frozen=True, slots=True)
class Vocabulary:
    """Spellings and the keys they can stand for: as given, with subscripts folded ("Fm" is "F_{M}"), and words in
    any case.
    """

    given: Names
    exact: Names
    folded: Names
    words: Names
    subscripts: Mapping[str, tuple[tuple[str, tuple[str, ...]], ...]]
    longest: int  # words of the longest spelling
    seen: dict[str, tuple[str, ...]] = field(default_factory=dict, compare=False, repr=False)

    def keys(self, text: str) -> tuple[str, ...]:
        """The keys that a typed name can stand for, none for one that is not known."""
        if text not in self.seen:
            if len(self.seen) > 2000:
                self.seen.clear()
            self.seen[text] = self._keys(text)
        return self.seen[text]

    def _keys(self, text: str) -> tuple[str, ...]:
        if len(text) > WORD:
            return ()
        folded = fold(text)
        return (
            self.exact.get(text)
            or self.folded.get(folded)
            or self.words.get(folded.casefold(), ())
            or self._capital(folded)
            or self._begun(text)
        )

    def _capital(self, folded: str) -> tuple[str, ...]:
        """A small f or w is a force or a weight; other letters mean different things in their two sizes."""
        return self.folded.get(folded[0].upper() + folded[1:], ()) if folded[:1] in ("f", "w") else ()

    def _begun(self, text: str) -> tuple[str, ...]:
        """A subscript of three letters or more that begins a known one: T_flex for T_flexors."""
        head, _, rest = text.partition("_")
        begun = fold(rest).casefold()
        if len(begun) < 3:
            return ()
        found = (keys for whole, keys in self.subscripts.get(fold(head), ()) if whole.startswith(begun))
        return tuple(dict.fromkeys(key for keys in found for key in keys))

    def lettered(self, text: str) -> bool:
        """Whether a word is a letter with its subscript run together: Fmuscle for F_muscle."""
        return any(whole == text[1:].casefold() for whole, _ in self.subscripts.get(text[:1], ()))

    def split(self, text: str) -> tuple[str, ...]:
        """The known letters that a short word is a product of: "mg", "Fd", "mgd"; () for any other word."""
        if (
            not 2 <= len(text) <= 3
            or not text.isascii()
            or not text.isalpha()
            or text.casefold() in SHORT | NOUNS | SMALL
        ):
            return ()
        if len(text) == 3 and text[1] != "g":
            return ()
        return tuple(text) if all(letter in self.exact for letter in text) else ()

    def also(self, names: Names) -> Vocabulary:
        """This vocabulary with more names: letters that a student brought in."""
        return vocabulary_of({key: (*self.given.get(key, ()), *names.get(key, ())) for key in (*self.given, *names)})


def vocabulary_of(names: Names) -> Vocabulary:
    """The vocabulary of a problem: by key ("biceps.force") the spellings ("F_B", "Fm", "biceps"). One spelling may
    belong to several keys.
    """
    exact: dict[str, tuple[str, ...]] = {}
    folded: dict[str, tuple[str, ...]] = {}
    words: dict[str, tuple[str, ...]] = {}
    subscripts: dict[str, tuple[tuple[str, tuple[str, ...]], ...]] = {}
    longest = 1
    for key, spellings in names.items():
        for spelling in spellings:
            plain = normal(spelling.strip(), range(len(spelling) + 1)).text
            short = fold(plain)
            _add(exact, plain, key)
            _add(folded, short, key)
            if len(short) > 2 and "_" not in plain:
                _add(words, short.casefold(), key)
            head, _, rest = plain.partition("_")
            if rest:
                subscripts[fold(head)] = (*subscripts.get(fold(head), ()), (fold(rest).casefold(), (key,)))
            longest = max(longest, len(plain.split()))
    return Vocabulary(dict(names), exact, folded, words, subscripts, longest)


def _add(names: dict[str, tuple[str, ...]], spelling: str, key: str) -> None:
    if spelling and key not in names.get(spelling, ()):
        names[spelling] = (*names.get(spelling, ()), key)


def fold(text: str) -> str:
    """A name without the marks of its subscript; a Greek name is its letter; small letters but for the first:
    "F_{M}" is "Fm".
    """
    bare = _JOINTS.sub("", _greek(text)).replace("⊥", "perp")
    return bare[:1] + bare[1:].casefold()


def is_letter(word: str) -> bool:
    """Whether a word that is not known looks like a letter, with a subscript or without: V, Fm, R_joint, τ_b; not
    "so", "arm", "torque".
    """
    plain = word.casefold()
    if len(word) > WORD or plain in SHORT or len(word) > 1 and (plain in SMALL or plain in NOUNS) or plain in FUNCTIONS:
        return False
    return _LETTER.fullmatch(_greek(word)) is not None or _SUBSCRIPTED.fullmatch(_greek(word)) is not None


def _greek(text: str) -> str:
    """A Greek name in front as its letter: "tau_b" is "τ_b"."""
    found = _HEAD.match(text)
    return GREEK[found[1].casefold()] + text[found.end() :] if found else text
