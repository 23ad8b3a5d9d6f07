"""Knows all kinds of problems that the witness draws."""

from __future__ import annotations

from . import limbs, planks
from .recipes import KINDS

__all__ = ["KINDS", "limbs", "planks"]
