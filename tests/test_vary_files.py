"""Class lists, folders and orders that are at fault: one clear message, exit code 2, nothing half-written."""

from __future__ import annotations

import os
import resource
import subprocess
from pathlib import Path

import pytest
from varying import BARROW, CREEL, JUG, command, contents, explain, made, problem, rows

from explain.errors import Fault
from explain.vary.class_list import enrolled, namesakes, numbered, read_roll


def _list(tmp_path: Path, content: str | bytes) -> Path:
    path = tmp_path / "class.csv"
    path.write_bytes(content if isinstance(content, bytes) else content.encode())
    return path


# ---------------------------------------------------------------------- class lists
@pytest.mark.parametrize(
    "content",
    (
        "name\nAda Quill\nBirk Tallow\n",
        "Ada Quill\nBirk Tallow",
        "id;Student;room\n1;Ada Quill;5\n2;Birk Tallow;5\n",
        "Surname,First name\nQuill,Ada\nTallow,Birk\n",
        "\ufeffname\r\n\r\n  Ada   Quill \r\nBirk Tallow\r\n",
        "name\tgroup\nAda Quill\tx\nBirk Tallow\ty\n",
        "name\nAda Quill\nBirk Tallow\n".encode("utf-16"),
        'name\n"Ada\nQuill"\nBirk Tallow\n',
    ),
)
def test_a_class_list_is_read_as_people_save_it(tmp_path: Path, content: str | bytes) -> None:
    assert [each.name for each in read_roll(_list(tmp_path, content))] == ["Ada Quill", "Birk Tallow"]


def test_names_of_another_encoding_keep_their_letters(tmp_path: Path) -> None:
    (found,) = read_roll(_list(tmp_path, "name\nZéphyrine Ørsted\n".encode("cp1252")))
    assert (found.name, found.file) == ("Zéphyrine Ørsted", "zephyrine-orsted")


def test_every_name_makes_a_file_name_that_is_safe_and_its_own() -> None:
    names = (
        "Ada",
        "ADA",
        "ada",
        "../../x",
        "/etc/passwd",
        "C:\\temp",
        "con",
        "NUL",
        "李雷",
        "...",
        "=1+1",
        "a" * 100,
        "ada-2",
        "\x00",
        "O'Dell",
    )
    found = [each.file for each in enrolled(names)]
    assert len(set(found)) == len(names)
    assert all(each and set(each) <= set("abcdefghijklmnopqrstuvwxyz0123456789-") and len(each) < 80 for each in found)
    assert found[3:8] == ["x", "etc-passwd", "c-temp", "student-con", "student-nul"]
    assert (found[0], found[14]) == ("ada-1", "odell")
    assert found[1].startswith("ada-2-") and found[12].startswith("ada-2-")


def test_two_of_one_name_are_told_apart_and_no_name_hangs_on_another(tmp_path: Path) -> None:
    found = enrolled(("Ada Quill", "Birk Tallow", "ADA  QUILL", "Zoe Lang", "Zoë Lang"))
    assert [each.name for each in found[:3]] == ["Ada Quill (1)", "Birk Tallow", "ADA  QUILL (2)"]
    assert len({each.own for each in found}) == len({each.file for each in found}) == 5
    assert namesakes(found) == ("Ada Quill (1)", "ADA  QUILL (2)")
    assert {each.name: each.file for each in enrolled(("Zoë Lang", "Zoe Lang"))} == {
        each.name: each.file for each in found[3:]
    }
    done = explain(
        problem(tmp_path), "--names", _list(tmp_path, "name\nAda Quill\nAda Quill\n"), "-o", tmp_path / "out"
    )
    assert done.returncode == 0 and '"Ada Quill (1)", "Ada Quill (2)"' in done.stderr and "--id email" in done.stderr


def test_an_id_tells_students_apart_for_good(tmp_path: Path) -> None:
    text = (
        "name,email\nAda Quill,a@x.example\nAda Quill,c@x.example\nBirk Tallow,b@x.example\nBirk Tallow,B@x.example\n"
    )
    found = read_roll(_list(tmp_path, text), id="Email")
    assert [each.name for each in found] == ["Ada Quill (a@x.example)", "Ada Quill (c@x.example)", "Birk Tallow"]
    assert namesakes(found) == ()
    other = read_roll(_list(tmp_path, "email,name\nc@x.example,Ada Quill\nb@x.example,Birk Tallow-Wren\n"), id="email")
    assert {each.id: each.ticket(7) for each in other} == {each.id: each.ticket(7) for each in found[1:]}


