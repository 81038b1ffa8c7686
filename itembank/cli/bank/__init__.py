"""Commands on a department's own questions."""
