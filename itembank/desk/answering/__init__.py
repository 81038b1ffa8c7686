"""Answers about a department as the fields of a form, and such fields read as answers."""
