"""What routes have in common: whether one fits a problem, and numbers and answers as a student shows them. Knows no
route.
"""

from __future__ import annotations

from explain.marking.slips.account import Item

from .signs import Bit, datum, product, put, rounded
from .working import Claim
from .write import Writer


def one_pull(w: Writer) -> Item | None:
    """The one unknown pull, where all else is known."""
    pulls = w.account.pulls
    one = (
        len(pulls) == 1
        and pulls[0].kind in ("muscle", "force")
        and not any(each.multiple[0] for each in w.account.items)
        and not w.account.shares
    )
    return pulls[0] if one else None


def rest_of(w: Writer, pull: Item) -> list[Item]:
    return [each for each in w.account.items if each is not pull]


def plain(item: Item) -> bool:
    """Whether the force is upright and its arm one distance."""
    upright = item.upright is not None and not item.upright.function and bool(item.upright.sign)
    return upright and (len(item.legs) == 1 and not item.legs[0].turned.function)


def place_of(w: Writer, item: Item) -> float:
    """How far right of the joint an upright force acts, in m."""
    assert item.upright is not None
    return item.turns * item.upright.sign * w.values[f"*arm {item.name}"]


def size_of(w: Writer, item: Item) -> Bit:
    return product_bit(w, w.size_bits(item))


def product_bit(w: Writer, bits: list[Bit]) -> Bit:
    return bits[0] if len(bits) == 1 else Bit(product(bits, w.style), "number")


def length(w: Writer, value: float) -> str:
    return put(datum(round(value / w.length, 6)), w.style)


def answer(w: Writer, letter: str, texts: list[str], value: float, kind: str = "force", remark: str = "") -> float:
    """An answer with what it is worked out from; its value as shown. What it states of the pull or the joint force
    is kept.
    """
    text, shown = w.number(value, kind, answer=True)
    pull = one_pull(w)
    claims: tuple[Claim, ...] = ()
    if pull is not None and letter == w.names.force(pull):
        claims = (Claim(pull.key, shown),)
    elif letter in (w.names.joint(), w.names.joint("y")):
        claims = (
            Claim(
                "reaction",
                shown,
                max(abs(each) for each in (w.values["reaction"], *(w.values[it.key] for it in w.account.items))),
                True,
            ),
        )
    w.say([letter, *texts, (text, claims)], "answer", remark=remark)
    return shown


def displayed(w: Writer, value: float, unit: float) -> tuple[str, float]:
    text, shown = rounded(value / unit, w.style)
    return put(text, w.style), shown * unit
