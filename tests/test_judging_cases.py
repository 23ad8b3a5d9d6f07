"""Small workings, each with the verdict that a fair examiner gives every line: in pounds and inches, with shares of the
body's weight, in kilonewtons, with angles, in tables, of several clauses, with an answer that stops short.

One row a line: what is written, then "|" and the verdict: holds, with "!" where a claim about the problem was checked;
carried, with the line that it follows from; unclear; aside; or for a wrong line its slips, the likeliest first.
"""

from __future__ import annotations

from functools import cache
from typing import Any

import pytest
from test_judging_causes import NAMED
from test_judging_rules import JUG, LEG, OBLIQUE

from explain import work
from explain.api import Walkthrough
from explain.marking.slips.verdict import LineVerdict

# By hand: 3.0 x 6.0 + 10 x 14 = 158 lb in = 13.17 lb ft = 17.85 N m; pull 158/2.0 = 79 lb = 351.4 N; joint force
# 79 - 13 = 66 lb down. With 1 lb = 4.448 N and 1 in = 2.54 cm (NIST SP 811:2008, appendix B.8).
PAIL = {
    "title": "pail",
    "pivot": {"name": "elbow", "bone": "humerus"},
    "ask": ["biceps", "reaction"],
    "segment": [{"name": "forearm", "weight": "3.0 lb", "com": "6.0 in", "length": "14 in"}],
    "muscle": [{"name": "biceps", "at": "2.0 in", "direction": "up"}],
    "load": [{"name": "pail", "weight": "10 lb", "at": "14 in"}],
}
PROBLEMS: dict[str, dict[str, Any]] = {**NAMED, "pail": PAIL, "jug": JUG, "leg": LEG, "oblique": OBLIQUE}


@cache
def problem(name: str) -> Walkthrough:
    return work(PROBLEMS[name])


def told(line: LineVerdict) -> str:
    if line.verdict == "slips":
        return " ".join(each.slip for each in line.slips[:3])
    since = f" {line.since}" if line.since else ""
    return f"{line.verdict}{'!' if line.checked == 'claim' else ''}{since}"


def judged(name: str, rows: str) -> tuple[list[str], list[str]]:
    """The rows with the verdicts that they expect, and with those that the judge gives."""
    expected = [each.strip() for each in rows.strip().splitlines()]
    lines = [each.rpartition("|")[0].strip() for each in expected]
    found = problem(name).mark("\n".join(lines)).lines
    return expected, [f"{line} | {told(each)}" for line, each in zip(lines, found, strict=True)]


