"""Small formulas in each notation, letter by letter: plain text, LaTeX, speech and MathML, with their signs, spaces and
brackets.
"""

from __future__ import annotations

from decimal import Decimal

import pytest
from formulas import a, one, over, q

from explain.document.passage import Row
from explain.equation.terms import Equation, Group, Inverse, Power, Quotient, Root, Shown, Terms, Trig, term
from explain.formula.latex import latex, latex_rows
from explain.formula.mathml import mathml, mathml_row
from explain.formula.notation import GREEK, digits, symbol
from explain.formula.plain import plain, plain_rows, raised
from explain.formula.speech import speech, speech_row

X, Y = a("x"), a("y")

# the formula; then as plain text, as LaTeX with strokes, and as it is read aloud
FORMULAS: dict[str, tuple[Terms | Equation, str, str]] = {
    "J⁻²": (one(Power(a("J"), -2)), "J^{-2}", "J to the power minus 2"),
    "J⁴": (one(Power(a("J"), 4)), "J^{4}", "J to the power 4"),
    "J_x³": (one(Power(a("J_x"), 3)), "J_{x}^{3}", "J sub x cubed"),
    "J¹": (one(Power(a("J"), 1)), "J^{1}", "J"),
    "ΣM_x,y": (one(a("ΣM_x,y")), r"\Sigma M_{x{,}y}", "sum of M sub x y"),
    "ΣF_B²": (one(Power(a("ΣF_B"), 2)), r"\Sigma F_{\mathrm{B}}^{2}", "sum of F sub B squared"),
    "F_B⊥": (one(a("F_B⊥")), r"F_{\mathrm{B}\perp}", "F sub B perpendicular"),
    "F_∥,z": (one(a("F_∥,z")), r"F_{\parallel{,}z}", "F sub parallel z"),
    "(−3.5 kg/(m·s²)) + GRF_left-arm": (
        (term(q("-3.5", "kg m^-1 s^-2")), term(a("GRF_left-arm"))),
        r"(-3.5\,\mathrm{kg/(m{\cdot}s^{2})}) + \mathrm{GRF}_{\mathrm{left\text{-}arm}}",
        "minus 3.5 kilograms per metre second squared plus GRF sub left-arm",
    ),
    "5 m³/s": (one(q("5", "m^3 s^-1")), r"5\,\mathrm{m^{3}/s}", "5 cubic metres per second"),
    "5 N⁴": (one(q("5", "N^4")), r"5\,\mathrm{N^{4}}", "5 newtons to the power 4"),
    "5 s⁻¹": (one(q("5", "s^-1")), r"5\,\mathrm{s^{-1}}", "5 per second"),
    "5 s⁻¹·m⁻²": (one(q("5", "s^-1 m^-2")), r"5\,\mathrm{s^{-1}{\cdot}m^{-2}}", "5 per second square metre"),
    "1 N·m": (one(q("1", "N m")), r"1\,\mathrm{N{\cdot}m}", "1 newton metre"),
    "1.0 N": (one(q("1.0", "N")), r"1.0\,\mathrm{N}", "1.0 newtons"),
    "5 ell": (one(q("5", "ell")), r"5\,\mathrm{ell}", "5 ell"),
    "5 kN·lb": (one(q("5", "kN lbf")), r"5\,\mathrm{kN{\cdot}lb}", "5 kilonewton pounds"),
    "12\u202f345.678901 m": (one(q("12345.678901", "m")), r"12\,345.678901\,\mathrm{m}", "12345.678901 metres"),
    "5 m / 2 m": (
        one(over(q("5", "m"), q("2", "m"))),
        r"\frac{5\,\mathrm{\cancel{m}}}{2\,\mathrm{\cancel{m}}}",
        "5 metres divided by 2 metres",
    ),
    "((5 N) b) / 2 N": (
        one(Quotient(one(Shown(q("5", "N"), term(Y)), a("b")), one(q("2", "N")))),
        r"\frac{(5\,\mathrm{\cancel{N}})\, b}{2\,\mathrm{\cancel{N}}}",
        "the fraction 5 newtons times b over 2 newtons end fraction",
    ),
    "(−2) / y": (one(over(q("-2"), Y)), r"\frac{-2}{y}", "the fraction minus 2 over y end fraction"),
    "(−x) / y": (
        one(Quotient((term(X, sign=-1),), one(Y))),
        r"\frac{-x}{y}",
        "the fraction minus x over y end fraction",
    ),
    "x / (sin x)": (
        one(over(Group(one(X)), Trig("sin", X))),
        r"\frac{x}{\sin x}",
        "the fraction x over sine of x end fraction",
    ),
    "tan⁻¹(x / y)": (
        one(Inverse("tan", one(over(X, Y)))),
        r"\tan^{-1}\left(\frac{x}{y}\right)",
        "inverse tangent of x divided by y",
    ),
    "sin⁻¹(x + y)": (
        one(Inverse("sin", (term(X), term(Y)))),
        r"\sin^{-1}(x + y)",
        "inverse sine of open bracket x plus y close bracket",
    ),
    "cos⁻¹(√(x))": (
        one(Inverse("cos", one(Root(one(X))))),
        r"\cos^{-1}\left(\sqrt{x}\right)",
        "inverse cosine of the square root of x end root",
    ),
    "sec x": (one(Trig("sec", X)), r"\mathrm{sec} x", "sec of x"),
    "(16 %) cos(x) y": (
        one(q("16", "%"), Trig("cos", X), Y),
        r"(16\,\mathrm{\%})\, \cos(x)\, y",
        "16 per cent times cosine of x times y",
    ),
    "sin(−20°)": (one(Trig("sin", q("-20", "deg"))), r"\sin(-20^\circ)", "sine of minus 20 degrees"),
    "sin(x²)": (one(Trig("sin", Power(X, 2))), r"\sin(x^{2})", "sine of x squared"),
    "sin(x / y)": (one(Trig("sin", over(X, Y))), r"\sin\left(\frac{x}{y}\right)", "sine of x divided by y"),
    "sin(x + y)": (
        one(Trig("sin", Group((term(X), term(Y))))),
        r"\sin(x + y)",
        "sine of open bracket x plus y close bracket",
    ),
    "(−2)²": (one(Power(q("-2"), 2)), "(-2)^{2}", "open bracket minus 2 close bracket squared"),
    "0²": (one(Power(q("0"), 2)), "0^{2}", "0 squared"),
    "(x + x / y)³": (
        one(Power(Group((term(X), term(over(X, Y)))), 3)),
        r"\left(x + \frac{x}{y}\right)^{3}",
        "open bracket x plus x divided by y close bracket cubed",
    ),
    "(x / y)²": (
        one(Power(over(X, Y), 2)),
        r"\left(\frac{x}{y}\right)^{2}",
        "open bracket x divided by y close bracket squared",
    ),
    "2 × 70°": (one(q("2"), q("70", "deg")), r"2 \times 70^\circ", "2 times 70 degrees"),
    "0 × 3 N": (one(q("0"), q("3", "N")), r"0 \times 3\,\mathrm{N}", "0 times 3 newtons"),
    "2 (3 N) + x": ((term(q("2"), q("3", "N")), term(X)), r"2\, (3\,\mathrm{N}) + x", "2 times 3 newtons plus x"),
    "0 x": (one(q("0"), X), r"0\, x", "0 times x"),
    "−x − y": ((term(X, sign=-1), term(Y, sign=-1)), "-x - y", "minus x minus y"),
    "x + 0": ((term(X), term(q("0"))), "x + 0", "x plus 0"),
    "−(−3 m) x": ((term(q("-3", "m"), X, sign=-1),), r"-(-3\,\mathrm{m})\, x", "minus minus 3 metres times x"),
    "x (3²)": (one(X, Power(Shown(q("3"), term(X)), 2)), r"x\, (3^{2})", "x times 3 squared"),
    "x (3 N)²": (
        one(X, Power(q("3", "N"), 2)),
        r"x\, (3\,\mathrm{N})^{2}",
        "x times open bracket 3 newtons close bracket squared",
    ),
    "3²": (one(Power(q("3"), 2)), "3^{2}", "3 squared"),
    "√(x)": (one(Root(one(Group(one(X))))), r"\sqrt{x}", "the square root of x end root"),
    "x ≈ 0": (Equation(one(X), (), rounded=True), r"x \approx 0", "x is about 0"),
    "0": ((), "0", "0"),
}


