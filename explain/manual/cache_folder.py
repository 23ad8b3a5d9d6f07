"""Where a book's worked problems are kept when nobody says where. Knows the user's cache folder, not what is in it.

They lie there and not beside the book, so that nobody who hands on a folder hands on pages with it that no one worked.
"""

from __future__ import annotations

from hashlib import sha256
from pathlib import Path

from platformdirs import user_cache_path


def home(book: Path) -> Path:
    """A folder of its own for every book file, by its whole path."""
    name = sha256(str(book.resolve()).encode("utf-8", "surrogateescape")).hexdigest()[:16]
    return user_cache_path("worked-moments", appauthor=False) / "manual" / name
