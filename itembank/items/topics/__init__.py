"""Topics as sources of items: their spaces, the contract of a generator, and how they are found."""
