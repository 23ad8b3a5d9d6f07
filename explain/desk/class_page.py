"""The page about a class: by problem how many tried, how many are done, and where the others stop. No names: none are
kept.

It is opened by a key in its first address, which becomes a cookie: other users of the machine cannot look.
"""

from __future__ import annotations

import secrets
import sqlite3
from collections.abc import Awaitable, Callable, Mapping
from typing import Any, Protocol, TypeVar

from starlette.requests import Request
from starlette.responses import HTMLResponse, RedirectResponse, Response
from starlette.routing import Route

from . import pages
from .kept import Count, Kept
from .refused import Refused

T = TypeVar("T")
COOKIE, PATH = "class-key", "/class"


class Keeps(Protocol):
    """What the page needs of a desk."""

    settings: Any
    handed: Mapping[str, Any]

    def in_keeping(self, do: Callable[[], T]) -> Awaitable[T]: ...

    def ask_slips(self) -> Awaitable[Mapping[str, str]]: ...

    def titles(self) -> Mapping[str, str]: ...


def class_routes(desk: Keeps) -> list[Route]:
    """The addresses of the page."""

    async def shown(request: Request) -> Response:
        key = request.query_params.get("key")
        if key is not None and opens(desk.settings.key, key):
            answer = RedirectResponse(PATH, 303)
            secure = any(each.startswith("https:") for each in desk.settings.origins)
            answer.set_cookie(COOKIE, key, httponly=True, samesite="strict", path=PATH, secure=secure)
            return answer
        if not opens(desk.settings.key, request.cookies.get(COOKIE, "")):
            raise Refused(403, "This page opens with the address that the desk printed when it was started.")
        kept: Kept = desk.settings.kept
        try:
            counts = await desk.in_keeping(kept.counts)
        except sqlite3.Error:
            raise Refused(503, "The file that attempts are kept in cannot be read just now.") from None
        return HTMLResponse(class_page(counts, desk.titles(), await desk.ask_slips(), kept.days))

    return [Route(PATH, shown)]


def opens(key: str, offered: str) -> bool:
    """Whether a key is the one, told in the same time whatever is offered."""
    return bool(key) and secrets.compare_digest(key.encode(), offered.encode("utf-8", "replace"))


def class_page(counts: list[Count], titles: Mapping[str, str], slips: Mapping[str, str], days: int) -> str:
    """The page as HTML."""
    tables = "\n".join(_problem(each, titles.get(each.problem, each.problem), slips) for each in counts)
    body = f"""<h1>The class</h1>
<p>What was tried in the last {days} days, by problem. A page that was opened again counts again.</p>
{tables or "<p>Nothing has been tried yet.</p>"}"""
    return pages.page("The class", body, where="All problems")


def _problem(count: Count, title: str, slips: Mapping[str, str]) -> str:
    stopped = count.tried - count.done
    rows = [(str(line), number) for line, number in count.lines]
    named = [(slips.get(slip, slip), number) for slip, number in count.slips]
    said = f"{count.tried} tried, {count.done} {'is' if count.done == 1 else 'are'} done, {stopped} not yet."
    return f"""<section aria-labelledby="of-{pages.text(count.problem)}">
<h2 id="of-{pages.text(count.problem)}">{pages.text(title)}</h2>
<p>{said}</p>
{_table("The first line that does not hold", "Line", rows, count.tried)}
{_table("What went wrong there", "Slip", named, count.tried)}
</section>"""


def _table(caption: str, head: str, rows: list[tuple[str, int]], of: int) -> str:
    if not rows:
        return ""
    made = "".join(
        f'<tr><th scope="row">{pages.text(name)}</th><td class="right">{number}</td>'
        f'<td><meter min="0" max="{of}" value="{number}" aria-label="{number} of {of}"></meter></td></tr>'
        for name, number in rows
    )
    return (
        f'<table><caption>{caption}</caption><thead><tr><th scope="col">{head}</th>'
        '<th scope="col" class="right">How many</th><th scope="col">Of all</th></tr></thead>'
        f"<tbody>{made}</tbody></table>"
    )
