"""What a class's variants are, file by file and word by word, and each reason for which a set of numbers is refused.

The draws are fixed by seed and name: a student keeps the numbers, whatever version made the sheet.
"""

from __future__ import annotations

import json
import re
from pathlib import Path
from textwrap import wrap

import pytest
from varying import BARROW, CREEL, JUG, contents, made, problem, rows

from explain.errors import Fault
from explain.marking.slips.account import Account
from explain.problem.reader import tables_of
from explain.vary.class_list import Student, enrolled, namesakes, numbered, read_roll, stem
from explain.vary.handouts import Handed
from explain.vary.journal import Journal
from explain.vary.library import vary
from explain.vary.lookalike_answers import (
    Mistaken,
    Sought,
    answer_name,
    apart,
    are_alike,
    imitations,
    is_another_part,
    right_by_chance,
    sought,
)
from explain.vary.ranges import read_ranges
from explain.vary.reuse_account import Swift
from explain.vary.settle_only import accounted, settled
from explain.vary.shuffle import drawn, shuffled, tries
from explain.vary.source import text_of, whole, with_values

TWO = enrolled(("Ada Quill", "Birk Tallow"))
BARE_CREEL = re.sub(r'statement = """.*?"""\n', "", CREEL, flags=re.DOTALL).partition("[vary]")[0]
BARE_JUG, BARE_BARROW = (text.partition("[vary]")[0] for text in (JUG, BARROW))


def folded(data: bytes) -> str:
    """Each long line over several."""
    lines = data.decode("utf-8-sig").splitlines()
    return "\n".join(part for line in lines for part in wrap(line, 110, break_on_hyphens=False)) + "\n"


