"""Recall rounds and what they learn of the student."""
