"""What each command says, writes and ends with, word for word: on good files, bad ones, on what cannot be together."""

from __future__ import annotations

import os
from pathlib import Path

import pytest
from bad_inputs import GOOD
from click.testing import CliRunner
from what_is_said import parts

from explain.cli.main import ELSEWHERE, main
from explain.cli.watch import saves, stamp
from explain.problem.new_files import new_files

HERE = Path(__file__).parent
DOUBT = GOOD.replace('direction = "up"', 'direction = "down"')  # a muscle would have to push: a check fails
TIRED = GOOD.replace("A milk jug", "A heavy jug").replace("3.0 kg", "300 kg")
VARIED = GOOD + '[vary]\n"jug.mass" = ["2.0 kg", "3.0 kg", "4.0 kg"]\n'
FILES = {
    "jug.toml": GOOD,
    "tin.toml": GOOD.replace("jug", "tin"),
    "doubt.toml": DOUBT,
    "bad.toml": GOOD.replace("3.0 kg", "3.0"),
    "a/jug.toml": GOOD,
    "course.toml": 'word = "torque"\n',
    "badcourse.toml": 'word = "twist"\n',
    "accepted.toml": GOOD + '[[accept]]\nline = "F = 3"\n',
    "right.txt": "F*4.0 = 29.43*33 + 15.696*15\nF = 302 N\n",
    "wrong.txt": "F*4.0 = 29.43*33\nF = 243 N\n",
    "other/right.txt": "F = 302 N\n",
    "class.csv": "name,email\nAda,a@x\nBo,b@x\nAda,c@x\n",
    "marks.csv": "page,seconds\n1,0\n",
    "folder/x": "",
    "varied.toml": VARIED,
    **new_files("series", "week"),
}
COMMANDS: tuple[str, ...] = (
    "work jug.toml -o page.gif",
    "work jug.toml -o page.md --as html",
    "work jug.toml tin.toml -o pages",
    "work jug.toml tin.toml -o pages --as html",
    "work jug.toml bad.toml doubt.toml -o pages --as json",
    "work jug.toml bad.toml -o both.md",
    "work bad.toml",
    "work jug.toml a/jug.toml -o pages",
    "work jug.toml -o jug.toml --as text",
    "work jug.toml --watch",
    "work jug.toml --course badcourse.toml",
    "work jug.toml --root nowhere",
    "work none.toml",
    "draw jug.toml -o jug.svg",
    "draw jug.toml -o jug.png",
    "draw jug.toml -o jug.toml",
    "draw bad.toml",
    "new jug",
    "new pail --like knee",
    "new term --book --like lever",
    "new week --series",
    "new klass --course",
    "new klass --course --like elbow",
    "new pail.txt",
    "new nowhere/pail",
    "new folder/",
    "new .pail",
    "new two-words_1.toml",
    "mark jug.toml right.txt --because so",
    "mark jug.toml right.txt -o right.txt",
    "mark jug.toml right.txt -o jug.toml",
    "mark jug.toml right.txt wrong.txt -o reports",
    "mark jug.toml right.txt other/right.txt -o reports --as json",
    "mark jug.toml right.txt none.txt -o report.json --for tutor",
    "mark jug.toml right.txt wrong.txt --accept 1",
    "mark accepted.toml right.txt -o report.txt",
    "mark accepted.toml right.txt wrong.txt -o report.txt --hints 0",
    "mark jug.toml right.txt --accept 1",
    "export jug.toml -o package.pdf",
    "export -o package.zip",
    "export jug.toml --tolerance nan -o package.zip",
    "export jug.toml bad.toml tin.toml -o package.zip",
    "export jug.toml a/jug.toml -o package.zip",
    "tally jug.toml folder -o jug.toml",
    "tally jug.toml folder -o report.md --csv report.md",
    "tally jug.toml folder -o folder",
    "tally jug.toml folder --csv rows.txt",
    "tally jug.toml folder --gradebook marks.txt",
    "tally jug.toml folder --chart chart.png",
    "vary jug.toml -o out",
    "vary jug.toml -o out --count 2 --column name",
    "vary jug.toml -o out --count 2 --id email",
    "vary jug.toml -o out --names class.csv --count 4",
    "vary jug.toml a/jug.toml -o out --count 2",
    "lesson jug.toml -o lesson.md",
    "lesson jug.toml -o jug.toml",
    "sheet jug.toml -o jug.toml",
    "work doubt.toml -o page.txt",
    "work jug.toml",
    "work jug.toml tin.toml --as json -o both.jsonl",
    "work jug.toml tin.toml -o both.html",
    "work jug.toml tin.toml -o both.txt --course course.toml",
    "work jug.toml -o folder",
    "lesson jug.toml -o talk.html --script talk.md --captions talk.vtt --rate 100",
    "lesson doubt.toml --captions talk.vtt",
    "lesson jug.toml --marks marks.csv",
    "lesson jug.toml --rate 100",
    "lesson jug.toml --captions talk.vtt --marks marks.csv --rate 100",
    "lesson jug.toml --captions talk.vtt --script talk.vtt",
    "sheet jug.toml tin.toml -o sheets",
    "sheet jug.toml tin.toml -o both.html --blank last:2",
    "sheet jug.toml --blank last:2 --find-the-slip any",
    "sheet jug.toml -o sheet.json",
    "export jug.toml -o package.zip --choices 3",
    "tally jug.toml other -o report.json --csv rows.csv --gradebook marks-of.csv --chart chart.svg",
    "tally jug.toml folder",
    "tally jug.toml class.csv",
    "series jug.toml",
    "series week.toml",
    "series week.toml -o week.html --csv week.csv",
    "series week.toml --csv week.csv -o week.csv",
    "vary varied.toml -o out --count 2 --jobs 1",
    "vary varied.toml bad.toml -o out --count 1 --jobs 1",
    "new pail\\",
    "desk nowhere",
    "schema course",
    "schema book",
)


