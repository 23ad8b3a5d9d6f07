"""How much of a working is read: what is longer is told, never lost in silence."""

LONGEST_LINE = 600
MOST_TOKENS = 160
DEEPEST = 12
MOST_WAYS = 200  # ways to trace the numbers of one line together
MOST_STATEMENTS = 400  # statements of a working that are judged; what follows is told
GONE_OVER_AGAIN = 150  # statements of a working that is gone over more than once
