"""What an answer means and what its checks told: the end of a page. Works nothing out."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from ..document.english import listed, sentence
from ..document.passage import Bullets, Inline, Line, Paragraph, Passage, Strong, Text
from ..solve.outcome import Finding, Outcome
from .closing_sentence import in_a_sentence

Findings = Sequence[tuple[str, Finding]]
MARKS = {"holds": "✓", "warns": "?", "fails": "✗"}
WHY = "size_against_load"  # the check that says why an answer is as large as it is
FOLDED: Mapping[str, str] = {
    "pulls": "signs",
    "distance_on_limb": "distances",
    "arm_not_longer": "lever arms",
    "put_back": "balance",
    "force_balance": "balance",
    "oblique_part": "balance",
    "triangle": "the triangle of forces",
    "units": "units",
}
_FIRST = ("fails", "warns", "holds")


def discussion(outcome: Outcome, findings: Findings) -> tuple[Passage, ...]:
    """What the answer means and why, the checks that told something, and the rest in one line."""
    detail = outcome.body.problem.course.detail
    meaning, why = in_a_sentence(outcome), _why(findings) if detail == "full" else ""
    lead = " ".join(filter(None, (meaning and sentence(meaning), why)))
    passages: list[Passage] = [Paragraph((Text(lead),))] if lead else []
    left = [(name, each) for name, each in findings if not (why and name == WHY)]
    return (*passages, *check_list(left, detail))


def _why(findings: Findings) -> str:
    """Why the answer is as large as it is, where a check tells it."""
    return next((each.says for name, each in findings if name == WHY and each.result == "holds"), "")


def check_list(findings: Findings, detail: str) -> Iterator[Passage]:
    """What the checks found, one item each, first what is wrong; those with nothing to tell stand in one line."""
    told = sorted(
        ((name, each) for name, each in findings if each.result in MARKS and not _is_folded(each)),
        key=lambda pair: _FIRST.index(pair[1].result) if pair[1].kind != "note" else len(_FIRST),
    )
    sources: set[str] = set()
    items = tuple(
        _item(each, sources)
        for _, each in told
        if not (detail == "brief" and each.result == "holds" and each.kind != "proof")
    )
    if items:
        yield Bullets(items)
    quiet = {name for name, each in findings if _is_folded(each)}
    words = list(dict.fromkeys(word for name, word in FOLDED.items() if name in quiet))
    if words:
        verb = "were" if len(words) > 1 or words[0].endswith("s") else "was"
        yield Paragraph((Text(f"{sentence(listed(words)).rstrip('.')} {verb} checked{' too' if items else ''}."),))


def _is_folded(finding: Finding) -> bool:
    return finding.quiet and finding.result == "holds"


def _item(finding: Finding, sources: set[str]) -> Line:
    line: list[Inline] = [Strong(f"{finding.label}. "), Text(finding.says)]
    if finding.kind != "note" and not finding.says.endswith("?"):
        line.append(Text(f"\u00a0{MARKS[finding.result]}"))
    if finding.source:
        line.append(Text(" (Source as above.)" if finding.source in sources else f" (Source: {finding.source}.)"))
        sources.add(finding.source)
    return tuple(line)
