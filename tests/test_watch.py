"""Watching: a page is drawn again at every save, and the last good one stays where a file is at fault."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
import time
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from books import hears_ctrl_c
from click.testing import CliRunner

from explain.cli.main import main
from explain.cli.watch import saves, stamp
from explain.problem.named_files import named_files
from explain.problem.new_files import new_files

PROCESS = (sys.executable, "-u", "-c", "from explain.cli.main import main; main()")
LONGEST = 60.0  # seconds to wait for what must come


def until(there: Callable[[], bool]) -> bool:
    end = time.monotonic() + LONGEST
    while time.monotonic() < end and not there():
        time.sleep(0.05)
    return there()


class Watched:
    """A running `explain work --watch`, in a folder with a problem, a course and a table."""

    def __init__(self, folder: Path) -> None:
        self.folder, self.page, self.log = folder, folder / "pail.html", folder / "log"
        problem = new_files("problem", "pail")["pail.toml"].replace("ask =", 'course = "ours.toml"\nask =', 1)
        self.save("pail.toml", problem), self.save("ours.toml", 'word = "moment"\n')
        with self.log.open("wb") as log:
            self.process = subprocess.Popen(
                [*PROCESS, "work", "pail.toml", "-o", "pail.html", "--watch"],
                cwd=folder,
                stdout=log,
                stderr=log,
                preexec_fn=hears_ctrl_c,
            )
        assert self.says("is drawn")

    def save(self, name: str, text: str) -> None:
        """As editors save: a new file takes the place of the old one."""
        (self.folder / "new").write_text(text, "utf-8")
        os.replace(self.folder / "new", self.folder / name)

    def change(self, name: str, old: str, new: str) -> None:
        text = (self.folder / name).read_text("utf-8")
        assert old in text
        self.save(name, text.replace(old, new))

    @property
    def said(self) -> str:
        return self.log.read_text("utf-8")

    def says(self, words: str, times: int = 1) -> bool:
        return until(lambda: self.said.count(words) >= times)

    def shows(self, words: str) -> bool:
        return until(lambda: words in self.page.read_text("utf-8"))


@pytest.fixture
def watched(tmp_path: Path) -> Iterator[Watched]:
    running = Watched(tmp_path)
    yield running
    running.process.kill()
    running.process.wait(timeout=LONGEST)


def test_a_page_is_drawn_again_at_every_save_and_stays_where_the_file_is_at_fault(watched: Watched) -> None:
    watched.change("pail.toml", "A pail of mussels", "A pail of clams")
    assert watched.shows("A pail of clams")
    good, text = watched.page.read_bytes(), (watched.folder / "pail.toml").read_text("utf-8")
    watched.change("pail.toml", '"2.8 kg"', '"2.8"')
    assert watched.says("stays as it was drawn last") and "load[1].mass" in watched.said
    assert good == watched.page.read_bytes()
    watched.save("pail.toml", text.replace("clams", "whelks"))
    assert watched.shows("A pail of whelks")
    watched.change("pail.toml", "[pivot]", "[pivot")  # no TOML: what it named is still known
    assert watched.says("stays as it was drawn last", 2)
    watched.change("pail.toml", "[pivot", "[pivot]")
    assert watched.says("is drawn", 4), watched.said


def test_the_course_that_a_problem_names_is_watched_too(watched: Watched) -> None:
    watched.save("ours.toml", 'word = "torque"\n')
    assert watched.shows("torque")
    good = watched.page.read_bytes()
    watched.save("ours.toml", 'word = "twist"\n')
    assert watched.says("stays as it was drawn last") and '"twist"' in watched.said
    assert good == watched.page.read_bytes()


def test_ctrl_c_ends_it_well(watched: Watched) -> None:
    watched.process.send_signal(signal.SIGINT)
    assert (0, True) == (watched.process.wait(timeout=LONGEST), "no longer watching" in watched.said)


def test_it_needs_a_page_to_draw(tmp_path: Path) -> None:
    (tmp_path / "pail.toml").write_text(new_files("problem", "pail")["pail.toml"], "utf-8")
    done = CliRunner().invoke(main, ["work", str(tmp_path / "pail.toml"), "--watch"])
    assert (2, "", True) == (done.exit_code, done.stdout, "--watch -o page.html" in done.stderr)


@pytest.mark.parametrize(
    ("text", "named"),
    [
        ('course = "a.toml"', ["a.toml"]),
        ('course = { from = "b.toml", word = "torque" }', ["b.toml"]),
        ('[person]\ntable = "ours.csv"', ["ours.csv"]),
        ('[person]\ntable = "winter"', []),
        ("", []),
        ("course = 3", []),
        ("[pivot", None),
    ],
)
def test_the_files_that_a_problem_names(text: str, named: list[str] | None, tmp_path: Path) -> None:
    (tmp_path / "p.toml").write_text(text, "utf-8")
    found = named_files(tmp_path / "p.toml")
    assert named == (None if found is None else [each.name for each in found])


def test_what_changed_is_told_once_when_it_has_come_to_rest(tmp_path: Path) -> None:
    one, other, third = (tmp_path / name for name in ("one", "other", "third"))
    one.write_text("1"), other.write_text("1")
    script = [
        lambda: None,
        lambda: one.write_text("22"),
        lambda: one.unlink(),  # an editor takes it away for a moment
        lambda: one.write_text("333"),
        lambda: None,  # at rest: told here
        lambda: None,
        lambda: other.unlink(),
        lambda: None,  # gone, and at rest
        lambda: third.write_text("1"),  # watched since the last time, and now it is there
        lambda: None,
    ]
    watched = [one, other]
    told = saves(lambda: tuple(watched), rest=lambda: script.pop(0)())
    assert ((one,), 5) == (next(told), len(script))
    watched.append(third)
    assert ((other,), 2) == (next(told), len(script))
    assert ((third,), 0) == (next(told), len(script))


def test_what_was_saved_since_stamps_were_taken_counts(tmp_path: Path) -> None:
    one = tmp_path / "one"
    one.write_text("1")
    before = {one: stamp(one)}
    one.write_text("22")  # while the first page was drawn
    script = [lambda: None] * 2
    told = saves(lambda: (one,), rest=lambda: script.pop(0)(), before=before)
    assert ((one,), 0) == (next(told), len(script))
