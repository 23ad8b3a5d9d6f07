"""Judging a working by evidence: numbers traced to formulas, formulas tried on twin problems, blame only with proof."""

from .engine import Marker


__all__ = ("Marker",)
