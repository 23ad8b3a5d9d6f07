"""What the pages of a series say, word for word; what is told of each kind of change; and effects of moments that were
added up by hand.
"""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from decimal import Decimal
from functools import cache
from pathlib import Path
from textwrap import wrap
from typing import Any

import pytest

from explain import Fault, work_series
from explain.equation.terms import Quantity
from explain.problem.reader import tables_of
from explain.problem.toml_table import Fields, Origin
from explain.series.api import WorkedSeries, suggested
from explain.series.balance import Balance, Turner
from explain.series.changes import Row, changes
from explain.series.comparison import per_cent
from explain.series.effects import FALLS, RISES, effects, scaled
from explain.series.joint_force import JointForce
from explain.series.joint_prediction import predict_joint
from explain.series.prediction import cancels, predict, weights_scaled
from explain.series.series_file import MOST_STEPS, Series, read_series, start_of, step_of
from explain.series.steps import changed
from explain.series.story import Story, told
from explain.series.sweep import Arms, read_sweep
from explain.series.swept_problem import put_at
from explain.series.toml_text import written
from explain.write.text.pages import text

HERE = Path(__file__).parent / "series"
TIN = HERE.parents[1] / "samples" / "series" / "treacle-tin.toml"
FISH = """
title = "A crate of fish"
ask = ["biceps", "reaction"]

[pivot]
name = "elbow"
bone = "humerus"

[[segment]]
name = "forearm"
mass = "1.6 kg"
com = "15 cm"
length = "40 cm"
direction = "20 deg below right"

[[load]]
name = "crate"
mass = "3.0 kg"
at = "33 cm"

[[load]]
name = "glove"
weight = "4 N"
at = "30 cm"

[[force]]
name = "rope"
at = "20 cm"
direction = "up"
force = "10 N"

[[muscle]]
name = "biceps"
at = "4.0 cm"
direction = "75 deg from back toward up"
"""


@cache
def series(name: str) -> WorkedSeries:
    return work_series(TIN if name == "tin" else HERE / f"{name}.toml")


def page(name: str, number: int) -> str:
    """A page as text; 0 is what the series is about, -1 what it comes to."""
    return "\n".join(line.rstrip() for line in text(series(name).pages[number], 110).splitlines()) + "\n"


def folded(whole: str) -> str:
    """Each long line over several."""
    return "\n".join("\n".join(wrap(line, 110, break_on_hyphens=False)) for line in whole.splitlines()) + "\n"


def lines(name: str) -> str:
    """What the data of a series tell of each step, but for its lines, answers and checks."""
    told = json.loads(series(name).json())["steps"]
    steps = [{key: value for key, value in each.items() if key not in ("answers", "lines", "checks")} for each in told]
    rounded = [
        (key, round(value, 9) if isinstance(value, float) else value) for each in steps for key, value in each.items()
    ]
    return folded("\n".join(f"{key}: {value}" for key, value in rounded))


