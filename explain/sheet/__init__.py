"""Sheets to be worked on: the problem alone, a walkthrough with lines left empty, a page with a slip to be found.

In comes a walkthrough, out come pages; knows no format, and decides no mechanics.
"""
