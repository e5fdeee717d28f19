"""Sources, what they say of cards, and how they are cited."""
