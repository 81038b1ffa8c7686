"""Work in other processes, and what becomes of it when one of them is stopped."""
