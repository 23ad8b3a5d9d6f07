"""Segment tables: which row a name finds, what it says, and what is told where a table cannot answer."""

from __future__ import annotations

import csv
from decimal import Decimal
from pathlib import Path

import pytest

from explain.input import Door
from explain.errors import Fault
from explain.problem.person_table import own_table
from explain.problem.toml_table import Fields, Origin
from explain.reference.segment_tables import (
    COLUMNS,
    NEEDED,
    PUBLISHED,
    SEGMENTS,
    Row,
    canonical,
    plain_name,
    segment_row,
)

SHIPPED = Path(__file__).parents[1] / "explain" / "reference" / "segments"


def own(folder: Path, text: str) -> str:
    (folder / "ours.csv").write_text(text, encoding="utf-8")
    return "ours.csv"


def fault(table: str, segment: str, sex: str = "", folder: Path | None = None) -> Fault:
    with pytest.raises(Fault) as caught:
        row(table, segment, sex, folder)
    return caught.value


def row(table: str, segment: str, sex: str = "", folder: Path | None = None) -> Row:
    """The row of a table that a problem in the folder names."""
    origin = Origin("p.toml", door=Door(str(folder / "p.toml"))) if folder else Origin("p.toml")
    return segment_row(table, segment, sex, own_table(Fields({"table": table}, origin)))


@pytest.mark.parametrize(
    ("table", "segment", "sex", "mass", "com"),
    [
        ("winter", "forearm and hand", "", "2.2", "68.2"),
        ("dempster", "shank", "", "4.65", "43.3"),
        ("dempster-winter", "foot", "", "1.45", "50.0"),
        ("winter", "head, arms and trunk", "", "67.8", "62.6"),
        ("de leva", "thigh", "female", "14.78", "36.12"),
        ("deleva", "thigh", "male", "14.16", "40.95"),
        ("plagenhoef", "forearm", "female", "1.57", "43.4"),
        ("clauser", "lower leg", "", "4.35", "37.05"),
    ],
)
def test_a_row_is_found_as_the_table_prints_it(table: str, segment: str, sex: str, mass: str, com: str) -> None:
    row = segment_row(table, segment, sex, None)
    assert (str(row.mass_percent), str(row.com_percent)) == (mass, com)


def test_the_head_and_neck_of_men_is_8_26_per_cent_in_plagenhoef() -> None:
    assert segment_row("plagenhoef", "head and neck", "male", None).mass_percent == Decimal("8.26")


@pytest.mark.parametrize(
    ("table", "sex", "printed_from_the_top"),
    [("de leva", "male", "43.10"), ("de leva", "female", "37.82"), ("clauser", "", "38.03")],
)
def test_a_trunk_that_is_printed_from_the_top_counts_from_the_hip(
    table: str, sex: str, printed_from_the_top: str
) -> None:
    assert segment_row(table, "trunk", sex, None).com_percent == 100 - Decimal(printed_from_the_top)


def test_a_head_that_is_printed_from_the_vertex_counts_from_the_neck() -> None:
    assert segment_row("de leva", "head", "male", None).com_percent == 100 - Decimal("50.02")


def test_the_source_names_the_publication_the_people_and_the_ends() -> None:
    expected = "de Leva 1996, J. Biomechanics 29, 1223-1230, Table 4; women; elbow joint to wrist joint"
    assert segment_row("De Leva", "forearm", "female", None).source == expected


@pytest.mark.parametrize(
    "said", ["forearm and hand", "Forearm & Hand", "the right forearm with hand", "hand and forearm", "forearm+hand"]
)
def test_forearm_and_hand_is_found_however_it_is_said(said: str) -> None:
    assert segment_row("winter", said, "", None).segment == "forearm_hand"


@pytest.mark.parametrize(
    ("said", "segment"),
    [
        ("arm", "total_arm"),
        ("leg", "leg_shank"),
        ("whole leg", "total_leg"),
        ("lower leg and foot", "foot_leg"),
        ("HEAD", "head_neck"),
        ("upper-arm", "upper_arm"),
    ],
)
def test_a_segment_is_found_by_its_other_names(said: str, segment: str) -> None:
    assert segment_row("winter", said, "", None).segment == segment


def test_no_name_stands_for_two_segments() -> None:
    names = [name for said in SEGMENTS.values() for name in said]
    assert sorted(names) == sorted(set(names))


def test_every_name_is_written_as_names_are_compared() -> None:
    names = [name for said in SEGMENTS.values() for name in said]
    assert [plain_name(name) for name in names] == names != []


@pytest.mark.parametrize("table", sorted(set(PUBLISHED.values())))
def test_every_shipped_row_names_a_known_segment_and_its_source(table: str) -> None:
    with (SHIPPED / f"{table}.csv").open(encoding="utf-8", newline="") as file:
        rows = list(csv.DictReader(file))
    assert [each["segment"] for each in rows if each["segment"] not in SEGMENTS or not each["source"]] == []


@pytest.mark.parametrize("table", sorted(set(PUBLISHED.values())))
def test_every_shipped_row_can_be_read(table: str) -> None:
    with (SHIPPED / f"{table}.csv").open(encoding="utf-8", newline="") as file:
        wanted = [(row["segment"], row["sex"], row["mass_percent"], row["com_percent"]) for row in csv.DictReader(file)]
    found = [segment_row(table, segment, sex, None) for segment, sex, _, _ in wanted]
    assert [(str(row.mass_percent), str(row.com_percent)) for row in found] == [
        (mass, com) for _, _, mass, com in wanted
    ]


