"""Every fault of an input says file, line, key, what was found, what is expected, and an example."""

from __future__ import annotations

from pathlib import Path

import pytest
from bad_inputs import BAD, GOOD, Bad

from explain.errors import Fault
from explain.problem.toml_table import MOST
from explain.problem.reader import MOST_BYTES, read_problem


def fault_of(path: Path, data: str | bytes) -> Fault:
    path.write_bytes(data if isinstance(data, bytes) else data.encode())
    with pytest.raises(Fault) as caught:
        read_problem(path)
    return caught.value


class TestEveryBadInput:
    @pytest.mark.parametrize("bad", BAD, ids=lambda bad: bad.case)
    def test_a_spoiled_file_is_refused_with_all_there_is_to_say(self, bad: Bad, tmp_path: Path) -> None:
        assert GOOD.count(bad.old) >= 1
        before, _, after = GOOD.rpartition(bad.old)
        fault = fault_of(tmp_path / "jug.toml", before + bad.new + after)
        assert (str(tmp_path / "jug.toml"), bad.line, bad.key) == (fault.file, fault.line, fault.key)
        assert (True, True, True) == (
            bad.found in fault.found,
            bad.expected in fault.expected,
            bad.example in fault.example,
        )

    @pytest.mark.parametrize("bad", BAD, ids=lambda bad: bad.case)
    def test_a_message_says_where_and_ends_with_what_to_do(self, bad: Bad, tmp_path: Path) -> None:
        before, _, after = GOOD.rpartition(bad.old)
        fault = fault_of(tmp_path / "jug.toml", before + bad.new + after)
        first, *_, last = str(fault).splitlines()
        assert (True, f"Write, for example: {fault.example}") == (first.startswith(fault.file), last)

    def test_bytes_that_are_not_utf_8(self, tmp_path: Path) -> None:
        fault = fault_of(tmp_path / "jug.toml", GOOD.encode().replace(b"biceps", b"bic\xe9ps"))
        assert (18, "text in UTF-8", True) == (fault.line, fault.expected, "0xe9" in fault.found)

    def test_a_file_of_more_than_a_megabyte(self, tmp_path: Path) -> None:
        fault = fault_of(tmp_path / "jug.toml", GOOD + "#" * MOST_BYTES)
        assert "more than 1 MB" == fault.found

    @pytest.mark.parametrize("opening", ["x = " + "[" * 200_000, "x = " + "{a=" * 200_000])
    def test_nesting_without_end(self, opening: str, tmp_path: Path) -> None:
        assert "lists or tables nested without end" == fault_of(tmp_path / "jug.toml", opening).found

    def test_a_file_that_is_not_there(self, tmp_path: Path) -> None:
        with pytest.raises(Fault) as caught:
            read_problem(tmp_path / "none.toml")
        assert (str(tmp_path / "none.toml"), True) == (caught.value.file, "no such file" in caught.value.found)

    @pytest.mark.parametrize("path", [".", "a\0b"])
    def test_a_path_that_is_no_file(self, path: str) -> None:
        with pytest.raises(Fault, match="no file that can be read"):
            read_problem(path)

    def test_more_tables_than_one_body_can_have(self, tmp_path: Path) -> None:
        many = GOOD + "".join(f'[[load]]\nname = "n{place}"\nmass = "1 kg"\nat = "1 cm"\n' for place in range(MOST))
        assert "a list of 101" == fault_of(tmp_path / "jug.toml", many).found

    def test_the_reaction_asked_while_a_force_has_no_direction_names_the_force(self, tmp_path: Path) -> None:
        text = 'ask = ["reaction.up"]\n' + GOOD.replace('direction = "up"', 'moment_arm = "4 cm"\nturns = "clockwise"')
        fault = fault_of(tmp_path / "jug.toml", text)
        assert ("muscle[1].direction", 18, True) == (fault.key, fault.line, '"biceps"' in fault.expected)

    def test_the_reaction_asked_where_nothing_pushes(self, tmp_path: Path) -> None:
        text = 'ask = ["reaction"]\n' + GOOD.replace('bone = "humerus"', "reaction = false")
        fault = fault_of(tmp_path / "jug.toml", text)
        assert ("ask", 1, True) == (fault.key, fault.line, "reaction = false" in fault.found)

    def test_no_reaction_and_a_force_without_a_direction(self, tmp_path: Path) -> None:
        text = GOOD.replace('bone = "humerus"', "reaction = false")
        text = text.replace('direction = "up"', 'moment_arm = "4 cm"\nturns = "clockwise"')
        assert "muscle[1].direction" == fault_of(tmp_path / "jug.toml", text).key

    def test_a_distance_along_a_segment_where_there_is_none(self, tmp_path: Path) -> None:
        text = GOOD.replace('[[segment]]\nname = "forearm and hand"\nmass = "1.6 kg"\ncom = "15 cm"\n', "")
        assert ("load[1].at", 11) == ((fault := fault_of(tmp_path / "jug.toml", text)).key, fault.line)

    def test_back_where_there_is_no_segment(self) -> None:
        with pytest.raises(Fault, match="no segment"):
            read_problem('title = "x"\n[[muscle]]\nname = "m"\npoint = ["1 cm", "0 cm"]\ndirection = "back"')

    def test_a_first_segment_along_itself(self) -> None:
        with pytest.raises(Fault, match="no segment"):
            read_problem(GOOD.replace("com =", 'direction = "out"\ncom ='))

    def test_a_pull_toward_the_point_where_it_acts(self) -> None:
        with pytest.raises(Fault, match="another point"):
            read_problem(
                GOOD.replace('at = "4.0 cm"\ndirection = "up"', 'point = ["1 cm", "0 cm"]\ntoward = ["1 cm", "0 cm"]')
            )

    def test_a_limit_of_what_is_no_muscle(self) -> None:
        with pytest.raises(Fault, match="no muscle"):
            read_problem(GOOD.replace("[[muscle]]", "[[force]]") + 'force = "limit"')

    def test_a_limit_sought_but_not_reached(self) -> None:
        with pytest.raises(Fault, match="where the muscle reaches it"):
            read_problem(GOOD + 'force = "300 N"\nlimit = "?"')


class TestCourseFiles:
    def test_a_fault_in_a_course_file_names_that_file(self, tmp_path: Path) -> None:
        (tmp_path / "course.toml").write_text('\nword = "twist"\n', encoding="utf-8")
        fault = fault_of(tmp_path / "jug.toml", 'course = "course.toml"\n' + GOOD)
        assert (str(tmp_path / "course.toml"), 2, "word") == (fault.file, fault.line, fault.key)

    def test_a_problem_key_in_a_course_file(self, tmp_path: Path) -> None:
        (tmp_path / "course.toml").write_text('word = "moment"\n[pivot]\nname = "elbow"\n', encoding="utf-8")
        fault = fault_of(tmp_path / "jug.toml", 'course = "course.toml"\n' + GOOD)
        assert ("pivot", 2, "pivot, a key of a problem file") == (fault.key, fault.line, fault.found)

    def test_a_course_in_a_course_file(self, tmp_path: Path) -> None:
        (tmp_path / "course.toml").write_text('from = "other.toml"\n', encoding="utf-8")
        fault = fault_of(tmp_path / "jug.toml", 'course = "course.toml"\n' + GOOD)
        assert fault.found.startswith("a key that no file of this kind has")