IN_POUNDS = """
M = 3*6 + 10*14 = 158 lb in | holds!
B = 158/2.0 = 79 lb | holds!
R = 79 - 13 = 66 lb down | holds!

total moment = 13.17 ft-lb | holds!
B = 79 lb | holds!

total moment = 13.17 foot pounds | holds!
total moment = 13.17 lb ft | holds!
total moment = 13.17 lbf-ft | holds!

total = 158 in-lb | holds!
total moment = 158 inch-pounds | holds!
M = 401.3 lb cm | holds!
M = 17.85 N m | holds!

10/2.2 = 4.545 | holds!
3/2.2 = 1.364 | holds!
4.545*35.56 + 1.364*15.24 = 182.4 | holds!
182.4/5.08 = 35.9 | holds!
35.9*9.81 = 352 N | holds!

14/12 = 1.167 ft | holds!
0.3556*3.28 = 1.166 ft | holds!
B = 351.4 N | holds!

W = 10 lb = 44.5 N | holds!
W = 10*4.448 = 44.48 N | holds!
biceps = 79 lb = 351.4 N | holds!

m = 10/2.2 = 4.545 kg | holds!
W = 4.545*9.81 = 44.6 N | holds!

14 in = 35.56 cm | holds!
6 in = 0.5 ft | holds!
10 lb = 4.54 kg | holds!
1 lb = 4.45 N | aside
1 in = 2.54 cm | aside

14 in * 2.54 = 35.56 cm | holds!
10*0.4536 = 4.536 kg | holds!
14*0.0254 = 0.3556 m | holds!

B = 17.85/0.0508 = 351.4 N | holds!
B = 351.4*0.225 = 79.0 lb | holds!

B = 351.4/4.45 = 79 lb | holds!

B = 351.4*4.45 = 1564 lb | multiply-for-divide

B = 351.4 N | holds!
= 79.0 lb | holds!

B = 400 N | pound-kilogram-slip
= 89.9 lb | carried 1

B*2 = 3*0.5 + 10*1.167 | inch-foot-mix
B = 6.58 lb | carried

B*2/12 = 3*6 + 10*14 | holds!
B = 948 lb | inch-foot-mix

W = 10*9.81 = 98.1 N | pound-as-mass pound-kilogram-slip
w = 3*9.81 = 29.43 N | carried
B = (98.1*14 + 29.43*6)/2 = 775 N | carried 2

W = 10*32.2 = 322 lb | pound-as-mass g-twice

14 in = 355.6 cm | decimal-shift mixed-length-units arithmetic-slip

14 in = 5.51 cm | mixed-length-units

14 in = 168 ft | inch-foot-mix

the pail is 10 lb = 22 kg | pound-kilogram-slip pound-as-mass

B = 158 lb | stopped-at-moment unit-label-wrong divide-one-term

B = 79 N | unclear

B = 79 lb | holds!
R = 79 + 13 = 92 lb down | reaction-wrong-sense sign-of-a-term

the forearm weighs 3.0 lb at 6.0 in: 18 lb in | holds!
the pail weighs 10 lb at 14 in: 140 lb in | holds!
together 158 lb in | holds!
the biceps pulls 79 lb | holds!

10*14 = 104 | digit-transposed arithmetic-slip
B = (18 + 104)/2 = 61 lb | carried 1

3*6 = 18 | holds!
10*14 = 140 | holds!
18 + 140 = 158 | holds!
158/2 = 79 | holds!

the pail weighs 10*4.45 = 44.5 N at 14*0.0254 = 0.356 m | holds!
the forearm 3*4.45 = 13.35 N at 6*0.0254 = 0.152 m | holds!
B = (44.5*0.356 + 13.35*0.152)/0.0508 = 351.8 N | holds!

10 lb * 0.4536 = 4.536 kg; 4.536*9.81 = 44.5 N | holds!

14 in = 1.167 ft | holds!
6 in = 0.5 ft | holds!
M = 10*1.167 + 3*0.5 = 13.17 ft lb | holds!
B = 13.17/0.1667 = 79 lb | holds!

M = 13.17 ft lb | holds!
B = 13.17/2 = 6.59 lb | inch-foot-mix

B = 79 lb = 35.8 kg | holds!
R = 66 lb = 293.6 N down | holds!

B*2 = 10*14 | segment-left-out
B = 70 lb | carried 1

B*2 = 3*6 + 10*6 | wrong-datum
B = 39 lb | carried 1
"""

SHARES = """
W = 0.84*60 = 50.4 kg | holds!
W = 50.4*9.81 = 494.4 N | holds!
F = 494.4*10/5.0 = 988.8 N | holds!
R = 988.8 + 494.4 = 1483 N | holds!

84 % of 588.6 N is 494.4 N | holds!
W = 84 % = 0.84 | holds!
abductors 1.68 times body weight | holds!
femur 2.52 times body weight | holds!

abductors = 168 % of body weight | holds!
R = 252 % of body weight | holds!

W = 0.84 BW | holds!
F = 0.84*10/5 = 1.68 BW | holds!
R = 1.68 + 0.84 = 2.52 BW | holds!

W = 0.84*60*9.81 = 494.4 N = 84 % BW | holds!

R = 168 % of body weight | unclear

R = 1.68 BW | unclear

W = 84*60*9.81 = 49442 N | percent-slip decimal-shift

W = 84 % of 60*9.81 = 49442 N | percent-slip

W = 8.4*60*9.81 = 4944 N | decimal-shift mixed-length-units percent-slip

W = 0.48*60*9.81 = 282.5 N | digit-transposed arithmetic-slip wrong-datum
abductors = 565 N | carried

W = 60*9.81 = 588.6 N | stance-leg-not-removed
F = 588.6*10/5 = 1177 N | carried 1

W = 0.84*60 = 50.4 N | mass-for-weight
F = 50.4*10/5 = 100.8 N | carried 1

W = 494.4 N | holds!
F = 494.4*5/10 = 247.2 N | arms-swapped wrong-datum torque-by-division

F = 100.8 kg | kilogram-answer mass-for-weight unit-label-wrong

F = 100.8 kg | holds!
F = 988.8 N | holds!

R = 151.2 kg | kilogram-answer mass-for-weight unit-label-wrong

R = 988.8 - 494.4 = 494.4 N | reaction-wrong-sense sign-of-a-term

body above the hip 0.84*588.6 = 494.4 N | holds!
its moment 494.4*10 = 4944 N cm | holds!
abductors 4944/5.0 = 988.8 N | holds!

F*5 = 494.4*10 | holds!
F = 98.88 N | decimal-shift digit-transposed

60 kg = 60 N | mass-for-weight

W = 60 kg = 588.6 N | holds!

F = 494.4*10/5 = 998.8 N | arithmetic-slip
R = 998.8 + 494.4 = 1493 N | carried 1

body above the hip 0.84*588.6 = 494.4 N | holds!

W = 0.84*588.6 = 494.4 N | holds!
so the femur pushes up with 0.84*588.6 = 494.4 N | reaction-omits-muscle reaction-equals-muscle
"""

