"""The command line: thin commands over the parts above."""
