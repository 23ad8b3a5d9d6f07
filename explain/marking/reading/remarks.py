"""Words behind a side as a remark: the ways they name, the angle they tell. Reads no expression."""

from __future__ import annotations

import re
from collections.abc import Sequence

from .numbers import spelled
from .piece import Remark
from .words import directions

_AT_ANGLE = re.compile(r"(?:\bat|@|\bangle|^|, )\s*([0-9]{1,6}(?:[.,][0-9]{1,6})?)\s*(?:°|deg)")
_EDGES = " \t,;:.-–—"


def remark(typed: Sequence[str], plain: Sequence[str]) -> Remark | None:
    """The remark of a side, from its parts as typed and in plain signs; None where there are no words."""
    texts = [_bare(each) for each in typed]
    text = ", ".join(each for each in texts if each)
    if not text:
        return None
    told = ", ".join(_bare(each) for each in plain)
    angle = _AT_ANGLE.search(told)
    return Remark(text, directions(told), spelled(angle[1], "").number if angle else None)


def _bare(text: str) -> str:
    """Without the brackets and the signs around it."""
    inner = text.strip()
    if inner[:1] in ("(", "[", "{") and inner[-1:] in (")", "]", "}"):
        inner = inner[1:-1]
    return inner.strip(_EDGES)
