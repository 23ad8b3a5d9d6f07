"""From a problem or course file to a `Problem`: keys, kinds, faults with their line numbers.

In comes TOML, out come frozen records. Knows no equation and works nothing out.
"""
