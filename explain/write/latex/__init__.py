"""Pages as the body of a LaTeX document, for \\input; they need amsmath and nothing else."""