@pytest.mark.parametrize("expected", FORMULAS)
def test_a_formula_in_plain_text_latex_and_words(expected: str) -> None:
    of, tex, spoken = FORMULAS[expected]
    assert (expected, tex, spoken) == (plain(of), latex(of, strokes=True), speech(of))


def test_nothing_is_struck_out_unless_it_is_asked_for() -> None:
    assert r"\frac{5\,\mathrm{m}}{2\,\mathrm{m}}" == latex(one(over(q("5", "m"), q("2", "m"))))
    assert "cancel" not in mathml(one(over(q("5", "m"), q("2", "m"))))


# the units of the trade as they are read aloud, one and several
UNITS = {
    "m": "metre metres",
    "cm": "centimetre centimetres",
    "mm": "millimetre millimetres",
    "in": "inch inches",
    "ft": "foot feet",
    "kg": "kilogram kilograms",
    "g": "gram grams",
    "lb": "pound pounds",
    "lbf": "pound pounds",
    "N": "newton newtons",
    "kN": "kilonewton kilonewtons",
    "s": "second seconds",
    "rad": "radian radians",
    "deg": "degree degrees",
    "Pa": "pascal pascals",
}


@pytest.mark.parametrize("unit", UNITS)
def test_a_unit_is_read_in_full_one_or_several(unit: str) -> None:
    assert UNITS[unit].split() == [speech(one(q(number, unit))).split()[1] for number in ("1", "2")]


