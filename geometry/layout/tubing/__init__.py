"""Heating tubes laid in a floor's slab: a grid of places, loops that share it, each one's way."""