OIL_FIRST = """\
One can of oil, eight questions
===============================

We hold the same can all lesson. Before each step, write down whether the biceps will pull harder, less hard
or just as hard.

Each step changes one thing. Before you work a step, say which way its answer must move; then work it, and see
whether you were right and why. Only what is new is written out: of an equation that is solved as in an
earlier step, the first lines and the result.

The steps

Step   What happens                      New idea                                                   Set beside
-----  --------------------------------  ---------------------------------------------------------  ----------
Start  A can of lamp oil
1      A fuller can                      Force in proportion to load.                               the start
2      The arm weighs something          A segment's own weight.                                    step 1
3      A wider insertion                 A longer lever arm of the muscle.                          step 2
4      A strap behind the elbow          A load on the other side of the pivot.                     step 3
5      Now at the joint                  Balance of forces.                                         step 4
6      The tendon leans                  Sine of an angle; two components of the joint force.       step 5
7      Leaning the other way             The same sine, other components.                           step 6
8      The forearm points down a little  The weights' arms shrink, the angle at the bone does not.  step 6
9      On a far planet                   What g does.                                               step 5

! A teaching model: plane, rigid and at rest. Real joints differ. Not for treatment, training load, lifting or
  equipment decisions; for those, local rules and licensed practice hold.
"""
OIL_1 = """\
Step 1: A fuller can
====================

New here: Force in proportion to load. Changed: the mass of the can, 3.6 kg (2.4 kg at the start).

The free-body diagram is that of the start: the same forces, in the same directions and order.

Larger, smaller or the same as at the start? The pull of the biceps must be larger. The can is heavier, and
turns against the biceps.

Not written out again. As at the start: where moments are taken, and which way is positive.

1 Weights
---------

    W_C = m_C g = 3.6 kg × 9.81 m/s² = 35.316 N

2 The moments
-------------

    F_B d_B − W_C d_C = 0
    F_B (4.0 cm) − (35.316 N)(30 cm) = 0
    F_B = 1059.5 N·cm / 4.0 cm = 264.87 N ≈ 265 N

┌───────────────────────────────────────────┐
│ The biceps pulls with 265 N, straight up. │
└───────────────────────────────────────────┘

Beside the start: the pull of the biceps grows from 177 N to 265 N: 50.0 % more. As predicted. The pull of the
biceps changes in proportion: nothing else turns the body.

To hold the can, 35.3 N, the biceps pulls with 265 N, 7.5 times that.

! A teaching model: plane, rigid and at rest. Real joints differ. Not for treatment, training load, lifting or
  equipment decisions; for those, local rules and licensed practice hold.
"""
OIL_2 = """\
Step 2: The arm weighs something
================================

New here: A segment's own weight. Changed: no longer left out: the weight of forearm and hand; new: the mass
of the forearm and hand, 1.5 kg; the forearm and hand's centre of mass, from its near end, 15.5 cm.

[Free-body diagram of the forearm and hand: The body is cut free at the elbow, marked by a circle. The forearm
and hand point straight to the right. The biceps pulls straight up, 4.0 cm from the elbow. The weight of the
forearm and hand pulls straight down, 15.5 cm from the elbow. The weight of the can pulls straight down, 30 cm
from the elbow. The force of the humerus acts at the elbow, drawn upwards. Counter-clockwise counts as
positive.]

The forces on the forearm and hand. Blue arrow: weight (hollow head: of a segment; solid: of a load).

Larger, smaller or the same as in step 1? The pull of the biceps must be larger. The weight of the forearm and
hand is new and turns against the biceps.

Not written out again. As at the start: where moments are taken, and which way is positive. As in step 1:
W_C = 35.316 N.

1 Weights
---------

    W_F = m_F g = 1.5 kg × 9.81 m/s² = 14.715 N

2 The moments
-------------

    F_B d_B − W_F d_F − W_C d_C = 0
    F_B (4.0 cm) − (14.715 N)(15.5 cm) − (35.316 N)(30 cm) = 0   substitute the numbers
    F_B (4.0 cm) − 228.08 N·cm − 1059.5 N·cm = 0                 multiply out
    F_B (4.0 cm) − 1287.6 N·cm = 0                               add like terms
    F_B (4.0 cm) = 1287.6 N·cm                                   add 1287.6 N·cm to both sides
             F_B = 1287.6 N·cm / 4.0 cm = 321.89 N               divide by 4.0 cm; the centimetres cancel and
                                                                 newtons remain
             F_B ≈ 322 N                                         rounded to three figures

┌───────────────────────────────────────────┐
│ The biceps pulls with 322 N, straight up. │
└───────────────────────────────────────────┘

Beside step 1: the pull of the biceps grows from 265 N to 322 N: 21.5 % more. As predicted.

To hold the forearm and hand and the can, 50.0 N together, the biceps pulls with 322 N, 6.4 times that.

! A teaching model: plane, rigid and at rest. Real joints differ. Not for treatment, training load, lifting or
  equipment decisions; for those, local rules and licensed practice hold.
"""
OIL_4 = """\
Step 4: A strap behind the elbow
================================

New here: A load on the other side of the pivot. Added: the mass of the counterweight, 1.0 kg; the place of
the counterweight, −6 cm, 0 cm.

[Free-body diagram of the forearm and hand: The body is cut free at the elbow, marked by a circle. The forearm
and hand point straight to the right. The biceps pulls straight up, 5.0 cm from the elbow. The weight of the
forearm and hand pulls straight down, 15.5 cm from the elbow. The weight of the can pulls straight down, 30 cm
from the elbow. The counterweight pulls straight down, 6 cm to the left of the elbow. The force of the humerus
acts at the elbow, drawn upwards. Counter-clockwise counts as positive.]

The forces on the forearm and hand.

Larger, smaller or the same as in step 3? The pull of the biceps must be smaller. The counterweight is new and
turns the same way as the biceps.

Not written out again. As at the start: where moments are taken, and which way is positive. As in step 2:
W_F = 14.715 N.

1 Weights
---------

    W_Ca = m_Ca g = 3.6 kg × 9.81 m/s² = 35.316 N
    W_Co = m_Co g = 1.0 kg × 9.81 m/s² = 9.81 N

2 The moments
-------------

    F_B d_B − W_F d_F − W_Ca d_Ca + W_Co x_Co = 0
    F_B (5.0 cm) − (14.715 N)(15.5 cm) − (35.316 N)(30 cm) + (9.81 N)(6 cm) = 0
    F_B = 1228.7 N·cm / 5.0 cm = 245.74 N ≈ 246 N

┌───────────────────────────────────────────┐
│ The biceps pulls with 246 N, straight up. │
└───────────────────────────────────────────┘

Beside step 3: the pull of the biceps falls from 258 N to 246 N: 4.6 % less. As predicted.

To hold the forearm and hand and the can, 50.0 N together, the biceps pulls with 246 N, helped by the
counterweight.

! A teaching model: plane, rigid and at rest. Real joints differ. Not for treatment, training load, lifting or
  equipment decisions; for those, local rules and licensed practice hold.
"""
OIL_7 = """\
Step 7: Leaning the other way
=============================

New here: The same sine, other components. Changed: the direction of pull of the biceps, at 75° to the bone,
outward and up (at 75° to the bone, back and up in step 6).

[Free-body diagram of the forearm and hand: The body is cut free at the elbow, marked by a circle. The forearm
and hand point straight to the right. The biceps pulls 75° above the horizontal, to the right, 5.0 cm from the
elbow. The weight of the forearm and hand pulls straight down, 15.5 cm from the elbow. The weight of the can
pulls straight down, 30 cm from the elbow. The counterweight pulls straight down, 6 cm to the left of the
elbow. The force of the humerus acts at the elbow, drawn in two parts, to the right and upwards.
Counter-clockwise counts as positive.]

The forces on the forearm and hand.

Larger, smaller or the same as in step 6? The pull of the biceps must stay the same. What is new does not turn
the body: every moment about the elbow is as before.

Not written out again. As at the start: where moments are taken, and which way is positive. As in step 2:
W_F = 14.715 N. As in step 4: W_Ca = 35.316 N; W_Co = 9.81 N. As in step 6: d_B⊥ = 4.8296 cm. The biceps pulls
with 254 N, 75° above the horizontal, to the right. J_y is −186 N.

1 The joint force
-----------------

    J_x + F_B cos 75° = 0
    J_x + (254.41 N) cos 75° = 0
    J_x = −65.846 N ≈ −65.8 N

The minus sign says that the humerus pushes the forearm and hand to the left.

    J² = J_x² + J_y² = (−65.846 N)² + (−185.90 N)²
     J = √(38 894 N²) = 197.22 N ≈ 197 N

    tan β = (−J_y) / (−J_x) = 185.90 N / 65.846 N
        β = tan⁻¹(2.8232) = 70.496° ≈ 70.5°

┌───────────────────────────────────────────────────────────────────────────────────────────────────────────┐
│ The humerus pushes on the forearm and hand with 197 N, 70.5° below the horizontal, to the left (in parts: │
│ 65.8 N to the left and 186 N down).                                                                       │
└───────────────────────────────────────────────────────────────────────────────────────────────────────────┘

Beside step 6: the pull of the biceps is what it was: 254 N. As predicted.

To hold the forearm and hand and the can, 50.0 N together, the biceps pulls with 254 N, helped by the
counterweight, and the elbow carries 197 N.

! A teaching model: plane, rigid and at rest. Real joints differ. Not for treatment, training load, lifting or
  equipment decisions; for those, local rules and licensed practice hold.
"""
OIL_9 = """\
Step 9: On a far planet
=======================

New here: What g does. Changed: g, 3.7 m/s² (9.81 m/s² in step 5).

The free-body diagram is that of step 5: the same forces, in the same directions and order.

Larger, smaller or the same as in step 5? The pull of the biceps must be smaller. Every weight scales alike,
by the factor 0.377, and nothing else acts with a size of its own: so every moment scales alike, and the pull
of the biceps with them.

Not written out again. As at the start: where moments are taken, and which way is positive.

1 Weights
---------

     W_F = m_F g = 1.5 kg × 3.7 m/s² = 5.55 N
    W_Ca = m_Ca g = 3.6 kg × 3.7 m/s² = 13.32 N
    W_Co = m_Co g = 1.0 kg × 3.7 m/s² = 3.7 N

2 The moments
-------------

    F_B d_B − W_F d_F − W_Ca d_Ca + W_Co x_Co = 0
    F_B (5.0 cm) − (5.55 N)(15.5 cm) − (13.32 N)(30 cm) + (3.7 N)(6 cm) = 0
    F_B = 463.43 N·cm / 5.0 cm = 92.685 N ≈ 92.7 N

┌────────────────────────────────────────────┐
│ The biceps pulls with 92.7 N, straight up. │
└────────────────────────────────────────────┘

3 The joint force
-----------------

    J_y + F_B − W_F − W_Ca − W_Co = 0
    J_y + 92.685 N − 5.55 N − 13.32 N − 3.7 N = 0
    J_y = −70.115 N

The minus sign says that the humerus pushes the forearm and hand down.

    J = −J_y = 70.115 N ≈ 70.1 N

┌────────────────────────────────────────────────────────────────────────┐
│ The humerus pushes on the forearm and hand with 70.1 N, straight down. │
└────────────────────────────────────────────────────────────────────────┘

Beside step 5: the pull of the biceps falls from 246 N to 92.7 N: 62.3 % less. As predicted.

To hold the forearm and hand and the can, 18.9 N together, the biceps pulls with 92.7 N, helped by the
counterweight, and the elbow carries 70.1 N.

! A teaching model: plane, rigid and at rest. Real joints differ. Not for treatment, training load, lifting or
  equipment decisions; for those, local rules and licensed practice hold.
"""
OIL_LAST = """\
One can of oil, eight questions: all the answers
================================================

The series at a glance

Step   What happens                      The pull of the biceps   Change  Set beside
-----  --------------------------------  ----------------------  -------  ----------
Start  A can of lamp oil                                  177 N
1      A fuller can                                       265 N  +50.0 %  the start
2      The arm weighs something                           322 N  +21.5 %  step 1
3      A wider insertion                                  258 N  −20.0 %  step 2
4      A strap behind the elbow                           246 N   −4.6 %  step 3
5      Now at the joint                                   246 N     none  step 4
6      The tendon leans                                   254 N   +3.5 %  step 5
7      Leaning the other way                              254 N     none  step 6
8      The forearm points down a little                   238 N   −6.3 %  step 6
9      On a far planet                                   92.7 N  −62.3 %  step 5

[Pull of the biceps, step by step: Start: 177 N; 1: 265 N; 2: 322 N; 3: 258 N; 4: 246 N; 5: 246 N; 6: 254 N;
7: 254 N; 8: 238 N; 9: 92.7 N.]

Pull of the biceps, step by step.

Step 7 leaves the answer as it was. What is new does not turn the body: every moment about the elbow is as
before.

! A teaching model: plane, rigid and at rest. Real joints differ. Not for treatment, training load, lifting or
  equipment decisions; for those, local rules and licensed practice hold.
"""
OIL_DATA = """\
step: 0
title: A can of lamp oil
idea:
follow: biceps
step: 1
title: A fuller can
idea: force in proportion to load
follow: biceps
compare: 0
predicted: more
ground: effects
change: more
per_cent: 50.0
says: The pull of the biceps grows from 177 N to 265 N: 50.0 % more.
why: The pull of the biceps changes in proportion: nothing else turns the body.
step: 2
title: The arm weighs something
idea: a segment's own weight
follow: biceps
compare: 1
predicted: more
ground: effects
change: more
per_cent: 21.527777778
says: The pull of the biceps grows from 265 N to 322 N: 21.5 % more.
why:
step: 3
title: A wider insertion
idea: a longer lever arm of the muscle
follow: biceps
compare: 2
predicted: less
ground: effects
change: less
per_cent: -20.0
says: The pull of the biceps falls from 322 N to 258 N: 20.0 % less.
why:
step: 4
title: A strap behind the elbow
idea: a load on the other side of the pivot
follow: biceps
compare: 3
predicted: less
ground: effects
change: less
per_cent: -4.571428571
says: The pull of the biceps falls from 258 N to 246 N: 4.6 % less.
why:
step: 5
title: Now at the joint
idea: balance of forces
follow: biceps
compare: 4
predicted: same
ground: question
change: same
per_cent: 0.0
says: The pull of the biceps is what it was: 246 N.
why: Only the question is new; nothing that acts on the body has changed.
step: 6
title: The tendon leans
idea: sine of an angle; two components of the joint force
follow: biceps
compare: 5
predicted: more
ground: effects
change: more
per_cent: 3.527618041
says: The pull of the biceps grows from 246 N to 254 N: 3.5 % more.
why:
step: 7
title: Leaning the other way
idea: the same sine, other components
follow: biceps
compare: 6
predicted: same
ground: not in it
change: same
per_cent: 0.0
says: The pull of the biceps is what it was: 254 N.
why: What is new does not turn the body: every moment about the elbow is as before.
step: 8
title: The forearm points down a little
idea: the weights' arms shrink, the angle at the bone does not
follow: biceps
compare: 6
predicted: less
ground: effects
change: less
per_cent: -6.319635546
says: The pull of the biceps falls from 254 N to 238 N: 6.3 % less.
why:
step: 9
title: On a far planet
idea: what g does
follow: biceps
compare: 5
predicted: less
ground: weights
change: less
per_cent: -62.283384302
says: The pull of the biceps falls from 246 N to 92.7 N: 62.3 % less.
why:
"""
SWEEP = """\
Step 1: farther out
===================

Tobias sits on a table, shank level, an ankle weight of 2.0 kg strapped 25 cm from the knee. Shank and foot:
3.9 kg. The quadriceps acts with a moment arm of 4.0 cm.

How hard does it pull?

New here: X. Changed: the distance of the cuff, 25 cm (38 cm at the start).

First one value is worked in full, the one told here; then all of them are set beside each other.

[Free-body diagram of the shank and foot: The body is cut free at the knee, marked by a circle. The shank and
foot point straight to the right. The quadriceps pulls on a line 4.0 cm from the knee and turns the body
counter-clockwise. The weight of the shank and foot pulls straight down, 25 cm from the knee. The weight of
the cuff pulls straight down, 25 cm from the knee. The force of the femur acts at the knee, drawn in two
parts, to the right and upwards. Counter-clockwise counts as positive.]

The forces on the shank and foot.

Not written out again. As at the start: W_S = 38.259 N; W_C = 19.62 N; where torques are taken, and which way
is positive.

1 The torques
-------------

    F_Q d_Q⊥ − W_S d_S − W_C d_C = 0
    F_Q (4.0 cm) − (38.259 N)(25 cm) − (19.62 N)(25 cm) = 0
    F_Q = 1447.0 N·cm / 4.0 cm = 361.74 N ≈ 362 N

┌──────────────────────────────────┐
│ The quadriceps pulls with 362 N. │
└──────────────────────────────────┘

To hold the shank and foot and the cuff, 57.9 N together, the quadriceps pulls with 362 N, 6.3 times that.

Through all values of the distance of the cuff, 10 cm to 40 cm
--------------------------------------------------------------

Before you look at the plot. The lever arm of what is sought stays the same, so the pull of the quadriceps can
only follow the moments of the rest. These grow in a straight line as the distance of the cuff grows: the pull
of the quadriceps must be smallest at 10 cm and largest at 40 cm.

[Pull of the quadriceps against the distance of the cuff: distance of the cuff runs from 10 cm to 40 cm. The
pull of the quadriceps is largest at 40 cm, 435 N, 1.51 times as much, and smallest at 10 cm, 288 N.]

Pull of the quadriceps at each value, every point worked and certified.

Value by value

Distance of the cuff  The pull of the quadriceps
--------------------  --------------------------
               10 cm                       288 N
               15 cm                       313 N
               20 cm                       337 N
               25 cm                       362 N
               30 cm                       386 N
               35 cm                       411 N
               40 cm                       435 N

The pull of the quadriceps is largest at 40 cm, 435 N, 1.51 times as much, and smallest at 10 cm, 288 N.

! A teaching model: plane, rigid and at rest. Real joints differ. Not for treatment, training load, lifting or
  equipment decisions; for those, local rules and licensed practice hold.
"""
SWEEP_LAST = """\
sweep of a distance: all the answers
====================================

The series at a glance

Step   What happens      The pull of the quadriceps  Change  Set beside
-----  ----------------  --------------------------  ------  ----------
Start  The ankle weight                       426 N
1      farther out                   288 N to 435 N

! A teaching model: plane, rigid and at rest. Real joints differ. Not for treatment, training load, lifting or
  equipment decisions; for those, local rules and licensed practice hold.
"""
SWEEP_DATA = """\
step: 0
title: The ankle weight
idea:
follow: quadriceps
step: 1
title: farther out
idea: x
follow: quadriceps
sweep_of: {'name': 'cuff.at', 'unit': 'cm'}
sweep: [{'value': 10.0, 'quadriceps': 288.16875}, {'value': 15.0, 'quadriceps': 312.69375}, {'value': 20.0,
'quadriceps': 337.21875}, {'value': 25.0, 'quadriceps': 361.74375}, {'value': 30.0, 'quadriceps': 386.26875},
{'value': 35.0, 'quadriceps': 410.79375}, {'value': 40.0, 'quadriceps': 435.31875}]
"""
SWEEP_VALUES = """\
cuff.at (cm),quadriceps (N)
10,288.16875
15,312.69375
20,337.21875
25,361.74375
30,386.26875
35,410.79375
40,435.31875
"""
BACK_6 = """\
Step 6: Share of the belly
==========================

New here: Two muscles, opposing. Added: the moment arm of the abdominals, 8 cm; the turning sense of the
abdominals, clockwise; the direction of pull of the abdominals, back along the trunk; the pull of the
abdominals, 60 N.

[Free-body diagram of the trunk: The body is cut free at the lumbar joint, marked by a circle. The trunk
points 30° above the horizontal, to the right. The back muscles pull back along the trunk, 30° below the
horizontal, to the left, on a line 5.0 cm from the lumbar joint. The abdominals pull back along the trunk, 30°
below the horizontal, to the left, on a line 8 cm from the lumbar joint. The weight of the trunk pulls
straight down, 28 cm from the lumbar joint. The weight of the puppy pulls straight down, 44 cm from the lumbar
joint. The force of the sacrum acts at the lumbar joint, drawn in two parts, along the trunk and across it.
Counter-clockwise counts as positive.]

The forces on the trunk.

Larger, smaller or the same as in step 1? The pull of the back muscles must be larger. The abdominals are new
and turn against the back muscles.

Not written out again. As at the start: m_T = 35.36 kg; W_T = 346.88 N; d_T⊥ = 24.249 cm; d_P⊥ = 38.105 cm;
where moments are taken, and which way is positive. As in step 1: W_P = 117.72 N. J_across is 402 N.

1 The moments
-------------

    F_B d_B⊥ − F_A d_A⊥ − W_T d_T⊥ − W_P d_P⊥ = 0
    F_B (5.0 cm) − (60 N)(8 cm) − (346.88 N)(24.249 cm) − (117.72 N)(38.105 cm) = 0
    F_B = 13 377 N·cm / 5.0 cm = 2675.4 N ≈ 2680 N

┌───────────────────────────────────────────────────────────────────────────┐
│ The back muscles pull with 2680 N, 30° below the horizontal, to the left. │
└───────────────────────────────────────────────────────────────────────────┘

2 The joint force
-----------------

    J_along − F_B − F_A − W_T cos 60° − W_P cos 60° = 0
    J_along − 2675.4 N − 60 N − (346.88 N) cos 60° − (117.72 N) cos 60° = 0
    J_along = 2967.7 N ≈ 2970 N

Beside step 1: the pull of the back muscles grows from 2580 N to 2680 N: 3.7 % more. As predicted.

To hold the trunk and the puppy, 465 N together, with the abdominals pulling 60.0 N, the back muscles pull
with 2680 N, and the lumbar joint carries 2990 N.

! A teaching model: plane, rigid and at rest. Real joints differ. Not for treatment, training load, lifting or
  equipment decisions; for those, local rules and licensed practice hold.
"""
BACK_7 = """\
Step 7: Bend, and lighter
=========================

New here: Two opposite effects. Changed: the direction of the trunk, 75° to the right of straight up (60° to
the right of straight up in step 1); the mass of the puppy, 3.0 kg (12 kg in step 1).

[Free-body diagram of the trunk: The body is cut free at the lumbar joint, marked by a circle. The trunk
points 15° above the horizontal, to the right. The back muscles pull back along the trunk, 15° below the
horizontal, to the left, on a line 5.0 cm from the lumbar joint. The weight of the trunk pulls straight down,
28 cm from the lumbar joint. The weight of the puppy pulls straight down, 44 cm from the lumbar joint. The
force of the sacrum acts at the lumbar joint, drawn in two parts, along the trunk and across it.
Counter-clockwise counts as positive.]

The forces on the trunk.

Larger, smaller or the same as in step 1? Two effects pull opposite ways. The trunk and the puppy have a
longer lever arm, and turn against the back muscles. That asks for more. The puppy is lighter, and turns
against the back muscles. That asks for less. Signs alone do not tell which wins, so only the numbers can say
whether the pull of the back muscles is larger or smaller.

Not written out again. As at the start: m_T = 35.36 kg; W_T = 346.88 N; where moments are taken, and which way
is positive.

1 Weights
---------

    W_P = m_P g = 3.0 kg × 9.81 m/s² = 29.43 N

2 Lengths and arms
------------------

    d_T⊥ = d_T sin 75° = (28 cm) sin 75° = 27.046 cm
    d_P⊥ = d_P sin 75° = (44 cm) sin 75° = 42.501 cm

3 The moments
-------------

    F_B d_B⊥ − W_T d_T⊥ − W_P d_P⊥ = 0
    F_B (5.0 cm) − (346.88 N)(27.046 cm) − (29.43 N)(42.501 cm) = 0
    F_B = 10 633 N·cm / 5.0 cm = 2126.5 N ≈ 2130 N

┌───────────────────────────────────────────────────────────────────────────┐
│ The back muscles pull with 2130 N, 15° below the horizontal, to the left. │
└───────────────────────────────────────────────────────────────────────────┘

4 The joint force
-----------------

    J_along − F_B − W_T cos 75° − W_P cos 75° = 0
    J_along − 2126.5 N − (346.88 N) cos 75° − (29.43 N) cos 75° = 0
    J_along = 2223.9 N ≈ 2220 N

    J_across − W_T sin 75° − W_P sin 75° = 0
    J_across − (346.88 N) sin 75° − (29.43 N) sin 75° = 0
    J_across = 363.49 N ≈ 363 N

┌───────────────────────────────────────────────────────────────────────────────────────────────────────────┐
│ The sacrum pushes the trunk with 2220 N along the trunk, away from the lumbar joint, and 363 N across it, │
│ 75° above the horizontal, to the left.                                                                    │
└───────────────────────────────────────────────────────────────────────────────────────────────────────────┘

Beside step 1: the pull of the back muscles falls from 2580 N to 2130 N: 17.6 % less.

To hold the trunk and the puppy, 376 N together, the back muscles pull with 2130 N, 5.7 times that, and the
lumbar joint carries 2250 N.

! A teaching model: plane, rigid and at rest. Real joints differ. Not for treatment, training load, lifting or
  equipment decisions; for those, local rules and licensed practice hold.
"""
BACK_8 = """\
Through all angles, 0° to 90°
-----------------------------

Before you look at the plot. The lever arm of what is sought stays the same, so the pull of the back muscles
can only follow the moments of the rest: it must be largest where their lever arms are longest, at 90°, and
smallest where they are shortest, at 0°.

[Pull of the back muscles against the angle: angle of the trunk, to the right of straight up runs from 0° to
90°. The pull of the back muscles is largest at 90°, 2980 N, and smallest at 0°, 0 N.]

Pull of the back muscles at each angle, every point worked and certified.

Angle by angle

Angle  The pull of the back muscles
-----  ----------------------------
   0°                           0 N
  15°                         771 N
  30°                        1490 N
  45°                        2110 N
  60°                        2580 N
  75°                        2880 N
  90°                        2980 N

The pull of the back muscles is largest at 90°, 2980 N, and smallest at 0°, 0 N.

! A teaching model: plane, rigid and at rest. Real joints differ. Not for treatment, training load, lifting or
  equipment decisions; for those, local rules and licensed practice hold.
"""
BACK_LAST = """\
Lifting with the back: all the answers
======================================

The series at a glance

Step   What happens             Answer                                           Change  Set beside
-----  -----------------------  ----------------------------------------------  -------  ----------
Start  Picking up a puppy       The pull of the back muscles: 2130 N
1      A heavier dog            The pull of the back muscles: 2580 N            +21.1 %  the start
2      Less bent                The pull of the back muscles: 1490 N            −42.3 %  step 1
3      What presses the disc    The lengthwise part of the joint force: 1220 N  −56.6 %  step 1
4      A table to lean on       The pull of the back muscles: 1970 N            −23.6 %  step 1
5      Wider back muscles       The pull of the back muscles: 2150 N            −16.7 %  step 1
6      Share of the belly       The pull of the back muscles: 2680 N             +3.7 %  step 1
7      Bend, and lighter        The pull of the back muscles: 2130 N            −17.6 %  step 1
8      Trunk through its range  The pull of the back muscles: 0 N to 2980 N

[Pull of the back muscles, step by step: Start: 2130 N; 1: 2580 N; 2: 1490 N; 4: 1970 N; 5: 2150 N; 6: 2680 N;
7: 2130 N.]

Pull of the back muscles, step by step.

! A teaching model: plane, rigid and at rest. Real joints differ. Not for treatment, training load, lifting or
  equipment decisions; for those, local rules and licensed practice hold.
"""
TIN_10 = """\
Step 10: From horizontal to hanging
===================================

New here: Muscle force against joint angle: the weights' lever arms shrink, and the muscle's does too.
Changed: the direction of the forearm and hand, 30° below the horizontal, to the right (horizontally to the
right in step 5); no longer the direction of pull of the elbow flexors: straight up; new: the turning sense of
the elbow flexors, counter-clockwise; the moment arm of the elbow flexors, 4.0 cm.

First one angle is worked in full, the one told here; then all of them are set beside each other.

"""
TIN_SWEPT = """\
Through all angles, 0° to 90°
-----------------------------

Before you look at the plot. More than one lever arm changes with the angle, those of the weights and that of
the pull, so signs alone do not tell where the pull of the elbow flexors is greatest: only the numbers can.

[Pull of the elbow flexors against the angle: angle of the forearm and hand, below the horizontal, to the
right runs from 0° to 90°. The pull of the elbow flexors is largest at 5°, 297 N, and smallest at 90°, 0 N.]

Pull of the elbow flexors at each angle, every point worked and certified.

Angle by angle, every second one of those that were worked

Angle  Moment arm of the elbow flexors  The pull of the elbow flexors
-----  -------------------------------  -----------------------------
   0°                          4.40 cm                          296 N
  10°                          4.33 cm                          296 N
  20°                          4.20 cm                          291 N
  30°                          4.00 cm                          282 N
  40°                          3.67 cm                          272 N
  50°                          3.30 cm                          254 N
  60°                          2.90 cm                          224 N
  70°                          2.50 cm                          178 N
  80°                          2.17 cm                          104 N
  90°                          1.90 cm                            0 N

The pull of the elbow flexors is largest at 5°, 297 N, and smallest at 90°, 0 N.

! A teaching model: plane, rigid and at rest. Real joints differ. Not for treatment, training load, lifting or
  equipment decisions; for those, local rules and licensed practice hold.
"""
TIN_VALUES = """\
angle (deg),moment arm of elbow flexors (cm),elbow flexors (N)
0,4.4,295.86068181818183
5,4.367,296.9620580363543
10,4.333,295.8712047935618
15,4.3,292.425507820318
20,4.200,291.25705660357744
25,4.100,287.76090125928766
30,4.0,281.8451530790833
35,3.833,278.2054480247414
40,3.667,271.9461951116785
45,3.5,263.00069010299774
50,3.300,253.56744062151847
55,3.100,240.86269301552232
60,2.9,224.44603448275862
65,2.700,203.76257744319997
70,2.500,178.09495052779693
75,2.3,146.49011663777182
80,2.167,104.31607764674678
85,2.033,55.80826998733187
90,1.9,0.0
"""
PROPOSAL = """\
# A proposal, each step of it worked once. Change what you like: titles, ideas, numbers, the order.
# The path of base is relative to this file.
title = "A crate of fish, step by step"
base = "../fish.toml"

[start]
title = "One load, one muscle"
idea = "one balance of moments"
ask = ["biceps"]
remove = ["forearm.mass", "forearm.com", "glove", "rope"]
set = { "forearm.direction" = "right", "biceps.direction" = "up" }

[[step]]
title = "The weight of the forearm"
idea = "a segment has a weight of its own, at its centre of mass"
set = { "forearm.mass" = "1.6 kg", "forearm.com" = "15 cm" }

[[step]]
title = "The glove too"
idea = "one term more in the same balance"
[[step.add.load]]
name = "glove"
weight = "4 N"
at = "30 cm"

[[step]]
title = "The rope too"
idea = "another force takes part"
[[step.add.force]]
name = "rope"
at = "20 cm"
direction = "up"
force = "10 N"

[[step]]
title = "The forearm at a slope"
idea = "which lever arms a slope changes, and which it leaves alone"
set = { "forearm.direction" = "20 deg below right" }

[[step]]
title = "The pull at an angle"
idea = "a lever arm is a distance times a sine"
set = { "biceps.direction" = "75 deg from back toward up" }

[[step]]
title = "What the joint carries"
idea = "a balance of forces after the balance of moments"
ask = ["biceps", "reaction"]

[[step]]
title = "The crate, half as heavy again"
idea = "the same equation, a new number"
ask = ["biceps"]
set = { "crate.mass" = "4.5 kg" }

[[step]]
title = "The greatest load"
idea = "the same balance, solved for a load"
from = 6
set = { "biceps.force" = "300 N", "crate.mass" = "?" }
ask = ["crate.mass"]

[[step]]
title = "The greatest distance"
idea = "the same balance, solved for a distance"
from = 6
set = { "biceps.force" = "300 N", "crate.at" = "?" }
ask = ["crate.at"]

[[step]]
title = "The forearm through its angles"
idea = "muscle force against joint angle"
from = 6
remove = ["biceps.direction"]
set = { "biceps.moment_arm" = "3.86 cm", "biceps.turns" = "counter-clockwise" }
ask = ["biceps"]
[step.sweep]
of = "forearm.direction"
direction = "? below right"
from = "0 deg"
to = "90 deg"
step = "5 deg"

[[step]]
title = "The angle sought"
idea = "the same balance, solved for an angle"
from = 6
ask = ["forearm.direction"]
remove = ["biceps.direction"]
set = { "biceps.moment_arm" = "3.86 cm", "biceps.turns" = "counter-clockwise", "biceps.force" = "160 N",
"forearm.direction" = "? below right" }
"""
FILE = """\
# a
# b
title = "T"
base = "b.toml"

[start]
title = "S"
set = { "a.b" = "1 kg" }

[[step]]
title = "One"
[[step.add.load]]
name = "jug"
[[step.add.load]]
name = "bag"

[[step]]
title = "Two"
[step.sweep]
of = "a.b"
arms = { biceps = "x.csv" }
"""
ARMS = [["20 deg", "2 cm"], ["90 deg", "4 cm"]]
LOW = [["0 deg", "2 cm"], ["90 deg", "4 cm"]]


