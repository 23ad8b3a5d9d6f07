"""Series files written out: tables as TOML that a person would type. Knows the outline of TOML and the order of
keys, nothing of what they mean.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from ..problem.toml_values import assigned, key_text

_INLINE = ("set",)


def written(top: Mapping[str, object], comment: str = "") -> str:
    """A series file with its start and its steps; `comment` stands above it, a line each."""
    lines = [f"# {line}" for line in comment.splitlines()]
    lines += assigned({key: value for key, value in top.items() if key not in ("start", "step")})
    if start := top.get("start"):
        lines += ["", "[start]", *_table(start, "start")]
    steps = top.get("step")
    for step in steps if isinstance(steps, list) else ():
        lines += ["", "[[step]]", *_table(step, "step")]
    return "\n".join(lines) + "\n"


def _table(table: object, path: str) -> Iterator[str]:
    """The plain keys of a table, and behind them the tables in it."""
    if not isinstance(table, Mapping):
        return
    inner = {key: value for key, value in table.items() if isinstance(value, Mapping) and key not in _INLINE}
    yield from assigned({key: value for key, value in table.items() if key not in inner})
    for key, value in inner.items():
        yield from _inner(value, f"{path}.{key_text(key)}")


def _inner(value: Mapping[str, object], path: str) -> Iterator[str]:
    listed = {
        key: each for key, each in value.items() if isinstance(each, list) and each and isinstance(each[0], Mapping)
    }
    if len(listed) < len(value):
        yield f"[{path}]"
        yield from assigned({key: each for key, each in value.items() if key not in listed})
    for key, tables in listed.items():
        for table in tables:
            yield f"[[{path}.{key_text(key)}]]"
            yield from assigned(table)
