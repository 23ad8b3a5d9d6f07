"""Other right ways through a problem than moments about the joint, then forces. Each says no where it does not fit. Only right workings take them."""
from __future__ import annotations

from collections.abc import Callable, Mapping
from math import cos, radians, tan

from explain.account import Item

from .signs import Bit, datum, product, put, quotient, root, rounded, square, sum_of, trig
from .write import Writer

Route = Callable[[Writer, str], bool]


# ---------------------------------------------------------------------- what fits
def _pull(w: Writer) -> Item | None:
    """The one unknown pull, where all else is known."""
    pulls = w.account.pulls
    one = len(pulls) == 1 and pulls[0].kind in ("muscle", "force") and not any(each.multiple[0] for each in w.account.items) and not w.account.shares
    return pulls[0] if one else None


def _others(w: Writer, pull: Item) -> list[Item]:
    return [each for each in w.account.items if each is not pull]


def _plain(item: Item) -> bool:
    """Whether the force is upright and its arm one distance."""
    upright = item.upright is not None and not item.upright.function and bool(item.upright.sign)
    return upright and (len(item.legs) == 1 and not item.legs[0].turned.function)


def _place(w: Writer, item: Item) -> float:
    """How far right of the joint an upright force acts, in m."""
    assert item.upright is not None
    return item.turns * item.upright.sign * w.values[f"*arm {item.name}"]


def _size(w: Writer, item: Item) -> Bit:
    return product_bit(w, w.size_bits(item))


def product_bit(w: Writer, bits: list[Bit]) -> Bit:
    return bits[0] if len(bits) == 1 else Bit(product(bits, w.style), "number")


def _length(w: Writer, value: float) -> str:
    return put(datum(round(value / w.length, 6)), w.style)


def _answer(w: Writer, letter: str, texts: list[str], value: float, kind: str = "force", remark: str = "") -> float:
    text, shown = w.number(value, kind, answer=True)
    w.say([letter, *texts, text], "answer", remark=remark)
    return shown


def _shown(w: Writer, value: float, unit: float) -> tuple[str, float]:
    text, shown = rounded(value / unit, w.style)
    return put(text, w.style), shown * unit


# ---------------------------------------------------------------------- the routes
def insertion(w: Writer, bone: str) -> bool:
    """Moments about the muscle's insertion: the joint force first, then the pull."""
    pull = _pull(w)
    if pull is None or pull.count > 1 or not all(_plain(each) for each in w.account.items) or not w.account.reaction:
        return False
    w.weights()
    if w.style.layout not in ("latex", "dollars"):
        w.words((f"moments about where the {pull.name} pulls:", "pivot at the insertion of the muscle", "taking moments about the muscle attachment, ΣM = 0")[w.way % 3])
    at = _place(w, pull)
    letter = w.names.joint("y" if w.way % 2 else "")
    terms, total = [], 0.0
    for each in _others(w, pull):
        far = _place(w, each) - at
        if far / at * each.upright.sign * pull.upright.sign > 0:  # type: ignore[union-attr]
            return False
        sign = "+" if _place(w, each) * at < 0 else w.style.minus
        bits = [*w.size_bits(each), Bit(f"{_length(w, abs(_place(w, each)))} {sign} {_length(w, abs(at))}", "sum")]
        terms.append((1, product(bits, w.style)))
        total += w.values[each.key] * abs(far)
    w.say([product([Bit(letter, "letter"), Bit(_length(w, abs(at)))], w.style), sum_of(terms, w.style)], "balance")
    way = "down" if pull.upright.sign > 0 else "up"  # type: ignore[union-attr]
    force = _answer(w, letter, [], total / abs(at), remark=f", {way}" if w.style.layout not in ("latex", "dollars") else "")
    sizes = sum(w.values[each.key] for each in _others(w, pull)) * (1 if pull.upright.sign > 0 else -1)  # type: ignore[union-attr]
    again = _shown(w, force, w.push)[0]
    texts = [(1, again), *((1 if pull.upright.sign > 0 else -1, _size(w, each).text) for each in _others(w, pull))]  # type: ignore[union-attr]
    _answer(w, w.names.force(pull), [sum_of(texts, w.style)], force + sizes)
    return True


