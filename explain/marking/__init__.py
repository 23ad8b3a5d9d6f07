"""A student's working: read, judged, marked, reported. One folder a stage.

In comes a typed text, out come verdicts, marks and a page. Imports no series, variants, tally or manual.
"""
