"""Watertight bodies of every part; one thin kernel, `foundation.py` keeps the invariants."""
