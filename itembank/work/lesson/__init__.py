"""What a teacher can do after a lesson: record it, take it back, decide, move pupils, forget."""
