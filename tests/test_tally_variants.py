"""A class in which every student has a variant: known slips are counted exactly, whoever cannot be judged is told,
and processes change no byte.
"""

from __future__ import annotations

import csv
import io
import json
import shutil
from collections.abc import Callable, Mapping, Sequence
from math import cos, hypot, radians, sin
from pathlib import Path

import pytest
from click.testing import CliRunner, Result
from varying import made, rows

from explain import work
from explain.cli.main import main
from explain.tally.spread import Crowd, judged
from explain.errors import Fault
from explain.tally.variants import workings_taken
from explain.tally.key import Key, read_key, variant_in
from explain.tally.rows import json_text
from explain.vary.class_list import read_roll

SAMPLES = Path(__file__).parents[1] / "samples"
BUCKET, ROLL = SAMPLES / "class-variants" / "bucket-of-mussels.toml", SAMPLES / "class-variants" / "class-5b.csv"
G = 9.81
Numbers = tuple[float, ...]
Given = tuple[str, str]


@pytest.fixture(scope="module")
def class_5b(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("class") / "monday"
    made(BUCKET, folder, read_roll(ROLL), seed=0)
    return folder


# ---------------------------------------------------------------------- what the students hand in, worked by hand from
# the numbers in the key
def numbers(row: Mapping[str, str]) -> Numbers:
    """Mass and distance of the bucket, mass and centre of mass of the arm, distance and angle of the biceps: kg, cm,
    degrees.
    """
    heads = (
        "bucket.mass",
        "bucket.at",
        "forearm and hand.mass",
        "forearm and hand.com",
        "biceps.at",
        "biceps.direction",
    )
    return tuple(float(row[head].split()[0]) for head in heads)


def answers(row: Mapping[str, str], slip: str = "") -> Given:
    """Pull of the biceps and size of the joint force in N, by the balances of moments and forces; with one slip put
    into them.
    """
    bucket, far, arm, near, at, turn = numbers(row)
    g = 1.0 if slip == "mass-for-weight" else G
    reach = 37.0 if slip == "segment-at-tip" else near
    pull = g * (bucket * far + arm * reach) / (at * (1.0 if slip == "insertion-used-as-arm" else sin(radians(turn))))
    level, upright = pull * cos(radians(turn)), g * (bucket + arm) - pull * sin(radians(turn))
    if slip == "reaction-equals-muscle":
        return f"{pull:.4g}", f"{pull:.4g}"
    return f"{pull:.4g}", f"{hypot(level, upright):.4g}"


SLIPS = {
    1: "mass-for-weight",
    4: "mass-for-weight",
    8: "mass-for-weight",
    2: "segment-at-tip",
    10: "segment-at-tip",
    5: "reaction-equals-muscle",
}


def handed(folder: Path, key: Path, given: Callable[[int, Mapping[str, str]], Given], more: Sequence[str] = ()) -> Path:
    path = folder / "answers.csv"
    lines = [f'"{row["student"]}",{",".join(given(place, row))}' for place, row in enumerate(rows(key))]
    path.write_text("\n".join(("student,biceps,reaction", *lines, *more)), "utf-8")
    return path


def run(given: Path, key: Path, *more: object, problem: Path = BUCKET) -> Result:
    return CliRunner().invoke(
        main, ["tally", str(problem), str(given), "--variants", str(key), "--jobs", "1", *map(str, more)]
    )


def found(given: Path, key: Path, *more: object) -> dict[str, object]:
    value: dict[str, object] = json.loads(run(given, key, "--as", "json", *more).stdout)
    return value


def written(given: Path, key: Path, tmp: Path, *more: object) -> tuple[int, bytes, bytes]:
    """Exit code, report and table."""
    result = run(given, key, "-o", tmp / "report.md", "--csv", tmp / "rows.csv", *more)
    return result.exit_code, (tmp / "report.md").read_bytes(), (tmp / "rows.csv").read_bytes()


class TestAnswers:
    def test_the_key_itself_is_right_throughout(self, class_5b: Path, tmp_path: Path) -> None:
        """The key's numbers by the balances of the problem as written, not by the values that the key has."""
        result = run(handed(tmp_path, class_5b, lambda place, row: answers(row)), class_5b / "key.csv")
        assert (0, True) == (result.exit_code, "12 students, 24 answers: 24 right, 0 not." in result.stdout)

    def test_known_slips_are_counted_exactly(self, class_5b: Path, tmp_path: Path) -> None:
        value = found(
            handed(tmp_path, class_5b, lambda place, row: answers(row, SLIPS.get(place, ""))), class_5b / "key.csv"
        )
        alone = {each["slip"]: each["alone"] for each in value["slips"] if each["alone"]}  # type: ignore[attr-defined]
        assert {"mass-for-weight": 3, "segment-at-tip": 2, "reaction-equals-muscle": 1} == alone
        assert (12, 12, 6) == (value["variants"], value["students"], value["right"])
        judged_rows: list[dict[str, object]] = value["rows"]  # type: ignore[assignment]
        assert sorted(SLIPS) == [place for place, row in enumerate(judged_rows) if not row["right"]]

    def test_no_true_value_stands_in_the_report(self, class_5b: Path, tmp_path: Path) -> None:
        """Neither that of the problem as written, nor any student's."""
        given = handed(
            tmp_path, class_5b, lambda place, row: answers(row) if place else answers(row, "mass-for-weight")
        )
        shown = run(given, class_5b / "key.csv").stdout
        asked = work(BUCKET).answers.values()
        values = [
            *(f"{each.value:.3g} N" for each in asked),
            *(f"{float(row['biceps in N']):.3g} N" for row in rows(class_5b)),
        ]
        assert ("True value" in shown, "one true value" in shown) == (False, True)
        assert [] == [each for each in values if each in shown]

    def test_those_of_one_explanation_are_one_group_whatever_their_numbers(
        self, class_5b: Path, tmp_path: Path
    ) -> None:
        """Three students with one slip, each with another number."""
        given = handed(
            tmp_path,
            class_5b,
            lambda place, row: (answers(row, "insertion-used-as-arm" if place in (3, 4, 7) else "")[0], ""),
        )
        value = found(given, class_5b / "key.csv")
        counted = {each["slip"]: each["students"] for each in value["slips"]}  # type: ignore[attr-defined]
        assert (3, 9) == (counted["insertion-used-as-arm"], value["right"])
        several: list[dict[str, list[dict[str, object]]]] = value["several"]  # type: ignore[assignment]
        assert several and len(
            {json.dumps(sorted({json.dumps(one["slips"]) for one in each["explanations"]})) for each in several}
        ) == len(several)
        assert {None} == {each["value"] for each in several}

    def test_one_slip_is_found_by_its_formula_though_every_number_of_it_is_another(
        self, class_5b: Path, tmp_path: Path
    ) -> None:
        """Four students put the length of the forearm (37 cm in every variant) in place of the arm of the pull: one
        slip, four numbers, and no pair of slips is looked for.
        """

        def pull(row: Mapping[str, str]) -> float:
            bucket, far, arm, near, _, _ = numbers(row)
            return G * (bucket * far + arm * near) / 37.0

        given = handed(tmp_path, class_5b, lambda place, row: (f"{pull(row):.5g}", "") if place < 4 else answers(row))
        value = found(given, class_5b / "key.csv")
        assert len({f"{pull(row):.5g}" for row in rows(class_5b)[:4]}) == 4
        counted = {each["slip"]: each["students"] for each in value["slips"]}  # type: ignore[attr-defined]
        assert (counted["wrong-datum"], value["right"]) == (4, 8)
        assert all(
            len(one) == 1
            for row in value["rows"]  # type: ignore[attr-defined]
            for wrong in row["wrong"]
            for one in [each["slips"] for each in wrong["explanations"]]
        )

    def test_a_slip_s_number_in_another_s_variant_is_not_that_slip(self, class_5b: Path, tmp_path: Path) -> None:
        """What a slip makes of one student's numbers, handed in by the student before."""
        whole = rows(class_5b)

        def given(place: int, row: Mapping[str, str]) -> Given:
            return answers(whole[(place + 1) % len(whole)], "segment-at-tip")

        value = found(handed(tmp_path, class_5b, given), class_5b / "key.csv")
        counted = {each["slip"]: each["students"] for each in value["slips"]}  # type: ignore[attr-defined]
        own = found(handed(tmp_path, class_5b, lambda place, row: answers(row, "segment-at-tip")), class_5b / "key.csv")
        theirs = {each["slip"]: each["students"] for each in own["slips"]}  # type: ignore[attr-defined]
        assert (counted.get("segment-at-tip", 0), theirs["segment-at-tip"]) == (0, len(whole))

    def test_whoever_has_no_variant_is_told_without_a_name_and_the_others_go_on(
        self, class_5b: Path, tmp_path: Path
    ) -> None:
        given = handed(tmp_path, class_5b, lambda place, row: answers(row), ["Nobody Known,12,12", ",13,13"])
        result = run(given, class_5b / "key.csv")
        assert (1, True) == (
            result.exit_code,
            "12 students, 24 answers: 24 right, 0 not; 2 rows of nobody in the key, not counted." in result.stdout,
        )
        assert all(f"Line {line}: no student of this name in the key" in result.stdout for line in (14, 15))
        said = 'key.csv: no students of these names: "Nobody Known", no name.\n'
        assert ("Nobody" in result.stdout, result.stderr.count("explain: "), said in result.stderr) == (False, 1, True)

    @pytest.mark.parametrize("encoding", ["utf-8", "cp1252", "mac_roman", "cp850", "twice"])
    def test_names_are_found_in_whatever_encoding_the_table_was_saved(
        self, encoding: str, class_5b: Path, tmp_path: Path
    ) -> None:
        """Spreadsheets save as Windows Latin, on a Mac as Mac Roman, for MS-DOS as code page 850 (from memory)."""
        given = handed(tmp_path, class_5b, lambda place, row: answers(row))
        typed = given.read_text("utf-8")
        assert "Zéphyrine" in typed
        given.write_bytes(
            typed.encode("utf-8").decode("cp1252").encode("utf-8") if encoding == "twice" else typed.encode(encoding)
        )
        result = run(given, class_5b / "key.csv", "--names")
        assert (0, "") == (result.exit_code, result.stderr.replace("Judging\n", ""))
        assert (encoding not in ("utf-8", "cp1252")) == ("The table is no UTF-8" in result.stdout)

    def test_many_names_that_are_not_in_the_key_are_one_complaint(self, class_5b: Path, tmp_path: Path) -> None:
        more = [f"Zo\ufffd {chr(65 + place % 26)}{place},12,12" for place in range(42)]
        result = run(handed(tmp_path, class_5b, lambda place, row: answers(row), more), class_5b / "key.csv")
        assert (1, 1) == (result.exit_code, result.stderr.count("explain: "))
        assert "and 32 more" in result.stderr and "42 rows of nobody in the key" in result.stdout

    def test_a_student_with_several_rows_counts_once_however_the_name_is_written(
        self, class_5b: Path, tmp_path: Path
    ) -> None:
        given = handed(tmp_path, class_5b, lambda place, row: answers(row), ["BIRK  TALLOW,1,1", "birk-tallow,,2"])
        for attempt, right in (("first", 12), ("last", 11), ("best", 12)):
            value = json.loads(run(given, class_5b / "key.csv", "--as", "json", "--attempt", attempt).stdout)
            assert (12, right, 2) == (value["students"], value["right"], len(value["further_attempts"]))

    def test_a_gradebook_has_marks_for_everyone(self, class_5b: Path, tmp_path: Path) -> None:
        given = handed(tmp_path, class_5b, lambda place, row: answers(row, "segment-at-tip" if place == 1 else ""))
        lines = given.read_text("utf-8").splitlines()
        del lines[3]
        lines[4] = lines[4].rpartition(",")[0] + ","
        given.write_text("\n".join((*lines, "Nobody Known,1,1")), "utf-8")
        run(given, class_5b / "key.csv", "--gradebook", tmp_path / "marks.csv")
        data = (tmp_path / "marks.csv").read_bytes()
        assert data.startswith(b"\xef\xbb\xbfstudent,marks,out of,biceps,reaction,attempts,remark\r\n")
        found = list(csv.reader(io.StringIO(data.decode("utf-8-sig"))))[1:]
        assert ["Ottoline Barrow", "2", "2", "1", "1", "1", ""] == found[0]
        assert ["Birk Tallow", "1", "2", "0", "1"] == found[1][:5]
        assert ["1", "2", "1", "0", "1", "blank: reaction"] == found[3][1:]
        assert [["Yusra Hadley", "", "", "", "", "0", "nothing handed in"]] == found[-2:-1]
        assert ["Nobody Known", "", "", "", "", "", "no student of this name in the key of the variants"] == found[-1]

    def test_a_variant_that_is_gone_or_no_problem_is_told_and_the_others_go_on(
        self, class_5b: Path, tmp_path: Path
    ) -> None:
        shutil.copytree(class_5b, tmp_path / "copy")
        (tmp_path / "copy" / "variants" / "yusra-hadley.toml").unlink()
        (tmp_path / "copy" / "variants" / "corin-vane.toml").write_text("title = ", "utf-8")
        shutil.copy(SAMPLES / "01-treacle-tin.toml", tmp_path / "copy" / "variants" / "maeve-locke.toml")
        shutil.copy(SAMPLES / "harbour-school.toml", tmp_path / "copy" / "variants")
        result = run(handed(tmp_path, class_5b, lambda place, row: answers(row)), tmp_path / "copy" / "key.csv")
        assert (2, True) == (
            result.exit_code,
            "12 students, 18 answers: 18 right, 0 not; 3 students not judged." in result.stdout,
        )
        assert all(
            f"Line {line}: the file of the student's variant could not be read" in result.stdout for line in (4, 5)
        )
        assert "Line 6: the student's variant could not be worked" in result.stdout
        assert all(name in result.stderr for name in ("yusra-hadley.toml", "corin-vane.toml", "maeve-locke.toml"))
        assert "Yusra" not in result.stdout

    def test_processes_change_no_byte(self, class_5b: Path, tmp_path: Path) -> None:
        given = handed(
            tmp_path, class_5b, lambda place, row: answers(row, SLIPS.get(place, "")), ["Nobody Known,12,12"]
        )
        assert written(given, class_5b / "key.csv", tmp_path) == written(
            given, class_5b / "key.csv", tmp_path, "--jobs", 2
        )

    def test_a_cluster_changes_no_byte(self, class_5b: Path, tmp_path: Path) -> None:
        whole = (
            handed(tmp_path, class_5b, lambda place, row: answers(row, SLIPS.get(place, "")))
            .read_text("utf-8")
            .splitlines()
        )
        given = tmp_path / "some.csv"
        given.write_text("\n".join((*whole[:4], "Nobody Known,12,12")), "utf-8")
        assert written(given, class_5b / "key.csv", tmp_path) == written(
            given, class_5b / "key.csv", tmp_path, "--cluster", "local"
        )


class TestWorkings:
    def folder(self, tmp: Path, key: Path, count: int = 4) -> Path:
        """Workings of the first students, whose weights are masses in the second; named as the sheets are, and as a
        person would name them.
        """
        folder = tmp / "workings"
        folder.mkdir()
        for place, row in enumerate(rows(key)[:count]):
            bucket, far, arm, near, at, turn = numbers(row)
            g = "" if place == 1 else "*9.81"
            pull = answers(row, "mass-for-weight" if place == 1 else "")[0]
            name = row["student"] if place == 2 else Path(row["file"]).stem
            (folder / f"{name}.txt").write_text(
                f"F*{at}*sin({turn}) = {bucket}{g}*{far} + {arm}{g}*{near}\nF = {pull} N\n", "utf-8"
            )
        return folder

    def test_each_is_marked_with_the_variant_that_its_file_is_named_after(self, class_5b: Path, tmp_path: Path) -> None:
        folder = self.folder(tmp_path, class_5b)
        (folder / "nobody-known.txt").write_text("F = 12 N\n")
        (folder / "empty.txt").write_text("")
        result = run(folder, class_5b / "key.csv", "--as", "json")
        value = json.loads(result.stdout)
        said = "5 workings: 3 right throughout, 1 with a wrong line, 1 not read; 1 working of nobody in the key, not "
        said += "counted."
        assert (2, said) == (result.exit_code, value["summary"])
        assert ([4], [5]) == (  # in the order of the names: empty, nobody-known
            [each["place"] for each in value["rows"] if "trouble" in each],
            [each["place"] for each in value["not_students"]],
        )
        assert {"mass-for-weight"} == {each["slip"] for each in value["slips"] if each["alone"]}

    def test_the_same_workings_judged_by_the_problem_as_written_are_wrong(self, class_5b: Path, tmp_path: Path) -> None:
        folder = self.folder(tmp_path, class_5b)
        one = CliRunner().invoke(main, ["tally", str(BUCKET), str(folder), "--jobs", "1", "--as", "json"])
        assert json.loads(one.stdout)["right"] == 0

    def test_a_folder_that_goes_out_as_tasks_comes_back_as_it_does_from_this_machine(self) -> None:
        """What a cluster does with workings of one problem, without the cluster."""
        tin, folder = SAMPLES / "02-treacle-tin-again.toml", SAMPLES / "class" / "workings"
        walkthrough = work(tin)
        of, missed = judged(
            walkthrough, workings_taken(walkthrough, folder, tin, variant_in(tin)), Crowd(own=False, jobs=1)
        )
        here = CliRunner().invoke(main, ["tally", str(tin), str(folder), "--jobs", "1", "--as", "json"])
        assert (here.stdout.strip(), ()) == (json_text(of), missed)


class TestKeys:
    KEY = (
        "student,file\nAda Quill,variants/ada-quill.toml\nKim,variants/kim.toml\nKim,variants/kim-2.toml\n"
        "'=1+1,variants/1-1.toml\n李雷,variants/student-5.toml\n"
    )

    def key(self, tmp: Path, content: str | bytes = KEY) -> Key:
        path = tmp / "key.csv"
        path.write_bytes(content if isinstance(content, bytes) else content.encode())
        return read_key(path)

    @pytest.mark.parametrize(
        ("name", "file"),
        [
            ("Ada Quill", "ada-quill"),
            (" ada  QUILL ", "ada-quill"),
            ("ada-quill", "ada-quill"),
            ("Ada_Quill", "ada-quill"),
            ("=1+1", "1-1"),
            ("'=1+1", "1-1"),
            ("李雷", "student-5"),
        ],
    )
    def test_a_student_is_found_however_the_name_is_written(self, name: str, file: str, tmp_path: Path) -> None:
        assert f"variants/{file}.toml" == self.key(tmp_path).file(name)

    @pytest.mark.parametrize(
        ("name", "said"),
        [("Kim", "several students"), ("", "without a name"), ("王", "no student"), ("Ada", "no student")],
    )
    def test_who_cannot_be_told_is_not_guessed(self, name: str, said: str, tmp_path: Path) -> None:
        with pytest.raises(Fault, match=said):
            self.key(tmp_path).file(name)

    def test_the_name_of_a_sheet_tells_two_of_one_name_apart(self, tmp_path: Path) -> None:
        assert ["variants/kim.toml", "variants/kim-2.toml"] == [
            self.key(tmp_path).file_of_stem(stem) for stem in ("kim", "kim-2")
        ]

    def test_two_of_one_name_are_found_by_number_or_id_and_never_by_the_name(self, tmp_path: Path) -> None:
        key = self.key(
            tmp_path,
            "student,id,file\nAda Quill (a@x.example),a@x.example,variants/one.toml\n"
            "Ada Quill (c@x.example),c@x.example,variants/two.toml\nTom (evening),t@x.example,variants/tom.toml\n",
        )
        assert [key.file(each) for each in ("A@x.example", "ada quill (c@x.example)")] == [
            "variants/one.toml",
            "variants/two.toml",
        ]
        for find, name in ((key.file, "Ada Quill"), (key.file_of_stem, "ada-quill")):
            with pytest.raises(Fault, match="several students"):
                find(name)
        with pytest.raises(Fault, match="no student"):
            key.file("Tom")

    @pytest.mark.parametrize(
        "content",
        [
            "\ufeff" + KEY,
            KEY.replace(",", ";"),
            KEY.replace(",", "\t").encode("utf-16"),
            "note," + KEY.replace("\n", "\nx,", 5),
        ],
    )
    def test_a_key_that_a_spreadsheet_saved_is_read(self, content: str | bytes, tmp_path: Path) -> None:
        assert "variants/ada-quill.toml" == self.key(tmp_path, content).file("Ada Quill")

    @pytest.mark.parametrize("content", ["", "name,answer\nAda,5\n", "student,file\n", b"PK\x03\x04\x00\x00"])
    def test_what_is_no_key_is_one_fault(self, content: str | bytes, tmp_path: Path) -> None:
        with pytest.raises(Fault, match="key.csv that explain vary writes"):
            self.key(tmp_path, content)

    @pytest.mark.parametrize(
        "file", ["../ada.toml", "/etc/passwd", "variants/../../ada.toml", "..\\ada.toml", "a\x01/../../x"]
    )
    def test_a_path_out_of_the_folder_is_refused(self, file: str, tmp_path: Path) -> None:
        with pytest.raises(Fault, match="stays in the folder"):
            self.key(tmp_path).variant(file)

    def test_nobody_with_a_variant_is_a_fault_and_nothing_is_written(self, tmp_path: Path) -> None:
        self.key(tmp_path)
        (tmp_path / "answers.csv").write_text("student,biceps\nZed,12\n")
        result = run(tmp_path / "answers.csv", tmp_path / "key.csv", "-o", tmp_path / "out.md")
        assert (2, False, True) == (
            result.exit_code,
            (tmp_path / "out.md").exists(),
            "no variant that can be read" in result.stderr,
        )

    @pytest.mark.parametrize("option", ["-o", "--csv"])
    def test_the_key_is_never_written_over(self, option: str, tmp_path: Path) -> None:
        self.key(tmp_path)
        (tmp_path / "answers.csv").write_text("student,biceps\nZed,12\n")
        assert run(tmp_path / "answers.csv", tmp_path / "key.csv", option, tmp_path / "key.csv").exit_code == 2
        assert (tmp_path / "key.csv").read_text("utf-8") == self.KEY
