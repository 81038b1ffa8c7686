"""Prompts as sentences: slots for the mathematics, numbers and units that are said, sizes."""