UNITS = """
M = 12.07 N m | holds!
the moment of the jug is 971.2 N cm | holds!
the moment of the jug is 9.712 N m | holds!
the moment of the forearm is 24 kg cm | holds!
d = 4 cm = 0.04 m | holds!
the jug hangs 33 cm = 0.33 m out | holds!
1.6 kg = 1600 g | holds!

M = 235.4 + 971.2 = 1206.7 N m | torque-in-newton-centimetre-mislabelled unit-label-wrong mixed-length-units

the jug hangs 33 cm = 3.3 m out | mixed-length-units decimal-shift arithmetic-slip

m = 3.0 kg = 300 g | gram-kilogram-slip decimal-shift mixed-length-units

W = 3.0*10 = 30 N | holds!

W = 3.0*9.8 = 29.4 N | holds!

F = 301.7 | holds!

F = 301.7 kg | kilogram-answer unit-label-wrong mass-for-weight

F = 301.7 N m | unit-label-wrong stopped-at-moment

F = 301.7 cm | unit-label-wrong stopped-at-moment

F = 301.7 kN | gram-kilogram-slip decimal-shift mixed-length-units

F = 30.75 kg | kilogram-answer mass-for-weight unit-label-wrong

The biceps must pull 30.75 kg | kilogram-answer mass-for-weight unit-label-wrong

F*0.04 = 15.7*15 + 29.43*33 | mixed-length-units

W = 3.0/9.81 = 0.306 N | g-divided

W = 3.0*9.81*9.81 = 288.7 N | g-twice

F*4 = 1.6*15 + 29.43*33 | g-in-one-term-only g-twice

F*4 = 1.6*15 + 3.0*33 | mass-for-weight kilogram-answer g-in-one-term-only

W = 0.3*9.81 = 2.943 N | decimal-shift mixed-length-units percent-slip

M = 15.7*15 + 29.43*33 = 1206.7 | holds!
F = 1206.7/0.04 = 30168 N | mixed-length-units

M = 15.7*0.15 + 29.43*0.33 = 12.07 | holds!
F = 12.07/4 = 3.02 N | mixed-length-units

F = 301.7 N = 0.3017 kN | holds!
total = 1206.7 N cm = 12.067 N m | holds!
F = 12.067/0.04 = 301.7 N | holds!

W = m*g = 3.0*9.8 = 29.4 N | holds!
F = 301 N | holds!
"""

SHORT = """
F = 1206.7 N | unclear

F is 300 N | holds

R = 256.5 N | holds!

R = 0 | reaction-missing reaction-along-bone reaction-equals-muscle

J_y = 0 | reaction-missing reaction-along-bone reaction-equals-muscle

R = 301.7 + 15.7 + 29.43 = 346.8 N down | reaction-wrong-sense

R = 15.7 + 29.43 = 45.1 N up | reaction-omits-muscle

F = -301.7 N | negative-muscle sign-of-a-term up-positive-both-sides

F = 1206.7/4 = 310.7 N | digit-transposed arithmetic-slip

F = 1206.7/4 = 3017 N | decimal-shift arithmetic-slip mixed-length-units

15.7*15 = 225.5 | arithmetic-slip

15.7*15 = 253.5 | digit-transposed arithmetic-slip

F*4 = 15.7*36 + 29.43*33 | segment-at-tip

F*4 = 29.43*33 - 15.7*15 | term-moved-sign-kept sign-of-a-term

F*4 = 15.7*15 + 29.43*33 + 10 | unequal-net

F*4 - 15.7*15 - 29.43*33 = 50 | unequal-net sign-of-a-term
F = 314.2 N | carried 1

301.7 - 15.7 - 29.43 - R = 12 | unequal-net
R = 244.6 N | carried

F*4 - 15.7*15 - 29.43*33 = 0 | holds!
0 = 15.7*15 + 29.43*33 - 4F | holds!
15.7*15 + 29.43*33 - 4F = 0, so F = 301.7 N | holds!

F = 15.7*15 + 29.43*33/4 = 478.3 N | divide-one-term

F = 4/1206.7 = 0.0033 N | divide-wrong-way

F*4 = 15.7*15 | load-left-out

F*4 = 29.43*33 | segment-left-out

F + 15.7 + 29.43 = 0 | force-balance-only

F = 15.7 + 29.43 = 45.13 N | force-balance-only

M = 15.7*15 = 235.5 | holds!
F = 235.5/4 = 58.9 N | load-left-out

R = 256.6 N upwards | reaction-wrong-sense reaction-on-other-body wrong-quadrant

R = 45.13 - 301.7 = -256.6 N | holds!

F = 12.07/0.04 = 482.8 N | arithmetic-slip
"""

