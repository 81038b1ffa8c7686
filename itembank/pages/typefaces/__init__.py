"""The typefaces of every page, and how they are built."""
