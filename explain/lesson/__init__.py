"""A worked problem or a series as a lesson: pages for a board, what to say on each, captions.

Knows what is shown and said when; nothing of how a problem is worked, or of how a page looks.
"""
