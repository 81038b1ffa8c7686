"""How pages are drawn: type, lines, tags and paper, whatever a page says."""