IN_A_ROW = """
part | N | cm | N cm | aside
forearm | 15.7 | 15 | 235.5 | holds!
jug | 29.43 | 33 | 917.2 | digit-transposed arithmetic-slip
sum | | | 1152.7 | carried 3
biceps | 288.2 | 4 | 1152.7 | carried 3

the forearm weighs 15.7 N, the jug 29.43 N; the moments are 235.5 N cm and 971.2 N cm -> F = 301.7 N | holds!

F*4=1206.7 => F=301.7N => R=256.6N down | holds!

F d = W1 a + W2 b | aside
F = (W1 a + W2 b)/d = (15.7*15 + 29.43*33)/4.0 = 301.7 N | holds!

F = 1206.7 | holds!
/ 4 = 301.7 N | holds!

m = 3.0 | holds!
x 9.81 = 29.43 N | holds!
= 29.4 N | holds!

F = (235.4 + 971.2)/4 = 301.7 N up | holds!
R = 301.7 - 15.7 - 29.43 = 256.5 N downward | holds!

F = 333 N | unclear
= 74.86 lb | unclear

three kilograms weigh 29.43 N | holds!
3 kg times 9.81 is 29.43 N | holds!
the moment of the jug is 29.43 times 33 = 971.2 N cm | holds!
forearm 15.7 N x 15 cm = 235.5 N cm; jug 29.43 N x 33 cm = 971.2 N cm; total 1206.7 N cm | holds!

a = 4, b = 15, c = 33 | holds!
F a = 15.7 b + 29.43 c | holds!
F = 301.7 N | holds!

F = 301.7 N; R = 301.7 - 45.13 = 256.6 N downwards | holds!
0.04 F = 12.07, F = 301.7 N | holds!
(15.7)(15) + (29.43)(33) = 1206.7 | holds!

g = 9.81 | aside
g: 10 | aside
taking g = 10 | aside
F = 302 N | holds!

F • 4 = 15.7 • 15 + 29.43 • 33 | holds!
F = 301.7 • N | holds!

W_total = 15.7 + 29.43 = 45.1 N | holds!
weights together: 45.13 N | holds!
R = 45.1 N | reaction-omits-muscle

F = 29.43*33/4 = 242.8 N | segment-left-out
R = 242.8 - 45.1 = 197.7 N down | carried 1

the weights together are 45.1 N | holds!
J = 301.7 - 45.1 = 256.6 N down | holds!
"""

KILONEWTONS = """
M = 9.0 kNm | holds!
S = 9.0/(4.0 cos 30) = 2.60 kN | tangent-for-sine sine-cosine-swap-muscle angle-wrong-reference

S = 4500 N | holds!
H_x = 3897 N to the right | holds!
H_y = 1250 N up | holds!

S = 4.5 kN, H_x = S cos 30 = 3.90 kN, H_y = 3.5 - S sin 30 = 1.25 kN | holds!
H = sqrt(3.90^2 + 1.25^2) = 4.09 kN | holds!
tan a = 1.25/3.90 | holds!
a = 17.8 deg | holds!

S = 4.5 kN | holds!
H_y = 3.5 + 2.25 = 5.75 kN | reaction-wrong-sense sign-of-a-term

S = 9.0/(4.0 sin 30) = -2.28 kN | radian-mode arithmetic-slip

arm = 4.0 cos 30 = 3.46 m | sine-cosine-swap-muscle angle-wrong-reference
S = 9.0/3.46 = 2.60 kN | carried 1

S*2.0 = 9.0 | holds!
S = 4.5 kN | holds!
therefore H_x = 0 | reaction-missing reaction-along-bone reaction-equals-muscle

S = 4.5 kN | holds!
H = (3.90, 1.25) kN | holds!

H_x = 3.90 kN, H_y = 1.25 kN up | holds!

S = 4.5 kN | holds!
H_x = 3.90 kN to the left | reaction-wrong-sense reaction-on-other-body wrong-quadrant

moments about the hinge: beam 1.5*2.0 = 3.0 kN m, bell 2.0*3.0 = 6.0 kN m, total 9.0 kN m | holds!

moments about the hinge: beam 1.5*2.0 = 3.0 kN m, bell 2.0*3.0 = 9.0 kN m | arithmetic-slip

M1 = 3.0 kNm | holds!
M2 = 6.0 kNm | holds!
M1 + M2 = 10.0 kNm | arithmetic-slip
S = 10.0/2.0 = 5.0 kN | carried 3

M1 = 3.0, M2 = 6.0 | holds!
S = (M1 + M2)/(4.0 sin 30) | holds!
S = 4.5 | holds!

W = 1.5 kN = 1500 N | holds!
S = 4.5 kN = 4500 N | holds!

W = 1.5 kN = 150 N | decimal-shift mixed-length-units

S = 4.5 kN = 450 N | decimal-shift mixed-length-units
"""

