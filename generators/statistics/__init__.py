"""Topics on statistics."""
