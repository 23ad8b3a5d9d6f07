"""The addresses of a tutor, and what each does. Whoever does not have the key meets pages that are not there."""

from __future__ import annotations

import asyncio
import os
import secrets
from collections.abc import Awaitable, Callable, Mapping
from pathlib import Path
from typing import Any

from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import HTMLResponse, JSONResponse, RedirectResponse, Response
from starlette.routing import Route

from ..problem.new_files import LIKE, new_files
from . import edit_pages, pages, saving
from .edit_pages import HOME, Sheet
from .log import Log
from .pool import STOPPED, Busy, Limits, Pool, Told
from .incoming import form_of, json_of, text_of
from .refused import Refused
from .shelf import NAME, Shelf

PRELOAD = ("explain.api", "rules", "explain.write.figure.free_body")
RETRY = 1
STOPS = {
    "time": "This takes too long to work and draw.",
    "memory": "This takes too much to work and draw.",
    "fault": "This could not be drawn: a fault of the program. The text is still here.",
    "busy": "The desk is at work. The text is still here: try again in a moment.",
}
LONG = f"A file on this page has at most {saving.MOST_BYTES:,} bytes."
TURNS = {"put": ("path", "value"), "turn": ("path", "degrees"), "add": ("kind",), "cut": ("path",), "redraw": ()}

Answering = Callable[[Request], Awaitable[Response]]


