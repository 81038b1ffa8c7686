"""A pack as pure data, and its builder."""
