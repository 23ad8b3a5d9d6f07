"""Moves between units."""
