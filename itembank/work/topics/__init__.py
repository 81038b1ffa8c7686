"""What there is to ask about: topics by words, year and statement, and how they hang together."""
