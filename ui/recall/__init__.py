"""A recall round."""
