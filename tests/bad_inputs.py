"""Ways to spoil a good problem file, and what the fault says then: data for the tests of bad input."""
from __future__ import annotations

from typing import NamedTuple

GOOD = """\
title = "A milk jug, forearm level"   # line 1

[pivot]
name = "elbow"
bone = "humerus"

[[segment]]
name = "forearm and hand"
mass = "1.6 kg"
com = "15 cm"

[[load]]
name = "jug"
mass = "3.0 kg"
at = "33 cm"

[[muscle]]
name = "biceps"
at = "4.0 cm"
direction = "up"
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
    example: str


BAD = [
    Bad("not TOML", '"1.6 kg"', "1.6 kg", "", 9, "not TOML", "key = value", "title ="),
    Bad("a text without an end", '"up"\n', '"""up\n', "", 20, "not TOML", "TOML", "title ="),
    Bad("a table twice", "[[segment]]", "[pivot]", "", 7, "not TOML", "TOML", "title ="),
    Bad("an integer beyond all bounds", '"1.6 kg"', "1" * 5000, "", None, "not TOML", "TOML", "title ="),
    Bad("a key of many parts", "com =", "a" + ".a" * 5000 + " =", "", 10, "thirty parts", "one or two", "title ="),
    Bad("an unknown key", "com =", "comm =", "segment[1].comm", 10, '"comm"', "the key com", "com in place of comm"),
    Bad("an unknown table", "[[muscle]]", "[[muscles]]", "muscles", 17, '"muscles"', "the key muscle", "muscle"),
    Bad("an unknown key of the pivot", "bone =", "bones =", "pivot.bones", 5, '"bones"', "the key bone", "bone"),
    Bad("a missing title", "title =", "statement =", "title", None, "missing", "a title", 'title = "'),
    Bad("a missing name", 'name = "biceps"\n', "", "muscle[1].name", 17, "missing", "a name", 'name = "biceps"'),
    Bad("a missing com", 'com = "15 cm"', "", "segment[1].com", 7, "missing", "centre of mass", 'com = "15 cm"'),
    Bad("a com without a mass", 'mass = "1.6 kg"', "", "segment[1].mass", 7, "missing", "mass", "mass ="),
    Bad("a missing mass", 'mass = "3.0 kg"', "", "load[1].mass", 12, "missing", "mass or weight", "mass ="),
    Bad("a missing place", 'at = "33 cm"', "", "load[1].at", 12, "missing", "at, or point", "at ="),
    Bad("a missing grip", 'at = "4.0 cm"\n', "", "muscle[1].at", 17, "missing", "moment_arm with turns", "at ="),
    Bad("a missing direction", 'direction = "up"\n', "", "muscle[1].direction", 17, "missing", "toward", "direction ="),
    Bad("a missing force", "[[muscle]]", "[[force]]", "force[1].force", 17, "missing", "size of the force", "force ="),
    Bad("a moment arm without turns", 'direction = "up"', 'moment_arm = "4 cm"', "muscle[1].turns", 17, "missing", "turns",
        "turns ="),
    Bad("turns without a moment arm", 'direction = "up"', 'turns = "clockwise"', "muscle[1].moment_arm", 17, "missing",
        "moment arm", "moment_arm ="),
    Bad("a number without a unit", '"1.6 kg"', '"1.6"', "segment[1].mass", 9, '"1.6", a number without a unit', "a mass",
        '"1.6 kg"'),
    Bad("a bare number", '"1.6 kg"', "1.6", "segment[1].mass", 9, "1.6", "a mass", 'mass = "1.6 kg"'),
    Bad("an unknown unit", '"33 cm"', '"33 parsec"', "load[1].at", 15, "parsec", "m, cm, mm, in, ft", 'at = "'),
    Bad("a unit of the wrong kind", '"33 cm"', '"33 kg"', "load[1].at", 15, "a unit of mass", "a length", 'at = "'),
    Bad("a weight in kilograms", 'mass = "3.0 kg"', 'weight = "3.0 kg"', "load[1].weight", 14, "a unit of mass", "a force",
        "weight ="),
    Bad("a negative mass", '"3.0 kg"', '"-3.0 kg"', "load[1].mass", 14, "a negative number", "mass above zero", "mass ="),
    Bad("a negative length", "com =", 'length = "-3 cm"\ncom =', "segment[1].length", 10, "a negative number",
        "length above zero", "length ="),
    Bad("a negative force", 'direction = "up"', 'direction = "up"\nforce = "-9 N"', "muscle[1].force", 21, "a negative number",
        "force above zero", "force ="),
    Bad("a zero mass", '"3.0 kg"', '"0.0 kg"', "load[1].mass", 14, "zero", "mass above zero", "mass ="),
    Bad("a zero moment arm", 'direction = "up"', 'moment_arm = "0 cm"\nturns = "clockwise"', "muscle[1].moment_arm", 20, "zero",
        "length above zero", "moment_arm ="),
    Bad("not a number in a text", '"3.0 kg"', '"NaN kg"', "load[1].mass", 14, '"NaN kg"', "a mass", "mass ="),
    Bad("not a number of TOML", '"3.0 kg"', "nan", "load[1].mass", 14, "nan", "a number and a unit", "mass ="),
    Bad("infinity in a text", '"3.0 kg"', '"inf kg"', "load[1].mass", 14, '"inf kg"', "a mass", "mass ="),
    Bad("infinity of TOML", '"3.0 kg"', "-inf", "load[1].mass", 14, "-inf", "a number and a unit", "mass ="),
    Bad("a number beyond all bounds", '"3.0 kg"', '"1e999999 kg"', "load[1].mass", 14, "1e999999", "a mass", "mass ="),
    Bad("a decimal comma", '"33 cm"', '"3,5 cm"', "load[1].at", 15, "comma", "a length", 'at = "3.5 cm"'),
    Bad("a direction that cannot be read", '"up"', '"sideways"', "muscle[1].direction", 20, '"sideways"', "30 deg below right",
        "direction ="),
    Bad("a direction without a unit", '"up"', '"30 below right"', "muscle[1].direction", 20, "without a unit", "an angle",
        'direction = "'),
    Bad("a direction that is a number", '"up"', "90", "muscle[1].direction", 20, "90", "a direction", "direction ="),
    Bad("an angle beyond a half turn", '"up"', '"190 deg from back toward up"', "muscle[1].direction", 20, "190", "0 to 180",
        "direction ="),
    Bad("two opposite directions", '"up"', '"20 deg from up toward down"', "muscle[1].direction", 20, "one line", "opposite",
        "direction ="),
    Bad("two directions on one line by the posture", '"up"', '"20 deg from back toward right"', "muscle[1].direction", 20,
        "one line", "opposite", "direction ="),
    Bad("a name used twice", '"jug"', '"biceps"', "muscle[1].name", 18, "a second time", "nothing else", "name ="),
    Bad("a name used twice in other letters", '"jug"', '"Biceps"', "muscle[1].name", 18, "a second time", "nothing else",
        "name ="),
    Bad("a name that is kept", '"jug"', '"reaction"', "load[1].name", 13, "kept", "another name", "name ="),
    Bad("a name that is kept for a sum", '"jug"', '"total"', "load[1].name", 13, "kept", "another name", "name ="),
    Bad("a name with a dot", '"jug"', '"jug no. 2"', "load[1].name", 13, '"jug no. 2"', "without .", "name ="),
    Bad("a name with a star", '"jug"', '"2 * jug"', "load[1].name", 13, '"2 * jug"', "without . *", "name ="),
    Bad("an empty name", '"jug"', '""', "load[1].name", 13, '""', "a name with letters", "name ="),
    Bad("a name that nothing has", "title =", 'ask = ["bicpes"]\ntitle =', "ask", 1, '"bicpes"', "the name of an answer",
        '"biceps"'),
    Bad("an answer that nothing has", "title =", 'ask = ["jug.direction"]\ntitle =', "ask", 1, '"jug.direction"', "answer",
        "ask ="),
    Bad("a share of what nothing is", 'direction = "up"', 'direction = "up"\nforce = "2 * brachialis"', "muscle[1].force", 21,
        '"brachialis"', "another force", "force ="),
    Bad("a share that is none", 'direction = "up"', 'direction = "up"\nforce = "-2 * jug"', "muscle[1].force", 21, "-2 * jug",
        "above zero", "force ="),
    Bad("an unknown segment", 'at = "33 cm"', 'at = "33 cm"\non = "forearm"', "load[1].on", 16, '"forearm"', "a segment",
        'on = "forearm and hand"'),
    Bad("an unknown segment to start from", "com =", 'from = "upper arm"\ncom =', "segment[1].from", 10, '"upper arm"',
        "a segment", "from ="),
    Bad("a segment that starts from itself", "com =", 'from = "forearm and hand"\nlength = "3 cm"\ncom =', "segment[1].from",
        10, "comes back", "begins at the pivot", "from ="),
    Bad("a segment before without a length", "[[load]]", '[[segment]]\nname = "stick"\n[[load]]', "segment[1].length", 7,
        "missing", '"stick" starts at its far end', "length ="),
    Bad("nothing asked", 'direction = "up"', 'direction = "up"\nforce = "300 N"', "ask", None, "missing", "a question",
        "ask ="),
    Bad("an answer asked for twice", "title =", 'ask = ["biceps", "biceps"]\ntitle =', "ask", 1, "twice", "once", "ask ="),
    Bad("a circle of shares", 'direction = "up"',
        'direction = "up"\nforce = "2 * rope"\n[[force]]\nname = "rope"\nat = "9 cm"\ndirection = "up"\nforce = "0.5 * biceps"',
        "muscle[1].force", 21, "biceps, of rope, of biceps", "sought", "force ="),
    Bad("a share of itself", 'direction = "up"', 'direction = "up"\nforce = "2 * biceps"', "muscle[1].force", 21, "circle",
        "sought", "force ="),
    Bad("a percentage without a person", '"3.0 kg"', '"5 %"', "load[1].mass", 14, '"5 %"', "a person", "[person]"),
    Bad("a percentage without a length", '"15 cm"', '"43 %"', "segment[1].length", 7, "missing", "com is", "length ="),
    Bad("a table without a person", '"1.6 kg"', '"table"', "segment[1].mass", 9, '"table"', "a person", "[person]"),
    Bad("the part along no segment", "title =", 'ask = ["reaction.along"]\ntitle =', "ask", 1, "no axes", "along", "axes ="),
    Bad("both mass and weight", 'mass = "3.0 kg"', 'mass = "3.0 kg"\nweight = "29 N"', "load[1].weight", 15, "both", "only one",
        "mass ="),
    Bad("both at and point", 'at = "33 cm"', 'at = "33 cm"\npoint = ["3 cm", "0 cm"]', "load[1].point", 16, "both", "only one",
        "at ="),
    Bad("both direction and toward", 'direction = "up"', 'direction = "up"\ntoward = ["3 cm", "9 cm"]', "muscle[1].toward", 21,
        "both", "only one", "direction ="),
    Bad("a point of three", 'at = "33 cm"', 'point = ["3 cm", "0 cm", "1 cm"]', "load[1].point", 15, "a list of 3", "two",
        "point ="),
    Bad("a point without units", 'at = "33 cm"', "point = [3, 0]", "load[1].point", 15, '"3", a number without a unit',
        "a length", 'point = ["3 m", "35 cm"]'),
    Bad("one table where there may be many", "[[load]]", "[load]", "load", 12, "a table", "[[load]]", "[[load]]"),
    Bad("many tables where there is one", "[pivot]", "[[pivot]]", "pivot", 3, "a list", "[pivot]", "[pivot]"),
    Bad("a flag in quotation marks", 'bone = "humerus"', 'reaction = "no"', "pivot.reaction", 5, '"no"', "true or false",
        "reaction ="),
    Bad("a half count", 'direction = "up"', 'direction = "up"\ncount = 0', "muscle[1].count", 21, "0", "whole number",
        "count = 2"),
    Bad("a count that is true", 'direction = "up"', 'direction = "up"\ncount = true', "muscle[1].count", 21, "true",
        "whole number", "count = 2"),
    Bad("a limit that is not given", 'direction = "up"', 'direction = "up"\nforce = "limit"', "muscle[1].limit", 17, "missing",
        "the limit", "limit ="),
    Bad("a range without an angle", 'direction = "up"', 'direction = "up"\nrange = ["0 deg", "90 deg"]', "muscle[1].range", 21,
        "no angle", '"?"', "direction ="),
    Bad("a range upside down", 'direction = "up"', 'direction = "? above left"\nrange = ["90 deg", "0 deg"]', "muscle[1].range",
        21, "from 90 to 0", "smaller first", "range ="),
    Bad("a word outside a closed set", "title =", 'course = { word = "momentum" }\ntitle =', "course.word", 1, '"momentum"',
        '"moment", "torque"', 'word = "moment"'),
    Bad("an unknown key of a course", "title =", "course = { figure = 3 }\ntitle =", "course.figure", 1, '"figure"', "figures",
        "figures"),
    Bad("fewer working figures than figures", "title =", "course = { figures = 4, working_figures = 3 }\ntitle =",
        "course.working_figures", 1, "3", "at least", "working_figures = 6"),
    Bad("axes along no segment", "title =", 'course = { axes = "along and across the shank" }\ntitle =', "course.axes", 1,
        '"shank"', "forearm and hand", "axes ="),
    Bad("a letter for nothing", "title =", 'course = { symbols = { bicpes = "F_B" } }\ntitle =', "course.symbols.bicpes", 1,
        '"bicpes"', "a name of this problem", '"biceps"'),
    Bad("a letter that is none", "title =", 'course = { symbols = { biceps = "F B!" } }\ntitle =', "course.symbols.biceps", 1,
        '"F B!"', "a letter", "symbols ="),
    Bad("a course file that is not there", "title =", 'course = "no.toml"\ntitle =', "course", 1, "no such file",
        "a course file", "course ="),
    Bad("a title that is a number", 'title = "A milk jug, forearm level"', "title = 3", "title", 1, "3", "quotation marks",
        "title ="),
    Bad("a person of no known sex", "[pivot]", '[person]\nsex = "m"\n[pivot]', "person.sex", 4, '"m"', '"female", "male"',
        "sex ="),
]
