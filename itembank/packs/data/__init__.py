"""A pack as data: what `pack.json` holds, and how it is written and read."""
