"""A desk put up at an address of this machine, until Ctrl-C. Knows sockets and the server, no page."""

from __future__ import annotations

import secrets
import socket
import sys
import webbrowser
from contextlib import suppress
from pathlib import Path
from typing import NamedTuple
from urllib.parse import urlsplit

from ..errors import Fault, legible, shown
from ..jobs.pool import cores

LOOPBACK = "127.0.0.1"
BACKLOG = 2048
NAMES = (LOOPBACK, "localhost", "[::1]")


class Wish(NamedTuple):
    """What is wanted of a desk."""

    folder: Path
    port: int = 0
    jobs: int = 0
    variants: bool = False
    behind: str = ""
    bind: str = ""
    keep: Path | None = None
    keep_lines: bool = False
    days: int = 30
    browser: bool = True
    edit: bool = False


def serve(wish: Wish) -> None:
    """Serve until Ctrl-C. Raises Fault where the folder, the port or the file to keep in cannot be had, where options
    do not go together, or where the extra is not installed.
    """
    try:
        import uvicorn

        from .app import Desk, Settings
        from .kept import Kept
    except ImportError as error:
        raise Fault(
            found=f"no package {error.name}",
            expected="the extra that the desk needs",
            example="pip install 'worked-moments[desk]'",
        ) from None
    folder = _folder(wish.folder)
    public = _public(wish)
    kept = Kept(wish.keep, wish.days, wish.keep_lines) if wish.keep is not None else None
    listening = _listening(wish.bind or LOOPBACK, wish.port)
    port = listening.getsockname()[1]
    address = public or f"http://{LOOPBACK}:{port}"
    hosts = {address.partition("://")[2]} if public else {f"{name}:{port}" for name in NAMES}
    origins = {public} if public else {f"http://{host}" for host in hosts}
    key = secrets.token_urlsafe(18) if kept is not None else ""
    edit = secrets.token_urlsafe(24) if wish.edit else ""
    settings = Settings(
        folder,
        frozenset(hosts),
        frozenset(origins),
        wish.jobs or cores(),
        variants=wish.variants,
        kept=kept,
        key=key,
        edit=edit,
    )
    desk = Desk(settings)
    said = [f"The problems of {legible(str(wish.folder))} are at {address}/"]
    said += [f"What the class gets wrong: {address}/class?key={key}"] if key else []
    said += [f"To change them, for you alone: {address}/edit?key={edit}"] if edit else []
    said += [f"Behind it this desk listens at {wish.bind or LOOPBACK}:{port}."] if public else []
    print("\n".join((*said, "Ctrl-C ends it.")), file=sys.stderr, flush=True)
    if wish.browser and not public and sys.stderr.isatty():
        webbrowser.open(f"{address}/edit?key={edit}" if edit else f"{address}/")
    config = uvicorn.Config(
        desk.app,
        log_level="error",
        access_log=False,
        server_header=False,
        http="h11",
        h11_max_incomplete_event_size=32 * 1024,
        timeout_keep_alive=20,
        timeout_graceful_shutdown=2,
        limit_concurrency=500,
    )
    with suppress(KeyboardInterrupt):
        uvicorn.Server(config).run(sockets=[listening])


def _folder(folder: Path) -> Path:
    if not folder.is_dir():
        raise Fault(found=f"{shown(str(folder))}, but there is no such folder", expected="a folder with problem files")
    return folder.resolve()


def _public(wish: Wish) -> str:
    """The address that a proxy serves the desk at, "" for none."""
    if wish.bind and not wish.behind:
        raise Fault(
            found="--bind without --behind: pages without TLS, open to the whole network",
            expected="the address of a proxy that others reach the desk by",
            example="--behind https://desk.school.example --bind 10.0.0.5",
        )
    if wish.edit and (wish.variants or wish.behind):
        raise Fault(
            found=f"--edit with {'--class' if wish.variants else '--behind'}: files that can be changed from outside",
            expected="a desk to change problems at, and another one for the class",
            example="explain desk FOLDER --edit",
        )
    if wish.keep_lines and wish.keep is None:
        raise Fault(found="--keep-lines without --keep", expected="a file to keep in", example="--keep class.sqlite")
    parts = urlsplit(wish.behind.rstrip("/"))
    if wish.behind and (parts.scheme != "https" or not parts.hostname or parts.path or parts.query or parts.username):
        raise Fault(
            found=f"{shown(wish.behind)} as the address of a proxy",
            expected="https:// and a host, without a path",
            example="--behind https://desk.school.example",
        )
    return f"https://{parts.netloc.lower()}" if wish.behind else ""


def _listening(address: str, port: int) -> socket.socket:
    """A socket at an address."""
    family = socket.AF_INET6 if ":" in address else socket.AF_INET
    listening = socket.socket(family, socket.SOCK_STREAM)
    listening.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
    try:
        listening.bind((address, port))
        listening.listen(BACKLOG)  # who comes before the server is up waits for it
    except OSError:
        listening.close()
        raise Fault(
            found=f"port {port} at {address}, which cannot be had here",
            expected="a port that is free",
            example="--port 0",
        ) from None
    return listening
