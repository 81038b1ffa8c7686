"""Fractions: equivalence, the four operations, amounts, decimals and percentages."""
