"""Personal variants of one problem: numbers drawn from its [vary] and screened.

Out come sheets for students and a key for the teacher.
"""