KEY_TABLE = """\
student,file,jug.mass,jug.at,forearm and hand.mass,elbow flexors.at,elbow flexors in N,reaction in N,reaction
direction in deg,reaction.right in N,reaction.up in N
Ada Quill,variants/ada-quill.toml,2.3 kg,31.0 cm,1.9 kg,3.2 cm,311.7740625,270.5720625,270.0,0.0,-270.5720625
Birk Tallow,variants/birk-tallow.toml,3.4 kg,33.5 cm,2.0 kg,4.1
cm,349.092439024,296.118439024,270.0,0.0,-296.118439024
"""
KEY_PAGE = r"""
# A jug of cider: key
For the teacher. 2 sets of numbers, no two alike, drawn by seed 3 and each student's name or number from
jug.mass (1.2 kg to 6.0 kg, 49 values); jug.at (28.0 cm to 34.0 cm, 13 values); forearm and hand.mass (1.3 kg
to 2.2 kg, 10 values); elbow flexors.at (2.6 cm to 5.0 cm, 25 values).
Every set is as hard as the problem as written: the same balances, terms, senses and functions. Muscles pull,
and no check warns of anything that it does not warn of there. No slip of the catalogue that changes an answer
leaves it within 2% of the right one, each answer looked at by itself, and of the very common slips no two
give answers within 1% of each other, but for those that do so in the problem as written: unequal net (for
elbow flexors and reaction), sign of a term and term moved sign kept. Only lines tell these.
**Answers**
| Student | elbow flexors | reaction | reaction.right | reaction.up |
| :-- | :-- | :-- | :-- | :-- |
| Ada Quill | 312 N | 271 N, straight down | 0 N | \-271 N |
| Birk Tallow | 349 N | 296 N, straight down | 0 N | \-296 N |
**Numbers**
| Student | $`m_{\mathrm{J}}`$ | $`d_{\mathrm{J}}`$ | $`m_{\mathrm{F}}`$ | $`d_{\mathrm{E}}`$ |
| :-- | --: | --: | --: | --: |
| Ada Quill | 2.3 kg | 31.0 cm | 1.9 kg | 3.2 cm |
| Birk Tallow | 3.4 kg | 33.5 cm | 2.0 kg | 4.1 cm |
*A teaching model: plane, rigid and at rest. Real joints differ. Not for treatment, training load, lifting or
equipment decisions; for those, local rules and licensed practice hold.*
"""[1:]
SHEET = r"""
# A jug of cider
**Name** Ada Quill
A jug of 2.3 kg rests 31.0 cm from the elbow. The forearm and hand (36 cm long, 1.9 kg, centre of mass 16 cm
from the elbow) are horizontal and at rest. The elbow flexors meet them 3.2 cm from the elbow and pull
straight up. How hard do the elbow flexors pull, and how hard and which way does the humerus push on the
forearm and hand?
**Given**
| Letter | Meaning | Value |
| :-- | :-- | --: |
| $`m_{\mathrm{F}}`$ | Mass of the forearm and hand | $`1.9\,\mathrm{kg}`$ |
| $`d_{\mathrm{F}}`$ | Elbow to the centre of mass of the forearm and hand | $`16\,\mathrm{cm}`$ |
| $`m_{\mathrm{J}}`$ | Mass of the jug | $`2.3\,\mathrm{kg}`$ |
| $`d_{\mathrm{J}}`$ | Elbow to jug | $`31.0\,\mathrm{cm}`$ |
| $`d_{\mathrm{E}}`$ | Elbow to elbow flexors | $`3.2\,\mathrm{cm}`$ |
| $`g`$ | Acceleration of free fall | $`9.81\,\mathrm{m/s^{2}}`$ |
**Find** $`F_{\mathrm{E}}`$, the pull of the elbow flexors; $`J`$, the force of the humerus on the forearm and
hand.
**Your free-body diagram**
- [ ] the forearm and hand, cut free at the elbow
- [ ] the pull of the elbow flexors
- [ ] the weight of the forearm and hand, at the centre of mass
- [ ] the weight of the jug
- [ ] the force of the humerus on it, at the elbow
- [ ] each distance that you use, both its ends marked
- [ ] which way counts as positive for moments
**Your working**
*A teaching model: plane, rigid and at rest. Real joints differ. Not for treatment, training load, lifting or
equipment decisions; for those, local rules and licensed practice hold.*
"""[1:]
VARIANT = """\
# Student: Ada Quill
# Seed 3. Mark with: explain mark ada-quill.toml WORKING
title = "A jug of cider"
ask = ["elbow flexors", "reaction"]
[pivot]
name = "elbow"
bone = "humerus"
[[segment]]
name = "forearm and hand"
length = "36 cm"
mass = "1.9 kg"
com = "16 cm"
[[load]]
name = "jug"
mass = "2.3 kg"
at = "31.0 cm"
[[muscle]]
name = "elbow flexors"
at = "3.2 cm"
direction = "up"
"""
RECORD = """\
{"entry": [["2.3 kg", "31.0 cm", "1.9 kg", "3.2 cm"], ["311.7740625", "270.5720625", "270.0", "0.0",
"-270.5720625"], ["312 N", "271 N, straight down", "0 N", "-271 N"]], "file": "ada-quill", "name": "Ada
Quill", "student": "ada quill"}
{"entry": [["3.4 kg", "33.5 cm", "2.0 kg", "4.1 cm"], ["349.092439024", "296.118439024", "270.0", "0.0",
"-296.118439024"], ["349 N", "296 N, straight down", "0 N", "-296 N"]], "file": "birk-tallow", "name": "Birk
Tallow", "student": "birk tallow"}
"""
OBLIQUE_TABLE = """\
student,id,file,creel.mass,creel.at,forearm and hand.mass,forearm and
hand.com,biceps.at,biceps.direction,biceps in N,reaction in N,reaction direction in deg,reaction.right in
N,reaction.up in N
Ada Quill (a@quay.example),a@quay.example,variants/ada-quill-a-quay-example.toml,3.9 kg,31.5 cm,1.6 kg,17
cm,3.8 cm,77 deg from back toward
up,397.555235995,345.196539889,285.0149554657002,89.4304694971,-333.410921053
Ada Quill (b@quay.example),b@quay.example,variants/ada-quill-b-quay-example.toml,3.0 kg,32.0 cm,1.9 kg,15
cm,3.9 cm,63 deg from back toward
up,351.473727873,309.414473481,301.0444044438896,159.565733362,-265.096384615
"""
OBLIQUE_KEY = """\
For the teacher. 2 sets of numbers, no two alike, drawn by seed 3 and each
student's name or number from creel.mass (3.0 kg to 8.0 kg, 51 values); creel.at
(30.0 cm to 36.0 cm, 13 values); forearm and hand.mass (1.3 kg to 2.1 kg, 9
values); forearm and hand.com (15 cm to 17 cm, 5 values); biceps.at (3.6 cm to
4.8 cm, 13 values); biceps.direction (62° to 80°, 19 values).
Every set is as hard as the problem as written: the same balances, terms, senses
and functions. Muscles pull, and no check warns of anything that it does not
warn of there. No slip of the catalogue that changes an answer leaves it within
2% of the right one, each answer looked at by itself, and of the very common
slips no two give answers within 1% of each other, but for those that do so in
the problem as written: angle applied to level distance (for biceps and
reaction), com at midpoint (for biceps and reaction), sign of a term (for
reaction), term moved sign kept (for reaction), unequal net (for biceps and
reaction), angle wrong reference and sine cosine swap muscle, divide one term
and mixed length units, divide one term and wrong pivot distance, sign of a term
and term moved sign kept. Only lines tell these.
Answers
Student               biceps  reaction               reaction.right  reaction.up
--------------------  ------  ---------------------  --------------  -----------
Ada Quill             398 N   345 N, 75.0° below     89.4 N          -333 N
(a@quay.example)              the horizontal, to
                              the right
Ada Quill             351 N   309 N, 59.0° below     160 N           -265 N
(b@quay.example)              the horizontal, to
                              the right
Numbers
Student                    m_C      d_C     m_F    d_F     d_B  biceps.direction
----------------------  ------  -------  ------  -----  ------  ----------------
Ada Quill               3.9 kg  31.5 cm  1.6 kg  17 cm  3.8 cm               77°
(a@quay.example)
Ada Quill               3.0 kg  32.0 cm  1.9 kg  15 cm  3.9 cm               63°
(b@quay.example)
! A teaching model: plane, rigid and at rest. Real joints differ. Not for
  treatment, training load, lifting or equipment decisions; for those, local
  rules and licensed practice hold.
"""
OBLIQUE_VARIANT = '''\
# Student: Ada Quill (b@quay.example)
# Seed 3. Mark with: explain mark ada-quill-b-quay-example.toml WORKING
title = "A creel of crabs"
statement = """
The forearm and hand, **1.9 kg** with the centre of mass **15 cm** from the elbow,
are level. A creel of **3.0 kg** hangs **32.0 cm** from the elbow. The biceps meets the forearm
**3.9 cm** from it, at **63°** to the bone.
"""
ask = ["biceps", "reaction"]
[pivot]
name = "elbow"
bone = "humerus"
[[segment]]
name = "forearm and hand"
length = "37 cm"
mass = "1.9 kg"
com = "15 cm"
[[load]]
name = "creel"
mass = "3.0 kg"
at = "32.0 cm"
[[muscle]]
name = "biceps"
at = "3.9 cm"
direction = "63 deg from back toward up"
'''
DRAWS = [(15, 6, 6), (2, 11, 5), (36, 6, 8), (28, 8, 6), (0, 12, 6), (7, 6, 6), (22, 5, 0), (23, 0, 6), (36, 9, 6)]
SHUFFLED = [7, 1, 6, 8, 3, 4, 9, 0, 5, 2]
TICKETS = [48336029162199751038004919487, 52323924144976534367814659727, 0, 1]


