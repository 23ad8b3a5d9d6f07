"""How much of a working is read, known before anything is read: characters, lines, tokens, depth, figures, powers."""

from __future__ import annotations

WORKING = 1_000_000  # characters of a whole working
LINES = 2_000  # lines of a whole working
LINE = 2_000  # characters of a line
FIGURES = 30  # figures of a number
EXPONENT_FIGURES = 2  # of 1e12, and of 10^12
