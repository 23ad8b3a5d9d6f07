"""What surrounds a line and is no part of it: list marks, headings, tables, bold, crossed-out text, the part it opens.
Knows no mechanics.

What is no part of the line is blanked, so that every place stays where it was typed.
"""

from __future__ import annotations

import re
from typing import NamedTuple

_HEADING = re.compile(r"\s*#{1,6}(?:\s+|$)")
_QUOTED = re.compile(r"\s*(?:>\s*)+")
_BULLET = re.compile(
    r"\s*(?:[*+•‣◦▪–-]\s+|(?i:step\s*)?[0-9]{1,2}[.)]\s+(?!(?:[-+*/=×·]|[xX](?!\s*(?:=|times\b)))\s))(?=\S)"
)
_NUMBERED = re.compile(r"\s*[0-9]{1,2}[.)]\s+(?=\S)")
_DASH = re.compile(r"\s*[–-]\s+(?=\S)")
_LABEL = r"([a-h]|i{1,3}|iv|v)"
_PART = re.compile(
    rf"\s*(?:(?i:part|question|q\.?)\s*\(?{_LABEL}\)?(?=[\s:.)]|$)|\({_LABEL}\)(?=[\s:]|$)|{_LABEL}[).](?=\s|$))"
    r"(?!\s*(?:[-+*/×·=^]|[xX](?!\s*(?:=|times\b)))\s)[\s:.)–-]*"
)
_IN_HEADING = re.compile(rf"\b(?i:part|question)\s*\(?{_LABEL}\b|\({_LABEL}\)|^\s*#*\s*{_LABEL}[).]?\s*$")
_STRUCK = re.compile(r"~~(?=\S)(.{1,2000}?)(?<=\S)~~")
_STRONG = re.compile(r"(?:(?<![\w)*])(\*{2,3}|_{2})|^\s*(\*))(?=[^\s*_])(.{0,2000}?)(?<=[^\s*_])(?:\1|\2)(?![\w*(])")
_TICKS = re.compile(r"`+")
_RULE = re.compile(r"[\s|:=_*-]*")
_BARS = re.compile(r"\|\s*([A-Za-z](?:_?[A-Za-z0-9]{1,8})?)\s*\|")
_GONE = re.compile(
    r"\b(?:crossed out|scratch(?:ed)? (?:this|out)|ignore this|strike this|struck out|scrap this|delete "
    r"this|(?:this|line) (?:is|was) wrong)\b"
    r"|[(\[]\s*wrong\s*[)\]]",
    re.IGNORECASE,
)
_INSTEAD = re.compile(
    r"\s*(?:(?:no|wait|sorry|actually|wrong|instead)\s*[-–—,:;.!]|no[,]? wait|(?:nope|oops|correction)\b"
    r"|(?:scrap|ignore|scratch|forget|strike) (?:that|above|the above|the last|line)\b)",
    re.IGNORECASE,
)


class Laid(NamedTuple):
    """A line without what surrounds it, letter for letter in its place. `heading`: it is one; `dash`: a dash in
    front may be a list mark.
    """

    text: str
    part: str = ""
    heading: bool = False
    struck: bool = False
    replaces: bool = False
    dash: bool = False
    table: bool = False


def laid_out(line: str, bulleted: bool = False) -> Laid:
    """The line itself. With `bulleted` a dash or a number in front is a list mark, as it is in the lines around."""
    text = _blank(_QUOTED.match(line), line)
    heading = _HEADING.match(text)
    if heading:
        return Laid(_blank(heading, text), _part_in(text), heading=True)
    if not text.strip() or _RULE.fullmatch(text) and len(text.strip()) > 2:
        return Laid(" " * len(text), heading=bool(text.strip()))
    text, struck = _unstruck(text)
    dash = _DASH.match(text)
    bullet = (bulleted and _NUMBERED.match(text) or _BULLET.match(text)) if bulleted or dash is None else None
    text = _bare(_blank(bullet, text))
    table = text.lstrip().startswith("|") and text.rstrip().endswith("|") and text.count("|") > 1
    text = text.replace("|", ";") if table else _BARS.sub(lambda found: f" {found[1]} ".ljust(len(found[0])), text)
    opened = _PART.match(text)
    part = next((each for each in opened.groups() if each), "").lower() if opened else ""
    text = _blank(opened, text)
    return Laid(
        text,
        part,
        not text.strip() and bool(part),
        struck or _GONE.search(text) is not None,
        _INSTEAD.match(text) is not None,
        dash is not None and bullet is None,
        table,
    )


def _blank(found: re.Match[str] | None, text: str) -> str:
    return " " * found.end() + text[found.end() :] if found else text


def _part_in(text: str) -> str:
    found = _IN_HEADING.search(text)
    return next((each for each in found.groups() if each), "").lower() if found else ""


def _unstruck(text: str) -> tuple[str, bool]:
    """The line without what is crossed out in it; the whole of it, where all is crossed out, is kept and said to be
    so.
    """
    if "~~" not in text:
        return text, False
    rest = _STRUCK.sub(lambda found: " " * len(found[0]), text)
    if rest.strip(" -*+>.|"):
        return rest, False
    return text.replace("~~", "  "), True


def _bare(text: str) -> str:
    """Without the marks of bold, slanted and typewriter text."""
    if "`" in text:
        text = _TICKS.sub(lambda found: " " * len(found[0]), text)
    if "*" not in text and "__" not in text:
        return text
    return _STRONG.sub(lambda found: f"{found[3]}{' ' * len(found[1] or found[2])}".rjust(len(found[0])), text)
