"""What the menus ask."""
