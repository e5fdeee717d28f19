"""The handbook: the program's own leaves on how things are done."""
