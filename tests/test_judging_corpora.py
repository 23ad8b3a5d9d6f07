"""Workings that independent hands wrote, reworded by machine: in words, other letters, decimal commas, Markdown
and LaTeX, dots for products. The verdicts must not change.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Callable

import pytest
from by_hand import WITH_SLIPS, counted

BATCHES = tuple(str(number) for number in range(1, 11))


def in_words(text: str) -> str:
    """Times, over, plus; which makes."""
    text = re.sub(r"(?<=[\d)a-zA-Z°])\s*[*×]\s*(?=[\d(])", " times ", text)
    text = re.sub(r"(?<=[\d)]) x (?=[\d(.])", " times ", text)
    text = re.sub(r"(?<=[\d)])\s*/\s*(?=[\d(])", " over ", text)
    text = re.sub(r"(?<=[\d)N]) \+ (?=[\d(])", " plus ", text)
    return re.sub(r"(?<=[\d)])\s*=\s*(?=[\d.]+ ?(?:N|kg|cm|m|Nm|lb)?\b[^*/+]*$)", " which makes ", text)


def by_name(text: str) -> str:
    """Multiplied by, divided by; which comes to."""
    if re.search(r"[*x×+/-]", text):
        text = re.sub(r"\s=\s([\d.]+ ?(?:N|kg|cm|m|N m|Nm|N cm)?)\s*$", r", which comes to \1", text)
    text = re.sub(r"(?<=[\d)])\s*[*×]\s*(?=[\d(])", " multiplied by ", text)
    return re.sub(r"(?<=\d)\s*/\s*(?=[\d(])", " divided by ", text)


def with_commas(text: str) -> str:
    return text if re.search(r"\d,\d", text) else re.sub(r"(?<=\d)\.(?=\d)", ",", text)


def in_markdown(text: str) -> str:
    """A list, with labels and answers in bold."""
    label = re.match(r"^([A-Za-z][A-Za-z ]+):(.*)$", text)
    text = f"**{label[1]}:**{label[2]}" if label else text
    text = re.sub(r"= ([\d.]+ ?(?:N|kg|cm|m|Nm|lb))\s*$", r"= **\1**", text)
    return text if text[:1] in "-+*/(" else f"- {text}"


def in_latex(text: str) -> str:
    if "\\" in text or "$" in text or re.search(r"\d,\d", text) or not re.search(r"\d.*=", text):
        return text
    text = re.sub(r"\s*[*×]\s*", r" \\cdot ", text)
    text = re.sub(r"(?<=[\d)]) x (?=[\d(])", r" \\times ", text)
    text = re.sub(r"\b(sin|cos|tan)(?=[\d ( ])", r"\\\1 ", text)
    text = re.sub(r"(?<=\d) ?(N m|Nm|N|kg|cm|m|lb)(?=[\s,;)]|$)", r"\\,\\text{\1}", text)
    words = re.match(r"^([A-Za-z ,']{4,}?[: ]\s*)(.*)$", text)
    return f"{words[1]}${words[2]}$" if words and "=" in words[2] else f"${text}$"


def dotted(text: str) -> str:
    return re.sub(r"(?<=[\d)])\s*[*×]\s*(?=[\d(])", " · ", text)


@pytest.mark.parametrize(
    "restyle", (in_words, by_name, with_commas, in_markdown, in_latex, dotted), ids=lambda each: each.__name__
)
@pytest.mark.parametrize("corpus", ("A", "B"))
def test_rewording_changes_no_verdict(corpus: str, restyle: Callable[[str], str]) -> None:
    count = counted(corpus, restyle)
    assert count["right called wrong"] <= 0.005 * count["right lines"]
    assert count["found"] >= WITH_SLIPS - 1 and count["named"] >= WITH_SLIPS - 2


@pytest.mark.parametrize(
    "restyle", (in_words, by_name, with_commas, in_markdown, in_latex, dotted), ids=lambda each: each.__name__
)
def test_rewording_all_ten_batches_changes_next_to_nothing(restyle: Callable[[str], str]) -> None:
    """As written 2 of 3,130 right lines are called wrong, and 226 of 240 first wrong lines are found."""
    count = sum((counted(batch, restyle) for batch in BATCHES), Counter())
    assert 3130 == count["right lines"] and count["right called wrong"] <= 0.004 * count["right lines"]
    assert count["found"] >= 219 and count["named"] >= 213
    assert count["affirmed"] <= 0.085 * count["wrong lines"] and count["without a word"] <= 1
