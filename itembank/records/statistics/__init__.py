"""Statistics of answers, each with its source."""
