"""Packages of questions: what is in them is what the standard has, what was worked out, and nothing that tells it."""

from __future__ import annotations

import csv
import re
import zipfile
from collections.abc import Iterator, Mapping
from dataclasses import replace
from functools import cache
from itertools import combinations
from math import cos, radians, sin
from pathlib import Path

import pytest
from click.testing import CliRunner, Result
from qti_packages import LOM, MATHML, QTI, Package, Question, name, vocabulary
from slip_problems import PROBLEMS
from slips_numbers import TRUE, Forearm
from test_hostile import STEERING, TEXTS, tried, worked
from test_manual_book_of_sixty import NAMES, drawn
from witness.answers import Expected, chosen, failings_of_one
from witness.problems import cases
from witness.run_one import worked as worked_by_the_program

import rules.slips
from explain import Fault, Walkthrough, work
from explain.cli.main import main
from explain.document.passage import Text
from explain.export.question import question
from explain.write.qti.item import Item
from explain.write.qti.package import files_of, package

HERE = Path(__file__).parent
SAMPLES = sorted((HERE.parent / "samples").glob("[0-9]*.toml"))
MUSSELS = HERE.parent / "samples" / "class-variants" / "bucket-of-mussels.toml"
UNDRAWN = {
    "14-sea-boot",
    "19-hazelnut",
    "24-raising-the-mast",
    "32-painters-plank",
    "35-measuring-chair",
    "41-wet-quay",
}
COMMON: Mapping[str, int] = {rule.SLIP: rule.COMMON for rule in rules.slips.SLIPS}


def ran(*words: object, code: int = 0) -> Result:
    result = CliRunner().invoke(main, ["export", *map(str, words)])
    assert result.exit_code == code, result.output
    return result


def packed(*items: Item) -> Package:
    return Package.read(package([(each.name, files_of(each)) for each in items], "A title", "What is in it"))


def asked(walkthrough: Walkthrough, choices: int = 0, share: float = 0.01) -> Question:
    """The question of a problem, read back from a package without a fault."""
    found = packed(question(walkthrough, "one", walkthrough.title, share, choices))
    assert [] == list(found.faults())
    return found.questions[0]


@cache
def sample(path: Path) -> Walkthrough:
    return work(path)


def answers(walkthrough: Walkthrough) -> list[str]:
    """The names of the answers in the order of the fields: a part that is nothing comes with no whole."""
    wanted = dict(walkthrough.outcome.working.asked)
    return [each for each, found in walkthrough.answers.items() if each in wanted or found.value]


def numbers(shown: str) -> float:
    """A number as it is shown to be chosen."""
    return float(re.sub(r"[^\d.\-]", "", shown.partition(" ")[0].replace("−", "-").replace(",", ".")))


# ---------------------------------------------------------------------- what the standard has
def test_the_vocabulary_knows_more_than_we_use() -> None:
    """The check can fail: it is a list of names with a source, and made-up names are told."""
    assert "1EdTech" in str(vocabulary()["source"]) and len(vocabulary()["children"]) > 100
    from lxml import etree
    from qti_packages import unknown

    wrong = (
        f'<qti-assessment-item xmlns="{QTI}" colour="red"><p><marquee/><mi xmlns="{MATHML}"/></p></qti-assessment-item>'
    )
    told = list(unknown(etree.fromstring(wrong)))
    assert told == [
        "qti-assessment-item colour",
        "qti-assessment-item > p",
        "p > marquee",
        "p > mi",
    ]


@pytest.mark.parametrize("choices", (0, 4))
@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_every_sample_is_a_question_of_known_elements_alone(path: Path, choices: int) -> None:
    found, walkthrough = asked(sample(path), choices), sample(path)
    assert found.title == walkthrough.title
    fields = [each for each in found.root.iter() if each.get("response-identifier")]
    assert len(fields) == len(answers(walkthrough))
    assert "A teaching model: plane" in found.said and "local rules and licensed practice hold" in found.said


@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_nothing_but_the_fields_holds_an_answer(path: Path) -> None:
    walkthrough, found = sample(path), asked(sample(path))
    told = " ".join((found.said, *(each.get("alt") for each in found.all("img"))))
    given = {str(each.value.number) for each in walkthrough.outcome.body.givens}
    for answer in walkthrough.answers.values():
        number = answer.shown.partition(" ")[0].lstrip("-")
        assert number in given or number == "0" or not re.search(rf"(?<![\d.]){re.escape(number)}(?![\d.]*\d)", told)