def test_a_table_that_tells_women_from_men_asks_for_the_sex() -> None:
    told = fault("plagenhoef", "thigh")
    assert (told.key, told.example) == ("person.sex", 'sex = "female"')


def test_a_table_lacking_a_segment_names_the_table_that_has_it() -> None:
    assert fault("clauser", "forearm and hand").advice.startswith("It is in dempster-winter. Tables are not mixed")


def test_a_misspelled_segment_is_told_the_nearest_one() -> None:
    assert fault("winter", "forarm").example == 'name = "forearm"'


def test_an_unknown_table_is_told_the_nearest_one() -> None:
    assert fault("plagenhof", "thigh").example == 'table = "plagenhoef-1983"'


def test_a_class_brings_its_own_table(tmp_path: Path) -> None:
    table = own(tmp_path, "segment,mass_percent,com_percent,source\nShank,4.70,43,our scales\n")
    found = row(table, "lower leg", "", tmp_path)
    assert found == (Decimal("4.70"), Decimal("43"), "our scales", "ours.csv", "Shank")


def test_a_class_may_name_segments_that_no_published_table_has(tmp_path: Path) -> None:
    table = own(tmp_path, "segment,mass_percent,com_percent,source\nsea boot,2.1,40,our scales\n")
    assert row(table, "Sea boot", "", tmp_path).mass_percent == Decimal("2.1")


def test_a_class_may_tell_women_from_men(tmp_path: Path) -> None:
    table = own(
        tmp_path, "segment,sex,mass_percent,com_percent,source\nfoot,female,1.3,45,ours\nfoot,male,1.4,45,ours\n"
    )
    assert row(table, "foot", "male", tmp_path).mass_percent == Decimal("1.4")


def test_a_table_may_name_no_source_and_then_it_says_so(tmp_path: Path) -> None:
    said = "the class's own table ours.csv, which names no source"
    own(tmp_path, "segment,mass_percent,com_percent,source\nfoot,1.4,45,\n")
    assert row("ours.csv", "foot", "", tmp_path).source == said
    own(tmp_path, "segment,mass_percent,com_percent\nfoot,1.4,45\n")
    assert row("ours.csv", "foot", "", tmp_path).source == said


@pytest.mark.parametrize("column", NEEDED)
def test_a_column_that_is_missing_is_named(tmp_path: Path, column: str) -> None:
    table = own(tmp_path, ",".join(each for each in COLUMNS if each != column) + "\nfoot,1.4,45\n")
    told = fault(table, "foot", folder=tmp_path)
    assert (told.file, told.line, told.key) == ("ours.csv", 1, column)


def test_semicolons_between_the_columns_are_pointed_out(tmp_path: Path) -> None:
    table = own(tmp_path, "segment;mass_percent;com_percent;source\nfoot;1,4;45;ours\n")
    assert fault(table, "foot", folder=tmp_path).advice == "Put commas between the columns, not semicolons."


@pytest.mark.parametrize("figure", ["a lot", "-1.4", "1e3", "0", "140", "٣", "0x1", "1_0", "9" * 400, "nan", ""])
def test_a_mass_that_is_no_share_is_refused_at_its_line(tmp_path: Path, figure: str) -> None:
    table = own(tmp_path, f"segment,mass_percent,com_percent,source\nhand,0.6,50,ours\nfoot,{figure},45,ours\n")
    told = fault(table, "foot", folder=tmp_path)
    assert (told.line, told.key) == (3, "mass_percent")


def test_a_decimal_comma_is_pointed_out(tmp_path: Path) -> None:
    table = own(tmp_path, 'segment,mass_percent,com_percent,source\nfoot,"1,4",45,ours\n')
    assert fault(table, "foot", folder=tmp_path).advice == "Write a decimal point, not a comma."


def test_two_rows_for_one_segment_are_refused(tmp_path: Path) -> None:
    table = own(tmp_path, "segment,mass_percent,com_percent,source\nshank,4.7,43,ours\nlower leg,4.6,43,ours\n")
    assert fault(table, "leg", folder=tmp_path).found == "2 rows for leg (lines: 2 and 3)"


@pytest.mark.parametrize("line", ["foot,1.4,45", "foot,1.4,45,ours,more", 'foot,1.4,45,"our'])
def test_a_row_that_does_not_fit_the_columns_is_refused(tmp_path: Path, line: str) -> None:
    table = own(tmp_path, f"segment,mass_percent,com_percent,source\n{line}\n")
    assert fault(table, "foot", folder=tmp_path).line == 2


@pytest.mark.parametrize(
    "text", ["", "\n\n", "segment,mass_percent,com_percent,source\n", "foot,1.4,45,ours\n" * 20_000]
)
def test_a_table_with_no_rows_of_use_is_refused(tmp_path: Path, text: str) -> None:
    assert fault(own(tmp_path, text), "foot", folder=tmp_path).exit_code == 2


def test_a_table_that_is_not_there_tells_how_it_begins(tmp_path: Path) -> None:
    assert (
        fault("nowhere.csv", "foot", folder=tmp_path).advice
        == "Its first line is: segment,mass_percent,com_percent,source"
    )


def test_a_table_that_is_not_text_is_refused(tmp_path: Path) -> None:
    (tmp_path / "ours.csv").write_bytes(b"\xff\xfe\x00s")
    assert fault("ours.csv", "foot", folder=tmp_path).found == '"ours.csv", which is not plain text in UTF-8'


def test_segments_keep_their_own_name_where_no_table_has_them() -> None:
    assert canonical("Sea  Boot") == "sea boot"
