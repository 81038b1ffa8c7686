"""Generators of geometry: angles, shapes and their measures."""
