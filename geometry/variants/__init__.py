"""Designs side by side: what their files say otherwise, and what follows from it."""
