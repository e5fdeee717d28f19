"""Print preview."""
