"""Lines of working: whether each is true, and follows from the line before."""
