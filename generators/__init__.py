"""Sources of items, one file a topic, gathered by strand."""
