"""Tallies of bad files: one clear fault or a line in the report, and whatever can be read is read."""

from __future__ import annotations

import json
import os
from pathlib import Path

import pytest
from click.testing import CliRunner, Result
from lxml import etree

from explain.cli.main import main

SAMPLES = Path(__file__).parents[1] / "samples"
TIN, CLASS = SAMPLES / "02-treacle-tin-again.toml", SAMPLES / "class"
HEAD = "student,elbow flexors,reaction\n"
RIGHT = "F*4.4 = 2.5*9.81*31 + 1.8*9.81*16.5\nF = 239 N\n"


def run(*arguments: object) -> Result:
    return CliRunner().invoke(main, ["tally", str(TIN), *map(str, arguments)])


def table(tmp: Path, content: str | bytes, name: str = "answers.csv") -> Path:
    path = tmp / name
    path.write_bytes(content if isinstance(content, bytes) else content.encode())
    return path


def rows(path: Path, *more: object) -> list[dict[str, object]]:
    found: list[dict[str, object]] = json.loads(run(path, "--as", "json", *more).stdout)["rows"]
    return found


class TestTables:
    @pytest.mark.parametrize(
        ("content", "said"),
        [
            ("", "empty"),
            ("\n \n", "empty"),
            (HEAD, "without rows"),
            ("student,pull\nLeo,239\n", "none named like an answer"),
            (HEAD + "Leo,,\n", "no answer in any row"),
            (b"PK\x03\x04\x00\x00\x00", "no text"),
            (HEAD + '"Leo,239,\n' + "x" * 200_000, "cannot be read"),
        ],
    )
    def test_what_is_no_table_of_answers_is_one_fault(self, content: str | bytes, said: str, tmp_path: Path) -> None:
        result = run(table(tmp_path, content), "-o", tmp_path / "out.md")
        assert (2, True, False) == (result.exit_code, said in result.stderr, (tmp_path / "out.md").exists())

    def test_a_fault_names_the_columns_there_are_and_the_answers_there_could_be(self, tmp_path: Path) -> None:
        said = run(table(tmp_path, "student,pull\nLeo,239\n")).stderr
        assert all(each in said for each in ('"pull"', '"elbow flexors"', '--column "elbow flexors=pull"'))

    def test_a_column_can_be_named(self, tmp_path: Path) -> None:
        path = table(tmp_path, "who,Q1,Q2\nLeo,239,197\n")
        assert [True] == [
            each["right"]
            for each in rows(path, "--column", "elbow flexors=Q1", "--column", "reaction=Q2", "--by", "who")
        ]

    @pytest.mark.parametrize("asked", [("--column", "elbow flexors=Q9"), ("--column", "Q1"), ("--by", "nobody")])
    def test_a_column_that_is_not_there_is_a_fault(self, asked: tuple[str, str], tmp_path: Path) -> None:
        assert run(table(tmp_path, "who,Q1,elbow flexors\nLeo,1,239\n"), *asked).exit_code == 2

    @pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "utf-16", "cp1252"])
    @pytest.mark.parametrize("mark", [",", ";", "\t"])
    def test_encodings_and_separators_are_read(self, encoding: str, mark: str, tmp_path: Path) -> None:
        content = "student,elbow flexors,reaction\r\nZoë,239,197\r\nÅsa,24.4,20.1\r\n".replace(",", mark)
        assert [True, False] == [each["right"] for each in rows(table(tmp_path, content.encode(encoding)))]

    def test_bytes_of_no_encoding_are_told_and_the_numbers_read(self, tmp_path: Path) -> None:
        path = table(tmp_path, HEAD.encode() + b"Zo\x81\xeb,239,197\n")
        assert (True, 0) == ("encoding" in run(path).stdout, run(path).exit_code)

    def test_decimal_commas_are_told_by_the_others(self, tmp_path: Path) -> None:
        assert [True, True] == [
            each["right"]
            for each in rows(table(tmp_path, "student;elbow flexors;reaction\na;239,0;196,8\nb;239,01;197\n"))
        ]

    def test_a_comma_that_parted_a_number_is_remarked(self, tmp_path: Path) -> None:
        assert "More cells than columns in line 2" in run(table(tmp_path, HEAD + "Leo,239,196,8\n")).stdout

    def test_an_answer_that_is_no_number_is_a_line_of_the_report(self, tmp_path: Path) -> None:
        result = run(table(tmp_path, HEAD + "Leo,lots,\nMo,239,197\n"))
        assert (1, True, False) == (
            result.exit_code,
            "Line 2, elbow flexors: no number." in result.stdout,
            "lots" in result.stdout,
        )

    def test_everything_right_is_done(self, tmp_path: Path) -> None:
        assert run(table(tmp_path, HEAD + "Leo,239,197\n")).exit_code == 0

    def test_a_table_that_is_not_there_is_a_fault(self, tmp_path: Path) -> None:
        assert (2, True) == ((result := run(tmp_path / "none.csv")).exit_code, "none.csv" in result.stderr)