def superposition(w: Writer, bone: str) -> bool:
    """What each weight needs alone, then all together."""
    pull = _pull(w)
    if pull is None or pull.count > 1 or len(_others(w, pull)) < 2 or w.style.layout in ("latex", "dollars"):
        return False
    w.weights()
    w.arms()
    arm = product_bit(w, w.arm_bits(pull))
    row = any(each in arm.text for each in " ·*x×/") or "sin" in arm.text or "cos" in arm.text
    parts = []
    for number, each in enumerate(_others(w, pull), 1):
        sign = -1 if each.turns == pull.turns else 1
        top = product([*w.size_bits(each), *w.arm_bits(each)], w.style)
        value = w.values[each.key] * each.count * w.values[f"*arm {each.name}"] / w.values[f"*arm {pull.name}"]
        letter = f"F{number}" if w.way % 2 else f"F_{w.names.words[each.name]}"
        lead = (f"{each.name} alone: ", "", f"for the {each.name}: ")[w.way % 3]
        text, shown = w.number(value, "force", answer=True)
        w.say([lead + letter, quotient(top, arm.text, w.style, row_below=row), text], "answer")
        parts.append((sign, _shown(w, value, w.push)[0], shown))
    total = sum(sign * shown for sign, _, shown in parts)
    _answer(w, w.names.force(pull) if w.style.force != "F1" else "F", [sum_of([(sign, text) for sign, text, _ in sorted(parts, key=lambda it: -it[0])], w.style)], total)
    return True


def masses(w: Writer, bone: str) -> bool:
    """Moments in kilograms times length, g at the end."""
    pull = _pull(w)
    if pull is None or pull.count > 1 or not all(each.mass in w.account.data for each in _others(w, pull)) or w.us or w.style.layout in ("latex", "dollars"):
        return False
    if any(each.turns == pull.turns for each in _others(w, pull)):
        return False
    w.arms()
    letter = w.names.force(pull)
    over = (f"{letter}/g", f"{letter} / g", f"({letter}/g)")[w.way % 3]
    terms = [(1, product([w.given(w.values[each.mass], "mass"), *w.arm_bits(each)], w.style)) for each in _others(w, pull)]
    w.say([product([Bit(over, "letter"), *w.arm_bits(pull)], w.style), sum_of(terms, w.style)], "balance")
    total = sum(w.values[each.mass] * w.values[f"*arm {each.name}"] for each in _others(w, pull))
    kilograms = _answer(w, over, [], total / w.values[f"*arm {pull.name}"], "mass")
    _answer(w, letter, [product([Bit(_shown(w, kilograms, 1.0)[0] + (" kg" if w.style.units == "all" else "")), w.gravity()], w.style)], kilograms * w.values["g"])
    return True


def parts_first(w: Writer, bone: str) -> bool:
    """The upright part of an oblique pull first, the pull from it by the complementary angle."""
    pull = _pull(w)
    level = pull is not None and len(pull.legs) == 1 and pull.legs[0].turned.function == "sin" and all(_plain(each) for each in _others(w, pull))
    if pull is None or not level or pull.count > 1 or w.style.layout in ("latex", "dollars") or pull.upright is None or pull.upright.sign < 1:
        return False
    angle = pull.legs[0].turned.degrees
    if not 0 < angle < 90 or w.style.force == "x":
        return False
    w.weights()
    w.words(("V = vertical part of the pull", "Let V be the vertical part of the pull", f"V is the vertical part of the {pull.name}")[w.way % 3])
    arm = w.given(w.values[pull.legs[0].key], "length").text
    terms = [(1, product([*w.size_bits(each), *w.arm_bits(each)], w.style)) for each in _others(w, pull)]
    total = sum(w.values[each.key] * w.values[f"*arm {each.name}"] for each in _others(w, pull))
    text, shown = _shown(w, total, w.push * w.length)
    w.say([product([Bit(arm), Bit("V", "letter")], w.style), sum_of(terms, w.style), text], "balance")
    upright = _answer(w, "V", [], shown / w.values[pull.legs[0].key])
    v = _shown(w, upright, w.push)[0]
    steep = w.angle(90 - angle)
    _answer(w, w.names.force(pull), [quotient(v, trig("cos", steep, w.style), w.style)], upright / cos(radians(90 - angle)))
    toward = pull.level is not None and pull.level.sign < 0
    _answer(w, "H", [product([Bit(v), Bit(trig("tan", steep, w.style), "trig")], w.style)], upright * tan(radians(90 - angle)),
            remark=f", the joint pushes that much to the {'right' if toward else 'left'}")
    weights = [(-1, _size(w, each).text) for each in _others(w, pull)]
    _answer(w, "down:", [sum_of([(1, v), *weights], w.style)], upright - sum(w.values[each.key] for each in _others(w, pull)))
    w.out[-1].sides[0:2] = [type(w.out[-1].sides[0])(f"down: {w.out[-1].sides[1].text}")]
    return True


