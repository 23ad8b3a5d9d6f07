"""What comes in with a request, read within bounds: a form, or an object of JSON and its text. Knows no page."""

from __future__ import annotations

import json
from collections.abc import Callable, Mapping
from typing import Any
from urllib.parse import parse_qsl

from starlette.requests import Request

from .refused import Refused

MOST_FIELDS = 8
_UNREAD = "That could not be read."


async def form_of(request: Request) -> Mapping[str, str]:
    """The fields of a form. Raises Refused."""
    try:
        return dict(parse_qsl((await request.body()).decode(), keep_blank_values=True, max_num_fields=MOST_FIELDS))
    except ValueError:
        raise Refused(400, _UNREAD) from None


async def json_of(request: Request) -> Mapping[str, Any]:
    """An object of JSON. Raises Refused for anything else, however deep."""
    try:
        asked = json.loads(await request.body())
    except (ValueError, RecursionError):
        asked = None
    if not isinstance(asked, dict):
        raise Refused(400, _UNREAD)
    return asked


def text_of(asked: Mapping[str, Any], too_long: Callable[[str], bool], says: str) -> str:
    """What was typed. Raises Refused where there is none, or with `says` where it is too long."""
    text = asked.get("text")
    if not isinstance(text, str):
        raise Refused(400, _UNREAD)
    if too_long(text):
        raise Refused(413, says)
    return text
