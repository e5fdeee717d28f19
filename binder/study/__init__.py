"""The student's verbs, one file a noun."""
