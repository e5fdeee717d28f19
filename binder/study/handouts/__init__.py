"""Files filed as handouts, and what is noted beside them."""
