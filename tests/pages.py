"""Pages for trying the HTML and the PDF writer: one walkthrough with every kind of passage, and one text in every
place for text.
"""

from __future__ import annotations

from explain.equation.terms import Letter, Power, Quantity, Quotient, Root, Terms, Trig, term
from explain.document.passage import (
    Answer,
    Arrow,
    Bone,
    Bullets,
    Caution,
    Derivation,
    Drawing,
    Emphasis,
    Heading,
    Line,
    Maths,
    Page,
    Paragraph,
    Picture,
    Prose,
    Row,
    Span,
    Strong,
    Table,
    Text,
)


def q(number: str, unit: str = "") -> Quantity:
    return Quantity.of(number, unit)


def said(words: str) -> Line:
    return (Text(words),)


def m(of: Terms) -> Maths:
    return Maths(of)


PULL, ARM, WEIGHT, REACH = (Letter(name, name) for name in ("F_B", "d_B", "W_R", "d_R"))
JX, JY, J = (Letter(name, name) for name in ("J_x", "J_y", "J"))
SINE = Trig("sin", q("70", "deg"))

SUM = Row((term(PULL, q("0.045", "m"), SINE), term(q("58.86", "N"), q("0.35", "m"), sign=-1)), (("=", ()),))
DIVIDED = Row(
    (term(PULL),),
    (("=", (term(Quotient((term(q("20.601", "N m")),), (term(q("0.042286", "m")),))),)),),
    note=(Text("divide by what stands beside "), m((term(PULL),))),
)
FOUND = Row(
    (term(PULL),), (("=", (term(q("487.18", "N")),)), ("≈", (term(q("487", "N")),))), note=said("newtons are left")
)
DERIVATION = Derivation((SUM, DIVIDED, FOUND))
JOINT = Derivation(
    (
        Row((term(JX), term(PULL, Trig("cos", q("70", "deg")), sign=-1)), (("=", ()),), label=said("Level")),
        Row(
            (term(J),), (("=", (term(Root((term(Power(JX, 2)), term(Power(JY, 2))))),)), ("≈", (term(q("430", "N")),)))
        ),
        Row((), (("=", (term(q("0.430", "kN")),)),)),
    )
)
GIVEN = Table(
    "Given",
    (said("letter"), said("meaning"), said("value")),
    (
        ((m((term(ARM),)),), said("elbow to tendon"), (m((term(q("4.5", "cm")),)),)),
        ((m((term(REACH),)),), said("elbow to rock"), (m((term(q("35", "cm")),)),)),
    ),
    frozenset({2}),
)
DRAWING = Drawing(
    (0.0, 0.0),
    "elbow",
    (Bone("forearm", (0.0, 0.0), (0.35, 0.0)),),
    (
        Arrow("biceps", "muscle", (term(PULL),), (0.045, 0.0), 110.0),
        Arrow("rock", "load", (term(WEIGHT),), (0.35, 0.0), 270.0),
    ),
    spans=(Span((0.0, 0.0), (0.35, 0.0), (term(REACH),)),),
)
PICTURE = Picture(
    DRAWING,
    "Free-body diagram",
    "The forearm lies level; the biceps pulls up, the rock pulls down.",
    said("The forearm."),
)

WALKTHROUGH = Page(
    "A rock on the palm",
    (
        Prose("A rock of **6.0 kg** rests on the palm of Ilva Marsk."),
        GIVEN,
        PICTURE,
        Paragraph(
            (
                Strong("Find"),
                Text(" the pull "),
                m((term(PULL),)),
                Text(" of the biceps "),
                Emphasis("on the forearm"),
                Text("."),
            )
        ),
        Heading(2, said("1 Numbers in")),
        DERIVATION,
        Answer((Text("The biceps pulls with "), m((term(q("487", "N")),)), Text("."))),
        Heading(2, said("2 The joint")),
        JOINT,
        Bullets((said("The pull came out positive. ✓"), said("The size is plausible. ✓"))),
        Caution(said("A teaching model. Not for treatment, training or lifting decisions.")),
    ),
)
SECOND = Page("Un seau d’eau", (Heading(2, said("1 Le poids")), Derivation((SUM,)), PICTURE), "fr")

HOSTILE = (
    "<script>alert(1)</script>",
    "<img src=http://example.invalid/x.png>",
    "<img src=x onerror=alert(1)>",
    "javascript:alert(1)",
    "</style><script>alert(1)</script>",
    "</title><script>alert(1)</script>",
    "</p></li></ol></main><iframe src='file:///etc/passwd'>",
    "\x00<b>\x00",
    "\ud800",
    "\u202etxet",
    '" onload="alert(1)',
    "' onload='alert(1)",
    "&lt;script&gt;",
    "]]><script/>",
    "<!-- x",
    "<link rel=attachment href='file:///etc/passwd'>",
    "<svg><script>1</script></svg>",
    "<math href='javascript:1'>x</math>",
    "url(http://example.invalid)",
    "@import 'http://example.invalid';",
    "mem:Regular",
    "腱の力",
    "🦴",
    "a\r\nb",
    "x" * 300,
)


def everywhere(words: str) -> Page:
    """The same text in every place that a text can stand."""
    letter, line = Letter("hostile", words), said(words)
    formula = (term(letter, q("2", "m")), term(letter, sign=-1))
    return Page(
        words,
        (
            Heading(2, line),
            Paragraph((Text(words), Strong(words), Emphasis(words), Maths(formula))),
            Derivation((Row(formula, (("=", formula),), line, line),)),
            Answer(line),
            Bullets((line, line)),
            Table(words, (line, line), ((line, line),)),
            Caution(line),
            Picture(Drawing((0.0, 0.0), words, (Bone(words, (0.0, 0.0), (0.3, 0.0)),)), "t " + words, words, line),
        ),
    )