class Editing:
    """The tutor's part of a desk: its routes, and a pool of its own. `key` is what the first address holds."""

    def __init__(self, folder: Path, key: str, shelf: Shelf, log: Log, limits: Limits) -> None:
        self.folder, self._key, self._shelf, self._log = folder, key, shelf, log
        self._limits, self._listed = limits, dict[str, Path]()

    def routes(self) -> list[Route]:
        """Each address with one thing that it does."""
        change = [Route(f"{HOME}/{{name}}/{op}", self._with_key(self._changing(op)), methods=["POST"]) for op in TURNS]
        return [
            Route(HOME, self._entered, methods=["GET"]),
            Route(HOME, self._with_key(self._begun), methods=["POST"]),
            Route(f"{HOME}/{{name}}", self._with_key(self._page), methods=["GET"]),
            Route(f"{HOME}/{{name}}", self._with_key(self._posted), methods=["POST"]),
            Route(f"{HOME}/{{name}}/save", self._with_key(self._saved), methods=["POST"]),
            *change,
        ]

    def start(self) -> None:
        self._pool = Pool("explain.desk.edit_tasks", 1, self._limits, 16, PRELOAD)
        self._pool.start()

    async def end(self) -> None:
        await self._pool.end()

    # ------------------------------------------------------------------ the key
    def _with_key(self, answer: Answering) -> Answering:
        async def guarded(request: Request) -> Response:
            if not self._knows(request.cookies.get(_cookie(request), "")):
                raise HTTPException(404)
            return await answer(request)

        return guarded

    def _knows(self, said: str) -> bool:
        return secrets.compare_digest(said.encode("utf-8", "replace"), self._key.encode())

    async def _entered(self, request: Request) -> Response:
        """The list; or, with the key in the address, the cookie and the way to the address without it."""
        if "key" not in request.query_params:
            return await self._with_key(self._home)(request)
        if not self._knows(request.query_params["key"]):
            raise HTTPException(404)
        away = RedirectResponse(HOME, 303)
        away.set_cookie(_cookie(request), self._key, path=HOME, httponly=True, samesite="strict")
        return away

    # ------------------------------------------------------------------ the list
    async def _home(self, _: Request) -> Response:
        return HTMLResponse(self._list())

    def _list(self, said: str = "", name: str = "") -> str:
        entries = [pages.Entry(f"{HOME}/{each.name}", each.title) for each in self._shelf.items().values()]
        return edit_pages.problems(entries, LIKE, said, name)

    async def _begun(self, request: Request) -> Response:
        """A new problem, from one that works; nothing that is there is touched."""
        form = await form_of(request)
        name, like = form.get("name", "").strip(), form.get("like", "")
        if not NAME.fullmatch(name) or like not in LIKE:
            said = "A file has a name of small letters, digits and hyphens."
            return HTMLResponse(self._list(said, name[:60]), 400)
        if name in self._shelf.items():
            return HTMLResponse(self._list("That name is taken.", name), 409)
        ((file, text),) = new_files("problem", name, like).items()
        try:
            await asyncio.to_thread(saving.save, self.folder / file, text, "")
        except saving.Changed:
            return HTMLResponse(self._list("That name is taken.", name), 409)
        except saving.Unsaved as why:
            return HTMLResponse(self._list(str(why), name), 507)
        return RedirectResponse(f"{HOME}/{name}", 303)

    # ------------------------------------------------------------------ one problem
    def _path(self, request: Request) -> Path:
        """The file of a name: one that is listed, was listed since the desk began, or is not there yet."""
        name = str(request.path_params["name"])
        item = self._shelf.items().get(name)
        if item is not None:
            self._listed[name] = item.path
        if name in self._listed:
            return self._listed[name]
        path = self.folder / f"{name}.toml"
        if not NAME.fullmatch(name) or os.path.lexists(path):
            raise HTTPException(404)
        return path

    async def _page(self, request: Request) -> Response:
        path = self._path(request)
        try:
            loaded = await asyncio.to_thread(saving.load, path)
        except saving.Unsaved as why:
            return HTMLResponse(pages.sorry("This file cannot be changed here", str(why), HOME), 409)
        if not loaded.digest:
            raise HTTPException(404)
        return await self._shown(request, loaded.text, loaded.digest)

    async def _shown(
        self,
        request: Request,
        text: str,
        digest: str,
        state: str = "",
        theirs: tuple[str, str] | None = None,
        status: int = 200,
    ) -> Response:
        told = await self._ask("redraw", {"text": text})
        name = str(request.path_params["name"])
        return HTMLResponse(edit_pages.problem(Sheet(name, text, digest, told, state, theirs)), status)

    async def _posted(self, request: Request) -> Response:
        """The page without script: drawn again, or saved."""
        path, form = self._path(request), await form_of(request)
        text, digest = form.get("text", "").replace("\r\n", "\n"), form.get("digest", "")
        if _too_long(text):
            return HTMLResponse(pages.sorry("This is too long", LONG, HOME), 413)
        match form.get("do"):
            case "take":
                return RedirectResponse(f"{HOME}/{request.path_params['name']}", 303)
            case "save" | "over" as wish:
                digest = form.get("theirs", "") if wish == "over" else digest
                try:
                    loaded = await asyncio.to_thread(saving.save, path, text, digest)
                except saving.Changed as changed:
                    there = changed.there
                    return await self._shown(request, text, digest, "Nothing was saved.", there, 409)
                except saving.Unsaved as why:
                    return await self._shown(request, text, digest, str(why), status=507)
                return await self._shown(request, loaded.text, loaded.digest, "Saved.")
        return await self._shown(request, text, digest)

    # ------------------------------------------------------------------ for the page's own script
    def _changing(self, op: str) -> Answering:
        async def changed(request: Request) -> Response:
            self._path(request)
            asked = await json_of(request)
            told = await self._ask(
                op, {"text": text_of(asked, _too_long, LONG), **{key: asked.get(key) for key in TURNS[op]}}
            )
            if STOPPED in told:
                return JSONResponse(told, 503, {"retry-after": str(RETRY)})
            return JSONResponse(told, 409 if "kept" in told else 200)

        return changed

    async def _saved(self, request: Request) -> Response:
        path, asked = self._path(request), await json_of(request)
        text, digest = text_of(asked, _too_long, LONG), asked.get("digest")
        if not isinstance(digest, str):
            raise Refused(400, "That could not be read.")
        self._log.count("save")
        try:
            loaded = await asyncio.to_thread(saving.save, path, text, digest)
        except saving.Changed as changed:
            return JSONResponse({"there": changed.there._asdict(), "said": "Nothing was saved."}, 409)
        except saving.Unsaved as why:
            return JSONResponse({"said": str(why)}, 507)
        return JSONResponse({"digest": loaded.digest, "said": "Saved."})

    async def _ask(self, op: str, more: Mapping[str, Any]) -> Told:
        self._log.count(op)
        try:
            told = await self._pool.ask({"op": op, "root": str(self.folder), **more})
        except Busy:
            return {STOPPED: "busy", "said": STOPS["busy"]}
        if STOPPED in told:
            self._log.stopped(op, told)
            return {STOPPED: told[STOPPED], "said": STOPS[told[STOPPED]]}
        return told


def _cookie(request: Request) -> str:
    """The name of the cookie: browsers keep one set for all ports of a machine."""
    return f"desk-{request.url.port or 0}"


# ---------------------------------------------------------------------- what comes in
def _too_long(text: str) -> bool:
    return len(text.encode("utf-8", "replace")) > saving.MOST_BYTES
