"""Uniting: two results files that went their own ways, made one."""
