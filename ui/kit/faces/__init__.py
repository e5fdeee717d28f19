"""Faces of cards as pixmaps."""