# ---------------------------------------------------------------------- whole files
def test_a_class_of_two_file_by_file(tmp_path: Path) -> None:
    handed = made(problem(tmp_path, JUG), tmp_path / "out", TWO, seed=3)
    found = contents(tmp_path / "out")
    assert Handed(2, 0, ()) == handed and repr(handed) == "<Handed: 2 made, 0 there already, 0 in trouble>"
    assert sorted(found) == [
        "key.csv",
        "key.md",
        "run.jsonl",
        "sheets/ada-quill.md",
        "sheets/birk-tallow.md",
        "variants/ada-quill.toml",
        "variants/birk-tallow.toml",
    ]
    assert KEY_TABLE == folded(found["key.csv"])
    assert KEY_PAGE == folded(found["key.md"])
    assert SHEET == folded(found["sheets/ada-quill.md"])
    assert VARIANT == folded(found["variants/ada-quill.toml"])
    first, *others = found["run.jsonl"].decode().splitlines()
    told = json.loads(first)
    assert len(told.pop("run")) == 64
    assert told == {"form": "markdown", "pages": False, "problem": "problem.toml", "seed": 3}
    assert RECORD == folded("\n".join(others).encode())


def test_a_class_with_a_statement_angles_ids_and_walkthroughs(tmp_path: Path) -> None:
    students = enrolled(("Ada Quill", "Ada Quill"), ("a@quay.example", "b@quay.example"))
    made(problem(tmp_path, CREEL), tmp_path / "out", students, seed=3, pages=True, form="text")
    found = contents(tmp_path / "out")
    assert [name for name in sorted(found) if "b-quay" in name] == [
        "keys/ada-quill-b-quay-example.txt",
        "sheets/ada-quill-b-quay-example.txt",
        "variants/ada-quill-b-quay-example.toml",
    ]
    assert OBLIQUE_TABLE == folded(found["key.csv"])
    assert OBLIQUE_KEY in folded(found["key.txt"])
    assert OBLIQUE_VARIANT == folded(found["variants/ada-quill-b-quay-example.toml"])
    assert "–       Direction of the biceps" in folded(found["sheets/ada-quill-b-quay-example.txt"])


