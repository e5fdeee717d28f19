"""What lies open, the trail, work beside the window's thread, what is remembered."""
