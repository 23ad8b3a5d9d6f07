"""The verdict on every line of the workings that others wrote, as it is now: `python tests/workings/kept_verdicts.py`
writes them down. A change of the judge that changes one has to say so: read the diff, and the lines behind it.

One row a working: the corpus, its name, and a word for each line: h holds, c carried, u unclear, a aside, and for one
that does not hold the likeliest slip, or "slips" where none is named; "!" behind a line whose claim was checked.
"""

from __future__ import annotations

import sys
from collections.abc import Iterator
from pathlib import Path

if __name__ == "__main__":
    sys.path.insert(0, str(Path(__file__).resolve().parents[1]))
from by_hand import marked, workings

from explain.marking.slips.verdict import LineVerdict

FILE = Path(__file__).with_name("verdicts.txt")
CORPORA = ("A", "B", *map(str, range(1, 11)))


def rows(corpus: str) -> Iterator[str]:
    """The rows of a corpus."""
    for each in workings(corpus):
        yield f"{corpus} {each['id']}: {' '.join(map(_word, marked(each, corpus)))}"


def _word(line: LineVerdict) -> str:
    if line.verdict == "slips":
        return line.slips[0].slip if line.slips else "slips"
    return line.verdict[0] + ("!" if line.checked == "claim" else "")


def kept(corpus: str) -> list[str]:
    """The rows of a corpus as they were written down."""
    return [row for row in FILE.read_text("utf-8").splitlines() if row.startswith(f"{corpus} ")]


def main() -> None:
    """Write all rows."""
    FILE.write_text("".join(f"{row}\n" for corpus in CORPORA for row in rows(corpus)), encoding="utf-8")


if __name__ == "__main__":
    main()
