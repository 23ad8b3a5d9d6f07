"""The pages of the samples are those that are kept; every command in README and the pages beside the samples runs."""

from __future__ import annotations

import re
import shlex
import shutil
from pathlib import Path

import pytest
from click.testing import CliRunner
from pages_of_samples import PAGES, SAMPLES, markdown_with_figure, problems

from explain import work
from explain.cli.main import main

ROOT = SAMPLES.parent
README = (ROOT / "README.md").read_text(encoding="utf-8")
TOLD = {
    path.relative_to(ROOT).as_posix(): path.read_text("utf-8") for path in (ROOT / "README.md", *SAMPLES.glob("*.md"))
}


@pytest.mark.parametrize("path", problems(), ids=lambda path: path.stem)
def test_the_page_of_a_sample_is_the_one_that_is_kept(path: Path) -> None:
    assert (PAGES / f"{path.stem}.md").read_text(encoding="utf-8") == markdown_with_figure(work(path), path.stem)


@pytest.mark.parametrize("path", problems(), ids=lambda path: path.stem)
def test_the_diagram_of_a_sample_is_the_one_that_is_kept(path: Path) -> None:
    assert (PAGES / f"{path.stem}.svg").read_text(encoding="utf-8") == work(path).figure()


def test_no_page_is_kept_of_a_sample_that_is_gone() -> None:
    assert {path.stem for path in problems()} == {path.stem for path in PAGES.glob("*.md")}


def blocks() -> list[tuple[str, list[str]]]:
    """The `explain ...` lines of each block of a page, without their remarks."""
    fenced = [
        (name, block)
        for name, text in sorted(TOLD.items())
        for block in re.findall(r"^```(?:sh|console)\n(.*?)^```", text, re.DOTALL | re.MULTILINE)
    ]
    found = [(name, re.findall(r"^(?:\$ )?(explain .*)$", block, re.MULTILINE)) for name, block in fenced]
    return [(name, [line.partition("#")[0].strip() for line in lines]) for name, lines in found if lines]


def test_every_page_but_those_that_list_have_commands() -> None:
    lists = {"samples/README.md", "samples/course-files.md"}
    assert TOLD.keys() - lists == {name for name, _ in blocks()}


def _pressed(seconds: float) -> None:
    raise KeyboardInterrupt


def _lesson(folder: Path) -> None:
    """A folder that a desk serves, and what it kept of one working of its problem."""
    from explain.desk.kept import Attempt, Kept

    (folder / "lesson").mkdir()
    text = (SAMPLES / "01-treacle-tin.toml").read_text("utf-8")
    (folder / "lesson" / "tin.toml").write_text(re.sub(r"course = .*\n", "", text), "utf-8")
    kept = Kept(folder / "class.sqlite", lines=True)
    kept.note("tin", "", "", Attempt(1, 0, "", 0, False), "W = 2.5 × 9.81 = 24.5 N\n")
    kept.close()
    (folder / "marks.csv").write_text("page,seconds\n" + "".join(f"{n + 1},{20 * n}\n" for n in range(38)), "utf-8")


@pytest.mark.parametrize(
    ("name", "commands"), blocks(), ids=lambda given: given if isinstance(given, str) else given[0]
)
def test_the_commands_of_a_block_run_one_after_another(
    name: str, commands: list[str], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    shutil.copytree(SAMPLES, tmp_path / "samples", ignore=shutil.ignore_patterns("pages"))
    (tmp_path / "jug-level.toml").write_text(
        re.findall(r"```toml\n(title = .*?)```", README, re.DOTALL)[0], encoding="utf-8"
    )
    (tmp_path / "working.txt").write_text("F = 100 N\n", encoding="utf-8")
    (tmp_path / "answers.csv").write_text("student,biceps\nBirk Tallow,100 N\n", encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    _lesson(tmp_path)
    monkeypatch.setattr("explain.cli.watch.sleep", _pressed)  # what watches is ended at its first wait
    monkeypatch.setattr("uvicorn.Server.run", lambda *_, **__: _pressed(0))  # and what serves before it begins
    for command in commands:
        words = [
            str(each)
            for word in shlex.split(command.partition(">")[0].removesuffix("&"))[1:]
            for each in (sorted(Path().glob(word))[:6] if "*" in word else [word])
        ]
        result = CliRunner().invoke(main, words)
        assert result.exit_code in (0, 1), f"{name}: {command}: {result.output}"


def test_the_library_example_of_readme_runs(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    shutil.copytree(SAMPLES, tmp_path / "samples", ignore=shutil.ignore_patterns("pages"))
    monkeypatch.chdir(tmp_path)
    (example,) = re.findall(r"```python\n(.*?)```", README, re.DOTALL)
    space: dict[str, object] = {}
    code = compile(example, "README.md", "exec")
    exec(code, space)
    assert (tmp_path / "tin.html").exists()


def test_a_page_refers_to_files_that_exist() -> None:
    broken = [
        (name, target)
        for name, text in TOLD.items()
        for target in re.findall(r"\]\(([^)#:]+)\)", text)
        if not ((ROOT / name).parent / target).exists()
    ]
    assert [] == broken
