"""Cards in their places, as drawing primitives."""