def test_a_distance_on_the_other_side_keeps_its_sign_in_the_key(tmp_path: Path) -> None:
    text = BARE_JUG + '\n[[load]]\nname = "strap"\nmass = "0.5 kg"\npoint = ["-6 cm", "0 cm"]\n'
    text += '[vary]\n"strap.point" = [["-6 cm", "0 cm"], ["-5 cm", "0 cm"], ["-7 cm", "0 cm"]]\n'
    made(problem(tmp_path, text), tmp_path / "out", 1)
    assert rows(tmp_path / "out")[0]["strap.point"] in ("(−6 cm, 0 cm)", "(−5 cm, 0 cm)", "(−7 cm, 0 cm)")
    said = (tmp_path / "out" / "key.md").read_text("utf-8")
    assert "strap.point ((−6 cm, 0 cm) to (−7 cm, 0 cm), 3 values)" in said
    with pytest.raises(Fault, match=re.escape("jug.at (−34 cm), of which")):
        made(problem(tmp_path, BARE_JUG + '[vary]\njug.at = ["-34 cm"]\n'), tmp_path / "none", 1)


# ---------------------------------------------------------------------- refusals
@pytest.mark.parametrize(
    ("text", "name", "value", "why"),
    [
        (BARE_BARROW, "sand.at", "24 in", "the barrow and the sand would have the same moment arm"),
        (BARE_JUG, "jug.at", "-34 cm", "the elbow flexors would have to push"),
        (BARE_CREEL, "creel.mass", "9.8 kg", "the mass of the creel would have the number that g has"),
        (
            BARE_CREEL,
            "biceps.direction",
            "108 deg from back toward up",
            "the sense of the level part of the joint force would not be what it is in the problem as written",
        ),
        (
            BARE_CREEL,
            "creel.at",
            "-3 cm",
            "the way that the creel turns would not be what it is in the problem as written",
        ),
        (
            BARE_CREEL,
            "biceps.at",
            "9.0 cm",
            "a check would warn: A moment arm of … cm is longer than the … to … cm found for the biceps brachii at "
            "the elbow in adults",
        ),
        (
            BARE_CREEL,
            "creel.at",
            "40 cm",
            "a check would warn: The creel acts … cm along the forearm and hand, which are only … cm long. The "
            "working is right for these numbers; check that they are meant",
        ),
        (BARE_CREEL, "creel.at", "30 kg", 'the problem would have "30 kg": "kg" is a unit of mass (load[1].at)'),
        (BARE_BARROW, "sand.weight", "148 lb", "the answer for hands would have the number of a datum"),
        (
            BARE_JUG,
            "jug.mass",
            "0.1 kg",
            "the slip wrong-pivot-distance would give the right answer within 2% for elbow flexors",
        ),
        (
            BARE_CREEL,
            "creel.mass",
            "1.5 kg",
            "the slips mixed-length-units and wrong-pivot-distance would give the same answer within 1%",
        ),
        (
            BARE_CREEL,
            "biceps.direction",
            "71 deg from back toward up",
            "the slips calculator-order and wrong-pivot-distance would give the same answer within 1%",
        ),
    ],
)
def test_a_set_is_refused_for_its_plainest_reason(text: str, name: str, value: str, why: str, tmp_path: Path) -> None:
    with pytest.raises(Fault) as caught:
        made(problem(tmp_path, f'{text}[vary]\n"{name}" = ["{value}"]\n'), tmp_path / "out", 1)
    shown = value.partition(" from")[0].replace(" deg", "°").replace("-", "−")
    assert caught.value.found == f"{name} ({shown}), of which no value can be used, with all else as written: {why}"
    assert (f'vary."{name}"', "values that a variant can have") == (caught.value.key, caught.value.expected)
    assert f'"{name}" = {{ from = ..., to = ..., step = ... }}' == caught.value.example
    lines = (tmp_path / "problem.toml").read_text("utf-8").splitlines()
    assert lines[(caught.value.line or 0) - 1].startswith(f'"{name}" = ')
    assert not (tmp_path / "out").exists()


# ---------------------------------------------------------------------- runs
def run(tmp_path: Path, students: tuple[Student, ...], **more: object) -> Handed:
    return made(tmp_path / "problem.toml", tmp_path / "out", students, **more)


def test_a_run_is_taken_up_where_it_stopped(tmp_path: Path) -> None:
    problem(tmp_path, JUG)
    assert (2, 0) == run(tmp_path, TWO)[:2] and (0, 2) == run(tmp_path, TWO)[:2]
    before = contents(tmp_path / "out")
    (tmp_path / "out" / "sheets" / "ada-quill.md").unlink()
    assert (1, 1) == run(tmp_path, TWO)[:2] and before == contents(tmp_path / "out")
    record = tmp_path / "out" / "run.jsonl"
    record.write_bytes(record.read_bytes()[:-5])
    assert (1, 1) == run(tmp_path, TWO)[:2] and before == contents(tmp_path / "out")


def test_who_is_no_longer_in_the_list_is_named_and_keeps_the_sheet(tmp_path: Path) -> None:
    problem(tmp_path, JUG)
    run(tmp_path, TWO)
    handed = run(tmp_path, TWO[:1])
    assert (0, 1, (), ("Birk Tallow",)) == handed and (tmp_path / "out" / "sheets" / "birk-tallow.md").exists()
    assert ["Ada Quill"] == [row["student"] for row in rows(tmp_path / "out")]
    assert (0, 2, (), ()) == run(tmp_path, TWO)


