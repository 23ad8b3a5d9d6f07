"""Data about people, each with its source: segment tables, muscles, joints, ranges.

It informs; it judges no answer and knows no body that is cut free.
"""
