"""Builders of the sums that words say: ``sums`` first, then those of lists, parts and shapes."""
