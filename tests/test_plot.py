"""Plots: what is drawn where, in black and white, with title and description; as picture, in PDF, and as a table of
text.
"""

from __future__ import annotations

import re
from io import BytesIO
from itertools import pairwise
from xml.etree import ElementTree

import numpy as np
import pikepdf
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from lxml import html as reader
from markdown_it import MarkdownIt
from test_hostile import FEW, OURS, STEERING

from explain.document.passage import Axis, Curve, Heading, Page, Plot, Text
from explain.write.figure.shapes import Disc, Line, Patch
from explain.write.html.pages import html
from explain.write.markdown.pages import markdown
from explain.write.pdf.pages import pdf
from explain.write.figure.plot import drawn, plotted, rows
from explain.write.figure.plot_scale import number, scale
from explain.write.text.pages import text

SVG = "{http://www.w3.org/2000/svg}"
COSINE = tuple((float(a), 300.0 * float(np.cos(np.radians(a)))) for a in range(0, 91, 10))
LINES = Plot(
    "lines",
    "Pull against angle",
    "It falls from 300 N to nothing.",
    Axis("angle of the forearm", "°"),
    Axis("pull", "N"),
    (Curve("biceps", COSINE), Curve("brachialis", tuple((x, None if x == 30 else 0.5 * y) for x, y in COSINE))),
)
BARS = Plot(
    "bars",
    "Slips of a class",
    "Most left out a weight.",
    Axis("slip"),
    Axis("students"),
    (Curve("Monday", ((0.0, 3.0), (1.0, 12.0), (2.0, None))),),
    ("a sign", "a weight left out", "no answer"),
    figures=0,
)


def page(*plots: Plot) -> Page:
    return Page("P", (Heading(1, (Text("P"),)), *plots))


@pytest.mark.parametrize("plot", [LINES, BARS], ids=["lines", "bars"])
def test_a_plot_is_one_picture_with_title_and_description_that_needs_nothing(plot: Plot) -> None:
    root = ElementTree.fromstring(drawn(plot, "one"))
    assert [plot.title, plot.description] == [root.findtext(f"{SVG}title"), root.findtext(f"{SVG}desc")]
    assert "one-title one-desc" == root.attrib["aria-labelledby"]
    assert {each.tag.removeprefix(SVG) for each in root.iter()} <= {
        "svg",
        "title",
        "desc",
        "rect",
        "g",
        "line",
        "circle",
        "path",
    }
    assert not re.search(r"href|url\(|<script|<text|<style", drawn(plot))


def test_a_curve_goes_through_its_values() -> None:
    """Where each mark stands: even steps across, and upwards in proportion to the cosine."""
    marks = [each.centre for each in plotted(LINES).shapes if isinstance(each, Disc)]
    assert len(COSINE) == len(marks)
    assert [pytest.approx(marks[1][0] - marks[0][0])] * 9 == [b[0] - a[0] for a, b in pairwise(marks)]
    high = marks[-1][1] - marks[0][1]
    assert [pytest.approx(y / 300.0, abs=1e-9) for _, y in COSINE] == [
        (marks[-1][1] - spot[1]) / high for spot in marks
    ]


def test_a_gap_is_left_where_there_is_no_value() -> None:
    whole, broken = (
        {
            each
            for each in plotted(LINES).shapes
            if isinstance(each, Line) and each.pen.dash == dash and each.pen.width == 2.0
        }
        for dash in ("", "7 4")
    )
    assert (9, 7) == (len(whole), len(broken))


def test_curves_are_told_apart_without_colour() -> None:
    """By dashes, by marks, and by a name at their ends."""
    shapes = plotted(LINES).shapes
    pens = {each.pen.dash for each in shapes if isinstance(each, Line) and each.pen.width == 2.0}
    assert {"", "7 4"} == pens
    assert any(isinstance(each, Disc) for each in shapes) and any(isinstance(each, Patch) for each in shapes)


@pytest.mark.parametrize("plot", [LINES, BARS], ids=["lines", "bars"])
def test_only_greys_are_used(plot: Plot) -> None:
    colours = set(re.findall(r'(?:fill|stroke)="#([0-9a-f]{6})"', drawn(plot)))
    assert [] == [
        each
        for each in colours
        if max(int(each[k : k + 2], 16) for k in (0, 2, 4)) - min(int(each[k : k + 2], 16) for k in (0, 2, 4)) > 16
    ]


def test_bars_are_as_long_as_their_values_and_begin_at_zero() -> None:
    bars = [each for each in plotted(BARS).shapes if isinstance(each, Patch)]
    assert [pytest.approx(0.0)] * 2 == [min(x for x, _ in bar.corners) for bar in bars]
    lengths = [max(x for x, _ in bar.corners) for bar in bars]
    assert pytest.approx(4.0) == lengths[1] / lengths[0]


def test_bars_of_what_is_negative_run_to_the_left() -> None:
    laid = plotted(
        Plot(
            "bars", "T", "", Axis("step"), Axis("pull", "N"), (Curve("", ((0.0, -20.0), (1.0, 40.0))),), ("one", "two")
        )
    )
    one, two = (each for each in laid.shapes if isinstance(each, Patch))
    assert max(x for x, _ in one.corners) == pytest.approx(min(x for x, _ in two.corners))


