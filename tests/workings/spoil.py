"""Workings with a slip put in at its natural line, carried from there on with the student's own rounding; with two;
and slips of a line's own.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from random import Random

from explain.marking.slips.account import Account, Impossible, Spoilt
from explain.marking.slips.slip import SlipRule

from .problems import Worked
from .signs import UNITS
from .student import working
from .style import Style
from .working import Line, Truth, Working, balances, first_untrue, gap, noise

_UNIT = re.compile(r"(?<![A-Za-z])(?:N|lb)?[ .·*-]?(?:cm|m|in)\b")
LINE_SLIPS = (
    "arithmetic-slip",
    "kilogram-answer",
    "unit-label-wrong",
    "stopped-at-moment",
    "torque-in-newton-centimetre-mislabelled",
)


@dataclass(frozen=True, slots=True)
class Case:
    """A spoilt working, and what must be said of it: the numbers of the lines where a slip first shows, each with
    the slip.
    """

    working: Working
    expected: tuple[tuple[int, str], ...]
    about: str = ""


def fitted(worked: Worked, style: Style) -> Style:
    """The style with the unit of length that this problem's students use."""
    return replace(style, lengths="in") if worked.us else style


def base(worked: Worked, style: Style) -> Account:
    """The account as this student has it: own g, own unit of length."""
    data = {**worked.account.data, "g": style.g}
    if "*person.weight" in data:
        data["*person.weight"] *= style.g / worked.account.data["g"]
    return replace(worked.account, data=data, length=UNITS[fitted(worked, style).lengths])


def written(worked: Worked, account: Account, style: Style, seed: str) -> Working:
    return working(account, fitted(worked, style), Random(seed), joint=worked.joint, bone=worked.bone, us=worked.us)


def ways(rule: SlipRule, account: Account) -> list[Spoilt]:
    """Every way in which a slip spoils an account; those of a line's own are made here."""
    return [*rule.do(account), *_line_ways(rule.SLIP, account)]


def _line_ways(slip: str, account: Account) -> Iterator[Spoilt]:
    values = account.values()
    if slip == "stopped-at-moment":
        for unknown in account.unknowns:
            if not unknown.startswith("*angle "):

                def whole(
                    others: list[float], by: float, length: bool = unknown.endswith((".at", ".moment_arm"))
                ) -> float:
                    return sum(others) if length else sum(others) / account.length

                yield Spoilt(slip, replace(account, solves={**account.solves, unknown: whole}), unknown, "unknown")
    if slip == "arithmetic-slip":
        keys = [each.key for each in account.items if each.mass and each.key not in account.unknowns]
        keys += [f"*arm {each.name}" for each in account.items if any(leg.turned.function for leg in each.legs)]
        keys += [f"*moment {each.name}" for each in account.items if each.key not in account.unknowns]
        keys += [
            key
            for key in ("reaction.right", "reaction.up", "reaction", "*angle reaction")
            if abs(values.get(key, 0.0)) > 1e-6
        ]
        for key in keys:
            for factor in (1.1, 0.9, 1.3, 0.82):
                if key in values:
                    yield Spoilt(
                        slip, replace(account, fixed={**account.fixed, key: values[key] * factor}), key, "moment"
                    )


def spoilt_case(worked: Worked, rule: SlipRule, style: Style, seed: str) -> Case | None:
    """A working with one slip; None where the slip does not apply, does not show, or this student would not come to
    it.
    """
    account = base(worked, style)
    style = telling(rule.SLIP, style)
    try:
        right = written(worked, account, style, seed)
        if rule.SLIP in ("kilogram-answer", "unit-label-wrong", "torque-in-newton-centimetre-mislabelled"):
            return _relabelled(right, rule.SLIP, worked, Random(seed))
        truth = Truth(account)
        spread = noise(right, truth)
    except Impossible:
        return None
    options = ways(rule, account)
    Random(seed).shuffle(options)
    for spoilt in options[:6]:
        try:
            made = written(worked, spoilt.account, style, seed)
        except (Impossible, ZeroDivisionError):
            continue
        line = first_untrue(made, truth, spread, shows(rule.SLIP, truth, fitted(worked, style).lengths))
        if line is None or made.lines[line - 1].text in {each.text for each in right.lines}:
            continue
        if rule.SLIP == "arithmetic-slip" and not _shown_there(made, line, spoilt.touched):
            continue
        return Case(made, ((line, rule.SLIP),), f"{spoilt.touched} {spoilt.item}".strip())
    return None


