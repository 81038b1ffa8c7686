"""The conversation about a department, and what it shows."""
