"""Measures: areas and volumes in other units, time, maps."""
