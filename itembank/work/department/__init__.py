"""A department made, and changed, by answering questions: plain values in, a folder out."""
