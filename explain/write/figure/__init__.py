"""Free-body diagrams and plots as SVG.

In comes a picture in metres and degrees, out comes SVG. Knows no mechanics.
"""
