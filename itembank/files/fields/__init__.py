"""What a file of ours may hold, declared once: read, refused, written and published from there."""
