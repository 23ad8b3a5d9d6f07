"""Pages and books as Markdown with LaTeX formulas."""
