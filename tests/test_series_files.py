"""Series files that are at fault: the step, what was found, what is expected and an example are told, and nothing is
half-written.
"""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path
from typing import NamedTuple

import pytest
from click.testing import CliRunner, Result
from lxml import html as reader
from markdown_it import MarkdownIt
from test_hostile import OURS, STEERING, TAGS, TEXTS

from explain import Fault, NoWay, work_series
from explain.cli.main import main
from explain.series.toml_text import written

JUG = (Path(__file__).parent / "contract" / "jug-level.toml").read_text(encoding="utf-8")
GOOD = """\
title = "A jug, step by step"   # line 1
base = "jug.toml"

[[step]]
title = "A heavier jug"
set = { "jug.mass" = "4.0 kg" }

[[step]]
title = "A bag"
[[step.add.load]]
name = "bag"
mass = "1.0 kg"
at = "20 cm"

[[step]]
title = "Through the angles"
set = { "biceps.moment_arm" = "4.0 cm", "biceps.turns" = "counter-clockwise" }
[step.sweep]
of = "forearm and hand.direction"
direction = "? below right"
to = "90 deg"
step = "30 deg"
"""


class Bad(NamedTuple):
    """What is put in place of what in the good file, and the key, the line and pieces of the words of the fault."""

    case: str
    old: str
    new: str
    key: str
    line: int | None
    found: str
    expected: str
    example: str = ""


