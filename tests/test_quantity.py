"""Quantities as people write them: what is read, what is refused, and exact conversion."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

import pytest
import scipy.constants
from hypothesis import given
from hypothesis import strategies as st

from explain.problem import quantity
from explain.equation import unit_spellings
from explain.equation.terms import Quantity, Unit
from explain.errors import Fault
from explain.problem.quantity import EXAMPLES, convert, read

M: Unit = (("m", 1),)
CM: Unit = (("cm", 1),)
KG: Unit = (("kg", 1),)
N: Unit = (("N", 1),)
NM: Unit = (("N", 1), ("m", 1))
EVERY_UNIT = [(kind, unit) for kind, units in unit_spellings.OFFERED.items() for unit in units]

# NIST Special Publication 811 (2008), appendix B.8 with footnotes 22 and 23; all are exact.
NIST = [
    ((("lb", 1),), KG, Fraction(45359237, 100000000)),
    ((("lbf", 1),), N, Fraction(8896443230521, 2000000000000)),
    ((("in", 1),), M, Fraction(127, 5000)),
    ((("ft", 1),), M, Fraction(381, 1250)),
    ((("lbf", 1), ("ft", 1)), NM, Fraction(3389544870828501, 2500000000000000)),
    ((("lbf", 1), ("in", 1)), NM, Fraction(1129848290276167, 10000000000000000)),
]
# scipy.constants, itself after CODATA and NIST SP 811.
SCIPY = [
    ((("in", 1),), M, scipy.constants.inch),
    ((("ft", 1),), M, scipy.constants.foot),
    ((("lb", 1),), KG, scipy.constants.pound),
    ((("lbf", 1),), N, scipy.constants.pound_force),
    ((("g", 1),), KG, scipy.constants.gram),
    ((("cm", 1),), M, scipy.constants.centi),
    ((("mm", 1),), M, scipy.constants.milli),
    ((("kN", 1),), N, scipy.constants.kilo),
    ((("in", 2),), (("m", 2),), scipy.constants.inch**2),
    ((("ft", 1), ("s", -2)), (("m", 1), ("s", -2)), scipy.constants.foot),
]


def refused(text: str, kind: str) -> Fault:
    with pytest.raises(Fault) as caught:
        quantity.read(text, kind)
    return caught.value


@pytest.mark.parametrize(
    ("text", "kind", "number", "unit"),
    [
        ("4.0 cm", "length", "4.0", CM),
        ("-6.134 cm", "length", "-6.134", CM),
        ("−6.134 cm", "length", "-6.134", CM),
        ("+3 ft", "length", "3", (("ft", 1),)),
        (".5 m", "length", "0.5", M),
        ("35cm", "length", "35", CM),
        ("12.5 inches", "length", "12.5", (("in", 1),)),
        ("2.40 kg", "mass", "2.40", KG),
        ("95 N", "force", "95", N),
        ("1.5e3 N", "force", "1.5E+3", N),
        ("30°", "angle", "30", (("deg", 1),)),
        ("30 degrees", "angle", "30", (("deg", 1),)),
        ("500 ft lb", "moment", "500", (("lbf", 1), ("ft", 1))),
        ("12 N\u00a0m", "moment", "12", NM),
        ("9.5 cm²", "area", "9.5", (("cm", 2),)),
        ("9.81 m/s^2", "acceleration", "9.81", (("m", 1), ("s", -2))),
        ("32.2 ft/s²", "acceleration", "32.2", (("ft", 1), ("s", -2))),
        ("0.70", "number", "0.70", ()),
        ("83.9 %", "percent", "83.9", (("%", 1),)),
    ],
)
def test_a_quantity_keeps_its_figures_sign_and_unit(text: str, kind: str, number: str, unit: Unit) -> None:
    read = quantity.read(text, kind)
    assert (number, unit) == (str(read.number), read.unit)


@pytest.mark.parametrize("word", ["Nm", "N m", "N·m", "N-m", "N.m", "N*m", "newton metres", "m N", "N\u202fm"])
def test_every_way_to_write_a_newton_metre_is_the_same_unit(word: str) -> None:
    assert NM == quantity.read(f"3.0 {word}", "moment").unit


@pytest.mark.parametrize("word", ["ft lb", "ft-lb", "lb ft", "lb-ft", "ft·lbf", "ft lbf", "foot pounds", "ftlb"])
def test_a_foot_pound_is_a_force_before_a_length(word: str) -> None:
    assert (("lbf", 1), ("ft", 1)) == quantity.read(f"3.0 {word}", "moment").unit


def test_the_kind_says_what_a_pound_is() -> None:
    assert ((("lbf", 1),), (("lb", 1),)) == (
        quantity.read("7.5 lb", "force").unit,
        quantity.read("7.5 lb", "mass").unit,
    )


def test_minus_zero_is_zero() -> None:
    assert "0" == str(quantity.read("-0 cm", "length").number)


@pytest.mark.parametrize(
    "text",
    [
        "3−1 cm",
        "1_000 cm",
        "0x10 cm",
        "３ cm",
        "1e999999 cm",
        "1e100 cm",
        "NaN cm",
        "inf cm",
        "1..2 cm",
        "1.2.3 cm",
        "--3 cm",
        "cm",
        "",
        "   ",
        "1" * 31 + " cm",
        "3 cm" + " " * 90 + ".",
        "٣ cm",
        "3e cm",
        "3 e5 cm",
        "1/2 m",
        "½ m",
    ],
)
def test_what_is_not_one_plain_number_with_a_unit_is_refused(text: str) -> None:
    fault = refused(text, "length")
    assert ("a length: a number, a space and a unit (m, cm, mm, in, ft)", True) == (fault.expected, bool(fault.found))


def test_a_decimal_comma_is_refused_with_the_point_put_in() -> None:
    assert '"3.5 cm"' == refused("3,5 cm", "length").example


def test_a_needless_nought_is_refused_without_it() -> None:
    assert '"7 cm"' == refused("007 cm", "length").example


def test_a_number_without_a_unit_is_completed_in_the_example() -> None:
    fault = refused("3.0", "force")
    assert ('"3.0", a number without a unit', '"3.0 N"') == (fault.found, fault.example)


def test_a_number_has_thirty_figures_at_most() -> None:
    most = "1." + "2" * 29
    assert Decimal(most) == quantity.read(f"{most} cm", "length").number
    assert "more than 30 figures" in refused(f"{most}2 cm", "length").found


@pytest.mark.parametrize(
    ("text", "kind", "found", "advice"),
    (
        ("3", "force", '"3", a number without a unit', "A number stands in quotation marks, with its unit."),
        ("3", "percent", '"3", a number without a unit', ""),
        ("3 kg", "number", '"3 kg", a number with a unit', ""),
        (
            "3 kg",
            "force",
            '"3 kg": "kg" is a unit of mass',
            "A scale gives a mass; where a force is meant, give newtons or pounds.",
        ),
        ("3 kg", "length", '"3 kg": "kg" is a unit of mass', ""),
        ("3 oz", "length", '"3 oz": "oz" is not a unit of length', ""),
        ("3 kgf", "force", '"3 kgf", in a unit that is not offered', ""),
        ("3 furlings", "length", '"3 furlings", with a unit that is not known, "furlings"', ""),
        (
            "3,5 cm",
            "length",
            '"3,5 cm", a number with a comma',
            "A comma is not read: write a decimal point, and thousands without any mark.",
        ),
        (
            "three cm",
            "length",
            '"three cm", which does not begin with a number that can be read',
            "A number has the figures 0 to 9, one decimal point, and an exponent of at most two figures.",
        ),
        (
            "",
            "length",
            "an empty text",
            "A number has the figures 0 to 9, one decimal point, and an exponent of at most two figures.",
        ),
        ("007 cm", "length", '"007 cm", a number with a needless nought in front', ""),
    ),
)
def test_a_text_that_is_no_quantity_is_told_what_is_wrong_and_what_to_do(
    text: str, kind: str, found: str, advice: str
) -> None:
    fault = refused(text, kind)
    assert (found, advice) == (fault.found, fault.advice)


@pytest.mark.parametrize(
    ("text", "kind", "expected"),
    (
        ("x", "number", "a number without a unit"),
        ("x", "percent", "a number and %"),
        ("x", "angle", "an angle: a number, a space and a unit (deg)"),
        ("x", "mass", "a mass: a number, a space and a unit (kg, g, lb)"),
    ),
)
def test_what_a_quantity_has_is_told_by_its_kind(text: str, kind: str, expected: str) -> None:
    assert expected == refused(text, kind).expected


@pytest.mark.parametrize(("text", "example"), (("3", '"3 lb"'), ("3 furlings", '"95 N"'), ("3 newtom", '"3 newton"')))
def test_only_a_number_without_a_unit_is_completed_with_the_usual_one(text: str, example: str) -> None:
    with pytest.raises(Fault) as caught:
        quantity.read(text, "force", lambda: "lb")
    assert example == caught.value.example


@pytest.mark.parametrize(
    ("text", "usual"),
    (
        ('at = "3 in"\nlength = "4 in"\ncom = "5 cm"', "in"),
        ('at = "3 cm"\nlength = "4 cm"\ncom = "5 in"', "cm"),
        ('mass = "3 kg"', ""),
        (" " * 19_990 + '"3 cm" "3 in" "4 in"', "cm"),
    ),
)
def test_the_usual_unit_is_the_most_frequent_in_the_first_20_000_characters(text: str, usual: str) -> None:
    assert usual == quantity.usual_unit(text, "length")


def test_an_unknown_unit_brings_the_nearest_one() -> None:
    assert '"3 kg"' == refused("3 Kg", "mass").example


def test_a_unit_of_another_kind_is_named_with_its_kind() -> None:
    assert '"3 kg": "kg" is a unit of mass' == refused("3 kg", "force").found


def test_a_unit_that_is_not_offered_is_turned_into_one_that_is() -> None:
    assert '"29.41995 N"' == refused("3 kgf", "force").example


def test_a_unit_that_is_not_offered_and_of_another_kind_is_not_converted() -> None:
    assert '"35 cm"' == refused("5 oz", "length").example


def test_a_number_of_times_has_no_unit() -> None:
    assert "a number without a unit" == refused("2 kg", "number").expected


@given(st.text(max_size=90), st.sampled_from(list(unit_spellings.OFFERED)))
def test_any_text_is_read_or_refused_with_an_example(text: str, kind: str) -> None:
    try:
        assert quantity.read(text, kind).number.is_finite()
    except Fault as fault:
        assert fault.example


@given(
    st.decimals(allow_nan=False, allow_infinity=False, places=3, min_value=-(10**4), max_value=10**4),
    st.sampled_from(EVERY_UNIT),
)
def test_what_is_written_out_is_read_back(number: Decimal, unit: tuple[str, str]) -> None:
    kind, word = unit
    assert Decimal(f"{number:f}") == quantity.read(f"{number:f} {word}", kind).number


@pytest.mark.parametrize(("one", "other", "factor"), NIST)
def test_factors_are_those_of_nist(one: Unit, other: Unit, factor: Fraction) -> None:
    assert factor == quantity.factor(one, other)


@pytest.mark.parametrize(("one", "other", "factor"), SCIPY)
def test_factors_are_those_of_scipy(one: Unit, other: Unit, factor: float) -> None:
    assert factor == pytest.approx(float(quantity.factor(one, other)), rel=1e-15)


@pytest.mark.parametrize(("kind", "word"), EVERY_UNIT)
def test_every_unit_offered_converts_to_the_first_of_its_kind_and_back(kind: str, word: str) -> None:
    unit, first = unit_spellings.unit_of(word, kind), unit_spellings.unit_of(unit_spellings.OFFERED[kind][0], kind)
    assert unit is not None and first is not None
    assert 1 == quantity.factor(unit, first) * quantity.factor(first, unit)


@pytest.mark.parametrize(
    ("number", "unit", "other", "expected"),
    [
        ("4.0", "cm", M, "0.040"),
        ("35", "cm", M, "0.35"),
        ("3", "m", CM, "300"),
        ("2.50", "ft", M, "0.762"),
        ("1", "ft", (("in", 1),), "12"),
        ("7.5", "lb", KG, "3.401942775"),
        ("300", "g", KG, "0.300"),
        ("0", "cm", M, "0.00"),
        ("-2.3", "cm", M, "-0.023"),
        ("10", "N m", (("N", 1), ("cm", 1)), "1000"),
        ("1", "m", (("ft", 1),), "3.280839895013123359580052493438320209974"),
    ],
)
def test_a_conversion_is_exact_or_has_forty_figures(number: str, unit: str, other: Unit, expected: str) -> None:
    assert expected == str(quantity.convert(Quantity.of(number, unit), other).number)


@given(st.decimals(allow_nan=False, allow_infinity=False, places=6, min_value=-(10**9), max_value=10**9))
def test_inches_to_metres_lose_nothing(number: Decimal) -> None:
    converted = quantity.convert(Quantity(number, (("in", 1),)), M).number
    assert Fraction(number) * Fraction(127, 5000) == Fraction(converted)


@pytest.mark.parametrize("other", [KG, (("deg", 1),), NM, (("cm", 2),), (("parsec", 1),)])
def test_unlike_kinds_are_not_converted(other: Unit) -> None:
    with pytest.raises(Fault) as caught:
        quantity.convert(Quantity.of("4.0", "cm"), other)
    assert "two units of one kind" == caught.value.expected


def test_force_and_mass_in_pounds_are_unlike() -> None:
    with pytest.raises(Fault):
        quantity.factor((("lb", 1),), (("lbf", 1),))


def test_a_spelling_has_the_dimension_of_its_kind_and_no_two_kinds_share_one_but_the_pound() -> None:
    shared = {
        word
        for kind in unit_spellings.OFFERED
        for word in unit_spellings.spellings(kind)
        if len(unit_spellings.kinds_of(word)) > 1
    }
    assert {"lb", "lb.", "lbs", "lbs.", "pound", "pounds"} == shared


@pytest.mark.parametrize("kind", EXAMPLES)
def test_every_example_in_a_message_can_be_read(kind: str) -> None:
    assert isinstance(read(EXAMPLES[kind], kind), Quantity)


def test_a_text_of_eighty_characters_is_read_and_one_of_eighty_one_is_not() -> None:
    long = "4" + " " * 77 + "cm"
    assert (80, Quantity.of("4", "cm")) == (len(long), read(long, "length"))
    with pytest.raises(Fault):
        read("4" * 30 + "." + "0" * 50, "number")


@pytest.mark.parametrize(("kind", "weighed"), (("force", True), ("length", False), ("moment", False)))
def test_that_a_scale_gives_a_mass_is_said_where_a_force_is_meant(kind: str, weighed: bool) -> None:
    told = pytest.raises(Fault, read, "4 kg", kind).value
    assert weighed is told.advice.startswith("A scale gives a mass")


def test_a_force_of_another_kind_than_a_mass_brings_no_word_of_scales() -> None:
    assert "" == pytest.raises(Fault, read, "4 cm", "force").value.advice


def test_a_number_that_ends_is_kept_whole_however_long_it_is() -> None:
    """Thirty figures of pounds are forty-four figures of newtons: 4.4482216152605 N to the pound (NIST SP 811, B.8)."""
    number = Decimal("1.23456789012345678901234567891")
    found = convert(Quantity(number, (("lbf", 1),)), (("N", 1),)).number
    assert Fraction(number) * Fraction("4.4482216152605") == Fraction(found)


def test_an_exponent_is_none_of_the_figures() -> None:
    """Thirty figures may be written, and an exponent behind them."""
    assert Decimal("1.00000000000000000000000000001e3") == read("1.00000000000000000000000000001e3 N", "force").number
    with pytest.raises(Fault, match="more than 30 figures"):
        read("1.000000000000000000000000000001e3 N", "force")


def test_units_of_two_kinds_are_told_as_they_are_typed() -> None:
    with pytest.raises(Fault) as caught:
        quantity.factor((("N", 1), ("m", 1)), (("m", 1), ("s", -2)))
    assert "N m, to be given in m s^-2" == caught.value.found
    assert ("cm", "lb in") == tuple(quantity.written_unit(each) for each in (CM, (("lbf", 1), ("in", 1))))
