"""How topics hang together: what rests on what, drawn as a map."""
