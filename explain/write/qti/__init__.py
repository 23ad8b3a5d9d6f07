"""Questions as a QTI 3 content package: passages as XHTML and MathML, figures as SVG. Knows no mechanics.

Names of elements, attributes and namespaces are those of the standard (1EdTech, Question and Test Interoperability
3.0).
"""
