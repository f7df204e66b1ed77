"""Colour, hatch, line weight and text height by material, one table."""
