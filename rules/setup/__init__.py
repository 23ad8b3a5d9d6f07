"""Moves that set a problem up: principle, pivot, weights, angles, arms, balances."""
