"""Theme, colours, letters, style sheet."""
