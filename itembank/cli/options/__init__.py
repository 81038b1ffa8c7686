"""What was typed on the command line, read and told back."""
