"""Notes what the terms and brackets of a formula come to, so that the next line is traced to them."""

from __future__ import annotations

import numpy as np

from .formula import Expr, within
from .patterns import pattern
from .trace import Trace
from .values import Value
from .ways import Way, of_part


def note_parts(trace: Trace, expr: Expr, way: Way, without: str = "") -> None:
    """All parts but those with a letter in them that has no value yet."""
    for node in within(expr.node):
        if node[0] in ("n", "v", "k") or without and any(each == ("v", without) for each in within(node)):
            continue
        note_part(trace, way, node)


def note_part(trace: Trace, way: Way, node: tuple) -> None:  # type: ignore[type-arg]
    f, r, number = of_part(way, node, trace.known.n)
    found = pattern(f)
    if found is None or not np.all(np.isfinite(r)) or all(abs(each - 1) < 1e-12 for each in found):
        return
    deps, blames = way.rests_on(node)
    trace.note(
        Value(
            f,
            r if np.any(r != f) else f,
            number,
            abs(number) * 1e-3,
            line=trace.line,
            deps=deps | {trace.line},
            blames=blames,
            spread=abs(number) * 2e-4,
        ),
        result=False,
    )
