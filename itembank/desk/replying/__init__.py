"""What all pages of the desk stand on: where the desk is, forms in, pages and mathematics out."""
