"""Ringbound's core: facts, leaves, files and study. It knows no screen."""
