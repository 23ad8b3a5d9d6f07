"""Marks for a judged working: the scheme, what shows each row, what each slip costs.

In come verdicts, out come marks with reasons. Knows no slip by name.
"""
