"""How one student writes: signs, letters, units, rounding, the law, the route, the layout. One frozen record; knows
no problem.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from random import Random

TIMES = ("*", " * ", "x", " x ", " × ", "×", " · ", "·", " ⋅ ", " ∙ ", "()", ")(", " times ")
DEGREES = ("°", "", " deg", " degrees", "º", "˚", " °")
MINUSES = ("-", "−", "–")
FORCES = (
    "F",
    "Fm",
    "F_m",
    "F_M",
    "F_{m}",
    "F_sub",
    "Fsub",
    "sub",
    "T",
    "P",
    "B",
    "F1",
    "F_word",
    "f",
    "FM",
    "Fmuscle",
    "x",
)
MOMENTS = (
    "tau_sub",
    "T_word",
    "M_sub",
    "M_word",
    "τ_word",
    "Msub",
    "M1",
    "moment of word",
    "τ_sub",
    "tau_word",
    "M_{word}",
    "word",
    "",
)
WEIGHTS = ("W_sub", "W_word", "Wsub", "Fg_word", "W1", "w_sub", "F_word", "F_{g,word}", "weight of word", "Fg_sub")
DISTANCES = ("d_sub", "r_sub", "d_word", "dsub", "x_sub", "d1", "arm of word", "r_{sub}", "l_sub", "x_word")


@dataclass(frozen=True, slots=True)
class Style:
    """Everything that is decided before a student begins to write. Where a choice does not fit a problem the plain
    one is taken.
    """

    times: str = " × "
    comma: bool = False
    zero: bool = True  # 0.33, not .33
    minus: str = "-"
    degree: str = "°"
    trig: str = "sin 40"  # sin 40, sin40, sin(40), Sin 40, sin (40)
    figures: str = "4"  # significant: 3 4 5; 2d: two decimals
    ties: str = "up"  # up, even
    g: float = 9.81
    lengths: str = "cm"  # m, cm; in, ft where the problem is in inches
    units: str = "answers"  # all, answers, none
    force: str = "F"
    moment: str = "M_sub"
    weight: str = "W_sub"
    distance: str = "d_sub"
    reaction: str = "R"
    law: str = "sides"  # zero, sides, turning, ratio
    positive: int = 1
    lead: str = ""  # before the balance
    weights: str = "own"  # own, one line, inside, given, chain
    arms: str = "inside"  # own, one line, inside, turning, sines
    cofunction: bool = False
    moments: str = ""  # own, ""
    steps: tuple[str, ...] = ("products", "total")
    divide: str = "a/b"
    factor: str = "size first"  # size first, arm first
    letters: bool = False  # the law in letters before numbers
    route: str = "joint"
    sense: str = "words"  # words, signed, arrows, other bone, none
    angle: str = "below horizontal"
    equals: str = " = "
    approx: bool = False
    layout: str = "plain"  # plain, bullets, stars, numbered, steps, latex, markdown, quoted
    opening: tuple[str, ...] = ()
    closing: str = ""
    glue: str = ""  # so, therefore, arrows
    split: bool = False  # a chain goes on in the next line
    join: str = ""  # several equations on a line
    given: bool = False
    parts: bool = False  # (a), (b)
    mistake: str = ""  # a line that is replaced
    pounds: bool = False  # SI inside, pounds at the end
    remark: bool = False
    law_again: bool = False


PLAIN = Style()


def random_style(random: Random, *, right: bool = True) -> Style:
    """Any style. `right`: also what is only written in right workings here (moments in kg cm, other routes, answers
    only).
    """
    pick = random.choice
    odd = random.random
    latex = odd() < 0.06
    style = Style(
        times=pick(TIMES),
        comma=odd() < 0.1,
        zero=odd() < 0.85,
        minus=pick(("-", "-", "-", *MINUSES)),
        degree=pick(("°", "°", *DEGREES)),
        trig=pick(("sin 40", "sin 40", "sin40", "sin(40)", "Sin 40", "sin (40)", "sin(40)")),
        figures=pick(("3", "4", "4", "4", "5", "2d")),
        ties=pick(("up", "up", "even")),
        g=pick((9.81, 9.81, 9.81, 9.8, 9.8, 9.80665, 10.0)),
        lengths=pick(("m", "cm")),
        units=pick(("all", "answers", "answers", "none")),
        force=pick(FORCES),
        moment=pick(MOMENTS),
        weight=pick(WEIGHTS),
        distance=pick(DISTANCES),
        reaction=pick(("R", "R", "J", "F_R", "Fr", "F_joint", "R_sub", "N")),
        law=pick(("zero", "sides", "sides", "turning")),
        positive=pick((1, 1, -1)),
        lead=pick(("", "", "ΣM = 0: ", "ΣM = ", "Sum of moments = 0: ", "Στ = 0 → ", "balance: ", "so ")),
        weights=pick(("own", "own", "one line", "inside", "inside", "letters")),
        arms=pick(("own", "inside", "inside", "turning", "one line", "sines")),
        cofunction=odd() < 0.2,
        moments=pick(("own", "", "", "one line")),
        steps=pick(((), ("products",), ("total",), ("products", "total"))),
        divide=pick(("a/b", "a / b", "a/b", "a ÷ b")),
        factor=pick(("size first", "size first", "arm first")),
        letters=odd() < 0.25,
        route="joint",
        sense=pick(("words", "words", "signed", "arrows", "other bone", "brackets")),
        angle=pick(("horizontal", "horizontal", "vertical", "compass", "at", "bare")),
        equals=pick((" = ", " = ", "=", " = ")),
        approx=odd() < 0.15,
        layout="latex"
        if latex
        else pick(
            ("plain", "plain", "plain", "bullets", "stars", "numbered", "steps", "markdown", "dashes", "dollars")
        ),
        opening=tuple(random.sample(("pivot", "law", "let", "sign", "heading", "find"), pick((0, 0, 1, 2, 3)))),
        closing=pick(("", "", "answer", "sentence", "box", "therefore")),
        glue=pick(("", "", "", "so ", "therefore ", "=> ", "→ ", "thus, ", "∴ ", "Hence ", "then ")),
        split=odd() < 0.12,
        join=pick(("", "", "", ", ", "; ", " and ", "   ")),
        given=odd() < 0.2,
        parts=odd() < 0.2,
        mistake=pick(("", "", "", "", "", "no", "struck", "oops")) if right else "",
        remark=odd() < 0.25,
        law_again=odd() < 0.15,
    )
    if right:
        style = replace(style, route=pick(("joint",) * 9 + ROUTES), pounds=odd() < 0.06)
    return settled(style)


ROUTES = (
    "insertion",
    "superposition",
    "masses",
    "parts first",
    "triangle",
    "ratio",
    "run-on",
    "answers",
    "load",
    "check",
    "halved",
    "letters first",
)


def settled(style: Style) -> Style:
    """The style without what nobody would write together."""
    if style.layout in ("latex", "dollars"):
        style = replace(
            style,
            times=" \\times " if style.times in TIMES[::2] else " \\cdot ",
            degree="^\\circ",
            trig="\\sin 40",
            divide="\\frac",
            minus="-",
            glue="",
            lead="",
            join="",
            comma=False,
        )
    if style.comma and style.join == ", ":
        style = replace(style, join="; ")
    if style.layout == "dashes" and style.minus == "-":
        style = replace(style, minus="−")
    if style.times == " times ":
        style = replace(style, letters=False)
    if style.force == "x" and "x" in style.times:
        style = replace(style, force="F")
    return style