def ratio(w: Writer, bone: str) -> bool:
    """One load, one pull: the ratio of their arms."""
    pull = _pull(w)
    if pull is None or len(_others(w, pull)) != 1 or pull.count > 1:
        return False
    load = _others(w, pull)[0]
    w.weights()
    w.arms()
    arms = [product(w.arm_bits(each), w.style) for each in (load, pull)]
    share = w.values[f"*arm {load.name}"] / w.values[f"*arm {pull.name}"]
    row = [not each.replace(".", "").replace(",", "").isdigit() for each in arms]
    letter, weight = w.names.force(pull), w.names.force(load)
    text, shown = _shown(w, share, 1.0)
    w.say([quotient(letter, weight, w.style), quotient(*arms, w.style, row_above=False, row_below=row[1]), text], "balance")
    _answer(w, letter, [product([Bit(text), *w.size_bits(load)], w.style)], shown * w.values[load.key])
    return True


def run_on(w: Writer, bone: str) -> bool:
    """A row of sums on one line, each going on from the last."""
    pull = _pull(w)
    if pull is None or len(_others(w, pull)) != 1 or not all(_plain(each) for each in w.account.items) or pull.count > 1 or not _others(w, pull)[0].mass:
        return False
    load = _others(w, pull)[0]
    weight, size = _shown(w, w.values[load.key], w.push)
    moment, turning = _shown(w, size * w.values[f"*arm {load.name}"], w.push * w.length)
    last, _ = w.number(turning / w.values[f"*arm {pull.name}"], "force", answer=True)
    w.say([product(w.weight_bits(load), w.style), product([Bit(weight), *w.arm_bits(load)], w.style),
           quotient(moment, product(w.arm_bits(pull), w.style), w.style), last], "answer")
    return True


def answers(w: Writer, bone: str) -> bool:
    """The answers and nothing else."""
    pull = _pull(w)
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


def load_point(w: Writer, bone: str) -> bool:
    """The pull from moments about the joint, the joint force from moments about the load."""
    pull = _pull(w)
    if pull is None or pull.count > 1 or not all(_plain(each) for each in w.account.items) or not w.account.reaction:
        return False
    load = max(_others(w, pull), key=lambda each: abs(_place(w, each)))
    at = _place(w, load)
    if any(_place(w, each) * at < 0 for each in w.account.items):
        return False
    _up_to_the_pull(w)
    if w.style.layout not in ("latex", "dollars"):
        w.words(f"moments about the {load.name}:")
    rest = [each for each in w.account.items if each not in (load, pull)]
    letter = w.names.joint("")
    far = {each.name: product([w.shown[each.key] if each is pull else _size(w, each), Bit(f"{_length(w, abs(at))} {w.style.minus} {_length(w, abs(_place(w, each)))}", "sum")], w.style)
           for each in (pull, *rest)}
    right = [(1, product([Bit(letter, "letter"), Bit(_length(w, abs(at)))], w.style)), *((1, far[each.name]) for each in rest)]
    w.say([far[pull.name], sum_of(right, w.style)], "balance")
    value = (w.values[pull.key] * abs(at - _place(w, pull)) - sum(w.values[each.key] * abs(at - _place(w, each)) for each in rest)) / abs(at)
    _answer(w, letter, [], value, remark=" down" if w.style.layout not in ("latex", "dollars") else "")
    return True


def _up_to_the_pull(w: Writer) -> None:
    from .balance import Balance
    from .student import unknown

    w.shares()
    w.weights()
    w.arms()
    w.moments()
    balance = Balance(w)
    balance.first()
    unknown(w, balance)


def triangle(w: Writer, bone: str) -> bool:
    """The joint force by the cosine rule, from the pull and all weights as one."""
    pull = _pull(w)
    oblique = pull is not None and pull.upright is not None and pull.upright.function == "sin" and pull.upright.sign > 0 and not pull.upright.unknown
    if pull is None or not oblique or pull.count > 1 or w.account.mode != "deg" or not w.account.reaction \
            or not all(each.kind in ("weight", "load") for each in _others(w, pull)):
        return False
    _up_to_the_pull(w)
    whole = sum(w.values[each.key] for each in _others(w, pull))
    name = "W" if w.style.layout in ("latex", "dollars") else ("W", "W_total", "Wtot")[w.way % 3]
    if len(_others(w, pull)) > 1:
        whole = _answer(w, name, [sum_of([(1, _size(w, each).text) for each in _others(w, pull)], w.style)], whole)
    assert pull.upright is not None
    f, v = w.shown[pull.key].text, _shown(w, whole, w.push)[0]
    size = w.values[pull.key]
    angle = pull.upright.degrees
    inner = f"{square(f, w.style, w.way)} + {square(v, w.style, w.way)} {w.style.minus} " + product(
        [Bit("2"), Bit(f), Bit(v), Bit(trig("cos", w.angle(abs(90 - angle)), w.style), "trig")], w.style)
    value = (size**2 + whole**2 - 2 * size * whole * cos(radians(90 - angle))) ** 0.5
    _answer(w, w.names.joint(), [root(inner, w.style, w.way)], value)
    return True


