"""Every account that a slip makes of a few problems, a line each: what is spoken of, and which values come out
otherwise.

    python tests/slips_made.py

writes slips_made.txt again; read what has changed, with the number by hand beside it. A value is in SI, an angle in
degrees, to four figures; "!" is an account that has no values. "in all" tells how many accounts each problem has.
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from slip_problems import account

from explain.marking.slips.account import Account, Impossible, Spoilt
from explain.marking.slips.slip import SlipRule
from rules.slips import SLIPS

KEPT = Path(__file__).with_name("slips_made.txt")
PROBLEMS = (
    *("REF", "S03", "S05", "S07", "S11", "S13", "S14", "S18", "S19"),
    *("S04", "S06", "a level cord", "a leaning trunk", "in grams", "two in pounds"),
)
SEVERAL, MANY = 2, 12  # so many problems are written of a slip, and at most so many accounts of each


def made() -> str:
    """The whole text."""
    return "".join(f"{line}\n" for rule in SLIPS for line in _told(rule))


def _told(rule: SlipRule) -> Iterator[str]:
    yield f"{rule.SLIP} ({rule.FAMILY})"
    found = {name: tuple(rule.do(account(name))) for name in PROBLEMS}
    speaking = [name for name in PROBLEMS if found[name]]
    for name in speaking[:SEVERAL]:
        for spoilt in found[name][:MANY]:
            yield f"  {name}: {_line(account(name), spoilt)}"
    yield "  in all: " + (", ".join(f"{name} {len(found[name])}" for name in speaking) or "none")


def _line(true: Account, spoilt: Spoilt) -> str:
    of = ", ".join(filter(None, (spoilt.item, spoilt.angle)))
    head = f"{spoilt.near} of {spoilt.touched}" + (f" ({of})" if of else "")
    try:
        values, was = spoilt.account.values(), true.values()
    except Impossible:
        return f"{head}: !"
    shown = dict.fromkeys((*spoilt.account.unknowns, spoilt.touched, "reaction.right", "reaction.up", "reaction"))
    keys = [each for each in (*shown, "*angle reaction") if each in values]
    off = [
        f"{key} {values[key] + 0.0:.4g}"
        for key in keys
        if abs(values[key] - was.get(key, 0)) > 1e-6 * max(abs(was.get(key, 0)), 1e-3)
    ]
    return f"{head}: {', '.join(off[:2]) or 'the same'}"


if __name__ == "__main__":
    KEPT.write_text(made(), "utf-8")
