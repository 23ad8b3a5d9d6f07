"""The report on a class, word for word: of answers in a table and of workings, as a page, a table, JSON and marks.

Every number here was counted by hand from the rows and the entries above it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path
from textwrap import wrap

import pytest
from test_tally import TIN, tallied, worked

from explain.document.passage import Bullets, Page, Paragraph, Plot, Table
from explain.tally.api import of_workings
from explain.tally.attempts import sorted_out
from explain.tally.counts import Sort
from explain.tally.entry import Cause, Entry, Said, Score, Wrong
from explain.tally.first_step import Steps
from explain.tally.gradebook import gradebook
from explain.tally.page import Sheetful, chart, page, summary
from explain.tally.rows import csv_rows, json_text
from explain.tally.short_words import cause, causes, covered, hidden, names_in, number, several, titled
from explain.tally.teaching_points import IDEAS, lessons
from explain.write.text.pages import text
from rules.slips import SLIPS

ROWS = (
    "Ada,239,197",
    "Bo,325.3,283.1",
    "Cy,325.3,283.1",
    "Di,325.3,283.1",
    "Eve,24.4,20.1",
    "Flo,24.4,20.1",
    "Gus,24.4,20.1",
    "Hal,172.8,130.6",
    "Ivy,987654,",
    "Jo,many Bo,",
    "Kit,,197",
    "Lu,243.6,201.4",
    "Mo,239,42.2",
    "Ned,555,512.8",
    "bo,1,2",
)


def _mass(item: str = "tin") -> Cause:
    return Cause(("mass-for-weight",), (f"{item}.weight",), (item,))


LEFT_OUT = Cause(("segment-left-out",), ("total",), ("forearm and hand",))
ENTRIES = (
    Entry(
        1,
        "Ada Quill",
        (Said("elbow flexors", "239 N", 239.0, "right"), Said("reaction", "197 N", 197.0, "right")),
        score=Score(7, 0, 7),
    ),
    Entry(
        2,
        "Boris",
        (Said("elbow flexors", "24.4 N", 24.4, "wrong"),),
        (Wrong((), (_mass(),), 0, 2, "Boris: F = 24"), Wrong((), (LEFT_OUT,), 0, 3, "R = 3")),
        score=Score(2, 1, 7),
    ),
    Entry(3, "Cy", (), (Wrong((), (_mass(),), 0, 2, "F = 25"),), unclear=1, score=Score(3, 0, 7)),
    Entry(4, "Di", (), (Wrong((), (_mass(), LEFT_OUT), 0, 1, "G = 5"),), unclear=2, score=Score(3, 0, 7)),
    Entry(5, "Eve", (), (Wrong((), (), 0, 4, "x = 5 by Boris"),), score=Score(3, 2, 7)),
    Entry(6, "Flo", trouble="no line of working"),
    Entry(7, "ada quill", (Said("elbow flexors", "239 N", 239.0, "carried"),), score=Score(6, 0, 7)),
    Entry(8, "Zed", trouble="no student of this name in the key of the variants", stranger=True),
)


def folded(written: str) -> str:
    """Each long line over several."""
    return "\n".join(part for line in written.splitlines() for part in wrap(line, 110, break_on_hyphens=False))


def plain(data: bytes) -> str:
    return folded(data.decode("utf-8-sig"))


def workings(names: bool, attempt: str = "best") -> Sheetful:
    found = of_workings(worked(TIN), ENTRIES, names=names, attempt=attempt)
    return replace(found, absent=("Gus Orr", "Hal") if names else ("Gus Orr",))


ANSWERS_PAGE = """\
The same tin, and the arm that holds it: what the class's answers show
======================================================================

┌───────────────────────────────────────────────────────────────────┐
│ 14 students, 25 answers: 6 right, 19 not, and 3 cells left blank. │
└───────────────────────────────────────────────────────────────────┘

Answers given

Answer         True value  Right  Follow from a wrong one  Wrong  No number  Blank
-------------  ----------  -----  -----------------------  -----  ---------  -----
elbow flexors       239 N      3                        0      9          1      1
reaction            197 N      3                        4      5          0      2

Worth teaching again
--------------------

Weight and mass. A scale gives a mass, and what pulls is a force. Multiply every mass by g once, at the start
and with units, and count all forces of one balance in newtons (or all in pounds). (walkthrough, step 1,
Weights) Seen in about 3 students: mass used as weight (3), divided by g (0 to 1) and grams taken as kilograms
(0 to 1).

Not enough evidence for more: an idea is named here where at least 3 students show slips of its family, each
student counted once for a slip, and what several slips explain shared out by how common they are.

Slips
-----

[Slips by number of students: Students in whom a slip alone explains what was found, and in whom it is one of
several explanations. The first is: mass used as weight, 3 and 0. The table has all numbers.]

Each student counts once for a slip.

Students by slip: alone, where nothing else explains what was found; among others, where it is one of several
explanations

Slip                                   Alone  Among others  Where it first shows
-------------------------------------  -----  ------------  -----------------------
Mass used as weight                        3             0  step 1, Weights
Segment's weight put at its end            2             0  step 3, The moments
Muscle forgotten in the force balance      1             0  step 4, The joint force
Length units mixed                         0             1  step 3, The moments
Weight of a segment left out               0             1  step 3, The moments
Divided by g                               0             1  step 1, Weights
Grams taken as kilograms                   0             1  step 1, Weights
Moment by division                         0             1  step 3, The moments

Several explanations
--------------------

Each of these has more than one explanation, and none is named as the cause: ask how the number was found.

Explanations that fit equally well

As given                              Students  What may lead to it
------------------------------------  --------  --------------------------------------------------------------
elbow flexors 172.8 N, with reaction         1  length units mixed (the forearm and hand); moment by division
                                                (the forearm and hand); weight of a segment left out (the
                                                forearm and hand); grams taken as kilograms (the forearm and
                                                hand); divided by g (the forearm and hand)

Nothing explains
----------------

No single slip that is known here leads to these. They are worth a look at the working, the frequent ones
first.

Without an explanation

