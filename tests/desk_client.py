"""A desk to ask without a browser and without a socket."""

from __future__ import annotations

import re
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from starlette.testclient import TestClient

from explain.desk.app import Desk, Settings
from explain.desk.log import Log

HOST = "127.0.0.1:8000"
ORIGIN = f"http://{HOST}"
SAMPLES = Path(__file__).parents[1] / "samples"


@contextmanager
def desk_of(folder: Path, **more: Any) -> Iterator[tuple[TestClient, list[str]]]:
    """A client of the desk of a folder, and the lines of its log."""
    written: list[str] = []
    settings = Settings(folder, frozenset({HOST}), frozenset({ORIGIN}), jobs=1)._replace(**more)
    with TestClient(Desk(settings, Log(written.append)).app, base_url=ORIGIN, headers={"origin": ORIGIN}) as client:
        yield client, written


def told(client: TestClient, name: str, text: str, **more: Any) -> dict[str, Any]:
    """What the page's script is told of a working."""
    answer: dict[str, Any] = client.post(f"/p/{name}/working/judge", json={"text": text, **more}).json()
    return answer


def words(html: str) -> str:
    """The words of elements, without their marks."""
    return " ".join(re.sub(r"<[^>]+>", " ", html).split())
