"""The leaf of a card."""
