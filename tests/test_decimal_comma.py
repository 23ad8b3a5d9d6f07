"""A class may write its decimals with a comma: in every line, sentence, figure and writer; numbers of JSON stay as "
"JSON has them."""

from __future__ import annotations

import json
import re
from decimal import Decimal

import pytest
from test_conventions import data, lines, work

from explain.document.decimal_comma import CommaNumber, with_commas
from explain.document.spelling import Spelling
from explain.document.passage import Axis, Curve, Plot
from explain.equation.terms import Quantity, term
from explain.formula.latex import latex
from explain.formula.mathml import mathml
from explain.formula.plain import plain
from explain.write.figure.plot import drawn as figure
from explain.write.figure.plot import rows

PROBLEMS = ("jug-level", "rock-oblique", "leg-raise", "shopping-us", "beam", "how-steep")
NUMBER = re.compile(r"(?<![0-9.])[0-9]+\.[0-9]")


def comma(name: str) -> dict[str, object]:
    return {**data(name, decimal="comma"), "title": "-", "statement": "-"}


def test_the_lines_of_a_class_with_a_comma() -> None:
    found = [each["equation"] for each in json.loads(work(comma("jug-level")).json())["lines"]]
    assert "F_B (4,0 cm) − (15,696 N)(15 cm) − (29,43 N)(33 cm) = 0" in found
    assert [each.replace(",", ".") for each in found] == lines("jug-level")


@pytest.mark.parametrize("name", PROBLEMS)
@pytest.mark.parametrize("form", ["text", "markdown"])
def test_no_number_of_a_page_has_a_point(name: str, form: str) -> None:
    point = {**data(name), "title": "-", "statement": "-"}
    before, after = (getattr(work(problem), form)() for problem in (point, comma(name)))
    assert (True, []) == (bool(NUMBER.search(before)), NUMBER.findall(after))


def test_every_notation_writes_the_comma() -> None:
    of = with_commas((term(Quantity.of("12345.60", "N")),))
    assert "12\u202f345,60 N" == plain(of)
    assert r"12\,345{,}60\,\mathrm{N}" == latex(of)
    assert "<mn>12\u202f345,60</mn>" in mathml(of)
    assert (Decimal("1.5"), "1.5") == (abs(CommaNumber("-1.5")), str(CommaNumber("1.5")))


def test_the_figure_says_its_data_with_a_comma() -> None:
    walkthrough = work(comma("jug-level"))
    assert "4,0 cm from the elbow" in walkthrough.picture().description
    assert work(data("jug-level")).figure() != walkthrough.figure()


def test_json_keeps_numbers_and_writes_what_is_shown_with_a_comma() -> None:
    point, after = (json.loads(work(problem).json()) for problem in (data("how-steep"), comma("how-steep")))
    values = [{name: each["value"] for name, each in found["answers"].items()} for found in (point, after)]
    assert values[0] == values[1]
    shown = [[each["shown"] for each in found["answers"].values()] for found in (point, after)]
    assert [each.replace(".", ",") for each in shown[0]] == shown[1]
    assert any("," in each for each in shown[1])


def test_names_keep_their_points_and_what_is_no_number_its_own() -> None:
    words = Spelling("British", ("plank 1.5",), decimal="comma")
    said = "The plank 1.5 carries 2.50 N, e.g. at 3. Then 4.0."
    assert "The plank 1.5 carries 2,50 N, e.g. at 3. Then 4,0." == words.text(said)


def test_a_page_is_written_in_every_format() -> None:
    walkthrough = work(comma("leg-raise"))
    assert all(walkthrough.written(form) for form in ("html", "pdf", "latex", "json"))
    assert "{,}" in walkthrough.latex()


def test_a_plot_has_commas_at_its_axes_and_bars() -> None:
    axes = Axis("distance", "m"), Axis("pull", "N")
    curve = Curve("biceps", ((0.1, 100.5), (0.25, 220.5), (0.4, 307.5)))
    drawn = Plot("lines", "Pull", "A rise.", *axes, (curve,))
    changed = Spelling("British", decimal="comma").passage(drawn)
    assert isinstance(changed, Plot)
    said = [" ".join(sum(rows(each), ())) for each in (drawn, changed)]
    assert ("0.25" in said[0], "0,25" in said[1], "0.25" in said[1]) == (True, True, False)
    assert figure(drawn) != figure(changed)
