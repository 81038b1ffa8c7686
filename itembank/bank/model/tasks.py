"""What a question of a bank may ask for; known without the models of its fields."""

TASKS = (
    "work-out",
    "simplify",
    "expand",
    "factorise",
    "solve",
    "make-subject",
    "share",
    "order",
    "compare",
    "convert",
    "choose",
    "nth-term",
    "hcf",
    "lcm",
    "prime-factors",
    "round",
)
"""What a question may ask for."""
