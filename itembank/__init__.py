"""The item bank: school mathematics, proved and printed."""