BAD = [
    Bad("no title", 'title = "A jug, step by step"', 'intro = "x"', "title", None, "missing", "a title"),
    Bad("an unknown key", "base =", "bass =", "bass", 2, '"bass"', "the key base"),
    Bad("no base", 'base = "jug.toml"\n', "", "base", None, "missing", "path of the problem"),
    Bad(
        "a base that is not there", "jug.toml", "mug.toml", "base", 2, '"mug.toml"', "path of a problem file", "base ="
    ),
    Bad("no steps", GOOD[GOOD.index("[[step]]") :], "", "step", None, "missing", "[[step]]", "[[step]]"),
    Bad("steps that are no tables", GOOD[GOOD.index("[[step]]") :], "step = 3\n", "step", 4, "3", "[[step]]"),
    Bad("an unknown key of a step", 'set = { "jug', 'sett = { "jug', "step 1: sett", 6, '"sett"', "the key set", "set"),
    Bad("a step without a title", 'title = "A bag"\n', "", "step 2: title", 8, "missing", "a title"),
    Bad(
        "a step without a change",
        'set = { "jug.mass" = "4.0 kg" }',
        'idea = "x"',
        "step 1",
        4,
        "changes nothing",
        "set, add, remove, ask, sweep",
        "set =",
    ),
    Bad("a value it has already", '"4.0 kg"', '"3.0 kg"', "step 1: set", 6, "is already", "another value", "set ="),
    Bad(
        "a value that is the same otherwise written",
        '"4.0 kg"',
        '"3.00 kg"',
        "step 1",
        4,
        "changes nothing",
        "not the one",
        "set =",
    ),
    Bad("a name that is not there", "jug.mass", "jog.mass", "step 1: set", 6, '"jog"', '"jug"', "jug."),
    Bad("a key that is not known", "jug.mass", "jug.moss", "step 1: set", 6, "jug.moss", "the key mass", "jug.mass"),
    Bad(
        "a key at the top that is not known",
        '"jug.mass"',
        '"mass"',
        "step 1: set",
        6,
        '"mass"',
        "one of the keys",
        "jug.mass",
    ),
    Bad("a value of the wrong kind", '"4.0 kg"', '"4.0 N"', "step 1", 4, "load[1].mass", "mass"),
    Bad("a value that is no text", '"4.0 kg"', "4.0", "step 1", 4, "load[1].mass", "a mass"),
    Bad(
        "what is taken away is not there",
        'set = { "jug.mass" = "4.0 kg" }',
        'remove = ["mug"]',
        "step 1: remove",
        6,
        '"mug"',
        '"jug"',
        'remove = ["jug"]',
    ),
    Bad(
        "a key that is taken away is not there",
        'set = { "jug.mass" = "4.0 kg" }',
        'remove = ["jug.point"]',
        "step 1: remove",
        6,
        "jug.point",
        "mass, at",
    ),
    Bad(
        "a person who is not there",
        'set = { "jug.mass" = "4.0 kg" }',
        'remove = ["person"]',
        "step 1: remove",
        6,
        '"person"',
        "name of something",
    ),
    Bad(
        "nothing left that is asked",
        'set = { "jug.mass" = "4.0 kg" }',
        'remove = ["biceps"]',
        "step 1",
        4,
        "ask",
        "a question",
    ),
    Bad(
        "an unknown kind of addition",
        "step.add.load",
        "step.add.loads",
        "step 2: add.loads",
        10,
        '"loads"',
        "the key load",
    ),
    Bad("an addition without its place", 'at = "20 cm"\n', "", "step 2", 8, "load[2].at", "where the load acts"),
    Bad("a name a second time", 'name = "bag"', 'name = "jug"', "step 2", 8, "second time", "a name that nothing else"),
    Bad(
        "an unknown answer",
        'set = { "jug.mass" = "4.0 kg" }',
        'ask = ["bicep"]',
        "step 1",
        4,
        '"bicep"',
        "the name of an answer",
        "biceps",
    ),
    Bad(
        "an unsettled problem",
        '"jug.mass" = "4.0 kg"',
        '"jug.mass" = "?"',
        "step 1",
        4,
        "unknowns that the balances cannot settle",
        "no more unknowns",
    ),
    Bad(
        "a later step to compare with",
        'title = "A bag"',
        'title = "A bag"\ncompare = 2',
        "step 2: compare",
        10,
        "2",
        "from 0 (the start) to 1",
        "compare = 1",
    ),
    Bad(
        "a step to begin from that is no number",
        'title = "A bag"',
        'title = "A bag"\nfrom = "first"',
        "step 2: from",
        10,
        '"first"',
        "number of an earlier step",
    ),
    Bad(
        "an answer that is not asked",
        'title = "A bag"',
        'title = "A bag"\nfollow = "jug"',
        "step 2: follow",
        10,
        '"jug"',
        "one of the answers: biceps",
    ),
    Bad(
        "an unknown key of a sweep",
        'to = "90 deg"',
        'until = "90 deg"',
        "step 3: sweep.until",
        21,
        '"until"',
        "one of the keys",
    ),
    Bad("a sweep without an end", 'to = "90 deg"\n', "", "step 3: sweep.to", 18, "missing", "the last angle"),
    Bad(
        "a direction in the sweep of another number",
        "hand.direction",
        "hand.mass",
        "step 3: sweep.direction",
        20,
        "direction in a sweep of forearm and hand.mass",
        "only in the sweep of an angle",
    ),
    Bad(
        "a sweep of what is no number",
        'of = "forearm and hand.direction"\ndirection = "? below right"\nto = "90 deg"\nstep = "30 deg"',
        'of = "jug.name"\nfrom = "1 cm"\nto = "2 cm"',
        "step 3: sweep.of",
        19,
        '"jug.name", which is no number of "jug"',
        "mass, weight, at",
        'of = "jug.mass"',
    ),
    Bad(
        "a sweep of what is sought",
        'of = "forearm and hand.direction"\ndirection = "? below right"\nto = "90 deg"\nstep = "30 deg"',
        'of = "biceps.force"\nfrom = "100 N"\nto = "200 N"',
        "step 3: sweep.of",
        19,
        '"biceps.force", which is sought',
        "a number that is given",
    ),
    Bad(
        "a sweep in two units",
        'of = "forearm and hand.direction"\ndirection = "? below right"\nto = "90 deg"\nstep = "30 deg"',
        'of = "jug.at"\nfrom = "10 cm"\nto = "0.4 m"',
        "step 3: sweep.to",
        21,
        "0.4 m",
        "the unit that from has, cm",
    ),
    Bad(
        "a sweep in a unit of another kind",
        'of = "forearm and hand.direction"\ndirection = "? below right"\nto = "90 deg"\nstep = "30 deg"',
        'of = "jug.at"\nfrom = "10 kg"\nto = "40 kg"',
        "step 3",
        15,
        "10 kg",
        "",
    ),
    Bad(
        "a sweep of what is not there",
        'of = "forearm and hand.',
        'of = "forearm.',
        "step 3: sweep.of",
        19,
        '"forearm"',
        '"forearm and hand"',
        "forearm and hand.direction",
    ),
    Bad(
        "a sweep that ends before it begins",
        '"90 deg"',
        '"0 deg"',
        "step 3: sweep.to",
        21,
        '"0 deg"',
        "above the first",
    ),
    Bad("a sweep of too many angles", '"30 deg"', '"0.1 deg"', "step 3: sweep.step", 22, "901 angles", "at most 181"),
    Bad("a sweep beyond a half turn", '"90 deg"', '"200 deg"', "step 3: sweep.to", 21, '"200 deg"', "0 to 180"),
    Bad(
        "a sweep whose direction has no angle",
        '"? below right"',
        '"below right"',
        "step 3: sweep.direction",
        20,
        "below right",
        'one "?"',
    ),
    Bad(
        "a sweep whose direction cannot be read",
        '"? below right"',
        '"? beneath right"',
        "step 3",
        15,
        "beneath",
        "a direction",
    ),
    Bad(
        "a sweep that balances nowhere",
        '"biceps.turns" = "counter-clockwise"',
        '"biceps.turns" = "counter-clockwise", "biceps.force" = "2 N"',
        "step 3",
        15,
        "ask",
        "question",
    ),
    Bad(
        "arms of what is not there",
        'step = "30 deg"\n',
        'step = "30 deg"\n[step.sweep.arms]\nbicep = [["0 deg", "2 cm"], ["90 deg", "4 cm"]]\n',
        "step 3: sweep.arms.bicep",
        24,
        '"bicep"',
        '"biceps"',
        "biceps =",
    ),
    Bad(
        "arms that do not reach",
        'step = "30 deg"\n',
        'step = "30 deg"\n[step.sweep.arms]\nbiceps = [["0 deg", "2 cm"], ["45 deg", "4 cm"]]\n',
        "step 3: sweep.arms.biceps",
        24,
        "60 deg",
        "every angle",
    ),
    Bad(
        "one arm",
        'step = "30 deg"\n',
        'step = "30 deg"\n[step.sweep.arms]\nbiceps = [["0 deg", "2 cm"]]\n',
        "step 3: sweep.arms.biceps",
        24,
        "a list of 1",
        "from 2 to",
    ),
    Bad(
        "arms that are no pairs",
        'step = "30 deg"\n',
        'step = "30 deg"\n[step.sweep.arms]\nbiceps = [["0 deg", 2], ["9 deg", 3]]\n',
        "step 3: sweep.arms.biceps",
        24,
        "a list of 2",
        "a pair",
    ),
    Bad(
        "arms in the wrong order",
        'step = "30 deg"\n',
        'step = "30 deg"\n[step.sweep.arms]\nbiceps = [["90 deg", "2 cm"], ["0 deg", "3 cm"]]\n',
        "step 3: sweep.arms.biceps",
        24,
        "0 deg behind 90 deg",
        "angles that grow",
    ),
    Bad(
        "an arm of nothing",
        'step = "30 deg"\n',
        'step = "30 deg"\n[step.sweep.arms]\nbiceps = [["0 deg", "0 cm"], ["90 deg", "3 cm"]]\n',
        "step 3: sweep.arms.biceps",
        24,
        "0 cm",
        "above zero",
    ),
    Bad(
        "a file of arms that is not there",
        'step = "30 deg"\n',
        'step = "30 deg"\n[step.sweep.arms]\nbiceps = "arms.csv"\n',
        "step 3: sweep.arms.biceps",
        24,
        "no such file",
        "CSV",
    ),
    Bad(
        "a file of arms that is no table",
        'step = "30 deg"\n',
        'step = "30 deg"\n[step.sweep.arms]\nbiceps = "jug.toml"\n',
        "step 3: sweep.arms.biceps",
        24,
        "does not end in .csv",
        "a CSV file",
    ),
]


