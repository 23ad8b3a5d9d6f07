"""Books that cannot be made: one clear fault, exit code 2, nothing half-written; and caches that cannot be trusted."""

from __future__ import annotations

import os
import pickle
from hashlib import sha256
from pathlib import Path

import pytest
from books import BOOK, book, chapter, fenced, problem
from click.testing import CliRunner, Result

from explain import work
from explain.manual import output as book_output
from explain.manual import tasks as book_tasks
from explain.cli.main import main
from explain.document.passage import Text
from explain.errors import Fault
from explain.manual import cache as cache_module
from explain.manual.cache import Cache
from explain.manual.errata import last_build
from explain.manual.task import Facts, Topic, Worked
from explain.output import put_whole

ROOT = Path(__file__).parents[1]
JUG = fenced(problem(1), "label=jug")


@pytest.fixture(autouse=True)
def own_cache(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))


def made(path: Path, out: Path, *words: str) -> Result:
    return CliRunner().invoke(main, ["manual", str(path), "-o", str(out), "--jobs", "1", *words])


def refused(path: Path, tmp_path: Path, *said: str) -> None:
    """The book is not made, every one of these things is said, and nothing is left behind."""
    before = sorted(each.name for each in tmp_path.iterdir() if each.name != "cache")
    result = made(path, tmp_path / "out.md")
    assert 2 == result.exit_code, result.output
    assert [] == [each for each in said if each not in result.stderr], result.stderr
    assert before == sorted(each.name for each in tmp_path.iterdir() if each.name != "cache")


@pytest.mark.parametrize(
    ("text", "said"),
    (
        (
            "# One\n\n```problem label=jug\n" + problem(1),
            ("line 3", "a problem block that is not closed before the end of the file"),
        ),
        (
            "# One\n\n```problem label=jug\n" + problem(1) + "\n" + JUG,
            ("line 3", "not closed before line", "where the next one begins"),
        ),
        (
            '# One\n\n- in a list\n\n  ```problem label=jug\n  title = "x"\n  ```\n',
            ("line 5", "inside a list or a quotation"),
        ),
        ('# One\n\n> ```problem label=jug\n> title = "x"\n> ```\n', ("line 3", "inside a list or a quotation")),
        ("Words only.\n", ("no title", "# The elbow")),
        (
            '# One\n\n```problem file="gone.toml"\ntitle = "x"\n```\n',
            ("line 3", "a file and a problem inside the block"),
        ),
        ("# One\n\n```problem label=jug\n```\n", ("line 3", "an empty problem block")),
        ("# One\n\n```problem lable=jug\n" + problem(1) + "```\n", ("line 3", "lable", "label=")),
        ('# One\n\n```problem label="a b"\n' + problem(1) + "```\n", ("line 3", "label", "small letters")),
        ("# One\n\n```problem label='jug\n" + problem(1) + "```\n", ("line 3", "quotation marks that are not closed")),
        ("# One\n\n```problem number=first\n" + problem(1) + "```\n", ("line 3", "number")),
        ("# One\n\n" + JUG + "\n" + JUG, ("line 23", "the label jug a second time (first in chapter.md, line 3)")),
        (
            "# One\n\n" + JUG + "\n" + fenced(problem(2), "label=two number=1.1"),
            ("line 23", "the number 1.1 a second time"),
        ),
        ("# One\n\nSee [](#jgu).\n\n" + JUG, ("line 3", 'a cross reference to "#jgu"', '"#jug"')),
        (
            "# One\n\n" + fenced(problem(1), "label=chapter"),
            ('"#chapter"', "as the name of this chapter and of something else"),
        ),
    ),
)
def test_a_chapter_that_cannot_be_read_is_refused(text: str, said: tuple[str, ...], tmp_path: Path) -> None:
    refused(chapter(tmp_path, text), tmp_path, "chapter.md", *said)


