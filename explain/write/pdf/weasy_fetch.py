"""What a document may fetch: the things a program put on the shelf, by name, and nothing else. Knows no files and no
network.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from weasyprint.urls import URLFetcher, URLFetcherResponse

SCHEME = "mem:"


class Shelf(URLFetcher):  # type: ignore[misc]
    """Serves `mem:` names from a mapping of name to (content, type); any other address raises ValueError, which
    WeasyPrint catches.
    """

    def __init__(self, things: Mapping[str, tuple[bytes, str]]) -> None:
        super().__init__(allowed_protocols=(SCHEME.rstrip(":"),), allow_redirects=False)
        self.things = things

    def fetch(self, url: str, headers: Any = None) -> URLFetcherResponse:
        """The thing of that name; WeasyPrint calls this for everything that a document refers to."""
        if url not in self.things:
            raise ValueError(f"a document may not fetch {url[:80]!r}")
        content, kind = self.things[url]
        return URLFetcherResponse(url, content, {"Content-Type": kind})
