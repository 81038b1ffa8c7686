"""How pictures of chance are measured."""
