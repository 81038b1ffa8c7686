"""A bank saved by one person at a time, whole or not at all."""