@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_a_figure_stands_there_unless_it_would_tell_what_is_sought(path: Path) -> None:
    """It is to scale: an angle or a length that is sought could be measured in it."""
    assert bool(asked(sample(path)).all("img")) == (path.stem not in UNDRAWN)


def test_given_values_are_formulas_in_a_table_and_units_stand_behind_the_fields() -> None:
    found = asked(sample(SAMPLES[1]))
    rows = ["".join(row.itertext()) for row in found.all("tr")]
    assert "mTMass of the tin2.5kg" in rows and "dEElbow to elbow flexors4.4cm" in rows
    assert all(any(name(each) == "math" for each in row.iter()) for row in found.all("tr")[1:])
    fields = [each.getparent() for each in found.all("qti-text-entry-interaction")]
    assert all("".join(each.itertext()).endswith(":  N") for each in fields)
    units = {"".join(each.itertext()).rpartition(":")[2].strip() for path in SAMPLES for each in _fields(sample(path))}
    assert units == {"N", "lb", "N·m", "kg", "m", "degrees", "N/cm²", ""}  # a coefficient of friction has none


def _fields(walkthrough: Walkthrough) -> Iterator[object]:
    return (each.getparent() for each in asked(walkthrough).all("qti-text-entry-interaction"))


# ---------------------------------------------------------------------- right values
@pytest.mark.parametrize("place", range(0, 60, 4))
def test_right_values_are_those_of_numpy(place: int) -> None:
    """Three balances of rest as one matrix, worked out beside the program."""
    key = drawn(place)
    found = asked(work(key.text))
    points = radians(key.points)
    right = [key.pull, key.force, key.force * cos(points), key.force * sin(points)]
    assert found.values == pytest.approx(right, rel=1e-9)
    assert f"the pull of the {NAMES[place % 3][3]}: N" in found.said


def test_right_values_are_those_of_the_witness() -> None:
    """Problems of every kind with their own solution; numbers that a class carries as shown are allowed for."""
    seen = 0
    for case in cases(120):
        try:
            walkthrough = worked_by_the_program(case)
        except Fault:
            continue
        found, told = asked(walkthrough), {each.name: each for each in walkthrough.answers.values()}
        expected = Expected(case, chosen(case, {"answers": {n: {"value": each.value} for n, each in told.items()}}))
        for each, value in zip(answers(walkthrough), found.values, strict=True):
            answer = told[each]
            kept = {"value": value, "unit": answer.unit, "shown": answer.shown, "direction": answer.direction}
            sorts = [sort for sort, _ in failings_of_one(case, expected, each, {**kept, "others": answer.others})]
            assert "a wrong answer" not in sorts and "a reversed answer" not in sorts, (case.name, each)
            seen += 1
    assert seen > 150


@pytest.mark.parametrize("share", (0.01, 0.05))
def test_a_number_is_right_within_the_tolerance_whatever_its_sign(share: float) -> None:
    for place in range(0, 60, 6):
        found = asked(work(drawn(place).text), share=share)
        for at, value in enumerate(found.values):
            kept = list(map(str, found.values))
            whole = abs(found.values[1])
            width = share * max(abs(value), whole / 10 if at > 1 else 0.0)
            for by, right in ((0.99, 1), (-0.99, 1), (1.01, 0), (-1.01, 0)):
                kept[at] = repr(value + by * width)
                assert found.scored(*kept) == 3 + right, (value, by)
        assert found.scored(*("0" for _ in found.values)) == 0


def test_tolerances_are_relative_but_for_numbers_below_nothing_and_small_parts() -> None:
    """The bounds of a relative tolerance change places below nothing, and nothing has no share."""
    upright = asked(sample(SAMPLES[1]))
    assert [(each.get("tolerance-mode"), each.get("tolerance")) for each in upright.all("qti-equal")] == [
        ("relative", "1 1"),
        ("relative", "1 1"),
        ("absolute", "1.96824 1.96824"),
    ]
    nothing = work(SAMPLES[1].read_text("utf-8").replace('course = "harbour-school.toml"', "").replace(
        '"reaction"]', '"reaction.right"]'
    ))  # fmt: skip
    level = asked(nothing)
    assert level.values[1] == 0 and level.all("qti-equal")[1].get("tolerance-mode") == "absolute"
    assert level.scored(str(level.values[0]), "0.1") == 2 and level.scored(str(level.values[0]), "1") == 1


