"""From a `Problem` to the body cut free and the three equations of rest that sympy holds.

Knows which balance settles which unknown, in floats; writes no line and imports no rule.
"""
