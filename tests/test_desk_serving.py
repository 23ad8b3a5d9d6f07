"""A desk that really listens: from the command line to Ctrl-C, with senders that break off, a port that is taken."""

from __future__ import annotations

import builtins
import json
import os
import re
import signal
import socket
import subprocess
import sys
import time
import urllib.request
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner

from explain.cli.main import main

SAMPLES = Path(__file__).parents[1] / "samples"
COMMAND = [sys.executable, "-c", "from explain.cli.main import main; main()", "desk", str(SAMPLES), "--no-browser"]
JUDGE = "/p/01-treacle-tin/working/judge"


@pytest.fixture(scope="module")
def port() -> Iterator[int]:
    with subprocess.Popen([*COMMAND, "--jobs", "1"], stderr=subprocess.PIPE, text=True) as desk:
        assert desk.stderr is not None
        found = re.search(r"http://127\.0\.0\.1:(\d+)/", desk.stderr.readline())
        assert found
        try:
            yield int(found[1])
        finally:
            desk.terminate()


def sent(port: int, data: bytes, half: bool = True) -> bytes:
    """What comes back for some bytes, the sending side closed behind them."""
    with socket.create_connection(("127.0.0.1", port), timeout=20) as line:
        line.sendall(data)
        if half:
            line.shutdown(socket.SHUT_WR)
        answer = b""
        while part := line.recv(65536):
            answer += part
        return answer


def judged(port: int) -> str:
    body = json.dumps({"text": "W = 2.5 × 9.81 = 24.5 N"}).encode()
    heads = {"origin": f"http://127.0.0.1:{port}", "content-type": "application/json"}
    request = urllib.request.Request(f"http://127.0.0.1:{port}{JUDGE}", body, heads)
    with urllib.request.urlopen(request, timeout=30) as answer:
        return str(json.loads(answer.read())["state"])


def head(port: int, *more: str, way: str = JUDGE, method: str = "POST") -> bytes:
    lines = (f"{method} {way} HTTP/1.1", f"Host: 127.0.0.1:{port}", f"Origin: http://127.0.0.1:{port}", *more, "", "")
    return "\r\n".join(lines).encode("latin-1")


def test_senders_that_break_off_or_lie_stop_nobody_else(port: int) -> None:
    assert "going" == judged(port)
    for data in (
        head(port, "Content-Length: 100") + b'{"text": "F',  # breaks off
        head(port, "Content-Length: 5", "Content-Length: 50") + b"{}{}{}",  # says two lengths
        head(port, "Content-Length: 4", "Transfer-Encoding: chunked") + b"2\r\n{}\r\n0\r\n\r\n",
        head(port, "Content-Length: -1"),
        head(port, "X: " + "y" * 100_000),
        head(port, "Host: evil.invalid"),
        b"\x16\x03\x01\x02\x00\x01\x00\x01\xfc\x03\x03",  # TLS to a door without
        b"\x00" * 1000,
        b"GET / HTTP/1.1\r\n\r\n",
        b"GET /\x00 HTTP/1.1\r\nHost: x\r\n\r\n",
    ):
        answer = sent(port, data)
        assert not answer or int(answer.split(b" ", 2)[1]) >= 400, (data[:80], answer[:80])
        assert b"Traceback" not in answer and str(SAMPLES).encode() not in answer
    assert "going" == judged(port)


def test_a_port_that_is_taken_is_told(port: int) -> None:
    result = CliRunner().invoke(main, ["desk", str(SAMPLES), "--port", str(port), "--no-browser"])
    assert (2, True) == (result.exit_code, f"port {port} at 127.0.0.1" in result.output)


def test_no_folder_is_told(tmp_path: Path) -> None:
    result = CliRunner().invoke(main, ["desk", str(tmp_path / "nowhere"), "--no-browser"])
    assert (2, True) == (result.exit_code, "there is no such folder" in result.output)


def test_without_the_extra_its_name_is_told(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    there = builtins.__import__

    def without(name: str, *more: Any, **other: Any) -> Any:
        if name == "uvicorn":
            raise ModuleNotFoundError("No module named 'uvicorn'", name="uvicorn")
        return there(name, *more, **other)

    monkeypatch.setattr(builtins, "__import__", without)
    result = CliRunner().invoke(main, ["desk", str(tmp_path), "--no-browser"])
    assert (2, True) == (result.exit_code, "worked-moments[desk]" in result.output)


def heeding() -> None:
    """In the child: a Ctrl-C is heeded even where the parent ignores it."""
    signal.signal(signal.SIGINT, signal.SIG_DFL)


def is_gone(group: int) -> bool:
    """Whether no process of a group is left, after some patience."""
    for _ in range(200):
        try:
            os.killpg(group, 0)
        except ProcessLookupError:
            return True
        time.sleep(0.05)
    return False


@pytest.mark.parametrize("how", (signal.SIGINT, signal.SIGTERM))
def test_it_ends_when_told_and_leaves_no_process(how: signal.Signals) -> None:
    command = [*COMMAND, "--jobs", "2"]
    with subprocess.Popen(
        command, stderr=subprocess.PIPE, text=True, start_new_session=True, preexec_fn=heeding
    ) as desk:
        assert desk.stderr is not None
        found = re.search(r":(\d+)/", desk.stderr.readline())
        assert found and "going" == judged(int(found[1]))
        desk.send_signal(how)
        said = desk.stderr.read()
        desk.wait(30)
    assert ("Traceback" in said, "stopped" in said, is_gone(desk.pid)) == (False, True, True)
