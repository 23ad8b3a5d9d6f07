"""The bound on marking: any working of 20,000 signs within two seconds of processor time, and memory that does not grow
with the workings marked.

Prints for each hostile working the seconds and how many of its lines were told as not followed; then the memory in use
after 500 wrong workings, against that after 50 (aim 1.2).
"""

from __future__ import annotations

import tracemalloc
from random import Random
from time import process_time

from explain import work

MOST_SECONDS, MOST_GROWTH = 2.0, 1.2
SIGNS = 20_000
PROBLEM = {
    "title": "jug",
    "pivot": {"name": "elbow"},
    "segment": [{"name": "forearm", "mass": "1.6 kg", "com": "15 cm"}],
    "ask": ["biceps", "reaction"],
    "muscle": [{"name": "biceps", "at": "4.0 cm", "direction": "70 deg from back toward up"}],
    "load": [{"name": "jug", "mass": "3.0 kg", "at": "33 cm"}, {"name": "cup", "mass": "0.5 kg", "at": "30 cm"}],
}


def hostile() -> dict[str, str]:
    """Workings that cost the most, by what they are made of."""
    random = Random(3)

    def number(low: float, high: float, places: int = 2) -> str:
        return f"{random.uniform(low, high):.{places}f}"

    def product() -> str:
        return f"{number(1, 90)}*{number(1, 40)}"

    lines = {
        "wrong lines": [f"F{n} = {product()}/{number(2, 5)} = {number(10, 900, 1)} N" for n in range(600)],
        "sums of letters": ["F W d = " + " + ".join(f"F{i} W d" for i in range(1, 60)) for _ in range(50)],
        "long sums": ["M = " + " + ".join(product() for _ in range(39)) for _ in range(50)],
        "right lines": ["M = 15.70*15 + 29.43*33 + 4.905*30 = 1353.5"] * 450,
        "one datum wrong": ["M = 15.70*15 + 29.43*31 + 4.905*30 = 1333.5"] * 450,
        "equations": [f"F{n}*4.0 = 15.70*{n} + 29.43*33 + 4.905*30" for n in range(450)],
        "pulls from nowhere": [f"biceps pulls {number(100, 900, 1)} N at {number(1, 9)} cm" for _ in range(500)],
        "a table": ["part | N | cm | N cm", *(f"a{n} | {number(5, 50)} | {number(5, 50)} | 100" for n in range(600))],
        "brackets": ["F = " + "(" * 15 + "1+2" + ")" * 15 + "*29.43/4"] * 400,
        "vectors": [f"F{n} = {n} i + {n * 2} j N" for n in range(900)],
        "sines": ["F sin70 * 4.0 = 15.70*15 + 29.43*33 + sin 23 * 12 / cos 14"] * 400,
    }
    return {name: "\n".join(each)[:SIGNS] for name, each in lines.items()}


def seconds() -> dict[str, float]:
    """Processor time for each hostile working, the slips of the problem being known."""
    marker = work(PROBLEM)
    marker.mark("F = 1.23*4.56 = 7.89 N")
    out = {}
    for name, text in hostile().items():
        start = process_time()
        found = marker.mark(text)
        out[name] = process_time() - start
        told = sum("work that is put into" in each.says or "statements" in each.says for each in found.lines)
        print(f"{name:20} {out[name]:5.2f} s, {told} of {len(found.lines)} lines told as not followed")
    return out


def growth(few: int = 50, many: int = 500) -> float:
    """Memory in use after many wrong workings of one problem, against that after few."""
    random = Random(5)
    marker = work(PROBLEM)
    tracemalloc.start()
    first = 0
    for count in range(1, many + 1):
        x, y = random.uniform(1, 90), random.uniform(1, 40)
        marker.mark(
            f"W{count} = {x:.2f}*{y:.2f} = {x * y * 1.1:.1f} N\nbiceps {count} = {x * y:.2f} N\nR = {x:.3f} N down"
        )
        first = tracemalloc.get_traced_memory()[0] if count == few else first
    last = tracemalloc.get_traced_memory()[0]
    tracemalloc.stop()
    print(f"memory in use after {many} workings / {few}: {last / first:.2f}")
    return last / first


if __name__ == "__main__":
    slow = max(seconds().values())
    print(f"slowest {slow:.2f} s (aim {MOST_SECONDS})")
    growth()