def placed(folder: Path, old: str = "", new: str = "") -> Path:
    assert not old or GOOD.count(old) >= 1
    before, _, after = GOOD.rpartition(old) if old else (GOOD, "", "")
    (folder / "jug.toml").write_text(JUG, encoding="utf-8")
    path = folder / "series.toml"
    path.write_text(before + new + after, encoding="utf-8")
    return path


def run(*arguments: object) -> Result:
    return CliRunner().invoke(main, [str(each) for each in arguments])


def test_the_good_file_works(tmp_path: Path) -> None:
    assert [0, 1, 2, 3] == [each.step.number for each in work_series(placed(tmp_path)).steps]


@pytest.mark.parametrize("bad", BAD, ids=lambda bad: bad.case)
def test_a_spoiled_series_is_refused_with_all_there_is_to_say(bad: Bad, tmp_path: Path) -> None:
    path = placed(tmp_path, bad.old, bad.new)
    with pytest.raises(Fault) as caught:
        work_series(path)
    fault = caught.value
    assert (str(path), bad.key, bad.line) == (fault.file, fault.key, fault.line)
    assert (True, True, True, True) == (
        bad.found in fault.found,
        bad.expected in fault.expected,
        bad.example in fault.example,
        bool(fault.example),
    )


@pytest.mark.parametrize("bad", BAD[::4], ids=lambda bad: bad.case)
@pytest.mark.parametrize("form", [".pdf", ".html", ".md", ".json"])
def test_nothing_is_written_of_a_series_at_fault(bad: Bad, form: str, tmp_path: Path) -> None:
    path = placed(tmp_path, bad.old, bad.new)
    before = {each: each.read_bytes() for each in tmp_path.iterdir()}
    result = run("series", path, "-o", tmp_path / f"out{form}", "--csv", tmp_path / "out.csv")
    assert (2, "", before) == (
        result.exit_code,
        result.stdout,
        {each: each.read_bytes() for each in tmp_path.iterdir()},
    )
    assert bad.key in result.stderr and "Write, for example:" in result.stderr


