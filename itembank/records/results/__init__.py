"""What the entries say together: results by topic, with pupils as they sit now."""
