"""The report on one working, for a student or a tutor, as a page and as JSON.

In come verdicts and marks, out come passages. Judges nothing.
"""
