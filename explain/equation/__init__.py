"""What is written on a board: terms in their order, numbers as typed, units as spelled.

In comes text, out come frozen terms. Does no algebra, knows no mechanics, imports nothing of this program but `errors`.
"""
