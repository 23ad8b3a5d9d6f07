"""Knows how to go through a page sentence by sentence, and which numbers no reader has judged."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator

from . import answers_told, balances_told, senses_told, sizes_told
from .answers import Expected
from .claims import Sentences
from .page import Truth
from .problems import Case
from .run_one import Outcome

Finding = tuple[str, str]
OF_CHECKS = [*balances_told.SENTENCES, *sizes_told.SENTENCES]
OF_PAGES = [*senses_told.SENTENCES, *answers_told.SENTENCES]


def passages(text: str) -> list[str]:
    """The sentences of a text page after its statement and given values, without equations and rules."""
    body = text.partition("\nFind ")[2]
    rows = [row.strip("│┌┐└┘─ ") for row in body.splitlines() if not row.startswith("    ")]
    return [
        part.strip("[]")
        for row in rows
        for part in re.split(r"(?<=[.:✓])\s+(?=[A-Z])(?!So the pull|At this|The body begins|Reach|Force is)", row)
        if part
    ]


def false_sentences(case: Case, expected: Expected, outcome: Outcome, read: Counter[str]) -> Iterator[Finding]:
    """Every sentence that disagrees with its own numbers or with the true ones."""
    truth = Truth(case, expected, outcome)
    checks = [
        (check["name"], check["says"])
        for check in outcome.json["checks"]
        if check["says"] and check["result"] != "does not apply"
    ]
    for name, text in checks:
        yield from judge(truth, text, OF_CHECKS, read, f"check {name}")
    yield from other_numbers(outcome)
    told = " ".join(text for _, text in checks)
    for text in passages(outcome.text):
        known = bool(re.match(r"- |!|[0-9]+ [A-Z]", text)) or "add to zero" in text or text.rstrip(" ✓✗?") in told
        yield from judge(truth, text, OF_PAGES, read, "page", known)


NUMBER = re.compile(r"[0-9][0-9\u202f]*(?:\.[0-9]+)?")


def other_numbers(outcome: Outcome) -> Iterator[Finding]:
    """Numbers that the Markdown page has and the text page has not, or the other way."""
    markdown = outcome.markdown.partition("**Find**")[2]
    bare = re.sub(r"(?<=[0-9])\\,(?=[0-9]{3})", "\u202f", markdown)
    bare = re.sub(r"\^\{?-?[0-9]+\}?|\]\([^)]*\)|<[^>]*>", " ", bare.replace("^\\circ", "°"))
    text = outcome.text.partition("\nFind ")[2]
    here, there = Counter(NUMBER.findall(bare)), Counter(NUMBER.findall(re.sub(r"[²⁻¹]+", " ", text)))
    if here != there:
        yield (
            "Markdown and text have other numbers",
            f"only Markdown {list((here - there).elements())[:6]}, only text {list((there - here).elements())[:6]}",
        )


def judge(
    truth: Truth, text: str, table: Sentences, read: Counter[str], where: str, known: bool = False
) -> Iterator[Finding]:
    matched = False
    if re.search(r"0\.0{8,}", text):
        yield f"{where}: what is left of rounding is printed as a number", text
    for pattern, reader in table:
        for found in truth.pattern(pattern).finditer(text):
            matched = True
            read[f"claims of the {where.split()[0]}"] += 1
            yield from ((f"{where}: {sort_of(truth, fault)}", f"{text}   ({fault})") for fault in reader(truth, found))
    if not matched and re.search(r"[0-9]", text) and not known:
        read[f"sentences of the {where.split()[0]} with numbers, not judged"] += 1
        read[f"unread: {re.sub(truth.name, '<N>', re.sub(r'[0-9.]+', '#', text))[:110]}"] += 1


def sort_of(truth: Truth, fault: str) -> str:
    """What is wrong, without names and numbers."""
    bare = re.sub(r"[0-9.]+", "#", re.sub(truth.name, "…", fault))
    return re.sub(r"(?:[−-]?#\s?(?:e[-+]#)?)+(?:[A-Za-z]+·[A-Za-z]+)?", "# ", bare)[:60]
