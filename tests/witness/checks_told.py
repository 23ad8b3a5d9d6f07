"""Knows what each sentence of a check claims, and holds it against the numbers printed and the true ones."""
from __future__ import annotations

import math
import re
from collections.abc import Iterator

from .page import NUMBER, Judge, Truth
from .quantities import si

SENTENCES: list[tuple[str, Judge]] = []


def says(pattern: str):  # type: ignore[no-untyped-def]
    def keep(judge: Judge) -> Judge:
        SENTENCES.append((pattern, judge))
        return judge
    return keep


@says(r"About the (?P<pivot>[^.]*?) (?P<a>{q}) turn counter-clockwise and (?P<b>{q}) clockwise: (?:they balance|(?P<c>{q}) (?:are|is) left over)")
def put_back(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    (a, half_a), (b, half_b) = truth.quantity(found["a"]), truth.quantity(found["b"])
    rest = truth.quantity(found["c"])[0] if found["c"] else 0.0
    if abs(a - b - rest) > 2.0001 * max(half_a, half_b) and not ("round" in found.string and truth.agrees(found["a"], b)):
        yield "as printed they do not balance, and rounding is not named" if found["c"] is None else "the two sums do not differ by what is said"
    moments = [truth.turning(name) for name in truth.expected.pulls]
    for text, sense in ((found["a"], 1), (found["b"], -1)):
        if not truth.agrees(text, sum(sense * m for m in moments if sense * m > 0)):
            yield f"{text} is not the sum of the moments that turn so"


@says(r"About the (?:point where (?P<at>.*?) acts?|(?P<pivot>[^,]*)), counter-clockwise positive: (?P<terms>.*?), together nothing(?P<to>[^.]*)")
def second_pivot(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    unit = re.search(rf"{NUMBER} ((?:\w+·)?\w+)$", found["terms"])
    names = truth.named(found["at"] or "")
    about = (truth.place(names[0]) if names else None) or (0.0, 0.0)
    total, allowed, finest = 0.0, 0.0, math.inf
    for name, number in re.findall(rf"(?:^|, )(?:the )?([^,]*?) ({NUMBER})(?=,| |$)", found["terms"]):
        text = f"{number} {unit[1] if unit else ''}"
        right = truth.joint_turning(about) if name.startswith("joint") else truth.turning(name, about) if name in truth.expected.pulls else math.nan
        value, half = truth.quantity(text)
        if not truth.agrees(text, right) and abs(value - right) > 0.01 * abs(right):
            yield f"{name} turns with {right:.6g} N·m, not {text}"
        elif not truth.agrees(text, right):
            yield f"{name} is wrong in the last figure: {right:.6g} N·m, not {text}"
        total, allowed, finest = total + value, allowed + half, min(finest, half)
    if abs(total) > allowed * 1.0001 + 1e-9 and not truth.shown:
        yield f"as printed the sum is {total:.6g} N·m, more than rounding explains"
    elif abs(total) > finest and "round" not in found[0]:
        yield f"as printed the sum is not nothing and rounding is not named ({total:.3g} N·m)"


@says(r"Upward and downward forces are both (?P<a>{q}), and the level forces cancel")
def force_balance(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    ups = [truth.parts(name)[1] for name in truth.expected.pulls] + [truth.root.values.get("reaction.up", 0.0)]
    if not truth.agrees(found["a"], sum(up for up in ups if up > 0)):
        yield f"the upward forces add to {sum(up for up in ups if up > 0):.6g} N"


@says(r"The lever arm of (?:each of )?the (?P<a>{name}) is (?P<arm>{q}), that of the (?P<b>{name}) (?P<far>{q}): (?P<times>{n}) times as long. "
      r"So the pull must be (?P<more>more than )?(?P<again>{n}) times the weight of the (?P<c>{name})(?:, and it is|; with the rest it is (?P<rest>{n}) times)")
def size_against_load(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    ratio, pull = truth.arm(found["b"]) / truth.arm(found["a"]), truth.root.sizes[found["a"]] / truth.root.sizes[found["b"]]
    for text, right in ((found["arm"], truth.arm(found["a"])), (found["far"], truth.arm(found["b"]))):
        if not truth.agrees(text, right):
            yield f"the arm {text} is {right:.6g} m"
    if not truth.agrees(found["times"], ratio, ratio=True):
        yield f"the arms are as {ratio:.4g}"
    (arm, half_arm), (far, half_far) = truth.quantity(found["arm"]), truth.quantity(found["far"])
    least, most = (far - half_far) / (arm + half_arm), (far + half_far) / max(arm - half_arm, 1e-9)
    if not truth.shown and not least * 0.95 <= truth.signed(found["times"]) <= most * 1.05:
        yield "the printed arms do not give the printed ratio"
    if found["rest"] and not truth.agrees(found["rest"], pull * truth.expected.tables[found["a"]][1].get("count", 1), ratio=True):
        yield f"the pull is {pull:.4g} times the weight"
    if found["rest"] and truth.signed(found["rest"]) < truth.signed(found["again"]):
        yield "more than a number that is larger"
    if not found["rest"] and not truth.agrees(found["again"], pull * truth.expected.tables[found["a"]][1].get("count", 1), ratio=True):
        yield f"the pull is {pull:.4g} times the weight"


@says(r"has the longer arm \((?P<arm>{q}) against (?P<far>{q})\), so it gets away with less than the weight it holds: (?P<a>{q}) against (?P<b>{q})")
def longer_arm(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    if not truth.quantity(found["arm"])[0] > truth.quantity(found["far"])[0]:
        yield "the arm printed is not the longer one"
    if not truth.quantity(found["a"])[0] < truth.quantity(found["b"])[0]:
        yield "the pull printed is not the smaller one"


@says(r"(?:(?P<same>Effort and load on one side), the (?P<nearer>effort|load) nearer|(?P<between>The .*? lies between effort and load)): "
      r"(?P<class>first|second|third) class about the .*?; mechanical advantage (?P<gain>{n}) \((?P<a>{q}) against (?P<b>{q}) for (?P<load>.*?)\). "
      r"(?P<won>Force is gained|Reach and speed are gained)?")
def lever(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    a, b = truth.quantity(found["a"])[0], truth.quantity(found["b"])[0]
    if found["same"] and (a < b) != (found["nearer"] == "effort") and a != b:
        yield f"{found['nearer']} is not the nearer one"
    if {"first": found["between"], "second": found["nearer"] == "load", "third": found["nearer"] == "effort"}[found["class"]] in (None, False):
        yield "the class does not go with the order"
    gain = truth.signed(found["gain"])
    if gain < 0:
        yield "a negative mechanical advantage"
    if found["won"] and a != b and (found["won"].startswith("Force") != (a > b)):
        yield "what is gained is the wrong way round"
    names = truth.named(found["load"])
    if names and not truth.agrees(found["b"], truth.arm(names[0])):
        yield f"the arm of the {names[0]} is {truth.arm(names[0]):.6g} m"
    if not a or not b:
        yield "a lever without arms"
    half_a, half_b = truth.quantity(found["a"])[1], truth.quantity(found["b"])[1]
    if b and not 0.95 * (a - half_a) / (b + half_b) <= gain <= 1.05 * (a + half_a) / max(b - half_b, 1e-9):
        yield f"the printed arms give {a / b:.3g}"


@says(r"close a triangle: (?P<a>{q}) − (?P<b>{q}) ≤ (?P<c>{q}) ≤ (?P<d>{q}) \+ (?P<e>{q})")
def triangle(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    a, b, c, d, e = (truth.quantity(found[key])[0] for key in "abcde")
    if not a - b <= c * (1 + 1e-12):
        yield "as printed the first inequality does not hold"
    if not c <= (d + e) * (1 + 1e-12):
        yield "as printed the second inequality does not hold"
    reaction = truth.expected.value("reaction")[0]
    if not truth.agrees(found["c"], reaction):
        yield f"the joint force is {reaction:.6g} N"


@says(r"All forces are parallel: (?P<a>{q}) one way and (?P<b>{q}) the other, and the joint makes up the difference, (?P<c>{q})")
def parallel(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    (a, half_a), (b, half_b), (c, half_c) = (truth.quantity(found[key]) for key in "abc")
    if abs(abs(a - b) - c) > half_a + half_b + half_c + 1e-9:
        yield "the difference of the printed forces is another"
    if not truth.agrees(found["c"], truth.expected.value("reaction")[0]):
        yield "the joint force is another"


@says(r"pulls? the body to the (?P<way>left|right); nothing else is level, so the joint must push it to the (?P<back>left|right), and just as hard: (?P<a>{q})")
def oblique(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    right = truth.root.values["reaction.right"]
    if (right > 0) != (found["back"] == "right") or found["way"] == found["back"]:
        yield "the joint pushes the other way"
    if not truth.agrees(found["a"], abs(right)):
        yield f"the level part is {abs(right):.6g} N"


@says(r"Perpendicular distances are the shortest ones: (?P<a>{q}) for (?:each of )?the (?P<name>{name}), which acts? (?P<b>{q}) from the")
def arm_not_longer(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    place = truth.place(found["name"])
    if not truth.agrees(found["a"], truth.arm(found["name"])):
        yield f"the arm is {truth.arm(found['name']):.6g} m"
    if place and not truth.agrees(found["b"], math.hypot(*place)):
        yield f"it acts {math.hypot(*place):.6g} m from the pivot"
    if truth.quantity(found["a"])[0] > truth.quantity(found["b"])[0]:
        yield "as printed the shortest distance is not the shorter one"


@says(r"level they would turn with (?P<a>{q}). At this slope it is (?P<b>{q}), in between")
def limits(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    if truth.quantity(found["b"])[0] > truth.quantity(found["a"])[0]:
        yield "as printed it is not in between"
    elif truth.quantity(found["b"])[0] == truth.quantity(found["a"])[0]:
        yield "as printed it is not in between but alike"
    if truth.quantity(found["b"])[0] <= 0:
        yield "nothing is not in between"
    names = [name for name, (table, _) in truth.expected.tables.items() if table in ("segment", "load") and name in truth.expected.pulls]
    weights = [truth.turning(name) for name in names]
    if len(truth.case.problem.get("segment", [])) == 1:
        along = math.radians(float(truth.root.body.angles[truth.case.problem["segment"][0]["name"]][0]))
        level = [truth.size(name) * (x * math.cos(along) + y * math.sin(along)) for name in names for x, y in [truth.place(name) or (0.0, 0.0)]]
        if not truth.agrees(found["a"], abs(sum(level))):
            yield f"level they would turn with {abs(sum(level)):.6g} N·m"
    if not truth.agrees(found["b"], abs(sum(weights))):
        yield f"the weights turn with {abs(sum(weights)):.6g} N·m"


@says(r"(?P<a>{q}) is a positive distance, on the stated side of the .*? and within the (?P<seg>{name})")
def on_the_limb(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    value, length = truth.root.unknown, si(truth.expected.tables[found["seg"]][1].get("length", "1e9 m"), "length")
    if value <= 0 or value > length * (1 + 1e-9):
        yield f"{value:.6g} m, and the length is {length:.6g} m"


@says(r"(?P<a>{q}) is beyond the end of the (?P<seg>{name})")
def beyond(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    if truth.root.unknown <= si(truth.expected.tables[found["seg"]][1]["length"], "length"):
        yield "it is within the segment"


@says(r"(?P<name>{name}) (?:acts?|lies) (?P<a>{q}) along the (?P<seg>{name}), which (?:is|are) only (?P<b>{q}) long")
def too_far(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    if truth.quantity(found["a"])[0] < truth.quantity(found["b"])[0]:
        yield "as printed it is within"
    elif truth.quantity(found["a"])[0] == truth.quantity(found["b"])[0]:
        yield "as printed the two lengths are alike"
    if not truth.agrees(found["b"], si(truth.expected.tables[found["seg"]][1]["length"], "length")):
        yield "another length"


@says(r"(?P<a>[0-9.]+) (?P<u>%)(?: of the (?:length|body mass))? is (?P<how>outside|within) the (?P<low>[0-9.]+) to (?P<high>[0-9.]+) %")
@says(r"(?P<a>[0-9.]+) (?P<u>cm|N m|N) is (?P<how>outside|within|longer than|shorter than) the (?P<low>[0-9.]+) to (?P<high>[0-9.]+) (?P=u)")
def between(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    a, low, high = (float(found[key]) for key in ("a", "low", "high"))
    if found["u"] in ("cm", "N m") and not any(truth.agrees(found["a"] + " " + found["u"], arm, ratio=True) for arm in known_sizes(truth, found["u"])):
        yield f"no muscle has {found['a']} {found['u']}"
    right = {"within": low <= a <= high, "outside": not low < a < high, "longer than": a >= high, "shorter than": a <= low}[found["how"]]
    if not right:
        yield f"{a} is not {found['how']} {low} to {high}"
    elif found["how"] != "within" and a in (low, high):
        yield f"as printed {a} is not {found['how']} {low} to {high}"


def known_sizes(truth: Truth, unit: str) -> list[float]:
    """Arms in metres, or moments, or pulls of muscles and couples."""
    names = [name for name, (table, _) in truth.expected.tables.items() if table in ("muscle", "couple")]
    if unit == "cm":
        return [truth.arm(name) for name in names]
    moments = [truth.turning(name) for name in names]
    if unit == "N":
        return [abs(truth.size(name)) / each for name in names for each in (1, int(truth.expected.tables[name][1].get("count", 1)))]
    return [abs(moment) for moment in [*moments, sum(m for m in moments if m > 0), sum(m for m in moments if m < 0), sum(moments)]]


@says(r"(?P<a>[0-9.]+) N is (?P<how>below|larger than|above) .*? allow, (?:(?P<low>[0-9.]+) to )?(?P<high>[0-9.]+) N")
def against_models(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    a, high = float(found["a"]), float(found["high"])
    if not any(truth.agrees(found["a"] + " N", size, ratio=True) for size in known_sizes(truth, "N")):
        yield f"no muscle pulls with {a} N"
    if (a > high) != (found["how"] != "below"):
        yield f"{a} against {high}"


@says(r"(?P<a>[0-9.]+)° balances too, but (?:is the larger turn|lies outside)")
def other_angle(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    roots = [root.unknown for root in truth.case.solution.roots]
    if not any(abs((root - float(found["a"]) + 180) % 360 - 180) < 0.06 for root in roots):
        yield f"the roots are {[round(root, 2) for root in roots]}"
    if "larger turn" in found[0] and float(found["a"]) < truth.root.unknown:
        yield f"it is the smaller one: {truth.root.unknown:.2f}° is told"


@says(r"(?:The pull|All pulls) came out positive")
def positive(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    sizes = [truth.root.sizes[muscle["name"]] for muscle in truth.case.problem.get("muscle", []) if muscle.get("force", "?") == "?"]
    if any(size <= 1e-9 * truth.expected.largest for size in sizes):
        yield f"the pulls are {sizes}"


@says(r"Of (?:each of )?the (?P<name>{name}) the pull comes out negative")
def negative(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    if truth.root.sizes[found["name"]] >= 0:
        yield "it is positive"


@says(r"All forces are (?:upright|vertical), so the slope")
def slope(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    level = [name for name in truth.expected.pulls if abs(truth.parts(name)[0]) > 1e-9 * truth.expected.largest]
    if level:
        yield f"not so of {level}"


@says(r"A moment of (?P<a>[0-9.]+) N m is (?P<how>within|above|beyond|more than) the roughly (?P<high>[0-9.]+) N m")
def strong(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    if not any(truth.agrees(found["a"] + " N m", size, ratio=True) for size in known_sizes(truth, "N m")):
        yield f"nothing turns with {found['a']} N m"
    if (float(found["a"]) <= float(found["high"])) != (found["how"] == "within"):
        yield f"{found['a']} against {found['high']}"


@says(r"(?P<a>{q}) level and (?P<b>{q}) upright are left over")
def left_over(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    yield "nothing is left over in a right solution"