# ---------------------------------------------------------------------- whole pages
@pytest.mark.parametrize(
    ("name", "number", "whole"),
    [
        ("oil-can", 0, OIL_FIRST),
        ("oil-can", 2, OIL_1),
        ("oil-can", 3, OIL_2),
        ("oil-can", 5, OIL_4),
        ("oil-can", 8, OIL_7),
        ("oil-can", 10, OIL_9),
        ("oil-can", -1, OIL_LAST),
        ("sw", 2, SWEEP),
        ("sw", -1, SWEEP_LAST),
        ("back", 7, BACK_6),
        ("back", 8, BACK_7),
        ("back", -1, BACK_LAST),
    ],
)
def test_a_page_word_for_word(name: str, number: int, whole: str) -> None:
    assert whole == page(name, number)


def test_the_ends_of_the_pages_of_sweeps_word_for_word() -> None:
    assert page("back", 9).endswith(BACK_8)
    assert page("tin", 11).startswith(TIN_10) and page("tin", 11).endswith(TIN_SWEPT)


def test_what_the_data_tell_of_each_step() -> None:
    assert (OIL_DATA, SWEEP_DATA) == (lines("oil-can"), lines("sw"))


def test_the_values_of_sweeps() -> None:
    for name, values in (("sw", SWEEP_VALUES), ("tin", TIN_VALUES)):
        assert values == series(name).csv().decode("utf-8-sig").replace("\r\n", "\n")


