"""Markdown to safe HTML and to the tree print walks, and rich text to Markdown."""
