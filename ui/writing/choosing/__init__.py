"""Choosing what to link to or cite."""
