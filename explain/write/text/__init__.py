"""Pages for a terminal of any width."""
