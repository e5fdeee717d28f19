"""The leaf of a handout."""
