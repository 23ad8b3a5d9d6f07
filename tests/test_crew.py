"""Work spread over processes: order, exceptions, processes that die, being stopped."""

from __future__ import annotations

import os
import signal
import time
from concurrent.futures import ThreadPoolExecutor

import pytest

from explain.jobs.pool import Trouble, cores, each
from explain.errors import Fault


def doubled(number: int) -> int:
    return 2 * number


def fussy(number: int) -> int:
    if number == 3:
        raise Fault(found="a three", expected="anything else")
    if number == 5:
        raise ZeroDivisionError("five")
    return number


def deadly(number: int) -> int:
    if number == 4:
        os.kill(os.getpid(), signal.SIGKILL)
    return number


def where(_: int) -> int:
    return os.getpid()


def slow(number: int) -> int:
    time.sleep(0.05 * (number % 3))
    return number


@pytest.mark.parametrize("jobs", (1, 2))
def test_results_come_in_the_order_of_the_items(jobs: int) -> None:
    assert [0, 1, 2, 3, 4, 5, 6, 7, 8] == list(each(slow, range(9), jobs, chunk=1))


def test_no_items_give_no_results() -> None:
    assert [] == list(each(doubled, [], 2))


@pytest.mark.parametrize("jobs", (1, 2))
def test_one_bad_item_stops_no_other(jobs: int) -> None:
    found = list(each(fussy, range(7), jobs))
    assert ([0, 1, 2, 4, 6], [2, 70]) == (
        [result for result in found if isinstance(result, int)],
        [result.code for result in found if isinstance(result, Trouble)],
    )


def test_what_went_wrong_is_told() -> None:
    found = list(each(fussy, range(7), 1))
    assert ("found a three.\nExpected anything else.", "a fault of the program itself: ZeroDivisionError: five") == (
        found[3].message,
        found[5].message,
    )


def test_a_process_that_dies_takes_only_its_item_with_it() -> None:
    found = list(each(deadly, range(12), 2, chunk=3))
    assert [0, 1, 2, 3, "trouble", 5, 6, 7, 8, 9, 10, 11] == [
        "trouble" if isinstance(each, Trouble) else each for each in found
    ]


def test_one_job_is_this_very_process() -> None:
    assert {os.getpid()} == set(each(where, range(3), 1))


def test_two_jobs_are_other_processes() -> None:
    assert os.getpid() not in set(each(where, range(8), 2))


def test_any_executor_can_take_the_pools_place() -> None:
    with ThreadPoolExecutor(2) as executor:
        assert [0, 2, 4, 6] == list(each(doubled, range(4), 2, executor=executor))


def test_a_closed_iterator_gives_up_what_has_not_begun() -> None:
    results = each(slow, range(10_000), 2, chunk=1)
    assert 0 == next(results)
    start = time.monotonic()
    results.close()
    assert time.monotonic() - start < 30  # the rest would take four minutes


def test_there_is_at_least_one_core() -> None:
    assert cores() >= 1
