"""Worked problems as questions with their answers, for a learning platform. Knows answers and slips, no XML."""
