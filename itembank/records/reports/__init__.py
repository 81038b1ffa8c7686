"""What reports say, as data."""
