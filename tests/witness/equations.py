"""Knows how to read an equation as printed, and what each side is worth within the rounding of its figures."""

from __future__ import annotations

import math
import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass

from .quantities import FORCES, LENGTHS, MASSES

UNIT = r"(?:kN|N|lbf|lb|kg|g|mm|cm|m|in|ft)(?![A-Za-z_′⊥])[²]?"
TOKEN = re.compile(
    rf"""
    (?P<number>[0-9][0-9\u202f]*(?:\.[0-9]+)?)(?P<unit>°|[ ]%|[ ](?:m/s²|ft/s²|{UNIT}(?:[·/]{UNIT})*))?
  | (?P<function>sin⁻¹|cos⁻¹|tan⁻¹|sin(?![A-Za-z_])|cos(?![A-Za-z_])|tan(?![A-Za-z_])|√)
  | (?P<letter>[A-Za-zΑ-Ωα-ω]+(?:_[A-Za-z0-9]+(?:,[A-Za-z0-9]+)*)?[′⊥]*)
  | (?P<sign>[-+−×/()²])
  | (?P<space>[ ]+)""",
    re.VERBOSE,
)


class Unread(Exception):
    """The text is no equation that this reader knows."""


@dataclass(frozen=True)
class Amount:
    """A value with the most it can be off by."""

    value: float
    off: float = 0.0


@dataclass(frozen=True)
class Reading:
    """What a printed number may be off by, and what each step may add (where later lines go on from rounded ones)."""

    half_unit: Callable[[str, str], float]  # of a number as printed with its unit; not yet in SI
    letters: Mapping[str, Amount]
    step: float = 0.0  # relative


def unit_worth(unit: str, pound_is_mass: bool) -> float:
    unit = unit.strip()
    if unit in ("", "°"):
        return 1.0
    if unit in ("%", "m/s²", "ft/s²"):
        return {"%": 0.01, "m/s²": 1.0, "ft/s²": LENGTHS["ft"]}[unit]
    worth, over = 1.0, False
    for part in re.split(r"([·/])", unit):
        if part in "·/":
            over = part == "/"
            continue
        name, power = part.removesuffix("²"), 2 if part.endswith("²") else 1
        one = MASSES["lb"] if name == "lb" and pound_is_mass else {**LENGTHS, **FORCES, "kg": 1.0, "g": 0.001}[name]
        worth *= one ** (-power if over else power)
    return worth


class Side:
    """One side of an equation, read by recursive descent: sums of products of factors."""

    def __init__(self, text: str, reading: Reading, pound_is_mass: bool = False) -> None:
        self.reading, self.pound_is_mass = reading, pound_is_mass
        self.tokens = list(self.tokenise(text.strip()))
        self.at = 0

    def tokenise(self, text: str) -> list[re.Match[str]]:
        found, at = [], 0
        while at < len(text):
            token = TOKEN.match(text, at)
            if token is None:
                raise Unread(f"{text!r} at {at}")
            at = token.end()
            if token["space"] is None:
                found.append(token)
        return found

    def peek(self) -> str:
        return self.tokens[self.at][0] if self.at < len(self.tokens) else ""

    def take(self) -> re.Match[str]:
        if self.at >= len(self.tokens):
            raise Unread("the equation stops too early")
        self.at += 1
        return self.tokens[self.at - 1]

    def read(self) -> Amount:
        amount = self.sum()
        if self.at != len(self.tokens):
            raise Unread(f"what is {self.peek()!r}?")
        return amount

    def sum(self) -> Amount:
        total, largest = Amount(0.0), 0.0
        sign = 1.0
        if self.peek() in ("−", "-", "+"):
            sign = -1.0 if self.take()[0] in "−-" else 1.0
        while True:
            term = self.product()
            largest = max(largest, abs(term.value))
            total = Amount(total.value + sign * term.value, total.off + term.off)
            if self.peek() not in ("−", "-", "+") or not self.peek():
                return Amount(total.value, total.off + self.reading.step * largest)
            sign = -1.0 if self.take()[0] in "−-" else 1.0

    def product(self) -> Amount:
        result = self.power()
        while self.at < len(self.tokens) and self.peek() not in ("+", "−", "-", ")"):
            over = False
            if self.peek() in ("×", "/"):
                over = self.take()[0] == "/"
            result = self.times(result, self.power(), over)
        return result

    def times(self, a: Amount, b: Amount, over: bool) -> Amount:
        if over:
            if b.value == 0:
                raise Unread("division by zero")
            value = a.value / b.value
            off = (a.off + abs(value) * b.off) / max(abs(b.value) - b.off, abs(b.value) * 1e-3)
        else:
            value, off = a.value * b.value, abs(a.value) * b.off + abs(b.value) * a.off + a.off * b.off
        return Amount(value, off + self.reading.step * abs(value))

    def power(self) -> Amount:
        base = self.factor()
        if self.peek() == "²":
            self.take()
            base = self.times(base, base, False)
        return base

    def factor(self) -> Amount:
        token = self.take()
        if token["number"]:
            return self.number(token)
        if token["function"]:
            return self.function(token[0])
        if token["letter"]:
            if token["letter"] not in self.reading.letters:
                raise Unread(f"letter {token['letter']}")
            return self.reading.letters[token["letter"]]
        if token[0] == "(":
            inner = self.sum()
            if self.take()[0] != ")":
                raise Unread("a bracket is not closed")
            return inner
        if token[0] in "−-":
            inner = self.power()
            return Amount(-inner.value, inner.off)
        raise Unread(f"{token[0]!r}")

    def number(self, token: re.Match[str]) -> Amount:
        unit = token["unit"] or ""
        accelerated = (
            self.at + 1 < len(self.tokens) and self.peek() == "×" and "/s²" in (self.tokens[self.at + 1]["unit"] or "")
        )
        worth = unit_worth(unit, self.pound_is_mass or accelerated)
        return Amount(
            float(token["number"].replace("\u202f", "")) * worth,
            self.reading.half_unit(token["number"], unit.strip()) * worth,
        )

    def function(self, name: str) -> Amount:
        inner = self.power()
        ends = [inner.value - inner.off, inner.value, inner.value + inner.off]
        if name == "√":
            low, middle, high = (math.sqrt(max(end, 0.0)) for end in ends)
        elif name.endswith("⁻¹"):
            inverse = {"sin⁻¹": math.asin, "cos⁻¹": math.acos, "tan⁻¹": math.atan}[name]
            limit = 1.0 if name != "tan⁻¹" else math.inf
            low, middle, high = (math.degrees(inverse(max(-limit, min(limit, end)))) for end in ends)
        else:
            angle = math.radians(inner.value)
            middle = {"sin": math.sin, "cos": math.cos, "tan": math.tan}[name](angle)
            slope = math.cos(angle) if name == "sin" else math.sin(angle) if name == "cos" else 1 / math.cos(angle) ** 2
            swing = math.radians(inner.off)
            low, high = middle - abs(slope) * swing - swing**2, middle + abs(slope) * swing + swing**2
        return Amount(middle, max(abs(low - middle), abs(high - middle)) + self.reading.step * abs(middle) + 1e-12)


def value_of(text: str, reading: Reading, pound_is_mass: bool = False) -> Amount:
    return Side(text, reading, pound_is_mass).read()


def letters_in(text: str) -> set[str]:
    return {token["letter"] for token in Side(text, Reading(lambda *_: 0.0, {})).tokens if token["letter"]}
