"""What may truly be said of a wrong answer."""
