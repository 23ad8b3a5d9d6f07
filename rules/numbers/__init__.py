"""Moves on numbers: working out and rounding."""
