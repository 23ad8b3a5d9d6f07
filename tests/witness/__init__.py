"""An independent witness: random problems with their own solution by numpy, and a judge of every printed number.

Knows the file contract and mechanics (r × F). Must not know the program's modules: it sees answers, lines
and pages only.
"""