@pytest.mark.parametrize(
    ("text", "said"),
    (
        ("", ("title", "the title of the book")),
        ('title = "x"\n', ("chapters", "a list of chapter files")),
        ('title = "x"\nchapters = []\n', ("chapters",)),
        ('title = "x"\nchapters = ["gone.md"]\n', ("line 2", '"gone.md", but there is no such file')),
        ('title = "x"\nchapters = ["c.md", "c.md"]\n', ("one file twice",)),
        ('title = "x"\nchapter = ["c.md"]\n', ("chapter", "chapters in place of chapter")),
        ('title = "x"\nchapters = ["c.md"]\nedition = "teacher"\n', ("edition", '"student"')),
        ('title = "x"\nchapters = ["c.md"]\ncourse = "gone.toml"\n', ("course", "there is no such file")),
        ('title = "x"\nchapters = ["c.md"]\nworking = -1\n', ("working", "a whole number")),
        ('title = "x\n', ("text that is not TOML",)),
    ),
)
def test_a_book_file_that_cannot_be_read_is_refused(text: str, said: tuple[str, ...], tmp_path: Path) -> None:
    (tmp_path / "c.md").write_text("# One\n\n" + JUG, "utf-8")
    (tmp_path / "book.toml").write_text(text, "utf-8")
    refused(tmp_path / "book.toml", tmp_path, "book.toml", *said)


def test_a_book_file_that_is_not_there_is_refused(tmp_path: Path) -> None:
    refused(tmp_path / "gone.toml", tmp_path, "gone.toml", "no file that can be read")


def test_a_chapter_that_is_not_utf8_is_refused(tmp_path: Path) -> None:
    path = chapter(tmp_path, "")
    (tmp_path / "chapter.md").write_bytes(b"# One\n\n\xff\n")
    refused(path, tmp_path, "chapter.md", "line 3")


def test_a_problem_file_that_is_not_utf8_is_told_and_stops_no_other(tmp_path: Path) -> None:
    (tmp_path / "bad.toml").write_bytes(b'title = "\xff"\n')
    path = chapter(tmp_path, "# One\n\n```problem file=bad.toml\n```\n\n" + JUG)
    result = made(path, tmp_path / "out.md")
    assert (1, True, True) == (
        result.exit_code,
        "Not worked: bad" in result.stderr,
        "Problem 1.2 Jug 1" in (tmp_path / "out.md").read_text(),
    )


def test_files_that_are_missing_are_told_together_and_passed_over_and_numbers_stay(tmp_path: Path) -> None:
    gone = '```problem file="gone.toml"\n```\n\n```problem label=torn file="torn.toml"\n```\n\n'
    path = chapter(tmp_path, f"# One\n\n{gone}See [](#gone).\n\n{JUG}", "")
    text = path.read_text("utf-8").replace('["chapter.md"]', '["lost.md", "chapter.md"]')
    path.write_text(text, "utf-8")
    assert '"lost.md"' in text
    result = made(path, tmp_path / "out.md")
    said = (
        "Left out: the chapter lost.md",
        "Not worked: gone",
        "Not worked: torn",
        "chapter.md, line 3",
        '"gone.toml"',
    )
    assert (1, []) == (result.exit_code, [each for each in said if each not in result.stderr])
    page = (tmp_path / "out.md").read_text("utf-8")
    for words in ("This chapter is missing: lost.md could not be read.", "Problem 2.1 gone", "Problem 2.3 Jug 1"):
        assert words in page


def test_a_book_without_any_chapter_is_refused(tmp_path: Path) -> None:
    (tmp_path / "book.toml").write_text('title = "x"\nchapters = ["gone.md", "lost.md"]\n', "utf-8")
    refused(tmp_path / "book.toml", tmp_path, "book.toml", '"gone.md", but there is no such file')


@pytest.mark.parametrize("name", ("out.txt", "out.json", "out"))
def test_a_book_has_three_formats(name: str, tmp_path: Path) -> None:
    result = made(chapter(tmp_path, "# One\n\n" + JUG), tmp_path / name)
    assert (2, False) == (result.exit_code, (tmp_path / name).exists())


