"""Processes that answer one request each at a time, bounded in time and memory. Knows nothing of what is asked.

Three limits of time. A timer of processor time interrupts Python code, and the process lives on with all it keeps. A
second later the kernel's own limit ends the process: this catches what no interrupt reaches, as a long call into C. A
wall time, long, catches a process that waits for ever. Processor time comes first: on a machine that others use too, an
honest request may wait for seconds.
"""

from __future__ import annotations

import asyncio
import json
import math
import multiprocessing
import os
import signal
import threading
import time
from collections.abc import Callable, Mapping, Sequence
from concurrent.futures import ThreadPoolExecutor
from importlib import import_module
from multiprocessing.connection import Connection
from multiprocessing.process import BaseProcess
from typing import Any, NamedTuple

try:
    import resource
except ImportError:  # no such limits on this system: the wall time alone holds
    resource = None  # type: ignore[assignment]

Asked = Mapping[str, Any]
Told = dict[str, Any]
STOPPED = "stopped"  # the key of an answer that says why there is none: time, memory, fault
_NO_NEW_RIGHTS = 38  # PR_SET_NO_NEW_PRIVS of prctl(2), Linux


class Limits(NamedTuple):
    """Of one request: processor seconds, wall seconds, bytes of address space; of a process: requests and resident
    bytes after which a fresh one takes its place.
    """

    processor: float = 2.0
    wall: float = 30.0
    memory: int = 1 << 30
    requests: int = 2000
    resident: int = 300 << 20


LIMITS = Limits()


class TimeUp(BaseException):
    """The processor time of a request is used up. Not an Exception, so that no `except Exception` on the way keeps
    it.
    """


class Busy(Exception):
    """As many requests wait as may."""


# ---------------------------------------------------------------------- in the process
def _serve(pipe: Connection, module: str, limits: Limits) -> None:
    """The life of a process: requests come in as JSON, answers go out."""
    _bind_hands(limits)
    answer: Callable[[Asked], Told] = import_module(module).answer
    while True:
        try:
            asked = json.loads(pipe.recv_bytes())
        except (EOFError, OSError):
            return
        told = _bounded(answer, asked, limits.processor)
        try:
            pipe.send_bytes(json.dumps({"told": told, "resident": _resident()}).encode())
        except OSError:
            return


def _bind_hands(limits: Limits) -> None:
    """What the process may never do: leave files of its memory, grow without end, gain rights; a Ctrl-C is for the
    one that started it, and it does not outlive that one.
    """
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    parent = multiprocessing.parent_process()
    if parent is not None:

        def leave() -> None:
            parent.join()
            os._exit(1)

        threading.Thread(target=leave, daemon=True).start()
    if resource is not None:
        resource.setrlimit(resource.RLIMIT_CORE, (0, 0))
        resource.setrlimit(resource.RLIMIT_AS, (limits.memory, limits.memory))
        signal.signal(signal.SIGVTALRM, _ring)
    try:
        import ctypes

        ctypes.CDLL(None).prctl(_NO_NEW_RIGHTS, 1, 0, 0, 0)
    except (OSError, AttributeError, TypeError):  # not on this system
        pass


def _ring(*_: object) -> None:
    raise TimeUp


def _bounded(answer: Callable[[Asked], Told], asked: Asked, seconds: float) -> Told:
    try:
        try:
            _wind(seconds)
            return answer(asked)
        finally:
            _wind(0)
    except TimeUp:
        return {STOPPED: "time"}
    except MemoryError:
        return {STOPPED: "memory"}
    except Exception as error:  # told by its kind alone: its words may hold what was typed
        return {STOPPED: "fault", "kind": type(error).__name__}


def _wind(seconds: float) -> None:
    """Set the timer, and the kernel's a second behind it; 0 stops the timer."""
    if resource is None:
        return
    signal.setitimer(signal.ITIMER_VIRTUAL, seconds)
    if seconds:
        end = math.ceil(time.process_time() + seconds + 1)
        resource.setrlimit(resource.RLIMIT_CPU, (end, resource.getrlimit(resource.RLIMIT_CPU)[1]))


def _resident() -> int:
    """Bytes of memory in use, 0 where that is not told."""
    try:
        with open("/proc/self/statm", "rb") as file:
            return int(file.read().split()[1]) * os.sysconf("SC_PAGE_SIZE")
    except (OSError, ValueError, IndexError):
        return 0