@pytest.mark.parametrize(
    ("content", "said"),
    (
        ("name,email\nAda Quill,\n", 'line 2: found nothing in the column "email" for "Ada Quill"'),
        ("name,email\nAda Quill,a\nBirk Tallow,A\n", 'line 3: found "A" for "Ada Quill" and for "Birk Tallow"'),
        ("name,mail\nAda Quill,a\n", 'no column "email".*\n.*\n.*--id "mail"'),
        ("", "no column"),
    ),
)
def test_an_id_that_is_none_is_refused(tmp_path: Path, content: str, said: str) -> None:
    with pytest.raises(Fault, match=said):
        read_roll(_list(tmp_path, content), id="email")


def test_ten_thousand_names_are_read(tmp_path: Path) -> None:
    found = read_roll(_list(tmp_path, "name\n" + "".join(f"Kim {place % 9000}\n" for place in range(10_000))))
    assert (len(found), len({each.file for each in found})) == (10_000, 10_000)


@pytest.mark.parametrize(
    ("content", "said"),
    (
        ("", "no name"),
        ("name\n\n\n", "no name"),
        ("pupil,room\nAda,5\n", "none of them called name or student"),
        (b"PK\x03\x04\x00\x00", "no text"),
        ("name\n" + "x" * 500 + "\n", "500 characters"),
    ),
)
def test_a_class_list_that_cannot_be_is_refused(tmp_path: Path, content: str | bytes, said: str) -> None:
    with pytest.raises(Fault, match=said):
        read_roll(_list(tmp_path, content))


def test_a_column_that_is_not_there_has_a_nearest(tmp_path: Path) -> None:
    with pytest.raises(Fault, match='no column "pupls".*\n.*\n.*--column "pupils"'):
        read_roll(_list(tmp_path, "pupils,room\nAda,5\n"), "pupls")
    assert [each.name for each in read_roll(_list(tmp_path, "pupils,room\nAda,5\n"), "Pupils")] == ["Ada"]


# ---------------------------------------------------------------------- ranges that nothing satisfies
def test_a_range_that_no_value_satisfies_is_named(tmp_path: Path) -> None:
    file = problem(tmp_path, CREEL.replace('from = "3.6 cm", to = "4.8 cm"', 'from = "9.0 cm", to = "9.9 cm"'))
    done = explain(file, "--count", 3, "-o", tmp_path / "out")
    assert done.returncode == 2
    assert (
        'vary."biceps.at": found biceps.at (9.0 cm to 9.9 cm, 10 values), of which no value can be used' in done.stderr
    )
    assert "moment arm" in done.stderr and f"{file}, line " in done.stderr
    assert not (tmp_path / "out").exists()


def test_a_muscle_that_would_push_is_refused(tmp_path: Path) -> None:
    """The weight of the jug goes to the other side of the elbow."""
    with pytest.raises(Fault, match="the elbow flexors would have to push"):
        made(
            problem(
                tmp_path,
                JUG.split("[vary]")[0] + '[vary]\njug.at = { from = "-34 cm", to = "-30 cm", step = "1 cm" }\n',
            ),
            tmp_path / "out",
            2,
        )


def test_equal_arms_are_left_out_and_refused_where_there_are_no_others(tmp_path: Path) -> None:
    text = BARROW.split("[vary]")[0] + '[vary]\n"sand.at" = ["17 in", "24 in"]\n"barrow.com" = ["24 in", "17 in"]\n'
    made(problem(tmp_path, text), tmp_path / "fine", 2)
    equal = {(row["sand.at"], row["barrow.com"]) for row in rows(tmp_path / "fine")}
    assert not [each for each in equal if each[0] == each[1]]
    with pytest.raises(Fault, match="found sand.at .*of which no value can be used.*the same moment arm"):
        made(problem(tmp_path, BARROW.split("[vary]")[0] + '[vary]\n"sand.at" = ["24 in"]\n'), tmp_path / "out", 2)
    assert not (tmp_path / "out").exists()


