"""Spreads of the owner's own."""
