"""A manual: chapters of prose and problems made into one book, in several editions, with only what changed worked
again.
"""