SEVERAL = """
tin 24.53 N | holds!
5.0 B + 3.0*0.5 B = 784.8 | holds!
6.5 B = 784.8 | holds!
B = 120.7 N | holds!
Br = 60.4 N | holds!
R = 120.7 + 60.4 - 24.53 = 156.6 N down | holds!

5.0 B + 3.0 B = 784.8 | adding-arms wrong-pivot-distance
B = 98.1 N | carried 1

B = 120.7 N | holds!
R = 120.7 - 24.53 = 96.2 N down | reaction-omits-muscle

B = 120.7 N, Br = 60.4 N, sum 181.1 N | holds!
R = 181.1 N | load-left-out

6.5 B = 784.8, B = 784.8*6.5 = 5101 N | multiply-for-divide

6.5 B = 784.8 | holds!
B = 102.7 N | digit-transposed arithmetic-slip divide-wrong-way
"""

TURNED = """
a = 15 sin 13 = 3.374 cm | holds!
F = 1200/3.374 = 355.6 N | holds!
R_x = 355.6 cos 13 = 346.5 N | holds!
R_y = 355.6 sin 13 - 40 = 40 N | holds!
R = sqrt(346.5^2 + 40^2) = 348.8 N | holds!

a = 15 cos 13 = 14.6 cm | sine-cosine-swap-muscle angle-wrong-reference
F = 1200/14.6 = 82.1 N | carried 1

a = 15 sin 13 = 6.3 cm | radian-mode arithmetic-slip
F = 1200/6.3 = 190.5 N | carried 1

F = 355.6 N | holds!
R_x = 355.6 sin 13 = 80 N | reaction-components-swapped sine-cosine-swap-load sine-cosine-swap-muscle
R_y = 355.6 cos 13 - 40 = 306.5 N | carried 2

1200 N cm = 12 N m | holds!

1200 N cm = 12 N m = 0.12 N m | decimal-shift mixed-length-units
"""

ALONG_A_CHAIN = """
r = 26 + 9 = 35 cm | holds!
M = 4.905*35 cos 20 + 9.81*12 cos 20 = 272 N cm | holds!
B = 272/(4.0 cos 20) = 72.4 N | holds!

M = 4.905*35 + 9.81*12 = 289.4 N cm | angle-ignored-load
B = 289.4/(4.0 cos 20) = 77.0 N | carried 1

M = 4.905*35 sin 20 + 9.81*12 sin 20 = 99.0 N cm | sine-cosine-swap-load angle-wrong-reference
B = 99.0/3.759 = 26.3 N | carried 1

cos 20 = 0.408 | radian-mode arithmetic-slip

cos 20 = 0.94 | holds!
B = 72.4 N | holds!
"""

OF_A_LEG = """
thigh: 7.5*9.81*18 = 1324 N cm | holds!
shank: 3.5*9.81*61 = 2094 N cm | holds!
F = (1324 + 2094)/4.5 = 759.6 N | holds!

shank: 3.5*9.81*19 = 652.4 N cm | chain-distance-not-added
F = (1324 + 652.4)/4.5 = 439.2 N | carried 1

shank: 3.5*9.81*(42 + 43) = 2918 N cm | segment-at-tip
F = (1324 + 2918)/4.5 = 942.7 N | carried 1

thigh: 7.5*9.81*21 = 1545 N cm | com-at-midpoint
F = (1545 + 2094)/4.5 = 808.7 N | carried 1
"""

