"""What was recorded of lessons, entry by entry."""
