"""What every leaf on screen is."""