@pytest.mark.parametrize(("unit", "several"), [(u, UNITS[u].split()[1]) for u in ("m", "cm", "mm", "in", "ft")])
def test_a_length_is_squared_before_its_name_and_other_units_behind(unit: str, several: str) -> None:
    assert f"2 square {several}" == speech(one(q("2", f"{unit}^2")))
    assert "2 seconds squared" == speech(one(q("2", "s^2")))


def test_one_per_cent_is_no_singular() -> None:
    assert ("1 per cent", "16 per cent") == tuple(speech(one(q(number, "%"))) for number in ("1", "16"))


RELATIONS = Row(one(X), tuple((sign, one(Y)) for sign in "=≈≤≥<>≠→~"))


def test_every_relation_has_its_sign_and_its_words() -> None:
    assert (("x", "= y ≈ y ≤ y ≥ y < y > y ≠ y → y ~ y"),) == plain_rows((RELATIONS,))
    assert (("x", r"= y \approx y \le y \ge y \lt y \gt y \ne y \to y \mathrm{\sim } y"),) == latex_rows((RELATIONS,))
    assert (
        "x equals y is about y is at most y is at least y is less than y is more than y is not equal to y so y ~ y"
    ) == speech_row(RELATIONS)


def test_a_row_that_goes_on_begins_with_its_relation() -> None:
    row = Row((), (("≈", one(q("5", "N"))),))
    assert ("is about 5 newtons", (("0", r"\approx 5\,\mathrm{N}"),)) == (speech_row(row), latex_rows((row,)))


# ---------------------------------------------------------------------- letters that people type
GREEK_TYPED = (
    "alpha beta gamma delta epsilon zeta eta theta iota kappa lambda mu nu xi pi rho sigma tau upsilon phi chi psi "
    "omega Gamma Delta Theta Lambda Xi Pi Sigma Phi Psi Omega"
)
GREEK_WRITTEN = "αβγδεζηθικλμνξπρστυφχψωΓΔΘΛΞΠΣΦΨΩ"


def test_a_greek_name_is_its_letter_in_every_notation() -> None:
    """The names are those of the Unicode names of the letters; omicron has none, for it is an o."""
    names = GREEK_TYPED.split()
    assert sorted(names) == sorted(GREEK)
    for name, letter in zip(names, GREEK_WRITTEN, strict=True):
        of = one(a(name))
        assert (letter, f"\\{name}", name, f"<mi>{letter}</mi>") == (
            plain(of),
            latex(of),
            speech(of),
            mathml(of).partition(">")[2].removesuffix("</math>"),
        )
        assert rf"F_{{\mathrm{{\{name} }}}}" == latex(one(a(f"F_{letter}")))


