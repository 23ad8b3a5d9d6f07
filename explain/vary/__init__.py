"""Personal variants of one problem: numbers drawn from its [vary], screened, as sheets for students and a key for
the teacher.
"""
