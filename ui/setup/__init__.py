"""What a machine needs before the program can run. Standard library only: nothing else is there."""
