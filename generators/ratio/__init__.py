"""Ratio and proportion: simplest form to scale drawings, one topic a file."""
