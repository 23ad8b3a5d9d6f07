"""Marking a student's working: verdicts by truth and consequence, slips by the worlds that explain a line. Rests on
accounts and readings.
"""

from .marker import Marker

__all__ = ("Marker",)
