"""What an answer is worth, and whether it is worth the same as the key."""
