"""Other right ways through a problem than moments about the joint, then forces. Each says no where it does not fit.
Only right workings take them.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from math import cos, radians, tan

from .after import checked, letters_first, load_point, triangle
from .fitting import answer, displayed, length, one_pull, place_of, plain, product_bit, rest_of, size_of
from .signs import Bit, product, quotient, sum_of, trig
from .write import Writer

Route = Callable[[Writer, str], bool]


def insertion(w: Writer, bone: str) -> bool:
    """Moments about the muscle's insertion: the joint force first, then the pull."""
    pull = one_pull(w)
    if pull is None or pull.count > 1 or not all(plain(each) for each in w.account.items) or not w.account.reaction:
        return False
    w.weights()
    if w.style.layout not in ("latex", "dollars"):
        w.words(
            (
                f"moments about where the {pull.name} pulls:",
                "pivot at the insertion of the muscle",
                "taking moments about the muscle attachment, ΣM = 0",
            )[w.way % 3]
        )
    at = place_of(w, pull)
    letter = w.names.joint("y" if w.way % 2 else "")
    terms, total = [], 0.0
    for each in rest_of(w, pull):
        far = place_of(w, each) - at
        if far / at * each.upright.sign * pull.upright.sign > 0:  # type: ignore[union-attr]
            return False
        sign = "+" if place_of(w, each) * at < 0 else w.style.minus
        bits = [*w.size_bits(each), Bit(f"{length(w, abs(place_of(w, each)))} {sign} {length(w, abs(at))}", "sum")]
        terms.append((1, product(bits, w.style)))
        total += w.values[each.key] * abs(far)
    w.say([product([Bit(letter, "letter"), Bit(length(w, abs(at)))], w.style), sum_of(terms, w.style)], "balance")
    way = "down" if pull.upright.sign > 0 else "up"  # type: ignore[union-attr]
    force = answer(
        w, letter, [], total / abs(at), remark=f", {way}" if w.style.layout not in ("latex", "dollars") else ""
    )
    sizes = sum(w.values[each.key] for each in rest_of(w, pull)) * (1 if pull.upright.sign > 0 else -1)  # type: ignore[union-attr]
    again = displayed(w, force, w.push)[0]
    texts = [(1, again), *((1 if pull.upright.sign > 0 else -1, size_of(w, each).text) for each in rest_of(w, pull))]  # type: ignore[union-attr]
    answer(w, w.names.force(pull), [sum_of(texts, w.style)], force + sizes)
    return True


