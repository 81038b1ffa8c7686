"""Banks brought together, compared and settled."""