SLANTING = """
F_B*4.0*sin70 = 29.43*33 | holds!
F_B = 258.4 N | holds!
J_x = 88.4 N | holds!
J_y = 29.43 - 242.8 = -213.4 N | holds!
J = sqrt(88.4^2 + 213.4^2) = 231 N | holds!

F_B*4.0 = 971.2 | insertion-used-as-arm
F_B = 242.8 N | carried 1

F_B*4.0*cos70 = 971.2 | sine-cosine-swap-muscle angle-wrong-reference tangent-for-sine
F_B = 709.9 N | carried 1
"""


def workings() -> list[tuple[str, str]]:
    own = (
        ("pail", IN_POUNDS),
        ("hip", SHARES),
        ("jug", UNITS),
        ("jug", SHORT),
        ("jug", IN_A_ROW),
        ("beam", KILONEWTONS),
        ("two", SEVERAL),
        ("shallow", TURNED),
        ("chain", ALONG_A_CHAIN),
        ("leg", OF_A_LEG),
        ("oblique", SLANTING),
    )
    return [(name, each) for name, text in own for each in text.strip().split("\n\n")]


@pytest.mark.parametrize(("name", "rows"), workings())
def test_each_line_has_the_verdict_of_a_fair_examiner(name: str, rows: str) -> None:
    expected, found = judged(name, rows)
    assert expected == found


@pytest.mark.parametrize(
    ("line", "note"),
    [
        (
            "15.7*15 = 235.5 + 971.2 = 1206.7/4 = 301.7",
            "The equals signs run on from one step to the next; the numbers are right.",
        ),
        ("15.7*15 = 235.5 + 971.2 = 1206.7", "run on"),
        ("R = 256.5 N", "direction"),
    ],
)
def test_what_is_said_of_a_line_that_holds(line: str, note: str) -> None:
    found = problem("jug").mark(line).lines[0]
    assert "holds" == found.verdict and note in found.note


@pytest.mark.parametrize(
    ("name", "lines", "answers"),
    [
        ("jug", "F = 301.7 N\nR = 256.5 N down", "1 biceps 301.7 N right; 2 reaction 256.5 N right"),
        ("jug", "F = 242.8 N\nR = 197.7 N down", "1 biceps 242.8 N; 2 reaction 197.7 N"),
        ("jug", "F = 333 N", "1 biceps 333 N"),
        ("jug", "", ""),
        (
            "beam",
            "S = 4.5 kN\nH_x = 3.90 kN to the right\nH_y = 1.25 kN up",
            "1 cable 4.5 kN right; 2 reaction.right 3.9 kN right; 3 reaction.up 1.25 kN right",
        ),
        (
            "beam",
            "S = 4.5 kN\nH_x = 3.90 kN to the left\nH_y = 2.25 kN up",
            "1 cable 4.5 kN right; 2 reaction.right 3.9 kN; 3 reaction.up 2.25 kN",
        ),
        ("pail", "B = 79 lb\nR = 293.6 N down", "1 biceps 79 lb right; 2 reaction 293.6 N right"),
        (
            "hip",
            "abductors = 1.68 BW\nR = 252 % of body weight",
            "1 abductors 1.68 BW right; 2 reaction 2.52 BW right",
        ),
        ("hip", "F = 100.8 kg", "1 abductors 100.8 kg"),
        (
            "shallow",
            "F = 355.6 N\nR_x = 346.5 N\nR_y = 40 N\nR = 348.8 N",
            "1 deltoid 355.6 N right; 4 reaction 348.8 N right",
        ),
        (
            "shallow",
            "F = 82.1 N\nR_x = 80 N\nR_y = 21.5 N\nR = 82.8 N",
            "1 deltoid 82.1 N; 4 reaction 82.8 N carried",
        ),
        (
            "two",
            "B = 120.7 N\nBr = 60.4 N\nR = 156.6 N down",
            "1 biceps 120.7 N right; 2 brachialis 60.4 N right; 3 reaction 156.6 N right",
        ),
    ],
)
def test_the_answers_of_a_working(name: str, lines: str, answers: str) -> None:
    found = [
        " ".join(
            [
                f"{each.line} {each.name} {each.value:g} {each.unit}",
                *(["right"] if each.right else []),
                *(["carried"] if each.carried else []),
            ]
        )
        for each in problem(name).mark(lines).answers
    ]
    assert answers == "; ".join(found)