# ---------------------------------------------------------------------- numbers to choose from
def _of_the_forearm() -> Mapping[str, tuple[float, str]]:
    """The pulls that the commonest slips lead to on the reference forearm, by hand, and words of their hints."""
    level, arm, g = TRUE.level, TRUE.arm, TRUE.g
    own, load = TRUE.own_moment, TRUE.load_moment
    return {
        "mass-for-weight": (TRUE.force / g, "a mass is no force yet"),
        "segment-left-out": (replace(TRUE, own=0.0).force, "A limb has weight of its own"),
        "segment-at-tip": (replace(TRUE, com=TRUE.length).force, "acts at the centre of mass"),
        # from the insertion to the centre of mass of the forearm, in place of the arm of the pull
        "wrong-pivot-distance": (replace(TRUE, grip=TRUE.com - TRUE.grip).force, "start at the same pivot"),
        "mixed-length-units": (TRUE.force / 100, "must be in one unit"),  # the insertion alone in centimetres
        "angle-ignored-load": ((load / level + own) / arm, "shorter than the distance along the bone"),  # the bag's
        "sine-cosine-swap-load": ((load + own / level * sin(radians(TRUE.slope))) / arm, ""),  # the forearm's
    }


def test_wrong_numbers_are_those_that_slips_lead_to_by_hand() -> None:
    found = asked(work(PROBLEMS["REF"]), choices=8)
    slips = _of_the_forearm()
    assert {COMMON[slip] for slip in slips} == {4}  # none is commoner
    shown = {numbers(text): hint for _, text, hint in found.choices[0]}
    by_hand = {float(f"{number:.3g}"): words for number, words in slips.values()} | {float(f"{TRUE.force:.3g}"): ""}
    assert sorted(shown) == sorted(by_hand)
    assert all(words in shown[number] for number, words in by_hand.items())


def test_wrong_joint_forces_follow_from_the_wrong_pull() -> None:
    fields = asked(work(PROBLEMS["REF"]), choices=4).choices
    light, tip = replace(TRUE, own=0.0), replace(TRUE, com=TRUE.length)
    sizes = [TRUE.joint, TRUE.joint / TRUE.g, light.joint, tip.joint]
    rights = [each * sign for each, sign in zip(map(_to_the_right, (TRUE, light, tip)), (1, 1, 1), strict=True)]
    rights.append(_to_the_right(TRUE) / TRUE.g)
    for field, expected in ((fields[3], sizes), (fields[1], rights)):
        shown = sorted(numbers(text) for _, text, _ in field)
        assert shown == sorted(float(f"{each:.3g}") for each in expected)


def _to_the_right(forearm: Forearm) -> float:
    """The muscle pulls back along the bone, and the joint pushes the other way."""
    return -forearm.force * cos(radians(180.0 - forearm.slope - forearm.pull))


@pytest.mark.parametrize("choices", (2, 3, 4, 8))
def test_one_choice_is_right_and_no_two_are_alike(choices: int) -> None:
    for path in SAMPLES:
        found = asked(sample(path), choices)
        for field, right, about in zip(found.choices, _chosen(found), answers(sample(path)), strict=True):
            assert 2 <= len(field) <= choices, path
            shown = {ident: numbers(text) for ident, text, _ in field}
            assert list(shown.values()) == sorted(shown.values())  # their order tells nothing
            answer = sample(path).answers[about]
            assert shown[right] == numbers(answer.shown)  # as the page shows it, where roundings are carried too
            for one, other in combinations(shown.values(), 2):
                assert abs(one - other) > 0.02 * max(abs(one), abs(other)), (path, shown)
            for ident, text, hint in field:
                assert bool(hint) == (ident != right) and not re.search(r"\d", hint), (path, text, hint)


def _chosen(found: Question) -> list[str]:
    return [each for each in found.right if each.startswith("CHOICE")]


def test_a_choice_earns_its_mark_and_its_hint() -> None:
    found = asked(sample(SAMPLES[11]), 4)
    assert found.scored(*found.right) == len(found.right) > 2
    wrong = next(ident for ident, _, hint in found.choices[0] if hint)
    assert found.scored(wrong, *found.right[1:]) == len(found.right) - 1


