"""The results store: its tables, where it is, and how it is opened."""
