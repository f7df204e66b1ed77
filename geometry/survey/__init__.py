"""The as-dug survey: shots of the ground and concrete against the design."""
