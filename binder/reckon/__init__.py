"""What is reckoned: the sky, days, and chances. Plain numbers in and out; no database."""
