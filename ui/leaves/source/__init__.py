"""The leaf of a source."""
