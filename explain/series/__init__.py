"""A course of problems that grows from one base, a step at a time: what a step changes, what that must do to the
answer, and its page.
"""
