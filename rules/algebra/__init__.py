"""Moves on an equation that leave it true."""
