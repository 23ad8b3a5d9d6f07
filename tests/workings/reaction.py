"""The joint force as a student writes it: parts of the pulls, the balances, the size, the direction. How a spoilt
one came about is told from its value.
"""

from __future__ import annotations

from itertools import product as every
from math import atan2, degrees, hypot

from explain.marking.slips.account import Account, Impossible, Item

from .references import WAYS, heading, reference
from .signs import Bit, inverse, product, put, root, rounded, square, sum_of, trig
from .working import Claim, Side
from .write import Writer

WORDS = {
    "right": ("to the right", "right", "rightward"),
    "left": ("to the left", "left", "leftward"),
    "up": ("up", "upwards", "upward"),
    "down": ("down", "downwards", "downward"),
}
ARROWS = {"right": "→", "left": "←", "up": "↑", "down": "↓"}


class Reaction:
    """The force of the joint on the body, from the force balances."""

    def __init__(self, writer: Writer, bone: str) -> None:
        self.w, self.style, self.bone = writer, writer.style, bone

    def parallel(self) -> bool:
        """Whether nothing pulls to either side."""
        w = self.w
        return all(abs(w.values.get(f"*level {each.name}", 0.0)) < 1e-9 for each in w.account.items)

    def write(self) -> None:
        w = self.w
        if self.style.law_again and self.style.layout not in ("latex", "dollars"):
            w.words(("ΣF = 0", "Sum of forces = 0", "forces balance:", "up forces = down forces", "ΣFy = 0")[w.way % 5])
        if "reaction" not in w.values:
            return
        if self.parallel() and abs(w.values["reaction.right"]) < 1e-9:
            self._part("up", w.names.joint("" if w.way % 2 else "y"), whole=True)
            return
        self._pulls()
        self._part("right", w.names.joint("x"))
        self._part("up", w.names.joint("y"))
        self._size()
        self._angle()

    # ------------------------------------------------------------------ parts
    def _pulls(self) -> None:
        """The parts of oblique pulls on lines of their own, by some students."""
        w = self.w
        if w.way % 4 < 2:
            return
        for item in w.account.items:
            if item.level is None or item.upright is None or not item.level.function or item.kind in ("load", "weight"):
                continue
            letter = w.names.force(item)
            head, _, sub = letter.partition("_")
            if len(head.lstrip("\\")) > 2 or "\\" in letter or letter == "x" or w.unknown.startswith("*angle"):
                continue
            for side, axis in (("level", "x"), ("upright", "y")):
                value = w.values[f"*{side} {item.name}"]
                text, shown = w.number(value, "force", answer=True)
                key = f"*{side} {item.name}"
                name = f"{head}_{sub.strip('{}')}{axis}" if sub else f"{head}{axis}"
                w.say(
                    [
                        name,
                        (self._trig_term(item, side), (Claim(key, w.meant(key), 0.0, True),)),
                        (text, (Claim(key, shown, 0.0, True),)),
                    ],
                    "parts",
                )
                w.pin(key, shown if value >= 0 else -shown)
                w.shown[key] = Bit(put(rounded(value / w.push, self.style)[0], self.style))

    def _trig_term(self, item: Item, side: str) -> str:
        """The size of a part as the student works it out: 550.3 cos 70."""
        w = self.w
        turned = item.level if side == "level" else item.upright
        assert turned is not None
        size = w.shown.get(item.key) or Bit(put(rounded(w.values[item.key] / w.push, self.style)[0], self.style))
        size = (
            w.size_bits(item)[-1]
            if item.kind in ("load", "weight") and len(w.size_bits(item)) == 1 and not w.is_unknown(item)
            else size
        )
        count = [Bit(str(item.count))] if item.count > 1 else []
        if not turned.function:
            return product([*count, size], self.style)
        angle = turned.degrees + sum(k * w.values[key] for key, k in turned.unknown)
        function = turned.function
        if self.style.cofunction and function in ("sin", "cos") and 0 < angle < 90 and w.account.mode == "deg":
            function, angle = {"sin": "cos", "cos": "sin"}[function], 90 - angle
        text = trig(function, w.angle(round(angle, 3)), self.style)
        if turned.over:
            return f"{size.text}/{text}" if self.style.divide != "\\frac" else f"\\frac{{{size.text}}}{{{text}}}"
        return product([*count, size, Bit(text, "trig")], self.style)

    def _forces(self, side: str) -> list[tuple[float, str, str]]:
        """Each force's part on one axis: its value, its text and its name."""
        w, out = self.w, []
        for item in w.account.items:
            key = f"*{side} {item.name}"
            value = w.values.get(key, 0.0)
            if abs(value) < 1e-9:
                continue
            text = w.shown[key].text if key in w.shown else self._trig_term(item, side)
            out.append((value, text, item.name))
        return out

    def _part(self, way: str, letter: str, whole: bool = False) -> None:
        """One part of the joint force: the others' sum turned over, or whatever sum of them comes to the account's
        value.
        """
        w, style = self.w, self.style
        key = f"reaction.{way}"
        value = w.values[key]
        forces = self._forces("level" if way == "right" else "upright")
        own = key in w.account.fixed  # worked out wrongly by the student
        found = tuple(-1 for _ in forces) if own else self._combination([each[0] for each in forces], value)
        made = sum(k * each[0] for k, each in zip(found, forces, strict=False))
        scale = max([abs(each[0]) for each in forces] or [abs(value)]) or 1.0
        signed = style.sense == "signed"
        negative = value < 0
        flip = -1 if negative and not signed else 1
        text, shown = w.number(value, "force", answer=True)
        other_bone = style.sense == "other bone" and self.bone and style.layout not in ("latex", "dollars")
        told = WAYS[way][negative ^ bool(other_bone)]
        stated = self._sense(told, bool(other_bone))
        remark = "" if signed else stated
        known = Claim(key, shown if not negative else -shown, scale, size=not signed and not stated)
        sides: list[Side | str] = [letter]
        if found:
            terms = [(flip * k * (1 if v > 0 else -1), t) for k, (v, t, _) in zip(found, forces, strict=True) if k]
            terms.sort(key=lambda each: -each[0])
            shape = (
                tuple(
                    Claim(f"push {'level' if way == 'right' else 'upright'} {name}", -k * v, scale, size=False)
                    for k, (v, _, name) in zip(found, forces, strict=True)
                )
                if signed
                else (Claim(key, made, scale, size=True),)
            )
            if w.account.mode != "deg" and any("cos" in t or "sin" in t for _, t in terms):
                shape = ()
            if len(terms) > 1 or any("cos" in t or "sin" in t for _, t in terms):
                sides.append(Side(sum_of(terms, style), shape))
        if signed and negative:
            text = put("-", style) + text
        sides.append(Side(text, (known,)))
        w.say(sides, "reaction" if not whole else "answer", remark=remark)
        w.pin(key, shown if not negative else -shown)
        w.shown[key] = Bit(put(rounded(value / w.push, style)[0], style))

    def _sense(self, told: str, other_bone: bool) -> str:
        """The sense in words, arrows or brackets; "" where it is not said."""
        if self.style.sense == "none":
            return ""
        if self.style.sense == "arrows" and self.style.layout not in ("latex", "dollars"):
            return f" {ARROWS[told]}"
        word = WORDS[told][self.w.way % 3]
        if self.style.layout in ("latex", "dollars"):
            return f"\\ \\text{{ {word} }}"
        if other_bone:
            return f", {word} on the {self.bone}"
        return f" ({word})" if self.style.sense == "brackets" else f", {word}" if self.w.way % 2 else f" {word}"

    def _combination(self, values: list[float], wanted: float) -> tuple[int, ...]:
        """Signs in front of the forces that give a value, those nearest to the plain -1 everywhere first; () where
        none do.
        """
        options = (
            sorted(every((-1, 0, 1), repeat=len(values)), key=lambda each: sum(abs(k + 1) for k in each))
            if len(values) < 7
            else []
        )
        return next(
            (
                each
                for each in options
                if any(each)
                and abs(sum(k * v for k, v in zip(each, values, strict=True)) - wanted) <= 1e-9 * max(abs(wanted), 1.0)
            ),
            (),
        )

    # ------------------------------------------------------------------ size and direction
    def _size(self) -> None:
        w, style = self.w, self.style
        x, y = w.values["reaction.right"], w.values["reaction.up"]
        if abs(x) < 1e-9 or abs(y) < 1e-9:
            return
        value = w.values["reaction"]
        a, b = (
            w.shown[key].text if key in w.shown else put(rounded(w.values[key] / w.push, style)[0], style)
            for key in ("reaction.right", "reaction.up")
        )
        text, shown = w.number(value, "force", answer=True)
        sides: list[Side | str] = [w.names.joint()]
        squares = f"{square(a, style, w.way)} + {square(b, style, w.way)}"
        forms = (
            (hypot(x, y), root(squares, style, w.way)),
            (abs(x) + abs(y), f"{a} + {b}"),
            (abs(abs(x) - abs(y)), f"{b} {style.minus} {a}" if abs(y) > abs(x) else f"{a} {style.minus} {b}"),
            (x * x + y * y, squares),
            (abs(x * x - y * y) ** 0.5, root(squares.replace(" + ", f" {style.minus} "), style, w.way)),
            ((abs(x) + abs(y)) ** 0.5, root(f"{a} + {b}", style, w.way)),
            ((x * x + y * y) / 2, f"({squares})/2"),
            (x + y, f"{a} + {b}"),
        )
        if "reaction" in w.account.fixed:
            forms = forms[:1]
        made, form = next(
            ((made, text) for made, text in forms if abs(made - value) <= 1e-9 * max(abs(value), 1) or len(forms) == 1),
            (0.0, ""),
        )
        if form == squares and w.us:
            raise Impossible("squares of pounds in an account in newtons")
        if form:
            sides.append(Side(form, (Claim("reaction", made),)))
        sides.append(Side(text, (Claim("reaction", shown),)))
        w.say(sides, "resultant")
        w.pin("reaction", shown)

    def _angle(self) -> None:
        w, style = self.w, self.style
        x, y = abs(w.values["reaction.right"]), abs(w.values["reaction.up"])
        if x < 1e-9 or y < 1e-9 or style.angle == "none":
            return
        value = w.values["*angle reaction"]
        a, b = (w.shown[key].text for key in ("reaction.right", "reaction.up"))
        upright = style.angle == "vertical"
        told = 90 - value if upright else value
        plain = degrees(atan2(x, y)) if upright else degrees(atan2(y, x))
        swapped = 90 - plain
        top, under = (a, b) if upright else (b, a)
        if abs(told - plain) > 1e-9 and abs(told - swapped) <= 1e-9:
            top, under = under, top
        elif abs(told - plain) > 1e-9 and "*angle reaction" not in w.account.fixed:
            top = ""
        text, shown = w.number(told, "angle", answer=True)
        if style.layout in ("latex", "dollars") and not text.endswith("circ"):
            text += "^\\circ"
        name = "\\theta" if style.layout in ("latex", "dollars") else ("θ", "theta", "angle", "beta", "α")[w.way % 5]
        claim = 90 - shown if upright else shown
        sides: list[Side | str] = [name]
        fraction = f"\\frac{{{top}}}{{{under}}}" if style.divide == "\\frac" else f"{top}/{under}"
        if top:
            sides.append(Side(inverse("tan", fraction, style, w.way), ()))
        told_from = reference(w, upright)
        level, steep = heading(w)
        ways = tuple(
            Claim(f"heading {axis}", 1.0 if way in ("right", "up") else -1.0, 2.0)
            for axis, way, told in (
                ("right", level, (level, "E of", "of E", "of W", "east", "west")),
                ("up", steep, (steep, "below", "above", "S of", "N of", "south", "north")),
            )
            if any(each in told_from for each in told)
        )
        sides.append(Side(text, (Claim("*angle reaction", claim), *ways)))
        w.say(sides, "direction", remark=told_from)
        w.pin("*angle reaction", claim)


def has_reaction(account: Account) -> bool:
    return (
        account.reaction
        and all(each.level is not None for each in account.items if each.kind != "couple")
        and account.bone is None
    )
