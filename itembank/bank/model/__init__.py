"""What a bank holds, as data: its fields, its items and their content."""