def test_a_student_of_another_name_gets_new_files_and_the_old_ones_go(tmp_path: Path) -> None:
    problem(tmp_path, JUG)
    run(tmp_path, enrolled(("Ada Quill", "Birk Tallow"), ("1", "2")))
    old = {row["student"]: row["jug.mass"] for row in rows(tmp_path / "out")}
    assert (1, 1, (), ()) == run(tmp_path, enrolled(("Ada Wren", "Birk Tallow"), ("1", "2")))
    assert old["Ada Quill"] == rows(tmp_path / "out")[0]["jug.mass"]
    assert ["ada-wren.md", "birk-tallow.md"] == sorted(each.name for each in (tmp_path / "out" / "sheets").iterdir())
    assert ["id", "1", "2"] == ["id", *(row["id"] for row in rows(tmp_path / "out"))]


def test_another_run_is_given_up_only_where_that_is_asked(tmp_path: Path) -> None:
    problem(tmp_path, JUG)
    run(tmp_path, TWO, pages=True, form="text")
    (tmp_path / "out" / "sheets" / "own.txt").write_text("mine")
    with pytest.raises(Fault) as caught:
        run(tmp_path, TWO, seed=8)
    assert caught.value.found == "variants of another run (seed 7, problem.toml)"
    assert caught.value.advice == "To give up what is there, add --replace."
    assert (2, 0) == run(tmp_path, TWO[:1] + enrolled(("Cy",)), seed=8, replace=True)[:2]
    assert sorted(contents(tmp_path / "out")) == [
        "key.csv",
        "key.md",
        "run.jsonl",
        "sheets/ada-quill.md",
        "sheets/cy.md",
        "sheets/own.txt",
        "variants/ada-quill.toml",
        "variants/cy.toml",
    ]


@pytest.mark.parametrize("name", ["sheets", "variants", "keys", "key.csv"])
def test_a_folder_with_something_else_in_it_is_refused(name: str, tmp_path: Path) -> None:
    (tmp_path / "out" / name).mkdir(parents=True)
    problem(tmp_path, JUG)
    with pytest.raises(Fault) as caught:
        run(tmp_path, TWO)
    assert caught.value.found == f"a folder that has {name} in it, and not from this command"
    assert (caught.value.expected, caught.value.example) == ("an empty folder, or a new one", "-o class-5b-seed-8")


def test_the_library_takes_names_a_count_or_a_list(tmp_path: Path) -> None:
    file = problem(tmp_path, JUG)
    (tmp_path / "class.csv").write_text("name,mail\nAda Quill,a\nAda Quill,b\nBirk Tallow,c\n")

    def names(**wanted: object) -> list[str]:
        folder = tmp_path / f"out{len(list(tmp_path.iterdir()))}"
        vary(file, folder, jobs=1, **wanted)  # type: ignore[arg-type]
        return [row["student"] for row in rows(folder)]

    assert ["Student 1", "Student 2"] == names(count=2)
    assert ["Cy", "Di"] == names(names=["Cy", "Di"])
    assert ["Cy"] == names(names=["Cy", "Di"], count=1)
    assert ["Ada Quill (a)", "Ada Quill (b)"] == names(names=tmp_path / "class.csv", id="mail", count=2)
    with pytest.raises(Fault, match="neither names nor a count"):
        names()


def test_a_record_is_read_but_for_lines_that_are_none(tmp_path: Path) -> None:
    journal = Journal(tmp_path, {"run": "x"})
    assert journal.before() is None and {} == journal.done()
    journal.begin([{"student": "a", "n": 1}])
    journal.add([{"student": 2}, {"student": None}, {"other": 1}])
    with journal.path.open("ab") as file:
        file.write(b'[1]\nnonsense\n{"student": "b"}\n{"student": "cut"')
    assert {"run": "x"} == journal.before()
    assert {"a": {"student": "a", "n": 1}, 2: {"student": 2}, "b": {"student": "b"}} == journal.done()


# ---------------------------------------------------------------------- draws
def test_draws_are_what_they_have_always_been() -> None:
    """A sheet that is in a student's hands stays right, whichever version makes the key again."""
    assert DRAWS == [drawn(7, ticket, attempt, (51, 13, 9)) for ticket in (0, 1, 10**20) for attempt in (0, 1, 255)]
    assert SHUFFLED == [shuffled(3, index, 10) for index in range(10)]
    assert TICKETS == [each.ticket(7) for each in (*TWO, *numbered(2))]
    assert (range(6), range(256), range(256)) == (tries((2, 3)), tries((16, 16)), tries((17, 16)))


