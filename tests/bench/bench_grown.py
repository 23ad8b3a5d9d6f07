"""A working that is judged again with its last line added, against judging the whole from nothing (aim 0.4): workings
of at least six lines from those that independent hands wrote.
"""

from __future__ import annotations

import json
from pathlib import Path
from time import process_time

from explain import work
from explain.marking.judging.passes import Passes
from explain.marking.judging.reading import Reader

MOST = 0.4
ROOT = Path(__file__).parents[2]


def ratio(batch: str = "4") -> float:
    """Processor time of judging a working with its last line added, against judging the whole."""
    home = ROOT / "tests/workings/batches" / batch
    grown = whole = 0.0
    for working in json.loads((home / "workings.json").read_text("utf-8"))["workings"]:
        lines = [each["text"] for each in working["lines"]]
        if len(lines) < 6:
            continue
        problem = working["problem"]
        marker = work((ROOT if problem.startswith("samples/") else home) / problem).marker
        marker.mark("\n".join(lines))
        for last in (lines, lines[:-1]):
            marker.passes, marker.reader = Passes(marker.known, marker.hints, marker.passes.sources), Reader()
            start = process_time()
            marker.mark("\n".join(last))
            whole += process_time() - start if last is lines else 0.0
        start = process_time()
        marker.mark("\n".join(lines))
        grown += process_time() - start
    return grown / whole


if __name__ == "__main__":
    print(f"judged again with its last line / whole: {ratio():.2f} (aim {MOST})")