def test_a_proposal_word_for_word(tmp_path: Path) -> None:
    (tmp_path / "fish.toml").write_text(FISH, "utf-8")
    assert PROPOSAL == folded(suggested(tmp_path / "fish.toml", base="../fish.toml"))


def test_a_series_has_every_form_and_no_other(tmp_path: Path) -> None:
    found = series("sw")
    assert repr(found) == "<WorkedSeries 'sweep of a distance': 2 steps>" and not found.needs_a_person
    assert repr(found.steps[0]) == "<Worked step 0, 'The ankle weight': quadriceps 426 N>"
    assert repr(found.steps[1].points[0]) == "<Point 10: worked>"
    assert found.written("markdown").decode().count("\n---\n\n# ") == len(found.pages) - 1
    assert (found.json() + "\n").encode() == found.written("json")
    with pytest.raises(Fault, match='the format "docx"'):
        found.written("docx")
    assert found.save(tmp_path / "x.txt").read_text("utf-8") == found.text()
    assert found.save(tmp_path / "y.dat", "json").read_bytes() == found.written("json")
    with pytest.raises(Fault, match="no sweep, whose values"):
        series("follow").csv()


# ---------------------------------------------------------------------- what has changed
OLD = {
    "segment": [{"name": "forearm", "length": "36 cm", "mass": "1.5 kg"}],
    "load": [{"name": "jug", "mass": "2.4 kg", "at": "30 cm"}, {"name": "bag", "mass": "1 kg", "at": "20 cm"}],
    "muscle": [{"name": "biceps", "at": "4 cm", "direction": "up"}],
    "pivot": {"name": "elbow"},
    "neglect": ["the weight of hand"],
    "balanced": True,
    "course": {"g": "9.8 m/s^2"},
}


