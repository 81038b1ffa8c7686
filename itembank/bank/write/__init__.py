"""Changes to the text of a bank."""
