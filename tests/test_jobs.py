"""How work is cut, sent out and taken back, with executors and clusters that do everything here and tell what they
were asked; and what a bar says while it waits.
"""

from __future__ import annotations

import io
import logging
import multiprocessing
import os
import signal
import sys
from collections.abc import Callable, Iterator, Sequence
from concurrent.futures import Executor, Future
from concurrent.futures.process import BrokenProcessPool
from types import SimpleNamespace
from typing import Any

import pytest

from explain.errors import Fault
from explain.jobs import cluster, pool, progress_bar
from explain.jobs.pool import Trouble, cores, each
from explain.jobs.progress_bar import watched


class Here(Executor):
    """Does at once what is submitted, and keeps the chunks; from the chunk `stuck` on nothing is done."""

    def __init__(self, stuck: int = 10**9) -> None:
        self.chunks: list[tuple[Any, ...]] = []
        self.futures: list[Future[Any]] = []
        self.stuck = stuck

    def submit(self, fn: Callable[..., Any], /, *given: Any, **named: Any) -> Future[Any]:
        future: Future[Any] = Future()
        self.chunks.append(given[-1])
        self.futures.append(future)
        if len(self.chunks) <= self.stuck:
            future.set_result(fn(*given))
        return future

    @property
    def sizes(self) -> list[int]:
        return [len(chunk) for chunk in self.chunks]


def doubled(number: int) -> int:
    return 2 * number


def where(_: int) -> int:
    return os.getpid()


# ---------------------------------------------------------------------- chunks
@pytest.mark.parametrize(
    ("count", "jobs", "chunk", "sizes"),
    [
        (100, 2, 0, [6] * 16 + [4]),
        (130, 2, 0, [8] * 16 + [2]),
        (1000, 2, 0, [8] * 125),
        (10, 3, 0, [1] * 10),
        (3, 99, 0, [1] * 3),
        (33, 2, 0, [2] * 16 + [1]),
        (7, 2, 3, [3, 3, 1]),
        (1, 1, 0, [1]),
    ],
)
def test_items_go_out_in_chunks(count: int, jobs: int, chunk: int, sizes: list[int]) -> None:
    here = Here()
    assert [2 * number for number in range(count)] == list(each(doubled, range(count), jobs, chunk, executor=here))
    assert sizes == here.sizes


def test_four_chunks_a_process_are_out_and_then_one_for_each_that_comes_back() -> None:
    here = Here()
    results = each(doubled, range(40), 2, 2, executor=here)
    seen = []
    for _ in range(6):
        next(results)
        seen.append(len(here.chunks))
    assert [8, 8, 9, 9, 10, 10] == seen


def test_what_has_not_begun_is_cancelled() -> None:
    here = Here(stuck=1)
    results = each(doubled, range(40), 2, 2, executor=here)
    assert 0 == next(results)
    results.close()  # type: ignore[attr-defined]
    assert [False] + [True] * 7 == [future.cancelled() for future in here.futures]


