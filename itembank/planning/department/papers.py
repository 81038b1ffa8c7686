"""The papers that a class's sheets may be printed on."""

PAPERS = ("white", "cream", "blue", "green", "pink", "yellow")
