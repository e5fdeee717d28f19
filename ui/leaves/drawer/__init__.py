"""What was set aside, and earlier versions."""
