"""A desk under load: p95 of a verdict with 50 and with 200 users who type, against one user; what is refused and tried
again; the front's part of the processor time; and another's verdict beside one who sends hostile workings.

    python tests/bench/bench_desk.py --seconds 30

Each user finishes a line every four to five seconds and asks how it is read twice a line; half of the workings are
wrong. A desk is started for each measurement, and its own figures are compared with each other alone.
"""

from __future__ import annotations

import argparse
import asyncio
import os
import random
import re
import subprocess
import sys
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from statistics import mean
from typing import NamedTuple

import httpx

SAMPLES = Path(__file__).parents[2] / "samples"
COMMAND = [sys.executable, "-c", "from explain.cli.main import main; main()", "desk", str(SAMPLES), "--no-browser"]
WORKINGS = {
    "02-treacle-tin-again": (
        "W = 1.8 × 9.81 = {0:.2f} N",
        "F × 4.4 = {0:.2f} × 16.5 + 24.525 × {1}",
        "F = {2:.1f} N",
        "R = {2:.1f} - 42.2 = {3:.1f} N down",
    ),
}
HOSTILE = "\n".join(["F W d = F1 W d + F2 W d + F3 W d + F4 W d + F5 W d"] * 60)


class Told(NamedTuple):
    """The seconds of each verdict and each reading, how many were refused, and how many were lost for good."""

    verdicts: list[float]
    readings: list[float]
    refused: int
    lost: int


@contextmanager
def desk() -> Iterator[tuple[str, int]]:
    with subprocess.Popen(COMMAND, stderr=subprocess.PIPE, text=True) as process:
        assert process.stderr is not None
        found = re.search(r"http://\S+", process.stderr.readline())
        assert found
        try:
            yield found[0].rstrip("/"), process.pid
        finally:
            process.terminate()


def lines_of(number: int) -> list[str]:
    """A working of this user's own numbers: right, or with a slip."""
    arm = 31 if number % 2 else 33 + number % 7
    weight = 1.8 * 9.81
    pull = (weight * 16.5 + 24.525 * arm) / 4.4
    return [each.format(weight, arm, pull, pull - 42.2) for each in WORKINGS["02-treacle-tin-again"]]


async def user(client: httpx.AsyncClient, number: int, until: float, told: Told) -> tuple[int, int]:
    chance, refused, lost = random.Random(number), 0, 0
    await asyncio.sleep(chance.uniform(0, 4))
    while time.perf_counter() < until:
        text = ""
        for line in lines_of(number):
            for part in (line[: len(line) // 2], line):
                start = time.perf_counter()
                answer = await client.post(f"{WAY}/read", json={"text": text + part})
                told.readings.append(time.perf_counter() - start)
                await asyncio.sleep(chance.uniform(0.4, 0.8))
            text += line + "\n"
            start = time.perf_counter()
            for _ in range(8):
                answer = await client.post(f"{WAY}/judge", json={"text": text})
                if answer.status_code != 503:
                    break
                refused += 1
                await asyncio.sleep(float(answer.headers["retry-after"]) * chance.uniform(0.5, 1.5))
            else:
                lost += 1
            told.verdicts.append(time.perf_counter() - start)
            await asyncio.sleep(chance.uniform(2.5, 3.5))
            if time.perf_counter() > until:
                break
    return refused, lost


WAY = "/p/02-treacle-tin-again/working"


async def crowd(address: str, users: int, seconds: float, hostile: bool = False) -> Told:
    told = Told([], [], 0, 0)
    limits = httpx.Limits(max_connections=400, max_keepalive_connections=400)
    async with httpx.AsyncClient(base_url=address, headers={"origin": address}, timeout=60, limits=limits) as client:
        for line in (lines_of(0), lines_of(1)):  # warm: each process has the problem ready
            await asyncio.gather(*(client.post(f"{WAY}/judge", json={"text": "\n".join(line)}) for _ in range(6)))
        until = time.perf_counter() + seconds
        bad = asyncio.create_task(_hostile(client, until)) if hostile else None
        done = await asyncio.gather(*(user(client, number, until, told) for number in range(users)))
        if bad is not None:
            await bad
    return told._replace(refused=sum(each for each, _ in done), lost=sum(each for _, each in done))


async def _hostile(client: httpx.AsyncClient, until: float) -> None:
    number = 0
    while time.perf_counter() < until:
        number += 1
        await client.post(f"{WAY}/judge", json={"text": f"{HOSTILE}\nx = {number}"})


def p95(seconds: list[float]) -> float:
    return sorted(seconds)[int(0.95 * (len(seconds) - 1))]


def processor(pid: int) -> float:
    """Seconds of processor time of a process."""
    fields = Path(f"/proc/{pid}/stat").read_text().rpartition(")")[2].split()
    return (int(fields[11]) + int(fields[12])) / os.sysconf("SC_CLK_TCK")


def family(pid: int) -> list[int]:
    """The processes below one."""
    try:
        tasks = list(Path(f"/proc/{pid}/task").iterdir())
        children = [int(each) for task in tasks for each in (task / "children").read_text().split()]
    except OSError:
        return []
    return [below for child in children for below in (child, *family(child))]


def main() -> None:
    parser = argparse.ArgumentParser()
    parser.add_argument("--seconds", type=float, default=30)
    seconds = parser.parse_args().seconds
    found: dict[int, Told] = {}
    for users in (1, 50, 200):
        with desk() as (address, pid):
            told = found[users] = asyncio.run(crowd(address, users, seconds))
            front, all_ = processor(pid), processor(pid) + sum(map(processor, family(pid)))
        print(
            f"{users} users: {len(told.verdicts)} verdicts, mean {1e3 * mean(told.verdicts):.0f} ms, p95 "
            f"{1e3 * p95(told.verdicts):.0f} ms; p95 of a reading {1e3 * p95(told.readings):.0f} ms; refused and tried "
            f"again {told.refused}, lost {told.lost}; the front's part of the processor time {front / all_:.2f}"
        )
    one, fifty, many = (p95(found[users].verdicts) for users in (1, 50, 200))
    print(f"p95 with 50 users against one {fifty / one:.1f} (aim 5); with 200 against 50 {many / fifty:.1f} (aim 3)")
    beside = []
    for hostile in (False, True):
        with desk() as (address, _):
            beside.append(p95(asyncio.run(crowd(address, 5, seconds / 2, hostile)).verdicts))
    print(f"another's p95 beside one who sends hostile workings {beside[1] / beside[0]:.1f} (aim 2)")


if __name__ == "__main__":
    main()
