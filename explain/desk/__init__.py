"""The desk: pages in the browser, served from one's own machine, for a student, a tutor and a class.

In comes what is typed, out go pages; what is worked and judged is done in bounded processes. The front (all modules
but `tasks` and what it rests on) imports neither sympy nor the rules.
"""
