"""A cut to scale with its labels, levels and dimensions."""
