"""Formulas in four notations: what is written, and where brackets and spaces stand."""

from __future__ import annotations

import re
from decimal import Decimal
from xml.etree import ElementTree

import pytest
from formulas import ANGLE, BALANCE, DIVIDED, PULL, ROWS, WEIGHT, a, one, over, q

from explain.equation.terms import Equation, Group, Inverse, Power, Quotient, Root, Shown, Terms, Trig, term
from explain.document.passage import Row
from explain.formula.latex import latex, latex_rows
from explain.formula.mathml import mathml, mathml_row
from explain.formula.notation import digits, symbol
from explain.formula.plain import plain, plain_rows, unit_text
from explain.formula.speech import speech, speech_row

M = "{http://www.w3.org/1998/Math/MathML}"

PLAIN: dict[str, Terms | Equation] = {
    "F_B (0.045 m) sin 70° − (16.677 N)(0.16 m) = 0": BALANCE,
    "W_R = 6.0 kg × 9.81 m/s²": Equation(one(WEIGHT), one(q("6.0", "kg"), q("9.81", "m s^-2"))),
    "2 × 3 N": one(q("2"), q("3", "N")),
    "−(16.677 N)(0.16 m)": (term(q("16.677", "N"), q("0.16", "m"), sign=-1),),
    "23.269 N·m / 0.042286 m": one(DIVIDED),
    "F_B ≈ 550 N": Equation(one(PULL), one(q("550", "N")), rounded=True),
    "0 = F_B": Equation((), one(PULL)),
    "√(J_x² + J_y²)": one(Root((term(Power(a("J_x"), 2)), term(Power(a("J_y"), 2))))),
    "√(J_x + J_y)": one(Root(one(Group((term(a("J_x")), term(a("J_y"))))))),
    "sin⁻¹(0.5)": one(Inverse("sin", one(q("0.5")))),
    "tan⁻¹(J_y / J_x)": one(Inverse("tan", one(over(a("J_y"), a("J_x"))))),
    "(W_R + F_B) / (2 F_B)": one(Quotient((term(WEIGHT), term(PULL)), one(q("2"), PULL))),
    "(W_R + F_B) / F_B": one(Quotient(one(Group((term(WEIGHT), term(PULL)))), one(PULL))),
    "(sin θ) / 2": one(over(Trig("sin", ANGLE), q("2"))),
    "(a / b) / c": one(over(over(a("a"), a("b")), a("c"))),
    "W_R (a / b)": one(WEIGHT, over(a("a"), a("b"))),
    "a − (b − c)": (term(a("a")), term(Group((term(a("b")), term(a("c"), sign=-1))), sign=-1)),
    "(5.3 N)²": one(Power(q("5.3", "N"), 2)),
    "3²": one(Power(q("3"), 2)),
    "2 (3²)": one(q("2"), Power(q("3"), 2)),
    "(sin θ)²": one(Power(Trig("sin", ANGLE), 2)),
    "F_B sin(θ) d": one(PULL, Trig("sin", ANGLE), a("d")),
    "F_B sin θ cos θ": one(PULL, Trig("sin", ANGLE), Trig("cos", ANGLE)),
    "sin(α − 20°)": one(Trig("sin", Group((term(a("alpha")), term(q("20", "deg"), sign=-1))))),
    "sin(a / b)": one(Trig("sin", over(a("a"), a("b")))),
    "F_B (2)": one(PULL, q("2")),
    "(16 %)(3 N) F_B": one(q("16", "%"), q("3", "N"), PULL),
    "23.3 N": one(Shown(q("23.3", "N"), term(DIVIDED))),
    "Στ = 0": Equation(one(a("Σtau")), ()),
    "ΣM_x": one(a("ΣM_x")),
    "F_B,⊥": one(a("F_B,⊥")),
    "d_upper arm": one(a("d_upper arm")),
    "1": one(),
    "−3 N": one(q("-3", "N")),
    "−(−3 N)": (term(q("-3", "N"), sign=-1),),
    "a + (−3 N)": (term(a("a")), term(q("-3", "N"))),
    "2 (−3 N)": one(q("2"), q("-3", "N")),
}


@pytest.mark.parametrize("expected", PLAIN)
def test_plain_text_is_written_as_on_a_board(expected: str) -> None:
    assert expected == plain(PLAIN[expected])


