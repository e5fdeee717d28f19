"""The course plan and the wall of 78."""
