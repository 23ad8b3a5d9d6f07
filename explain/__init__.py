"""worked-moments: a plane equilibrium from a short problem file to a certified, explained walkthrough.

from explain import work
walkthrough = work("jug-level.toml")
walkthrough.answers["biceps"].value        # 301.6575, in walkthrough.answers["biceps"].unit
walkthrough.save("jug-level.pdf")
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from .solve.answers import Answer
    from .errors import Fault, NoWay
    from .api import Walkthrough, read, work
    from .series.api import WorkedSeries, work_series
    from .problem.model import Problem

__version__ = "0.1.0"
__all__ = ["Answer", "Fault", "NoWay", "Problem", "Walkthrough", "WorkedSeries", "read", "work", "work_series"]
_HOMES = {
    "Answer": "solve.answers",
    "Fault": "errors",
    "NoWay": "errors",
    "Problem": "problem.model",
    "Walkthrough": "api",
    "WorkedSeries": "series.api",
    "read": "api",
    "work": "api",
    "work_series": "series.api",
}


def __getattr__(name: str) -> Any:
    """Names are imported when they are first used: the command line must answer before sympy is loaded."""
    if name not in _HOMES:
        raise AttributeError(f"module 'explain' has no attribute {name!r}")
    from importlib import import_module

    return getattr(import_module(f".{_HOMES[name]}", __name__), name)
