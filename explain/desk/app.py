"""The addresses of the desk and what each does. Imports neither sympy nor the rules: what is worked is asked of the
pool.
"""

from __future__ import annotations

import asyncio
import sqlite3
from collections.abc import AsyncIterator, Callable, Mapping, Sequence
from concurrent.futures import ThreadPoolExecutor
from contextlib import asynccontextmanager
from functools import partial
from pathlib import Path
from typing import Any, NamedTuple, TypeVar

from starlette.applications import Starlette
from starlette.exceptions import HTTPException
from starlette.middleware.gzip import GZipMiddleware
from starlette.requests import ClientDisconnect, Request
from starlette.responses import HTMLResponse, JSONResponse, RedirectResponse, Response
from starlette.routing import Route

from . import pages
from .class_page import class_routes
from .editing import Editing
from .guard import Guard
from .incoming import form_of, json_of, text_of
from .kept import Attempt, Kept
from .log import Log
from .pool import STOPPED, Busy, Limits, Pool, Told
from .refused import Refused
from .shelf import Item, Shelf
from .variants import variants_of

PRELOAD = ("explain.api", "rules", "explain.write.figure.free_body")
RETRY = 2  # seconds after which one who was refused may try again
MOST_CHARACTERS, MOST_LINES = 20_000, 200  # of a working
LINE_BREAKS = "\r\n"
HANDED = "Everyone has numbers of their own: open it with your code."
T = TypeVar("T")
STOPS = {
    "time": "This working takes too long to judge. Is there a very long line in it?",
    "memory": "This working takes too much to judge. Is there a very long line in it?",
    "fault": "This could not be judged: a fault of the program. Your lines are still here.",
    "busy": "Many are at work just now. Your lines are still here: try again in a moment.",
    "long": f"A working has at most {MOST_CHARACTERS:,} characters and {MOST_LINES} lines.",
}


class Settings(NamedTuple):
    """How a desk is served: its folder, the addresses it answers to, the origins of its own pages, how many
    processes work.

    `variants`: personal variants have addresses of their own, under codes. `kept` is where attempts are kept, `key`
    the word that opens the page about the class, `edit` the one that opens the tutor's pages, "" for none.
    """

    folder: Path
    hosts: frozenset[str]
    origins: frozenset[str]
    jobs: int = 2
    limits: Limits = Limits()
    most: int = 64
    variants: bool = False
    kept: Kept | None = None
    key: str = ""
    edit: str = ""


