"""Tells the letters of a working from its words."""

from __future__ import annotations

import re
from collections.abc import Sequence

from .tokens import Token

ENGLISH = frozenset(
    """a an the of on in at to for from by with is are be it its i we so as or no not if per each both all out off up
    down
left right front behind back away along across total sum combined net weight force torque moment mass arm distance
lever perp level horizontal vertical muscle joint elbow angle cable head bag bar hand foot leg side part pull push
pulls pushes takes gets carry carries supply has have still add them em me my this that these those forces torques
moments weights lb lbs kg cm mm ft use using take taking about because resolve resolving check given let find need
one two half whole which what where when there than then too must same only over under between goes line call just
now he she his her they do does did know get got see say pt ans sol ok yes hip knee toe rod end top tip""".split()
)
_LETTER = re.compile(
    r"^(?:[A-Za-zα-ωΑ-Ω](?:\d|_?[xyXYhvHV]|')?|[A-Za-zα-ωΑ-Ω]{1,3}_\w+|[A-Zα-ωΑ-Ω][a-z]{1,2}\d?|[A-Z]{1,2}[a-z]{0,4}\d?[xyv]?|[dxrlmtwfT][A-Za-z]{0,3}\d?)$"
)
SYMBOL = re.compile(r"^[A-Za-zα-ω](?:_\w{1,4}|\d)?$")
_NUMBERED = re.compile(r"^[A-Za-zα-ω]\d$")
END = Token("end", "")


def is_letter(tokens: Sequence[Token], here: int, names: frozenset[str], symbols_alone: bool) -> bool:
    """Whether a token is a letter of the working, by itself and by what stands around it."""
    token, after = (
        tokens[here] if here < len(tokens) else END,
        tokens[here + 1] if here + 1 < len(tokens) else END,
    )
    before = tokens[here - 1] if here > 0 else END
    if token.kind != "word" or token.text == "Σ":
        return False
    if token.text[0] == "§" or symbols_alone:
        return True
    if token.text in ("a", "A", "I", "i") and after.kind == "word" and before.kind != "op":
        return False
    known, english = token.text in names, token.text.lower() in ENGLISH
    if english and not known and len(token.text) > 1:
        return False
    ahead = tokens[here + 2] if here + 2 < len(tokens) else END
    text_is_word = not (known and len(token.text) <= 2) and token.text != "g"
    hyphen = after.text == "-" and after.gap == 0 and ahead.kind == "word" and ahead.gap == 0
    if (
        after.text == "("
        and after.kind == "op"
        and before.kind != "op"
        and (english or after.gap and len(token.text) > 2)
    ):
        return known and not after.gap
    glued = (
        before.kind in ("op", "num", "func")
        and not (before.text == ")" and token.gap and text_is_word)
        or after.kind in ("op", "func")
        and not hyphen
    )
    if _symbol(token, names) and (_symbol(before, names) or _symbol(after, names)):
        return True
    if known:
        called = before.kind == "word" and before.text.islower() and token.text[:1].isupper() and len(token.text) <= 2
        return glued or after.kind == "end" and (called or before.kind in ("end", "eq", "num"))
    if not _LETTER.match(token.text):
        return False
    return glued or len(token.text) <= 3 and before.kind == "end" and after.kind == "end"


def _symbol(token: Token, names: frozenset[str]) -> bool:
    text = token.text
    if token.kind != "word" or text == "Σ":
        return False
    return (
        "_" in text
        or text == "g"
        or bool(_NUMBERED.match(text))
        or text in names
        and (len(text) <= 2 or text[:1].isupper() and len(text) <= 4)
    )
