"""Making a pack: what was stated settled with what the class has, built and written."""
