"""The layout of a reading, drawn."""
