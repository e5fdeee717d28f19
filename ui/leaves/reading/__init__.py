"""The leaf of a reading, and looking back on it."""
