"""What makes Ringbound a program that needs no Python, and what it begins with there."""