@pytest.mark.parametrize(
    ("change", "rows"),
    [
        ({}, []),
        ({"title": "x", "statement": "y", "ask": ["z"]}, []),
        ({"load": [OLD["load"][0]]}, [("the bag", "there", "taken away")]),  # type: ignore[index]
        (
            {"load": [{"name": " jug ", "mass": "-3 kg", "at": "30 cm"}, OLD["load"][1]]},  # type: ignore[index]
            [("the mass of the jug", "2.4\u00a0kg", "−3\u00a0kg")],
        ),
        (
            {"load": [*OLD["load"], {"name": "rope", "on": "forearm"}]},  # type: ignore[misc]
            [("the rope", "–", "new")],
        ),
        (
            {"muscle": [{"name": "biceps", "at": "4 cm", "direction": "70 deg from back toward up", "force": "?"}]},
            [
                ("the direction of pull of the biceps", "straight up", "at 70° to the bone, back and up"),
                ("the pull of the biceps", "sought", "sought"),
            ],
        ),
        (
            {"segment": [{"name": "forearm", "length": "36 cm", "weight": "15 N", "direction": "20 deg below right"}]},
            [
                ("the mass of the forearm", "1.5\u00a0kg", "–"),
                ("the weight of the forearm", "–", "15\u00a0N"),
                (
                    "the direction of the forearm",
                    "horizontally to the right",
                    "20° below the horizontal, to the right",
                ),
            ],
        ),
        (
            {"force": [{"name": "hand", "force": "5 N", "direction": "nowhere", "count": 2, "limit": "10 N/cm^2"}]},
            [
                ("the force of the hand", "–", "5\u00a0N"),
                ("the direction of the hand", "–", "nowhere"),
                ("the number of the hand", "–", "2"),
                ("the limit of the hand", "–", "10\u00a0N/cm²"),
            ],
        ),
        ({"course": "own.toml"}, [("g", "9.8\u00a0m/s²", "–"), ("course: from", "–", "own.toml")]),
        ({"pivot": {"name": "elbow", "bone": "humerus"}}, [("pivot: bone", "–", "humerus")]),
        (
            {"neglect": [], "balanced": False},
            [("left out", "the weight of hand", ""), ("at rest", "yes", "no")],
        ),
        (
            {"person": {"body_mass": {"a": "1 kg"}}},
            [("person: body mass", "–", "a 1\u00a0kg")],
        ),
    ],
)
def test_what_differs_is_told_in_rows(change: Mapping[str, Any], rows: Sequence[tuple[str, str, str]]) -> None:
    assert [Row(*each) for each in rows] == list(changes(OLD, {**OLD, **change}))


def test_the_segment_of_a_thing_is_told_where_there_are_two() -> None:
    hand = {"name": "hand", "length": "10 cm"}
    one, two = ({**OLD, "load": [{"name": "jug", "on": on}]} for on in ("forearm", "hand"))
    assert () == changes(one, two)
    more = {"segment": [*OLD["segment"], hand]}  # type: ignore[misc]
    assert (Row("the segment of the jug", "forearm", "hand"),) == changes({**one, **more}, {**two, **more})
    assert Row("the segment of the jug", "forearm", "hand") in changes(one, {**two, **more})


@pytest.mark.parametrize(
    ("share", "said"),
    [
        (8.54, "8.5 %"),
        (-20.0, "−20.0 %"),
        (0.0949, "0.09 %"),
        (0.095, "0.1 %"),
        (999.94, "999.9 %"),
        (999.95, "10.0 times"),
        (-1234.0, "12.3 times"),
    ],
)
def test_a_share_in_per_cent(share: float, said: str) -> None:
    assert said == per_cent(share)


# ---------------------------------------------------------------------- moments by hand
def force(arm: float | None, size: float | None, kind: str = "load", name: str = "W", reach: float = 1.0) -> Turner:
    """A known force: counter-clockwise with an arm above zero."""
    return Turner(name, kind, (arm or 0.0) * (size or 0.0) or (arm or 0.0), 0.0, size, arm, 0.0, reach)


def pull(arm: float | None, share: float = 1.0, name: str = "F", per: float = 0.0) -> Turner:
    """What is sought, or has a share in it."""
    return Turner(name, "muscle", 0.0, per or share * (arm or 0.0), None, arm, share, 1.0)


def balance(*turners: Turner, parallel: bool = False, arm: float = 4.0) -> Balance:
    whole = {
        each.name: each for each in (*turners, *(() if any(each.name == "F" for each in turners) else (pull(arm),)))
    }
    return Balance("F.force", "F", whole, parallel)


LOADED = balance(force(-30.0, 10.0))


@pytest.mark.parametrize("side", [1, -1])
@pytest.mark.parametrize(
    ("before", "after", "found"),
    [
        ([(-30, 10)], [(-30, 20)], [("larger", RISES, True, 2.0)]),
        ([(-30, 10)], [(-30, 5)], [("smaller", FALLS, True, 0.5)]),
        ([(-30, 10)], [(-40, 10)], [("farther", RISES, True, 0.0)]),
        ([(-30, 10)], [(-20, 10)], [("nearer", FALLS, True, 0.0)]),
        ([(-30, 10)], [(-15, 20)], [("larger", RISES, True, 0.0), ("nearer", FALLS, True, 0.0)]),
        ([(-30, 10)], [(30, 10)], [("other side", FALLS, False, 0.0)]),
        ([(30, 10)], [(30, 20)], [("larger", FALLS, False, 2.0)]),
        ([(30, 10)], [(40, 10)], [("farther", FALLS, False, 0.0)]),
        ([], [(-30, 10)], [("new", RISES, True, 0.0)]),
        ([], [(30, 10)], [("new", FALLS, False, 0.0)]),
        ([(-30, 10)], [], [("gone", FALLS, True, 0.0)]),
        ([(30, 10)], [], [("gone", RISES, False, 0.0)]),
        ([(-30, None)], [(-40, None)], [("other", RISES, True, 0.0)]),
        ([(-30, 10)], [(-30, 10)], []),
    ],
)
def test_each_effect_of_a_known_force(
    before: list[tuple[float, float]],
    after: list[tuple[float, float]],
    found: list[tuple[str, int, bool, float]],
    side: int,
) -> None:
    """The sought pull turns counter-clockwise; the mirror image of both changes nothing."""
    old, new = (balance(*(force(side * arm, size) for arm, size in each), arm=side * 4.0) for each in (before, after))
    assert found == [(each.cause, each.sense, each.against, each.ratio) for each in effects(old, new)]
    assert {"W"} >= {each.name for each in effects(old, new)} and {"load"} >= {each.kind for each in effects(old, new)}