def telling(slip: str, style: Style) -> Style:
    """The style with what makes a slip show: a sense in words where only the sense is wrong, a letter for the pull
    that is no weight's.
    """
    if slip in ("reaction-on-other-body", "reaction-wrong-sense"):
        return replace(style, sense="words") if style.sense in ("signed", "none") else style
    return replace(style, force="F_m") if slip == "force-balance-only" else style


def shows(slip: str, truth: Truth, unit: str) -> Callable[[Line], bool]:
    """Which lines can show a slip: an angle needs its reference; a length in another unit needs a unit, or a length
    beside it.
    """
    if slip == "arctan-upside-down":
        return lambda line: (
            "horizontal" in line.text
            or "vertical" in line.text
            or not any(each.key == "*angle reaction" for each in line.claims)
        )
    if slip == "mixed-length-units":
        other = {"m": 100.0, "cm": 0.01}.get(unit, 1.0)
        near = lambda claim: any(gap(replace(claim, value=claim.value / by), truth) < 0.05 for by in (1.0, other))  # noqa: E731
        return lambda line: bool(
            balances(line) or _UNIT.search(line.text) or not all(near(each) for each in line.claims)
        )
    return lambda line: True


def _shown_there(made: Working, line: int, key: str) -> bool:
    """Whether the value that was worked out wrongly stands in its line with what it was worked out from."""
    found = made.lines[line - 1]
    return (
        any(claim.key == key for claim in found.claims)
        and "=" in found.text
        and any(each in found.text for each in "*x×·∙⋅/+-−–(\\")
    )


def _relabelled(right: Working, slip: str, worked: Worked, random: Random) -> Case | None:
    """The right numbers with another unit behind them."""
    unit = "lb" if worked.us else "N"
    key = worked.account.unknowns[0]
    if not key.endswith((".force", ".weight")) or worked.us:
        return None
    new = {"kilogram-answer": "kg", "unit-label-wrong": random.choice(("N·m", "Nm", "N m", "m"))}.get(slip, "")
    lines, first = [], 0
    for number, line in enumerate(right.lines, 1):
        text = line.text
        if slip.startswith("torque"):
            for moment in (f"{unit}·cm", f"{unit} cm", f"{unit}*cm", f"{unit}cm", f"{unit}.cm", f"{unit}-cm"):
                text = text.replace(moment, moment.replace("cm", "m"))
        elif any(claim.key == key for claim in line.claims):
            for end in (f" {unit}", f"\\ \\text{{{unit}}}"):
                at = text.rfind(end)
                after = text[at + len(end) : at + len(end) + 1]
                if (
                    at >= 0
                    and not (after.isalnum() or after in "·*.-" and after)
                    and not text[at + len(end) :].startswith((" m", " cm"))
                ):
                    text = text[:at] + end.replace(unit, new) + text[at + len(end) :]
        if text != line.text and not first:
            first = number
        lines.append(replace(line, text=text))
    return Case(Working(tuple(lines)), ((first, slip),)) if first else None


def double_case(worked: Worked, rules: Sequence[SlipRule], style: Style, seed: str) -> Case | None:
    """A working with two slips that show in different lines, neither hiding the other."""
    random = Random(seed)
    account = base(worked, style)
    if len(rules) < 2:
        return None
    one, two = random.sample(list(rules), 2)
    firsts = ways(one, account)
    if not firsts:
        return None
    first = random.choice(firsts)
    try:
        seconds = [each for each in ways(two, first.account) if each.touched != first.touched]
    except Impossible:
        return None
    alone = {(each.touched, each.item, each.near): each for each in ways(two, account)}
    seconds = [each for each in seconds if (each.touched, each.item, each.near) in alone]
    if not seconds:
        return None
    second = random.choice(seconds)
    try:
        right = written(worked, account, style, seed)
        made = written(worked, second.account, style, seed)
        truths = [
            Truth(each) for each in (account, first.account, alone[second.touched, second.item, second.near].account)
        ]
    except (Impossible, ZeroDivisionError):
        return None
    spread = noise(right, truths[0])
    lines = [first_untrue(made, truth, spread) for truth in truths]
    begins, of_two, of_one = lines
    if begins is None or of_one is None or of_two is None or of_one == of_two or begins != min(of_one, of_two):
        return None
    found = sorted(((of_one, one.SLIP), (of_two, two.SLIP)))
    return Case(made, tuple(found), f"{first.touched}; {second.touched}")
