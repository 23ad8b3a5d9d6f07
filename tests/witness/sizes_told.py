"""Knows what sentences about arms, lengths, levers and usual sizes claim, and holds them against the truth."""

from __future__ import annotations

import math
import re
from collections.abc import Iterator

from .claims import Sentences, binder
from .page import Truth
from .quantities import si

SENTENCES: Sentences = []
says = binder(SENTENCES)


@says(
    r"The lever arm of (?:each of )?the (?P<a>{name}) is (?P<arm>{q}), that of the (?P<b>{name}) "
    r"(?P<far>{q}): (?P<times>{n}) times as long. "
    r"So the pull must be (?:(?P<more>more than )(?P<again>{n})|as many) times the weight of the (?P<c>{name})(?:, "
    r"and it is|; with the rest it is (?P<rest>{n}) times)"
)
def size_against_load(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    ratio, pull = (
        truth.arm(found["b"]) / truth.arm(found["a"]),
        truth.root.sizes[found["a"]] / truth.root.sizes[found["b"]],
    )
    for text, right in ((found["arm"], truth.arm(found["a"])), (found["far"], truth.arm(found["b"]))):
        if not truth.agrees(text, right):
            yield f"the arm {text} is {right:.6g} m"
    if not truth.agrees(found["times"], ratio, ratio=True):
        yield f"the arms are as {ratio:.4g}"
    (arm, half_arm), (far, half_far) = truth.quantity(found["arm"]), truth.quantity(found["far"])
    least, most = (far - half_far) / (arm + half_arm), (far + half_far) / max(arm - half_arm, 1e-9)
    if not truth.shown and not least * 0.95 <= truth.signed(found["times"]) <= most * 1.05:
        yield "the printed arms do not give the printed ratio"
    if found["rest"] and not truth.agrees(
        found["rest"], pull * truth.expected.tables[found["a"]][1].get("count", 1), ratio=True
    ):
        yield f"the pull is {pull:.4g} times the weight"
    if found["rest"] and truth.signed(found["rest"]) < truth.signed(found["again"]):
        yield "more than a number that is larger"
    if not found["rest"] and not truth.agrees(
        found["times"], pull * truth.expected.tables[found["a"]][1].get("count", 1), ratio=True
    ):
        yield f"the pull is {pull:.4g} times the weight"


@says(
    r"has the longer arm \((?P<arm>{q}) against (?P<far>{q})\), so it gets away with less than the weight "
    r"it holds: (?P<a>{q}) against (?P<b>{q})"
)
def longer_arm(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    if not truth.quantity(found["arm"])[0] > truth.quantity(found["far"])[0]:
        yield "the arm printed is not the longer one"
    if not truth.quantity(found["a"])[0] < truth.quantity(found["b"])[0]:
        yield "the pull printed is not the smaller one"


@says(
    r"(?:(?P<same>Effort and load on one side), the (?P<nearer>effort|load) nearer|(?P<between>The .*? "
    r"lies between effort and load)): "
    r"(?P<class>first|second|third) class about the .*?; mechanical advantage (?P<gain>{n}) \((?P<a>{q}) "
    r"against (?P<b>{q}) for (?P<load>.*?)\). "
    r"(?P<won>Force is gained|Reach and speed are gained)?"
)
def lever(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    a, b = truth.quantity(found["a"])[0], truth.quantity(found["b"])[0]
    if found["same"] and (a < b) != (found["nearer"] == "effort") and a != b:
        yield f"{found['nearer']} is not the nearer one"
    if {"first": found["between"], "second": found["nearer"] == "load", "third": found["nearer"] == "effort"}[
        found["class"]
    ] in (None, False):
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
    half_a, half_b, half = (truth.quantity(found[key])[1] for key in ("a", "b", "gain"))
    least, most = (a - half_a) / (b + half_b), (a + half_a) / max(b - half_b, 1e-9)
    if b and not 0.95 * least - half <= gain <= 1.05 * most + half:
        yield f"the printed arms give {a / b:.3g}"


@says(
    r"Perpendicular distances are the shortest ones: (?P<a>{q}) for (?:each of )?the (?P<name>{name}), "
    r"which acts? (?P<b>{q}) from the"
)
def arm_not_longer(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    place = truth.place(found["name"])
    if not truth.agrees(found["a"], truth.arm(found["name"])):
        yield f"the arm is {truth.arm(found['name']):.6g} m"
    if place and not truth.agrees(found["b"], math.hypot(*place)):
        yield f"it acts {math.hypot(*place):.6g} m from the pivot"
    if truth.quantity(found["a"])[0] > truth.quantity(found["b"])[0]:
        yield "as printed the shortest distance is not the shorter one"


@says(r"horizontal the (?:moment|torque) would be (?P<a>{q}). At this slope it is (?P<b>{q}), in between")
def limits(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    if truth.quantity(found["b"])[0] > truth.quantity(found["a"])[0]:
        yield "as printed it is not in between"
    elif truth.quantity(found["b"])[0] == truth.quantity(found["a"])[0]:
        yield "as printed it is not in between but alike"
    if truth.quantity(found["b"])[0] <= 0:
        yield "nothing is not in between"
    names = [
        name
        for name, (table, _) in truth.expected.tables.items()
        if table in ("segment", "load") and name in truth.expected.pulls
    ]
    weights = [truth.turning(name) for name in names]
    if len(truth.case.problem.get("segment", [])) == 1:
        along = math.radians(float(truth.root.body.angles[truth.case.problem["segment"][0]["name"]][0]))
        level = [
            truth.size(name) * (x * math.cos(along) + y * math.sin(along))
            for name in names
            for x, y in [truth.place(name) or (0.0, 0.0)]
        ]
        if not truth.agrees(found["a"], abs(sum(level))):
            yield f"horizontal (?:they|it) would turn with {abs(sum(level)):.6g} N·m"
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


@says(
    r"(?P<a>[0-9.]+) (?P<u>%)(?: of the (?:length|body mass))? is (?P<how>outside|within) the "
    r"(?P<low>[0-9.]+) to (?P<high>[0-9.]+) %"
)
@says(
    r"(?P<a>[0-9.]+) (?P<u>cm|N·m|N) is (?P<how>outside|within|longer than|shorter than) the "
    r"(?P<low>[0-9.]+) to (?P<high>[0-9.]+) (?P=u)"
)
def between(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    a, low, high = (float(found[key]) for key in ("a", "low", "high"))
    if found["u"] in ("cm", "N·m") and not any(
        truth.agrees(found["a"] + " " + found["u"], arm, ratio=True) for arm in known_sizes(truth, found["u"])
    ):
        yield f"no muscle has {found['a']} {found['u']}"
    right = {
        "within": low <= a <= high,
        "outside": not low < a < high,
        "longer than": a >= high,
        "shorter than": a <= low,
    }[found["how"]]
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
        return [
            abs(truth.size(name)) / each
            for name in names
            for each in (1, int(truth.expected.tables[name][1].get("count", 1)))
        ]
    return [
        abs(moment)
        for moment in [*moments, sum(m for m in moments if m > 0), sum(m for m in moments if m < 0), sum(moments)]
    ]


@says(
    r"A pull of (?P<a>[0-9.]+) (?P<u>N|lb) is (?P<how>within|between|larger than) .*? allow, "
    r"at most (?:(?P<low>[0-9.]+) to )?(?P<high>[0-9.]+) (?P=u)"
)
def against_models(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    a, low, high = float(found["a"]), float(found["low"] or found["high"]), float(found["high"])
    if not any(truth.agrees(f"{found['a']} {found['u']}", size, ratio=True) for size in known_sizes(truth, "N")):
        yield f"no muscle pulls with {a} {found['u']}"
    if not {"within": a <= low, "between": low <= a <= high, "larger than": a > high}[found["how"]]:
        yield f"{a} against {high}"


@says(r"A (?:moment|torque) of (?P<a>[0-9.]+) N·m is (?P<how>within|larger than) the roughly (?P<high>[0-9.]+) N·m")
def strong(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    if not any(truth.agrees(found["a"] + " N·m", size, ratio=True) for size in known_sizes(truth, "N m")):
        yield f"nothing turns with {found['a']} N·m"
    if (float(found["a"]) <= float(found["high"])) != (found["how"] == "within"):
        yield f"{found['a']} against {found['high']}"
