"""Which set of numbers is tried for which student: a shuffled order of all sets, fixed by the seed alone. Knows no
problem.

The order is a permutation (four rounds of a Feistel network over a keyed hash, walked until it falls inside), so that
two students whose
tickets are numbers in a row are given the same set only where there are too few sets, and those whose tickets come
of their names as seldom as chance has it; M. Luby and C. Rackoff, SIAM Journal on Computing 17 (1988), 373-386.
"""

from __future__ import annotations

from collections.abc import Sequence
from hashlib import blake2b
from math import prod

TRIES = 256  # sets that are tried for one student at most
_ROUNDS = 4


def tries(sizes: Sequence[int]) -> range:
    """The numbers of the tries that one student has: fewer where there are fewer sets."""
    return range(min(TRIES, prod(sizes)))


def drawn(seed: int, ticket: int, attempt: int, sizes: Sequence[int]) -> tuple[int, ...]:
    """For each range, of so many values, the place of the value that this try has. `ticket` is a student's own whole
    number from 0: any at all.

    >>> drawn(7, 0, 0, (11, 5)) == drawn(7, 0, 0, (11, 5))
    True
    """
    count = prod(sizes)
    place = shuffled(seed, (ticket + attempt * max(1, count // TRIES)) % count, count)
    out = []
    for size in sizes:
        place, index = divmod(place, size)
        out.append(index)
    return tuple(out)


def shuffled(seed: int, index: int, count: int) -> int:
    """Where the shuffled order of 0 to count - 1 has `index`."""
    half = max(1, (max(1, count - 1).bit_length() + 1) // 2)
    while True:
        index = _network(seed, index, half, count)
        if index < count:
            return index


def _network(seed: int, index: int, half: int, count: int) -> int:
    mask = (1 << half) - 1
    left, right = index >> half, index & mask
    for step in range(_ROUNDS):
        key = f"{seed}:{count}:{step}:{right}".encode()
        left, right = right, left ^ (int.from_bytes(blake2b(key, digest_size=16).digest(), "big") & mask)
    return left << half | right