@pytest.mark.parametrize(
    ("typed", "tex"),
    [
        ("a\\{}$", r"\mathrm{a\backslash \lbrace \rbrace \$}"),
        ("a&#%", r"\mathrm{a\&\#\%}"),
        ("a^~`'", r"\mathrm{a\hat{\ }\sim \backprime {'}}"),
        ("a|<>", r"\mathrm{a\vert \lt \gt }"),
        ("a -,", r"\mathrm{a\ \text{-}{,}}"),
        ("a+=*−", r"\mathrm{a{+}{=}{*}{-}}"),
        ("a⊥∥", r"\mathrm{a\perp \parallel }"),
        ("a\u00a0b\u202fc\u2009d", r"\mathrm{a\ b\,c\,d}"),
        ("F_a_b", r"F_{\mathrm{a\_b}}"),
        ("é", r"\mathrm{é}"),
        ("3", r"\mathrm{3}"),
        ("ab", r"\mathrm{ab}"),
        ("_", r"\mathrm{\_}"),
        ("Σ x", r"\Sigma x"),
    ],
)
def test_typed_letters_are_escaped_for_latex(typed: str, tex: str) -> None:
    assert tex == latex(one(a(typed)))


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        (" F_B ", (False, "F", "B")),
        ("F_ B ", (False, "F", "B")),
        ("F _B", (False, "F", "B")),
        (" _B", (False, "_B", "")),
        ("Σ F_B", (True, "F", "B")),
        ("Σ ", (False, "Σ", "")),
        ("F\n_x", (False, "F", "x")),
    ],
)
def test_spaces_around_a_letter_are_nothing(text: str, expected: tuple[bool, str, str]) -> None:
    assert expected == tuple(symbol(text))


def test_a_subscript_is_cut_at_commas_and_signs() -> None:
    assert ("B", ",", "⊥") == symbol("F_B, ⊥").pieces
    assert () == symbol("F").pieces


def test_an_exponent_is_raised_digit_by_digit() -> None:
    assert ("⁰", "¹²³⁴⁵⁶⁷⁸⁹", "⁻¹⁰") == (raised(0), raised(123456789), raised(-10))


@pytest.mark.parametrize(
    ("number", "expected"),
    [("1234", "1234"), ("12345", "12~345"), ("123456", "123~456"), ("-1234567.5", "-1~234~567.5")],
)
def test_digits_are_grouped_by_three_from_the_point(number: str, expected: str) -> None:
    """SI Brochure, 5.4.4."""
    assert expected == digits(Decimal(number), "~", "-")


# ---------------------------------------------------------------------- MathML
THIN, GAP = '<mspace width="0.2em"/>', '<mspace width="0.22em"/>'
MINUS = '<mo form="prefix" lspace="0em" rspace="0em">−</mo>'
OPEN, CLOSE = (
    f'<mo form="{form}" stretchy="false" lspace="0em" rspace="0em">{sign}</mo>'
    for form, sign in (("prefix", "("), ("postfix", ")"))
)
TALL_OPEN, TALL_CLOSE = (each.replace("false", "true") for each in (OPEN, CLOSE))
STRUCK = '<menclose notation="updiagonalstrike" class="cancel"><mtext>m</mtext></menclose>'


def _infix(sign: str) -> str:
    return f'<mo form="infix" lspace="0.222em" rspace="0.222em">{sign}</mo>'