@pytest.mark.parametrize(
    ("number", "expected"),
    [
        ("1E+3", "1000"),
        ("5.30", "5.30"),
        ("0.0000001", "0.0000001"),
        ("9999.5", "9999.5"),
        ("10000", "10\u202f000"),
        ("1234567.12345", "1\u202f234\u202f567.12345"),
        ("-3", "−3"),
        ("-0", "0"),
        ("0", "0"),
    ],
)
def test_numbers_are_plain_decimals_grouped_from_five_digits_on(number: str, expected: str) -> None:
    assert expected == digits(Decimal(number), "\u202f", "−")


@pytest.mark.parametrize(
    ("unit", "expected"),
    [
        ("N m", "N·m"),
        ("m s^-2", "m/s²"),
        ("lbf", "lb"),
        ("ft lbf", "ft·lb"),
        ("cm^2", "cm²"),
        ("N cm^-2", "N/cm²"),
        ("s^-1", "s⁻¹"),
        ("kg m^-1 s^-2", "kg/(m·s²)"),
    ],
)
def test_units_are_written_on_one_line(unit: str, expected: str) -> None:
    assert expected == unit_text(q("1", unit).unit)


def test_degrees_stand_without_a_space_and_per_cent_with_one() -> None:
    assert ("70°", "16 %") == (plain(one(q("70", "deg"))), plain(one(q("16", "%"))))


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("F_B", (False, "F", "B")),
        ("tau", (False, "τ", "")),
        ("Σtau", (True, "τ", "")),
        ("ΣM", (True, "M", "")),
        ("Σ", (False, "Σ", "")),
        ("F_B_x", (False, "F", "B_x")),
        ("_x", (False, "_x", "")),
        ("", (False, "\ufffd", "")),
        ("lambda_1", (False, "λ", "1")),
    ],
)
def test_a_letter_is_cut_at_its_first_underscore(text: str, expected: tuple[bool, str, str]) -> None:
    assert expected == tuple(symbol(text))


LATEX: dict[str, Terms | Equation] = {
    r"F_{\mathrm{B}}\, (0.045\,\mathrm{m})\, \sin 70^\circ - (16.677\,\mathrm{N})\, (0.16\,\mathrm{m}) = 0": BALANCE,
    r"\frac{23.269\,\mathrm{N{\cdot}m}}{0.042286\,\mathrm{m}}": one(DIVIDED),
    r"J_{x}^{2}": one(Power(a("J_x"), 2)),
    r"\Sigma \tau": one(a("Σtau")),
    r"F_{\mathrm{B}{,}\perp}": one(a("F_B,⊥")),
    r"\tan^{-1}\left(\frac{J_{y}}{J_{x}}\right)": one(Inverse("tan", one(over(a("J_y"), a("J_x"))))),
    r"\sqrt{a + b}": one(Root((term(a("a")), term(a("b"))))),
    r"\mathrm{GRF}_{\mathrm{left\ arm}}": one(a("GRF_left arm")),
    r"16\,\mathrm{\%} \approx 12\,345": Equation(one(q("16", "%")), one(q("12345")), rounded=True),
}


@pytest.mark.parametrize("expected", LATEX)
def test_latex_is_written_with_commands_that_github_takes(expected: str) -> None:
    assert expected == latex(LATEX[expected])


def test_units_that_cancel_are_struck_out_where_strokes_are_asked_for() -> None:
    assert r"\frac{23.269\,\mathrm{N{\cdot}\cancel{m}}}{0.042286\,\mathrm{\cancel{m}}}" == latex(
        one(DIVIDED), strokes=True
    )


@pytest.mark.parametrize(
    "kept",
    [
        over(q("23", "N cm"), q("0.04", "m")),
        over(q("5", "m^2"), q("2", "m")),
        over(q("9.8", "m s^-2"), q("2", "s^-2")),
        Quotient((term(q("2", "m")), term(q("3", "m"))), one(q("4", "m"))),
        Quotient(one(q("2", "m"), q("3", "m")), one(q("4", "m"))),
    ],
)
def test_no_unit_is_struck_that_does_not_cancel_one_for_one(kept: Quotient) -> None:
    assert (False, False) == ("cancel" in latex(one(kept), True), "cancel" in mathml(one(kept), strokes=True))


