"""How pictures of numbers are measured."""
