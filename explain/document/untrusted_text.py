"""What typed text may do to a page: nothing. Knows which characters could steer a reader's screen."""

from __future__ import annotations

import re
from functools import lru_cache

_LINE_END = re.compile("\r\n?|[\x85\u2028\u2029]")
_STEERING = re.compile("[\x00-\x08\x0b-\x1f\x7f-\x9f\u202a-\u202e\u2066-\u2069\ud800-\udfff\ufffe\uffff]")


def clean(text: str) -> str:
    """Typed text with every control character and override of the writing direction replaced by U+FFFD.

    Line ends become "\\n", tabs stay; lone surrogates and what XML cannot hold are replaced too.
    """
    return _STEERING.sub("\ufffd", _LINE_END.sub("\n", text))


@lru_cache(maxsize=4096)
def one_line(text: str) -> str:
    """Clean text in which line ends and tabs are spaces."""
    return clean(text).replace("\n", " ").replace("\t", " ")