@pytest.mark.parametrize(
    "plot",
    [
        LINES,
        BARS,
        Plot("bars", "T", "", Axis("s"), Axis("y"), (), ()),
        Plot("lines", "T", "", Axis("x"), Axis("y"), (Curve("", ()),)),
        Plot("lines", "T", "", Axis("x"), Axis("y"), (Curve("", ((1.0, None),)),)),
        Plot("lines", "T", "", Axis("x"), Axis("y"), (Curve("", ((1.0, 5.0),)),)),
    ],
)
def test_everything_is_inside_the_picture(plot: Plot) -> None:
    laid = plotted(plot)
    for label in laid.labels:
        assert laid.view.left <= label.box.left and label.box.right <= laid.view.right
        assert laid.view.top <= label.box.top and label.box.bottom <= laid.view.bottom
    assert laid.view.width > 0 and laid.view.height > 0


def test_no_two_letterings_touch() -> None:
    for plot in (LINES, BARS):
        boxes = [label.box for label in plotted(plot).labels]
        assert [] == [(a, b) for place, a in enumerate(boxes) for b in boxes[place + 1 :] if a.meets(b)]


def test_a_plot_is_an_image_with_words_in_a_tagged_pdf() -> None:
    with pikepdf.open(BytesIO(pdf(page(LINES, BARS)))) as document:
        alternatives = [
            str(each["/Alt"]) for each in document.objects if isinstance(each, pikepdf.Dictionary) and "/Alt" in each
        ]
    assert {"Pull against angle. It falls from 300 N to nothing.", "Slips of a class. Most left out a weight."} <= set(
        alternatives
    )


def test_a_plot_stands_in_a_page_of_html_with_its_own_identifiers() -> None:
    found = reader.fromstring(html(page(LINES, BARS)))
    identifiers = [each.attrib["id"] for each in found.iter() if "id" in each.attrib]
    assert (len(identifiers), 2) == (len(set(identifiers)), len(list(found.iter("svg"))))


def test_text_has_the_values_as_a_table() -> None:
    assert ["a sign                  3", "a weight left out      12", "no answer               –"] == text(
        page(BARS)
    ).splitlines()[7:10]
    assert ("angle of the forearm (°)", "biceps (N)", "brachialis (N)") == rows(LINES)[0]
    assert ("30", "260", "–") == rows(LINES)[4]


def test_a_page_that_has_the_table_already_does_not_have_it_twice() -> None:
    tabled = Plot(**{field: getattr(BARS, field) for field in BARS.__slots__} | {"tabled": True})
    assert (
        "12" in text(page(BARS)),
        "12" in text(page(tabled)),
        "| a sign | 3 |" in markdown(page(BARS)),
        "a sign" in markdown(page(tabled)),
    ) == (
        True,
        False,
        True,
        False,
    )


def test_markdown_refers_to_a_picture_that_was_written_beside_it() -> None:
    assert "![Most left out a weight.](slips.svg)" in markdown(page(BARS), figure=lambda each: "slips.svg")


@pytest.mark.parametrize("said", FEW)
def test_what_people_type_stays_text(said: str) -> None:
    plot = Plot(
        "bars",
        said,
        said,
        Axis(said, said),
        Axis(said, said),
        (Curve(said, ((0.0, 1.0),)), Curve(said, ((0.0, 2.0),))),
        (said,),
        (Text(said),),
    )
    for each in (plot, Plot("lines", said, said, Axis(said), Axis(said), (Curve(said, ((0.0, 1.0), (1.0, 2.0))),) * 2)):
        root = ElementTree.fromstring(drawn(each, said))
        assert {node.tag.removeprefix(SVG) for node in root.iter()} <= {
            "svg",
            "title",
            "desc",
            "rect",
            "g",
            "line",
            "circle",
            "path",
        }
        assert not STEERING.search(text(page(each)))
        tokens = [
            inner
            for token in MarkdownIt("gfm-like", {"linkify": False}).parse(markdown(page(each)))
            for inner in (token, *(token.children or ()))
        ]
        assert [] == [
            token.content
            for token in tokens
            if token.type.startswith(("html", "link", "image")) and token.content not in OURS
        ]
        assert pdf(page(each)).startswith(b"%PDF-")


@settings(max_examples=200)
@given(st.lists(st.floats(-1e9, 1e9, allow_subnormal=False), min_size=1, max_size=8), st.booleans(), st.booleans())
def test_a_scale_holds_all_values_in_few_round_steps(values: list[float], degrees: bool, from_zero: bool) -> None:
    found = scale(values, 0.0, 100.0, 6, degrees, from_zero)
    ticks = list(found.ticks())
    room = (found.high - found.low) * 1e-9
    assert found.low - room <= min(values) and max(values) <= found.high + room
    assert 2 <= len(ticks) <= 12
    assert (0.0, pytest.approx(100.0)) == (ticks[0][0], ticks[-1][0])
    assert len({label for _, label in ticks}) == len(ticks)


@pytest.mark.parametrize(("most", "said"), [(0, "0 1"), (1, "0 1"), (2, "0 1 2"), (7, "0 2 4 6 8")])
def test_what_is_counted_has_no_halves_on_its_scale(most: int, said: str) -> None:
    found = scale((0.0, float(most)), 0.0, 100.0, 5, from_zero=True, whole=True)
    assert " ".join(label for _, label in found.ticks()) == said


@pytest.mark.parametrize(
    ("value", "figures", "said"),
    [
        (313.92, 3, "314"),
        (0.0, 3, "0"),
        (-30.0, 3, "−30.0"),
        (12345.6, 3, "12\u202f300"),
        (0.00123, 2, "0.0012"),
        (12.0, 0, "12"),
        (float("nan"), 3, "–"),
        (999.96, 4, "1000.0"),
    ],
)
def test_a_number_is_written_without_an_exponent(value: float, figures: int, said: str) -> None:
    assert said == number(value, figures)
