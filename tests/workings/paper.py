"""What a student has before them: the account with their own numbers in it, units, letters, the statements so far.
Knows no step of the working.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from random import Random

from explain.marking.slips.account import Account

from .names import Names
from .signs import POUND, UNITS, Bit, datum, put, rounded, unit_text
from .style import Style
from .working import Claim, Side, Statement


class Paper:
    """The account with the student's own numbers fixed in it, and the statements so far."""

    def __init__(self, account: Account, style: Style, random: Random, us: bool = False) -> None:
        self.account, self.style, self.random = account, style, random
        self.names = Names(account, style)
        self.us = us
        self.force_unit, self.push = ("lb", POUND) if us else ("N", 1.0)
        self.length_unit = style.lengths if (style.lengths in ("in", "ft")) == us else ("in" if us else "cm")
        self.length = UNITS[self.length_unit]
        self.moment_unit = random.choice(
            (
                f"{self.force_unit}·{self.length_unit}",
                f"{self.force_unit} {self.length_unit}",
                f"{self.force_unit}*{self.length_unit}",
                f"{self.force_unit}{self.length_unit}" if not us else "lb in",
                f"{self.force_unit}.{self.length_unit}",
                f"{self.force_unit}-{self.length_unit}",
            )
        )
        self.out: list[Statement] = []
        self.values = account.values()
        self.unknown = account.unknowns[0] if account.unknowns else ""
        self.sines: dict[tuple[str, float], tuple[str, float]] = {}
        self.shown: dict[str, Bit] = {}
        self.way = random.randrange(1000)

    # ------------------------------------------------------------------ numbers
    def pin(self, key: str, value: float) -> None:
        """From here on the student's own number stands for a key."""
        self.account = replace(self.account, fixed={**self.account.fixed, key: value})
        self.values = self.account.values()

    def meant(self, key: str) -> float:
        """What an expression for a key stands for as it is written, whatever the calculator or the student made of
        it.
        """
        fixed = {each: value for each, value in self.account.fixed.items() if each != key}
        return replace(self.account, mode="deg", fixed=fixed).values()[key]

    def unit_of(self, kind: str) -> tuple[str, float]:
        return {
            "force": (self.force_unit, self.push),
            "length": (self.length_unit, self.length),
            "moment": (self.moment_unit, self.push * self.length),
            "mass": ("kg", 1.0),
            "angle": ("°", 1.0),
            "": ("", 1.0),
        }[kind]

    def number(self, value: float, kind: str, *, answer: bool = False, figures: str = "") -> tuple[str, float]:
        """A worked-out value as it is shown, with its unit where this student puts one, and the value shown in SI
        (no sign).
        """
        unit, by = self.unit_of(kind)
        text, shown = rounded(value / by, self.style, figures)
        text = put(text, self.style)
        if kind == "angle":
            return text + (self.style.degree if self.style.units != "none" or self.style.degree == "°" else ""), shown
        if unit and (self.style.units == "all" or self.style.units == "answers" and answer):
            text += unit_text(unit, self.style)
        return text, shown * by

    def signed(self, value: float, kind: str) -> tuple[str, float]:
        """A worked-out value with its sign, and the value shown."""
        text, shown = self.number(value, kind, answer=True)
        return (text, shown) if value >= 0 else (put("-", self.style) + text, -shown)

    def keep(self, key: str, value: float, kind: str) -> None:
        """How a value stands in later lines: its size as shown, with its unit where this student writes them all."""
        unit, by = self.unit_of(kind)
        more = unit_text(unit, self.style) if self.style.units == "all" else ""
        self.shown[key] = Bit(put(rounded(value / by, self.style)[0], self.style) + more)

    def bare(self, value: float, kind: str) -> Bit:
        return Bit(put(rounded(value / self.unit_of(kind)[1], self.style)[0], self.style))

    def given(self, value: float, kind: str) -> Bit:
        """A datum as it stands in the problem, in the student's unit."""
        unit, by = self.unit_of(kind)
        text = put(datum(value / by), self.style)
        if self.style.units == "all" and unit:
            return Bit(text + unit_text(unit, self.style), "number", unit)
        return Bit(text)

    def say(
        self, sides: Sequence[Side | tuple[str, tuple[Claim, ...]] | str], group: str = "", remark: str = ""
    ) -> Statement:
        made = [
            each if isinstance(each, Side) else Side(each) if isinstance(each, str) else Side(*each) for each in sides
        ]
        self.out.append(Statement(made, group, remark))
        return self.out[-1]

    def words(self, text: str, kind: str = "words") -> None:
        self.out.append(Statement([Side(text)], kind=kind))
