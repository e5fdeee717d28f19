"""A row of pieces: spines, dividers."""
