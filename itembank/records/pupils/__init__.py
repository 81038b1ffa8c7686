"""Pupils who move, and who sits where."""
