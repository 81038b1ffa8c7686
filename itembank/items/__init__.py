"""Items: questions with their keys, the spaces they come from and the registry of topics."""
