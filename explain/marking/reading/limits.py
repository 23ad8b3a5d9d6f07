"""How much of a working is read, known before anything is read: characters, lines, tokens, depth, figures, powers."""

from __future__ import annotations

WORKING = 1_000_000  # characters of a whole working
LINES = 2_000  # lines of a whole working
LINE = 2_000  # characters of a line
TOKENS = 400  # numbers, words and signs of a line
DEPTH = 40  # brackets in brackets
FIGURES = 30  # figures of a number
EXPONENT_FIGURES = 2  # of 1e12, and of 10^12
POWER = 4  # the largest power of anything but ten
WORD = 40  # characters of a word that can be a letter with its subscript
OTHERWISE = 4  # other ways to read a line that are kept