def said(command: str, folder: Path) -> str:
    """The exit code, both streams and the new files of a command; of a long output its ends."""
    for name, text in FILES.items():
        (folder / name).parent.mkdir(exist_ok=True)
        (folder / name).write_text(text, "utf-8")
    before = {path for path in folder.rglob("*") if path.is_file()}
    result = CliRunner().invoke(main, command.split())
    new = sorted(str(path.relative_to(folder)) for path in folder.rglob("*") if path.is_file() and path not in before)
    changed = sorted(name for name, text in FILES.items() if (folder / name).read_text("utf-8") != text)
    out = result.stdout.splitlines()
    out = out if len(out) <= 12 else [*out[:4], "...", *out[-2:]]
    told = [f"ends with {result.exit_code}"]
    told += [f"new: {' '.join(new)}"] if new else []
    told += [f"changed: {' '.join(changed)}"] if changed else []
    told += [f"in {name} {_begins(folder / name)}" for name in new if Path(name).suffix != ".zip"]
    told += [f"out {line.rstrip()}" for line in out] + [f"err {line.rstrip()}" for line in result.stderr.splitlines()]
    return "\n".join(told).replace(str(folder), "FOLDER")


def _begins(path: Path) -> str:
    """The first words of a file."""
    return " ".join(path.read_text("utf-8-sig")[:300].split())[: 4 if path.suffix == ".svg" else 70].rstrip()


KEPT = parts("commands_said.txt", "$ explain ")


@pytest.mark.parametrize("command", COMMANDS)
def test_a_command_says(command: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    assert KEPT[command] == said(command, tmp_path)


def test_every_command_is_told_in_one_line_in_the_list() -> None:
    listed = CliRunner().invoke(main, ["--help"]).stdout
    names = ["desk", "draw", "export", "lesson", "manual", "mark", "new", "schema", "series", "sheet", "tally", "vary"]
    assert [*names, "work"] == main.list_commands(main.context_class(main))
    assert "Commands:" in listed
    for name in names:
        if name in ELSEWHERE:
            text = " ".join((main.get_command(main.context_class(main), name) or main).help.split())  # type: ignore[union-attr]
            assert text.startswith(ELSEWHERE[name].split(" of a PROBLEM")[0].rstrip(".")[:20])
            assert ELSEWHERE[name].split()[0] in listed


def test_a_save_is_told_once_all_has_come_to_rest(tmp_path: Path) -> None:
    one, two = tmp_path / "one", tmp_path / "two"
    one.write_text("1")
    looks = iter([lambda: None, lambda: one.write_text("22"), lambda: two.write_text("3"), lambda: None, lambda: None])
    found = saves(lambda: (one, two), lambda: next(looks)())
    assert (one,) == next(found)
    with pytest.raises(RuntimeError):
        next(found)
    assert stamp(tmp_path / "none") is None
    assert (os.stat(one).st_mtime_ns, 2, os.stat(one).st_ino) == stamp(one)


def test_what_was_saved_since_an_earlier_look_counts(tmp_path: Path) -> None:
    one = tmp_path / "one"
    one.write_text("1")
    assert (one,) == next(saves(lambda: (one,), lambda: None, {one: None}))
