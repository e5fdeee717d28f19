"""A tab to what is printed of it: a file for each kind of leaf, and what gathers them."""