SPEECH: dict[str, Terms | Equation] = {
    "F sub B times 0.045 metres times sine of 70 degrees minus 16.677 newtons times 0.16 metres equals 0": BALANCE,
    "W sub R equals 6.0 kilograms times 9.81 metres per second squared": Equation(
        one(WEIGHT), one(q("6.0", "kg"), q("9.81", "m s^-2"))
    ),
    "F sub B is about 1 newton": Equation(one(PULL), one(q("1", "N")), rounded=True),
    "23.269 newton metres divided by 0.042286 metres": one(DIVIDED),
    "the fraction W sub R plus F sub B over 2 times F sub B end fraction": one(
        Quotient((term(WEIGHT), term(PULL)), one(q("2"), PULL))
    ),
    "the square root of J sub x squared plus J sub y squared end root": one(
        Root((term(Power(a("J_x"), 2)), term(Power(a("J_y"), 2))))
    ),
    "inverse sine of 0.5": one(Inverse("sin", one(q("0.5")))),
    "open bracket 5.3 newtons close bracket squared": one(Power(q("5.3", "N"), 2)),
    "sum of tau equals 0": Equation(one(a("Σtau")), ()),
    "F sub B perpendicular": one(a("F_B,⊥")),
    "minus 12345 newtons per square centimetre": (term(q("12345", "N cm^-2"), sign=-1),),
    "16 per cent": one(q("16", "%")),
    "a minus open bracket b plus c close bracket": (term(a("a")), term(Group((term(a("b")), term(a("c")))), sign=-1)),
    "minus 3 foot pounds": one(q("-3", "ft lbf")),
}


@pytest.mark.parametrize("expected", SPEECH)
def test_speech_reads_a_formula_aloud(expected: str) -> None:
    assert expected == speech(SPEECH[expected])


def _elements(text: str) -> list[str]:
    return [each.tag.removeprefix(M) for each in ElementTree.fromstring(text).iter()]


def _content(text: str) -> str:
    return "".join(ElementTree.fromstring(text).itertext())


def test_mathml_of_a_plain_balance_is_one_flat_row() -> None:
    assert 0 == _elements(mathml(BALANCE)).count("mrow")


def test_mathml_holds_the_same_signs_and_numbers_as_the_plain_text() -> None:
    assert "FB(0.045m)sin70°−(16.677N)(0.16m)=0" == _content(mathml(BALANCE))


def test_mathml_of_a_displayed_formula_says_so() -> None:
    assert ("block", "inline") == tuple(
        ElementTree.fromstring(mathml(BALANCE, show)).get("display") for show in (True, False)
    )


def test_mathml_stretches_brackets_only_around_what_is_tall() -> None:
    low, tall = mathml(one(Group(one(a("x"))))), mathml(one(Group(one(over(a("x"), a("y"))))))
    assert ({"false"}, {"true"}) == tuple(set(re.findall('stretchy="(.*?)"', each)) for each in (low, tall))


def test_mathml_strikes_the_units_that_cancel() -> None:
    struck = ElementTree.fromstring(mathml(one(DIVIDED), strokes=True)).iter(f"{M}menclose")
    assert ["m", "m"] == ["".join(each.itertext()) for each in struck]


def test_rows_part_at_the_first_relation_and_an_empty_left_goes_on() -> None:
    assert (
        ("F_B (0.045 m) sin 70° − (16.677 N)(0.16 m)", "= 0"),
        ("F_B", "= 23.269 N·m / 0.042286 m"),
        ("", "= 550.28 N ≈ 550 N"),
    ) == plain_rows(ROWS)


def test_an_empty_left_in_the_first_row_is_nought() -> None:
    assert (("0", "= F_B"),) == plain_rows((Row((), (("=", one(PULL)),)),))


def test_one_row_reads_as_a_chain_in_words_and_in_mathml() -> None:
    row = Row(one(PULL), (("=", one(q("550.28", "N"))), ("≈", one(q("550", "N")))))
    assert (
        "F sub B equals 550.28 newtons is about 550 newtons",
        "FB=550.28N≈550N",
    ) == (speech_row(row), _content(mathml_row(row)))


def test_latex_rows_start_at_the_relation_where_the_left_is_empty() -> None:
    assert ("", r"= 550.28\,\mathrm{N} \approx 550\,\mathrm{N}") == latex_rows(ROWS)[2]
