"""The door to files that files name: what it opens, what it refuses, and that it tells nothing of what it finds
behind.
"""

from __future__ import annotations

import os
import threading
import tomllib
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from books import book, chapter
from click.testing import CliRunner, Result

from explain import Fault, read, work, work_series
from explain.cli.main import main
from explain.input import COURSE, TABLE, Door, given
from explain.problem.reader import door_of

SECRET = "MARKER7391"
JUG = """title = "A jug"
{top}
[pivot]
name = "elbow"
[[segment]]
name = "forearm and hand"
length = "35 cm"
mass = {mass}
com = "15 cm"
[[load]]
name = "jug"
mass = "3.0 kg"
at = "33 cm"
[[muscle]]
name = "biceps"
at = "4.0 cm"
direction = "up"
{end}
"""
PERSON = '[person]\nmass = "70 kg"\ntable = "{name}"\n'
OWN = "segment,mass_percent,com_percent,source\nforearm and hand,2.1,66,our scales\n"
SERIES = 'title = "S"\nbase = "{name}"\n[[step]]\ntitle = "More"\nset = {{ "jug.mass" = "4.0 kg" }}\n'
SWEEP = (
    'title = "S"\nbase = "jug.toml"\n[[step]]\ntitle = "Turn"\n'
    'set = {{ "biceps.turns" = "counter-clockwise" }}\n[step.sweep]\nof = "forearm and hand.direction"\ndirection = '
    '"? above right"\nto = "60 deg"\n'
    '[step.sweep.arms]\nbiceps = "{name}"\n'
)
VARY = '[vary]\n"jug.mass" = { from = "2.0 kg", to = "4.0 kg", step = "0.1 kg" }\n'
ARMS = "angle (deg),arm (cm)\n0,4.0\n90,2.0\n"
TEXT = {".toml": f'{SECRET} = "{SECRET}"\n', ".csv": f"{SECRET},{SECRET}\n{SECRET},1\n"}


def jug(top: str = "", end: str = "", mass: str = '"1.6 kg"') -> str:
    return JUG.format(top=top, end=end, mass=mass)


def by_course(folder: Path, name: str) -> tuple[str, ...]:
    (folder / "p.toml").write_text(jug(f'course = "{name}"'), "utf-8")
    return "work", "p.toml"


def by_from(folder: Path, name: str) -> tuple[str, ...]:
    (folder / "p.toml").write_text(jug(end=f'[course]\nfrom = "{name}"\n'), "utf-8")
    return "draw", "p.toml"


def by_table(folder: Path, name: str) -> tuple[str, ...]:
    (folder / "p.toml").write_text(jug(end=PERSON.format(name=name), mass='"table"'), "utf-8")
    return "work", "p.toml"


def by_base(folder: Path, name: str) -> tuple[str, ...]:
    (folder / "s.toml").write_text(SERIES.format(name=name), "utf-8")
    return "series", "s.toml"


def by_arms(folder: Path, name: str) -> tuple[str, ...]:
    (folder / "jug.toml").write_text(jug(), "utf-8")
    (folder / "s.toml").write_text(SWEEP.format(name=name), "utf-8")
    return "series", "s.toml"


def by_chapter(folder: Path, name: str) -> tuple[str, ...]:
    (folder / "book.toml").write_text(f'title = "B"\nchapters = ["{name}"]\n', "utf-8")
    return "manual", "book.toml", "--no-cache"


def by_book_course(folder: Path, name: str) -> tuple[str, ...]:
    book(folder, [jug()], more=f'course = "{name}"')
    return "manual", "book.toml", "--no-cache"


def by_block(folder: Path, name: str) -> tuple[str, ...]:
    chapter(folder, f'# One\n\n```problem file="{name}" label=a\n```\n')
    return "manual", "book.toml", "--no-cache", "--jobs", "1"


def by_key(folder: Path, name: str) -> tuple[str, ...]:
    (folder / "p.toml").write_text(jug(), "utf-8")
    (folder / "answers.csv").write_text("student,biceps\nAda,301 N\n", "utf-8")
    (folder / "key.csv").write_text(f'student,file\nAda,"{name}"\n', "utf-8")
    return "tally", "p.toml", "answers.csv", "--variants", "key.csv", "--jobs", "1"


def by_vary(folder: Path, name: str) -> tuple[str, ...]:
    (folder / "p.toml").write_text(jug(f'course = "{name}"', VARY), "utf-8")
    return "vary", "p.toml", "-o", "out", "--count", "1", "--jobs", "1"


