"""Tasks for the tests of the pool: one that answers, and the kinds that must be stopped."""

from __future__ import annotations

import os
import time
from collections.abc import Mapping
from typing import Any


def answer(asked: Mapping[str, Any]) -> dict[str, Any]:
    """What is asked for by `op`."""
    match asked["op"]:
        case "echo":
            return {"said": asked["text"], "process": os.getpid()}
        case "loop":
            while True:
                pass
        case "stubborn loop":
            while True:
                try:
                    while True:
                        pass
                except Exception:
                    pass
        case "long call":
            return {"sum": sum(range(10**13))}  # one call into C, which no signal interrupts
        case "memory":
            return {"length": len(b"x" * (4 << 30))}
        case "wait":
            time.sleep(3600)
        case "fault":
            raise ValueError("what was typed: secret")
        case "leave":
            os._exit(3)
    return {}
