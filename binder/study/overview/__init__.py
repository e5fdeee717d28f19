"""What is asked of the whole shelf: found, due, counted, carried between binders."""
