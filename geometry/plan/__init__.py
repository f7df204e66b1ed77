"""Outlines, offsets and routes on the plan."""
