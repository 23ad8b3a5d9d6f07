"""Work that is stopped, and processes that die in the middle: nothing lost, nothing twice, the same bytes in the
end.
"""

from __future__ import annotations

import json
import os
import signal
import subprocess
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from time import monotonic, sleep

import pytest
from books import hears_ctrl_c
from varying import JUG, children, command, contents, explain, made, problem

COUNT = 30


@pytest.fixture(scope="module")
def whole(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, dict[str, bytes]]:
    """The problem, and what comes out of an undisturbed run in one process."""
    folder = tmp_path_factory.mktemp("whole")
    file = problem(folder, JUG)
    made(file, folder / "out", COUNT)
    return file, contents(folder / "out")


Whole = tuple[Path, dict[str, bytes]]


@contextmanager
def _running(file: Path, out: Path, jobs: int) -> Iterator[subprocess.Popen[str]]:
    """The command at work, some students done and some not."""
    words = command(file, "--count", COUNT, "--seed", 7, "-o", out, "--jobs", jobs)
    with subprocess.Popen(
        words, stderr=subprocess.PIPE, text=True, start_new_session=True, preexec_fn=hears_ctrl_c
    ) as process:
        try:
            end = monotonic() + 120
            while len(_recorded(out)) < 5 and monotonic() < end and process.poll() is None:
                sleep(0.005)
            assert 5 <= len(_recorded(out)) < COUNT and process.poll() is None
            yield process
        finally:
            if process.poll() is None:
                process.kill()


def _recorded(out: Path) -> list[int]:
    try:
        lines = (out / "run.jsonl").read_bytes().split(b"\n")[1:-1]
    except OSError:
        return []
    return [json.loads(line)["student"] for line in lines]


def test_jobs_change_nothing(whole: Whole, tmp_path: Path) -> None:
    file, found = whole
    assert explain(file, "--count", COUNT, "--seed", 7, "-o", tmp_path / "out", "--jobs", 2).returncode == 0
    assert contents(tmp_path / "out") == found


def test_the_same_seed_gives_the_same_bytes_and_another_gives_others(whole: Whole, tmp_path: Path) -> None:
    file, found = whole
    made(file, tmp_path / "again", COUNT)
    assert contents(tmp_path / "again") == found
    made(file, tmp_path / "other", 3, seed=8)
    assert contents(tmp_path / "other")["sheets/student-001.md"] != found["sheets/student-001.md"]


def test_a_longer_class_leaves_the_others_sheets_as_they_are(whole: Whole, tmp_path: Path) -> None:
    file, found = whole
    made(file, tmp_path / "out", COUNT // 2)
    shorter = {
        name: content for name, content in contents(tmp_path / "out").items() if name.startswith(("sheets", "variants"))
    }
    assert shorter == {name: found[name] for name in shorter}


@pytest.mark.parametrize("jobs", (1, 2))
def test_stopped_by_hand_it_goes_on_where_it_stopped(whole: Whole, tmp_path: Path, jobs: int) -> None:
    file, found = whole
    out = tmp_path / "out"
    with _running(file, out, jobs) as process:
        process.send_signal(signal.SIGINT)
        _, said = process.communicate(timeout=120)
    assert process.returncode == 130 and "goes on from there" in said
    done = _recorded(out)
    assert len(done) == len(set(done))
    times = {path: path.stat().st_mtime_ns for path in (out / "sheets").iterdir() if int(path.stem[-3:]) - 1 in done}
    again = explain(file, "--count", COUNT, "--seed", 7, "-o", out, "--jobs", jobs)
    assert again.returncode == 0 and f"{COUNT - len(done)} made, {len(done)} there already" in again.stderr
    assert times == {path: path.stat().st_mtime_ns for path in times}
    assert contents(out) == found


def test_killed_outright_it_goes_on_where_it_stopped(whole: Whole, tmp_path: Path) -> None:
    file, found = whole
    out = tmp_path / "out"
    with _running(file, out, 2) as process:
        process.kill()
        process.communicate(timeout=120)
    with (out / "run.jsonl").open("ab") as journal:
        journal.write(b'{"entry": [["1.2 kg"')  # a line that was cut short
    assert explain(file, "--count", COUNT, "--seed", 7, "-o", out, "--jobs", 1).returncode == 0
    assert {name: content for name, content in contents(out).items() if not Path(name).name.startswith(".")} == found


def test_a_process_that_dies_in_the_middle_loses_nothing(whole: Whole, tmp_path: Path) -> None:
    file, found = whole
    out = tmp_path / "out"
    with _running(file, out, 2) as process:
        workers = [each for each in children(process.pid) if _is_worker(each)]
        assert workers
        os.kill(workers[0], signal.SIGKILL)
        _, said = process.communicate(timeout=240)
    assert process.returncode == 0 and f"{COUNT} made" in said, said
    assert contents(out) == found


def _is_worker(pid: int) -> bool:
    """A process of the pool: one that the server of processes has forked, so its parent is not the command itself."""
    try:
        words = Path(f"/proc/{pid}/cmdline").read_bytes()
        parent = int(Path(f"/proc/{pid}/stat").read_text().rpartition(")")[2].split()[1])
        return b"forkserver" in words and b"forkserver" in Path(f"/proc/{parent}/cmdline").read_bytes()
    except OSError:
        return False
