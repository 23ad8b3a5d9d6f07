"""What can be turned in a figure: a force or a segment whose direction states a plain angle in the file. Draws nothing.

A handle knows its path in the file, the words of its direction, where it lies in the figure, and which way its angle
grows there.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from math import dist
from typing import Any

from ..api import Walkthrough
from ..mechanics.body import Body
from ..problem.toml_lines import Path
from ..problem.turned import Turnable, turnable
from ..walkthrough.diagram import LEVEL
from ..walkthrough.diagram_points import degrees_of
from ..write.figure.free_body import Parted
from ..write.figure.parts import BONE

ALONG = 0.68  # of a bone: where its handle lies, clear of the joints at its ends
HEAD = 28.0  # pixels from the far end of a force to its handle, clear of its head
_UNIT = re.compile(r"^\s*\S*\d[\d.]*\s*(?:degrees|degree|degs|deg\.?|°)\s*")


def handles(walkthrough: Walkthrough, keys: Mapping[str, Any], drawn: Parted) -> list[dict[str, Any]]:
    """The handles of a figure, in the order of the file."""
    parts = {
        (part.kind == BONE, part.name): part for part in drawn.parts if part.kind not in ("weight", "load", "joint")
    }
    out = []
    for path, name, words, found in _stated(keys):
        bone = path[0] == "segment"
        part, grows = parts.get((bone, name)), _grows(walkthrough, path, name, found)
        if part is None or grows is None:
            continue
        (ax, ay), (bx, by) = part.about, part.end
        far = ALONG if bone else max(1.0 - HEAD / (dist(part.about, part.end) or HEAD), 0.5)
        out.append(
            {
                "path": path,
                "name": name,
                "degrees": float(found.degrees),
                "most": found.most,
                "words": _UNIT.sub("", words),
                "grows": grows,
                "kind": part.kind,
                "about": [ax, ay],
                "at": [ax + (bx - ax) * far, ay + (by - ay) * far],
            }
        )
    return out


def _stated(keys: Mapping[str, Any]) -> Iterator[tuple[Path, str, str, Turnable]]:
    for kind in ("segment", "muscle", "force"):
        tables = keys.get(kind)
        for number, table in enumerate(tables if isinstance(tables, list) else ()):
            name, words = (table.get("name"), table.get("direction")) if isinstance(table, dict) else (None, None)
            found = turnable(words) if isinstance(words, str) else None
            if isinstance(name, str) and isinstance(words, str) and found is not None:
                yield (kind, number, "direction"), name.strip(), words, found


def _grows(walkthrough: Walkthrough, path: Path, name: str, found: Turnable) -> int | None:
    """Which way the drawn direction turns where its angle grows: 1 counter-clockwise, -1 clockwise."""
    body = walkthrough.outcome.body
    along = _before(body, int(path[1])) if path[0] == "segment" else _under(body, name)
    rays = [_ray(walkthrough, word, along) for word in (found.start, found.toward)]
    if rays[0] is None or rays[1] is None:
        return None
    return 1 if (rays[1] - rays[0]) % 360 < 180 else -1


def _before(body: Body, number: int) -> str:
    """The segment that a segment starts at."""
    segments = body.problem.segments
    return segments[number].start or (segments[number - 1].name if number else "")


def _under(body: Body, name: str) -> str:
    """The segment that a force acts on."""
    segments = body.problem.segments
    return body.force(name).segment or (segments[-1].name if segments else "")


def _ray(walkthrough: Walkthrough, word: str, along: str) -> float | None:
    if word in LEVEL:
        return LEVEL[word]
    bearing = walkthrough.outcome.body.bearings.get(along)
    if bearing is None:
        return None
    return (degrees_of(walkthrough.outcome, bearing) + (0.0 if word == "out" else 180.0)) % 360
