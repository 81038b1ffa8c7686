"""People in the tool: seat codes for pupils, initials for colleagues, and names kept out."""
