"""Right ways that begin as usual and go on otherwise: moments about the load, the triangle of forces, letters first."""

from __future__ import annotations

from math import cos, radians

from .balance import Balance
from .fitting import answer, displayed, length, one_pull, place_of, plain, rest_of, size_of
from .signs import Bit, product, quotient, root, square, sum_of, trig
from .unknown import unknown
from .write import Writer


def up_to_the_pull(w: Writer) -> None:
    """Weights, arms, moments, the balance about the joint and the pull, as usual."""
    w.shares()
    w.weights()
    w.arms()
    w.moments()
    balance = Balance(w)
    balance.first()
    unknown(w, balance)


def load_point(w: Writer, bone: str) -> bool:
    """The pull from moments about the joint, the joint force from moments about the load."""
    pull = one_pull(w)
    if pull is None or pull.count > 1 or not all(plain(each) for each in w.account.items) or not w.account.reaction:
        return False
    load = max(rest_of(w, pull), key=lambda each: abs(place_of(w, each)))
    at = place_of(w, load)
    if pull.upright is None or pull.upright.sign < 1 or abs(place_of(w, pull)) > abs(at):
        return False
    if any(place_of(w, each) * at < 0 for each in w.account.items) or any(
        each.upright.sign == pull.upright.sign for each in rest_of(w, pull)
    ):  # type: ignore[union-attr]
        return False
    up_to_the_pull(w)
    if w.style.layout not in ("latex", "dollars"):
        w.words(f"moments about the {load.name}:")
    rest = [each for each in w.account.items if each not in (load, pull)]
    letter = w.names.joint("")
    far = {
        each.name: product(
            [
                w.shown[each.key] if each is pull else size_of(w, each),
                Bit(f"{length(w, abs(at))} {w.style.minus} {length(w, abs(place_of(w, each)))}", "sum"),
            ],
            w.style,
        )
        for each in (pull, *rest)
    }
    right = [
        (1, product([Bit(letter, "letter"), Bit(length(w, abs(at)))], w.style)),
        *((1, far[each.name]) for each in rest),
    ]
    w.say([far[pull.name], sum_of(right, w.style)], "balance")
    value = (
        w.values[pull.key] * abs(at - place_of(w, pull))
        - sum(w.values[each.key] * abs(at - place_of(w, each)) for each in rest)
    ) / abs(at)
    answer(w, letter, [], value, remark=" down" if w.style.layout not in ("latex", "dollars") else "")
    return True


def triangle(w: Writer, bone: str) -> bool:
    """The joint force by the cosine rule, from the pull and all weights as one."""
    pull = one_pull(w)
    oblique = (
        pull is not None
        and pull.upright is not None
        and pull.upright.function == "sin"
        and pull.upright.sign > 0
        and not pull.upright.unknown
    )
    if (
        pull is None
        or not oblique
        or pull.count > 1
        or w.account.mode != "deg"
        or not w.account.reaction
        or not all(each.kind in ("weight", "load") for each in rest_of(w, pull))
    ):
        return False
    up_to_the_pull(w)
    whole = sum(w.values[each.key] for each in rest_of(w, pull))
    name = "W" if w.style.layout in ("latex", "dollars") else ("W", "W_total", "Wtot")[w.way % 3]
    if len(rest_of(w, pull)) > 1:
        whole = answer(w, name, [sum_of([(1, size_of(w, each).text) for each in rest_of(w, pull)], w.style)], whole)
    assert pull.upright is not None
    f, v = w.shown[pull.key].text, displayed(w, whole, w.push)[0]
    size = w.values[pull.key]
    angle = pull.upright.degrees
    inner = f"{square(f, w.style, w.way)} + {square(v, w.style, w.way)} {w.style.minus} " + product(
        [Bit("2"), Bit(f), Bit(v), Bit(trig("cos", w.angle(abs(90 - angle)), w.style), "trig")], w.style
    )
    value = (size**2 + whole**2 - 2 * size * whole * cos(radians(90 - angle))) ** 0.5
    answer(w, w.names.joint(), [root(inner, w.style, w.way)], value)
    return True


def checked(w: Writer, bone: str) -> bool:
    """The usual way, with the answer put back at the end."""
    pull = one_pull(w)
    if (
        pull is None
        or pull.count > 1
        or w.style.layout in ("latex", "dollars")
        or any(each.turns == pull.turns for each in rest_of(w, pull))
    ):
        return False
    up_to_the_pull(w)
    left = product([w.shown[pull.key], *w.arm_bits(pull)], w.style)
    made = w.values[pull.key] * w.values[f"*arm {pull.name}"]
    w.say([f"check: {left}", displayed(w, made, w.push * w.length)[0]], "closing")
    terms = [(1, product([*w.size_bits(each), *w.arm_bits(each)], w.style)) for each in rest_of(w, pull)]
    total = sum(abs(w.values[each.key] * w.values[f"*arm {each.name}"]) for each in rest_of(w, pull))
    w.say([sum_of(terms, w.style), displayed(w, total, w.push * w.length)[0] + (" ✓" if w.way % 2 else "")], "closing")
    return True


def letters_first(w: Writer, bone: str) -> bool:
    """The law and the unknown in letters, numbers last."""
    pull = one_pull(w)
    if (
        pull is None
        or pull.count > 1
        or any(each.turns == pull.turns for each in rest_of(w, pull))
        or w.style.times == " times "
    ):
        return False
    if not all(plain(each) for each in w.account.items):
        return False
    w.weights()
    letter, arm = w.names.force(pull), w.names.arm(pull)
    if any(
        len(each.split("_")[0].lstrip("\\")) > 2 or " " in each
        for each in (
            letter,
            arm,
            *(w.names.force(each) for each in rest_of(w, pull)),
            *(w.names.arm(each) for each in rest_of(w, pull)),
        )
    ):
        return False
    terms = " + ".join(f"{w.names.force(each)} {w.names.arm(each)}" for each in rest_of(w, pull))
    for each in w.account.items:
        w.say(
            [
                w.names.arm(each),
                w.given(w.values[f"*arm {each.name}"], "length").text
                + (
                    f" {w.length_unit}"
                    if w.style.units == "answers" and w.style.layout not in ("latex", "dollars")
                    else ""
                ),
            ],
            "given",
        )
    w.say([f"{letter} {arm}", terms], "balance")
    numbers = sum_of(
        [(1, product([*w.size_bits(each), *w.arm_bits(each)], w.style)) for each in rest_of(w, pull)], w.style
    )
    below = product(w.arm_bits(pull), w.style)
    answer(
        w,
        letter,
        [
            quotient(terms, arm, w.style, row_above=len(rest_of(w, pull)) > 1 or " " in terms),
            quotient(numbers, below, w.style, row_above=True, row_below=" " in below),
        ],
        sum(w.values[each.key] * w.values[f"*arm {each.name}"] for each in rest_of(w, pull))
        / w.values[f"*arm {pull.name}"],
    )
    return True
