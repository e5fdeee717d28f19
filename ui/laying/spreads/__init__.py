"""The library of spreads and their editor."""
