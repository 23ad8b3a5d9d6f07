"""The shares that other published tables give for the segments of a problem: right too, with a comment. Knows
tables, no line.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from ...errors import Fault
from ...problem.model import FromTable, Problem
from ...reference.segment_tables import PUBLISHED, segment_row


def other_tables(problem: Problem, data: Mapping[str, float]) -> Iterator[tuple[str, dict[str, float]]]:
    """For every other published table that has the segments: what is said of it, and the data that it changes."""
    looked_up = [
        each for each in problem.segments if isinstance(each.mass, FromTable) or isinstance(each.com, FromTable)
    ]
    person = problem.person
    if not looked_up or person is None:
        return
    for table in dict.fromkeys(PUBLISHED.values()):
        for sex in (person.sex,) if person.sex else ("", "female", "male"):
            try:
                rows = {each.name: segment_row(table, each.name, sex) for each in looked_up}
            except Fault:
                continue
            found = {
                key: float(value) / 100
                for name, row in rows.items()
                for key, value in ((f"{name}.mass%", row.mass_percent), (f"{name}.com%", row.com_percent))
                if key in data
            }
            if any(abs(data[key] - value) > 1e-12 for key, value in found.items()):
                yield f"right with the segments of another published table ({table.replace('-', ' ')})", found