# ---------------------------------------------------------------------- students
def test_numbered_students_have_names_alike_in_length() -> None:
    assert [(0, "Student 1", "student-001", "", ""), (1, "Student 2", "student-002", "", "")] == list(numbered(2))
    assert "student-00001" == numbered(10_000)[0].file
    assert [0, "ada quill"] == [numbered(1)[0].key, TWO[0].key]


@pytest.mark.parametrize(
    ("name", "file"),
    [
        ("Łukasz Øß", "lukasz-oss"),
        ("LŁOØ", "lloo"),
        ("O'Dell, Jr.", "odell-jr"),
        ("-- x --", "x"),
        ("com1", "student-com1"),
        ("com12", "com12"),
        ("a" * 59 + "-b", "a" * 59),
        ("a" * 61, "a" * 60),
        ("Zoë", "zoe"),
        ("lpt9", "student-lpt9"),
        ("李雷", "student-e9f408"),
    ],
)
def test_a_name_makes_the_name_of_a_file(name: str, file: str) -> None:
    assert file == stem(name)


def test_namesakes_are_those_told_apart_by_a_number() -> None:
    found = enrolled(("Ada", "ada", "Bo"))
    assert [("Ada (1)", "ada"), ("ada (2)", "ada\x1f2"), ("Bo", "bo")] == [(each.name, each.own) for each in found]
    assert (("Ada (1)", "ada (2)"), ()) == (namesakes(found), namesakes(enrolled(("Ada", "ada"), ("1", "2"))))
    alike = enrolled(("Zoe L", "Zoë L", "Bo"))
    assert ["zoe-l-", "zoe-l-"] == [each.file[:6] for each in alike[:2]] and alike[0].file != alike[1].file
    assert ("bo", 12) == (alike[2].file, len(alike[0].file))


@pytest.mark.parametrize(
    ("content", "names"),
    [
        ("First name,Surname\nAda,Quill\n,Tallow\nCy,\n,\n", ["Ada Quill", "Tallow", "Cy"]),
        ("surname,room\nQuill,5\n", ["Quill"]),
        ("forename\nAda\n", ["Ada"]),
        ("Names\nAda\n", ["Ada"]),
        ("Ada\nBo\n", ["Ada", "Bo"]),
        ("student,name\nx,Ada\n", ["Ada"]),
        ("room,name\n5\n6,Ada\n", ["Ada"]),
        ("name\nA\u0007da\n", ["A da"]),
        ("name\n" + "x" * 120 + "\n", ["x" * 120]),
    ],
)
def test_names_stand_in_the_usual_columns(content: str, names: list[str], tmp_path: Path) -> None:
    (tmp_path / "class.csv").write_text(content, "utf-8")
    assert names == [each.name for each in read_roll(tmp_path / "class.csv")]


def test_a_column_of_ids_tells_rows_apart(tmp_path: Path) -> None:
    (tmp_path / "class.csv").write_text("mail,who\na,Ada\nb,Ada\nA,ada\n", "utf-8")
    found = read_roll(tmp_path / "class.csv", "WHO", "Mail")
    assert [("Ada (a)", "a", "a"), ("Ada (b)", "b", "b")] == [(each.name, each.own, each.id) for each in found]
    for content, said, line in (
        ("mail,who\na,Ada\nx\n,Bo\n", 'nothing in the column "mail" for "Bo"', 4),
        ("who,mail\nAda\n", 'nothing in the column "mail" for "Ada"', 2),
        ("mail,who\na,Ada\na,Bo\n", '"a" for "Ada" and for "Bo"', 3),
    ):
        (tmp_path / "class.csv").write_text(content, "utf-8")
        with pytest.raises(Fault) as caught:
            read_roll(tmp_path / "class.csv", "who", "mail")
        assert (said, line) == (caught.value.found, caught.value.line)


# ---------------------------------------------------------------------- ranges
def values(tmp_path: Path, text: str) -> dict[str, tuple[object, ...]]:
    return {each.name: each.values for each in read_ranges(tables_of(problem(tmp_path, text)))}


