"""Planning: bands and their next tasks, the department's folder, the plan of a lesson."""