def by_mark(folder: Path, name: str) -> tuple[str, ...]:
    (folder / "w.txt").write_text("F = 301 N\n", "utf-8")
    return "mark", *by_course(folder, name)[1:], "w.txt"


WAYS: dict[Callable[[Path, str], tuple[str, ...]], tuple[str, str]] = {
    by_course: (".toml", 'word = "torque"\n'),
    by_from: (".toml", 'word = "torque"\n'),
    by_table: (".csv", OWN),
    by_base: (".toml", jug()),
    by_arms: (".csv", ARMS),
    by_chapter: (".md", "# One\n\nWords.\n"),
    by_book_course: (".toml", 'word = "torque"\n'),
    by_block: (".toml", jug()),
    by_key: (".toml", jug()),
    by_vary: (".toml", 'word = "torque"\n'),
    by_mark: (".toml", 'word = "torque"\n'),
}
every_way = pytest.mark.parametrize("way", WAYS, ids=lambda way: way.__name__)


def run(folder: Path, words: tuple[str, ...], monkeypatch: pytest.MonkeyPatch) -> Result:
    monkeypatch.chdir(folder)
    return CliRunner().invoke(main, list(words))


def refused(result: Result, said: str = "") -> None:
    """What a file names is not read; a book tells it and passes the problem over."""
    code = 1 if "Not worked: " in result.stderr else 2
    assert (code, True, False) == (result.exit_code, said in result.stderr, SECRET in result.output), result.output
    assert "fault of the program" not in result.output