def test_a_book_is_not_written_over_its_own_chapter(tmp_path: Path) -> None:
    path = chapter(tmp_path, "# One\n\n" + JUG)
    result = made(path, tmp_path / "chapter.md")
    assert (2, True) == (result.exit_code, "a file of the book itself" in result.stderr)
    assert (tmp_path / "chapter.md").read_text("utf-8").startswith("# One")


def test_a_folder_that_is_not_there_is_refused(tmp_path: Path) -> None:
    result = made(chapter(tmp_path, "# One\n\n" + JUG), tmp_path / "gone" / "out.html")
    assert (2, True) == (result.exit_code, "a place that cannot be written" in result.stderr)


def test_a_full_disk_leaves_the_old_book_as_it_was(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    path = chapter(tmp_path, "# One\n\n" + JUG)
    made(path, tmp_path / "out.md")
    before = {each.name: each.read_bytes() for each in (tmp_path / "out.md", *(tmp_path / "book-figures").iterdir())}
    chapter(tmp_path, "# One\n\n" + fenced(problem(3), "label=jug"))

    def full(target: Path, content: bytes) -> None:
        if target.suffix == ".svg":
            raise Fault(str(target), found="a place that cannot be written (No space left on device)")
        put_whole(target, content)

    monkeypatch.setattr(book_output, "put_whole", full)
    result = made(path, tmp_path / "out.md")
    assert (2, True) == (result.exit_code, "No space left on device" in result.stderr)
    assert before == {
        each.name: each.read_bytes() for each in (tmp_path / "out.md", *(tmp_path / "book-figures").iterdir())
    }
    assert [] == [each.name for each in tmp_path.iterdir() if each.name.startswith(".")]


def test_a_place_that_is_no_folder_is_refused(tmp_path: Path) -> None:
    result = made(chapter(tmp_path, "# One\n\n" + JUG), Path("/dev/full/out.md"))
    assert 2 == result.exit_code


def test_a_cache_that_cannot_be_made_is_said_and_the_book_is_made(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "file").write_text("")
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "file"))
    result = made(chapter(tmp_path, "# One\n\n" + JUG), tmp_path / "out.md")
    assert (0, True, True) == (
        result.exit_code,
        "nothing is kept for the next build" in result.stderr,
        (tmp_path / "out.md").exists(),
    )