# ---------------------------------------------------------------------- variants
@pytest.fixture(scope="module")
def varied(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("bank") / "mussels"
    names = folder.parent / "class.csv"
    names.write_text("name\nOrla Penhallow\nBirk Tallow\nÅse Quill\n", "utf-8")
    made = CliRunner().invoke(main, ["vary", str(MUSSELS), "--names", str(names), "--jobs", "1", "-o", str(folder)])
    assert made.exit_code == 0, made.output
    return folder


def test_a_bank_has_an_item_for_each_variant_with_the_answers_of_its_key(varied: Path, tmp_path: Path) -> None:
    out = tmp_path / "bank.zip"
    ran("--variants", varied, "-o", out)
    found = Package.read(out.read_bytes())
    assert [] == list(found.faults())
    with (varied / "key.csv").open(encoding="utf-8-sig", newline="") as file:
        rows = list(csv.DictReader(file))
    heads = ("biceps in N", "reaction in N", "reaction.right in N", "reaction.up in N")
    keys = [[float(row[head]) for head in heads] for row in rows]
    assert [each.values for each in found.questions] == [pytest.approx(each, rel=1e-9) for each in keys]
    assert [each.title.rpartition(", ")[2] for each in found.questions] == ["variant 1", "variant 2", "variant 3"]
    assert [each.get("identifier") for each in found.resources] == [f"mussels-00{place}" for place in (1, 2, 3)]
    for row, each in zip(rows, found.questions, strict=True):
        assert row["bucket.mass"] in each.said


def test_no_name_of_a_student_is_in_a_bank(varied: Path, tmp_path: Path) -> None:
    out = tmp_path / "bank.zip"
    ran("--variants", varied, "--choices", 4, "-o", out)
    found = Package.read(out.read_bytes())
    for content in (*found.files.values(), *(each.encode() for each in found.files)):
        assert not re.search("orla|penhallow|birk|tallow|quill", content.decode(), re.IGNORECASE)


def test_a_variant_that_is_gone_is_told_and_passed_over(varied: Path, tmp_path: Path) -> None:
    folder = tmp_path / "some"
    (folder / "variants").mkdir(parents=True)
    for file in sorted((varied / "variants").iterdir())[:2]:
        (folder / "variants" / file.name).write_bytes(file.read_bytes())
    key = (varied / "key.csv").read_text("utf-8-sig")
    (folder / "key.csv").write_text(key + 'Stranger,../../mussels/x.toml\n"Other",/etc/passwd\n', "utf-8")
    result = ran("--variants", folder, "-o", tmp_path / "bank.zip", code=2)
    assert "2 of 5 worked" in result.output and result.output.count("key.csv") >= 2
    assert len(Package.read((tmp_path / "bank.zip").read_bytes()).questions) == 2


# ---------------------------------------------------------------------- hostile text
@pytest.mark.parametrize("choices", (0, 4))
@pytest.mark.parametrize("text", TEXTS)
def test_hostile_text_comes_through_as_text(text: str, choices: int) -> None:
    walkthrough = worked(text)
    found = packed(question(walkthrough, "one", walkthrough.title, 0.01, choices))
    assert [] == list(found.faults())
    one = found.questions[0]
    for content in (one.said, one.title, *(each.get("alt") for each in one.all("img"))):
        assert not STEERING.search(content)
    tree = [each for path in found.files for each in found.tree(path).iter()]
    addresses = [str(value) for each in tree for key, value in each.attrib.items() if key in ("src", "href")]
    assert all(re.fullmatch(r"(items/|figures/)[\w./-]+", each) for each in addresses)
    assert {name(each) for each in tree} & {"script", "style", "a", "object", "iframe", "x"} == set()


@pytest.mark.parametrize("text", ("<script>alert(1)</script>", "{0.__class__}", "腱の力", "&lt;script&gt;"))
def test_a_hostile_name_is_read_back_as_it_was_typed(text: str) -> None:
    walkthrough = tried(text, "limb")
    assert isinstance(walkthrough, Walkthrough)
    one = asked(walkthrough)
    assert one.title == text and text in one.said


def test_titles_reach_the_manifest_as_text(tmp_path: Path) -> None:
    out = tmp_path / "one.zip"
    path = tmp_path / "a b&<c>.toml"
    path.write_text(SAMPLES[0].read_text("utf-8").replace('course = "harbour-school.toml"', ""), "utf-8")
    title = 'title = "]]><x/>&amp;\\u202e"'
    path.write_text(re.sub('title = ".*"', lambda _: title, path.read_text("utf-8"), count=1), "utf-8")
    ran(path, "-o", out)
    found = Package.read(out.read_bytes())
    assert [] == list(found.faults())
    assert found.manifest.find(f".//{{{LOM}}}title")[0].text == "]]><x/>&amp;\ufffd" == found.questions[0].title
    assert list(found.files) == ["imsmanifest.xml", "items/a-b-c.xml", "items/figures/a-b-c.svg"]


# ---------------------------------------------------------------------- the command
def test_the_package_and_the_command_say_that_answers_are_in_it(tmp_path: Path) -> None:
    out = tmp_path / "two.zip"
    result = ran(*SAMPLES[:2], "--as", "qti", "-o", out)
    assert "holds the right answers" in result.output and "2 items" in result.output
    found = Package.read(out.read_bytes())
    said = found.manifest.find(f".//{{{LOM}}}description")[0].text
    assert "holds the right answers" in said and "not for treatment, training load" in said
    assert "holds the right answers" in CliRunner().invoke(main, ["export", "--help"]).output.replace("\n ", "")


def test_the_same_problems_give_the_same_bytes(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    one, other = tmp_path / "one.zip", tmp_path / "other.zip"
    ran(SAMPLES[1], SAMPLES[2], "--choices", 4, "-o", one)
    monkeypatch.setattr("time.time", lambda: 2_000_000_000.0)
    ran(SAMPLES[1], SAMPLES[2], "--choices", 4, "-o", other)
    assert one.read_bytes() == other.read_bytes()
    with zipfile.ZipFile(one) as archive:
        assert {each.date_time for each in archive.infolist()} == {(1980, 1, 1, 0, 0, 0)}


def test_a_problem_that_cannot_be_worked_is_told_and_the_others_are_packed(tmp_path: Path) -> None:
    bad, out = tmp_path / "bad.toml", tmp_path / "some.zip"
    bad.write_text('title = "Nothing"\n', "utf-8")
    result = ran(SAMPLES[1], bad, "-o", out, code=2)
    assert "1 of 2 worked" in result.output and len(Package.read(out.read_bytes()).questions) == 1
    ran(bad, "-o", tmp_path / "none.zip", code=2)
    assert not (tmp_path / "none.zip").exists()


def test_what_cannot_be_asked_is_told(tmp_path: Path) -> None:
    out, again = tmp_path / "x.zip", tmp_path / SAMPLES[1].name
    again.write_text(SAMPLES[1].read_text("utf-8"), "utf-8")
    for words, said in (
        ((SAMPLES[1], "-o", tmp_path / "x.pdf"), 'the suffix ".pdf"'),
        (("-o", out), "no problem file"),
        ((SAMPLES[1], again, "-o", out), "one name in the package"),
        (("--variants", tmp_path, "-o", out), "key.csv"),
        ((SAMPLES[1], "-o", tmp_path / "nowhere" / "x.zip"), "cannot be written"),
    ):
        assert said in ran(*words, code=2).output
    for option, value in (("--choices", "1"), ("--choices", "9"), ("--tolerance", "0"), ("--tolerance", "nan")):
        ran(SAMPLES[1], option, value, "-o", out, code=2)
    assert not out.exists()


def test_the_tolerance_says_how_many_figures_are_wanted(tmp_path: Path) -> None:
    out = tmp_path / "x.zip"
    for tolerance, figures in (("1", "three"), ("5", "three"), ("0.1", "four"), ("0.02", "five")):
        ran(SAMPLES[0], "--tolerance", tolerance, "-o", out)
        found = Package.read(out.read_bytes()).questions[0]
        assert f"Give each number to {figures} figures or more, with a decimal point." in found.said
        assert found.all("qti-equal")[0].get("tolerance") == f"{tolerance} {tolerance}"
        rounded = f"{found.values[0]:.{ {'three': 3, 'four': 4, 'five': 5}[figures] }g}"
        assert found.scored(rounded) == 1


@pytest.mark.parametrize(
    ("bone", "way"),
    (
        ("30 deg above right", "upward and to the left"),
        ("30 deg below right", "upward and to the right"),
        ("30 deg above left", "downward and to the left"),
        ("right", "upward"),
    ),
)
def test_across_a_bone_is_a_quarter_turn_counter_clockwise_from_along_it(bone: str, way: str) -> None:
    problem = {
        "title": "A jug",
        "ask": ["biceps", "reaction.across"],
        "course": {"axes": "along and across the forearm"},
        "pivot": {"name": "elbow", "bone": "humerus"},
        "segment": [{"name": "forearm", "length": "30 cm", "direction": bone}],
        "load": [{"name": "jug", "mass": "2 kg", "at": "28 cm"}],
        "muscle": [{"name": "biceps", "at": "4 cm", "direction": "up"}],
    }
    found = question(work(problem), "jug", "A jug").fields[-1].label[-1]
    assert isinstance(found, Text)
    assert found.text.endswith(f"across the forearm of the force of the humerus on the forearm, positive {way}")
