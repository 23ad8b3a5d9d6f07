"""What each check says in each case of test_checks_on_answers.py, whole.

    python tests/findings.py

writes cases/findings.txt again; read what has changed, with the numbers by hand.
"""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path

from explain.solve.outcome import Finding

KEPT = Path(__file__).with_name("cases") / "findings.txt"


def told(findings: Iterable[Finding]) -> list[str]:
    """A line for each finding: how it stands, under which label, for whom, what is said, and by what source."""
    return [
        f"{each.result} [{each.label}{', quiet' if each.quiet else ''}, {each.kind}] {each.says}"
        + (f" ({each.source})" if each.source else "")
        + (f" of {', '.join(each.of)}" if each.of else "")
        for each in findings
    ]


def kept() -> dict[str, list[str]]:
    """The lines that were read, by check and case."""
    out: dict[str, list[str]] = {}
    case = ""
    for line in KEPT.read_text("utf-8").splitlines():
        if line.startswith("  "):
            out[case].append(line.strip())
        else:
            case = line
            out[case] = []
    return out


if __name__ == "__main__":
    from test_checks_on_answers import CASES, look

    from explain import work

    rows = (
        "\n  ".join((f"{name}: {case}", *told(look(name, work(problem).outcome)))) for name, case, problem, *_ in CASES
    )
    KEPT.write_text("\n".join(rows) + "\n", "utf-8")
