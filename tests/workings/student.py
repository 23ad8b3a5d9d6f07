"""One working from beginning to end by one student: what comes in which order. Knows no slip and no verdict."""

from __future__ import annotations

from random import Random

from explain.marking.slips.account import Account, Impossible

from .balance import Balance
from .layout import lines
from .reaction import Reaction, has_reaction
from .routes import ROUTES
from .signs import POUND, product, put, rounded
from .style import Style
from .unknown import KINDS, from_forces, owner, unknown
from .working import Claim, Side, Working, moving
from .write import Writer


def working(
    account: Account, style: Style, random: Random, *, joint: str = "joint", bone: str = "", us: bool = False
) -> Working:
    """A whole working. Raises Impossible where this student could not have gone on."""
    if len(account.stages) != 1 or account.stages[0][0] != "moments":
        raise Impossible("more than one balance")
    writer = Writer(account, style, random, us)
    if (
        sum(any(leg.key == writer.unknown for leg in each.legs) for each in account.items) > 1
        or us
        and any(each.joined == "plus" for each in account.items)
    ):
        raise Impossible("nothing that this student could write down")
    opening(writer, joint)
    begun = writer.account, writer.values, list(writer.out)
    route = ROUTES.get(style.route)
    if route is None or not route(writer, bone):
        writer.account, writer.values, writer.out = begun
        writer.shown, writer.sines = {}, {}
        mistake(writer)
        usual(writer, bone)
    closing(writer)
    return Working(lines(writer.out, style, writer.way))


def usual(writer: Writer, bone: str) -> None:
    """Weights, arms, moments, the balance about the joint, the joint force."""
    style = writer.style
    if style.parts and style.layout not in ("latex", "dollars"):
        writer.words(("(a)", "a)", "Part a:", "(a) the pull")[writer.way % 4], "heading")
    writer.shares()
    writer.weights()
    if writer.unknown in writer.account.fixed:
        from_forces(writer)
    else:
        writer.arms()
        writer.moments()
        balance = Balance(writer)
        balance.first()
        unknown(writer, balance)
    if writer.values.get(writer.unknown, 1.0) < 0:
        return  # a pull below nothing: this student goes no further
    if has_reaction(writer.account) and writer.style.angle:
        if style.parts and style.layout not in ("latex", "dollars"):
            writer.words(("(b)", "b)", "Part b:", "(b) the joint force")[writer.way % 4], "heading")
        Reaction(writer, bone).write()


def mistake(writer: Writer) -> None:
    """A line that is struck out or replaced by the next."""
    style = writer.style
    load = next(
        (
            each
            for each in writer.account.items
            if each.mass in writer.account.data
            and len(each.legs) == 1
            and not each.legs[0].turned.function
            and not moving(each, writer.account)
        ),
        None,
    )
    if not style.mistake or load is None or style.layout != "plain":
        return
    mass, arm = writer.given(writer.values[load.mass], "mass"), writer.arm_bits(load)
    wrong = (
        product([mass, *arm], style)
        + style.equals
        + put(rounded(writer.values[load.mass] * writer.values[f"*arm {load.name}"] / writer.length, style)[0], style)
    )
    value = writer.values[load.mass] * writer.values["g"] * writer.values[f"*arm {load.name}"]
    right = (
        product([mass, writer.gravity(), *arm], style) + style.equals + writer.number(value, "moment", answer=True)[0]
    )
    if style.mistake == "struck":
        writer.words(f"~~{wrong}~~", "replaced")
        return
    writer.words(wrong, "replaced")
    writer.words(("no - need weight: " if style.mistake == "no" else "oops, forgot g: ") + right, "replaced")


def opening(writer: Writer, joint: str) -> None:
    """What is said before the first equation."""
    style = writer.style
    if style.layout in ("latex", "dollars"):
        if style.opening:
            writer.words(f"\\sum {'M' if style.positive > 0 else chr(92) + 'tau'} = 0")
        return
    turn = (
        ("ccw +", "counter-clockwise positive", "anticlockwise is positive")
        if style.positive > 0
        else ("cw +", "clockwise positive", "taking clockwise as positive")
    )
    said = {
        "pivot": (
            f"pivot at {joint}",
            f"taking moments about the {joint}",
            f"Take the {joint} as pivot.",
            f"moments about {joint}, ΣM = 0",
        ),
        "law": ("ΣM = 0", "ΣT = 0", "Sum M about the joint = 0", "sum of moments = 0", "Στ = 0", "net torque = 0"),
        "let": (
            "Let the pull be the unknown",
            "unknown: the muscle force",
            "the arm is at rest so everything balances",
        ),
        "sign": tuple(f"ΣM = 0 ({each})" for each in turn) if writer.way % 2 else turn,
        "heading": ("Solution", "# Solution", "Working:", "**Solution**", "My working"),
        "find": ("Find: the force of the muscle", "need to find the pull", "We want the pull of the muscle."),
    }
    for each in sorted(style.opening, key=lambda it: it != "heading"):
        writer.words(said[each][writer.way % len(said[each])], "heading" if each == "heading" else "words")
    if style.given:
        given(writer)


def given(writer: Writer) -> None:
    """The data again, in the student's letters."""
    for item in writer.account.items:
        if item.mass and item.mass in writer.account.data:
            text = writer.given(writer.values[item.mass], "mass").text
            writer.say(
                [
                    writer.names.mass(item),
                    Side(text + ("" if text.endswith("kg") else " kg"), (Claim(item.mass, writer.values[item.mass]),)),
                ],
                "given",
            )
    if "g" in writer.account.data and any(each.mass for each in writer.account.items) and writer.way % 2:
        writer.say(["g", writer.gravity().text], "given")


def closing(writer: Writer) -> None:
    """The answer said once more."""
    style = writer.style
    if (
        not style.closing
        or style.layout in ("latex", "dollars")
        or writer.unknown not in writer.shown
        or writer.values[writer.unknown] < 0
    ):
        return
    kind = next((kind for end, kind in KINDS.items() if writer.unknown.endswith(end)), "")
    if kind != "force":
        return
    item = owner(writer.account, writer.unknown)
    if item.kind not in ("muscle", "force"):
        return
    value = writer.values[writer.unknown]
    unit = writer.unit_of(kind)[0]
    text = f"{writer.shown[writer.unknown].text} {unit}"
    letter = writer.names.force(item)
    claim = (Claim(writer.unknown, value),)
    said = {
        "answer": [(f"Answer: {letter}", ()), (text, claim)],
        "box": [(f"**{letter}", ()), (f"{text}**", claim)],
        "therefore": [(f"∴ {letter}", ()), (text, claim)],
        "sentence": [(f"The pull of the {item.name} is {text}.", claim)],
    }[style.closing]
    writer.say([Side(*each) for each in said], "closing")
    if style.pounds and not writer.us:
        shown = rounded(value / POUND, style)
        writer.say(
            [letter, text, Side(f"{put(shown[0], style)} lb", (Claim(writer.unknown, shown[1] * POUND),))], "closing"
        )
