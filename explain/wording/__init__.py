"""Sentences about a problem before it is worked: its statement, its questions, its places and directions.

Knows names and quantities; no moves and no answers.
"""