class Desk:
    """One desk: a folder, a pool, a log. `app` is what a server runs."""

    def __init__(self, settings: Settings, log: Log | None = None) -> None:
        self.settings, self.log = settings, log or Log()
        self.shelf = Shelf(settings.folder)
        self.handed = variants_of(settings.folder) if settings.variants else {}
        self.editing = Editing(settings.folder, settings.edit, self.shelf, self.log, settings.limits)
        self._keeping = ThreadPoolExecutor(1)
        self._about: dict[tuple[Path, tuple[int, int]], Told] = {}
        self.app = Guard(GZipMiddleware(self._routes(), minimum_size=600), settings.hosts, settings.origins)

    def _routes(self) -> Starlette:
        return Starlette(
            routes=[
                Route("/", self.home),
                *self._of_a_problem("/p/{name}"),
                *(self._of_a_problem("/p/{name}/{code}") if self.settings.variants else ()),
                *(class_routes(self) if self.settings.kept is not None else ()),
                *(self.editing.routes() if self.settings.edit else ()),
                Route("/asset/{digest}/{file}", asset),
            ],
            lifespan=self._life,
            exception_handlers={
                Busy: self._busy,
                Refused: self._refuse,
                HTTPException: self._no_page,
                ClientDisconnect: self._gone,
                Exception: self._fault,
            },
        )

    def _of_a_problem(self, address: str) -> list[Route]:
        return [
            Route(address, self.problem),
            Route(f"{address}/working", self.posted, methods=["POST"]),
            Route(f"{address}/working/judge", self.judged, methods=["POST"]),
            Route(f"{address}/working/read", self.read, methods=["POST"]),
            Route(f"{address}/working/forget", self.forget, methods=["POST"]),
        ]

    @asynccontextmanager
    async def _life(self, _: Starlette) -> AsyncIterator[None]:
        settings = self.settings
        tasks = "explain.desk.tasks"
        self.pool = Pool(tasks, settings.jobs, settings.limits, settings.most, PRELOAD)
        self.reading = Pool(tasks, 1, settings.limits, settings.most, PRELOAD)  # an echo waits behind no judgement
        self.pool.start()
        self.reading.start()
        if settings.edit:
            self.editing.start()
        counting = asyncio.create_task(self.log.each_minute())
        self.log.say("started")
        yield
        counting.cancel()
        await self.pool.end()
        await self.reading.end()
        if settings.edit:
            await self.editing.end()
        self._keeping.shutdown()
        if settings.kept is not None:
            settings.kept.close()
        self.log.say("stopped")

    # ------------------------------------------------------------------ what is asked of the pool
    async def _ask(self, op: str, item: Item, **more: Any) -> Told:
        self.log.count(op)
        asked = {"op": op, "path": str(item.path), "root": str(self.settings.folder), **more}
        told = await (self.reading if op == "read" else self.pool).ask(asked, str(item.path))
        if STOPPED in told:
            self.log.stopped(op, told)
        return told

    async def keep(self, item: Item, text: str, told: Told, visit: str) -> str:
        """Keep how far a working has got, where that was asked for. The code of its lines, "" where none are kept."""
        slip = str(told.pop("slip", ""))  # never for a student
        kept = self.settings.kept
        if kept is None or told["state"] in ("empty", "words"):
            return ""
        lines = sum(bool(each.strip()) for each in text.splitlines())
        attempt = Attempt(lines, told["line"], slip, told["hints"], told["state"] == "done")
        name, _, code = item.name.partition("/")
        try:
            return await self.in_keeping(partial(kept.note, name, code, visit, attempt, text))
        except sqlite3.Error as error:  # a full disk, a lost file: what a student does goes on
            self.log.say(f"not kept: {type(error).__name__}")
            return ""

    async def ask_slips(self) -> Mapping[str, str]:
        """What each slip is called."""
        told = await self.pool.ask({"op": "slips"})
        titles: Mapping[str, str] = told.get("titles", {})
        return titles

    def titles(self) -> Mapping[str, str]:
        """The titles of all problems, by name."""
        own = {name: each.title for name, each in self.shelf.items().items()}
        return own | {name: _title(found) for name, found in self.handed.items()}

    async def in_keeping(self, do: Callable[[], T]) -> T:
        """What is done with the file that attempts are kept in, one thing at a time."""
        return await asyncio.get_running_loop().run_in_executor(self._keeping, do)

    def _item(self, request: Request) -> Item:
        name, code = request.path_params["name"], request.path_params.get("code")
        found = self.handed.get(name, {}).get(code) if code is not None else self.shelf.item(name)
        if found is None:
            raise Refused(404, "There is no such problem here.")
        return found

    # ------------------------------------------------------------------ pages
    async def home(self, _: Request) -> Response:
        items = self.shelf.items()
        told = await asyncio.gather(*(self._told_of(each) for each in items.values()))
        entries = [
            pages.Entry(f"/p/{each.name}", said.get("title", each.title), said.get("about", ""), said.get("fault"))
            for each, said in zip(items.values(), told, strict=True)
        ]
        entries += [pages.Entry(f"/p/{name}", _title(found), HANDED) for name, found in self.handed.items()]
        return HTMLResponse(pages.problems(entries))

    async def _told_of(self, item: Item) -> Told:
        """What a problem is about, asked once for each time that its file was written."""
        mark = (item.path, item.stamp)
        if mark not in self._about:
            try:
                told = await self._ask("about", item)
            except Busy:
                return {}
            if STOPPED in told:
                return {}
            self._about = {key: each for key, each in self._about.items() if key[0] != item.path} | {mark: told}
        return self._about[mark]

    async def problem(self, request: Request) -> Response:
        name, code = request.path_params["name"], request.query_params.get("code", "").strip().lower()
        if name in self.handed and "code" not in request.path_params:
            if code in self.handed[name]:
                return RedirectResponse(f"/p/{name}/{code}", 303)
            return HTMLResponse(pages.code_wanted(f"/p/{name}", _title(self.handed[name]), bool(code)))
        return await self._page(self._item(request), pages.Working())

    async def posted(self, request: Request) -> Response:
        """The page of a problem with a working judged, for those without script."""
        item = self._item(request)
        form = await form_of(request)
        text = form.get("working", "").replace(LINE_BREAKS, "\n")
        if _too_long(text):
            return await self._page(item, pages.Working(text[:MOST_CHARACTERS], STOPS["long"]), 413)
        wanted, line = _small(form.get("hints")), _small(form.get("for"))
        try:
            told = await self._ask("judge", item, text=text, hints=wanted, **{"for": line})
        except Busy:
            told = {STOPPED: "busy"}
        if STOPPED in told:
            return await self._page(item, pages.Working(text, STOPS[told[STOPPED]]), 503)
        await self.keep(item, text, told, "")
        return await self._page(item, pages.Working(text, **{key: told[key] for key in pages.Working._fields[1:]}))

    def _keeps(self) -> str:
        """What is kept of a working, in words for those who type it."""
        kept = self.settings.kept
        if kept is None:
            return ""
        lines = " Your lines are kept too, under a code that you can delete them by." if kept.with_lines else ""
        return (
            "This desk keeps how far a working gets: how many lines, the first that does not hold, the slip there and "
            f"the hints, by day, for {kept.days} days. No name, no address.{lines}"
        )

    async def _page(self, item: Item, working: pages.Working, status: int = 200) -> Response:
        told = await self._ask("problem", item)
        if "fault" in told or STOPPED in told:
            return HTMLResponse(
                pages.sorry("This problem cannot be shown", "Its file has a fault: whoever set it can see which."), 503
            )
        made = pages.problem(f"/p/{item.name}", told["title"], told["html"], told["caution"], working, self._keeps())
        return HTMLResponse(made, status)

    # ------------------------------------------------------------------ for the page's own script
    async def judged(self, request: Request) -> Response:
        item, asked = self._item(request), await json_of(request)
        text = _typed(asked)
        told = await self._ask(
            "judge", item, text=text, hints=_small(asked.get("hints")), **{"for": _small(asked.get("for"))}
        )
        if "state" in told:
            visit = asked.get("visit")
            code = await self.keep(item, text, told, visit if isinstance(visit, str) and len(visit) < 65 else "")
            told |= {"kept": code} if code else {}
        return _said(told)

    async def forget(self, request: Request) -> Response:
        """Delete the lines that were kept under a code that the page was told."""
        self._item(request)
        code, kept = (await json_of(request)).get("code"), self.settings.kept
        if kept is None or not isinstance(code, str):
            raise Refused(404, "Nothing is kept here.")
        return JSONResponse({"forgotten": await self.in_keeping(partial(kept.forget, code))})

    async def read(self, request: Request) -> Response:
        item, asked = self._item(request), await json_of(request)
        return _said(await self._ask("read", item, text=_typed(asked)))

    # ------------------------------------------------------------------ what goes wrong
    async def _busy(self, request: Request, _: Exception) -> Response:
        self.log.count("refused")
        headers = {"retry-after": str(RETRY)}
        if request.method == "POST":
            return JSONResponse({STOPPED: "busy", "said": STOPS["busy"]}, 503, headers)
        return HTMLResponse(pages.sorry("Many are at work just now", "Load the page again in a moment."), 503, headers)

    async def _refuse(self, _: Request, error: Exception) -> Response:
        assert isinstance(error, Refused)
        return HTMLResponse(pages.sorry("Not here", error.says), error.status)

    async def _no_page(self, _: Request, error: Exception) -> Response:
        status = error.status_code if isinstance(error, HTTPException) else 500
        return HTMLResponse(pages.sorry("Not here", "There is no such page at this desk."), status)

    async def _gone(self, _: Request, __: Exception) -> Response:
        return Response(status_code=400)

    async def _fault(self, _: Request, error: Exception) -> Response:
        number = self.log.fault(error)
        return HTMLResponse(pages.sorry("A fault of the program", f"It is number {number} in its log."), 500)