def test_a_value_that_the_problem_cannot_have_is_told(tmp_path: Path) -> None:
    with pytest.raises(Fault, match="creel.at .*the problem would have found|creel.at.*the problem would have"):
        made(
            problem(
                tmp_path,
                CREEL.replace(
                    '"creel.at" = { from = "30 cm", to = "36 cm", step = "0.5 cm" }', '"creel.at" = ["30 kg"]'
                ),
            ),
            tmp_path / "out",
            1,
        )


# ---------------------------------------------------------------------- orders
@pytest.mark.parametrize(
    ("words", "said"),
    (
        (("--count", "0"), "0 is not in the range"),
        ((), "neither --count nor --names"),
        (("--names", "none.csv"), "no class list"),
        (("--count", "3", "--column", "name"), "--column without --names"),
        (("--count", "3", "--id", "email"), "--id without --names"),
        (("--count", "2", "--course", "none.toml"), "none.toml"),
        (("--count", "2", "--cluster", "tcp://127.0.0.1:9"), "no cluster there"),
    ),
)
def test_an_order_that_cannot_be_is_refused(tmp_path: Path, words: tuple[str, ...], said: str) -> None:
    done = explain(problem(tmp_path), *words, "-o", tmp_path / "out")
    assert done.returncode == 2 and said in done.stderr, done.stderr


def test_more_variants_than_names_are_refused(tmp_path: Path) -> None:
    done = explain(problem(tmp_path), "--names", _list(tmp_path, "name\nAda\n"), "--count", 3, "-o", tmp_path / "out")
    assert done.returncode == 2 and "1 names, and --count 3" in done.stderr


def test_one_bad_problem_does_not_stop_the_rest(tmp_path: Path) -> None:
    bad = problem(tmp_path, CREEL.replace('"creel.mass"', '"creel.mas"'), "bad.toml")
    done = explain(
        bad,
        tmp_path / "none.toml",
        problem(tmp_path, JUG, "good.toml"),
        "--count",
        2,
        "-o",
        tmp_path / "out",
        "--jobs",
        1,
    )
    assert done.returncode == 2
    assert "creel.mas" in done.stderr and "none.toml" in done.stderr and "2 variants" in done.stderr
    assert 2 == len(rows(tmp_path / "out" / "good")) and not (tmp_path / "out" / "bad").exists()


# ---------------------------------------------------------------------- folders
def test_a_folder_of_another_run_is_kept_unless_it_is_given_up(tmp_path: Path) -> None:
    file, out = problem(tmp_path), tmp_path / "out"
    made(file, out, 3)
    before = contents(out)
    with pytest.raises(Fault, match=r"variants of another run \(seed 7, problem.toml\)"):
        made(file, out, 2, seed=8)
    assert contents(out) == before
    (out / "notes.txt").write_text("mine")
    made(file, out, 2, seed=8, replace=True)
    assert {Path(name).name for name in contents(out)} == {
        "notes.txt",
        "key.csv",
        "key.md",
        "run.jsonl",
        "student-001.md",
        "student-002.md",
        "student-001.toml",
        "student-002.toml",
    }


def test_a_list_that_grows_shrinks_and_is_sorted_keeps_every_students_numbers(tmp_path: Path) -> None:
    """In the same folder, where what is there is kept, and in one of its own, where all is drawn anew."""
    names = ["Ottoline Barrow", "Birk Tallow", "Yusra Hadley", "Corin Vane", "Maeve Locke"]
    file, out = problem(tmp_path), tmp_path / "out"
    assert made(file, out, enrolled(names))[:2] == (5, 0)
    first = {row["student"]: row for row in rows(out)}
    before = contents(out)
    later = sorted({*names, "Jago Pell", "Ada Quill"} - {"Corin Vane"}, reverse=True)
    handed = made(file, out, enrolled(later))
    assert (handed.fresh, handed.kept, handed.gone) == (2, 4, ("Corin Vane",))
    made(file, tmp_path / "anew", enrolled(later))
    for folder in (out, tmp_path / "anew"):
        found = {row["student"]: row for row in rows(folder)}
        assert list(found) == later
        assert {name: found[name] for name in first if name in found} == {
            name: row for name, row in first.items() if name != "Corin Vane"
        }
    now = contents(out)
    assert {name: now[name] for name in before if "/" in name} == {
        name: content for name, content in before.items() if "/" in name
    }
    assert made(file, out, enrolled(names))[:2] == (0, 5)
    assert contents(out)["key.csv"] == before["key.csv"]


