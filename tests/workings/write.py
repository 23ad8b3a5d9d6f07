"""A student at work: weights, arms, moments, the balance, the joint force, each number as shown carried to the next. Knows no slip and no verdict."""
from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from random import Random

from explain.account import Account, Item, Leg

from .names import Names
from .signs import POUND, UNITS, Bit, datum, product, put, quotient, rounded, sum_of, trig, unit_text
from .style import Style
from .working import Claim, Side, Statement, moving

PLAIN_FACTORS = {0.5: "2", 0.25: "4"}


class Writer:
    """Holds the account with the student's own numbers fixed in it, and the statements so far."""

    def __init__(self, account: Account, style: Style, random: Random, us: bool = False) -> None:
        self.account, self.style, self.random = account, style, random
        self.names = Names(account, style)
        self.us = us
        self.force_unit, self.push = ("lb", POUND) if us else ("N", 1.0)
        self.length_unit = style.lengths if (style.lengths in ("in", "ft")) == us else ("in" if us else "cm")
        self.length = UNITS[self.length_unit]
        self.moment_unit = random.choice((f"{self.force_unit}·{self.length_unit}", f"{self.force_unit} {self.length_unit}",
                                          f"{self.force_unit}*{self.length_unit}", f"{self.force_unit}{self.length_unit}" if not us else "lb in",
                                          f"{self.force_unit}.{self.length_unit}", f"{self.force_unit}-{self.length_unit}"))
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

    def unit_of(self, kind: str) -> tuple[str, float]:
        return {"force": (self.force_unit, self.push), "length": (self.length_unit, self.length), "moment": (self.moment_unit, self.push * self.length),
                "mass": ("kg", 1.0), "angle": ("°", 1.0), "": ("", 1.0)}[kind]

    def number(self, value: float, kind: str, *, answer: bool = False, figures: str = "") -> tuple[str, float]:
        """A worked-out value as it is shown, with its unit where this student puts one, and the value shown in SI (no sign)."""
        unit, by = self.unit_of(kind)
        text, shown = rounded(value / by, self.style, figures)
        text = put(text, self.style)
        if kind == "angle":
            return text + (self.style.degree if self.style.units != "none" or self.style.degree == "°" else ""), shown
        if unit and (self.style.units == "all" or self.style.units == "answers" and answer):
            text += unit_text(unit, self.style)
        return text, shown * by

    def bare(self, value: float, kind: str) -> Bit:
        return Bit(put(rounded(value / self.unit_of(kind)[1], self.style)[0], self.style))

    def given(self, value: float, kind: str) -> Bit:
        """A datum as it stands in the problem, in the student's unit."""
        unit, by = self.unit_of(kind)
        text = put(datum(value / by), self.style)
        if self.style.units == "all" and unit:
            return Bit(text + unit_text(unit, self.style), "number", unit)
        return Bit(text)

    def say(self, sides: Sequence[Side | tuple[str, tuple[Claim, ...]] | str], group: str = "", remark: str = "") -> Statement:
        made = [each if isinstance(each, Side) else Side(each) if isinstance(each, str) else Side(*each) for each in sides]
        self.out.append(Statement(made, group, remark))
        return self.out[-1]

    def words(self, text: str, kind: str = "words") -> None:
        self.out.append(Statement([Side(text)], kind=kind))

    # ------------------------------------------------------------------ sizes
    def is_unknown(self, item: Item) -> bool:
        return item.key == self.unknown or item.mass == self.unknown and bool(item.mass)

    def size_bits(self, item: Item) -> list[Bit]:
        """The size of an item as factors: what was shown, mass and g, a letter, a datum."""
        count = [Bit(str(item.count))] if item.count > 1 else []
        if self.is_unknown(item):
            return [*count, Bit(self.names.force(item), "letter")]
        if item.multiple[0]:
            whole = next(each for each in self.account.items if each.key == item.multiple[1])
            size = [Bit(self.names.force(whole), "letter")] if self.is_unknown(whole) else self.size_bits(whole)
            return [*count, *self.factor(item.scale), Bit(put(datum(self.values[item.multiple[0]]), self.style)), *size]
        if item.key in self.shown:
            return [*count, self.shown[item.key]]
        return [*count, *self.weight_bits(item)]

    def factor(self, scale: float) -> list[Bit]:
        return [] if scale == 1.0 else [Bit(put(datum(round(scale, 4)), self.style))]

    def weight_bits(self, item: Item) -> list[Bit]:
        if not item.mass:
            return [self.given(self.values[item.key] / item.scale, "force"), *self.factor(item.scale)]
        mass = self.shown.get(item.mass) or self.given(self.values[item.mass], "mass")
        if item.powers == -1:
            return [Bit(quotient(mass.text, self.gravity().text, self.style)), *self.factor(item.scale)]
        return [mass, *[self.gravity()] * item.powers, *self.factor(item.scale)]

    def gravity(self) -> Bit:
        text = put(datum(self.values["g"]), self.style)
        if self.style.units == "all" and self.style.layout not in ("latex", "dollars"):
            return Bit(text + (" m/s²", " m/s^2", " N/kg", " m/s2", " m/s/s")[self.way % 5], "number", "g")
        return Bit(text)

    def shares(self) -> None:
        """Data that are shares of others: masses, weights, distances."""
        for share in self.account.shares:
            kind = "mass" if share.key.endswith(".mass") else "length" if share.key.endswith((".com", ".at")) else "force"
            part = put(datum(self.values[share.part] * share.times), self.style)
            per_cent = self.way % 3 == 0
            if per_cent:
                part = put(datum(self.values[share.part] * share.times * 100), self.style) + ("\\%" if self.style.layout in ("latex", "dollars") else "%")
            name = share.key.rpartition(".")[0]
            item = next((each for each in self.account.items if name == each.name), None)
            if item is None:
                continue
            letter = self.names.mass(item) if kind == "mass" else self.names.force(item) if kind == "force" else self.names.arm(item)
            whole = self.shown.get(share.whole) or self.given(self.values[share.whole], kind)
            value = self.values[share.key]
            text, shown = self.number(value, kind, answer=True)
            claim = (Claim(share.key, value),)
            joined = f"{part} of {whole.text}" if per_cent and self.way % 2 and self.style.layout == "plain" else product([Bit(part), whole], self.style)
            self.say([letter, (joined, claim), (text, (Claim(share.key, shown),))], "shares")
            self.pin(share.key, shown)
            self.shown[share.key] = Bit(put(rounded(value / self.unit_of(kind)[1], self.style)[0], self.style))

    def weights(self) -> None:
        """Masses times g, each on its line, all on one, or left for later."""
        for item in self.account.items:
            if item.kind not in ("weight", "load") or not item.mass or self.is_unknown(item) or item.powers == 0 or self.account.item(item.name).key in self.shown:
                continue
            if self.style.weights in ("inside", "given") and item.powers == 1 and item.scale == 1.0:
                continue
            value = self.values[item.key]
            text, shown = self.number(value, "force", answer=True)
            sides: list[Side] = [Side(self.names.force(item))]
            if self.style.weights == "letters":
                sides.append(Side(self._mg(item)))
            sides += [Side(product(self.weight_bits(item), self.style), (Claim(item.key, value),)), Side(text, (Claim(item.key, shown),))]
            self.say(sides, "weights")
            self.shown[item.key] = Bit(put(rounded(value / self.push, self.style)[0], self.style) + (unit_text(self.force_unit, self.style) if self.style.units == "all" else ""))
            self.pin(item.key, shown)

    def _mg(self, item: Item) -> str:
        if item.powers == 1 and item.scale == 1.0:
            return "mg" if self.style.layout in ("latex", "dollars") or self.way % 2 else f"{self.names.mass(item)} g"
        return product([Bit("m", "letter"), *[Bit("g", "letter")] * max(item.powers, 0)], self.style) if item.powers > 0 else "m/g"

    # ------------------------------------------------------------------ arms
    def angle(self, degrees: float) -> str:
        return put(datum(round(degrees, 6)), self.style)

    def trig_bits(self, leg: Leg) -> list[Bit]:
        """The function behind a distance, with the complementary angle where this student likes that better."""
        turned = leg.turned
        if not turned.function:
            return []
        function, angle = turned.function, turned.degrees
        if turned.unknown:
            return [Bit(trig(function, "\\theta" if self.style.layout in ("latex", "dollars") else ("θ", "theta")[self.way % 2], self.style), "trig")]
        if (function, angle) in self.sines:
            return [Bit(self.sines[function, angle][0])]
        if self.style.cofunction and function in ("sin", "cos") and 0 < angle < 90 and self.account.mode == "deg":
            function, angle = {"sin": "cos", "cos": "sin"}[function], 90 - angle
        return [Bit(trig(function, self.angle(angle), self.style), "trig")]

    def leg_bits(self, leg: Leg) -> list[Bit]:
        distance = Bit("x" if self.style.layout == "latex" else self._distance_letter(leg), "letter") if leg.key == self.unknown else (
            self.shown.get(leg.key) if leg.times == 1.0 and leg.key in self.shown else self.given(self.values[leg.key] * leg.times, "length"))
        assert distance is not None
        if leg.turned.over:
            return [Bit(quotient(distance.text, self.trig_bits(leg)[0].text, self.style), "sum" if self.style.divide != "\\frac" else "number")]
        return [distance, *self.trig_bits(leg)]

    def _distance_letter(self, leg: Leg) -> str:
        item = next(each for each in self.account.items if leg in each.legs)
        return self.names.arm(item)

    def arm_bits(self, item: Item) -> list[Bit]:
        """The arm of an item as factors: a number shown, a distance with a function, a sum of distances in brackets."""
        key = f"*arm {item.name}"
        if key in self.shown:
            return [self.shown[key]]
        if item.arm:
            if item.arm == self.unknown:
                return [Bit(self.names.arm(item), "letter")]
            return [self.shown.get(item.arm) or self.given(self.values[item.arm], "length")]
        if len(item.legs) == 1 and item.legs[0].turned.sign > 0:
            return self.leg_bits(item.legs[0])
        return [Bit(sum_of([(leg.turned.sign, product(self.leg_bits(leg), self.style)) for leg in item.legs], self.style), "sum")]

    def show_sines(self) -> None:
        for item in self.account.items:
            for leg in item.legs:
                turned = leg.turned
                if turned.function and not turned.unknown and not turned.over and (turned.function, turned.degrees) not in self.sines:
                    value = abs(replace(turned, sign=1).value({}, self.account.mode))
                    text, shown = rounded(value, self.style, self.random.choice(("3", "4", "2")) if value > 0.15 else "3")
                    before = self.trig_bits(leg)[0].text
                    exact = Claim(f"function {turned.function} {turned.degrees}", shown, 0.0, True)
                    self.say([before, (put(text, self.style), (exact,))], "sines")
                    sign = 1 if replace(turned, sign=1).value({}, self.account.mode) > 0 else -1
                    self.sines[turned.function, turned.degrees] = put(text, self.style) if sign > 0 else f"({put('-' + text, self.style)})", shown * sign
        for item in self.account.items:
            if item.legs and any((leg.turned.function, leg.turned.degrees) in self.sines for leg in item.legs) and not moving_arm(item, self.unknown):
                self.pin(f"*arm {item.name}", sum(self.values[leg.key] * leg.times * leg.turned.sign * self.sines.get((leg.turned.function, leg.turned.degrees), ("", 1.0))[1]
                                                   for leg in item.legs))

    def arms(self) -> None:
        """Arms on lines of their own, those that need working out."""
        if self.style.arms == "sines":
            self.show_sines()
        if self.style.arms not in ("own", "one line"):
            return
        for item in self.account.items:
            if not item.legs or moving_arm(item, self.unknown) or all(not leg.turned.function for leg in item.legs) and len(item.legs) < 2:
                continue
            value = self.values[f"*arm {item.name}"]
            bits = self.arm_bits(item)
            if value <= 0 or self.length_unit == "m" and len(bits) == 1 and bits[0].kind != "sum" and not item.legs[0].turned.over:
                continue
            text, shown = self.number(value, "length", answer=True)
            key = f"*arm {item.name}"
            self.say([self.names.arm(item), (product(bits, self.style), (Claim(key, value),)), (text, (Claim(key, shown),))], "arms")
            self.shown[key] = Bit(put(rounded(value / self.length, self.style)[0], self.style) + (unit_text(self.length_unit, self.style) if self.style.units == "all" else ""))
            self.pin(key, shown)

    # ------------------------------------------------------------------ moments
    def term_bits(self, item: Item) -> list[Bit]:
        """Size times arm, in the student's order."""
        if item.kind == "couple":
            return [self.given(self.values[item.key], "moment")] if item.key != self.unknown else [Bit(self.names.moment(item), "letter")]
        size, arm = self.size_bits(item), self.arm_bits(item)
        letter = any(each.kind == "letter" for each in size)
        if self.style.arms == "turning" and len(arm) == 2 and arm[1].kind == "trig":
            return [*size, arm[1], arm[0]]
        if letter and self.style.factor == "arm first" and arm[-1].kind != "sum":
            return [*arm, *size]
        return [*size, *arm]

    def joined_bit(self, item: Item) -> Bit:
        """Size and arm made into a moment by another sign than times."""
        size, arm = product(self.size_bits(item), self.style), product(self.arm_bits(item), self.style)
        if item.joined == "over":
            return Bit(quotient(size, arm, self.style, row_below=" " in arm), "number")
        return Bit(f"{size} + {arm}", "sum")

    def term_claim(self, item: Item) -> Claim:
        scale = max([abs(self.values[f"*moment {each.name}"]) for each in self.account.items] or [1.0])
        held = replace(self.account, fixed={**self.account.fixed, **({self.unknown: self.account.roots[self.unknown]} if self.unknown else {})}).values()
        return Claim(f"term {item.name}", held[f"*moment {item.name}"] * item.in_moments, scale)

    def moments(self) -> None:
        """The moment of each force on its own line; that of the unknown with its letter."""
        if self.style.moments not in ("own", "one line"):
            return
        for item in self.account.items:
            if not item.in_moments or item.kind == "couple":
                continue
            letter = self.names.moment(item)
            bits = self.term_bits(item) if item.joined == "times" else [self.joined_bit(item)]
            claims = tuple(replace(each, size=True) for each in (replace(self.term_claim(item), scale=0.0),)) if abs(item.in_moments) == 1 else ()
            if moving(item, self.account):
                self.say([letter, (product(bits, self.style), claims)], "moments")
                continue
            value = self.values[f"*moment {item.name}"]
            text, shown = self.number(value, "moment", answer=True)
            key = f"*moment {item.name}"
            self.say([letter, (product(bits, self.style), claims), (text, (Claim(key, shown, 0.0, True),))], "moments")
            self.pin(key, shown if value >= 0 else -shown)
            self.shown[key] = Bit(put(rounded(value / self.push / self.length, self.style)[0], self.style) + (unit_text(self.moment_unit, self.style) if self.style.units == "all" else ""))


def moving_arm(item: Item, unknown: str) -> bool:
    return unknown in (item.arm, *(leg.key for leg in item.legs), *(name for leg in item.legs for name, _ in leg.turned.unknown))
