"""Cards on the table: layouts, the shorthand line, the grid of faces."""
