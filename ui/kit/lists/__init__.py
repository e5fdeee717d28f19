"""Lists as tall as their rows."""
