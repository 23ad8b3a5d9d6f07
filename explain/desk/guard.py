"""What every request passes through: whose address it names, where it comes from, how large it is; and the headers of
every answer. Knows no page.
"""

from __future__ import annotations

from collections.abc import Mapping

from starlette.responses import PlainTextResponse
from starlette.types import ASGIApp, Message, Receive, Scope, Send

MOST_BODY = 128 * 1024
POLICY = (
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; connect-src 'self'; "
    "form-action 'self'; base-uri 'none'; frame-ancestors 'none'; require-trusted-types-for 'script'; "
    "trusted-types desk"
)
HEADERS: Mapping[str, str] = {
    "content-security-policy": POLICY,
    "x-content-type-options": "nosniff",
    "referrer-policy": "same-origin",  # with no-referrer browsers send "Origin: null" with our own forms
    "cross-origin-opener-policy": "same-origin",
    "cross-origin-resource-policy": "same-origin",
    "permissions-policy": "camera=(), microphone=(), geolocation=()",
    "cache-control": "no-store",
}


class Guard:
    """An application that only requests to the addresses `hosts`, and changes from the pages of `origins`, reach."""

    def __init__(self, app: ASGIApp, hosts: frozenset[str], origins: frozenset[str]) -> None:
        self.app, self.hosts, self.origins = app, hosts, origins

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        if scope["type"] != "http":
            await self.app(scope, receive, send)
            return

        async def sending(message: Message) -> None:
            if message["type"] == "http.response.start":
                there = {name for name, _ in message["headers"]}
                message["headers"] = [
                    *message["headers"],
                    *((name.encode(), value.encode()) for name, value in HEADERS.items() if name.encode() not in there),
                ]
            await send(message)

        refused = self._refused(scope)
        await (refused or self.app)(scope, receive, sending)

    def _refused(self, scope: Scope) -> PlainTextResponse | None:
        heads = [(name.decode("latin-1"), value.decode("latin-1")) for name, value in scope["headers"]]
        of = dict(heads)
        if sum(name == "host" for name, _ in heads) != 1 or of["host"].lower() not in self.hosts:
            return PlainTextResponse("This is not the address of this desk.\n", 421)
        if scope["method"] in ("GET", "HEAD"):
            return None
        if of.get("origin", "").lower() not in self.origins or of.get("sec-fetch-site", "same-origin") != "same-origin":
            return PlainTextResponse("This did not come from a page of this desk.\n", 403)
        length = of.get("content-length", "")
        if "transfer-encoding" in of or not (length.isascii() and length.isdigit()) or int(length) > MOST_BODY:
            return PlainTextResponse("This is too long for the desk, or does not say how long it is.\n", 413)
        return None