# ---------------------------------------------------------------------- what is opened
@every_way
def test_a_file_beside_the_one_that_names_it_is_opened(
    way: Any, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    suffix, good = WAYS[way]
    (tmp_path / f"good{suffix}").write_text(good, "utf-8")
    result = run(tmp_path, way(tmp_path, f"good{suffix}"), monkeypatch)
    assert result.exit_code in (0, 1), result.output


@every_way
def test_a_file_inside_the_root_is_opened(way: Any, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    suffix, good = WAYS[way]
    (tmp_path / "real").mkdir()
    (tmp_path / "real" / f"good{suffix}").write_text(good, "utf-8")
    (tmp_path / "linked").symlink_to("real")
    result = run(tmp_path, (*way(tmp_path, f"linked/good{suffix}"), "--root", "."), monkeypatch)
    assert result.exit_code in (0, 1), result.output


def test_a_course_in_the_folder_above_is_opened_where_no_root_forbids_it(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "course.toml").write_text('word = "torque"\n', "utf-8")
    (tmp_path / "in").mkdir()
    assert 0 == run(tmp_path / "in", by_course(tmp_path / "in", "../course.toml"), monkeypatch).exit_code


# ---------------------------------------------------------------------- what is not
def a_pipe(path: Path) -> None:
    os.mkfifo(path)


def a_folder(path: Path) -> None:
    path.mkdir()


def a_device(path: Path) -> None:
    path.symlink_to("/dev/zero")


def nothing(path: Path) -> None:
    pass


def a_link_to_itself(path: Path) -> None:
    path.symlink_to(path.name)


def a_huge_file(path: Path) -> None:
    path.write_bytes(SECRET.encode() * 10)
    os.truncate(path, 11_000_000)


@every_way
@pytest.mark.parametrize(
    "there", (a_pipe, a_folder, a_device, nothing, a_link_to_itself, a_huge_file), ids=lambda each: each.__name__
)
def test_what_is_no_regular_file_or_too_large_is_refused_at_once(
    way: Any, there: Callable[[Path], None], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    there(tmp_path / f"bad{WAYS[way][0]}")
    result: list[Result] = []
    asked = threading.Thread(
        target=lambda: result.append(run(tmp_path, way(tmp_path, f"bad{WAYS[way][0]}"), monkeypatch)), daemon=True
    )
    asked.start()
    asked.join(60)
    assert result, "it waits for ever"
    refused(result[0])


@every_way
@pytest.mark.parametrize(
    "name", ("{folder}/secret{suffix}", "/proc/self/environ", "/dev/zero", "C:/secret{suffix}", "//host/secret{suffix}")
)
def test_a_path_that_does_not_begin_where_the_file_is_is_refused(
    way: Any, name: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    suffix, good = WAYS[way]
    (tmp_path / f"secret{suffix}").write_text(good, "utf-8")
    refused(
        run(tmp_path, way(tmp_path, name.format(folder=tmp_path, suffix=suffix)), monkeypatch),
        "not a path from where this file is" if way is not by_table or "{suffix}" in name else "not known",
    )


@every_way
def test_a_file_with_the_suffix_of_another_kind_is_refused(
    way: Any, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "secret.cfg").write_text(SECRET, "utf-8")
    result = run(tmp_path, way(tmp_path, "secret.cfg"), monkeypatch)
    if way is by_table:
        refused(result, "not known")
    else:
        refused(result, "does not end in")


@every_way
def test_a_name_that_is_too_long_is_refused(way: Any, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    for length in (300, 5_000):
        refused(run(tmp_path, way(tmp_path, "x" * length + WAYS[way][0]), monkeypatch), "the name is too long")


@every_way
def test_a_name_of_a_control_character_is_refused(way: Any, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    name = "a\\u0000b" + WAYS[way][0] if way not in (by_block, by_key) else "a\x01b" + WAYS[way][0]
    refused(run(tmp_path, way(tmp_path, name), monkeypatch))


# ---------------------------------------------------------------------- the root
@every_way
@pytest.mark.parametrize("kind", ("a name that leads up", "a link to a file", "a link to a folder"))
def test_no_name_leads_out_of_the_root(way: Any, kind: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    suffix, good = WAYS[way]
    inside, outside = tmp_path / "in", tmp_path / "out"
    inside.mkdir()
    outside.mkdir()
    (outside / f"other{suffix}").write_text(good, "utf-8")
    name = {
        "a name that leads up": f"../out/other{suffix}",
        "a link to a file": f"link{suffix}",
        "a link to a folder": f"link/other{suffix}",
    }[kind]
    if kind == "a link to a file":
        (inside / f"link{suffix}").symlink_to(outside / f"other{suffix}")
    if kind == "a link to a folder":
        (inside / "link").symlink_to(outside)
    refused(run(inside, (*way(inside, name), "--root", "."), monkeypatch))


def test_a_folder_whose_name_begins_as_the_root_s_is_outside_it(tmp_path: Path) -> None:
    (tmp_path / "in").mkdir()
    (tmp_path / "inner").mkdir()
    (tmp_path / "inner" / "c.toml").write_text('word = "torque"', "utf-8")
    with pytest.raises(Fault):
        Door(str(tmp_path / "in" / "p.toml"), str(tmp_path / "in")).read("../inner/c.toml", COURSE)


def test_what_is_there_and_what_is_not_are_told_alike_outside_the_root(tmp_path: Path) -> None:
    (tmp_path / "in").mkdir()
    (tmp_path / "there.toml").write_text("", "utf-8")
    door, said = Door(str(tmp_path / "in" / "p.toml"), str(tmp_path / "in")), []
    for name in ("../there.toml", "../gone.toml"):
        with pytest.raises(Fault) as caught:
            door.read(name, COURSE)
        said.append(caught.value.found.partition(",")[2])
    assert said[0] == said[1]


def test_a_link_that_is_changed_after_it_was_resolved_is_not_followed(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The change is made in the very moment: as soon as links are resolved, a folder of the path becomes a link out
    of the root.
    """
    (tmp_path / "in" / "deep").mkdir(parents=True)
    (tmp_path / "out").mkdir()
    (tmp_path / "in" / "deep" / "c.toml").write_text('word = "moment"', "utf-8")
    (tmp_path / "out" / "c.toml").write_text(SECRET, "utf-8")
    resolve = os.path.realpath

    def resolved(path: Any) -> str:
        found = resolve(path)
        if (tmp_path / "in" / "deep").is_dir() and not (tmp_path / "in" / "deep").is_symlink():
            (tmp_path / "in" / "deep").rename(tmp_path / "in" / "gone")
            (tmp_path / "in" / "deep").symlink_to(tmp_path / "out")
        return found

    monkeypatch.setattr("explain.input.os.path.realpath", resolved)
    with pytest.raises(Fault):
        Door(str(tmp_path / "in" / "p.toml"), str(tmp_path / "in")).read("deep/c.toml", COURSE)


@pytest.mark.parametrize("root", ("gone", "p.toml", "x" * 300))
def test_a_root_that_is_no_folder_is_refused(root: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (tmp_path / "p.toml").write_text(jug(), "utf-8")
    refused(run(tmp_path, ("work", "p.toml", "--root", root), monkeypatch), "no such folder")


# ---------------------------------------------------------------------- what is told
@pytest.mark.parametrize(
    "way",
    [each for each in WAYS if each is not by_chapter],  # every Markdown file is a chapter, and a book prints it
    ids=lambda way: way.__name__,
)
@pytest.mark.parametrize(
    "text",
    (
        f'{SECRET} = "{SECRET}"\n',
        f"{SECRET}\n",
        f'password = "{SECRET}"\n',
        f"[{SECRET}]\n[{SECRET}]\n",
        f'title = "{SECRET}\n',
        f"{SECRET},{SECRET}\n{SECRET},1\n",
        f"segment,mass_percent,{SECRET},com\n",
        f"angle ({SECRET}),arm (cm)\n1,2\n",
        f"angle (deg),arm (cm)\n{SECRET},2\n1,{SECRET}\n",
        f'"unclosed {SECRET}',
        f"\x00\xff{SECRET}",
        f'word = "torque"\n{SECRET} = 1\n',
        f'title = "x"\n[[segment]]\nname = "a"\n{SECRET} = 1\n',
    ),
)
def test_nothing_of_a_file_that_is_not_what_was_expected_is_told(
    way: Any, text: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / f"secret{WAYS[way][0]}").write_text(text, "latin-1")
    refused(run(tmp_path, way(tmp_path, f"secret{WAYS[way][0]}"), monkeypatch))


def test_the_environment_behind_a_link_is_not_told(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("AN_OWN_VALUE", SECRET)
    (tmp_path / "c.toml").symlink_to("/proc/self/environ")
    refused(run(tmp_path, by_course(tmp_path, "c.toml"), monkeypatch))


def test_the_line_of_a_strange_key_is_told_without_the_key(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (tmp_path / "c.toml").write_text(f'word = "torque"\n\n{SECRET} = 1\n', "utf-8")
    refused(
        run(tmp_path, by_course(tmp_path, "c.toml"), monkeypatch),
        "c.toml, line 3: found a key that no file of this kind has",
    )


def test_a_misspelt_key_of_a_course_is_told(tmp_path: Path) -> None:
    (tmp_path / "c.toml").write_text('possitive = "clockwise"\n', "utf-8")
    (tmp_path / "p.toml").write_text(jug('course = "c.toml"'), "utf-8")
    with pytest.raises(Fault, match="positive in place of possitive"):
        read(tmp_path / "p.toml")


def test_a_wrong_word_in_what_is_a_course_is_told(tmp_path: Path) -> None:
    (tmp_path / "c.toml").write_text('word = "twist"\n', "utf-8")
    (tmp_path / "p.toml").write_text(jug('course = "c.toml"'), "utf-8")
    with pytest.raises(Fault, match='"twist"'):
        read(tmp_path / "p.toml")


# ---------------------------------------------------------------------- the library
AS: dict[str, Callable[[str], Any]] = {"a text": str, "a mapping": tomllib.loads}


@pytest.mark.parametrize("given_as", AS.values(), ids=AS)
@pytest.mark.parametrize(
    "text",
    (
        jug('course = "c.toml"'),
        jug(end='[course]\nfrom = "c.toml"\n'),
        jug(end=PERSON.format(name="t.csv"), mass='"table"'),
    ),
)
def test_a_text_or_a_mapping_opens_no_file(
    given_as: Callable[[str], Any], text: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "c.toml").write_text('word = "torque"\n', "utf-8")
    (tmp_path / "t.csv").write_text(OWN, "utf-8")
    monkeypatch.chdir(tmp_path)
    with pytest.raises(Fault, match="no folder \\(root\\)") as caught:
        work(given_as(text))
    assert 2 == caught.value.exit_code


@pytest.mark.parametrize("given_as", AS.values(), ids=AS)
def test_names_in_a_text_or_a_mapping_begin_at_the_root(given_as: Callable[[str], Any], tmp_path: Path) -> None:
    (tmp_path / "c.toml").write_text('word = "torque"\n', "utf-8")
    (tmp_path / "t.csv").write_text(OWN, "utf-8")
    found = work(given_as(jug('course = "c.toml"', PERSON.format(name="t.csv"), '"table"')), root=tmp_path)
    assert "torque" == found.problem.course.word


@pytest.mark.parametrize("name", ("../c.toml", "/etc/c.toml", "link.toml"))
def test_a_text_with_a_root_stays_in_it(name: str, tmp_path: Path) -> None:
    (tmp_path / "in").mkdir()
    (tmp_path / "c.toml").write_text('word = "torque"\n', "utf-8")
    (tmp_path / "in" / "link.toml").symlink_to("../c.toml")
    with pytest.raises(Fault):
        read(jug(f'course = "{name}"'), root=tmp_path / "in")


def test_a_series_of_the_library_stays_in_its_root(tmp_path: Path) -> None:
    (tmp_path / "in").mkdir()
    (tmp_path / "jug.toml").write_text(jug(), "utf-8")
    (tmp_path / "in" / "s.toml").write_text(SERIES.format(name="../jug.toml"), "utf-8")
    assert 2 == len(work_series(tmp_path / "in" / "s.toml", root=tmp_path).steps)
    with pytest.raises(Fault):
        work_series(tmp_path / "in" / "s.toml", root=tmp_path / "in")


def test_a_course_given_beside_a_text_is_no_file() -> None:
    assert "torque" == work(jug(), course={"word": "torque"}).problem.course.word


def test_a_problem_whose_table_was_read_is_worked_where_the_file_is_gone(tmp_path: Path) -> None:
    (tmp_path / "t.csv").write_text(OWN, "utf-8")
    (tmp_path / "p.toml").write_text(jug(end=PERSON.format(name="t.csv"), mass='"table"'), "utf-8")
    problem = read(tmp_path / "p.toml")
    (tmp_path / "t.csv").unlink()
    assert work(problem).answers["biceps"].value > 0


# ---------------------------------------------------------------------- what a person chooses
@pytest.mark.parametrize(
    "words",
    (
        ("work", "{bad}"),
        ("draw", "{bad}"),
        ("series", "{bad}"),
        ("series", "--suggest", "{bad}"),
        ("manual", "{bad}", "--no-cache"),
        ("work", "p.toml", "--course", "{bad}"),
        ("mark", "{bad}", "w.txt"),
        ("mark", "p.toml", "{bad}"),
        ("tally", "p.toml", "{bad}"),
        ("tally", "p.toml", "a.csv", "--variants", "{bad}"),
        ("vary", "p.toml", "-o", "out", "--names", "{bad}"),
        ("vary", "{bad}", "-o", "out", "--count", "1"),
    ),
)
@pytest.mark.parametrize(
    "there", (a_pipe, nothing, a_device, "x" * 300), ids=lambda each: getattr(each, "__name__", "too long")
)
def test_a_chosen_file_is_regular_or_refused(
    words: tuple[str, ...], there: Any, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "p.toml").write_text(jug(), "utf-8")
    (tmp_path / "w.txt").write_text("F = 301 N\n", "utf-8")
    (tmp_path / "a.csv").write_text("student,biceps\nAda,301 N\n", "utf-8")
    bad = there if isinstance(there, str) else "bad"
    if callable(there):
        there(tmp_path / f"{bad}.csv")
    refused(run(tmp_path, tuple(each.format(bad=f"{bad}.csv") for each in words), monkeypatch))


def test_a_pipe_that_a_shell_hands_over_is_read() -> None:
    out, into = os.pipe()
    os.write(into, b"F = 301 N\n")
    os.close(into)
    try:
        assert b"F = 301 N\n" == given(f"/dev/fd/{out}", 100)
    finally:
        os.close(out)


def test_no_more_is_read_than_asked_for_and_one_byte(tmp_path: Path) -> None:
    (tmp_path / "t.csv").write_bytes(b"x" * 100)
    assert 11 == len(given(tmp_path / "t.csv", 10))


def test_a_file_as_large_as_may_be_is_read(tmp_path: Path) -> None:
    (tmp_path / "t.csv").write_bytes(b"x" * TABLE.most)
    assert TABLE.most == len(door_of(tmp_path / "p.toml", None).read("t.csv", TABLE))


def test_no_descriptor_is_left_open(tmp_path: Path) -> None:
    (tmp_path / "a" / "b").mkdir(parents=True)
    (tmp_path / "a" / "b" / "t.csv").write_text(OWN, "utf-8")
    os.mkfifo(tmp_path / "a" / "f.csv")
    before = len(os.listdir("/proc/self/fd"))
    door = door_of(tmp_path / "p.toml", tmp_path)
    for name in ("a/b/t.csv", "a/f.csv", "a/gone.csv", "a/b", "a/b/gone/t.csv"):
        try:
            door.read(name, TABLE)
        except Fault:
            continue
    assert before == len(os.listdir("/proc/self/fd"))
