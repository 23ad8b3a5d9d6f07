"""A build that is killed, stopped or left without room is taken up again and ends as if nothing had happened; one
process or two, the same bytes.
"""

from __future__ import annotations

import os
import re
import resource
import signal
import subprocess
import sys
import time
from collections.abc import Callable
from pathlib import Path

import pytest
from books import book, hears_ctrl_c, problem

COUNT = 16
COMMAND = (sys.executable, "-c", "from explain.cli.main import main; main()", "manual")


def environment(folder: Path, seed: str = "0") -> dict[str, str]:
    return {**os.environ, "XDG_CACHE_HOME": str(folder / "cache"), "PYTHONHASHSEED": seed}


def small_book(folder: Path, count: int = COUNT) -> Path:
    return book(
        folder,
        [
            problem(place % 10, mass=f"{2 + place / 10:.1f}", direction=f"{60 + place} deg from back toward up")
            for place in range(count)
        ],
        3,
    )


def run(
    folder: Path, out: str, *words: str, seed: str = "0", before: Callable[[], None] | None = None
) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [*COMMAND, "book.toml", "-o", out, *words],
        cwd=folder,
        env=environment(folder, seed),
        text=True,
        capture_output=True,
        timeout=300,
        preexec_fn=before,
    )


def started(folder: Path, out: str, *words: str) -> subprocess.Popen[str]:
    return subprocess.Popen(
        [*COMMAND, "book.toml", "-o", out, *words],
        cwd=folder,
        env=environment(folder),
        text=True,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        start_new_session=True,
        preexec_fn=hears_ctrl_c,
    )


def kept(folder: Path) -> int:
    return len(list((folder / "cache").rglob("*-html-*.worked")))


def stopped(folder: Path, jobs: str, sign: signal.Signals) -> subprocess.Popen[str]:
    """A build stopped when a few problems are done."""
    process = started(folder, "out.html", "--jobs", jobs)
    deadline = time.monotonic() + 120
    while kept(folder) < 3 and process.poll() is None and time.monotonic() < deadline:
        time.sleep(0.01)
    process.send_signal(sign)
    process.communicate(timeout=60)
    return process


def members(group: int) -> list[int]:
    """The processes of a session that are still there."""
    found = []
    for entry in Path("/proc").iterdir():
        if entry.name.isdigit():
            try:
                fields = (entry / "stat").read_text().rpartition(")")[2].split()
            except OSError:
                continue
            if int(fields[3]) == group and fields[0] != "Z":
                found.append(int(entry.name))
    return found


def none_left(group: int) -> None:
    """No process outlives a build that was stopped."""
    deadline = time.monotonic() + 30
    while members(group) and time.monotonic() < deadline:
        time.sleep(0.05)
    assert [] == members(group)


@pytest.fixture(scope="module")
def undisturbed(tmp_path_factory: pytest.TempPathFactory) -> bytes:
    folder = tmp_path_factory.mktemp("undisturbed")
    small_book(folder)
    assert 0 == run(folder, "out.html", "--jobs", "1").returncode
    return (folder / "out.html").read_bytes()


@pytest.mark.parametrize(
    ("jobs", "sign"),
    (("1", signal.SIGINT), ("1", signal.SIGKILL), ("2", signal.SIGKILL), ("2", signal.SIGINT), ("2", signal.SIGTERM)),
)
def test_a_build_that_was_stopped_goes_on_and_ends_the_same(
    jobs: str, sign: signal.Signals, tmp_path: Path, undisturbed: bytes
) -> None:
    small_book(tmp_path)
    process = stopped(tmp_path, jobs, sign)
    assert (130 if sign == signal.SIGINT else -sign) == process.returncode
    assert [] == [
        each.name
        for each in tmp_path.iterdir()
        if each.name not in ("cache", "book.toml") and not each.name.startswith("chapter")
    ]
    done = kept(tmp_path)
    assert 3 <= done < COUNT
    none_left(process.pid)
    again = run(tmp_path, "out.html", "--jobs", jobs)
    (found,) = re.findall(r"(\d+) kept from before", again.stderr)
    assert int(found) >= done
    assert undisturbed == (tmp_path / "out.html").read_bytes()


@pytest.mark.parametrize("form", ("html", "md"))
def test_one_process_or_two_write_the_same_bytes(form: str, tmp_path: Path) -> None:
    small_book(tmp_path, 4)
    for jobs, seed in (("1", "1"), ("2", "2")):
        assert 0 == run(tmp_path, f"out-{jobs}.{form}", "--jobs", jobs, "--no-cache", seed=seed).returncode
    assert (tmp_path / f"out-1.{form}").read_bytes() == (tmp_path / f"out-2.{form}").read_bytes()


def test_one_process_or_two_or_a_cache_write_the_same_pdf(tmp_path: Path) -> None:
    small_book(tmp_path, 2)
    for name, words in (("a", ("--jobs", "1", "--no-cache")), ("b", ("--jobs", "2")), ("c", ("--jobs", "2"))):
        assert 0 == run(tmp_path, f"{name}.pdf", *words, seed=str(ord(name))).returncode
    assert 1 == len({(tmp_path / f"{name}.pdf").read_bytes() for name in "abc"})


def test_a_disk_that_takes_no_more_is_told_and_leaves_nothing(tmp_path: Path) -> None:
    """The limit on the size of a file stands in for a full disk: the system refuses the same call."""
    small_book(tmp_path, 3)

    def little_room() -> None:
        resource.setrlimit(resource.RLIMIT_FSIZE, (20_000, 20_000))

    result = run(tmp_path, "out.html", "--jobs", "1", before=little_room)
    assert (2, True) == (result.returncode, "a place that cannot be written" in result.stderr)
    assert [] == [each.name for each in tmp_path.iterdir() if "out" in each.name]
    assert 0 == run(tmp_path, "out.html", "--jobs", "1").returncode


def test_nothing_heavy_is_imported_when_everything_is_kept(tmp_path: Path) -> None:
    small_book(tmp_path, 2)
    run(tmp_path, "out.html")
    code = (
        "import sys; from click.testing import CliRunner; from explain.cli.main import main; "
        "result = CliRunner().invoke(main, ['manual', 'book.toml', '-o', 'out.html']); "
        "print(result.exit_code, sorted({'sympy', 'pint', 'ziamath', 'weasyprint', 'rules'} & set(sys.modules)), "
        "file=sys.stderr)"
    )
    found = subprocess.run(
        [sys.executable, "-c", code],
        cwd=tmp_path,
        env=environment(tmp_path),
        text=True,
        capture_output=True,
        timeout=60,
    )
    assert "0 []" == found.stderr.strip().split("\n")[-1]
