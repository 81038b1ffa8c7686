"""A class's week: its plan file, a teacher's changes and the questions it holds."""
