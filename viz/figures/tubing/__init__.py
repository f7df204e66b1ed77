"""Heating tubes on the plan: every loop told from the next in black and white, with its numbers."""
