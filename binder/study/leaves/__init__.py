"""Leaves: made, written, kept, set aside, and the tabs they stand behind."""
