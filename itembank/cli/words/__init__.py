"""Words to and from the terminal."""