class TestFolders:
    def folder(self, tmp: Path, **files: str | bytes) -> Path:
        folder = tmp / "workings"
        folder.mkdir()
        for name, content in files.items():
            (folder / f"{name}.txt").write_bytes(content if isinstance(content, bytes) else content.encode())
        return folder

    @pytest.mark.parametrize("names", [(), (".hidden",), ("photo.jpg",), ("sub",)])
    def test_a_folder_without_a_working_is_a_fault(self, names: tuple[str, ...], tmp_path: Path) -> None:
        folder = self.folder(tmp_path)
        for name in names:
            (folder / name).mkdir() if name == "sub" else (folder / name).write_text("F = 239 N")
        assert (2, True) == ((result := run(folder)).exit_code, "no working" in result.stderr)

    def test_an_unreadable_file_is_told_and_the_others_are_read(self, tmp_path: Path) -> None:
        folder = self.folder(tmp_path, dinesh=RIGHT, empty="", leo=bytes(range(32)) * 40, saoirse=RIGHT)
        os.symlink(tmp_path / "nowhere", folder / "mo.txt")
        result = run(folder, "-o", tmp_path / "out.txt")
        report = (tmp_path / "out.txt").read_text("utf-8")
        assert (2, True, True) == (result.exit_code, "5 workings: 2 right throughout" in report, "3 not read" in report)
        assert all(name in result.stderr for name in ("empty.txt", "leo.txt", "mo.txt")) and not any(
            name in report for name in ("leo", "dinesh", "saoirse")
        )

    def test_a_folder_of_nothing_readable_is_a_fault_and_nothing_is_written(self, tmp_path: Path) -> None:
        result = run(self.folder(tmp_path, empty=""), "-o", tmp_path / "out.md", "--csv", tmp_path / "rows.csv")
        assert (2, ["workings"]) == (result.exit_code, os.listdir(tmp_path))

    def test_processes_change_nothing(self, tmp_path: Path) -> None:
        folder = self.folder(tmp_path, a=RIGHT, b="F*4.4 = 2.5*9.81*31\nF = 172.8 N\n", c="")
        one, two = (run(folder, "--as", "json", "--jobs", jobs) for jobs in (1, 2))
        assert (one.stdout, 2) == (two.stdout, one.exit_code)

    def test_names_with_path_characters_and_formulas_do_no_harm(self, tmp_path: Path) -> None:
        folder = self.folder(tmp_path, **{"=1+1": RIGHT, "..%2f..%2fetc": RIGHT, "a\nb": RIGHT})
        result = run(folder, "--names", "--csv", tmp_path / "rows.csv")
        written = (tmp_path / "rows.csv").read_text("utf-8-sig")
        assert (True, False, ["rows.csv", "workings"]) == (
            "'=1+1" in written,
            ",=1+1" in written,
            sorted(os.listdir(tmp_path)),
        )
        assert result.exit_code in (0, 1)


class TestWriting:
    @pytest.mark.parametrize(
        ("name", "begins"),
        [
            ("r.md", b"# The same tin"),
            ("r.html", b"<!DOCTYPE html>"),
            ("r.pdf", b"%PDF-"),
            ("r.txt", b"The same tin"),
            ("r.json", b'{"title"'),
        ],
    )
    def test_every_format_is_written(self, name: str, begins: bytes, tmp_path: Path) -> None:
        result = run(
            CLASS / "answers.csv",
            "-o",
            tmp_path / name,
            "--csv",
            tmp_path / "rows.csv",
            "--chart",
            tmp_path / "chart.svg",
        )
        assert (1, begins) == (result.exit_code, (tmp_path / name).read_bytes()[: len(begins)])
        assert etree.fromstring((tmp_path / "chart.svg").read_bytes()).tag.endswith("svg")
        assert len((tmp_path / "rows.csv").read_text("utf-8-sig").splitlines()) == 31

    @pytest.mark.parametrize(
        "more",
        [
            ("-o", "answers.csv"),
            ("--csv", "answers.csv"),
            ("--csv", "rows.xlsx"),
            ("--chart", "chart.png"),
            ("-o", "r.docx"),
            ("-o", "x.csv", "--csv", "x.csv"),
            ("--csv", "."),
        ],
    )
    def test_a_place_that_will_not_do_is_refused_before_anything_is_written(
        self, more: tuple[str, ...], tmp_path: Path
    ) -> None:
        path = table(tmp_path, HEAD + "Leo,239,197\n")
        targets = [each if each.startswith("-") else tmp_path / each for each in more]
        assert (2, ["answers.csv"]) == (run(path, *targets).exit_code, os.listdir(tmp_path))
        assert path.read_text() == HEAD + "Leo,239,197\n"

    def test_hostile_text_is_text_in_html(self, tmp_path: Path) -> None:
        path = table(tmp_path, HEAD + '"<script>alert(1)</script>","<img src=x onerror=y>",\nMo,239,197\n')
        run(path, "-o", tmp_path / "r.html", "--names")
        page = (tmp_path / "r.html").read_text("utf-8")
        assert ("<script>alert" in page, "<img src=x" in page, "&lt;script&gt;" in page) == (False, False, True)

    def test_the_sample_class_comes_out_as_its_file_says(self) -> None:
        value = json.loads(run(CLASS / "answers.csv", "--as", "json").stdout)
        counted = {each["slip"]: each["alone"] for each in value["slips"] if each["alone"]}
        assert {
            "reaction-omits-muscle": 3,
            "mass-for-weight": 2,
            "segment-at-tip": 2,
            "reaction-equals-muscle": 1,
            "digit-transposed": 1,
        } == counted
        assert "Dinesh" not in json.dumps(value)
