"""The form an answer has, and what is said where another was asked for."""
