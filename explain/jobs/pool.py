"""Work spread over processes: items go out in chunks, results come back in order. Knows nothing of what is done to an
item.

Any `concurrent.futures.Executor` can take the pool's place; the client of a cluster offers one (`get_executor()` of a
Dask client).
"""

from __future__ import annotations

import multiprocessing
import os
import signal
import threading
from collections import deque
from collections.abc import Callable, Iterator, Sequence
from concurrent.futures import Executor, Future, ProcessPoolExecutor
from concurrent.futures.process import BrokenProcessPool
from typing import NamedTuple, TypeVar

from ..errors import BROKEN, code_of

Item = TypeVar("Item")
Result = TypeVar("Result")
_AHEAD = 4  # chunks for each process that are out at a time: none is ever idle, and memory stays bounded
_MOST = 8  # items of a chunk


class Trouble(NamedTuple):
    """What became of an item that could not be done: a message, and the exit code that its exception asks for."""

    message: str
    code: int


def cores() -> int:
    """How many processes can run at once here."""
    return len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count() or 1


def each(
    function: Callable[[Item], Result],
    items: Sequence[Item],
    jobs: int = 0,
    chunk: int = 0,
    preload: Sequence[str] = (),
    executor: Executor | None = None,
) -> Iterator[Result | Trouble]:
    """`function` of every item, in order; an exception in one, or the death of its process, becomes its Trouble and
    stops no other.

    `function` and the items must be picklable. `jobs` processes (0: one a core; 1: this very process), `chunk` items at
    a time
    (0: a few). `preload` are modules that the processes begin with. Close the iterator to stop: what has not begun is
    given up.
    """
    jobs = min(jobs or cores(), len(items))
    if executor is None and jobs < 2:
        yield from (_tried(function, item) for item in items)
        return
    size = chunk or max(1, min(_MOST, len(items) // (jobs * _AHEAD * 2)))
    waiting = deque(tuple(items[start : start + size]) for start in range(0, len(items), size))
    if executor is not None:
        yield from _in_order(executor, function, waiting, jobs)
        return
    while waiting:
        try:
            with _pool(jobs, preload) as pool:
                yield from _in_order(pool, function, waiting, jobs)
        except BrokenProcessPool:
            yield from (_alone(function, item, preload) for item in waiting.popleft())


def _in_order(
    executor: Executor, function: Callable[[Item], Result], waiting: deque[tuple[Item, ...]], jobs: int
) -> Iterator[Result | Trouble]:
    """The results of all waiting chunks; one is taken off `waiting` when its results are there."""
    out: deque[Future[list[Result | Trouble]]] = deque()
    try:
        while waiting:
            ahead = list(waiting)[len(out) : jobs * _AHEAD]
            out.extend(executor.submit(_chunk, function, chunk) for chunk in ahead)
            done = out[0].result()
            out.popleft()
            waiting.popleft()
            yield from done
    finally:
        for future in out:
            future.cancel()


def _pool(jobs: int, preload: Sequence[str]) -> ProcessPoolExecutor:
    """Fresh processes, not copies of this one, which may have threads; where a server can fork them they share what
    is preloaded.
    """
    forks = "forkserver" in multiprocessing.get_all_start_methods()
    context = multiprocessing.get_context("forkserver" if forks else "spawn")
    if forks:
        context.set_forkserver_preload(list(preload))
    return ProcessPoolExecutor(jobs, context, _begin)


def _begin() -> None:
    """A process of the pool leaves a Ctrl-C to the one that started it, and does not outlive that one."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    parent = multiprocessing.parent_process()

    def leave() -> None:
        if parent is not None:
            parent.join()
            os._exit(BROKEN)

    threading.Thread(target=leave, daemon=True).start()


def _chunk(function: Callable[[Item], Result], items: Sequence[Item]) -> list[Result | Trouble]:
    return [_tried(function, item) for item in items]


def _tried(function: Callable[[Item], Result], item: Item) -> Result | Trouble:
    try:
        return function(item)
    except Exception as error:
        code = code_of(error)
        return Trouble(
            str(error) if code != BROKEN else f"a fault of the program itself: {type(error).__name__}: {error}", code
        )


def _alone(function: Callable[[Item], Result], item: Item, preload: Sequence[str]) -> Result | Trouble:
    """An item that may have ended its process, in a process of its own."""
    try:
        with _pool(1, preload) as pool:
            return pool.submit(_chunk, function, (item,)).result()[0]
    except BrokenProcessPool:
        return Trouble("a fault of the program itself: the process ended at once", BROKEN)
