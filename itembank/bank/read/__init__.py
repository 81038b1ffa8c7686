"""Banks read from their files, with every fault told."""
