"""Text as people type and read it: characters nobody sees, equal names, whole numbers."""
