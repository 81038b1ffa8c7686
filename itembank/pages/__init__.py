"""Draws a pack: slides, slips, sheets and notes as tagged PDFs."""