def test_a_chosen_cache_that_cannot_be_made_is_a_fault(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("")
    result = made(chapter(tmp_path, "# One\n\n" + JUG), tmp_path / "out.md", "--cache", str(tmp_path / "file" / "kept"))
    assert (2, False) == (result.exit_code, (tmp_path / "out.md").exists())


# --- the cache


def kept(folder: Path) -> list[Path]:
    return sorted(folder.glob("*.worked"))


def spoilt_everywhere(path: Path) -> list[bytes]:
    whole = path.read_bytes()
    return [b"", whole[:10], whole[:60], whole[:-1], whole + b"x", whole.replace(b"Jug", b"Mug"), b"\x80" * 200]


class _Evil:
    def __reduce__(self) -> tuple[object, tuple[str, ...]]:
        return os.mkdir, ("broken-into",)


@pytest.mark.parametrize("way", range(7))
def test_a_kept_problem_that_is_not_whole_is_worked_again(way: int, tmp_path: Path) -> None:
    path, folder = book(tmp_path, [problem(1), problem(2)]), tmp_path / "kept"
    made(path, tmp_path / "first.md", "--cache", str(folder))
    for each in kept(folder):
        each.write_bytes(spoilt_everywhere(each)[way])
    result = made(path, tmp_path / "second.md", "--cache", str(folder))
    assert (0, True) == (result.exit_code, "2 worked, 0 kept" in result.stderr)
    assert (tmp_path / "first.md").read_bytes() == (tmp_path / "second.md").read_bytes()


def test_a_cache_of_another_version_is_not_used(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    path = book(tmp_path, [problem(1)])
    made(path, tmp_path / "out.md")
    monkeypatch.setattr(book_tasks, "program", lambda: "another")
    assert "1 worked, 0 kept" in made(path, tmp_path / "out.md").stderr


@pytest.mark.parametrize(
    "body",
    (
        pickle.dumps(_Evil()),
        b'{"is": "Popen", "args": ["mkdir", "broken-into"]}',
        b'{"is": "Worked", "facts": {"is": "Facts", "title": "Jug"}}',
        b'{"is": "Text", "text": "no worked problem"}',
        b'{"title": "Jug"}',
        b"[" * 100_000,
        b'{"is": "Worked", "facts": {"is": "Decimal", "of": "jug"}}',
    ),
    ids=("pickle", "a program", "a part is missing", "a passage", "no record", "brackets", "no number"),
)
def test_a_kept_file_runs_nothing_and_is_no_problem(
    body: bytes, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Even with its digest right, as somebody who knows the program could make it."""
    monkeypatch.chdir(tmp_path)
    cache, key = Cache(str(tmp_path)), "0" * 32
    (tmp_path / f"{key}.worked").write_bytes(cache_module._MARK + sha256(key.encode() + body).digest() + body)
    assert (None, False) == (cache.read(key), (tmp_path / "broken-into").exists())


@pytest.mark.parametrize("sample", sorted((ROOT / "samples").glob("[0-9]*.toml"))[::6], ids=lambda path: path.stem)
def test_the_passages_of_a_sample_come_back_from_the_cache_as_they_were(sample: Path, tmp_path: Path) -> None:
    passages = work(sample).page.passages
    found = Worked(Facts("Jug", (), (Topic("Muscles", "biceps"),)), passages, "walk", (Text("\ud800 \N{MINUS SIGN}"),))
    Cache(str(tmp_path)).keep("0" * 32, found)
    assert found == Cache(str(tmp_path)).read("0" * 32)


def test_a_kept_problem_comes_back_as_it_was(tmp_path: Path) -> None:
    worked = Worked(Facts("Jug", (("biceps", "3 N"),), ()), "sheet", "walk", "answers", (("a.svg", "<svg/>"),))
    Cache(str(tmp_path)).keep("0" * 32, worked)
    assert worked == Cache(str(tmp_path)).read("0" * 32)


def test_a_kept_problem_under_another_key_is_not_taken(tmp_path: Path) -> None:
    Cache(str(tmp_path)).keep("0" * 32, Worked(Facts("Jug", (), ())))
    (tmp_path / f"{'0' * 32}.worked").rename(tmp_path / f"{'1' * 32}.worked")
    assert Cache(str(tmp_path)).read("1" * 32) is None


def test_only_what_the_cache_made_itself_is_forgotten(tmp_path: Path) -> None:
    cache = Cache(str(tmp_path))
    cache.keep("0" * 32, Worked(Facts("Jug", (), ())))
    cache.keep("1" * 32, Worked(Facts("Jug", (), ())))
    (tmp_path / f".{'0' * 32}.work.half").write_text("")
    (tmp_path / ".profile").write_text("mine")
    (tmp_path / "thesis.worked").write_text("mine")
    cache.only({"1" * 32})
    assert [".profile", f"{'1' * 32}.worked", "thesis.worked"] == sorted(each.name for each in tmp_path.iterdir())


@pytest.mark.parametrize(
    "text",
    (
        "",
        "[]",
        "{",
        '{"version": 2}',
        '{"version": 1}',
        '{"version": 1, "problems": {"a": [1]}}',
        '{"version": 1, "problems": {"a": ["1", "A", "x", 3]}}',
        "[" * 5000,
    ),
)
def test_a_record_that_cannot_be_read_is_no_record(text: str, tmp_path: Path) -> None:
    (tmp_path / "last-build-student-all-html.json").write_text(text)
    assert last_build(str(tmp_path), "student-all-html") is None


def test_a_book_may_name_its_chapters_from_its_own_folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (tmp_path / "deep").mkdir()
    (tmp_path / "one.md").write_text("# One\n\n" + JUG)
    (tmp_path / "deep" / "book.toml").write_text(BOOK.format(chapters='"../one.md"', more=""))
    monkeypatch.chdir(tmp_path)
    assert 0 == made(Path("deep/book.toml"), Path("out.html")).exit_code
