"""A course of problems that grows from one base, a step at a time.

It knows what a step changes, what that must do to the answer, and how the page of a step reads.
"""
