"""Knows what the sentences of the checks of balance and sign claim, and holds them against the true numbers."""

from __future__ import annotations

import math
import re
from collections.abc import Iterator

from .claims import Sentences, binder
from .page import NUMBER, Truth
from .solution import Statics

SENTENCES: Sentences = []
says = binder(SENTENCES)


@says(
    r"About the (?P<pivot>[^.]*?) (?P<a>{q}) turn counter-clockwise and (?P<b>{q}) clockwise: (?:they "
    r"balance|(?P<c>{q}) (?:are|is) left over)"
)
def put_back(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    (a, half_a), (b, half_b) = truth.quantity(found["a"]), truth.quantity(found["b"])
    rest = truth.quantity(found["c"])[0] if found["c"] else 0.0
    if abs(a - b - rest) > 2.0001 * max(half_a, half_b) and not (
        "round" in found.string and truth.agrees(found["a"], b)
    ):
        yield (
            "as printed they do not balance, and rounding is not named"
            if found["c"] is None
            else "the two sums do not differ by what is said"
        )
    moments = [truth.turning(name) for name in truth.expected.pulls]
    for text, sense in ((found["a"], 1), (found["b"], -1)):
        if not truth.agrees(text, sum(sense * m for m in moments if sense * m > 0)):
            yield f"{text} is not the sum of the moments that turn so"


def trailing_zeros(number: str) -> int:
    """Of a whole number; in this sentence all are rounded at one place, so the fewest of them tell which."""
    bare = number.replace("\u202f", "")
    return len(bare) - len(bare.rstrip("0"))


@says(
    r"About the (?:point where (?P<at>.*?) acts?|(?P<pivot>[^,]*)), counter-clockwise positive: "
    r"(?P<terms>.*?), together (?:(?P<left>{q})|0)(?P<to>[^.]*)"
)
def second_pivot(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    unit = re.search(rf"{NUMBER} ((?:\w+·)?\w+)$", found["terms"])
    names = truth.named(found["at"] or "")
    about = (truth.place(names[0]) if names else None) or (0.0, 0.0)
    total, allowed, finest = 0.0, 0.0, math.inf
    terms = re.findall(rf"(?:^|, )(?:the )?([^,]*?) ({NUMBER})(?=,| |$)", found["terms"])
    place = min((0.0 if "." in number else 0.5 * 10.0 ** trailing_zeros(number) for _, number in terms), default=0.0)
    for name, number in terms:
        text = f"{number} {unit[1] if unit else ''}"
        right = (
            truth.joint_turning(about)
            if name in ("joint force", "support force")
            else truth.turning(name, about)
            if name in truth.expected.pulls
            else math.nan
        )
        value, half = truth.quantity(text)
        half = max(half, place * truth.quantity(f"1 {unit[1]}")[0] if unit else 0.0)
        good = truth.agrees(text, right) or abs(value - right) <= half * 1.0001 + truth.drift
        if not good and abs(value - right) > 0.01 * abs(right):
            yield f"{name} turns with {right:.6g} N·m, not {text}"
        elif not good:
            yield f"{name} is wrong in the last figure: {right:.6g} N·m, not {text}"
        total, allowed, finest = total + value, allowed + half, min(finest, half)
    if found["left"] and abs(total - truth.quantity(found["left"])[0]) > finest:
        yield f"as printed the sum is {total:.6g} N·m, not {found['left']}"
    if abs(total) > allowed * 1.0001 + 1e-9 and not truth.shown:
        yield f"as printed the sum is {total:.6g} N·m, more than rounding explains"
    elif abs(total) > finest and "round" not in found[0]:
        yield f"as printed the sum is not nothing and rounding is not named ({total:.3g} N·m)"


@says(r"Upward and downward forces are both (?P<a>{q}), and the horizontal forces cancel")
def force_balance(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    ups = [truth.parts(name)[1] for name in truth.expected.pulls] + [truth.root.values.get("reaction.up", 0.0)]
    if not truth.agrees(found["a"], sum(up for up in ups if up > 0)):
        yield f"the upward forces add to {sum(up for up in ups if up > 0):.6g} N"


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


@says(
    r"All forces are parallel: (?P<a>{q}) one way and (?P<b>{q}) the other, and the joint makes up the "
    r"difference, (?P<c>{q})"
)
def parallel(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    (a, half_a), (b, half_b), (c, half_c) = (truth.quantity(found[key]) for key in "abc")
    if abs(abs(a - b) - c) > half_a + half_b + half_c + 1e-9:
        yield "the difference of the printed forces is another"
    if not truth.agrees(found["c"], truth.expected.value("reaction")[0]):
        yield "the joint force is another"


@says(
    r"pulls? the body to the (?P<way>left|right); nothing else is horizontal, so the joint must push it to the "
    r"(?P<back>left|right), and just as hard: (?P<a>{q})"
)
def oblique(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    right = truth.root.values["reaction.right"]
    if (right > 0) != (found["back"] == "right") or found["way"] == found["back"]:
        yield "the joint pushes the other way"
    if not truth.agrees(found["a"], abs(right)):
        yield f"the level part is {abs(right):.6g} N"


@says(r"(?P<a>[0-9.]+)° balances too, but (?:is the larger turn|lies outside)")
def other_angle(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    roots = [root.unknown for root in truth.case.solution.roots]
    if not any(abs((root - float(found["a"]) + 180) % 360 - 180) < 0.06 for root in roots):
        yield f"the roots are {[round(root, 2) for root in roots]}"
    if "larger turn" in found[0] and float(found["a"]) < truth.root.unknown:
        yield f"it is the smaller one: {truth.root.unknown:.2f}° is told"


@says(r"(?:The pull|All pulls) came out positive")
def positive(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    sizes = [
        truth.root.sizes[muscle["name"]]
        for muscle in truth.case.problem.get("muscle", [])
        if muscle.get("force", "?") == "?"
    ]
    if any(size <= 1e-9 * truth.expected.largest for size in sizes):
        yield f"the pulls are {sizes}"


@says(r"Of (?:each of )?the (?P<name>{name}) the pull comes out negative")
def negative(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    if truth.root.sizes[found["name"]] >= 0:
        yield "it is positive"


@says(r"All forces are vertical, so the slope")
def slope(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    level = [name for name in truth.expected.pulls if abs(truth.parts(name)[0]) > 1e-9 * truth.expected.largest]
    if level:
        yield f"not so of {level}"


@says(r"(?P<a>{q}) horizontal and (?P<b>{q}) vertical are left over")
def left_over(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    yield "nothing is left over in a right solution"


@says(
    r"(?P<needed>{q}) of friction are needed, and there are (?P<how>at most|up to) (?P<most>{q}) "
    r"\((?P<mu>{n}) times the normal force of (?P<normal>{q})\): "
    r"(?P<said>it holds, with (?P<spare>{q}) to spare|the body slips)"
)
@says(
    r"the friction is (?P<needed>{q}), of at most (?P<most>{q}) "
    r"\((?P<mu>{n}) times the normal force of (?P<normal>{q})\): all of it is used(?P<how>)(?P<said>)(?P<spare>)"
)
def friction(truth: Truth, found: re.Match[str]) -> Iterator[str]:
    along, across = Statics(truth.case.problem, {}).push(truth.root.values)
    most = float(truth.case.problem["pivot"]["friction"]) * across
    for text, right in ((found["needed"], abs(along)), (found["most"], most), (found["normal"], across)):
        if not truth.agrees(text, right):
            yield f"{text} is {right:.6g} N"
    if found["spare"] and not truth.agrees(found["spare"], most - abs(along), ratio=True):
        yield f"to spare are {most - abs(along):.6g} N"
    if found["said"] and found["said"].startswith("it holds") != (abs(along) <= most):
        yield "whether it holds is the other way round"
    if found["said"] and (found["how"] == "up to") != found["said"].startswith("it holds"):
        yield "what is said of the most does not go with the verdict"
