"""In and out of a shelf: readable text sources, folders, files."""
