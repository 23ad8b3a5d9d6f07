"""Pages and books for the screen: one file, no script, nothing fetched."""
