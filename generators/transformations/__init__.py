"""Transformations by coordinates: translation, reflection, rotation, enlargement."""
