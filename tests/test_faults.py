"""What a fault says, and how the line of a key is found."""

from __future__ import annotations

import copy
import pickle

import pytest

from explain.errors import Fault, NoWay, shown
from explain.problem.toml_lines import line_of, path_before, written


class TestWhereAFaultIs:
    TEXT = (
        'a = 1 # [x]\n"b c" = """\nd = 2\n[[t]]\n"""\n[ e . "f" ]\ng = [\n 1, # ]\n 2]\nh.i = \'#\'\n'
        '\n[[t]]\nk = "]"\n[[ t ]]\n'
        "k = '''\nk = 1'''\nl = { m = 2 }\n[t.u]\nv = 3\n[[t.w]]\n[[t.w]]\nz = 1\n"
    )

    @pytest.mark.parametrize(
        ("path", "line"),
        [
            (("a",), 1),
            (("b c",), 2),
            (("e", "f", "g"), 7),
            (("e", "f", "h", "i"), 10),
            (("t", 0, "k"), 13),
            (("t", 1, "k"), 15),
            (("t", 1, "l", "m"), 17),
            (("t", 1, "u", "v"), 19),
            (("t", 1, "w", 1, "z"), 22),
            (("t", 0, "missing"), 12),
            (("missing",), None),
            (("d",), None),
        ],
    )
    def test_a_key_is_found_in_its_line(self, path: tuple[str | int, ...], line: int | None) -> None:
        assert line == line_of(self.TEXT, path)

    def test_a_key_is_known_however_it_is_quoted(self) -> None:
        assert (1, 2) == (
            line_of('"a\\"b" = 1\n"\\u0062" = 2', ('a"b',)),
            line_of('"a\\"b" = 1\n"\\u0062" = 2', ("b",)),
        )
        assert ("t\\q",) == path_before('["t\\q"]\n')

    def test_a_path_counts_tables_from_one(self) -> None:
        assert "muscle[1].force" == written(("muscle", 0, "force"))

    def test_a_key_cannot_disturb_the_screen(self) -> None:
        assert "\\x1b[2Jx" == written(("\x1b[2Jx",))


class TestFaults:
    def test_a_fault_survives_pickling_and_copying(self) -> None:
        fault = Fault("jug.toml", 3, "load[1].mass", "3", "a mass", 'mass = "3 kg"')
        assert [str(fault)] * 2 == [str(pickle.loads(pickle.dumps(fault))), str(copy.copy(fault))]

    def test_a_message_is_of_a_few_lines(self) -> None:
        fault = Fault(
            "jug.toml", 3, "load[1].mass", "3.0, a number without a unit", "a mass (kg, g, lb)", 'mass = "3.0 kg"'
        )
        assert (
            "jug.toml, line 3: load[1].mass: found 3.0, a number without a unit.\nExpected a mass (kg, g, lb).\n"
            'Write, for example: mass = "3.0 kg"'
        ) == str(fault)

    def test_faults_know_their_exit_codes(self) -> None:
        assert (2, 3) == (Fault.exit_code, NoWay.exit_code)

    def test_no_way_shows_the_last_line(self) -> None:
        assert "No way.\nThe last certified line: F = 3 N" == str(NoWay("No way.", "F = 3 N"))

    def test_a_long_value_is_cut_short_and_made_legible(self) -> None:
        assert '"\\x1b' + "a" * 59 + '..."' == shown("\x1b" + "a" * 100)