def test_a_second_student_of_a_name_leaves_the_first_her_numbers(tmp_path: Path) -> None:
    file, out = problem(tmp_path), tmp_path / "out"
    made(file, out, enrolled(("Ada Quill", "Birk Tallow")))
    (one, birk) = rows(out)
    made(file, out, enrolled(("Ada Quill", "Birk Tallow", "Ada Quill")))
    found = {row.pop("student"): row for row in rows(out)}
    assert list(found) == ["Ada Quill (1)", "Birk Tallow", "Ada Quill (2)"]
    assert found["Ada Quill (1)"] == {key: each for key, each in one.items() if key != "student"} | {
        "file": "variants/ada-quill-1.toml"
    }
    assert found["Ada Quill (2)"]["biceps in N"] != one["biceps in N"]
    assert {Path(name).stem for name in contents(out / "sheets")} == {"ada-quill-1", "ada-quill-2", "birk-tallow"}
    assert birk["biceps in N"] == found["Birk Tallow"]["biceps in N"]


def test_the_key_opens_right_in_a_spreadsheet(tmp_path: Path) -> None:
    """A byte order mark for UTF-8, and CRLF (RFC 4180). Without the mark spreadsheets take names for Latin (from
    memory).
    """
    made(problem(tmp_path), tmp_path / "out", enrolled(("Zéphyrine O'Dell", "=1+1")))
    data = (tmp_path / "out" / "key.csv").read_bytes()
    assert data.startswith(b"\xef\xbb\xbfstudent,file,") and data.count(b"\r\n") == data.count(b"\n") == 3
    assert "Zéphyrine O'Dell" in data.decode("utf-8-sig") and "\r\n'=1+1," in data.decode("utf-8-sig")


def test_a_folder_with_other_things_is_left_alone(tmp_path: Path) -> None:
    (tmp_path / "out").mkdir()
    (tmp_path / "out" / "key.csv").write_text("mine")
    with pytest.raises(Fault, match="has key.csv in it, and not from this command"):
        made(problem(tmp_path), tmp_path / "out", 1)
    assert contents(tmp_path / "out") == {"key.csv": b"mine"}


def test_what_is_done_is_not_done_again_and_what_is_missing_is(tmp_path: Path) -> None:
    file, out = problem(tmp_path), tmp_path / "out"
    assert made(file, out, 3)[:2] == (3, 0)
    before = contents(out)
    assert made(file, out, 3)[:2] == (0, 3)
    (out / "sheets" / "student-002.md").unlink()
    assert made(file, out, 3)[:2] == (1, 2)
    assert contents(out) == before


def test_a_place_that_is_no_folder_is_refused(tmp_path: Path) -> None:
    (tmp_path / "out").write_text("a file")
    with pytest.raises(Fault, match="no folder can be made"):
        made(problem(tmp_path), tmp_path / "out", 1)
    assert (tmp_path / "out").read_text() == "a file"


def test_a_folder_that_may_not_be_written_to_is_refused(tmp_path: Path) -> None:
    with pytest.raises(Fault, match="no folder can be made|cannot be written"):
        made(problem(tmp_path), Path("/proc/no-such-place"), 1)


def test_a_full_disk_leaves_whole_files_and_the_run_goes_on_later(tmp_path: Path) -> None:
    """A limit on the size of files stands for the full disk: writing beyond it fails as it does there."""
    file, out = problem(tmp_path), tmp_path / "out"
    made(file, tmp_path / "whole", 4)
    whole = contents(tmp_path / "whole")
    most = min(len(content) for name, content in whole.items() if name.startswith("sheets/")) - 100

    def small() -> None:
        import signal

        signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
        resource.setrlimit(resource.RLIMIT_FSIZE, (most, most))

    done = subprocess.run(
        command(file, "--count", 4, "--seed", 7, "-o", out, "--jobs", 1),
        preexec_fn=small,
        capture_output=True,
        text=True,
        timeout=300,
        env={**os.environ, "PYTHONDONTWRITEBYTECODE": "1"},
    )
    assert done.returncode == 2 and "a place that cannot be written" in done.stderr, done.stderr
    assert [] == [
        name
        for name, content in contents(out).items()
        if name.startswith(("sheets", "variants")) and content != whole[name]
    ]
    made(file, out, numbered(4))
    assert contents(out) == whole