@pytest.mark.parametrize("side", [1, -1])
@pytest.mark.parametrize(
    ("before", "after", "found"),
    [
        ([("F", 4, 1)], [("F", 5, 1)], [("F", "longer arm", FALLS)]),
        ([("F", 4, 1)], [("F", 3, 1)], [("F", "shorter arm", RISES)]),
        ([("F", 4, 1)], [("F", 4, 1), ("G", 2, 0.5)], [("G", "shares", FALLS)]),
        ([("F", 4, 1), ("G", 2, 0.5)], [("F", 4, 1)], [("G", "shares no more", RISES)]),
        ([("F", 4, 1), ("G", 2, 0.5)], [("F", 4, 1), ("G", 2, 0.6)], [("G", "larger share", FALLS)]),
        ([("F", 4, 1), ("G", 2, 0.5)], [("F", 4, 1), ("G", 2, 0.4)], [("G", "smaller share", RISES)]),
        ([("F", 4, 1), ("G", -2, 0.5)], [("F", 4, 1), ("G", -3, 0.5)], [("G", "longer arm", RISES)]),
        (
            [("F", 4, 1), ("G", 2, 0.5)],
            [("F", 4, 1), ("G", 1, 1.0)],
            [("G", "shorter arm", RISES), ("G", "larger share", FALLS)],
        ),
        ([("F", 4, 1), ("G", -2, 0.5)], [("F", 4, 1), ("G", 3, 0.5)], [("G", "heavier", FALLS)]),
        ([("F", 4, 1), ("G", 3, 0.5)], [("F", 4, 1), ("G", -2, 0.5)], [("G", "lighter", RISES)]),
    ],
)
def test_each_effect_of_what_is_sought_and_what_shares_in_it(
    before: list[tuple[str, float, float]],
    after: list[tuple[str, float, float]],
    found: list[tuple[str, str, int]],
    side: int,
) -> None:
    old, new = (balance(*(pull(side * arm, share, name) for name, arm, share in each)) for each in (before, after))
    assert found == [(each.name, each.cause, each.sense) for each in effects(old, new)]
    assert all(each.against is None and each.kind == "muscle" for each in effects(old, new))


def test_moments_are_added_up() -> None:
    found = balance(force(-30.0, 10.0), force(20.0, 4.0, name="V"))
    assert (4.0, -220.0, 300.0) == (found.per, found.held, found.scale)
    assert 0.0 == Balance("F", "F", {}, False).scale


def test_moments_that_have_all_changed_alike() -> None:
    twice = balance(force(-60.0, 10.0), arm=8.0)
    assert (2.0, None, None) == (
        scaled(LOADED, twice),
        scaled(LOADED, balance(force(-60.0, 10.0))),
        scaled(LOADED, balance()),
    )
    assert scaled(LOADED, balance(force(60.0, 10.0), arm=-8.0)) is None
    assert scaled(LOADED, balance(force(-50.0, 10.0), arm=8.0)) is None


def weights(*sizes: float, arm: float = 4.0, kind: str = "weight", near: float = -10.0) -> Balance:
    return balance(force(near, sizes[0], kind), force(-30.0, sizes[1], "load", "V"), arm=arm)


def test_weights_that_have_all_changed_alike() -> None:
    old = weights(10.0, 20.0)
    assert 1.5 == weights_scaled(old, weights(15.0, 30.0))
    for new in (
        weights(15.0, 31.0),
        weights(10.0, 20.0),
        weights(15.0, 30.0, arm=5.0),
        weights(15.0, 30.0, near=-11.0),
        balance(force(-10.0, 15.0, "weight")),
        weights(0.0, 0.0),
    ):
        assert weights_scaled(old, new) is None
    assert weights_scaled(LOADED, balance(force(-30.0, 20.0))) is None
    assert weights_scaled(weights(10.0, 20.0, kind="force"), weights(15.0, 30.0, kind="force")) is None
    assert weights_scaled(balance(*old.turners.values(), pull(2.0, 0.5, "G")), weights(15.0, 30.0)) is None


@pytest.mark.parametrize(
    ("new", "was", "found"),
    [
        (balance(force(-30.0, 20.0)), 75.0, ("more", "effects")),
        (balance(force(-30.0, 5.0)), 75.0, ("less", "effects")),
        (balance(force(-30.0, 10.0), force(-5.0, 1.0, name="V")), 75.0, ("more", "effects")),
        (balance(force(-15.0, 30.0)), 75.0, ("open", "opposite")),
        (balance(force(-30.0, 10.0), arm=5.0), 75.0, ("less", "effects")),
        (balance(force(-30.0, 10.0), arm=5.0), -75.0, ("open", "turned over")),
        (balance(force(-30.0, 10.0), arm=5.0), 0.0, ("open", "turned over")),
        (balance(force(-30.0, 10.0), arm=-5.0), 75.0, ("open", "turned over")),
        (balance(force(-30.0, 10.0), force(0.0, 9.0, name="V")), 75.0, ("same", "no arm")),
        (balance(force(-30.0, 10.0), force(0.0, 9.0, name="U")), 75.0, ("same", "not in it")),
        (balance(force(-60.0, 10.0), arm=8.0), 75.0, ("same", "factor")),
        (balance(force(-60.0, 10.0), arm=8.0, parallel=True), 75.0, ("same", "slope")),
        (balance(force(-30.0, 20.0), arm=8.0, parallel=True), 75.0, ("same", "factor")),
        (balance(force(-60.0, 10.0, reach=2.0), arm=8.0, parallel=True), 75.0, ("same", "factor")),
        (None, 75.0, ("open", "no single balance")),
    ],
)
def test_each_ground_of_a_prediction(new: Balance | None, was: float, found: tuple[str, str]) -> None:
    old = balance(force(-30.0, 10.0), parallel=True)
    prediction = predict(old, new, was, touched=frozenset("V"))
    assert found == (prediction.way, prediction.ground)
    assert ("same", "question") == ((again := predict(old, new, was, True)).way, again.ground)


def test_weights_that_grow_alike_raise_a_pull_and_no_push() -> None:
    old, new = weights(10.0, 20.0), weights(15.0, 30.0)
    found = predict(old, new, 75.0)
    assert ("more", "weights", (), 1.5) == (found.way, found.ground, found.effects, found.factor)
    assert ("less", "weights") == ((back := predict(new, old, 75.0)).way, back.ground)
    assert "effects" == predict(old, new, 0.0).ground


def test_opposite_changes_may_cancel() -> None:
    made_up = balance(force(-15.0, 20.0))
    assert cancels(LOADED, made_up) and not cancels(LOADED, balance(force(-15.0, 20.1)))
    assert not cancels(LOADED, balance(force(-15.0, 20.0), arm=4.1))


# ---------------------------------------------------------------------- the joint force by hand
def joint(own: Mapping[str, float], per_moment: float, of: Balance) -> JointForce:
    return JointForce(of, own, per_moment)


def test_a_joint_force_is_the_sum_of_what_each_force_adds() -> None:
    found = joint({"W": -10.0, "F": 0.0}, -0.25, LOADED)
    assert {"W": 85.0, "F": 0.0} == found.parts and 75.0 == found.scale


@pytest.mark.parametrize(
    ("own", "per", "of", "found"),
    [
        ({"W": -20.0, "F": 0.0}, -0.25, balance(force(-30.0, 20.0)), ("more", "joint", ["larger"])),
        ({"W": -5.0, "F": 0.0}, -0.25, balance(force(-30.0, 5.0)), ("less", "joint", ["smaller"])),
        ({"W": -10.0, "F": 0.0}, -0.25, balance(force(-40.0, 10.0)), ("more", "joint", ["farther"])),
        ({"W": -10.0, "F": 0.0}, -0.25, balance(force(-20.0, 10.0)), ("less", "joint", ["nearer"])),
        ({"W": -10.0, "F": 0.0}, -0.25, LOADED, ("same", "forces kept", [])),
        ({"W": -20.0, "F": 0.0}, -0.25, balance(force(-40.0, 20.0)), ("open", "several", [])),
        ({"W": 10.0, "F": 0.0}, -0.25, LOADED, ("less", "joint", ["turned"])),
        ({"F": 0.0}, -0.25, balance(), ("less", "joint", ["gone"])),
        (
            {"W": -10.0, "F": 0.0, "V": -4.0},
            -0.25,
            balance(*LOADED.turners.values(), force(0.0, 4.0, name="V")),
            ("more", "joint", ["new"]),
        ),
        ({"W": -10.0, "F": 0.0}, 0.25, balance(force(-30.0, 10.0), arm=-4.0), ("open", "turned over", [])),
        ({"W": -10.0, "F": 0.0}, -0.2, balance(force(-30.0, 10.0), arm=5.0), ("less", "pull", ["longer arm"])),
        ({"W": -10.0, "F": 0.0}, -0.5, balance(force(-30.0, 10.0), arm=2.0), ("more", "pull", ["shorter arm"])),
        ({"W": -10.0, "F": 0.0}, -0.24, LOADED, ("less", "pull", ["turned"])),
    ],
)
def test_each_ground_of_a_prediction_for_the_joint_force(
    own: Mapping[str, float], per: float, of: Balance, found: tuple[str, str, list[str]]
) -> None:
    """A load of 10 N held by a pull: the joint force along one axis was 10 N + 75 N."""
    for turned in (1, -1):
        old = joint({name: turned * each for name, each in {"W": -10.0, "F": 0.0}.items()}, turned * -0.25, LOADED)
        new = joint({name: turned * each for name, each in own.items()}, turned * per, of)
        prediction = predict_joint([old], [new])
        assert found == (prediction.way, prediction.ground, [each.cause for each in prediction.effects])