def superposition(w: Writer, bone: str) -> bool:
    """What each weight needs alone, then all together."""
    pull = one_pull(w)
    if pull is None or pull.count > 1 or len(rest_of(w, pull)) < 2 or w.style.layout in ("latex", "dollars"):
        return False
    w.weights()
    w.arms()
    arm = product_bit(w, w.arm_bits(pull))
    row = any(each in arm.text for each in " ·*x×/") or "sin" in arm.text or "cos" in arm.text
    parts = []
    for number, each in enumerate(rest_of(w, pull), 1):
        sign = -1 if each.turns == pull.turns else 1
        top = product([*w.size_bits(each), *w.arm_bits(each)], w.style)
        value = w.values[each.key] * each.count * w.values[f"*arm {each.name}"] / w.values[f"*arm {pull.name}"]
        letter = (f"F{number}", f"F_{number}", f"F_m{number}")[w.way // 3 % 3]
        lead = (f"{each.name} alone: ", "", f"for the {each.name}: ")[w.way % 3]
        text, shown = w.number(value, "force", answer=True)
        w.say([lead + letter, quotient(top, arm.text, w.style, row_below=row), text], "answer")
        parts.append((sign, displayed(w, value, w.push)[0], shown))
    total = sum(sign * shown for sign, _, shown in parts)
    answer(
        w,
        w.names.force(pull) if w.style.force != "F1" else "F",
        [sum_of([(sign, text) for sign, text, _ in sorted(parts, key=lambda it: -it[0])], w.style)],
        total,
    )
    return True


def masses(w: Writer, bone: str) -> bool:
    """Moments in kilograms times length, g at the end."""
    pull = one_pull(w)
    if (
        pull is None
        or pull.count > 1
        or not all(each.mass in w.account.data for each in rest_of(w, pull))
        or w.us
        or w.style.layout in ("latex", "dollars")
    ):
        return False
    if any(each.turns == pull.turns for each in rest_of(w, pull)):
        return False
    w.arms()
    letter = w.names.force(pull)
    over = (f"{letter}/g", f"{letter} / g", f"({letter}/g)")[w.way % 3 if w.style.times not in ("()", ")(") else 2]
    terms = [
        (1, product([w.given(w.values[each.mass], "mass"), *w.arm_bits(each)], w.style)) for each in rest_of(w, pull)
    ]
    w.say([product([Bit(over, "letter"), *w.arm_bits(pull)], w.style), sum_of(terms, w.style)], "balance")
    total = sum(w.values[each.mass] * w.values[f"*arm {each.name}"] for each in rest_of(w, pull))
    kilograms = answer(w, over, [], total / w.values[f"*arm {pull.name}"], "mass")
    answer(
        w,
        letter,
        [
            product(
                [Bit(displayed(w, kilograms, 1.0)[0] + (" kg" if w.style.units == "all" else "")), w.gravity()], w.style
            )
        ],
        kilograms * w.values["g"],
    )
    return True


def parts_first(w: Writer, bone: str) -> bool:
    """The upright part of an oblique pull first, the pull from it by the complementary angle."""
    pull = one_pull(w)
    level = (
        pull is not None
        and len(pull.legs) == 1
        and pull.legs[0].turned.function == "sin"
        and all(plain(each) for each in rest_of(w, pull))
    )
    if (
        pull is None
        or not level
        or pull.count > 1
        or w.style.layout in ("latex", "dollars")
        or pull.upright is None
        or pull.upright.sign < 1
    ):
        return False
    angle = pull.legs[0].turned.degrees
    if not 0 < angle < 90 or w.style.force == "x":
        return False
    w.weights()
    w.words(
        (
            "V = vertical part of the pull",
            "Let V be the vertical part of the pull",
            f"V is the vertical part of the {pull.name}",
        )[w.way % 3]
    )
    arm = w.given(w.values[pull.legs[0].key], "length").text
    terms = [(1, product([*w.size_bits(each), *w.arm_bits(each)], w.style)) for each in rest_of(w, pull)]
    total = sum(w.values[each.key] * w.values[f"*arm {each.name}"] for each in rest_of(w, pull))
    text, shown = displayed(w, total, w.push * w.length)
    w.say([product([Bit(arm), Bit("V", "letter")], w.style), sum_of(terms, w.style), text], "balance")
    upright = answer(w, "V", [], shown / w.values[pull.legs[0].key])
    v = displayed(w, upright, w.push)[0]
    steep = w.angle(90 - angle)
    answer(
        w, w.names.force(pull), [quotient(v, trig("cos", steep, w.style), w.style)], upright / cos(radians(90 - angle))
    )
    toward = pull.level is not None and pull.level.sign < 0
    answer(
        w,
        "H",
        [product([Bit(v), Bit(trig("tan", steep, w.style), "trig")], w.style)],
        upright * tan(radians(90 - angle)),
        remark=f", the joint pushes that much to the {'right' if toward else 'left'}",
    )
    weights = [(-1, size_of(w, each).text) for each in rest_of(w, pull)]
    answer(
        w,
        "down:",
        [sum_of([(1, v), *weights], w.style)],
        upright - sum(w.values[each.key] for each in rest_of(w, pull)),
    )
    w.out[-1].sides[0:2] = [type(w.out[-1].sides[0])(f"down: {w.out[-1].sides[1].text}")]
    return True


def ratio(w: Writer, bone: str) -> bool:
    """One load, one pull: the ratio of their arms."""
    pull = one_pull(w)
    if pull is None or len(rest_of(w, pull)) != 1 or pull.count > 1:
        return False
    load = rest_of(w, pull)[0]
    w.weights()
    w.arms()
    arms = [product(w.arm_bits(each), w.style) for each in (load, pull)]
    share = w.values[f"*arm {load.name}"] / w.values[f"*arm {pull.name}"]
    row = [not each.replace(".", "").replace(",", "").isdigit() for each in arms]
    letter, weight = w.names.force(pull), w.names.force(load)
    text, shown = displayed(w, share, 1.0)
    w.say(
        [quotient(letter, weight, w.style), quotient(*arms, w.style, row_above=False, row_below=row[1]), text],
        "balance",
    )
    answer(w, letter, [product([Bit(text), *w.size_bits(load)], w.style)], shown * w.values[load.key])
    return True


def run_on(w: Writer, bone: str) -> bool:
    """A row of sums on one line, each going on from the last."""
    pull = one_pull(w)
    if (
        pull is None
        or len(rest_of(w, pull)) != 1
        or not all(plain(each) for each in w.account.items)
        or pull.count > 1
        or not rest_of(w, pull)[0].mass
    ):
        return False
    load = rest_of(w, pull)[0]
    weight, size = displayed(w, w.values[load.key], w.push)
    moment, turning = displayed(w, size * w.values[f"*arm {load.name}"], w.push * w.length)
    last, _ = w.number(turning / w.values[f"*arm {pull.name}"], "force", answer=True)
    w.say(
        [
            product(w.weight_bits(load), w.style),
            product([Bit(weight), *w.arm_bits(load)], w.style),
            quotient(moment, product(w.arm_bits(pull), w.style), w.style),
            last,
        ],
        "answer",
    )
    return True


def answers(w: Writer, bone: str) -> bool:
    """The answers and nothing else."""
    pull = one_pull(w)
    if pull is None:
        return False
    letter = w.names.force(pull)
    value = w.values[pull.key]
    text, _ = w.number(value, "force", answer=True)
    if w.way % 3 == 0:
        w.words(text)
    else:
        w.say([letter, text], "answer")
    return True


def halved(w: Writer, bone: str) -> bool:
    """Two equal pulls taken together, halved at the end."""
    pull = one_pull(w)
    if pull is None or pull.count != 2 or w.style.layout in ("latex", "dollars"):
        return False
    w.weights()
    w.arms()
    name = ("T_both", "F_both", "F_tot")[w.way // 3 % 3]
    w.words(("both together:", "both limbs as one", f"let {name} be both pulls together")[w.way % 3])
    terms = [(1, product([*w.size_bits(each), *w.arm_bits(each)], w.style)) for each in rest_of(w, pull)]
    total = sum(w.values[each.key] * w.values[f"*arm {each.name}"] for each in rest_of(w, pull))
    w.say([product([Bit(name, "letter"), *w.arm_bits(pull)], w.style), sum_of(terms, w.style)], "balance")
    both = answer(w, name, [], total / w.values[f"*arm {pull.name}"])
    answer(w, w.names.force(pull), [f"{displayed(w, both, w.push)[0]}/2"], both / 2, remark=" each")
    return True


ROUTES: Mapping[str, Route] = {
    "insertion": insertion,
    "superposition": superposition,
    "masses": masses,
    "parts first": parts_first,
    "ratio": ratio,
    "run-on": run_on,
    "answers": answers,
    "load": load_point,
    "triangle": triangle,
    "check": checked,
    "letters first": letters_first,
    "halved": halved,
}
