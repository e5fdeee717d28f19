"""What is counted from the whole log."""
