"""A working before it is judged: its lines and parts, what surrounds a line, how numbers and units are typed."""

from __future__ import annotations

from decimal import Decimal

import pytest

from explain.marking.reading.layout import laid_out
from explain.marking.reading.limits import LINE, LINES, WORKING
from explain.marking.reading.numbers import Comma, comma_in, spelled
from explain.marking.reading.units import unit_word
from explain.marking.reading.working import read_working


@pytest.mark.parametrize(
    ("run", "value", "places", "figures", "point"),
    [
        ("3", "3", 0, 1, False),
        ("3.50", "3.50", 2, 3, True),
        (".5", "0.5", 1, 1, True),
        ("0.050", "0.050", 3, 2, True),
        ("0", "0", 0, 1, False),
        ("3e2", "300", -2, 1, False),
        ("3.0E-2", "0.030", 3, 2, True),
        ("1,5", "1.5", 1, 2, True),
        ("0,250", "0.250", 3, 3, True),
        ("1234,567", "1234.567", 3, 7, True),
        ("12,345.6", "12345.6", 1, 6, True),
        ("1.234,5", "1234.5", 1, 5, True),
        ("1,234,567", "1234567", 0, 7, False),
    ],
)
def test_a_number_that_can_be_read_in_one_way(run: str, value: str, places: int, figures: int, point: bool) -> None:
    number, other, why = spelled(run, "")
    assert number is not None and (None, "") == (other, why)
    assert (Decimal(value), places, figures, run, point) == (
        number.value,
        number.places,
        number.figures,
        number.text,
        number.point,
    )


@pytest.mark.parametrize(
    ("run", "comma", "values"),
    [
        ("1,250", "", ["1250", "1.250"]),
        ("1,250", "decimal", ["1.250"]),
        ("1,250", "thousands", ["1250"]),
        ("1.250", "", ["1.250"]),
        ("1.250", "decimal", ["1250", "1.250"]),
        ("1.250", "thousands", ["1.250"]),
    ],
)
def test_a_comma_before_three_figures_is_what_the_other_numbers_say(run: str, comma: Comma, values: list[str]) -> None:
    found = spelled(run, comma)
    assert values == [str(each.value) for each in (found.number, found.other) if each is not None]


@pytest.mark.parametrize(
    ("run", "why"),
    [
        ("1.2.3", "a number with more than one point or comma"),
        ("1e123", "an exponent of more than two figures"),
        ("1" * 31, "a number of more than 30 figures"),
    ],
)
def test_a_run_of_figures_that_spells_no_number_says_why(run: str, why: str) -> None:
    assert (None, None, why) == spelled(run, "")


def test_the_longest_number_and_exponent_are_still_read() -> None:
    assert all(spelled(run, "").number is not None for run in ("1" * 30, "1e99", "1e-99"))


@pytest.mark.parametrize(
    ("text", "comma"),
    [
        ("1,5 + 0,25", "decimal"),
        ("F = ,5", "decimal"),
        ("0,5 0,6 0,7 0,8 1.5", "decimal"),
        ("0,5 0,6 0,7 1.5", ""),
        ("1.5 + 0,25", ""),
        ("1.5 1.6 1.7 0,5", ""),
        ("1.5 1.6 1.7 1.8 0,5", "thousands"),
        ("1,250.5 and 2.5", "thousands"),
        ("3 + 1,250", ""),
    ],
)
def test_what_a_comma_means_is_told_by_more_than_three_times_as_many_numbers(text: str, comma: str) -> None:
    assert comma == comma_in(text)


@pytest.mark.parametrize(
    ("word", "unit"),
    [
        ("N", "N1"),
        ("n", "N1"),
        ("KN", "kN1"),
        ("Nm", "N1 m1"),
        ("Ncm", "N1 cm1"),
        ("J", "N1 m1"),
        ("joules", "N1 m1"),
        ("kgcm", "kg1 cm1"),
        ("lb", "lb1"),
        ("pounds", "lb1"),
        ("lbs", "lb1"),
        ("lbf", "lbf1"),
        ("lbm", "lbm1"),
        ("lbft", "lb1 ft1"),
        ("ftlb", "lb1 ft1"),
        ("inlb", "lb1 in1"),
        ("CM", "cm1"),
        ("cm2", "cm2"),
        ("m3", "m3"),
        ("ft2", "ft2"),
        ('"', "in1"),
        ("''", "in1"),
        ("'", "ft1"),
        ("deg", "deg1"),
        ("%", "%1"),
        ("slug", "slug1"),
        ("rad", "rad1"),
    ],
)
def test_a_unit_of_one_word(word: str, unit: str) -> None:
    found = unit_word(word)
    assert found is not None and unit == " ".join(f"{name}{power}" for name, power in found)


@pytest.mark.parametrize("word", ["x", "mN", "N2", "kg3", "m4"])
def test_a_word_that_is_no_unit(word: str) -> None:
    assert unit_word(word) is None


