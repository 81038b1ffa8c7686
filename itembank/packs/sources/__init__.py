"""Where the questions of a pack are taken from."""