@pytest.mark.parametrize(
    ("text", "entry", "found"),
    [
        (BARE_JUG, 'jug.mass = { from = "1 kg", to = "2 kg", step = "0.5 kg" }', ("1.0 kg", "1.5 kg", "2.0 kg")),
        (BARE_JUG, 'jug.mass = { from = "1.00 kg", to = "1.3 kg", step = "0.2 kg" }', ("1.00 kg", "1.20 kg")),
        (BARE_JUG, 'jug.mass = { from = "2 kg", to = "2 kg", step = "1 kg" }', ("2 kg",)),
        (BARE_JUG, '"jug.mass" = ["2 kg", "3 kg", "2 kg"]', ("2 kg", "3 kg")),
        (BARE_JUG, '" jug . mass " = ["2 kg"]', ("2 kg",)),
        (
            BARE_CREEL,
            'biceps.direction = { from = "70 degrees", to = "72 degrees", step = "2 degrees" }',
            ("70 deg from back toward up", "72 deg from back toward up"),
        ),
        (BARE_BARROW, "hands.count = [1, 2]", (1, 2)),
        (BARE_JUG, '"pivot.name" = []', None),
        (BARE_JUG, 'jug.mass = ["2.345 kg"]', None),
        (BARE_JUG, 'jug.mass = ["0.0234 kg", "10.0 kg"]', ("0.0234 kg", "10.0 kg")),
        (BARE_JUG, 'jug.at = { from = "0 cm", to = "9999 cm", step = "1 cm" }', None),
        (BARE_JUG.replace("31 cm", "31.25 cm"), 'jug.at = ["31.15 cm"]', ("31.15 cm",)),
    ],
)
def test_the_values_of_a_range(text: str, entry: str, found: tuple[object, ...] | None, tmp_path: Path) -> None:
    if found is None:
        with pytest.raises(Fault):
            values(tmp_path, f"{text}[vary]\n{entry}\n")
    else:
        assert (found,) == tuple(values(tmp_path, f"{text}[vary]\n{entry}\n").values())


def test_ten_thousand_values_are_the_most(tmp_path: Path) -> None:
    text = BARE_JUG.replace("2.6 kg", "2.6000 kg")
    step = '[vary]\njug.mass = {{ from = "1.0000 kg", to = "{} kg", step = "0.0001 kg" }}\n'
    assert 10_000 == len(values(tmp_path, text + step.format("1.9999"))["jug.mass"])
    with pytest.raises(Fault) as caught:
        values(tmp_path, text + step.format("2.0000"))
    assert ("10,001 values", 'step = "0.0100 kg"') == (caught.value.found, caught.value.example)


# ---------------------------------------------------------------------- answers that look alike
ASKED = Sought(("biceps.force", "jug.mass", "reaction"), (100.0, 5.0, 60.0), (100.0, 5.0, 100.0))


def slip(*answers: float, name: str = "a", common: int = 4) -> Mistaken:
    return Mistaken(name, common, answers)


def test_what_is_asked_is_measured_by_itself_and_a_joint_force_by_the_largest_force() -> None:
    true = {"biceps.force": -100.0, "jug.weight": 20.0, "reaction.right": 90.0, "reaction.up": 120.0, "reaction": 150.0}
    found = sought(("biceps.force", "gone", "reaction", "reaction.up"), true)
    assert (("biceps.force", "reaction", "reaction.up"), (-100.0, 150.0, 120.0), (100.0, 150.0, 150.0)) == found
    assert ((0.0,), (1.0,)) == sought(("jug.at",), {"jug.at": 0.0})[1:]
    assert (200.0,) == sought(("reaction",), {"reaction": 3.0, "jug.weight": -200.0}).scales


def test_an_answer_that_is_nearly_right_is_right_by_chance() -> None:
    assert ["biceps.force", "reaction"] == list(right_by_chance(slip(101.9, 5.0, 58.1), ASKED))
    assert [] == list(right_by_chance(slip(102.1, 5.2, 62.1), ASKED))
    assert 0.02 == pytest.approx(apart((102.0, 5.0), (100.0, 5.05), (100.0, 5.0)))
    assert 0.0 == apart((), (), ())


def test_two_slips_are_alike_where_all_their_answers_are() -> None:
    one = slip(200.0, 10.0, 0.0)
    assert are_alike(one, slip(201.9, 10.0, 0.009, name="b"), ASKED)
    assert not are_alike(one, slip(202.1, 10.0, 0.0, name="b"), ASKED)
    assert not are_alike(one, slip(200.0, 10.0, 0.011, name="b"), ASKED)
    assert not are_alike(one, slip(200.0, 10.0, 0.0), ASKED)


def test_a_wrong_answer_to_one_part_may_be_the_right_one_to_another_of_its_kind() -> None:
    assert is_another_part(slip(60.5, 5.0, 60.0), ASKED) and is_another_part(slip(-60.5, 5.0, 60.0), ASKED)
    assert not is_another_part(slip(60.7, 5.0, 60.0), ASKED)
    assert not is_another_part(slip(5.0, 5.0, 60.0), ASKED) and not is_another_part(slip(100.0, 5.0, 60.0), ASKED)
    parts = Sought(("biceps.force", "reaction.up"), (100.0, 60.0), (100.0, 100.0))
    assert not is_another_part(slip(60.0, 60.0), parts)
    nearly = Sought(("biceps.force", "other.force"), (100.0, 101.0), (100.0, 101.0))
    assert not is_another_part(slip(101.0, 101.0), nearly)
    angles = Sought(("*angle a", "*angle b", "c.at"), (10.0, 20.0, 30.0), (10.0, 20.0, 30.0))
    assert is_another_part(slip(20.0, 20.0, 30.0), angles) and not is_another_part(slip(30.0, 20.0, 30.0), angles)


