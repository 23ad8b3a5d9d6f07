"""A desk put up at an address of this machine, until Ctrl-C. Knows sockets and the server, no page."""

from __future__ import annotations

import socket
import sys
import webbrowser
from contextlib import suppress
from pathlib import Path
from typing import NamedTuple

from ..errors import Fault, legible, shown
from ..jobs.pool import cores

LOOPBACK = "127.0.0.1"
NAMES = (LOOPBACK, "localhost", "[::1]")


class Wish(NamedTuple):
    """What is wanted of a desk."""

    folder: Path
    port: int = 0
    jobs: int = 0
    browser: bool = True


def serve(wish: Wish) -> None:
    """Serve until Ctrl-C. Raises Fault where the folder or the port cannot be had, or the extra is not installed."""
    try:
        import uvicorn

        from .app import Desk, Settings
    except ImportError as error:
        raise Fault(
            found=f"no package {error.name}",
            expected="the extra that the desk needs",
            example="pip install 'worked-moments[desk]'",
        ) from None
    folder = _folder(wish.folder)
    listening = _listening(wish.port)
    port = listening.getsockname()[1]
    hosts = frozenset(f"{name}:{port}" for name in NAMES)
    settings = Settings(folder, hosts, frozenset(f"http://{host}" for host in hosts), wish.jobs or cores())
    desk = Desk(settings)
    address = f"http://{LOOPBACK}:{port}/"
    print(f"The problems of {legible(str(wish.folder))} are at {address}\nCtrl-C ends it.", file=sys.stderr, flush=True)
    if wish.browser and sys.stderr.isatty():
        webbrowser.open(address)
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


def _listening(port: int) -> socket.socket:
    """A socket of this machine alone."""
    listening = socket.socket(socket.AF_INET, socket.SOCK_STREAM)
    listening.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
    try:
        listening.bind((LOOPBACK, port))
    except OSError:
        listening.close()
        raise Fault(
            found=f"port {port}, which cannot be had here", expected="a port that is free", example="--port 0"
        ) from None
    return listening
