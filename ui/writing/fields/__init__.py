"""Fields a leaf has besides its text."""
