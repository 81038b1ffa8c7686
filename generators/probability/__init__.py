"""Topics on probability."""