@pytest.mark.parametrize(
    ("line", "text", "part", "said"),
    [
        ("**F = 3** N", "  F = 3   N", "", ""),
        ("__F__ = 3", "  F   = 3", "", ""),
        ("*F = 3*", " F = 3 ", "", ""),
        ("`F = 3`", " F = 3 ", "", ""),
        ("2*3*4 = 24", "2*3*4 = 24", "", ""),
        ("| a | b |", "; a ; b ;", "", "table"),
        ("|W| = 3", " W  = 3", "", ""),
        ("> x = 1", "  x = 1", "", ""),
        ("* item", "  item", "", ""),
        ("2) x = 1", "   x = 1", "", ""),
        ("step 2. F = 3", "        F = 3", "", ""),
        ("2. x 3 = 6", "2. x 3 = 6", "", ""),
        ("2. - 3 = 6", "2. - 3 = 6", "", ""),
        ("- x = 1", "- x = 1", "", "dash"),
        ("---", "   ", "", "heading"),
        ("Part b: F = 3", "        F = 3", "b", ""),
        ("ii) F = 3", "    F = 3", "ii", ""),
        ("a. F = 3", "   F = 3", "a", ""),
        ("(a) x = 1", "    x = 1", "a", ""),
        ("(a) x 3 = 6", "(a) x 3 = 6", "", ""),
        ("(c)", "   ", "c", "heading"),
        ("question (b)", "            ", "b", "heading"),
        ("### Question c", "    Question c", "c", "heading"),
        ("~~x = 1~~", "  x = 1  ", "", "struck"),
        ("~~x = 1~~ y = 2", "          y = 2", "", ""),
        ("x = 5 (wrong)", "x = 5 (wrong)", "", "struck"),
        ("no, x = 2", "no, x = 2", "", "replaces"),
        ("scrap that, x = 2", "scrap that, x = 2", "", "replaces"),
    ],
)
def test_what_surrounds_a_line_is_blanked_and_every_letter_stays_in_its_place(
    line: str, text: str, part: str, said: str
) -> None:
    found = laid_out(line)
    told = [name for name in ("heading", "struck", "replaces", "dash", "table") if getattr(found, name)]
    assert (text, part, said) == (found.text, found.part, " ".join(told)) and len(line) == len(found.text)


def test_a_dash_or_a_number_in_front_is_a_list_mark_where_the_lines_around_have_one() -> None:
    assert ["  x = 1", "    - 3"] == [laid_out(each, True).text for each in ("- x = 1", "12. - 3")]


@pytest.mark.parametrize(
    ("text", "lines"),
    [
        ("a\n\nb\r\nc\rd\n", "1a 2 3b 4c 5d"),
        ("\ufeffx\n", "1x"),
        ("# Part (b)\nx = 1\n", "1# Part (b)/b/heading 2x = 1/b"),
        ("(a) y = 1\ny = 2\nb) z = 3", "1(a) y = 1/a 2y = 2/a 3b) z = 3/b"),
        ("- a = 1\n- b = 2\nc", "1- a = 1/bulleted 2- b = 2/bulleted 3c"),
        ("- a = 1\nb\nc", "1- a = 1 2b 3c"),
        ("- a = 1\n- b = 2\nc\nd\ne", "1- a = 1 2- b = 2 3c 4d 5e"),
        ("1. x\n2. y\n3. z", "11. x/bulleted 22. y/bulleted 33. z/bulleted"),
        ("1. x\n2. y", "11. x 22. y"),
        ("1. x\n4. y\n8. z\n7. w", "11. x/bulleted 24. y/bulleted 38. z 47. w/bulleted"),
        ("x = 1\nno, x = 2", "1x = 1/replaced 2no, x = 2"),
        ("x = 1\n\nscrap that, x = 2", "1x = 1/replaced 2 3scrap that, x = 2"),
        ("# T\nwait, x = 2", "1# T/heading 2wait, x = 2"),
    ],
)
def test_a_working_as_its_lines(text: str, lines: str) -> None:
    said = [
        "/".join(
            filter(
                None,
                (
                    f"{each.number}{each.text}",
                    each.part,
                    *(name for name in ("heading", "replaced", "bulleted") if getattr(each, name)),
                ),
            )
        )
        for each in read_working(text)
    ]
    assert lines == " ".join(said)


def test_a_working_that_is_too_long_is_read_as_far_as_the_limit_and_says_so() -> None:
    whole = read_working("x\n" * LINES)
    assert LINES == len(whole) and not any(each.trouble for each in whole)
    *lines, last = read_working("x\n" * (LINES + 1))
    assert (LINES, LINES + 1, "") == (len(lines), last.number, last.text)
    assert f"a working of more than {LINES:,} lines" == last.trouble
    assert not read_working("x" * WORKING)[-1].trouble
    long = read_working("x" * (WORKING + 1))[-1]
    assert f"a working of more than {WORKING:,} characters" == long.trouble
    assert len(read_working("x" * (LINE + 1))[0].text) == LINE + 1