# ---------------------------------------------------------------------- what comes in
def _typed(asked: Mapping[str, Any]) -> str:
    """A working; half a character in it becomes a question mark."""
    return text_of(asked, _too_long, STOPS["long"]).encode("utf-8", "replace").decode()


def _title(handed: Mapping[str, Item]) -> str:
    return next(iter(handed.values())).title


def _too_long(text: str) -> bool:
    return len(text) > MOST_CHARACTERS or text.count("\n") >= MOST_LINES


def _small(value: object) -> int:
    """A small whole number, 0 for anything else."""
    text = str(value)
    return int(text) if text.isascii() and text.isdigit() and len(text) < 5 else 0


def _said(told: Told) -> Response:
    if STOPPED in told:
        return JSONResponse({STOPPED: told[STOPPED], "said": STOPS[told[STOPPED]]}, 503, {"retry-after": str(RETRY)})
    return JSONResponse(told, 409 if "fault" in told else 200)


async def asset(request: Request) -> Response:
    """A file of our own, under an address that changes with what it holds."""
    found = pages.BY_ADDRESS.get(request.url.path)
    if found is None:
        raise Refused(404, "There is no such page at this desk.")
    return Response(
        found.content, media_type=found.kind, headers={"cache-control": "public, max-age=31536000, immutable"}
    )


__all__: Sequence[str] = ("Desk", "Settings")