def test_no_angle_that_balances_is_told_with_the_reason(tmp_path: Path) -> None:
    """A pull straight back along the bone has no moment at any slope."""
    path = placed(
        tmp_path, '"biceps.moment_arm" = "4.0 cm", "biceps.turns" = "counter-clockwise"', '"biceps.direction" = "back"'
    )
    with pytest.raises(Fault, match="no angle from 0 to 90 deg that balances: a line of pull of biceps") as caught:
        work_series(path)
    assert "step 3: sweep" == caught.value.key


def test_a_base_at_fault_is_told_as_that_file(tmp_path: Path) -> None:
    path = placed(tmp_path)
    (tmp_path / "jug.toml").write_text(JUG.replace('"33 cm"', '"33"'), encoding="utf-8")
    with pytest.raises(Fault) as caught:
        work_series(path)
    assert (str(tmp_path / "jug.toml"), "load[1].at") == (caught.value.file, caught.value.key)


def test_a_step_without_a_way_through_names_itself(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    from explain.series import api

    real = api.work

    def stuck(problem: object) -> object:
        if getattr(problem, "title", "") == "A bag":
            raise NoWay("No way through to F_B was found.", "F_B = 1 N")
        return real(problem)  # type: ignore[arg-type]

    monkeypatch.setattr(api, "work", stuck)
    result = run("series", placed(tmp_path), "-o", tmp_path / "out.pdf")
    assert (3, False) == (result.exit_code, (tmp_path / "out.pdf").exists())
    assert "Step 2: No way through to F_B was found." in result.stderr and "F_B = 1 N" in result.stderr


class TestCommandLine:
    @pytest.mark.parametrize(
        ("form", "begins"),
        [
            ("markdown", b"# A jug"),
            ("html", b"<!DOCTYPE html>"),
            ("pdf", b"%PDF-"),
            ("text", b"A jug, step by step\n==="),
            ("json", b'{"title": '),
        ],
    )
    def test_each_format_comes_out(self, form: str, begins: bytes, tmp_path: Path) -> None:
        result = run("series", placed(tmp_path), "--as", form)
        assert (0, True) == (result.exit_code, result.stdout_bytes.startswith(begins))

    def test_the_values_of_the_sweep_come_out_beside_the_pages(self, tmp_path: Path) -> None:
        result = run("series", placed(tmp_path), "-o", tmp_path / "out.md", "--csv", tmp_path / "out.csv")
        assert (0, ["angle (deg),biceps (N)", "0", "30", "60", "90"]) == (
            result.exit_code,
            [
                line if place == 0 else line.partition(",")[0]
                for place, line in enumerate((tmp_path / "out.csv").read_text("utf-8-sig").splitlines())
            ],
        )

    def test_values_of_no_sweep_are_refused(self, tmp_path: Path) -> None:
        path = placed(tmp_path, GOOD[GOOD.index('[[step]]\ntitle = "Through') :], "")
        result = run("series", path, "-o", tmp_path / "out.md", "--csv", tmp_path / "out.csv")
        assert (2, False, False) == (result.exit_code, (tmp_path / "out.md").exists(), (tmp_path / "out.csv").exists())

    def test_a_step_whose_check_fails_needs_a_person(self, tmp_path: Path) -> None:
        path = placed(tmp_path, 'set = { "jug.mass" = "4.0 kg" }', 'set = { "biceps.direction" = "down" }')
        assert 1 == run("series", path.with_name("series.toml"), "-o", tmp_path / "out.md").exit_code

    @pytest.mark.parametrize(
        "options",
        [("-o", "series.toml"), ("-o", "out.md", "--csv", "series.toml"), ("-o", "out.csv", "--csv", "out.csv")],
    )
    def test_what_is_read_is_never_written_over(self, options: tuple[str, ...], tmp_path: Path) -> None:
        path = placed(tmp_path)
        result = run("series", path, *(option if option.startswith("-") else tmp_path / option for option in options))
        assert (2, JUG, True) == (
            result.exit_code,
            (tmp_path / "jug.toml").read_text("utf-8"),
            path.read_text("utf-8") == GOOD,
        )

    def test_a_proposal_is_a_series_that_works(self, tmp_path: Path) -> None:
        placed(tmp_path)
        result = run("series", "--suggest", tmp_path / "jug.toml", "-o", tmp_path / "proposed.toml")
        assert (0, 0) == (
            result.exit_code,
            run("series", tmp_path / "proposed.toml", "-o", tmp_path / "out.html").exit_code,
        )
        assert result.stdout == ""

    def test_a_proposal_on_standard_output_names_its_problem(self, tmp_path: Path) -> None:
        placed(tmp_path)
        assert 'base = "jug.toml"' in run("series", "--suggest", tmp_path / "jug.toml").stdout

    def test_no_proposal_for_what_no_balance_gives(self) -> None:
        result = run("series", "--suggest", Path(__file__).parents[1] / "samples" / "03-tiller.toml")
        assert (2, "") == (result.exit_code, result.stdout) and "nothing that a balance has to give" in result.stderr

    def test_the_class_s_course_goes_before(self, tmp_path: Path) -> None:
        (tmp_path / "course.toml").write_text('word = "torque"\n', encoding="utf-8")
        assert "torque" in run("series", placed(tmp_path), "--course", tmp_path / "course.toml").stdout

    def test_the_command_is_listed_without_loading_what_it_needs(self) -> None:
        code = (
            "import sys, explain.cli.series; print(sorted(set(sys.modules) & {'sympy', 'weasyprint', 'pint', "
            "'explain.series.api', 'explain.problem.reader'}))"
        )
        assert (
            b"[]"
            == subprocess.run([sys.executable, "-c", code], capture_output=True, check=True, timeout=60).stdout.strip()
        )


# ---------------------------------------------------------------------- text from people
def hostile(folder: Path, said: str) -> Path:
    top = {
        "title": f"T {said}",
        "intro": said,
        "base": "jug.toml",
        "step": [
            {"title": f"S {said}", "idea": said, "statement": said, "set": {"jug.mass": "4.0 kg"}},
            {
                "title": f"U {said}",
                "idea": said,
                "set": {"biceps.moment_arm": "4.0 cm", "biceps.turns": "counter-clockwise"},
                "sweep": {
                    "of": "forearm and hand.direction",
                    "direction": "? below right",
                    "to": "60 deg",
                    "step": "30 deg",
                },
            },
        ],
    }
    (folder / "jug.toml").write_text(JUG, encoding="utf-8")
    path = folder / "series.toml"
    path.write_text(written(top), encoding="utf-8", errors="replace")
    return path


@pytest.mark.parametrize("said", TEXTS[::3], ids=[str(place) for place in range(0, len(TEXTS), 3)])
def test_what_people_type_stays_text_in_every_format(said: str, tmp_path: Path) -> None:
    worked = work_series(hostile(tmp_path, said))
    page = reader.fromstring(worked.html())
    assert {str(each.tag) for each in page.iter()} <= TAGS | {"nav", "a"}
    assert [] == [each for each in page.iter("a") if not each.attrib["href"].startswith("#page-")]
    assert [] == [
        name
        for each in page.iter()
        for name in each.attrib
        if name.startswith("on") or name in ("src", "srcdoc", "xlink:href")
    ]
    tokens = [
        inner
        for token in MarkdownIt("gfm-like", {"linkify": False}).parse(worked.markdown())
        for inner in (token, *(token.children or ()))
    ]
    assert [] == [
        token.content
        for token in tokens
        if token.type.startswith(("html", "link", "image")) and token.content not in OURS
    ]
    assert not STEERING.search(worked.text())
    assert 0 == worked.json().count("\n")


@pytest.mark.parametrize("said", TEXTS[::20], ids=[str(place) for place in range(0, len(TEXTS), 20)])
def test_what_people_type_makes_a_pdf(said: str, tmp_path: Path) -> None:
    assert work_series(hostile(tmp_path, said)).pdf().startswith(b"%PDF-")


def test_a_name_is_no_formula_of_a_spreadsheet(tmp_path: Path) -> None:
    name = "=HYPERLINK(1)"
    path = placed(tmp_path)
    (tmp_path / "jug.toml").write_text(JUG.replace('name = "biceps"', f'name = "{name}"'), encoding="utf-8")
    path.write_text(GOOD.replace("biceps.", f"{name}."), encoding="utf-8")
    assert f"'{name} (N)" in work_series(path).csv().decode("utf-8-sig").splitlines()[0]


def test_paths_are_relative_to_the_file(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    placed(tmp_path)
    (tmp_path / "elsewhere").mkdir()
    monkeypatch.chdir(tmp_path / "elsewhere")
    assert 0 == run("series", os.path.join("..", "series.toml"), "-o", "out.md").exit_code
