"""Running text on a leaf."""
