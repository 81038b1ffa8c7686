"""Files as this tool reads and writes them: whole or not at all, faults told by line."""