def checked(w: Writer, bone: str) -> bool:
    """The usual way, with the answer put back at the end."""
    pull = _pull(w)
    if pull is None or pull.count > 1 or w.style.layout in ("latex", "dollars") or any(each.turns == pull.turns for each in _others(w, pull)):
        return False
    _up_to_the_pull(w)
    left = product([w.shown[pull.key], *w.arm_bits(pull)], w.style)
    made = w.values[pull.key] * w.values[f"*arm {pull.name}"]
    w.say([f"check: {left}", _shown(w, made, w.push * w.length)[0]], "closing")
    terms = [(1, product([*w.size_bits(each), *w.arm_bits(each)], w.style)) for each in _others(w, pull)]
    total = sum(abs(w.values[each.key] * w.values[f"*arm {each.name}"]) for each in _others(w, pull))
    w.say([sum_of(terms, w.style), _shown(w, total, w.push * w.length)[0] + (" ✓" if w.way % 2 else "")], "closing")
    return True


def letters_first(w: Writer, bone: str) -> bool:
    """The law and the unknown in letters, numbers last."""
    pull = _pull(w)
    if pull is None or pull.count > 1 or any(each.turns == pull.turns for each in _others(w, pull)) or w.style.times == " times ":
        return False
    if not all(_plain(each) for each in w.account.items):
        return False
    w.weights()
    letter, arm = w.names.force(pull), w.names.arm(pull)
    if any(len(each.split("_")[0].lstrip("\\")) > 2 or " " in each for each in (letter, arm, *(w.names.force(each) for each in _others(w, pull)), *(w.names.arm(each) for each in _others(w, pull)))):
        return False
    terms = " + ".join(f"{w.names.force(each)} {w.names.arm(each)}" for each in _others(w, pull))
    for each in w.account.items:
        w.say([w.names.arm(each), w.given(w.values[f"*arm {each.name}"], "length").text + (f" {w.length_unit}" if w.style.units == "answers" and w.style.layout not in ("latex", "dollars") else "")], "given")
    w.say([f"{letter} {arm}", terms], "balance")
    numbers = sum_of([(1, product([*w.size_bits(each), *w.arm_bits(each)], w.style)) for each in _others(w, pull)], w.style)
    below = product(w.arm_bits(pull), w.style)
    _answer(w, letter, [quotient(terms, arm, w.style, row_above=len(_others(w, pull)) > 1 or " " in terms), quotient(numbers, below, w.style, row_above=True, row_below=" " in below)],
            sum(w.values[each.key] * w.values[f"*arm {each.name}"] for each in _others(w, pull)) / w.values[f"*arm {pull.name}"])
    return True


def halved(w: Writer, bone: str) -> bool:
    """Two equal pulls taken together, halved at the end."""
    pull = _pull(w)
    if pull is None or pull.count != 2 or w.style.layout in ("latex", "dollars"):
        return False
    w.weights()
    w.arms()
    w.words(("both together:", "both limbs as one", "let T_both be both pulls together")[w.way % 3])
    name = ("T_both", "F_both", "F_tot")[w.way // 3 % 3]
    terms = [(1, product([*w.size_bits(each), *w.arm_bits(each)], w.style)) for each in _others(w, pull)]
    total = sum(w.values[each.key] * w.values[f"*arm {each.name}"] for each in _others(w, pull))
    w.say([product([Bit(name, "letter"), *w.arm_bits(pull)], w.style), sum_of(terms, w.style)], "balance")
    both = _answer(w, name, [], total / w.values[f"*arm {pull.name}"])
    _answer(w, w.names.force(pull), [f"{_shown(w, both, w.push)[0]}/2"], both / 2, remark=" each")
    return True


ROUTES: Mapping[str, Route] = {
    "insertion": insertion, "superposition": superposition, "masses": masses, "parts first": parts_first, "ratio": ratio, "run-on": run_on, "answers": answers,
    "load": load_point, "triangle": triangle, "check": checked, "letters first": letters_first, "halved": halved}