def test_of_two_parts_both_must_go_one_way() -> None:
    here, more, less = (joint({"W": -size, "F": 0.0}, -0.25, balance(force(-30.0, size))) for size in (10.0, 20.0, 5.0))
    none = joint({"W": 0.0, "F": 0.0}, 0.0, balance(force(-30.0, 10.0)))
    assert ("question", "no single balance", "no single balance") == (
        predict_joint([], [], True).ground,
        predict_joint([], []).ground,
        predict_joint([here], [here, here]).ground,
    )
    for new, way, ground in (
        ([more, more], "more", "joint"),
        ([less, less], "less", "joint"),
        ([more, less], "open", "two parts"),
        ([here, here], "same", "forces kept"),
        ([here, more], "more", "joint"),
        ([less, here], "less", "joint"),
    ):
        found = predict_joint([here, here], new)
        assert (way, ground) == (found.way, found.ground)
    assert "more" == predict_joint([none, here], [none, more]).way


# ---------------------------------------------------------------------- series files
def fields(**values: object) -> Fields:
    return Fields(values, Origin("s.toml"))


def test_a_step_is_read_in_every_way_of_writing_it() -> None:
    step = step_of(
        fields(
            title="Up",
            idea=" a  load. ",
            **{"from": 1},
            set={"jug.mass": "4 kg", "biceps": {"at": "5 cm", "direction": "up"}, "neglect": ["x"], "a.b.mass": "1 kg"},
            add={"load": {"name": "bag"}, "force": [{"name": "rope"}, {"name": "hand"}]},
            remove=["hand", "jug . at"],
            ask=["biceps"],
            follow=" biceps  brachii ",
        ),
        3,
    )
    assert (3, "Up", "a load", "", 1, 1) == (
        step.number,
        step.title,
        step.idea,
        step.statement,
        step.origin,
        step.compare,
    )
    assert {
        ("jug", "mass"): "4 kg",
        ("biceps", "at"): "5 cm",
        ("biceps", "direction"): "up",
        ("", "neglect"): ["x"],
        ("a.b", "mass"): "1 kg",
    } == step.set
    assert {"load": ({"name": "bag"},), "force": ({"name": "rope"}, {"name": "hand"})} == step.add
    assert ((("", "hand"), ("jug", "at")), ("biceps",), "biceps brachii") == (step.remove, step.ask, step.follow)
    plain = step_of(fields(title="x", ask=["a"], compare=0), 2)
    assert (1, 0, None, {}, {}) == (plain.origin, plain.compare, plain.sweep, plain.set, plain.add)
    assert (0, "", 0) == ((start := start_of(fields(idea="one"))).number, start.title, start.origin)


@pytest.mark.parametrize(
    ("values", "key", "found"),
    [
        ({"set": {"a.b": 1}}, "title", "nothing"),
        ({"title": "x"}, "", "a step that changes nothing"),
        ({"title": "x", "ask": ["a"], "from": 2}, "from", "2"),
        ({"title": "x", "ask": ["a"], "from": -1}, "from", "-1"),
        ({"title": "x", "ask": ["a"], "compare": True}, "compare", "true"),
        ({"title": "x", "ask": ["a"], "from": "1"}, "from", '"1"'),
        ({"title": "x", "set": 1}, "set", "1"),
        ({"title": "x", "add": {"pivot": {}}}, "add.pivot", 'the key "pivot"'),
        ({"title": "x", "ask": ["a"], "base": "y"}, "base", 'the key "base"'),
    ],
)
def test_a_step_at_fault_is_told_where(values: dict[str, Any], key: str, found: str) -> None:
    with pytest.raises(Fault) as caught:
        step_of(fields(**values), 2)
    assert key == caught.value.key and found in caught.value.found


def test_sixty_steps_are_the_most(tmp_path: Path) -> None:
    (tmp_path / "base.toml").write_text(FISH, "utf-8")
    step = {"title": "x", "ask": ["biceps"]}
    top = {"title": "T", "base": "base.toml", "step": [step] * MOST_STEPS}

    def read(**change: object) -> Series:
        (tmp_path / "s.toml").write_text(written({**top, **change}), "utf-8")
        return read_series(tables_of(tmp_path / "s.toml"))

    found = read()
    assert (61, "T", "", 60) == (len(found.steps), found.title, found.intro, found.steps[-1].number)
    for change, key in (
        ({"step": [step] * 61}, "step"),
        ({"title": ""}, "title"),
        ({"base": ""}, "base"),
        ({"step": [step, {"title": "x", "ask": ["biceps"], "from": 9}]}, "step 2: from"),
        ({"step": [{"title": "x"}]}, "step 1"),
    ):
        with pytest.raises(Fault) as caught:
            read(**change)
        assert key == caught.value.key


def problem_tables() -> dict[str, Any]:
    return {
        "title": "Jug",
        "ask": ["biceps", "jug.weight"],
        "mark": {"x": 1},
        "accept": [{}],
        "neglect": ["x"],
        "course": "own.toml",
        "pivot": {"name": "elbow"},
        "segment": [{"name": "forearm", "length": "40 cm"}],
        "load": [{"name": "jug", "mass": "3.0 kg", "at": "33 cm"}],
        "muscle": [{"name": "biceps", "at": "4.0 cm", "direction": "up", "on": "forearm"}],
    }


def after(**values: object) -> dict[str, Any]:
    return changed(problem_tables(), step_of(fields(title="Next", **values), 1))


def test_what_a_step_does_to_the_tables() -> None:
    plain = after(ask=["jug.mass"])
    assert ("Next", ["jug.mass"], "forearm") == (plain["title"], plain["ask"], plain["load"][0]["on"])
    assert "mark" not in plain and "accept" not in plain
    heavy = after(set={"jug.weight": "30 N", "jug.point": ["1 cm", "2 cm"], "biceps.toward": ["0 cm", "9 cm"]})
    assert {"name": "jug", "weight": "30 N", "point": ["1 cm", "2 cm"], "on": "forearm"} == heavy["load"][0]
    assert {"name": "biceps", "at": "4.0 cm", "on": "forearm", "toward": ["0 cm", "9 cm"]} == heavy["muscle"][0]
    assert {"from": "own.toml", "g": "10 m/s^2"} == after(set={"course.g": "10 m/s^2"})["course"]
    assert (["y"], False) == ((top := after(set={"neglect": ["y"], "balanced": False}))["neglect"], top["balanced"])
    gone = after(remove=["jug", "neglect", "biceps.direction", "course"])
    assert ([], ["biceps"], False, False) == (gone["load"], gone["ask"], "neglect" in gone, "course" in gone)
    assert "direction" not in gone["muscle"][0]
    assert "ask" not in after(remove=["jug", "biceps"])
    more = after(add={"segment": {"name": "hand", "length": "9 cm"}, "load": {"name": "bag"}})
    assert ["forearm", "hand"] == [each["on"] for each in more["load"]]
    assert "forearm" == more["muscle"][0]["on"]
    told = changed(problem_tables(), step_of(fields(title="Next", ask=["x"], statement="Now."), 1))
    assert "Now." == told["statement"] and problem_tables() == problem_tables()


@pytest.mark.parametrize(
    ("values", "key", "found", "example"),
    [
        ({"remove": ["jgu"]}, "remove", '"jgu", which is not there', 'remove = ["jug"]'),
        ({"remove": ["jug.mas"]}, "remove", '"jug.mas", which is not there', 'remove = ["jug.mass"]'),
        ({"remove": ["person"]}, "remove", '"person", which is not there', ""),
        ({"set": {"jgu.mass": "1 kg"}}, "set", '"jgu", which is not there', 'set = { "jug.mass" = "4.0 kg" }'),
        ({"set": {"jug.mas": "1 kg"}}, "set", '"jug.mas", a key that is not known', 'set = { "jug.mass" = ... }'),
        ({"set": {"jug.mass": "3.0 kg"}}, "set", '"3.0 kg" for "jug.mass", which it is already', ""),
        ({"set": {"title": "x"}}, "set", '"title", a key that is not known here', 'set = { "jug.mass" = ... }'),
    ],
)
def test_a_change_that_cannot_be_made(values: dict[str, Any], key: str, found: str, example: str) -> None:
    with pytest.raises(Fault) as caught:
        after(**values)
    assert key == caught.value.key and found in caught.value.found and example in caught.value.example


# ---------------------------------------------------------------------- sweeps
def swept(**values: object) -> list[str]:
    return [f"{each:f}" for each in read_sweep(fields(**{"of": "jug.at", **values})).values]


def test_the_values_of_a_range_with_the_last_among_them() -> None:
    assert ["10", "15", "20"] == swept(**{"from": "10 cm"}, to="20 cm", step="5 cm")
    assert ["10", "17", "20"] == swept(**{"from": "10 cm"}, to="20 cm", step="7 cm")
    assert 11 == len(swept(**{"from": "10 cm"}, to="20 cm"))
    angle = {"of": "forearm.direction"}
    assert ["0", "5", "10"] == swept(**angle, to="10 deg")
    assert ["80", "90"] == swept(**angle, **{"from": "80 deg"}, to="90 deg", step="10 deg")
    assert 181 == len(swept(**angle, to="180 deg", step="1 deg"))
    assert "180" == swept(**angle, to="180 deg")[-1]


