"""A hand-written question: what it asks, as an item that is proved and printed like any other."""
