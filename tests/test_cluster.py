"""A cluster in the place of this machine's own processes: the same bytes, also when a worker is killed in the
middle.
"""

from __future__ import annotations

import logging
import os
import signal
from collections.abc import Iterable, Iterator
from pathlib import Path

import pytest
from varying import JUG, contents, explain, made, problem

from explain.jobs import cluster, pool
from explain.jobs.pool import Trouble
from explain.errors import Fault
from explain.vary.handouts import Handed, Order, hand_out
from explain.vary.one_variant import Made
from explain.vary.class_list import numbered

COUNT = 40


@pytest.fixture(scope="module")
def whole(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, dict[str, bytes]]:
    folder = tmp_path_factory.mktemp("whole")
    file = problem(folder, JUG)
    made(file, folder / "out", COUNT)
    return file, contents(folder / "out")


Whole = tuple[Path, dict[str, bytes]]


def test_a_cluster_of_this_machine_gives_the_same_bytes(whole: Whole, tmp_path: Path) -> None:
    file, found = whole
    done = explain(file, "--count", COUNT, "--seed", 7, "-o", tmp_path / "out", "--cluster", "local", "--jobs", 2)
    assert done.returncode == 0, done.stderr
    assert contents(tmp_path / "out") == found
    assert "Traceback" not in done.stderr


def test_a_worker_killed_in_the_middle_loses_nothing_and_gives_nothing_twice(whole: Whole, tmp_path: Path) -> None:
    from distributed import Client, LocalCluster

    file, found = whole
    came: list[int] = []
    with (
        LocalCluster(n_workers=2, threads_per_worker=1, dashboard_address=None, silence_logs=logging.CRITICAL) as local,
        Client(local) as client,
    ):
        before = client.run(os.getpid)
        assert len(before) == 2

        def watch(results: Iterable[Made | Trouble], length: int) -> Iterator[Made | Trouble]:
            for each in results:
                assert isinstance(each, Made), each
                came.append(each.student.number)
                if len(came) == 10:
                    os.kill(next(iter(before.values())), signal.SIGKILL)
                yield each

        handed: Handed = hand_out(
            Order(file, tmp_path / "out", numbered(COUNT), 7, cluster=local.scheduler_address), watch
        )
        after = client.run(os.getpid)
    assert set(after.values()) != set(before.values())  # a new worker has taken the place of the one that died
    assert (handed.fresh, handed.troubles, came) == (COUNT, (), list(range(COUNT)))
    assert contents(tmp_path / "out") == found


def test_a_fault_of_one_item_stops_no_other() -> None:
    with cluster.workers("local", 2) as (executor, size):
        found = list(pool.each(_halved, (2, 3, 4), size, 1, executor=executor))
    assert size == 2
    assert [1, 2] == [each for each in found if isinstance(each, int)]
    assert [2] == [each.code for each in found if isinstance(each, Trouble)]


def _halved(number: int) -> int:
    if number % 2:
        raise Fault(found=f"{number}", expected="an even number")
    return number // 2


def test_no_scheduler_there_is_a_fault() -> None:
    with pytest.raises(Fault, match="no cluster there"), cluster.workers("tcp://127.0.0.1:9"):
        pass
    with pytest.raises(Fault, match="no cluster there"), cluster.workers("nonsense://x"):
        pass
