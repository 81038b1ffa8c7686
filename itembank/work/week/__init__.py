"""A class's week: planned, changed, its questions settled, its packs built and written."""
