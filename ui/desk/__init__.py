"""The open binder on its desk: shelf, slips, rings, dividers."""
