"""Where the reader stands in one side of a line: the tokens, the vocabulary, and the choices met so far. Knows no
order of operations.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

from .limits import DEPTH, WORD
from .tokens import BEGINS, Token
from .units import unit_word
from .vocabulary import Vocabulary, is_letter
from .words import GREEK, SUMS

END = Token("end", "", 0, 0)
STARTS = BEGINS | {"sigma"}
SIGNS = ("plus", "minus")
MOST_WORDS = 6  # of a spelling


class Unreadable(Exception):
    """A side that cannot be read: the token where it stops, why, and what to ask."""

    def __init__(self, token: Token, why: str, ask: str) -> None:
        super().__init__(why)
        self.token = token
        self.why, self.ask = (
            each.replace(token.text, f"{token.text[:WORD]}...") if len(token.text) > WORD else each
            for each in (why, ask)
        )


def is_plain(token: Token, vocabulary: Vocabulary) -> bool:
    """Whether a word is no name, no letter and no unit, but a word."""
    if token.kind != "word":
        return False
    return not (
        vocabulary.keys(token.text) or is_letter(token.text) or vocabulary.split(token.text) or unit_word(token.text)
    )


def is_long(text: str) -> bool:
    """Whether a name is a word rather than a letter: two of them side by side are no product."""
    shape = text.islower() or len(text) > 3 and text.istitle()
    return len(text) > 2 and text.isalpha() and text.casefold() not in GREEK and shape


@dataclass(slots=True)
class Cursor:
    """`units` counts the units so far, `unit_end` is where the last one ended, `names` counts letters; `long` says that
    the last operand was a word.

    `met` names the places where a side can be meant in two ways; with that name in `flipped` the less likely way is
    read.
    """

    tokens: Sequence[Token]
    vocabulary: Vocabulary
    flipped: frozenset[str] = frozenset()
    pound: str = "lbf"
    first: bool = True  # the first side of its chain
    at: int = 0
    depth: int = 0
    units: int = 0
    unit_end: int = -1
    names: int = 0
    long: bool = False
    met: set[str] = field(default_factory=set)

    def __post_init__(self) -> None:
        if "times" in self.flipped and self.known("x"):
            self.tokens = [each._replace(kind="word") if each.text in ("x", "X") else each for each in self.tokens]
        self.tokens = (*self.tokens, *[END._replace(at=self.tokens[-1].end if self.tokens else 0)] * 6)

    @property
    def here(self) -> Token:
        return self.tokens[self.at]

    @property
    def before(self) -> Token:
        return self.tokens[self.at - 1] if self.at else END

    def ahead(self, by: int = 1) -> Token:
        return self.tokens[min(self.at + by, len(self.tokens) - 1)]

    def take(self) -> Token:
        self.at += 1
        return self.tokens[self.at - 1]

    def choose(self, choice: str) -> bool:
        """Whether the less likely way is wanted, where there are two."""
        self.met.add(choice)
        return choice in self.flipped

    def known(self, text: str) -> bool:
        return bool(self.vocabulary.keys(text))

    def is_word(self, token: Token) -> bool:
        return is_plain(token, self.vocabulary) and token.text.casefold() not in SUMS

    def starts(self, by: int = 0) -> bool:
        """Whether an operand starts so many tokens ahead, a sign before it counted in."""
        by += self.ahead(by).kind in SIGNS
        token = self.ahead(by)
        return token.kind in STARTS or token.kind == "word" and (not self.is_word(token) or self.begins_name(by))

    def begins_name(self, by: int) -> bool:
        """Whether a known name of several words starts so many tokens ahead."""
        words = [self.ahead(by + place) for place in range(min(self.vocabulary.longest, MOST_WORDS))]
        return any(
            all(each.kind == "word" for each in words[:count])
            and self.known(" ".join(each.text for each in words[:count]))
            for count in range(2, len(words) + 1)
        )

    def deeper(self) -> None:
        self.depth += 1
        if self.depth > DEPTH:
            raise Unreadable(self.here, f"brackets more than {DEPTH} deep", "Can it be split into several lines?")

    def missing(self) -> Unreadable:
        """What to say where an operand should start and does not."""
        token, before = self.here, self.before.text
        if token.kind == "refused":
            return Unreadable(token, f"{token.why} is not read here", "Can it be typed in plain signs?")
        if token.kind == "end":
            return Unreadable(
                token, f'nothing stands behind "{before}"' if before else "nothing to read", "What is missing here?"
            )
        if token.kind == "word":
            return Unreadable(
                token, f'"{token.text}" is no letter of this problem', f'Which quantity is "{token.text}"?'
            )
        return Unreadable(
            token, f'"{token.text}" where a number, a letter or a bracket should stand', "What is missing here?"
        )
