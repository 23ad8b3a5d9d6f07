"""A student at work: weights, arms, moments, the balance, the joint force, each number as shown carried to the next.
Knows no slip and no verdict.
"""

from __future__ import annotations

from dataclasses import replace

from explain.marking.slips.account import Item, Leg

from .paper import Paper
from .signs import Bit, datum, product, put, quotient, rounded, sum_of, trig
from .working import Claim, Side, moving


class Writer(Paper):
    """Writes the steps of a working down."""

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
            kind = (
                "mass" if share.key.endswith(".mass") else "length" if share.key.endswith((".com", ".at")) else "force"
            )
            part = put(datum(self.values[share.part] * share.times), self.style)
            per_cent = self.way % 3 == 0
            if per_cent:
                part = put(datum(self.values[share.part] * share.times * 100), self.style) + (
                    "\\%" if self.style.layout in ("latex", "dollars") else "%"
                )
            name = share.key.rpartition(".")[0]
            item = next((each for each in self.account.items if name == each.name), None)
            if item is None:
                continue
            letter = (
                self.names.mass(item)
                if kind == "mass"
                else self.names.force(item)
                if kind == "force"
                else self.names.along(item)
            )
            whole = self.shown.get(share.whole) or self.given(self.values[share.whole], kind)
            value = self.values[share.key]
            text, shown = self.number(value, kind, answer=True)
            claim = (Claim(share.key, value),)
            joined = (
                f"{part} of {whole.text}"
                if per_cent and self.way % 2 and self.style.layout == "plain"
                else product([Bit(part), whole], self.style)
            )
            self.say([letter, (joined, claim), (text, (Claim(share.key, shown),))], "shares")
            self.pin(share.key, shown)
            self.shown[share.key] = Bit(put(rounded(value / self.unit_of(kind)[1], self.style)[0], self.style))

    def weights(self) -> None:
        """Masses times g, each on its line, all on one, or left for later."""
        for item in self.account.items:
            if (
                item.kind not in ("weight", "load")
                or not item.mass
                or self.is_unknown(item)
                or item.powers == 0
                or self.account.item(item.name).key in self.shown
            ):
                continue
            if self.style.weights in ("inside", "given") and item.powers == 1 and item.scale == 1.0:
                continue
            value = self.values[item.key]
            text, shown = self.number(value, "force", answer=True)
            sides: list[Side] = [Side(self.names.force(item))]
            if self.style.weights == "letters":
                sides.append(Side(self._mg(item)))
            sides += [
                Side(product(self.weight_bits(item), self.style), (Claim(item.key, self.meant(item.key)),)),
                Side(text, (Claim(item.key, shown),)),
            ]
            self.say(sides, "weights")
            self.keep(item.key, value, "force")
            self.pin(item.key, shown)

    def _mg(self, item: Item) -> str:
        if item.powers == 1 and item.scale == 1.0:
            return "mg" if self.style.layout in ("latex", "dollars") or self.way % 2 else f"{self.names.mass(item)} g"
        return (
            product([Bit("m", "letter"), *[Bit("g", "letter")] * max(item.powers, 0)], self.style)
            if item.powers > 0
            else "m/g"
        )

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
            return [
                Bit(
                    trig(
                        function,
                        "\\theta" if self.style.layout in ("latex", "dollars") else ("θ", "theta")[self.way % 2],
                        self.style,
                    ),
                    "trig",
                )
            ]
        if (function, angle) in self.sines:
            text, shown = self.sines[function, angle]
            return [Bit(text, "number" if shown > 0 else "sum")]
        if self.style.cofunction and function in ("sin", "cos") and 0 < angle < 90 and self.account.mode == "deg":
            function, angle = {"sin": "cos", "cos": "sin"}[function], 90 - angle
        return [Bit(trig(function, self.angle(angle), self.style), "trig")]

    def leg_bits(self, leg: Leg) -> list[Bit]:
        distance = (
            Bit("x" if self.style.layout == "latex" else self._distance_letter(leg), "letter")
            if leg.key == self.unknown
            else (
                self.shown.get(leg.key)
                if leg.times == 1.0 and leg.key in self.shown
                else self.given(self.values[leg.key] * leg.times, "length")
            )
        )
        assert distance is not None
        if leg.turned.over:
            return [
                Bit(
                    quotient(distance.text, self.trig_bits(leg)[0].text, self.style),
                    "sum" if self.style.divide != "\\frac" else "number",
                )
            ]
        return [distance, *self.trig_bits(leg)]

    def _distance_letter(self, leg: Leg) -> str:
        return self.names.arm(next(each for each in self.account.items if leg in each.legs))

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
        return [
            Bit(
                sum_of([(leg.turned.sign, product(self.leg_bits(leg), self.style)) for leg in item.legs], self.style),
                "sum",
            )
        ]

    def show_sines(self) -> None:
        for item in self.account.items:
            for leg in item.legs:
                turned = leg.turned
                if (
                    turned.function
                    and not turned.unknown
                    and not turned.over
                    and (turned.function, turned.degrees) not in self.sines
                ):
                    value = abs(replace(turned, sign=1).value({}, self.account.mode))
                    text, shown = rounded(
                        value, self.style, self.random.choice(("3", "4", "2")) if value > 0.15 else "3"
                    )
                    before = self.trig_bits(leg)[0].text
                    exact = Claim(f"function {turned.function} {turned.degrees}", shown, 0.0, True)
                    sign = 1 if replace(turned, sign=1).value({}, self.account.mode) > 0 else -1
                    text = put(text if sign > 0 else f"-{text}", self.style)
                    self.say([before, (text, (replace(exact, value=shown * sign, size=False),))], "sines")
                    self.sines[turned.function, turned.degrees] = text, shown * sign
        for item in self.account.items:
            if (
                item.legs
                and any((leg.turned.function, leg.turned.degrees) in self.sines for leg in item.legs)
                and not moving_arm(item, self.unknown)
            ):
                self.pin(
                    f"*arm {item.name}",
                    sum(
                        self.values[leg.key]
                        * leg.times
                        * leg.turned.sign
                        * self.sines.get((leg.turned.function, leg.turned.degrees), ("", 1.0))[1]
                        for leg in item.legs
                    ),
                )

    def arms(self) -> None:
        """Arms on lines of their own, those that need working out."""
        if self.style.arms == "sines":
            self.show_sines()
        if self.style.arms not in ("own", "one line"):
            return
        for item in self.account.items:
            if (
                not item.legs
                or moving_arm(item, self.unknown)
                or all(not leg.turned.function for leg in item.legs)
                and len(item.legs) < 2
            ):
                continue
            value = self.values[f"*arm {item.name}"]
            bits = self.arm_bits(item)
            if (
                abs(value) < 1e-9
                or self.length_unit == "m"
                and len(bits) == 1
                and bits[0].kind != "sum"
                and not item.legs[0].turned.over
            ):
                continue
            text, shown = self.signed(value, "length")
            key = f"*arm {item.name}"
            self.say(
                [
                    self.names.arm(item),
                    (product(bits, self.style), (Claim(key, self.meant(key)),)),
                    (text, (Claim(key, shown),)),
                ],
                "arms",
            )
            self.keep(key, value, "length")
            if shown < 0:
                self.shown[key] = Bit(f"{put('-', self.style)}{self.shown[key].text}", "sum")
            self.pin(key, shown)

    # ------------------------------------------------------------------ moments
    def term_bits(self, item: Item) -> list[Bit]:
        """Size times arm, in the student's order."""
        if item.kind == "couple":
            return (
                [self.given(self.values[item.key], "moment")]
                if item.key != self.unknown
                else [Bit(self.names.moment(item), "letter")]
            )
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
        held = replace(
            self.account,
            mode="deg",
            fixed={**self.account.fixed, **({self.unknown: self.account.roots[self.unknown]} if self.unknown else {})},
        ).values()
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
            straight = self.term_claim(item).value * item.in_moments * item.turns >= 0
            claims = (replace(self.term_claim(item), scale=0.0, size=straight),) if abs(item.in_moments) == 1 else ()
            if moving(item, self.account):
                self.say([letter, (product(bits, self.style), claims)], "moments")
                continue
            key = f"*moment {item.name}"
            value = self.values[key] * item.turns
            claims = (Claim(key, self.meant(key), 0.0, straight),) if claims else ()
            text, shown = self.signed(value, "moment")
            self.say(
                [letter, (product(bits, self.style), claims), (text, (Claim(key, shown * item.turns, 0.0, straight),))],
                "moments",
            )
            self.keep(key, value, "moment")
            self.pin(key, shown * item.turns)


def moving_arm(item: Item, unknown: str) -> bool:
    return unknown in (
        item.arm,
        *(leg.key for leg in item.legs),
        *(name for leg in item.legs for name, _ in leg.turned.unknown),
    )
