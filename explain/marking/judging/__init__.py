"""Judging a working by evidence: every number traced to a formula over the data, formulas tried on twins of the
problem, blame only with proof.
"""

from .engine import Marker


__all__ = ("Marker",)
