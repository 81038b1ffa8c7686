"""How drawings of solids are measured."""