def test_everything_that_slips_imitate() -> None:
    found = imitations(
        [
            slip(101.0, 9.0, 9.0),
            slip(200.0, 9.0, 9.0, name="z"),
            slip(200.5, 9.0, 9.0, name="b"),
            slip(60.0, 9.0, 9.0, name="c"),
            slip(60.0, 9.0, 60.5, name="seldom", common=3),
        ],
        ASKED,
    )
    assert {("a", "biceps.force"), ("seldom", "reaction")} == found.right
    assert ({"c"}, {("b", "z")}, {"a", "z", "b", "c"}) == (found.parts, found.alike, found.shown)
    assert ["biceps", "forearm.direction", "reaction", "jug.mass"] == [
        answer_name(key) for key in ("biceps.force", "*angle forearm", "reaction", "jug.mass")
    ]


# ---------------------------------------------------------------------- accounts taken over
def account_at(top: object, ranges: object, places: tuple[int, ...]) -> Account:
    return accounted(settled(with_values(dict(top.values), ranges, places), "problem.toml"))[0]  # type: ignore[attr-defined, arg-type]


@pytest.mark.parametrize(
    ("entry", "plain"),
    [
        ('jug.mass = ["2 kg", "3 kg"]', True),
        ('jug.at = ["20 cm", "30 cm"]', True),
        ('jug.at = ["-20 cm", "30 cm"]', False),
        ('jug.at = ["0 cm", "30 cm"]', False),
        ('"elbow flexors".direction = ["up", "80 deg from back toward up"]', False),
        ('jug.mass = ["2 kg", "3 cm"]', False),
    ],
)
def test_only_plain_data_are_taken_over(entry: str, plain: bool, tmp_path: Path) -> None:
    top = tables_of(problem(tmp_path, f"{BARE_JUG}[vary]\n{entry}\n"))
    ranges = read_ranges(top)
    swift = Swift(ranges)
    assert swift.account((0,)) is None
    first = account_at(top, ranges, (0,))
    swift.keep((0,), first)
    found = swift.account((1,))
    assert plain == (found is not None) and (found is None or found.data != first.data)
    assert swift.account((0,)) is not None
    assert len(swift.kept) == 1


def test_an_account_is_kept_for_each_set_of_what_is_not_plain(tmp_path: Path) -> None:
    text = f'{BARE_CREEL}[vary]\n"creel.mass" = ["5 kg", "6 kg"]\nbiceps.direction = ["70 deg from back toward up", '
    top = tables_of(problem(tmp_path, text + '"72 deg from back toward up"]\n'))
    ranges = read_ranges(top)
    swift = Swift(ranges)
    swift.keep((0, 0), account_at(top, ranges, (0, 0)))
    assert swift.account((1, 0)) is not None and swift.account((1, 1)) is None
    found = swift.account((1, 0))
    assert found is not None
    assert (6.0, ("6", "kg")) == (found.data["creel.mass"], found.written["creel.mass"])
    assert found.values()["biceps.force"] == pytest.approx(account_at(top, ranges, (1, 0)).values()["biceps.force"])


# ---------------------------------------------------------------------- files that travel
def test_a_class_goes_into_the_problem_and_accepted_lines_do_not(tmp_path: Path) -> None:
    (tmp_path / "class.toml").write_text('word = "torque"\ng = "10 m/s^2"\n')
    text = BARE_JUG.replace("ask =", 'course = {{ from = "class.toml", g = "{}" }}\nask ='.format("9.8 m/s^2"))
    top = tables_of(problem(tmp_path, text + '[vary]\njug.mass = ["2 kg"]\n'))
    tables, beside = whole(top, {"detail": "brief"})
    assert ({"word": "torque", "g": "9.8 m/s^2", "detail": "brief"}, {}) == (tables["course"], beside)
    plain = with_values({**tables, "accept": [{"line": "F = 3"}]}, read_ranges(top), (0,))
    assert ("2 kg", False, False) == (plain["load"][0]["mass"], "vary" in plain, "accept" in plain)
    assert "course" not in whole(tables_of(problem(tmp_path, BARE_JUG)))[0]


def test_a_problem_file_is_written_as_a_person_would() -> None:
    tables = {"title": "x", "load": [{"name": "jug", "mass": "2 kg"}], "pivot": {"name": "elbow"}, "empty": []}
    assert text_of(tables, "a\nb") == (
        '# a\n# b\ntitle = "x"\nempty = []\n\n[[load]]\nname = "jug"\nmass = "2 kg"\n\n[pivot]\nname = "elbow"\n'
    )
