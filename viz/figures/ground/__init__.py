"""Soil, stone, fabric and pipe drawn against what they should be: curves, bars, lengths."""
