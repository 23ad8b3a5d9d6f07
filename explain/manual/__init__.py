"""A manual: chapters of prose and problems made into one book, in several editions.

Only what has changed is worked again.
"""
