"""Exact arithmetic for the checker: a prime field, intervals, dimensions.

In come written terms, out come field elements and bounds. Part of what is trusted: imports `equation` alone.
"""
