"""The item bank: school mathematics, proved and printed."""

VERSION = "0.1.0"
"""As `pyproject.toml` has it, and every pack: to ask what is installed would take longer."""
