"""Processes of the desk: bounded in time and memory, and nobody waits behind one that is stopped."""

from __future__ import annotations

import asyncio
from collections.abc import Awaitable, Callable
from typing import Any, TypeVar

import pytest

from explain.desk.pool import Busy, Limits, Pool

T = TypeVar("T")
LIMITS = Limits(processor=0.5, wall=3.0, memory=1 << 30)


def in_pool(do: Callable[[Pool], Awaitable[T]], jobs: int = 2, limits: Limits = LIMITS, most: int = 64) -> T:
    async def run() -> T:
        pool = Pool("desk_tasks", jobs, limits, most)
        pool.start()
        try:
            return await do(pool)
        finally:
            await pool.end()

    return asyncio.run(run())


@pytest.mark.parametrize(
    ("op", "why", "ended"),
    (
        ("loop", "time", 0),
        ("stubborn loop", "time", 0),
        ("long call", "time", 1),
        ("memory", "memory", 0),
        ("wait", "time", 1),
        ("fault", "fault", 0),
        ("leave", "fault", 1),
    ),
)
def test_what_must_be_stopped_is_and_others_are_answered_meanwhile(op: str, why: str, ended: int) -> None:
    async def both(pool: Pool) -> tuple[Any, Any, Any, int]:
        hostile = asyncio.create_task(pool.ask({"op": op}, "one"))
        await asyncio.sleep(0.05)
        beside = await pool.ask({"op": "echo", "text": "here"}, "other")
        still_out = not hostile.done()
        told = await hostile
        after = [await pool.ask({"op": "echo", "text": "after"}, each) for each in ("one", "other")]
        return told, (beside["said"], still_out or op in ("memory", "fault", "leave")), after, pool.ended

    told, beside, after, count = in_pool(both)
    assert (why, ("here", True)) == (told["stopped"], beside)
    assert (["after", "after"], ended) == ([each["said"] for each in after], count)
    assert "secret" not in str(told)


def test_one_more_than_may_wait_is_refused_at_once() -> None:
    async def crowd(pool: Pool) -> list[Any]:
        asks = [asyncio.create_task(pool.ask({"op": "echo", "text": str(n)})) for n in range(9)]
        return await asyncio.gather(*asks, return_exceptions=True)

    told = in_pool(crowd, jobs=1, most=4)
    assert 5 <= sum(isinstance(each, Busy) for each in told) < 9
    assert all(isinstance(each, Busy) or each["said"] == str(n) for n, each in enumerate(told))


def test_who_had_a_problem_last_gets_it_again() -> None:
    async def asked(pool: Pool) -> list[int]:
        return [(await pool.ask({"op": "echo", "text": ""}, each))["process"] for each in ("a", "b", "a", "b", "a")]

    one, other, *rest = in_pool(asked)
    assert (one != other, [one, other, one]) == (True, rest)


def test_a_process_that_did_enough_or_grew_is_replaced() -> None:
    async def asked(pool: Pool) -> list[int]:
        return [(await pool.ask({"op": "echo", "text": ""}))["process"] for _ in range(5)]

    assert [1, 1, 2, 2, 3] == _numbered(in_pool(asked, 1, LIMITS._replace(requests=2)))
    assert [1, 2, 3, 4, 5] == _numbered(in_pool(asked, 1, LIMITS._replace(resident=1)))


def _numbered(processes: list[int]) -> list[int]:
    known: dict[int, int] = {}
    return [known.setdefault(each, len(known) + 1) for each in processes]


def test_one_who_leaves_does_not_take_the_process_along() -> None:
    async def leave(pool: Pool) -> str:
        for _ in range(3):
            asking = asyncio.create_task(pool.ask({"op": "loop"}))
            await asyncio.sleep(0.1)
            asking.cancel()
        return str((await pool.ask({"op": "echo", "text": "here"}))["said"])

    assert "here" == in_pool(leave, jobs=1)
