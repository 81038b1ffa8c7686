"""Sequences: patterns that grow, their numbers, and the rule for any of them."""
