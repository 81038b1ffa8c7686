"""Where the questions of a pack are drawn from."""