# ---------------------------------------------------------------------- outside it
class _Process:
    """One process, and another in its place when it has ended or grown."""

    def __init__(self, context: Any, module: str, limits: Limits) -> None:
        self._context, self._module, self._limits = context, module, limits
        self.last = ""  # what it worked on last: it has that ready
        self.done = 0
        self._begin()

    def _begin(self) -> None:
        self._pipe, theirs = self._context.Pipe()
        self._process: BaseProcess = self._context.Process(
            target=_serve, args=(theirs, self._module, self._limits), daemon=True
        )
        self._process.start()
        theirs.close()
        self.done = 0

    def ask(self, asked: bytes) -> tuple[Told, bool]:
        """The answer, and whether the process was ended for it. Waits; called in a thread."""
        why = "fault"
        try:
            self._pipe.send_bytes(asked)
            if self._pipe.poll(self._limits.wall):
                said = json.loads(self._pipe.recv_bytes())
                self.done += 1
                if self.done >= self._limits.requests or said["resident"] > self._limits.resident:
                    self._again()
                told: Told = said["told"]
                return told, False
            why = "time"
        except (EOFError, OSError):
            why = self._why_it_ended()
        self._again()
        return {STOPPED: why}, True

    def _why_it_ended(self) -> str:
        self._process.join(1)
        return "time" if self._process.exitcode in (-signal.SIGXCPU, -signal.SIGKILL) else "fault"

    def _again(self) -> None:
        self.end()
        self._begin()

    def end(self) -> None:
        self._process.kill()
        self._process.join()
        self._pipe.close()


class Pool:
    """So many processes. Of those who ask, `most` may wait; one more is refused at once, so that nobody waits for
    long. `module` is the name of one that has `answer`; `preload` is read once, before the processes are forked.

    A pool is made, and asked, in one event loop.
    """

    def __init__(
        self, module: str, jobs: int, limits: Limits = LIMITS, most: int = 64, preload: Sequence[str] = ()
    ) -> None:
        os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")  # rows of a few numbers: threads cost more than they give
        forks = "forkserver" in multiprocessing.get_all_start_methods()
        context: Any = multiprocessing.get_context("forkserver" if forks else "spawn")
        if forks:
            context.set_forkserver_preload([module, *preload])
        self._make = lambda: _Process(context, module, limits)
        self._jobs, self._most = jobs, most
        self._threads = ThreadPoolExecutor(jobs + 1)
        self._idle: list[_Process] = []
        self._free = asyncio.Semaphore(0)
        self._all: list[_Process] = []
        self._waiting = 0
        self.ended = 0  # processes that were ended for what they were asked
        self._starting: list[asyncio.Task[None]] = []

    def start(self) -> None:
        """Begin the processes; requests may come meanwhile, and wait for the first."""
        self._starting = [asyncio.create_task(self._one()) for _ in range(self._jobs)]

    async def _one(self) -> None:
        process = await asyncio.get_running_loop().run_in_executor(self._threads, self._make)
        self._all.append(process)
        self._idle.append(process)
        self._free.release()

    async def ask(self, asked: Asked, about: str = "") -> Told:
        """What a process answers. `about` is what it is about: the process that had it last is taken, if it is idle.
        Raises Busy.
        """
        if self._waiting >= self._most:
            raise Busy
        self._waiting += 1
        try:
            await self._free.acquire()
        finally:
            self._waiting -= 1
        process = next((each for each in self._idle if each.last == about), self._idle[0])
        self._idle.remove(process)
        process.last = about
        asking = asyncio.get_running_loop().run_in_executor(self._threads, process.ask, json.dumps(asked).encode())
        asking.add_done_callback(lambda _: self._give_back(process))
        told, ended = await asyncio.shield(asking)  # who asked may go: the process is given back all the same
        self.ended += ended
        return told

    def _give_back(self, process: _Process) -> None:
        self._idle.append(process)
        self._free.release()

    async def end(self) -> None:
        """End all processes."""
        for each in self._starting:
            each.cancel()
        for process in self._all:
            process.end()
        self._threads.shutdown(wait=False, cancel_futures=True)