def test_a_sweep_says_what_it_goes_through() -> None:
    number = read_sweep(fields(**{"of": " big  jug . limit", "from": "1 N/cm^2"}, to="2 N/cm^2", show="1.5 N/cm^2"))
    assert ("big jug", "limit", "value", False, Decimal("1.5")) == (
        number.owner,
        number.key,
        number.word,
        number.is_angle,
        number.show,
    )
    assert "3\u00a0N/cm²" == number.told(Decimal(3))
    angle = read_sweep(fields(of="a.direction", direction="? below right", to="90 deg", show="0 deg"))
    assert ("angle", "7°", "? below right", Decimal(0)) == (
        angle.word,
        angle.told(Decimal(7)),
        angle.direction,
        angle.show,
    )
    assert read_sweep(fields(of="a.direction", to="90 deg")).show is None
    torque = read_sweep(fields(**{"of": "a.moment", "from": "1 N cm"}, to="2 N cm"))
    assert "1\u00a0N·cm" == torque.told(Decimal(1))


@pytest.mark.parametrize(
    ("values", "key"),
    [
        ({"of": "jug"}, "of"),
        ({"of": ".mass"}, "of"),
        ({"of": "jug."}, "of"),
        ({"of": "a.direction"}, "to"),
        ({"of": "a.direction", "to": "181 deg"}, "to"),
        ({"of": "a.direction", "to": "90 deg", "direction": "below right"}, "direction"),
        ({"of": "a.direction", "to": "90 deg", "direction": "? below ?"}, "direction"),
        ({"of": "a.direction", "to": "0 deg"}, "to"),
        ({"of": "a.direction", "to": "180 deg", "step": "0.99 deg"}, "step"),
        ({"of": "a.direction", "to": "90 deg", "show": "91 deg"}, "show"),
        ({"from": "1 cm"}, "to"),
        ({"to": "1 cm"}, "from"),
        ({"from": "1 cm", "to": "2 m"}, "to"),
        ({"from": "2 cm", "to": "2 cm"}, "to"),
        ({"from": "1 cm", "to": "2 cm", "step": "0 cm"}, "step"),
        ({"from": "1 cm", "to": "2 cm", "show": "0.9 cm"}, "show"),
        ({"from": "1 cm", "to": "2 cm", "show": "2.1 cm"}, "show"),
        ({"from": "1 cm", "to": "2 cm", "arms": {}}, "arms"),
        ({"from": "1 cm", "to": "2 cm", "direction": "?"}, "direction"),
        ({"from": "x", "to": "2 cm"}, "from"),
    ],
)
def test_a_sweep_at_fault(values: dict[str, Any], key: str) -> None:
    with pytest.raises(Fault) as caught:
        read_sweep(fields(**{"of": "jug.at", **values}))
    assert key == caught.value.key


@pytest.mark.parametrize(
    "pairs",
    [
        [["0 deg", "2 cm"]],
        [["0 deg", "2 cm"], ["0 deg", "3 cm"]],
        [["0 deg", "2 cm"], ["90 deg", "0 cm"]],
        [["0 deg", "2 cm"], ["90 deg"]],
        [["0 deg", "2 cm"], ["90 deg", 3]],
        [["0 deg", "2 cm"], ["90 cm", "3 cm"]],
        [["0 deg", "2 cm"]] * 501,
        5,
    ],
)
def test_arms_that_cannot_be(pairs: object) -> None:
    with pytest.raises(Fault) as caught:
        read_sweep(fields(of="a.direction", to="90 deg", arms={"biceps": pairs}))
    assert "arms.biceps" == caught.value.key


def test_an_arm_between_two_pairs_is_on_the_line_between_them() -> None:
    cm, mm = (("cm", 1),), (("mm", 1),)
    arms = Arms("b", ((Decimal(0), Quantity(Decimal(2), cm)), (Decimal(90), Quantity(Decimal(45), mm))))
    found = [arms.at(Decimal(angle)) for angle in (0, 45, 90)]
    assert [Decimal(2), Decimal("3.250"), Decimal("4.5")] == [each.number for each in found if each]
    assert (None, None) == (arms.at(Decimal(-1)), arms.at(Decimal(91)))


def swept_tables(**sweep: object) -> dict[str, Any]:
    step = step_of(fields(title="x", sweep=sweep), 1)
    assert step.sweep is not None
    return put_at(problem_tables(), step, step.sweep, Decimal("12.50"))


def test_a_value_is_put_where_it_belongs() -> None:
    assert "12.50 cm" == swept_tables(**{"of": "jug.at", "from": "1 cm"}, to="2 cm")["load"][0]["at"]
    heavy = swept_tables(**{"of": "jug.weight", "from": "1 N"}, to="2 N")["load"][0]
    assert ("12.50 N", False) == (heavy["weight"], "mass" in heavy)
    assert "12.50 m/s^2" == swept_tables(**{"of": "course.g", "from": "1 m/s^2"}, to="2 m/s^2")["course"]["g"]
    turned = swept_tables(of="forearm.direction", direction="? below right", to="90 deg")
    assert "12.50 deg below right" == turned["segment"][0]["direction"]


@pytest.mark.parametrize(
    ("sweep", "key", "found"),
    [
        ({"of": "jug.name", "from": "1", "to": "2"}, "sweep.of", '"jug.name", which is no number of "jug"'),
        ({"of": "biceps.force", "from": "1 N", "to": "2 N"}, "sweep.of", '"biceps.force", which is sought here'),
        ({"of": "jgu.at", "from": "1 cm", "to": "2 cm"}, "sweep.of", '"jgu", which is not there'),
        ({"of": "course.word", "from": "1", "to": "2"}, "sweep.of", "which is no number of"),
        ({"of": "jug.direction", "to": "90 deg"}, "sweep.of", '"jug", which is not there'),
        ({"of": "biceps.direction", "to": "90 deg"}, "sweep.direction", 'biceps has the direction "up"'),
        (
            {"of": "forearm.direction", "direction": "? below right", "to": "90 deg", "arms": {"biceps": ARMS}},
            "sweep.arms.biceps",
            "arms from 20 to 90 deg, but the sweep has 12.50 deg",
        ),
        (
            {"of": "forearm.direction", "direction": "? below right", "to": "90 deg", "arms": {"biceps": LOW}},
            "sweep.arms.biceps",
            "nothing tells which way biceps turns",
        ),
    ],
)
def test_a_sweep_of_what_cannot_be_swept(sweep: dict[str, Any], key: str, found: str) -> None:
    with pytest.raises(Fault) as caught:
        swept_tables(**sweep)
    assert key == caught.value.key and found in caught.value.found


# ---------------------------------------------------------------------- stories and files
STORY = "A jug of {jug.mass} hangs there.\n\nHow hard?\n"


@pytest.mark.parametrize(
    ("change", "statement"),
    [
        ({}, STORY),
        ({"load": [{"name": "jug", "mass": "4 kg", "at": "33 cm"}]}, STORY),
        (
            {"load": [{"name": "jug", "mass": "4 kg", "at": "30 cm"}]},
            "A jug of {jug.mass} hangs there.\n\n"
            "Here the distance of the jug is 30\u00a0cm, not 33\u00a0cm.\n\nHow hard?\n",
        ),
        ({"load": [{"name": "can", "mass": "4 kg", "at": "33 cm"}]}, None),
        ({"load": [{"name": "jug", "mass": "?", "at": "33 cm"}]}, None),
        ({"load": [{"name": "jug", "weight": "40 N", "at": "33 cm"}]}, None),
        ({"load": [{"name": "jug", "mass": "4 kg", "point": ["1 cm", "2 cm"]}]}, None),
        ({"ask": ["jug.mass"]}, None),
        ({"pivot": {"name": "knee"}}, None),
        ({"neglect": []}, None),
        ({"course": "other.toml"}, STORY),
    ],
)
def test_a_story_goes_on_where_it_stays_true(change: dict[str, Any], statement: str | None) -> None:
    assert statement == told(Story(STORY, problem_tables()), {**problem_tables(), **change}).get("statement")
    assert "statement" not in told(Story("No slot.", problem_tables()), {**problem_tables(), "statement": "x"})


def test_what_a_story_has_no_slot_for_stands_before_the_question_or_at_the_end() -> None:
    near = {**problem_tables(), "load": [{"name": "jug", "mass": "3.0 kg", "at": "30 cm"}]}
    more = "Here the distance of the jug is 30\u00a0cm, not 33\u00a0cm."
    for story, whole in (
        ("How far is {jug.mass}?", f"How far is {{jug.mass}}?\n\n{more}\n"),
        ("A {jug.mass}.\n \nThere.", f"A {{jug.mass}}.\n\nThere.\n\n{more}\n"),
    ):
        assert whole == told(Story(story, problem_tables()), near)["statement"]


def test_a_series_file_is_written_as_a_person_would() -> None:
    top = {
        "title": "T",
        "base": "b.toml",
        "start": {"title": "S", "set": {"a.b": "1 kg"}},
        "step": [
            {"title": "One", "add": {"load": [{"name": "jug"}, {"name": "bag"}]}},
            {"title": "Two", "sweep": {"of": "a.b", "arms": {"biceps": "x.csv"}}},
        ],
    }
    assert FILE == written(top, "a\nb")
    assert 'title = "T"\n' == written({"title": "T"})
