"""One written sum in each notation: plain text, LaTeX, MathML, speech.

In come written terms, out comes text. Knows no mechanics and no page.
"""