MATHML: dict[str, tuple[Terms | Equation, str]] = {
    "a letter": (one(X), "<mi>x</mi>"),
    "a word is upright": (one(a("GRF_left-arm")), "<msub><mtext>GRF</mtext><mtext>left‐arm</mtext></msub>"),
    "a digit is upright": (one(a("3")), "<mtext>3</mtext>"),
    "a letter's power": (one(Power(a("J"), -2)), f"<msup><mi>J</mi><mrow>{MINUS}<mn>2</mn></mrow></msup>"),
    "a power of nothing": (one(Power(a("J"), 0)), "<msup><mi>J</mi><mn>0</mn></msup>"),
    "index and power": (one(Power(a("J_x"), 2)), "<msubsup><mi>J</mi><mi>x</mi><mn>2</mn></msubsup>"),
    "an index of pieces": (
        one(a("ΣM_x,B")),
        f"<mtext>Σ</mtext>{THIN}<msub><mi>M</mi><mrow><mi>x</mi><mtext>,</mtext><mtext>B</mtext></mrow></msub>",
    ),
    "typed markup": (one(a("<&_>")), "<msub><mtext>&lt;&amp;</mtext><mtext>&gt;</mtext></msub>"),
    "a number": (
        one(q("-12345.6", "N m")),
        f"{MINUS}<mn>12\u202f345.6</mn>{GAP}<mtext>N</mtext><mtext>·</mtext><mtext>m</mtext>",
    ),
    "no unit": (one(q("5")), "<mn>5</mn>"),
    "nought": (one(q("0")), "<mn>0</mn>"),
    "degrees": (one(q("70", "deg")), "<mn>70</mn><mtext>°</mtext>"),
    "a unit below": (
        one(q("5", "kg m^-1 s^-2")),
        f"<mn>5</mn>{GAP}<mtext>kg</mtext><mtext>/</mtext><mtext>(</mtext><mtext>m</mtext><mtext>·</mtext>"
        "<msup><mtext>s</mtext><mn>2</mn></msup><mtext>)</mtext>",
    ),
    "a product of numbers": (one(q("2"), q("3")), f"<mn>2</mn>{_infix('×')}<mn>3</mn>"),
    "a sum": (
        (term(X, sign=-1), term(Y), term(X, Y, sign=-1)),
        f"{MINUS}<mi>x</mi>{_infix('+')}<mi>y</mi>{_infix('−')}<mi>x</mi>{THIN}<mi>y</mi>",
    ),
    "an equation": (
        Equation(one(X), one(Y)),
        '<mi>x</mi><mo form="infix" lspace="0.278em" rspace="0.278em">=</mo><mi>y</mi>',
    ),
    "a sine": (one(Trig("sin", X)), f"<mtext>sin</mtext>{THIN}<mi>x</mi>"),
    "a sine in a product": (one(Trig("sin", X), Y), f"<mtext>sin</mtext>{OPEN}<mi>x</mi>{CLOSE}{THIN}<mi>y</mi>"),
    "an inverse": (
        one(Inverse("tan", one(over(X, Y)))),
        f"<msup><mtext>tan</mtext><mrow>{MINUS}<mn>1</mn></mrow></msup><mrow>{TALL_OPEN}"
        f"<mfrac><mrow><mi>x</mi></mrow><mrow><mi>y</mi></mrow></mfrac>{TALL_CLOSE}</mrow>",
    ),
    "a fraction": (
        one(over(q("5", "N m"), q("2", "m"))),
        f"<mfrac><mrow><mn>5</mn>{GAP}<mtext>N</mtext><mtext>·</mtext>{STRUCK}</mrow>"
        f"<mrow><mn>2</mn>{GAP}{STRUCK}</mrow></mfrac>",
    ),
    "a root": (one(Root((term(X), term(Y)))), f"<msqrt><mi>x</mi>{_infix('+')}<mi>y</mi></msqrt>"),
    "a number squared": (one(Power(q("3"), 2)), "<msup><mrow><mn>3</mn></mrow><mn>2</mn></msup>"),
    "a quantity squared": (
        one(Power(q("5", "N"), 2)),
        f"<msup><mrow>{OPEN}<mn>5</mn>{GAP}<mtext>N</mtext>{CLOSE}</mrow><mn>2</mn></msup>",
    ),
    "a fraction squared": (
        one(Power(over(X, Y), 2)),
        f"<msup><mrow>{TALL_OPEN}<mfrac><mrow><mi>x</mi></mrow><mrow><mi>y</mi></mrow></mfrac>{TALL_CLOSE}</mrow>"
        "<mn>2</mn></msup>",
    ),
    "what stands aside": (one(X, q("3", "N")), f"<mi>x</mi>{THIN}{OPEN}<mn>3</mn>{GAP}<mtext>N</mtext>{CLOSE}"),
}  # fmt: skip
HEAD = '<math xmlns="http://www.w3.org/1998/Math/MathML" display="inline">'


@pytest.mark.parametrize("name", MATHML)
def test_a_formula_in_mathml(name: str) -> None:
    of, expected = MATHML[name]
    assert f"{HEAD}{expected}</math>" == mathml(of, strokes=True)


def test_a_row_in_mathml_is_shown_large_where_it_is_asked_for() -> None:
    row = Row((), (("<", one(Y)),))
    inner = '<mo form="infix" lspace="0.278em" rspace="0.278em">&lt;</mo><mi>y</mi>'
    assert f"{HEAD}{inner}</math>" == mathml_row(row)
    assert f"{HEAD.replace('inline', 'block')}{inner}</math>" == mathml_row(row, True)
    assert f"{HEAD}<mi>x</mi>{inner}</math>" == mathml_row(Row(one(X), row.right))
    struck = Row((), (("=", one(over(q("5", "m"), q("2", "m")))),))
    assert [0, 2] == [mathml_row(struck, strokes=each).count(STRUCK) for each in (False, True)]
