"""From certified moves to a page: sections, sentences, the plan of the diagram, JSON.

Decides what is said and in which order; no look, no format.
"""
