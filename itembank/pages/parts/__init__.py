"""Parts that several documents share."""