def test_one_process_is_this_one_and_none_is_one_a_core(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(pool, "_pool", None)  # no pool can be had
    assert {os.getpid()} == set(each(where, range(3), 1)) == set(each(where, range(1), 5))
    monkeypatch.setattr(pool, "cores", lambda: 1)
    assert {os.getpid()} == set(each(where, range(3)))


def test_cores_are_those_that_may_be_used(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(os, "sched_getaffinity", lambda process: {0, 3, 5} if process == 0 else set(), raising=False)
    assert 3 == cores()
    monkeypatch.delattr(os, "sched_getaffinity")
    for found, count in ((6, 6), (None, 1)):
        monkeypatch.setattr(os, "cpu_count", lambda found=found: found)
        assert count == cores()


# ---------------------------------------------------------------------- pools
class Pool(Here):
    """In the place of a pool of processes: dies of the item "deadly"."""

    made: list[tuple[int, Any, Callable[[], None]]] = []

    def __init__(self, jobs: int, context: Any, begin: Callable[[], None]) -> None:
        super().__init__()
        self.made.append((jobs, context, begin))

    def submit(self, fn: Callable[..., Any], /, *given: Any, **named: Any) -> Future[Any]:
        if "deadly" in given[-1]:
            future: Future[Any] = Future()
            future.set_exception(BrokenProcessPool())
            return future
        return super().submit(fn, *given)


@pytest.fixture
def pools(monkeypatch: pytest.MonkeyPatch) -> list[tuple[int, Any, Callable[[], None]]]:
    monkeypatch.setattr(pool, "ProcessPoolExecutor", Pool)
    monkeypatch.setattr(Pool, "made", [])
    return Pool.made


Pools = list[tuple[int, Any, Callable[[], None]]]


@pytest.mark.parametrize(("methods", "kind"), [(["fork", "forkserver"], "forkserver"), (["spawn"], "spawn")])
def test_processes_are_fresh_ones(methods: list[str], kind: str, pools: Pools, monkeypatch: pytest.MonkeyPatch) -> None:
    loaded: list[Sequence[str]] = []

    def context(name: str) -> Any:
        return SimpleNamespace(name=name, set_forkserver_preload=loaded.append)

    monkeypatch.setattr(multiprocessing, "get_all_start_methods", lambda: methods)
    monkeypatch.setattr(multiprocessing, "get_context", context)
    assert ["aa", "bb"] == list(each(_twice, ["a", "b"], 2, preload=("x.y",)))
    assert [(2, kind)] == [(jobs, context.name) for jobs, context, _ in pools]
    assert ([["x.y"]] if kind == "forkserver" else []) == loaded


def _twice(word: str) -> str:
    return 2 * word


def test_an_item_that_ends_its_process_is_tried_alone_and_then_told(pools: Pools) -> None:
    found = list(each(_twice, ["a", "b", "deadly", "c", "d"], 2, 2))
    trouble = Trouble("a fault of the program itself: the process ended at once", 70)
    assert ["aa", "bb", trouble, "cc", "dd"] == found
    assert [2, 1, 1, 2] == [jobs for jobs, _, _ in pools]


def test_a_process_leaves_an_interrupt_to_its_parent_and_ends_with_it(
    pools: Pools, monkeypatch: pytest.MonkeyPatch
) -> None:
    list(each(_twice, ["a", "b"], 2))
    (_, _, begin), told = pools[0], list[object]()

    class Thread:
        def __init__(self, target: Callable[[], None], daemon: bool) -> None:
            told.append(("daemon", daemon))
            self.start = target

    parent = SimpleNamespace(join=lambda: told.append("joined"))
    monkeypatch.setattr(signal, "signal", lambda *given: told.append(given))
    monkeypatch.setattr(pool.threading, "Thread", Thread)
    monkeypatch.setattr(os, "_exit", lambda code: told.append(("exit", code)))
    monkeypatch.setattr(multiprocessing, "parent_process", lambda: parent)
    begin()
    assert [(signal.SIGINT, signal.SIG_IGN), ("daemon", True), "joined", ("exit", 70)] == told
    monkeypatch.setattr(multiprocessing, "parent_process", lambda: None)
    begin()
    assert ("daemon", True) == told[-1]


# ---------------------------------------------------------------------- clusters
class Distributed:
    """A library for clusters that tells what it was asked; `fails` is raised where a client is made."""

    def __init__(
        self, monkeypatch: pytest.MonkeyPatch, fails: Exception | None = None, threads: Sequence[int] = (2, 1)
    ):
        self.told: list[Any] = []
        self.executor, self.fails, self.threads = Here(), fails, threads
        config = SimpleNamespace(set=self.told.append)
        monkeypatch.setitem(sys.modules, "dask", SimpleNamespace(config=config))  # type: ignore[arg-type]
        monkeypatch.setitem(sys.modules, "distributed", self)  # type: ignore[arg-type]

    def LocalCluster(self, **wanted: Any) -> Any:
        self.told.append(wanted)
        return SimpleNamespace(close=lambda: self.told.append("cluster closed"))

    def Client(self, address: Any, **wanted: Any) -> Any:
        if self.fails:
            raise self.fails
        self.told.append((address, wanted) if isinstance(address, str) else wanted)
        return SimpleNamespace(
            cluster=None if isinstance(address, str) else address,
            get_executor=lambda: self.executor,
            nthreads=lambda: dict(enumerate(self.threads)),
            close=lambda: self.told.append("client closed"),
        )


def test_the_workers_of_a_scheduler(monkeypatch: pytest.MonkeyPatch) -> None:
    library = Distributed(monkeypatch)
    with cluster.workers("tcp://10.0.0.5:8786") as found:
        assert (library.executor, 3) == found
    assert library.told == [
        {"distributed.scheduler.allowed-failures": 20},
        ("tcp://10.0.0.5:8786", {"timeout": 6}),
        "client closed",
    ]
    Distributed(monkeypatch, threads=())
    with cluster.workers("tcp://x") as found:
        assert 1 == found.size


@pytest.mark.parametrize(("jobs", "count"), [(3, 3), (0, 5)])
def test_workers_here_end_with_the_work(jobs: int, count: int, monkeypatch: pytest.MonkeyPatch) -> None:
    library = Distributed(monkeypatch)
    monkeypatch.setattr(cluster, "cores", lambda: 5)
    with pytest.raises(KeyError), cluster.workers("local", jobs):
        raise KeyError
    local = {
        "n_workers": count,
        "threads_per_worker": 1,
        "dashboard_address": None,
        "silence_logs": logging.CRITICAL,
    }
    assert library.told[1:] == [local, {}, "client closed", "cluster closed"]


@pytest.mark.parametrize(
    ("fails", "why"),
    [
        (OSError("nobody\nthere"), "nobody"),
        (TimeoutError(), "TimeoutError"),
        (ValueError("x" * 200), "x" * 120),
    ],
)
def test_where_there_is_no_scheduler_the_fault_says_why(
    fails: Exception, why: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    Distributed(monkeypatch, fails)
    with pytest.raises(Fault) as caught, cluster.workers("tcp://x:1"):
        pass
    assert ("--cluster tcp://x:1", f"no cluster there ({why})") == (caught.value.file, caught.value.found)
    assert "the address of a scheduler that runs, or local" == caught.value.expected
    assert "--cluster tcp://10.0.0.5:8786" == caught.value.example


def test_without_the_library_the_fault_says_how_to_get_it(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(sys.modules, "dask", None)  # type: ignore[arg-type]
    with pytest.raises(Fault) as caught, cluster.workers("local"):
        pass
    assert ("no library for clusters", "the extra that has it") == (caught.value.found, caught.value.expected)
    assert ("--cluster local", "pip install 'worked-moments[cluster]'") == (caught.value.file, caught.value.example)


@pytest.mark.parametrize(
    ("count", "threads", "sizes"),
    [(30, (1, 1), [7] * 4 + [2]), (1000, (2, 1), [16] * 62 + [8]), (4, (3,), [1] * 4)],
)
def test_work_for_a_cluster_goes_out_in_larger_chunks(
    count: int, threads: Sequence[int], sizes: list[int], monkeypatch: pytest.MonkeyPatch
) -> None:
    library = Distributed(monkeypatch, threads=threads)
    with cluster.spread(doubled, range(count), 1, "tcp://x") as results:
        assert [2 * number for number in range(count)] == list(results)
    assert (sizes, "client closed") == (library.executor.sizes, library.told[-1])


def test_without_an_address_or_work_there_is_no_cluster(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(cluster, "workers", None)  # none can be had
    with cluster.spread(where, range(3), 1) as results:
        assert {os.getpid()} == set(results)
    with cluster.spread(where, [], 1, "tcp://x") as results:
        assert [] == list(results)


# ---------------------------------------------------------------------- bars
class Terminal(io.StringIO):
    def isatty(self) -> bool:
        return True


def test_a_log_has_a_line_a_minute_and_none_at_the_end(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    times = iter([0.0, 59.9, 60.0, 119.9, 125.0, 500.0])
    monkeypatch.setattr(progress_bar, "monotonic", lambda: next(times))
    assert list("abcde") == list(watched("abcde", 5, "Working"))
    said = "Working: 2 of 5, about 2 min left\nWorking: 4 of 5, about 1 min left\n"
    assert ("", said) == capsys.readouterr()


def test_a_terminal_has_a_bar(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> None:
    screen = Terminal()
    monkeypatch.setattr(sys, "stderr", screen)

    def items() -> Iterator[str]:
        yield from "ab"

    assert list("ab") == list(watched(items(), 2, "Working"))
    assert "Working" in screen.getvalue() and "2/2" in screen.getvalue()
    assert [] == list(watched([], 0, "Nothing")) and "Nothing" not in screen.getvalue()
    assert "" == capsys.readouterr().out
