"""The editor and what it is made of."""
