"""Places that take nothing: a disk that is full, a name that no file can have. What is said, and that nothing is
left half-written.
"""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest
from click.testing import CliRunner

from explain import Fault
from explain.cli.main import main
from explain.output import put_all, put_whole

LONG = "x" * 300
ROOT = Path(__file__).parent.parent
SAMPLE = ROOT / "samples" / "02-treacle-tin-again.toml"
FIRST = ROOT / "samples" / "01-treacle-tin.toml"
SERIES = ROOT / "samples" / "series" / "treacle-tin.toml"
BOOK = ROOT / "samples" / "book" / "book.toml"
ANSWERS = ROOT / "samples" / "class" / "answers.csv"
VARY = ROOT / "samples" / "class-variants" / "bucket-of-mussels.toml"
WORKING = ROOT / "samples" / "workings" / "saoirse-02.txt"
full = pytest.mark.skipif(not os.path.exists("/dev/full"), reason="this system has no full device")


@full
@pytest.mark.parametrize(
    "words",
    (
        ("--help",),
        ("work", SAMPLE),
        ("work", SAMPLE, "--as", "json"),
        ("draw", SAMPLE),
        ("schema", "problem"),
        ("mark", SAMPLE, WORKING),
        ("series", "--suggest", SAMPLE),
        ("tally", SAMPLE, ANSWERS),
    ),
    ids=lambda words: " ".join(map(str, words[:1] + words[2:])).replace(str(ROOT), ""),
)
def test_a_full_disk_behind_standard_output_is_told_as_one(words: tuple[object, ...]) -> None:
    with open("/dev/full", "wb") as nowhere:
        done = subprocess.run(
            [sys.executable, "-c", "from explain.cli.main import main; main()", *map(str, words)],
            stdout=nowhere,
            stderr=subprocess.PIPE,
            text=True,
            timeout=300,
        )
    assert (2, True, False) == (
        done.returncode,
        "standard output: found a place that cannot be written" in done.stderr,
        "Please report" in done.stderr,
    ), done.stderr


@pytest.mark.parametrize(
    "words",
    (
        ("work", SAMPLE, "-o", f"{LONG}.md"),
        ("work", SAMPLE, "-o", f"{LONG}/a.md"),
        ("work", SAMPLE, FIRST, "-o", LONG),
        ("draw", SAMPLE, "-o", f"{LONG}.svg"),
        ("mark", SAMPLE, WORKING, "-o", f"{LONG}.html"),
        ("mark", SAMPLE, WORKING, "-o", LONG),
        ("tally", SAMPLE, ANSWERS, "-o", "r.md", "--csv", "rows.csv", "--chart", f"{LONG}.svg"),
        ("tally", SAMPLE, ANSWERS, "-o", f"{LONG}.md", "--csv", "rows.csv", "--chart", "c.svg"),
        ("tally", SAMPLE, ANSWERS, "--csv", f"{LONG}.csv"),
        ("series", SERIES, "-o", "s.md", "--csv", f"{LONG}.csv"),
        ("series", SERIES, "-o", f"{LONG}.md", "--csv", "s.csv"),
        ("series", "--suggest", SAMPLE, "-o", f"{LONG}.toml"),
        ("vary", VARY, "--count", "1", "-o", LONG, "--jobs", "1"),
        ("manual", BOOK, "-o", f"{LONG}.html", "--no-cache"),
        ("manual", BOOK, "-o", f"{LONG}.md", "--no-cache"),
    ),
    ids=lambda words: " ".join(each if isinstance(each, str) else each.name for each in words).replace(LONG, "long"),
)
def test_a_name_that_is_too_long_is_told_and_leaves_nothing(
    words: tuple[object, ...], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    result = CliRunner().invoke(main, list(map(str, words)))
    assert (2, []) == (result.exit_code, list(tmp_path.iterdir())), result.output
    assert "fault of the program" not in result.output


def test_of_several_files_none_is_written_where_one_cannot_be(tmp_path: Path) -> None:
    (tmp_path / "a.md").write_bytes(b"before")
    (tmp_path / "b.md").mkdir()
    with pytest.raises(Fault, match="cannot be written"):
        put_all(((tmp_path / "a.md", b"after"), (tmp_path / "b.md", b"after")))
    assert (b"before", {"a.md", "b.md"}) == (
        (tmp_path / "a.md").read_bytes(),
        {each.name for each in tmp_path.iterdir()},
    )


@full
def test_a_device_takes_what_it_is_given_and_stays_a_device() -> None:
    with pytest.raises(Fault, match="cannot be written"):
        put_all(((Path("/dev/full"), b"page"),))
    assert not os.path.isfile("/dev/full")


def test_the_course_of_a_name_far_too_long_is_told(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    Path("p.toml").write_text(
        f'course = "{"x" * 4_000}"\n' + SAMPLE.read_text("utf-8").replace("course =", "# course ="), "utf-8"
    )
    result = CliRunner().invoke(main, ["work", "p.toml"])
    assert (2, True) == (result.exit_code, "the name is too long" in result.stderr), result.output


@pytest.mark.parametrize("where", ("fdopen", "chmod", "replace"))
def test_a_ctrl_c_in_the_middle_of_writing_leaves_no_half_file(
    where: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def pressed(*_: object, **__: object) -> None:
        raise KeyboardInterrupt

    put_whole(tmp_path / "kept.txt", b"as it was")
    with monkeypatch.context() as patched, pytest.raises(KeyboardInterrupt):
        patched.setattr(f"explain.output.os.{where}", pressed)
        put_all([(tmp_path / "kept.txt", b"new"), (tmp_path / "other.txt", b"new")])
    assert {"kept.txt": b"as it was"} == {path.name: path.read_bytes() for path in tmp_path.iterdir()}
