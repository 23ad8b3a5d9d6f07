"""The moment balance as a student writes it, and the unknown from it. Knows no slip: how an unknown was found is
told from its value.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from math import acos, asin, degrees

from explain.marking.slips.account import Account, Impossible, Item

from .forms import Form, close, forms
from .signs import Bit, inverse, product, put, quotient, rounded, sum_of, trig, unit_text
from .working import Claim, Side, moving
from .write import Writer

DEFAULT_FINISH = Account.__dataclass_fields__["finish"].default
Terms = list[tuple[int, str]]


class Balance:
    """One moment balance being written: signed terms (counter-clockwise positive), the coefficient, what is on the
    other side.
    """

    def __init__(self, writer: Writer) -> None:
        self.w = writer
        self.style = writer.style
        account = writer.account
        self.items = [each for each in account.items if each.in_moments and each.name and _turning(writer, each)]
        self.open = [each for each in self.items if moving(each, account)]
        self.closed = [each for each in self.items if not moving(each, account)]
        self.extra = account.extra(writer.values) if account.extra else 0.0

    # ------------------------------------------------------------------ terms
    def sign(self, item: Item) -> int:
        """+1 where the term enters counter-clockwise, as this student has it."""
        if f"*moment {item.name}" not in self.w.shown and item.kind != "couple":
            return 1 if item.turns * item.in_moments > 0 else -1
        return 1 if self.w.term_claim(item).value > 0 else -1

    def text(self, item: Item) -> str:
        shown = self.w.shown.get(f"*moment {item.name}")
        bits = [shown] if shown else self.w.term_bits(item)
        if item.joined != "times" and not shown:
            joined = self.w.joined_bit(item)
            bits = [joined._replace(text=f"({joined.text})", kind="number") if joined.kind == "sum" else joined]
        factor = abs(item.in_moments)
        return product([*([Bit(put(f"{factor:g}", self.style))] if factor != 1 else []), *bits], self.style)

    def claims(self) -> tuple[Claim, ...]:
        """What a balance states: every term with its sense, and nothing else."""
        scale = max([abs(self.w.term_claim(each).value) for each in self.items] or [1.0])
        there = tuple(replace(self.w.term_claim(each), scale=scale) for each in self.items)
        missing = tuple(
            Claim(f"term {each.name}", 0.0, scale) for each in self.w.account.items if each not in self.items
        )
        gone = tuple(
            Claim(f"term {name}", 0.0, scale)
            for name in self.w.names.items
            if name not in [each.name for each in self.w.account.items]
        )
        return (*there, *missing, *gone, Claim("extra", self.extra, scale))

    def signed(self, items: Sequence[Item], turn: int) -> Terms:
        return [(self.sign(each) * turn, self.text(each)) for each in items]

    def first(self) -> None:
        """The balance with every term in it, by the student's law."""
        law, turn = self.style.law, self.style.positive
        if self.extra:
            turn = -1 if self.extra > 0 else 1
            self.w.say(
                [
                    Side(sum_of(self.signed([*self.open, *self.closed], turn), self.style), self.claims()),
                    self._number(abs(self.extra)),
                ],
                "balance",
            )
            return
        if law == "zero":
            order = [*self.open, *self.closed] if self.w.way % 3 else [*self.closed, *self.open]
            terms = self.signed(order, turn)
            zero = ("0", self.claims())
            left = Side(sum_of(terms, self.style), self.claims())
            self.w.say([zero, left] if self.w.way % 7 == 1 else [left, zero[0]], "balance", remark="lead")
            return
        if law == "turning" and len({self.sign(each) for each in self.items}) == 2:
            sides = [
                sum_of([(1, self.text(each)) for each in self.items if self.sign(each) == way], self.style)
                for way in (1, -1)
            ]
            self.w.say(
                [Side(sides[0], self.claims()), sides[1]][:: 1 if self.w.way % 2 else -1], "balance", remark="turning"
            )
            return
        lead = self.sign(self.open[0]) if self.open else 1
        left = Side(sum_of(self.signed(self.open, lead), self.style), self.claims())
        right = sum_of(self.signed(self.closed, -lead), self.style)
        self.w.say([left, right], "balance", remark="lead")

    def _number(self, moment: float) -> str:
        return put(rounded(moment / self.w.push / self.w.length, self.style)[0], self.style)

    # ------------------------------------------------------------------ from the balance to the unknown
    def coefficient(self, account: Account) -> float:
        """What the unknown is multiplied by, counter-clockwise positive."""

        def total(at: float) -> float:
            values = replace(account, reaction=False, fixed={**account.fixed, self.w.unknown: at}).values()
            return sum(values[f"*moment {each.name}"] * each.in_moments for each in account.items)

        return total(1.0) - total(0.0)

    def others(self, lead: int) -> list[tuple[Item | None, float]]:
        """The known terms on the other side."""
        known: list[tuple[Item | None, float]] = [
            (each, -lead * self.w.values[f"*moment {each.name}"] * each.in_moments) for each in self.closed
        ]
        return [*known, (None, -lead * self.extra)] if self.extra else known

    def solve(self, letter: str, kind: str, sense: str = "") -> None:
        """Products worked out, the total, the unknown: as many of these steps as the student writes."""
        w, style = self.w, self.style
        by = self.coefficient(w.account)
        lead = 1 if by > 0 else -1
        by *= lead
        by_text, by_shown = self._by(by)
        others = self.others(lead)
        form = self._form([value for _, value in others], by)
        if (
            "products" in style.steps
            and len(others) > 1
            and not all(item is not None and f"*moment {item.name}" in w.shown for item, _ in others)
        ):
            others = self._products(
                others, lead, form, self._left(letter, by_text), Claim("coefficient", by_shown * lead)
            )
        values = [value for _, value in others]
        if "total" in style.steps and form.signs and len(others) > 1:
            total = sum(sign * value for sign, value in zip(form.signs, values, strict=True))
            text, shown = rounded(total / w.push / w.length, style)
            shown *= w.push * w.length * (1 if total > 0 else -1)
            label = put(text if total > 0 else "-" + text, style) + (
                unit_text(w.moment_unit, style) if style.units == "all" else ""
            )
            w.say(
                [
                    (self._left(letter, by_text), (Claim("coefficient", by_shown * lead),)),
                    (label, (Claim("total", shown * lead),)),
                ],
                "solving",
            )
            self._answer(letter, kind, shown / by_shown, self._ratio(label, by_text, False), sense)
            return
        found = self._finish()(values, by)
        if form.signs:
            top = sum_of(
                [
                    (sign * (1 if value > 0 else -1), self._closed_text(item, value))
                    for sign, (item, value) in zip(form.signs, others, strict=True)
                ],
                style,
            )
            self._answer(
                letter,
                kind,
                found,
                self._ratio(top, by_text, len(others) > 1 or not top.replace(".", "").replace(",", "").isdigit()),
                sense,
            )
            return
        self._answer(
            letter, kind, found, form.text(style, by_text, [self._number(each) for each in values], values), sense
        )

    def _products(
        self, others: list[tuple[Item | None, float]], lead: int, form: Form, left: str, by: Claim
    ) -> list[tuple[Item | None, float]]:
        """The line with every product worked out, and the terms as they are from there on."""
        w = self.w
        for item, value in others:
            if item is not None:
                shown = rounded(value / w.push / w.length, self.style)[1] * w.push * w.length / abs(item.in_moments)
                w.pin(f"*moment {item.name}", shown if w.values[f"*moment {item.name}"] > 0 else -shown)
        others = self.others(lead)
        if form.signs:
            terms = [
                (sign * (1 if value > 0 else -1), self._number(value))
                for sign, (_, value) in zip(form.signs, others, strict=True)
            ]
            scale = max(abs(value) for _, value in others)
            claims = tuple(
                Claim(f"term {item.name}" if item else "extra", -lead * sign * value, scale)
                for sign, (item, value) in zip(form.signs, others, strict=True)
            )
            w.say([Side(left, (*claims, by)), sum_of(terms, self.style)], "solving")
        return others

    def _finish(self) -> Callable[[list[float], float], float]:
        return self.w.account.solves.get(self.w.unknown, self.w.account.finish)

    def _form(self, values: list[float], by: float) -> Form:
        """In which form the unknown comes from the other terms."""
        finish = self._finish()
        if finish is DEFAULT_FINISH:
            return Form(tuple(1 for _ in values))
        try:
            found = finish(values, by)
        except (ZeroDivisionError, IndexError) as error:
            raise Impossible(str(error)) from error
        form = next((each for each in forms(len(values)) if close(each.value(values, by, self.w.length), found)), None)
        if form is None and (trigged := self._unbracketed(values, by, found)):
            form = trigged
        if form is None or form.way == "upside down" and self.w.us:
            raise Impossible("no form that this student would write")
        return form

    def _unbracketed(self, values: list[float], by: float, found: float) -> Form | None:
        """The distance divided by, the function multiplied with."""
        legs = self.open[0].legs if len(self.open) == 1 else ()
        if len(legs) != 1 or not legs[0].turned.function:
            return None
        share = abs(legs[0].turned.value(self.w.values, self.w.account.mode))
        if not close(sum(values) / by * share**2, found):
            return None
        bits = self.w.leg_bits(legs[0])
        return Form(tuple(1 for _ in values), "unbracketed", bits[0].text, bits[-1].text)

    def _closed_text(self, item: Item | None, value: float) -> str:
        if item is None or "products" in self.style.steps or f"*moment {item.name}" in self.w.shown:
            return self._number(value)
        return self.text(item)

    def _by(self, by: float) -> tuple[str, float]:
        """The coefficient: a product as it stands, or its value rounded."""
        w = self.w
        kind = (
            self.w.length
            if w.unknown.endswith((".force", ".weight"))
            else w.push
            if not w.unknown.endswith(".mass")
            else w.length
        )
        alone = self.open[0] if len(self.open) == 1 else None
        if (
            alone is not None
            and alone.joined == "times"
            and len(w.arm_bits(alone)) == 1
            and w.arm_bits(alone)[0].kind == "number"
            and alone.count == 1
            and w.is_unknown(alone)
        ):
            return w.arm_bits(alone)[0].text, by
        text, shown = rounded(by / kind, self.style)
        return put(text, self.style), shown * kind

    def _left(self, letter: str, by_text: str) -> str:
        """0.045F, 4.5 F, F × 4.5."""
        if (
            " " in by_text.strip()
            or " " in letter
            or "/" in by_text
            or self.w.way % 3 == 0
            or self.style.layout in ("latex", "dollars")
        ):
            return product([Bit(letter, "letter"), Bit(by_text)], self.style)
        if len(letter) > 3 or self.style.times.strip() == "x" and letter == "x":
            return f"{by_text} {letter}"
        return f"{by_text}{' ' if self.w.way % 2 else ''}{letter}"

    def _ratio(self, top: str, by_text: str, row: bool) -> str:
        if by_text in ("1", "1.0"):
            return top
        return quotient(
            top,
            by_text,
            self.style,
            row_above=row,
            row_below=" " in by_text and self.style.units != "all" or "sin" in by_text,
        )

    def _answer(self, letter: str, kind: str, value: float, text: str, sense: str) -> None:
        w = self.w
        claim = Claim(w.unknown, value)
        shown_text, shown = w.number(value, kind, answer=True)
        sides: list[Side | str] = [letter]
        if text:
            sides.append(Side(text, (claim,)))
        last = shown_text if value >= 0 else put("-", self.style) + shown_text
        sides.append(Side(last, (Claim(w.unknown, shown if value >= 0 else -shown),)))
        w.say(sides, "answer", remark=sense)
        w.pin(w.unknown, shown if value >= 0 else -shown)
        w.shown[w.unknown] = Bit(put(rounded(value / w.unit_of(kind)[1], self.style)[0], self.style))

    def angle(self, name: str) -> None:
        """An angle from a balance with one function of it: the sine, then the angle."""
        w, style = self.w, self.style
        leg = next(leg for item in self.open for leg in item.legs if leg.turned.unknown)
        function = leg.turned.function
        held = replace(w.account, fixed={**w.account.fixed, w.unknown: 90.0 if function == "sin" else 0.0}).values()
        over = sum(held[f"*moment {each.name}"] * each.in_moments for each in self.open)
        known = -sum(w.values[f"*moment {each.name}"] * each.in_moments for each in self.closed)
        ratio = known / over
        top, by = self._number(known), self._number(over)
        text, shown = rounded(ratio, style)
        if not 0 < shown <= 1:
            raise Impossible("no such angle")
        w.say(
            [
                trig(function, name, style),
                (quotient(top, by, style), ()),
                (put(text, style), (Claim(f"ratio {function} {w.unknown}", shown),)),
            ],
            "solving",
        )
        value = degrees(asin(shown) if function == "sin" else acos(shown))
        last, shown_angle = w.number(value, "angle", answer=True)
        middle = [(inverse(function, put(text, style), style, w.way), (Claim(w.unknown, value),))] if w.way % 2 else []
        w.say([name, *middle, (last, (Claim(w.unknown, shown_angle),))], "answer")
        w.pin(w.unknown, shown_angle)


def _turning(w: Writer, item: Item) -> bool:
    """Whether an item has a moment worth a term."""
    if moving(item, w.account):
        return True
    largest = max(abs(w.values[f"*moment {each.name}"]) for each in w.account.items)
    return abs(w.values[f"*moment {item.name}"]) > 1e-6 * largest
