"""Bands of scores and the next task of each."""
