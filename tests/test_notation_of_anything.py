"""Any formula, and any letter a person may type, in every notation: brackets close, and letters stay letters."""

from __future__ import annotations

import re
from xml.etree import ElementTree

import pytest
from formulas import BALANCE, DIVIDED, HOSTILE, ROWS, SUMS, a, one
from hypothesis import given, settings
from hypothesis import strategies as st
from ziamath.zmath import Math

from explain.equation.terms import Equation, Power, Terms
from explain.document.untrusted_text import clean
from explain.formula.latex import latex
from explain.formula.mathml import mathml, mathml_row
from explain.formula.notation import symbol
from explain.formula.plain import plain

M = "{http://www.w3.org/1998/Math/MathML}"


def _elements(text: str) -> list[str]:
    return [each.tag.removeprefix(M) for each in ElementTree.fromstring(text).iter()]


def _content(text: str) -> str:
    return "".join(ElementTree.fromstring(text).itertext())


@pytest.mark.parametrize("text", HOSTILE)
def test_a_hostile_letter_is_only_text_in_mathml(text: str) -> None:
    assert {"math", "mi", "mtext", "msub", "mrow"} >= set(_elements(mathml(one(a(text)))))


@pytest.mark.parametrize("text", HOSTILE)
def test_a_hostile_letter_cannot_leave_a_github_formula(text: str) -> None:
    formula = latex(one(a(text)))
    assert [] == re.findall(r"[`|<>\n]|(?<!\\)[$%#]|\\(?:input|href|url)\b", formula)


def _balanced(formula: str) -> bool:
    depth = 0
    for token in re.findall(r"\\[A-Za-z]+|\\.|[{}]", formula):
        depth += {"{": 1, "}": -1}.get(token, 0)
        if depth < 0:
            return False
    return depth == 0


@given(st.text(max_size=12))
def test_any_letter_leaves_the_groups_of_latex_balanced_and_unbroken(text: str) -> None:
    formula = latex(one(Power(a(text), 2)))
    assert (True, False) == (_balanced(formula), bool(re.search("[`|<>\n]", formula)))


@given(st.text(max_size=12))
def test_any_letter_survives_in_mathml(text: str) -> None:
    letter = symbol(text)
    expected = ("Σ" if letter.summed else "") + letter.base + "".join(letter.pieces)
    assert expected.replace("-", "‐") == _content(mathml(one(a(text))))


def test_clean_replaces_controls_and_overrides_and_keeps_line_ends() -> None:
    assert "a\ufffdb\ufffd\nc\n\td\ufffd" == clean("a\x00b\u202e\r\nc\u2028\td\ud800")


@settings(max_examples=60, deadline=None)
@given(SUMS, SUMS)
def test_every_formula_has_balanced_brackets_and_no_ascii_minus(left: Terms, right: Terms) -> None:
    text = plain(Equation(left, right))
    assert (0, False) == (text.count("(") - text.count(")"), "-" in text)


@settings(max_examples=60, deadline=None)
@given(SUMS)
def test_every_formula_is_well_formed_mathml_with_as_many_signs_as_the_plain_text(of: Terms) -> None:
    signs = "".join(each.text or "" for each in ElementTree.fromstring(mathml(of, strokes=True)).iter(f"{M}mo"))
    text = plain(of).replace("⁻", "−")
    assert (text.count("+"), text.count("−")) == (signs.count("+"), signs.count("−"))


@settings(max_examples=60, deadline=None)
@given(SUMS)
def test_every_formula_has_balanced_latex(of: Terms) -> None:
    assert _balanced(latex(of, strokes=True))


@pytest.mark.parametrize(
    "formula",
    [
        mathml(BALANCE),
        mathml(one(DIVIDED), True, True),
        *(mathml_row(row, True, True) for row in ROWS),
        *(mathml(one(a(text))) for text in HOSTILE),
    ],
)
def test_what_draws_formulas_for_paper_takes_hostile_letters_and_rows(formula: str) -> None:
    width, height = Math(ElementTree.fromstring(formula), size=14).getsize()
    assert (True, True) == (0 < width < 2000, 0 < height < 400)


@settings(max_examples=40, deadline=None)
@given(SUMS)
def test_what_draws_formulas_for_paper_takes_any_formula(of: Terms) -> None:
    width, height = Math(ElementTree.fromstring(mathml(of, True, True)), size=14).getsize()
    assert (True, True) == (0 < width, 0 < height)
