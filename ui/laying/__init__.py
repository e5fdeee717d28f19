"""A reading being laid."""