As given                            Students  Pairs of slips
----------------------------------  --------  ------------------------------------------------
elbow flexors 1 N                          1  –
elbow flexors 987654 N                     1  –
elbow flexors 555 N, with reaction         1  4 pairs would fit; none is named from one number
reaction 2 N                               1  –

What could not be read, or was not counted
------------------------------------------

- 1 student has more than one attempt, 2 in all: of each student the last counts.
- Line 11, elbow flexors: no number.

How far to trust this. A number says little about its cause. One drawn at random between a tenth and ten times
the true value fits some single slip in 14 % (elbow flexors) and 15 % (reaction) of cases, and some pair of
slips in 95 % and 98 %. So one slip is taken before two, all that fit are listed, a pair is never named from
one number, and lines of working tell more than answers.

! A teaching model: plane, rigid and at rest. Real joints differ. Not for treatment, training load, lifting or
  equipment decisions; for those, local rules and licensed practice hold.
"""

ANSWERS_TABLE = """\
place,student,counted,elbow flexors,elbow flexors verdict,reaction,reaction
verdict,right,slips,explanations,pairs not named,first wrong line,lines not followed,remark
2,1,yes,239,right,197,right,yes,,,0,,,
3,2,no,325.3,wrong,283.1,carried,no,segment-at-tip,segment's weight put at its end (the forearm and hand),0,,,
4,3,yes,325.3,wrong,283.1,carried,no,segment-at-tip,segment's weight put at its end (the forearm and
hand),0,,,
5,4,yes,325.3,wrong,283.1,carried,no,segment-at-tip,segment's weight put at its end (the forearm and
hand),0,,,
6,5,yes,24.4,wrong,20.1,wrong,no,mass-for-weight,mass used as weight,0,,,
7,6,yes,24.4,wrong,20.1,wrong,no,mass-for-weight,mass used as weight,0,,,
8,7,yes,24.4,wrong,20.1,wrong,no,mass-for-weight,mass used as weight,0,,,
9,8,yes,172.8,wrong,130.6,carried,no,mixed-length-units torque-by-division segment-left-out gram-kilogram-slip
g-divided,length units mixed (the forearm and hand); moment by division (the forearm and hand); weight of a
segment left out (the forearm and hand); grams taken as kilograms (the forearm and hand); divided by g (the
forearm and hand),0,,,
10,9,yes,987654,wrong,,blank,no,,nothing explains it,0,,,
11,10,yes,,"no number, no number",,blank,no,,,0,,,
12,11,yes,,blank,197,right,no,,,0,,,
13,12,yes,243.6,"right, with g = 10 m/s²",201.4,"right, with g = 10 m/s²",yes,,,0,,,
14,13,yes,239,right,42.2,wrong,no,reaction-omits-muscle,muscle forgotten in the force balance (the elbow
flexors),0,,,
15,14,yes,555,wrong,512.8,carried,no,,nothing explains it,4,,,
16,2,yes,1,wrong,2,wrong,no,,nothing explains it / nothing explains it,0,,,
"""

ANSWERS_JSON = """\
{"title": "The same tin, and the arm that holds it", "from": "answers", "summary": "14 students, 25 answers: 6
right, 19 not, and 3 cells left blank.", "students": 14, "right": 2, "slips": [{"slip": "mass-for-weight",
"title": "mass used as weight", "family": "weight and mass", "students": 3, "alone": 3, "among": 0, "where":
"step 1, Weights"}, {"slip": "segment-at-tip", "title": "segment's weight put at its end", "family":
"distances", "students": 2, "alone": 2, "among": 0, "where": "step 3, The moments"}, {"slip":
"reaction-omits-muscle", "title": "muscle forgotten in the force balance", "family": "joint reaction",
"students": 1, "alone": 1, "among": 0, "where": "step 4, The joint force"}, {"slip": "mixed-length-units",
"title": "length units mixed", "family": "distances", "students": 1, "alone": 0, "among": 1, "where": "step 3,
The moments"}, {"slip": "segment-left-out", "title": "weight of a segment left out", "family": "missing or
extra terms", "students": 1, "alone": 0, "among": 1, "where": "step 3, The moments"}, {"slip": "g-divided",
"title": "divided by g", "family": "weight and mass", "students": 1, "alone": 0, "among": 1, "where": "step 1,
Weights"}, {"slip": "gram-kilogram-slip", "title": "grams taken as kilograms", "family": "weight and mass",
"students": 1, "alone": 0, "among": 1, "where": "step 1, Weights"}, {"slip": "torque-by-division", "title":
"moment by division", "family": "distances", "students": 1, "alone": 0, "among": 1, "where": "step 3, The
moments"}], "several": [{"answers": ["elbow flexors", "reaction"], "value": 172.8, "explanations": [{"slips":
["mixed-length-units"], "about": ["forearm and hand"]}, {"slips": ["torque-by-division"], "about": ["forearm
and hand"]}, {"slips": ["segment-left-out"], "about": ["forearm and hand"]}, {"slips": ["gram-kilogram-slip"],
"about": ["forearm and hand"]}, {"slips": ["g-divided"], "about": ["forearm and hand"]}], "pairs_not_named":
0, "students": 1, "places": [9]}], "unexplained": [{"answers": ["elbow flexors"], "value": 1.0,
"explanations": [], "pairs_not_named": 0, "students": 1, "places": [16]}, {"answers": ["elbow flexors"],
"value": 987654.0, "explanations": [], "pairs_not_named": 0, "students": 1, "places": [10]}, {"answers":
["elbow flexors", "reaction"], "value": 555.0, "explanations": [], "pairs_not_named": 4, "students": 1,
"places": [15]}, {"answers": ["reaction"], "value": 2.0, "explanations": [], "pairs_not_named": 0, "students":
1, "places": [16]}], "families": {"weight and mass": 3.095238095, "distances": 2.476190476, "joint reaction":
1.0, "missing or extra terms": 0.428571429}, "teach_again": [{"family": "weight and mass", "students":
3.095238095, "idea": "A scale gives a mass, and what pulls is a force.", "exercise": "Multiply every mass by g
once, at the start and with units, and count all forces of one balance in newtons (or all in pounds).",
"where": "step 1, Weights", "slips": ["mass-for-weight", "g-divided", "gram-kilogram-slip"]}], "chance":
{"single": {"elbow flexors": 0.1388, "reaction": 0.1477}, "pair": {"elbow flexors": 0.9545, "reaction":
0.9766}}, "remarks": ["1 student has more than one attempt, 2 in all: of each student the last counts."],
"rows": [{"place": 2, "right": true, "answers": {"elbow flexors": {"value": 239.0, "verdict": "right"},
"reaction": {"value": 197.0, "verdict": "right"}}, "wrong": [], "unclear": 0}, {"place": 4, "right": false,
"answers": {"elbow flexors": {"value": 325.3, "verdict": "wrong"}, "reaction": {"value": 283.1, "verdict":
"carried"}}, "wrong": [{"answers": ["elbow flexors", "reaction"], "value": 325.3, "explanations": [{"slips":
["segment-at-tip"], "about": ["forearm and hand"]}], "pairs_not_named": 0}], "unclear": 0}, {"place": 5,
"right": false, "answers": {"elbow flexors": {"value": 325.3, "verdict": "wrong"}, "reaction": {"value":
283.1, "verdict": "carried"}}, "wrong": [{"answers": ["elbow flexors", "reaction"], "value": 325.3,
"explanations": [{"slips": ["segment-at-tip"], "about": ["forearm and hand"]}], "pairs_not_named": 0}],
"unclear": 0}, {"place": 6, "right": false, "answers": {"elbow flexors": {"value": 24.4, "verdict": "wrong"},
"reaction": {"value": 20.1, "verdict": "wrong"}}, "wrong": [{"answers": ["elbow flexors", "reaction"],
"value": 24.4, "explanations": [{"slips": ["mass-for-weight"], "about": []}], "pairs_not_named": 0}],
"unclear": 0}, {"place": 7, "right": false, "answers": {"elbow flexors": {"value": 24.4, "verdict": "wrong"},
"reaction": {"value": 20.1, "verdict": "wrong"}}, "wrong": [{"answers": ["elbow flexors", "reaction"],
"value": 24.4, "explanations": [{"slips": ["mass-for-weight"], "about": []}], "pairs_not_named": 0}],
"unclear": 0}, {"place": 8, "right": false, "answers": {"elbow flexors": {"value": 24.4, "verdict": "wrong"},
"reaction": {"value": 20.1, "verdict": "wrong"}}, "wrong": [{"answers": ["elbow flexors", "reaction"],
"value": 24.4, "explanations": [{"slips": ["mass-for-weight"], "about": []}], "pairs_not_named": 0}],
"unclear": 0}, {"place": 9, "right": false, "answers": {"elbow flexors": {"value": 172.8, "verdict": "wrong"},
"reaction": {"value": 130.6, "verdict": "carried"}}, "wrong": [{"answers": ["elbow flexors", "reaction"],
"value": 172.8, "explanations": [{"slips": ["mixed-length-units"], "about": ["forearm and hand"]}, {"slips":
["torque-by-division"], "about": ["forearm and hand"]}, {"slips": ["segment-left-out"], "about": ["forearm and
hand"]}, {"slips": ["gram-kilogram-slip"], "about": ["forearm and hand"]}, {"slips": ["g-divided"], "about":
["forearm and hand"]}], "pairs_not_named": 0}], "unclear": 0}, {"place": 10, "right": false, "answers":
{"elbow flexors": {"value": 987654.0, "verdict": "wrong"}, "reaction": {"value": null, "verdict": "blank"}},
"wrong": [{"answers": ["elbow flexors"], "value": 987654.0, "explanations": [], "pairs_not_named": 0}],
"unclear": 0}, {"place": 11, "right": false, "answers": {"elbow flexors": {"value": null, "verdict": "no
number", "note": "no number"}, "reaction": {"value": null, "verdict": "blank"}}, "wrong": [], "unclear": 0},
{"place": 12, "right": false, "answers": {"elbow flexors": {"value": null, "verdict": "blank"}, "reaction":
{"value": 197.0, "verdict": "right"}}, "wrong": [], "unclear": 0}, {"place": 13, "right": true, "answers":
{"elbow flexors": {"value": 243.6, "verdict": "right", "note": "with g = 10 m/s²"}, "reaction": {"value":
201.4, "verdict": "right", "note": "with g = 10 m/s²"}}, "wrong": [], "unclear": 0}, {"place": 14, "right":
false, "answers": {"elbow flexors": {"value": 239.0, "verdict": "right"}, "reaction": {"value": 42.2,
"verdict": "wrong"}}, "wrong": [{"answers": ["reaction"], "value": 42.2, "explanations": [{"slips":
["reaction-omits-muscle"], "about": ["elbow flexors"]}], "pairs_not_named": 0}], "unclear": 0}, {"place": 15,
"right": false, "answers": {"elbow flexors": {"value": 555.0, "verdict": "wrong"}, "reaction": {"value":
512.8, "verdict": "carried"}}, "wrong": [{"answers": ["elbow flexors", "reaction"], "value": 555.0,
"explanations": [], "pairs_not_named": 4}], "unclear": 0}, {"place": 16, "right": false, "answers": {"elbow
flexors": {"value": 1.0, "verdict": "wrong"}, "reaction": {"value": 2.0, "verdict": "wrong"}}, "wrong":
[{"answers": ["elbow flexors"], "value": 1.0, "explanations": [], "pairs_not_named": 0}, {"answers":
["reaction"], "value": 2.0, "explanations": [], "pairs_not_named": 0}], "unclear": 0}], "further_attempts":
[{"place": 3, "right": false, "answers": {"elbow flexors": {"value": 325.3, "verdict": "wrong"}, "reaction":
{"value": 283.1, "verdict": "carried"}}, "wrong": [{"answers": ["elbow flexors", "reaction"], "value": 325.3,
"explanations": [{"slips": ["segment-at-tip"], "about": ["forearm and hand"]}], "pairs_not_named": 0}],
"unclear": 0}], "not_students": [], "nothing_handed_in": 0}
"""

BY_NAME = """\
By name
-------

Students with something to look at

Student  What                                             Explanations
-------  -----------------------------------------------  ----------------------------------------------------
Hal      1 to look at                                     length units mixed (the forearm and hand); moment by
                                                          division (the forearm and hand); weight of a segment
                                                          left out (the forearm and hand); grams taken as
                                                          kilograms (the forearm and hand); and 1 more
Ivy      1 to look at                                     nothing explains it
Jo       could not be followed, no number, or left blank
Kit      could not be followed, no number, or left blank
Mo       1 to look at                                     muscle forgotten in the force balance (the elbow
                                                          flexors)
Ned      1 to look at                                     nothing explains it
bo       2 to look at                                     nothing explains it; nothing explains it

What could not be read, or was not counted
------------------------------------------

- Line 4, elbow flexors: no number (many Bo).
"""

ANSWERS_BY_NAME = """\
place,student,counted,elbow flexors,elbow flexors verdict,reaction,reaction
verdict,right,slips,explanations,pairs not named,first wrong line,lines not followed,remark
2,Hal,yes,172.8,wrong,130.6,carried,no,mixed-length-units torque-by-division segment-left-out
gram-kilogram-slip g-divided,length units mixed (the forearm and hand); moment by division (the forearm and
hand); weight of a segment left out (the forearm and hand); grams taken as kilograms (the forearm and hand);
divided by g (the forearm and hand),0,,,
3,Ivy,yes,987654,wrong,,blank,no,,nothing explains it,0,,,
4,Jo,yes,many Bo,"no number, no number",,blank,no,,,0,,,
5,Kit,yes,,blank,197,right,no,,,0,,,
6,Lu,yes,243.6,"right, with g = 10 m/s²",201.4,"right, with g = 10 m/s²",yes,,,0,,,
7,Mo,yes,239,right,42.2,wrong,no,reaction-omits-muscle,muscle forgotten in the force balance (the elbow
flexors),0,,,
8,Ned,yes,555,wrong,512.8,carried,no,,nothing explains it,4,,,
9,bo,yes,1,wrong,2,wrong,no,,nothing explains it / nothing explains it,0,,,
"""

MARKS_OF_ANSWERS = """\
student,marks,out of,elbow flexors,reaction,attempts,remark
Hal,1,2,0,1,1,
Ivy,0,2,0,0,1,blank: reaction
Jo,0,2,0,0,1,blank: reaction
Kit,1,2,0,1,1,blank: elbow flexors
Lu,2,2,1,1,1,
Mo,1,2,1,0,1,
Ned,1,2,0,1,1,
bo,0,2,0,0,1,
"""

WORKINGS_PAGE = """\
The same tin, and the arm that holds it: what the class's workings show
=======================================================================

┌────────────────────────────────────────────────────────────────────────────────────────────────────────────┐
│ 6 workings: 1 right throughout, 4 with a wrong line, 2 with a line that could not be followed, 1 not read; │
│ 1 working of nobody in the key, not counted.                                                               │
└────────────────────────────────────────────────────────────────────────────────────────────────────────────┘

Answers given

Answer         True value  Right  Follow from a wrong one  Wrong  No number
-------------  ----------  -----  -----------------------  -----  ---------
elbow flexors       239 N      1                        0      1          0
reaction            197 N      1                        0      0          0

Worth teaching again
--------------------

Weight and mass. A scale gives a mass, and what pulls is a force. Multiply every mass by g once, at the start
and with units, and count all forces of one balance in newtons (or all in pounds). (walkthrough, step 1,
Weights) Seen in about 2 students: mass used as weight (2 to 3).

Not enough evidence for more: an idea is named here where at least 2 students show slips of its family, each
student counted once for a slip, and what several slips explain shared out by how common they are.

Slips
-----

[Slips by number of students: Students in whom a slip alone explains what was found, and in whom it is one of
several explanations. The first is: mass used as weight, 2 and 1. The table has all numbers.]

Each student counts once for a slip.

Students by slip: alone, where nothing else explains what was found; among others, where it is one of several
explanations

Slip                          Alone  Among others  First wrong line  Where it first shows
----------------------------  -----  ------------  ----------------  --------------------
Mass used as weight               2             1                 3  step 1, Weights
Weight of a segment left out      1             1                 1  step 3, The moments

Several explanations
--------------------

Each of these has more than one explanation, and none is named as the cause: ask how the number was found.

Explanations that fit equally well

As given  Students  What may lead to it
--------  --------  ----------------------------------------------------------------------------------
G = 5            1  mass used as weight (the tin); weight of a segment left out (the forearm and hand)

Nothing explains
----------------

No single slip that is known here leads to these. They are worth a look at the working, the frequent ones
first.

Without an explanation

As given        Students  Pairs of slips
--------------  --------  --------------
x = 5 by Boris         1  –

By name
-------

Students with something to look at

Student  What                Explanations
-------  ------------------  ---------------------------------------------------------------------------------
Boris    2 to look at        mass used as weight (the tin); weight of a segment left out (the forearm and
                             hand)
Cy       1 to look at        mass used as weight (the tin)
Di       1 to look at        mass used as weight (the tin); weight of a segment left out (the forearm and
                             hand)
Eve      1 to look at        nothing explains it
Flo      no line of working

What could not be read, or was not counted
------------------------------------------

- 1 student has more than one attempt, 2 in all: of each student the best counts.
- 2 students of the key handed in nothing.
- Working 8: no student of this name in the key of the variants (Zed); not counted.
- Working 6: no line of working.
- Working 3: 1 line could not be followed.
- Working 4: 2 lines could not be followed.

! A teaching model: plane, rigid and at rest. Real joints differ. Not for treatment, training load, lifting or
  equipment decisions; for those, local rules and licensed practice hold.
"""

WORKINGS_TABLE = """\
place,student,counted,elbow flexors,elbow flexors verdict,reaction,reaction
verdict,right,slips,explanations,pairs not named,first wrong line,lines not followed,remark
1,Ada Quill,yes,239,right,197,right,yes,,,0,,,
2,Boris,yes,24.4,wrong,,,no,mass-for-weight segment-left-out,mass used as weight (the tin) / weight of a
segment left out (the forearm and hand),0,2,,
3,Cy,yes,,,,,no,mass-for-weight,mass used as weight (the tin),0,2,1,
4,Di,yes,,,,,no,mass-for-weight segment-left-out,mass used as weight (the tin); weight of a segment left out
(the forearm and hand),0,1,2,
5,Eve,yes,,,,,no,,nothing explains it,0,4,,
6,Flo,yes,,,,,no,,,0,,,no line of working
7,ada quill,no,239,carried,,,no,,,0,,,
8,Zed,no,,,,,no,,,0,,,no student of this name in the key of the variants
"""

MARKS_OF_WORKINGS = """\
student,marks,out of,open,attempts,remark
Ada Quill,7,7,,2,
Boris,2,7,1,1,
Cy,3,7,,1,1 line not followed
Di,3,7,,1,2 lines not followed
Eve,3,7,2,1,
Flo,,,,1,no line of working
Gus Orr,,,,0,nothing handed in
Hal,,,,0,nothing handed in
Zed,,,,,no student of this name in the key of the variants
"""

WORKINGS_JSON = """\
{"title": "The same tin, and the arm that holds it", "from": "workings", "summary": "6 workings: 1 right
throughout, 4 with a wrong line, 2 with a line that could not be followed, 1 not read; 1 working of nobody in
the key, not counted.", "students": 6, "right": 1, "slips": [{"slip": "mass-for-weight", "title": "mass used
as weight", "family": "weight and mass", "students": 3, "alone": 2, "among": 1, "where": "step 1, Weights",
"first_wrong_line_in": 3}, {"slip": "segment-left-out", "title": "weight of a segment left out", "family":
"missing or extra terms", "students": 2, "alone": 1, "among": 1, "where": "step 3, The moments",
"first_wrong_line_in": 1}], "several": [{"line": 1, "text": "G = 5", "answers": [], "value": null,
"explanations": [{"slips": ["mass-for-weight"], "about": ["tin"]}, {"slips": ["segment-left-out"], "about":
["forearm and hand"]}], "pairs_not_named": 0, "students": 1, "places": [4]}], "unexplained": [{"line": 4,
"text": "x = 5 by Boris", "answers": [], "value": null, "explanations": [], "pairs_not_named": 0, "students":
1, "places": [5]}], "families": {"weight and mass": 2.5, "missing or extra terms": 1.5}, "teach_again":
[{"family": "weight and mass", "students": 2.5, "idea": "A scale gives a mass, and what pulls is a force.",
"exercise": "Multiply every mass by g once, at the start and with units, and count all forces of one balance
in newtons (or all in pounds).", "where": "step 1, Weights", "slips": ["mass-for-weight"]}], "chance":
{"single": {}, "pair": {}}, "remarks": ["1 student has more than one attempt, 2 in all: of each student the
best counts."], "rows": [{"student": "Ada Quill", "place": 1, "right": true, "answers": {"elbow flexors":
{"value": 239.0, "verdict": "right", "typed": "239 N"}, "reaction": {"value": 197.0, "verdict": "right",
"typed": "197 N"}}, "wrong": [], "unclear": 0}, {"student": "Boris", "place": 2, "right": false, "answers":
{"elbow flexors": {"value": 24.4, "verdict": "wrong", "typed": "24.4 N"}}, "wrong": [{"line": 2, "text":
"Boris: F = 24", "answers": [], "value": null, "explanations": [{"slips": ["mass-for-weight"], "about":
["tin"]}], "pairs_not_named": 0}, {"line": 3, "text": "R = 3", "answers": [], "value": null, "explanations":
[{"slips": ["segment-left-out"], "about": ["forearm and hand"]}], "pairs_not_named": 0}], "unclear": 0},
{"student": "Cy", "place": 3, "right": false, "answers": {}, "wrong": [{"line": 2, "text": "F = 25",
"answers": [], "value": null, "explanations": [{"slips": ["mass-for-weight"], "about": ["tin"]}],
"pairs_not_named": 0}], "unclear": 1}, {"student": "Di", "place": 4, "right": false, "answers": {}, "wrong":
[{"line": 1, "text": "G = 5", "answers": [], "value": null, "explanations": [{"slips": ["mass-for-weight"],
"about": ["tin"]}, {"slips": ["segment-left-out"], "about": ["forearm and hand"]}], "pairs_not_named": 0}],
"unclear": 2}, {"student": "Eve", "place": 5, "right": false, "answers": {}, "wrong": [{"line": 4, "text": "x
= 5 by Boris", "answers": [], "value": null, "explanations": [], "pairs_not_named": 0}], "unclear": 0},
{"student": "Flo", "place": 6, "right": false, "answers": {}, "wrong": [], "unclear": 0, "trouble": "no line
of working"}], "further_attempts": [{"student": "ada quill", "place": 7, "right": false, "answers": {"elbow
flexors": {"value": 239.0, "verdict": "carried", "typed": "239 N"}}, "wrong": [], "unclear": 0}],
"not_students": [{"student": "Zed", "place": 8, "right": false, "answers": {}, "wrong": [], "unclear": 0,
"trouble": "no student of this name in the key of the variants"}], "nothing_handed_in": ["Gus Orr", "Hal"]}
"""

NAMELESS_TABLE = """\
place,student,counted,elbow flexors,elbow flexors verdict,reaction,reaction
verdict,right,slips,explanations,pairs not named,first wrong line,lines not followed,remark
1,1,yes,239,right,197,right,yes,,,0,,,
2,2,yes,24.4,wrong,,,no,mass-for-weight segment-left-out,mass used as weight (the tin) / weight of a segment
left out (the forearm and hand),0,2,,
3,3,yes,,,,,no,mass-for-weight,mass used as weight (the tin),0,2,1,
4,4,yes,,,,,no,mass-for-weight segment-left-out,mass used as weight (the tin); weight of a segment left out
(the forearm and hand),0,1,2,
5,5,yes,,,,,no,,nothing explains it,0,4,,
6,6,yes,,,,,no,,,0,,,no line of working
7,1,no,239,carried,,,no,,,0,,,
8,7,no,,,,,no,,,0,,,no student of this name in the key of the variants
"""

NAMELESS_PAGE_END = """\
Several explanations
--------------------

Each of these has more than one explanation, and none is named as the cause: ask how the number was found.

Explanations that fit equally well

As given  Students  What may lead to it
--------  --------  ----------------------------------------------------------------------------------
G = 5            1  mass used as weight (the tin); weight of a segment left out (the forearm and hand)

Nothing explains
----------------

No single slip that is known here leads to these. They are worth a look at the working, the frequent ones
first.

Without an explanation

As given    Students  Pairs of slips
----------  --------  --------------
x = 5 by …         1  –

What could not be read, or was not counted
------------------------------------------

- 1 student has more than one attempt, 2 in all: of each student the first counts.
- 1 student of the key handed in nothing.
- Working 8: no student of this name in the key of the variants; not counted.
- Working 6: no line of working.
- Working 3: 1 line could not be followed.
- Working 4: 2 lines could not be followed.

! A teaching model: plane, rigid and at rest. Real joints differ. Not for treatment, training load, lifting or
  equipment decisions; for those, local rules and licensed practice hold.
"""

NAMELESS_JSON = """\
{"title": "The same tin, and the arm that holds it", "from": "workings", "summary": "6 workings: 1 right
throughout, 4 with a wrong line, 2 with a line that could not be followed, 1 not read; 1 working of nobody in
the key, not counted.", "students": 6, "right": 1, "slips": [{"slip": "mass-for-weight", "title": "mass used
as weight", "family": "weight and mass", "students": 3, "alone": 2, "among": 1, "where": "step 1, Weights",
"first_wrong_line_in": 3}, {"slip": "segment-left-out", "title": "weight of a segment left out", "family":
"missing or extra terms", "students": 2, "alone": 1, "among": 1, "where": "step 3, The moments",
"first_wrong_line_in": 1}], "several": [{"line": 1, "text": "G = 5", "answers": [], "value": null,
"explanations": [{"slips": ["mass-for-weight"], "about": ["tin"]}, {"slips": ["segment-left-out"], "about":
["forearm and hand"]}], "pairs_not_named": 0, "students": 1, "places": [4]}], "unexplained": [{"line": 4,
"text": "x = 5 by …", "answers": [], "value": null, "explanations": [], "pairs_not_named": 0, "students": 1,
"places": [5]}], "families": {"weight and mass": 2.5, "missing or extra terms": 1.5}, "teach_again":
[{"family": "weight and mass", "students": 2.5, "idea": "A scale gives a mass, and what pulls is a force.",
"exercise": "Multiply every mass by g once, at the start and with units, and count all forces of one balance
in newtons (or all in pounds).", "where": "step 1, Weights", "slips": ["mass-for-weight"]}], "chance":
{"single": {}, "pair": {}}, "remarks": ["1 student has more than one attempt, 2 in all: of each student the
first counts."], "rows": [{"place": 1, "right": true, "answers": {"elbow flexors": {"value": 239.0, "verdict":
"right"}, "reaction": {"value": 197.0, "verdict": "right"}}, "wrong": [], "unclear": 0}, {"place": 2, "right":
false, "answers": {"elbow flexors": {"value": 24.4, "verdict": "wrong"}}, "wrong": [{"line": 2, "text": "…: F
= 24", "answers": [], "value": null, "explanations": [{"slips": ["mass-for-weight"], "about": ["tin"]}],
"pairs_not_named": 0}, {"line": 3, "text": "R = 3", "answers": [], "value": null, "explanations": [{"slips":
["segment-left-out"], "about": ["forearm and hand"]}], "pairs_not_named": 0}], "unclear": 0}, {"place": 3,
"right": false, "answers": {}, "wrong": [{"line": 2, "text": "F = 25", "answers": [], "value": null,
"explanations": [{"slips": ["mass-for-weight"], "about": ["tin"]}], "pairs_not_named": 0}], "unclear": 1},
{"place": 4, "right": false, "answers": {}, "wrong": [{"line": 1, "text": "G = 5", "answers": [], "value":
null, "explanations": [{"slips": ["mass-for-weight"], "about": ["tin"]}, {"slips": ["segment-left-out"],
"about": ["forearm and hand"]}], "pairs_not_named": 0}], "unclear": 2}, {"place": 5, "right": false,
"answers": {}, "wrong": [{"line": 4, "text": "x = 5 by …", "answers": [], "value": null, "explanations": [],
"pairs_not_named": 0}], "unclear": 0}, {"place": 6, "right": false, "answers": {}, "wrong": [], "unclear": 0,
"trouble": "no line of working"}], "further_attempts": [{"place": 7, "right": false, "answers": {"elbow
flexors": {"value": 239.0, "verdict": "carried"}}, "wrong": [], "unclear": 0}], "not_students": [{"place": 8,
"right": false, "answers": {}, "wrong": [], "unclear": 0, "trouble": "no student of this name in the key of
the variants"}], "nothing_handed_in": 1}
"""


def trimmed(written: str) -> str:
    return "\n".join(line.rstrip() for line in written.splitlines()) + "\n"


class TestWholeReports:
    def test_a_report_on_answers(self, tmp_path: Path) -> None:
        assert ANSWERS_PAGE == trimmed(text(page(tallied(tmp_path, ROWS)), 110))

    def test_the_rows_and_the_data_of_a_report_on_answers(self, tmp_path: Path) -> None:
        found = tallied(tmp_path, ROWS)
        assert ANSWERS_TABLE == plain(csv_rows(found)) + "\n"
        assert ANSWERS_JSON == folded(json_text(found)) + "\n"

    def test_a_report_on_answers_by_name(self, tmp_path: Path) -> None:
        found = tallied(tmp_path, ROWS[7:], names=True)
        assert BY_NAME in trimmed(text(page(found), 110))
        assert ANSWERS_BY_NAME == plain(csv_rows(found)) + "\n"
        assert MARKS_OF_ANSWERS == plain(gradebook(found)) + "\n"

    def test_a_report_on_workings_by_name(self) -> None:
        found = workings(True)
        assert WORKINGS_PAGE == trimmed(text(page(found), 110))
        assert WORKINGS_TABLE == plain(csv_rows(found)) + "\n"
        assert MARKS_OF_WORKINGS == plain(gradebook(found)) + "\n"
        assert WORKINGS_JSON == folded(json_text(found)) + "\n"

    def test_a_report_on_workings_without_names(self) -> None:
        found = workings(False, "first")
        assert trimmed(text(page(found), 110)).endswith(NAMELESS_PAGE_END)
        assert NAMELESS_TABLE == plain(csv_rows(found)) + "\n"
        assert NAMELESS_JSON == folded(json_text(found)) + "\n"


def wrong(*slips: tuple[str, ...], items: Sequence[str] = (), **more: object) -> Wrong:
    return Wrong(("biceps",), tuple(Cause(each, (), tuple(items)) for each in slips), **more)  # type: ignore[arg-type]


KNOWN = {
    "a-b": Sort("a-b", "one slip", "distances"),
    "tin-slip": Sort("tin-slip", "weight of the Tin left out", "distances"),
}


class TestWords:
    def test_counts_and_numbers(self) -> None:
        assert ["1 student", "0 students", "1,200 students", "2 mice", "1 mouse"] == [
            several(1, "student"),
            several(0, "student"),
            several(1200, "student"),
            several(2, "mouse", "mice"),
            several(1, "mouse", "mice"),
        ]
        assert ["−12.5", "1.23457e+06", "0"] == [number(-12.5), number(1234567.0), number(0.0)]
        assert ["Length", "g used twice", "T"] == [titled("length"), titled("g used twice"), titled("t")]

    def test_a_cause_is_a_title_and_what_it_is_about(self) -> None:
        assert ["one slip (the jug)", "one slip", "other slip (the jug)", "weight of the Tin left out"] == [
            cause(Cause(("a-b",), (), ("jug",)), KNOWN),
            cause(Cause(("a-b",)), KNOWN),
            cause(Cause(("other-slip",), (), ("jug",)), KNOWN),
            cause(Cause(("tin-slip",), (), ("tin",)), KNOWN),
        ]
        assert "one slip (the jug) with other slip" == cause(Cause(("a-b", "other-slip"), (), ("jug",)), KNOWN)

    def test_causes_that_differ_in_what_they_are_about_are_told_once(self) -> None:
        one, two = (Cause(("a-b",), (), (item,)) for item in ("jug", "lid"))
        pair, again = (Cause(("a-b", "c-d"), (), (item, "")) for item in ("jug", "lid"))
        other = Cause(("c-d",), (), ("jug",)), Cause(("c-d",), (), ("lid",))
        assert "one slip (the jug or the lid)" == causes(Wrong(("x",), (one, two, one)), KNOWN)
        assert "one slip (the jug) with c d" == causes(Wrong(("x",), (pair, again)), KNOWN)
        assert "c-d (the jug or the lid)" == causes(Wrong(("x",), other), KNOWN)

    def test_no_more_causes_than_there_is_room_for(self) -> None:
        found = wrong(("a-b",), ("c-d",), ("e-f",))
        assert ["one slip; c d; e f", "one slip; c d; and 1 more", "one slip; c d; e f; and 4 more", ""] == [
            causes(found, KNOWN, 3),
            causes(found, KNOWN, 2),
            causes(found._replace(pairs=4), KNOWN),
            causes(wrong(pairs=4), KNOWN),
        ]
        many = wrong(*((f"s{place}",) for place in range(14)))
        assert causes(many, {}).endswith("s11; and 2 more")

    def test_what_a_finding_covers(self) -> None:
        assert ["biceps 242.8 N, with reaction", "biceps −3", "biceps", "F = 3"] == [
            covered(Wrong(("biceps", "reaction"), value=242.8, unit="N")),
            covered(Wrong(("biceps",), value=-3.0)),
            covered(Wrong(("biceps",))),
            covered(Wrong((), line=2, text="F = 3")),
        ]

    def test_words_of_names_are_hidden_and_long_lines_are_cut(self) -> None:
        names = names_in(["Al Ada Quill", "12345 123456"])
        assert frozenset(("ada", "quill", "123456")) == names
        assert "…'s 12345 F" == hidden("ADA's 12345 F", names)
        assert ("x" * 120, "x" * 120 + "…") == (hidden("x" * 120, names), hidden("x" * 121, names))


class TestLists:
    def lone(self, place: int, text_: str) -> Entry:
        return Entry(place, "", (), (Wrong((), (), 0, 1, text_),))

    def found(self, entries: Sequence[Entry]) -> Page:
        return page(of_workings(worked(TIN), entries))

    def test_forty_rows_are_on_the_page_and_the_rest_is_counted(self) -> None:
        whole = [self.lone(place, f"x = {place}") for place in range(1, 43)]
        for count, said in ((40, ""), (41, "1 more of 1 student are not"), (42, "2 more of 2 students are not")):
            shown = self.found(whole[:count])
            table = next(each for each in shown.passages if isinstance(each, Table) and "Without" in each.caption)
            assert (min(count, 40), bool(said)) == (len(table.rows), " not shown here; the table" in text(shown, 200))
            assert said in text(shown, 200)
        twice = [each._replace(wrongs=(each.wrongs[0]._replace(causes=(_mass(), LEFT_OUT)),)) for each in whole]
        assert "2 more of 2 students are not shown here" in text(self.found(twice), 200)

    def test_forty_things_that_could_not_be_read_are_listed(self) -> None:
        for count, last in ((40, "Working 40: gone."), (41, "And 1 more.")):
            shown = self.found([Entry(place, "", trouble="gone") for place in range(1, count + 1)])
            bullets = next(each for each in shown.passages if isinstance(each, Bullets))
            assert last == bullets.items[-1][0].text  # type: ignore[union-attr]

    def test_eight_slips_are_in_the_chart(self) -> None:
        for count, said in ((8, ""), (9, " The 8 commonest of 9 are shown.")):
            entries = [
                Entry(place, "", (), (Wrong((), (Cause((rule.SLIP,)),), 0, 1, "x"),))
                for place, rule in enumerate(SLIPS[:count])
            ]
            found: Plot = chart(of_workings(worked(TIN), entries))
            assert (8, f"Each student counts once for a slip.{said}") == (len(found.names), found.caption[0].text)  # type: ignore[union-attr]

    def test_a_chart_without_a_slip_says_so(self) -> None:
        found = chart(of_workings(worked(TIN), []))
        assert ("no slip was found",) == found.names
        assert found.description.endswith("several explanations. No slip was found.")
        assert [((0.0, 0.0),)] * 2 == [each.points for each in found.curves]

    def test_of_a_class_without_a_slip_nothing_is_taught_again(self) -> None:
        shown = self.found([ENTRIES[0]])
        said = [each.line[0].text for each in shown.passages if isinstance(each, Paragraph)]  # type: ignore[union-attr]
        assert ["Nothing wrong was found that could be taught again."] == said
        assert summary(of_workings(worked(TIN), [ENTRIES[0]]).tally) == (
            "1 working: 1 right throughout, 0 with a wrong line, 0 not read."
        )


class TestVariants:
    """Where each student has numbers of their own, equal explanations make a group, and no value is shown."""

    ENTRIES = (
        Entry(2, "A", (Said("elbow flexors", "5", 5.0, "wrong"),), (Wrong(("elbow flexors",), (), 3, value=5.0),)),
        Entry(3, "B", (Said("elbow flexors", "6", 6.0, "wrong"),), (Wrong(("elbow flexors",), (), 7, value=6.0),)),
        Entry(4, "C", (Said("reaction", "6", 6.0, "wrong"),), (Wrong(("reaction",), (), 1, value=6.0),)),
    )

    def test_groups_have_no_value_and_the_most_pairs(self) -> None:
        from explain.tally.counts import count

        tally = count(self.ENTRIES, SLIPS, False, variants=True)
        shown = text(page(replace(workings(False), tally=tally, variants=3, absent=())), 110)
        assert "elbow flexors         2  up to 7 pairs would fit; none is named from one number" in shown
        assert "reaction              1  1 pair would fit; none is named from one number" in shown
        assert "own variant, 3 variants in all: no answer has one true value." in " ".join(shown.split())
        assert "True value" not in shown and "  Blank" in shown


class TestLessons:
    def test_every_family_of_slips_has_an_idea_and_an_exercise_in_whole_sentences(self) -> None:
        assert {rule.FAMILY for rule in SLIPS} == set(IDEAS)
        for idea, exercise in IDEAS.values():
            assert all(each[:1].isupper() and each.endswith(".") and each.count("  ") == 0 for each in (idea, exercise))

    def test_at_most_three_ideas_and_the_commonest_slips_of_each(self) -> None:
        entries = [
            Entry(place, "", (), (Wrong((), (Cause((rule.SLIP,)),), 0, 1, "x"),))
            for place, rule in enumerate(each for each in SLIPS for _ in range(2))
        ]
        found = lessons(of_workings(worked(TIN), entries).tally, Steps(worked(TIN).outcome))
        assert 3 == len(found)
        for each in found:
            assert each.evidence.startswith(f"about {each.students:.0f} students: ")
            assert each.evidence.count(" (2)") == 3


class TestAttempts:
    def test_an_attempt_that_could_not_be_read_counts_only_where_none_could(self) -> None:
        gone, read = Entry(1, "Ada", trouble="gone"), Entry(2, "Ada", score=Score(1, 0, 2))
        assert [(read,), (gone,)] == [sorted_out([gone, read], "first").students, sorted_out([gone], "first").students]

    @pytest.mark.parametrize(
        ("better", "worse"),
        [
            ({"score": Score(1, 0, 2)}, {"score": Score(2, 0, 5)}),
            ({"score": Score(1, 0, 2)}, {"score": Score(0, 0, 0)}),
            ({"said": (Said("a", "1", 1.0, "right"),)}, {"said": (Said("a", "1", 1.0, "carried"),) * 2}),
            ({"said": (Said("a", "1", 1.0, "carried"),)}, {"said": (Said("a", "1", 1.0, "wrong"),)}),
            ({}, {"wrongs": (Wrong(("a",)),)}),
        ],
    )
    def test_the_best_is_by_marks_then_by_answers_then_by_what_is_wrong(
        self, better: dict[str, object], worse: dict[str, object]
    ) -> None:
        good, bad = Entry(2, "Ada", **better), Entry(1, "ADA", **worse)  # type: ignore[arg-type]
        found = sorted_out([bad, good], "best")
        assert ((good,), (bad,)) == (found.students, found.further)

    def test_students_and_further_attempts_are_in_the_order_of_the_table(self) -> None:
        entries = [Entry(place, name) for place, name in ((3, "B"), (1, "A"), (2, "A"), (5, "C"), (4, "B"))]
        found = sorted_out(entries, "first")
        assert ([1, 3, 5], [2, 4]) == ([each.place for each in found.students], [each.place for each in found.further])


class TestSteps:
    @pytest.mark.parametrize(
        ("sample", "key", "step"),
        [
            ("02-treacle-tin-again", "tin.mass", "step 1, Weights"),
            ("02-treacle-tin-again", "tin.weight", "step 1, Weights"),
            ("02-treacle-tin-again", "*arm tin", "step 3, The moments"),
            ("02-treacle-tin-again", "tin.at", "step 3, The moments"),
            ("02-treacle-tin-again", "nothing", "step 3, The moments"),
            ("02-treacle-tin-again", "reaction", "step 4, The joint force"),
        ],
    )
    def test_a_quantity_belongs_to_a_step(self, sample: str, key: str, step: str) -> None:
        assert step == Steps(worked(TIN.parent / f"{sample}.toml").outcome).of(key)
