"""What a desk writes down of itself: start and stop, faults by kind, processes ended, counts a minute. No address, no
name, nothing that was typed, no words of an exception.
"""

from __future__ import annotations

import asyncio
import sys
import time
from collections import Counter
from collections.abc import Callable, Mapping
from typing import Any


def _to_stderr(line: str) -> None:
    print(line, file=sys.stderr, flush=True)


class Log:
    """Lines with the time of day in front, given to `write`."""

    def __init__(self, write: Callable[[str], None] = _to_stderr) -> None:
        self._write, self._counts, self._faults = write, Counter[str](), 0

    def say(self, words: str) -> None:
        self._write(f"{time.strftime('%H:%M:%S')} {words}")

    def count(self, what: str) -> None:
        self._counts[what] += 1

    def stopped(self, what: str, told: Mapping[str, Any]) -> None:
        """A request that was stopped: for time, for memory, or by a fault of the program of some kind."""
        kind = f" ({told['kind']})" if "kind" in told else ""
        self.say(f"stopped: {what}, {told['stopped']}{kind}")

    def fault(self, error: Exception) -> int:
        """A fault of the front itself; its number."""
        self._faults += 1
        self.say(f"fault {self._faults}: {type(error).__name__}")
        return self._faults

    async def each_minute(self, seconds: float = 60) -> None:
        """Tell every minute what was counted, where anything was."""
        while True:
            await asyncio.sleep(seconds)
            if self._counts:
                self.say(", ".join(f"{number} {what}" for what, number in sorted(self._counts.items())))
                self._counts.clear()
