"""From a balance to what is asked: a pull, a weight, a mass, a distance, an angle, and what follows from it. Knows
no route.
"""

from __future__ import annotations

from itertools import product as every

from explain.marking.slips.account import Account, Item

from .balance import Balance
from .signs import Bit, datum, product, put, quotient, rounded, sum_of
from .working import Claim, Side
from .write import Writer

KINDS = {
    ".force": "force",
    ".weight": "force",
    ".mass": "mass",
    ".at": "length",
    ".com": "length",
    ".moment_arm": "length",
    ".moment": "moment",
}


def unknown(writer: Writer, balance: Balance) -> None:
    """From the balance to what is asked: the size of a pull or weight, a mass, a distance, an angle."""
    key = writer.unknown
    if key.startswith("*angle "):
        balance.angle("\\theta" if writer.style.layout in ("latex", "dollars") else ("θ", "theta")[writer.way % 2])
        return
    kind = next((kind for end, kind in KINDS.items() if key.endswith(end)), "force")
    item = owner(writer.account, key)
    letter = (
        writer.names.force(item)
        if kind in ("force", "mass")
        else writer.names.arm(item)
        if kind == "length"
        else writer.names.moment(item)
    )
    balance.solve(
        letter,
        "force" if kind == "mass" else kind,
        sense="" if item.kind in ("weight", "load") else _sense(writer, item),
    )
    if item.mass and key == item.key:
        value = writer.values[item.mass]
        text, shown = writer.number(value, "mass", answer=True)
        weight = writer.shown[key].text
        writer.say(
            [
                writer.names.mass(item),
                (
                    quotient(weight, put(datum(writer.values["g"]), writer.style), writer.style),
                    (Claim(item.mass, value),),
                ),
                (text, (Claim(item.mass, shown),)),
            ],
            "answer",
        )
        writer.pin(item.mass, shown)
    others(writer)


def from_forces(writer: Writer) -> None:
    """The unknown pull from a balance of forces alone."""
    item = owner(writer.account, writer.unknown)
    value = writer.values[writer.unknown]
    burdens = [each for each in writer.account.items if each is not item and each.key in writer.values]
    sizes = [writer.values[each.key] * each.count for each in burdens]
    signs = next(
        (
            each
            for each in every((1, 0, -1), repeat=len(sizes))
            if abs(abs(sum(k * v for k, v in zip(each, sizes, strict=True))) - value * item.count) < 0.01 * abs(value)
        ),
        (),
    )
    sides: list[Side | str] = [writer.names.force(item)]
    terms = [(k, product(writer.size_bits(each), writer.style)) for k, each in zip(signs, burdens, strict=False) if k]
    if terms and item.count == 1:
        sides.append(
            Side(sum_of(sorted(terms, key=lambda each: -each[0]), writer.style), (Claim(writer.unknown, value),))
        )
    text, shown = writer.number(value, "force", answer=True)
    writer.say([*sides, Side(text, (Claim(writer.unknown, shown),))], "answer")
    writer.pin(writer.unknown, shown)
    writer.shown[writer.unknown] = Bit(put(rounded(value / writer.push, writer.style)[0], writer.style))


def others(writer: Writer) -> None:
    """Pulls that are so many times the one found."""
    for item in writer.account.items:
        if item.multiple[0] and item.multiple[1] == writer.unknown and item.key in writer.values:
            value = writer.values[item.key]
            text, shown = writer.number(value, "force", answer=True)
            bits = writer.size_bits(item)[-2 if item.scale == 1.0 else -3 :]
            bits[-1] = writer.shown[writer.unknown]
            writer.say(
                [
                    writer.names.force(item),
                    (product(bits, writer.style), (Claim(item.key, value),)),
                    (text, (Claim(item.key, shown),)),
                ],
                "answer",
            )
            writer.pin(item.key, shown)


def _sense(writer: Writer, item: Item) -> str:
    """ "up" behind a pull that is straight up, by some students."""
    if (
        item.upright is None
        or item.upright.function
        or writer.way % 4
        or writer.style.layout in ("latex", "dollars")
        or item.upright.sign < 1
    ):
        return ""
    return (" up", " upward", ", upwards", " (up)")[writer.way // 4 % 4]


def owner(account: Account, key: str) -> Item:
    return next(
        each for each in account.items if key in (each.key, each.mass, each.arm, *(leg.key for leg in each.legs))
    )
