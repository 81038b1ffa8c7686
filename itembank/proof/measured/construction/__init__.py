"""How constructions are measured."""
