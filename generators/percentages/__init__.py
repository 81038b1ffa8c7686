"""Percentages: of an amount, one amount of another, change, and interest."""
