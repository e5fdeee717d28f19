"""Schema steps, one script a version, run by playhouse.migrations."""
