"""Answers read from spreadsheet cells that were pasted, or from files of them."""
