"""The leaves as they are read and written."""
