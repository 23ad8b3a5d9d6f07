"""What is said of a value beside the ranges of adults, and of a segment table that cannot be used, word for word."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from what_is_said import parts

from explain.errors import Fault
from explain.reference.body_ranges import (
    FOOT_POUND,
    INCH,
    NEWTON_PER_CM2,
    POUND,
    Measure,
    Note,
    arm_note,
    bite_note,
    com_note,
    disc_note,
    hip_load_note,
    joint_moment_note,
    muscle_force_note,
    segment_mass_note,
    stress_note,
)
from explain.reference.gravity import IN_CLASSES, IN_FEET, STANDARD, WRITTEN
from explain.reference.segment_tables import LIMBS, SEGMENTS, canonical, com_span, other_rows, plain_name, segment_row

PER_IN2 = Measure("lb/in²", 4.4482216152605 / 6.4516)
Said = Callable[[], Note | None]
NOTES: dict[str, Said] = {
    "arm, the low end": lambda: arm_note("biceps", "elbow", 0.015),
    "arm, turning the other way": lambda: arm_note("the biceps", "Elbow joint", -0.07),
    "arm, short": lambda: arm_note("brachialis", "elbow", 0.0149),
    "arm, long": lambda: arm_note("biceps", "elbow", 0.0701),
    "arm in inches": lambda: arm_note("biceps", "elbow", 0.0508, INCH),
    "arm in inches that would not show it": lambda: arm_note("biceps", "elbow", 0.07001, INCH),
    "arm of a group at its joint": lambda: arm_note("flexors", "elbow", 0.03),
    "arm of none": lambda: arm_note("", "elbow", 0.03),
    "arm at another joint": lambda: arm_note("biceps", "knee", 0.03),
    "pull, none": lambda: muscle_force_note("biceps", 0),
    "pull, the low end": lambda: muscle_force_note("biceps", 842),
    "pull, between": lambda: muscle_force_note("biceps", 842.4),
    "pull, the high end": lambda: muscle_force_note("biceps", 1060),
    "pull, above": lambda: muscle_force_note("biceps", 1061),
    "pull, above one limit": lambda: muscle_force_note("deltoid", 2546),
    "pull in pounds": lambda: muscle_force_note("deltoid", 500, POUND),
    "pull in pounds, two ends": lambda: muscle_force_note("biceps", 900, POUND),
    "pull of one alone": lambda: muscle_force_note("hip abductors", 9000),
    "pull, pushing": lambda: muscle_force_note("biceps", -0.1),
    "mass, within": lambda: segment_mass_note("left forearm", 1.6),
    "mass, outside": lambda: segment_mass_note("the forearm", 16),
    "mass of none": lambda: segment_mass_note("tail", 16),
    "centre, within": lambda: com_note("forearm", 43),
    "centre, outside": lambda: com_note("forearm and hand", 12),
    "centre, the low end": lambda: com_note("hand", 36),
    "centre of none": lambda: com_note("tail", 50),
    "moment, within": lambda: joint_moment_note("elbow", -80),
    "moment, above": lambda: joint_moment_note("knee joint", 300.4, "torque"),
    "moment in foot-pounds": lambda: joint_moment_note("ankle", 20, measure=FOOT_POUND),
    "moment, none": lambda: joint_moment_note("elbow", 0),
    "moment of none": lambda: joint_moment_note("hinge", 3),
    "hip, just one": lambda: hip_load_note("hip", 700, 700),
    "hip, two": lambda: hip_load_note("hip joint", 1400, 700),
    "hip, four": lambda: hip_load_note("hip", 2800, 700),
    "hip, above": lambda: hip_load_note("hip", 2801, 700),
    "hip of one newton": lambda: hip_load_note("hip", 3, 1),
    "hip, less than one": lambda: hip_load_note("hip", 699, 700),
    "hip of no one": lambda: hip_load_note("hip", 699, 0),
    "hip elsewhere": lambda: hip_load_note("knee", 1400, 700),
    "disc, below": lambda: disc_note("lowest disc", 3400),
    "disc, between": lambda: disc_note("lower back", 6400),
    "disc, above": lambda: disc_note("lower back", 6401),
    "disc in pounds": lambda: disc_note("lower back", 4000, POUND),
    "disc, nothing": lambda: disc_note("lower back", 0),
    "disc, pulled": lambda: disc_note("lower back", -1),
    "bite, less": lambda: bite_note("jaw joint", "nut", 215),
    "bite, among": lambda: bite_note("jaw", "nut", 216),
    "bite, above": lambda: bite_note("jaw", "nut", 910),
    "bite, incisors": lambda: bite_note("jaw", "incisors", 382),
    "bite, front teeth": lambda: bite_note("jaw", "the front teeth", 390),
    "bite, incisor in pounds": lambda: bite_note("jaw", "incisor", 50, POUND),
    "bite, pulled": lambda: bite_note("jaw", "nut", -1),
    "bite elsewhere": lambda: bite_note("elbow", "nut", 1),
    "stress, none": lambda: stress_note(["biceps"], 0),
    "stress, within": lambda: stress_note(["biceps"], 73),
    "stress, more": lambda: stress_note(["biceps", "brachialis"], 73.02),
    "stress, above": lambda: stress_note(["biceps"], 141),
    "stress in pounds per square inch": lambda: stress_note(["biceps"], 80, PER_IN2),
    "stress, pushed": lambda: stress_note(["biceps"], -1, NEWTON_PER_CM2),
}


def note(case: str) -> str:
    """All that a note holds, a line for each part; "nothing" where there is none."""
    found = NOTES[case]()
    if found is None:
        return "nothing"
    marks = f"{found.inside} {found.telling} {' / '.join(found.of)}"
    return "\n".join((found.says, found.source, marks))


SAID = parts("notes_said.txt", "## ")


@pytest.mark.parametrize("case", NOTES)
def test_a_note_says(case: str) -> None:
    assert SAID[case] == note(case)


# ---------------------------------------------------------------------- names of segments
PEOPLE_SAY = {
    "head_neck": "head neck|head and neck|head|neck and head|neck & head",
    "trunk": "trunk|torso|whole trunk|the trunk",
    "trunk_head_neck": "trunk head neck|trunk, head and neck|head, neck and trunk|head and trunk|trunk with head",
    "hat_head_arms_trunk": "hat head arms trunk|head, arms and trunk|HAT|upper body|her upper body|"
    "trunk head and arms|trunk, arms and head",
    "thorax": "thorax|chest|his chest",
    "abdomen": "abdomen",
    "pelvis": "pelvis",
    "thorax_abdomen": "thorax and abdomen|thorax-abdomen",
    "abdomen_pelvis": "abdomen + pelvis|abdomen_pelvis",
    "upper_trunk": "upper trunk",
    "middle_trunk": "middle trunk",
    "lower_trunk": "lower trunk",
    "upper_arm": "upper arm|upperarm|left upper arm|Upper-Arm",
    "forearm": "forearm|lower arm|the right forearm|my forearm",
    "hand": "hand|their hand",
    "forearm_hand": "forearm and hand|forearm hand|hand and forearm|lower arm and hand|forearm/hand|forearm with hand",
    "total_arm": "total arm|whole arm|arm|entire arm|upper limb|upper extremity|upper arm, forearm and hand",
    "thigh": "thigh|upper leg",
    "leg_shank": "leg shank|shank|lower leg|leg|shin",
    "foot": "foot|the left foot",
    "foot_leg": "foot leg|shank and foot|foot and shank|lower leg and foot|leg and foot|shin and foot",
    "total_leg": "total leg|whole leg|entire leg|lower limb|lower extremity|thigh, shank and foot",
}


@pytest.mark.parametrize("segment", PEOPLE_SAY)
def test_what_people_call_a_segment_is_that_segment(segment: str) -> None:
    names = PEOPLE_SAY[segment].split("|")
    assert [segment] * len(names) == [canonical(name) for name in names]


def test_no_other_segment_has_a_name_and_a_strange_one_stays_plain() -> None:
    assert set(PEOPLE_SAY) == set(SEGMENTS)
    assert "tail and fin" == canonical("The  Tail & Fin") == plain_name("left tail and fin")


# ---------------------------------------------------------------------- tables
OURS = "segment,mass_percent,com_percent,source,sex\nforearm,1.6,43.0,ours,\n"
BAD_TABLES: dict[str, Callable[[], object]] = {
    "a table misspelt": lambda: segment_row("plagenhof", "forearm", ""),
    "a table of no name": lambda: segment_row("xyz", "forearm", ""),
    "a segment in another table": lambda: segment_row("winter", "upper trunk", "male"),
    "a segment misspelt": lambda: segment_row("winter", "forarm", ""),
    "a segment in none": lambda: segment_row("dempster", "tail", ""),
    "a segment in none of men": lambda: segment_row("de leva", "tail", "male"),
    "a segment in none of six": lambda: segment_row("clauser", "tail", ""),
    "a segment in none of all": lambda: segment_row("plagenhoef", "tail", "female"),
    "no sex": lambda: segment_row("de leva", "forearm", ""),
    "no such sex": lambda: segment_row("our.csv", "hand", "male", OURS + "hand,1,50,x,female\n"),
    "two rows": lambda: segment_row("our.csv", "forearm", "", OURS + "lower arm,1.7,43,ours,\n"),
    "no mass": lambda: segment_row("our.csv", "hand", "", OURS + "hand,,50,x,\n"),
    "mass of nothing": lambda: segment_row("our.csv", "hand", "", OURS + "hand,0,50,x,\n"),
    "mass above all": lambda: segment_row("our.csv", "hand", "", OURS + "hand,100.1,50,x,\n"),
    "centre with a comma": lambda: segment_row("our.csv", "hand", "", OURS + 'hand,1,"50,6",x,\n'),
    "centre beyond": lambda: segment_row("our.csv", "hand", "", OURS + "hand,1,200.1,x,\n"),
    "a column missing": lambda: segment_row("our.csv", "hand", "", OURS.replace("mass_percent", "mass_percnt")),
    "a column not even like it": lambda: segment_row("our.csv", "hand", "", "segment,a,b\n"),
    "semicolons": lambda: segment_row("our.csv", "hand", "", "segment;mass_percent;com_percent\nhand;1;50\n"),
    "an empty table": lambda: segment_row("our.csv", "hand", "", ""),
    "a table of one line": lambda: segment_row("our.csv", "hand", "", OURS.partition("\n")[0]),
    "a row too short": lambda: segment_row("our.csv", "hand", "", OURS + "hand,1,50\n"),
    "a sex of another word": lambda: segment_row("our.csv", "hand", "", OURS + "hand,1,50,x,F\n"),
    "a quotation mark not closed": lambda: segment_row("our.csv", "hand", "", OURS + 'hand,1,50,"x\n'),
}


def fault(case: str) -> str:
    with pytest.raises(Fault) as caught:
        BAD_TABLES[case]()
    return str(caught.value)


@pytest.mark.parametrize("case", BAD_TABLES)
def test_a_table_that_cannot_be_used_is_answered(case: str) -> None:
    assert SAID[case] == fault(case)


def test_a_row_of_ones_own_says_what_it_holds() -> None:
    text = "Segment,mass_percent,com_percent,near_end,far_end,sex\n"
    text += "hand,0.6 %,200,wrist,knuckle,female\nfoot,100,0,heel,,\n"
    row = segment_row("our.csv", "hand", "female", text)
    source = "the class's own table our.csv, which names no source; women; wrist to knuckle"
    assert ("0.6", "200", source, "our.csv", "hand") == (*map(str, row[:2]), *row[2:])
    assert ("100", "0", "the class's own table our.csv, which names no source") == tuple(
        map(str, segment_row("our.csv", "foot", "male", text)[:3])
    )


@pytest.mark.parametrize(
    ("names", "table"),
    [
        ("winter|Dempster|dempster winter|Dempster-Winter", "dempster-winter"),
        ("de leva|deleva|de Leva 1996|de-leva", "de-leva-1996"),
        ("Plagenhoef|plagenhoef 1983|plagenhoef-1983", "plagenhoef-1983"),
        ("Clauser|clauser 1969|clauser-1969", "clauser-1969"),
    ],
)
def test_a_published_table_is_found_by_its_authors(names: str, table: str) -> None:
    assert {table} == {segment_row(name, "foot", "male").table for name in names.split("|")}


def test_rows_of_the_same_limb_may_be_taken_by_mistake() -> None:
    assert ["upper_arm", "hand", "forearm_hand", "total_arm"] == [
        row.segment for row in other_rows("winter", "forearm", "")
    ]
    assert ["thigh", "foot", "foot_leg", "total_leg"] == [row.segment for row in other_rows("winter", "shin", "")]
    assert ["foot"] == [
        row.segment for row in other_rows("our.csv", "thigh", "", OURS + "foot,1,50,x,\nthigh,10,43,x,\n")
    ]
    assert () == other_rows("winter", "tail", "")
    assert [5, 5, 9] == [len(set(limb)) for limb in LIMBS]


def test_limbs_are_those_of_arm_leg_and_trunk() -> None:
    assert {
        "upper_arm": "arm",
        "forearm": "arm",
        "hand": "arm",
        "forearm_hand": "arm",
        "total_arm": "arm",
        "thigh": "leg",
        "leg_shank": "leg",
        "foot": "leg",
        "foot_leg": "leg",
        "total_leg": "leg",
    } | {
        name: "trunk"
        for name in (
            *("head_neck", "trunk", "trunk_head_neck", "hat_head_arms_trunk", "thorax", "abdomen", "pelvis"),
            *("thorax_abdomen", "abdomen_pelvis"),
        )
    } == {name: limb for limb, names in zip(("arm", "leg", "trunk"), LIMBS, strict=True) for name in names}


def test_a_centre_of_mass_spans_the_tables() -> None:
    """De Leva 1996, Table 4, has the forearm's at 45.74 % (men); of the shipped tables Clauser's is the least."""
    assert (38.96, 45.74) == com_span("forearm")
    assert com_span("tail") is None


def test_free_fall_as_classes_write_it() -> None:
    """ISO 80000-3:2019 for the standard value; the rounded ones are common practice, no source."""
    assert (9.80665, (9.81, 9.8, 9.80665, 10.0)) == (STANDARD, IN_CLASSES)
    assert (round(STANDARD / 0.3048, 1), (9.81, 9.8, 9.80665, 10.0, 9.806, 9.807, 9.82)) == (IN_FEET, WRITTEN)
