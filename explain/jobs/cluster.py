"""A cluster in the place of this machine's own processes: an executor whose work goes out to the workers of a Dask
scheduler. Knows nothing of the work.

A chunk whose worker dies goes to another worker; its result comes back once. The workers need this program installed,
no shared disk.
"""

from __future__ import annotations

import logging
from collections.abc import Callable, Iterator, Sequence
from concurrent.futures import Executor
from contextlib import closing, contextmanager
from typing import Any, NamedTuple

from .pool import Item, Result, Trouble, cores, each
from ..errors import Fault

LOCAL = "local"
CHUNK = 16  # items that go out together
_PATIENCE = 6  # seconds until a scheduler that does not answer is given up
_DEATHS = 20  # workers that one chunk may lose before it is given up


class Workers(NamedTuple):
    """An executor, and the size of it: how many chunks it can work at once."""

    executor: Executor
    size: int


@contextmanager
def workers(address: str, jobs: int = 0) -> Iterator[Workers]:
    """The workers of the scheduler at an address such as tcp://10.0.0.5:8786; "local" starts `jobs` processes here (0:
    one a core).

    Raises Fault where the extra is not installed, and where no scheduler answers.
    """
    client = _client(address, jobs)
    try:
        yield Workers(client.get_executor(), max(1, sum(client.nthreads().values())))
    finally:
        local = client.cluster if address == LOCAL else None
        client.close()
        if local is not None:
            local.close()


@contextmanager
def spread(
    function: Callable[[Item], Result],
    items: Sequence[Item],
    jobs: int = 0,
    address: str = "",
    preload: Sequence[str] = (),
) -> Iterator[Iterator[Result | Trouble]]:
    """The results of `crew.each`, in order: from processes of this machine, or where there is an address from the
    workers of that scheduler. Raises Fault.
    """
    if not address or not items:
        with closing(each(function, items, jobs, preload=preload)) as results:  # type: ignore[type-var]
            yield results
        return
    with workers(address, jobs) as (executor, size):
        chunk = min(CHUNK, max(1, len(items) // (2 * size)))
        with closing(each(function, items, size, chunk, executor=executor)) as results:  # type: ignore[type-var]
            yield results


def _client(address: str, jobs: int) -> Any:
    try:
        import dask
        from distributed import Client, LocalCluster
    except ImportError:
        raise _fault(
            address, "no library for clusters", "the extra that has it", "pip install 'worked-moments[cluster]'"
        ) from None
    dask.config.set({"distributed.scheduler.allowed-failures": _DEATHS})
    try:
        if address == LOCAL:
            local = LocalCluster(
                n_workers=jobs or cores(), threads_per_worker=1, dashboard_address=None, silence_logs=logging.CRITICAL
            )
            return Client(local)
        return Client(address, timeout=_PATIENCE)
    except (OSError, ValueError, TimeoutError) as error:
        raise _fault(
            address,
            f"no cluster there ({str(error).partition(chr(10))[0][:120] or type(error).__name__})",
            "the address of a scheduler that runs, or local",
            "--cluster tcp://10.0.0.5:8786",
        ) from None


def _fault(address: str, found: str, expected: str, example: str) -> Fault:
    return Fault(file=f"--cluster {address}", found=found, expected=expected, example=example)
