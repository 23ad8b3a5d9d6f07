"""A working laid out in floats so that a slip can change any one step; what a slip and a verdict are.

Knows no particular slip (these are in `rules/slips`) and no typed line.
"""
