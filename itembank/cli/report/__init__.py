"""Reports in words, on screen and as tables."""
