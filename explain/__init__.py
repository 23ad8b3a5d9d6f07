"""worked-moments: a plane equilibrium from a short problem file to a certified, explained walkthrough.

from explain import work
walkthrough = work("jug-level.toml")
walkthrough.answers["biceps"].value        # 301.6575, in walkthrough.answers["biceps"].unit
walkthrough.save("jug-level.pdf")

Everything that others may build on is in `__all__`. What a function wants, gives and raises stands in its docstring.
"""

from __future__ import annotations

import sys
from types import ModuleType
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from .api import Walkthrough, accept, draw, mark, read, work
    from .errors import Fault, NoWay
    from .manual.build import Built
    from .manual.library import manual
    from .marking.slips.verdict import Marking
    from .problem.model import Problem
    from .series.api import WorkedSeries, series, work_series
    from .solve.answers import Answer
    from .solve.outcome import Finding
    from .tally.library import ClassReport, tally
    from .vary.handouts import Handed
    from .vary.library import vary

__version__ = "0.1.0"
__all__ = [
    "Answer",
    "Built",
    "ClassReport",
    "Fault",
    "Finding",
    "Handed",
    "Marking",
    "NoWay",
    "Problem",
    "Walkthrough",
    "WorkedSeries",
    "accept",
    "draw",
    "manual",
    "mark",
    "read",
    "series",
    "tally",
    "vary",
    "work",
    "work_series",
]
_HOMES = {
    "Answer": "solve.answers",
    "Built": "manual.build",
    "ClassReport": "tally.library",
    "Fault": "errors",
    "Finding": "solve.outcome",
    "Handed": "vary.handouts",
    "Marking": "marking.slips.verdict",
    "NoWay": "errors",
    "Problem": "problem.model",
    "Walkthrough": "api",
    "WorkedSeries": "series.api",
    "accept": "api",
    "draw": "api",
    "manual": "manual.library",
    "mark": "api",
    "read": "api",
    "series": "series.api",
    "tally": "tally.library",
    "vary": "vary.library",
    "work": "api",
    "work_series": "series.api",
}


def __getattr__(name: str) -> Any:
    """Names are imported when they are first used: the command line must answer before sympy is loaded."""
    if name not in _HOMES:
        raise AttributeError(f"module 'explain' has no attribute {name!r}")
    from importlib import import_module

    return getattr(import_module(f".{_HOMES[name]}", __name__), name)


class _Face(ModuleType):
    """Four functions have the names of the folders that they come from: here the name is that of the function."""

    def __setattr__(self, name: str, value: object) -> None:
        if not (name in _HOMES and isinstance(value, ModuleType)):
            super().__setattr__(name, value)


sys.modules[__name__].__class__ = _Face
